using System.Collections.Immutable;
using Trivet.Cells;
using Trivet.Kinematics;
using Trivet.Numerics;

namespace Trivet.Reach;

/// <summary>How far chains may differ before something gives way.</summary>
/// <param name="Attained">Smallest difference at which a bad pose was found, metres or radians; infinite when none was.</param>
/// <param name="Bound">No pose of a smaller difference is bad; zero where nothing is proved.</param>
/// <param name="P">The bad pose, base frame; not a number when none was found.</param>
/// <param name="Q">Its drive readings.</param>
public readonly record struct HomingAllowance(double Attained, double Bound, Vec3 P, Vec3 Q);

/// <summary>
/// What happens when chains are moved before they are homed, so that their readings differ as no planned pose does. The rods stay
/// coupled: a chain moved alone tips every rod, until a ball joint is at the end of its swing and is levered out, or the platform loses
/// its hold.
/// <para>
/// A pose is <em>bad</em> when a swing is beyond its limit, when a rod is nearly square to its rail or in line with its arm (use of
/// reach above <see cref="MostUse"/>), or when the rods nearly lie in one plane (det of their unit vectors below
/// <see cref="LeastHold"/>). Before chains part altogether, one of the last two happens.
/// </para>
/// <para>
/// Alone: one chain leaves the common reading of the others, up or down. The pose is the closed form of the forward pose; the first bad
/// one is looked for in small steps and closed in on by bisection.
/// </para>
/// <para>
/// Together: all readings within a band of width d. Let d* be the smallest spread (largest less smallest reading) over all bad
/// positions p, the readings being the closed form of the inverse pose. Every set of readings with a smaller spread then has its pose:
/// starting from equal readings, the pose can be followed along any path that keeps the spread below d*, since it can only be lost at a bad
/// one. d* is bounded from below by interval bounds with subdivision, smallest spread first. Where all rails point the same way, moving all
/// carriages alike changes nothing, and one coordinate is left out.
/// </para>
/// </summary>
public sealed class Homing
{
    /// <summary>Use of reach from which a rod counts as stretched: 11.5° from square to its rail. Chosen here, no source.</summary>
    public const double MostUse = 0.98;

    /// <summary>det of the unit rod vectors below which the platform counts as no longer held; 1 is best. Chosen here, no source.</summary>
    public const double LeastHold = 0.02;

    private readonly ReachableSet _set;
    private readonly DeltaRobot _robot;
    private readonly ImmutableArray<BallJoint> _joints;
    private readonly ImmutableArray<BoundedChain> _chains;

    /// <param name="joints">Ball joints, in the order of the chains.</param>
    public Homing(DeltaRobot robot, ImmutableArray<BallJoint> joints)
    {
        if (joints.Length != robot.Chains.Length) throw new ArgumentException("Every chain has its ball joints.", nameof(joints));
        (_robot, _joints, _set) = (robot, joints, new(robot));
        _chains = ImmutableArray.CreateRange(robot.Chains, c => new BoundedChain(c));
        SlidesAlike = robot.Family == RobotFamily.RailDelta && robot.Chains.All(c => c.E == robot.Chains[0].E && Math.Abs(c.E.Z) > 0.5);
    }

    /// <summary>All rails point the same way, more or less down: only differences of readings matter.</summary>
    public bool SlidesAlike { get; }

    /// <summary>The largest travel of a chain: what homing one alone can ask for. Metres or radians.</summary>
    public double LargestTravel => _robot.Chains.Max(c => c.TravelTo - c.TravelFrom);

    /// <summary>One chain moved up or down against the others, which stand at any common reading of their travel. Sampled.</summary>
    /// <param name="steps">Differences looked at each way.</param>
    /// <param name="heights">Common readings looked at, less one; where all rails point the same way one is enough.</param>
    public HomingAllowance Alone(int chain, int steps = 128, int heights = 16)
    {
        double from = _robot.Chains.Max(c => c.TravelFrom), to = _robot.Chains.Min(c => c.TravelTo);
        var worst = new HomingAllowance(double.PositiveInfinity, 0, Vec3.NaN, Vec3.NaN);
        for (int k = 0; k <= (SlidesAlike ? 0 : heights); k++)
        {
            double common = SlidesAlike ? 0.5 * (from + to) : from + (to - from) * k / heights;
            foreach (int sense in new[] { 1, -1 })
            {
                // Rails that slide alike may stand anywhere, so the whole travel lies ahead both ways.
                double ahead = SlidesAlike ? LargestTravel : sense > 0 ? _robot.Chains[chain].TravelTo - common : common - _robot.Chains[chain].TravelFrom;
                var found = Along(chain, common, sense, ahead, steps);
                if (found.Attained < worst.Attained) worst = found;
            }
        }

        return worst;
    }

