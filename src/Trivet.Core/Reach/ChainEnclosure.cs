using Trivet.Cells;
using Trivet.Kinematics;
using Trivet.Numerics;

namespace Trivet.Reach;

/// <summary>
/// A chain prepared for bounds. With w = p + B − Foot:
/// <para>
/// Rail, E the unit rail direction and w⊥ = (I − E·Eᵀ)·w: the loop closes where the <em>use of reach</em> |w⊥|/L is at most 1; then with
/// h = √(L² − |w⊥|²) the rod vector is u = w⊥ + h·E, the reading q = w·E − h − o, and ∂q/∂p = E + w⊥/h.
/// </para>
/// <para>
/// Crank, e = w·E, f = w·F, ρ = √(e² + f²), c = (|w|² + a² − L²)/(2aρ): the loop closes where the use of reach |c| is at most 1; then
/// g = atan2(f, e) − acos c = q + o, u = w − a·(cos g·E + sin g·F), C′ = a·(cos g·F − sin g·E), and ∂q/∂p = u/(u·C′) with
/// u·C′ = a·ρ·√(1 − c²).
/// </para>
/// Both follow from |u| = L (docs/notation.md). At full use of reach rod and actuator stand so that the platform can no longer be
/// moved along the rod: the serial singularity.
/// </summary>
internal sealed class BoundedChain
{
    private readonly Chain _chain;
    private readonly Vec3 _fromFoot;
    private readonly Mat3 _across;

    public BoundedChain(in Chain chain)
    {
        _chain = chain;
        _fromFoot = chain.B - chain.Foot;
        var e = chain.E;
        _across = Mat3.Identity + (-1.0) * new Mat3(e.X * e, e.Y * e, e.Z * e);
    }

    public Chain Chain => _chain;

    /// <summary>Square of the use of reach at a platform position; at most 1 where the loop closes.</summary>
    public double UseSquared(Vec3 p)
    {
        var w = p + _fromFoot;
        if (_chain.Family == RobotFamily.RailDelta) return (_across * w).NormSquared / (_chain.Rod * _chain.Rod);
        double e = w.Dot(_chain.E), f = w.Dot(_chain.F);
        double c = (w.NormSquared + _chain.Arm * _chain.Arm - _chain.Rod * _chain.Rod) / (2 * _chain.Arm * Math.Sqrt(e * e + f * f));
        return c * c;
    }

    /// <summary>The square of the use of reach over a box of platform positions, and its gradient.</summary>
    public (Interval Value, IntervalVec3 Gradient) UseSquared(IntervalVec3 p)
    {
        var w = p + _fromFoot;
        if (_chain.Family == RobotFamily.RailDelta)
        {
            var across = _across * w;
            var rod2 = Interval.Square(_chain.Rod);
            return (across.NormSquared / rod2, 2.0 * across / rod2);
        }
        var (c, gradient) = CrankCosine(w);
        return (Interval.Square(c), 2.0 * c * gradient);
    }

    /// <summary>Reading, rod vector and their rates over a box of platform positions; unbounded where the loop may not close.</summary>
    public ChainEnclosure Over(IntervalVec3 p)
    {
        var w = p + _fromFoot;
        if (_chain.Family == RobotFamily.RailDelta)
        {
            var across = _across * w;
            var h = Interval.Sqrt(Interval.Square(_chain.Rod) - across.NormSquared);
            return new()
            {
                Reading = w.Dot(_chain.E) - h - _chain.HomeOffset,
                Rod = across + IntervalVec3.Along(_chain.E, h),
                JointRate = _chain.E,
                Rate = across / h + _chain.E,
                Along = h,
                Lean = across / h,
                Family = _chain.Family,
                E = _chain.E,
            };
        }
        Interval e = w.Dot(_chain.E), f = w.Dot(_chain.F);
        var (c, _) = CrankCosine(w);
        return Crank(w, c, Interval.Atan2(f, e) - Interval.Acos(c));
    }

    /// <summary>As <see cref="Over"/>, with the reading bounded better from elsewhere.</summary>
    public ChainEnclosure Tightened(IntervalVec3 p, in ChainEnclosure known, Interval reading)
    {
        if (_chain.Family == RobotFamily.RailDelta) return known with { Reading = reading };
        var w = p + _fromFoot;
        return Crank(w, CrankCosine(w).C, reading + _chain.HomeOffset);
    }

