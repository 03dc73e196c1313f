using System.Collections.Immutable;
using Trivet.Cells;
using Trivet.Numerics;
using Trivet.Reach;

namespace Trivet.Dynamics;

/// <summary>
/// Size of the force that one drive must give to hold everything at rest, over a station's volume, with the gripper empty or loaded.
/// <para>
/// With c_m the columns of ∂p/∂q and f = −(platform mass + the rods' share)·g, it is <c>f·c_i − w_i·g·C_i′</c>, w_i the mass that weighs at the chain's own
/// joint. Since c = (∂q/∂p)⁻¹·e, its slope along a movement v of the platform is <c>−Σ_m (f·c_m)·(H_m·v)·c_i − w_i·g·C_i″·(∂q_i/∂p·v)</c>, H_m the
/// second derivative of q_m. The mass enters linearly, so empty and loaded are the ends of an interval.
/// </para>
/// </summary>
internal sealed class HoldingSearch(IPlatformMotion motion, RobotDynamics empty, RobotDynamics loaded, ImmutableArray<BoundedChain> chains, int chain) : IBoundable
{
    private readonly double _weight = empty.Chains[chain].WeightAtJoint(empty.Robot.Chains[chain]) + empty.Chains[chain].Pair * empty.Rods.JointWeight;

    private readonly Interval _mass =
        new Interval(empty.PlatformMass, loaded.PlatformMass) + empty.Chains.Sum(b => b.Pair * empty.Rods.PlatformWeight);

    public double At(ReadOnlySpan<double> x)
    {
        var p = motion.PlatformAt(x);
        return Math.Max(
            Math.Abs(empty.Inverse(p, Vec3.Zero, Vec3.Zero)[chain]), Math.Abs(loaded.Inverse(p, Vec3.Zero, Vec3.Zero)[chain]));
    }

    public double UpperBound(ReadOnlySpan<double> low, ReadOnlySpan<double> high, Span<double> rise, Span<double> spread, out int monotone)
    {
        var box = motion.Over(low, high);
        var slopes = new Slopes();
        var load = Load(box.Platform, box, ref slopes, withSlopes: true);
        monotone = box.Steer(slopes, rise, spread);
        load = load.And(box.MeanValue(Load(box.PlatformMid, box, ref slopes, withSlopes: false), slopes));
        // The size grows with the load above zero, against it below, across it in neither.
        if (load.Lower < 0 && load.Upper > 0) monotone = 0;
        if (load.Mid < 0)
            foreach (ref double r in rise) r = -r;
        return Interval.Abs(load).Upper;
    }

    private Interval Load(IntervalVec3 p, in MotionBox box, ref Slopes slopes, bool withSlopes)
    {
        Span<ChainEnclosure> over = [new(), new(), new()];
        Span<IntervalVec3> rows = [Vec3.UnitX, Vec3.UnitY, Vec3.UnitY];
        for (int i = 0; i < chains.Length; i++)
        {
            over[i] = chains[i].Over(p);
            rows[i] = over[i].Rate;
        }

        var volume = ReachEnclosure.Volume(rows[0], rows[1], rows[2]);
        Span<IntervalVec3> columns = [rows[1].Cross(rows[2]) / volume, rows[2].Cross(rows[0]) / volume, rows[0].Cross(rows[1]) / volume];
        var column = columns[chain];
        var gravity = empty.Gravity_B;
        var needed = IntervalVec3.Along(-gravity, _mass);
        var load = needed.Dot(column) - _weight * over[chain].JointRate.Dot(gravity);
        if (!withSlopes) return load;

        for (int k = 0; k < box.Variables; k++)
        {
            var slope = Interval.Zero;
            for (int m = 0; m < chains.Length; m++) slope -= needed.Dot(columns[m]) * over[m].RateChange(box.Rate[k]).Dot(column);
            if (over[chain].Family == RobotFamily.CrankDelta)
            {
                // C″ = shoulder − C = rod − w.
                var bend = over[chain].Rod - (p + (chains[chain].Chain.B - chains[chain].Chain.Foot));
                slope -= _weight * bend.Dot(gravity) * rows[chain].Dot(box.Rate[k]);
            }
            slopes[k] = slope;
        }
        return load;
    }
}