    private HomingAllowance Along(int chain, double common, int sense, double ahead, int steps)
    {
        double good = 0;
        for (int n = 0; n <= steps; n++)
        {
            double difference = ahead * n / steps;
            if (!IsBad(difference)) good = difference;
            else
            {
                double bad = difference;
                while (bad - good > 1e-6 * LargestTravel)
                {
                    double middle = 0.5 * (good + bad);
                    if (IsBad(middle)) bad = middle;
                    else good = middle;
                }

                // The last good pose is shown: past it there may be none.
                return new(bad, 0, ForwardPose.Of(_robot, Readings(good)).Working, Readings(bad));
            }
        }

        return new(double.PositiveInfinity, 0, Vec3.NaN, Vec3.NaN);

        bool IsBad(double difference)
        {
            Vec3 q = Readings(difference);
            var pose = ForwardPose.Of(_robot, q);
            return pose.Closure != Closure.Closes || Bad(pose.Working, q);
        }

        Vec3 Readings(double difference)
        {
            double moved = common + sense * difference;
            return new(chain == 0 ? moved : common, chain == 1 ? moved : common, _robot.Planar ? 0 : chain == 2 ? moved : common);
        }
    }

    /// <summary>All chains anywhere within a band of readings. Bounded by at most the given number of boxes.</summary>
    public HomingAllowance Together(int mostBoxes = 40_000, CancellationToken stop = default)
    {
        var domain = Domain();
        var open = new PriorityQueue<Bounds, (double Spread, int Age)>();
        var best = new HomingAllowance(double.PositiveInfinity, 0, Vec3.NaN, Vec3.NaN);
        int boxes = 0;
        Add(domain, 0);
        while (open.TryDequeue(out var box, out var rank))
        {
            // Everything left has at least this spread.
            double bound = Math.Min(rank.Spread, best.Attained);
            bool close = double.IsFinite(best.Attained) && best.Attained - bound <= 0.002 * best.Attained;
            if (close || boxes >= mostBoxes || stop.IsCancellationRequested) return best with { Bound = bound };
            var (left, right) = Halves(box);
            Add(left, rank.Spread);
            Add(right, rank.Spread);
        }

        return best with { Bound = best.Attained };

        void Add(Bounds box, double atLeast)
        {
            boxes++;
            Vec3 middle = box.Centre;
            Vec3 q = _robot.Inverse(middle);
            if (q.IsFinite && (SlidesAlike || _robot.WithinTravel(q)) && Bad(middle, q))
            {
                double spread = SpreadOf(q);
                if (spread < best.Attained) best = new(spread, 0, middle, q);
            }

            double least = Math.Max(atLeast, LeastSpreadOfBad(box));
            if (least < best.Attained) open.Enqueue(box, (least, boxes));
        }
    }

    private double SpreadOf(Vec3 q) => _robot.Planar
        ? Math.Abs(q.X - q.Y)
        : Math.Max(q.X, Math.Max(q.Y, q.Z)) - Math.Min(q.X, Math.Min(q.Y, q.Z));

    private bool Bad(Vec3 p, Vec3 q)
    {
        Span<Vec3> rods = stackalloc Vec3[3];
        for (int i = 0; i < _chains.Length; i++)
        {
            var chain = _robot.Chains[i];
            rods[i] = chain.RodVector(p, q[i]) / chain.Rod;
            if (!(Swing.Of(chain, _joints[i], p, q[i]) <= _joints[i].Limit)) return true;
            if (!(_chains[i].UseSquared(p) <= MostUse * MostUse) || !(rods[i].Dot(chain.JointRate(q[i])) > 0)) return true;
        }

        double hold = _robot.Planar ? rods[0].Cross(rods[1]).Y : rods[0].Dot(rods[1].Cross(rods[2]));
        return !(hold * _set.WorkingSign >= LeastHold);
    }