    private ChainEnclosure Crank(IntervalVec3 w, Interval c, Interval g)
    {
        Interval sin = Interval.Sin(g), cos = Interval.Cos(g);
        Interval arm = _chain.Arm;
        var rho = Interval.Sqrt(Interval.Square(w.Dot(_chain.E)) + Interval.Square(w.Dot(_chain.F)));
        var outward = IntervalVec3.Along(_chain.E, cos) + IntervalVec3.Along(_chain.F, sin);
        var rod = w - arm * outward;
        var along = arm * rho * Interval.Sqrt(1.0 - Interval.Square(c));
        return new()
        {
            Reading = g - _chain.HomeOffset,
            Rod = rod,
            JointRate = arm * (IntervalVec3.Along(_chain.F, cos) - IntervalVec3.Along(_chain.E, sin)),
            Rate = rod / along,
            Along = along,
            // |C′|² − u·C″ with C″ = −a·outward and u·outward = w·outward − a.
            Bend = arm * w.Dot(outward),
            Family = _chain.Family,
        };
    }

    private (Interval C, IntervalVec3 Gradient) CrankCosine(IntervalVec3 w)
    {
        Interval e = w.Dot(_chain.E), f = w.Dot(_chain.F), arm = _chain.Arm;
        var rho = Interval.Sqrt(Interval.Square(e) + Interval.Square(f));
        var c = (w.NormSquared + Interval.Square(arm) - Interval.Square(_chain.Rod)) / (2.0 * arm * rho);
        var alongRho = (IntervalVec3.Along(_chain.E, e) + IntervalVec3.Along(_chain.F, f)) / rho;
        return (c, (w / arm - c * alongRho) / rho);
    }
}

/// <summary>What a chain does over a box of platform positions.</summary>
internal struct ChainEnclosure
{
    /// <summary>Drive reading q, metres or radians.</summary>
    public Interval Reading;
    /// <summary>Rod vector u from carriage joint or elbow to the platform joint, base frame, metres.</summary>
    public IntervalVec3 Rod;
    /// <summary>C′ = ∂C/∂q.</summary>
    public IntervalVec3 JointRate;
    /// <summary>∂q/∂p.</summary>
    public IntervalVec3 Rate;
    /// <summary>u·C′, positive in the working mode.</summary>
    public Interval Along;
    /// <summary>Crank: |C′|² − u·C″.</summary>
    public Interval Bend;
    /// <summary>Rail: w⊥/h.</summary>
    public IntervalVec3 Lean;
    /// <summary>Rail: direction of the rail.</summary>
    public Vec3 E;
    public RobotFamily Family;

    /// <summary>
    /// How ∂q/∂p changes while the platform moves by v: H·v with H the second derivative of q. From r = u/(u·C′) and loop closure,
    /// H = (I − C′rᵀ − rC′ᵀ + (|C′|² − u·C″)·rrᵀ)/(u·C′); for a rail this is (I − EEᵀ + ssᵀ)/h with s = w⊥/h.
    /// </summary>
    public readonly IntervalVec3 RateChange(in IntervalVec3 v)
    {
        if (Family == RobotFamily.RailDelta) return (v - IntervalVec3.Along(E, v.Dot(E)) + Lean.Dot(v) * Lean) / Along;
        var rate = Rate.Dot(v);
        return (v - rate * JointRate + (Bend * rate - JointRate.Dot(v)) * Rate) / Along;
    }

    /// <summary>A chain over a part of a station's box: natural bounds, then the reading once more by the mean value theorem.</summary>
    public static ChainEnclosure Over(BoundedChain chain, in MotionBox box, out Slopes slopes)
    {
        var natural = chain.Over(box.Platform);
        slopes = box.SlopesOf(natural.Rate);
        var reading = natural.Reading.And(box.MeanValue(chain.Over(box.PlatformMid).Reading, slopes));
        var tight = chain.Tightened(box.Platform, natural, reading);
        slopes = box.SlopesOf(tight.Rate);
        return tight;
    }
}