    /// <summary>A bound on the spread of the bad positions in a box: infinite when it certainly has none.</summary>
    private double LeastSpreadOfBad(Bounds box)
    {
        IntervalVec3 p = new(new(box.Low.X, box.High.X), new(box.Low.Y, box.High.Y), new(box.Low.Z, box.High.Z));
        IntervalVec3 middle = p.Mid;
        Span<Interval> readings = stackalloc Interval[3], atMiddle = stackalloc Interval[3];
        Span<IntervalVec3> rods = stackalloc IntervalVec3[3], rates = stackalloc IntervalVec3[3];
        bool good = true, smooth = true;
        for (int i = 0; i < _chains.Length; i++)
        {
            var use = _chains[i].UseSquared(p).Value;
            if (use.Lower > 1) return double.PositiveInfinity;
            if (use.Upper < 1)
            {
                var chain = _chains[i].Over(p);
                (readings[i], rods[i], rates[i]) = (chain.Reading, chain.Rod, chain.Rate);
                atMiddle[i] = _chains[i].Over(middle).Reading;
                smooth &= chain.Rate.IsBounded && atMiddle[i].IsBounded;
                if (smooth) readings[i] = readings[i].And(atMiddle[i] + chain.Rate.Dot(p - middle));
                good &= use.Upper <= MostUse * MostUse && _chains[i].SwingsWithin(chain, p, _joints[i]);
            }
            else
            {
                readings[i] = _chains[i].ReadingWhereClosed(p);
                good = smooth = false;
            }

            var c = _chains[i].Chain;
            if (!SlidesAlike && (readings[i].Lower > c.TravelTo || readings[i].Upper < c.TravelFrom)) return double.PositiveInfinity;
        }

        if (good)
        {
            double least = LeastHold * _robot.Chains.Aggregate(1.0, (product, c) => product * c.Rod);
            var hold = _set.WorkingSign * (_robot.Planar ? ReachEnclosure.Area(rods[0], rods[1]) : ReachEnclosure.Volume(rods[0], rods[1], rods[2]));
            if (hold.Lower > least) return double.PositiveInfinity;
        }

        double spread = 0;
        for (int i = 0; i < _chains.Length; i++)
        {
            for (int j = 0; j < i; j++)
            {
                var difference = readings[i] - readings[j];
                if (smooth) difference = difference.And(atMiddle[i] - atMiddle[j] + (rates[i] - rates[j]).Dot(p - middle));
                spread = Math.Max(spread, difference.Mignitude);
            }
        }

        return spread;
    }

    /// <summary>
    /// Every position that closes. Where all rails point along e, it is enough to look at z = 0: the positions there that are within a rod
    /// of an endless rail lie within L/|e_z| of the point where the rail meets that plane.
    /// </summary>
    private Bounds Domain()
    {
        if (!SlidesAlike) return _set.Box;
        Vec3 e = _robot.Chains[0].E;
        double wide = double.PositiveInfinity;
        Bounds all = new(new(-wide, -wide, 0), new(wide, wide, 0));
        foreach (var chain in _robot.Chains)
        {
            Vec3 centre = chain.Foot - chain.B, at = centre - centre.Z / e.Z * e;
            double reach = chain.Rod / Math.Abs(e.Z);
            all = all.Intersect(new(new(at.X - reach, at.Y - reach, 0), new(at.X + reach, at.Y + reach, 0)));
        }

        return _robot.Planar ? new(all.Low with { Y = 0 }, all.High with { Y = 0 }) : all;
    }

    private static (Bounds, Bounds) Halves(Bounds box)
    {
        Vec3 size = box.Size, middle = box.Centre;
        if (size.X >= size.Y && size.X >= size.Z)
            return (box with { High = box.High with { X = middle.X } }, box with { Low = box.Low with { X = middle.X } });
        return size.Y >= size.Z
            ? (box with { High = box.High with { Y = middle.Y } }, box with { Low = box.Low with { Y = middle.Y } })
            : (box with { High = box.High with { Z = middle.Z } }, box with { Low = box.Low with { Z = middle.Z } });
    }
}
