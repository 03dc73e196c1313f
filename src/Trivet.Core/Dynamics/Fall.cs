using System.Collections.Immutable;
using Trivet.Cells;
using Trivet.Kinematics;
using Trivet.Numerics;

namespace Trivet.Dynamics;

/// <summary>What keeps one chain up with its drive off.</summary>
/// <param name="Kind">Not stated counts as nothing.</param>
/// <param name="Force">What it is known to hold at the drive coordinate, N or N·m; not a number where nobody stated or measured it.</param>
public readonly record struct ChainHolding(Holding Kind, double Force)
{
    /// <summary>What may be counted on: a stated force of a brake, a counterweight's friction or measured friction; a prop that somebody may
    /// not have set, and nothing, hold nothing.</summary>
    public double Counted => Kind is Holding.Brake or Holding.Counterweight or Holding.Friction && Force > 0 ? Force : 0;
}

/// <summary>How a fall ends.</summary>
public enum FallEnd
{
    /// <summary>Nothing moves: what holds is at least the load. No more certain than the force it is said to hold.</summary>
    Stays,
    /// <summary>A chain runs into an end of its travel. The others may still be moving.</summary>
    EndStop,
    /// <summary>Friction brings everything to rest on the way.</summary>
    CameToRest,
    /// <summary>Every chain that slid has turned back once: the platform's weight draws it up again, and it swings. The end is where the last one turned.</summary>
    SwingsBack,
    /// <summary>The rods can not follow any further, or a rod has come square to its rail or in line with its arm: the platform may flip and joints be levered out
    /// before that. What happens then is not computed.</summary>
    LosesHold,
    /// <summary>Neither within ten seconds, or it stutters too often to be followed.</summary>
    StillMoving,
    /// <summary>The pose is out of reach or of travel, or a value is not a number.</summary>
    NotComputed,
}

/// <summary>
/// Where chains fall to, and how fast, when their drives let go. Drive coordinates in the order of the chains, metres or radians. An aid to the
/// risk assessment, never a substitute: it rests on the masses and friction described, counts a brake either as holding or as gone, and
/// leaves out that joints, end stops and what is underneath give way.
/// </summary>
/// <param name="Load">What each chain's drive holds at the start, N or N·m, positive towards growing q (so negative for a chain that hangs).</param>
/// <param name="Acceleration">Of each drive coordinate at the start, m/s² or rad/s².</param>
/// <param name="Time">Seconds until the end.</param>
/// <param name="Q">Drive readings at the end.</param>
/// <param name="Speed">Of each drive coordinate at the end.</param>
/// <param name="P">Platform reference point at the end, base frame, metres.</param>
/// <param name="V">Its velocity there, m/s.</param>
/// <param name="Fastest">Largest speed of each drive coordinate on the way, as a positive number.</param>
/// <param name="FastestPlatform">Largest speed of the platform on the way, m/s.</param>
/// <param name="Energy">Largest kinetic energy on the way of everything that moves, joules.</param>
public sealed record Fall(
    FallEnd End, Vec3 Load, Vec3 Acceleration, double Time, Vec3 Q, Vec3 Speed, Vec3 P, Vec3 V, Vec3 Fastest, double FastestPlatform, double Energy)
{
    private const double Longest = 10, Tolerance = 1e-9, ShortestStep = 1e-9;
    private const int MostSteps = 20_000;

    /// <summary>Measures of singularity (docs/notation.md) below which the rods no longer hold the platform in any useful sense.</summary>
    private const double LeastHold = 0.01;

    /// <summary>
    /// One chain lets go while the others are held, or all let go. A chain whose holding counts for less than its load slips at once;
    /// one that slips is braked by the friction of these dynamics alone, so a slipping brake is taken as gone.
    /// <see cref="RobotDynamics.WithoutFriction"/> gives the fastest fall. What starts to slip on the way, because the fall of the others
    /// pulls at it, slips from then on; one that friction stops is held again by it if it can.
    /// </summary>
    /// <param name="chain">Index of the chain that lets go; null for all.</param>
    public static Fall From(RobotDynamics dynamics, ImmutableArray<ChainHolding> holding, Vec3 p, int? chain)
    {
        var robot = dynamics.Robot;
        var q = robot.Inverse(p);
        if (!q.IsFinite || !robot.WithinTravel(q)) return new(FallEnd.NotComputed, Vec3.NaN, Vec3.NaN, double.NaN, q, Vec3.NaN, p, Vec3.NaN, Vec3.NaN, double.NaN, double.NaN);
        return new Run(dynamics, holding, chain, q).ToEnd();
    }

    private sealed class Run
    {
        private readonly RobotDynamics _dynamics;
        private readonly DeltaRobot _robot;
        private readonly int _n;
        private readonly Vec3 _start;
        private readonly double[] _counted;
        private readonly bool[] _released;
        /// <summary>Direction in which a chain slides; zero while it stands.</summary>
        private readonly int[] _way;
        private readonly bool[] _turned;
        private readonly double[] _fastest = new double[3];
        private double _platform, _energy;

        public Run(RobotDynamics dynamics, ImmutableArray<ChainHolding> holding, int? chain, Vec3 q)
        {
            (_dynamics, _robot, _start) = (dynamics, dynamics.Robot, q);
            _n = _robot.Chains.Length;
            _released = [.. Enumerable.Range(0, _n).Select(i => chain is null || chain == i)];
            // Coulomb friction holds at rest what it brakes in motion.
            _counted = [.. Enumerable.Range(0, _n).Select(i => _released[i] ? Math.Max(holding[i].Counted, dynamics.Chains[i].Coulomb) : double.PositiveInfinity)];
            (_way, _turned) = (new int[_n], new bool[_n]);
        }

        public Fall ToEnd()
        {
            double[] y = new double[2 * _n], next = new double[2 * _n], error = new double[2 * _n];
            for (int i = 0; i < _n; i++) y[i] = _start[i];
            if (!Motion(y, out var load, out _)) return Ended(FallEnd.NotComputed, y, 0, Vec3.NaN, Vec3.NaN);
            if (!load.IsFinite) return Ended(FallEnd.NotComputed, y, 0, load, Vec3.NaN);
            Loosen(load);
            Motion(y, out _, out var first);
            if (AllStand) return Ended(FallEnd.Stays, y, 0, load, Vec3.Zero);

            double t = 0, h = 1e-4;
            for (int step = 0; t < Longest && step < MostSteps; step++)
            {
                if (!DormandPrince.Step(Rates, y, h, next, error))
                {
                    if ((h /= 4) < ShortestStep) return Ended(FallEnd.LosesHold, y, t, load, first);
                    continue;
                }

                double worst = 0;
                for (int i = 0; i < 2 * _n; i++) worst = Math.Max(worst, Math.Abs(error[i]) / (Tolerance * (1 + Math.Abs(next[i]))));
                if (!(worst <= 1))
                {
                    if (!((h *= Math.Clamp(0.9 * Math.Pow(worst, -0.2), 0.2, 1)) >= ShortestStep)) return Ended(FallEnd.LosesHold, y, t, load, first);
                    continue;
                }

                // Where a chain passes its end stop or turns back within the step, the step is cut to that instant.
                if (Passed(next))
                {
                    double low = 0, high = h;
                    for (int i = 0; i < 60 && high - low > 1e-15 * h; i++)
                    {
                        double middle = (low + high) / 2;
                        if (DormandPrince.Step(Rates, y, middle, next, error) && !Passed(next)) low = middle;
                        else high = middle;
                    }
                    DormandPrince.Step(Rates, y, high, next, error);
                    t += high;
                    next.CopyTo(y, 0);
                    if (AtStop(y)) return Ended(FallEnd.EndStop, y, t, load, first);
                    for (int i = 0; i < _n; i++)
                    {
                        if (_way[i] == 0 || _way[i] * y[_n + i] > 0) continue;
                        (_way[i], y[_n + i], _turned[i]) = (0, 0, true);
                    }
                }
                else
                {
                    t += h;
                    next.CopyTo(y, 0);
                    h *= Math.Clamp(0.9 * Math.Pow(Math.Max(worst, 1e-10), -0.2), 0.2, 3);
                }

                if (!Motion(y, out var held, out _)) return Ended(FallEnd.LosesHold, y, t, load, first);
                Follow(y);
                Loosen(held);
                if (AllStand) return Ended(FallEnd.CameToRest, y, t, load, first);
                bool swings = true;
                for (int i = 0; i < _n; i++) swings &= _turned[i] || _way[i] == 0;
                if (swings) return Ended(FallEnd.SwingsBack, y, t, load, first);
            }
            return Ended(FallEnd.StillMoving, y, t, load, first);
        }

        private bool AllStand => Array.TrueForAll(_way, w => w == 0);

        /// <summary>Chains at rest whose load is more than what holds them begin to slide, away from it.</summary>
        private void Loosen(Vec3 held)
        {
            for (int i = 0; i < _n; i++)
                if (_way[i] == 0 && Math.Abs(held[i]) > _counted[i]) _way[i] = held[i] < 0 ? 1 : -1;
        }

        private bool Passed(double[] y)
        {
            if (AtStop(y)) return true;
            for (int i = 0; i < _n; i++)
                if (_way[i] != 0 && _way[i] * y[_n + i] <= 0) return true;
            return false;
        }

        private bool AtStop(double[] y)
        {
            for (int i = 0; i < _n; i++)
                if ((_way[i] > 0 && y[i] >= _robot.Chains[i].TravelTo) || (_way[i] < 0 && y[i] <= _robot.Chains[i].TravelFrom)) return true;
            return false;
        }

        private bool Rates(ReadOnlySpan<double> y, Span<double> rates)
        {
            if (!Motion(y, out _, out var acceleration)) return false;
            for (int i = 0; i < _n; i++)
            {
                rates[i] = _way[i] == 0 ? 0 : y[_n + i];
                rates[_n + i] = acceleration[i];
            }
            return true;
        }

        /// <summary>
        /// Accelerations of the chains that slide, and the forces that hold those that stand. In the drives' coordinates the equation of motion
        /// is <c>N·(q̈ − excess) + c = force</c> with N = (∂p/∂q)ᵀ·M·(∂p/∂q) and c = (∂p/∂q)ᵀ·(Coriolis + Weight): q̈ is zero where a chain stands,
        /// the force is friction where it slides. False where the pose does not exist, or is not the working one.
        /// </summary>
        private bool Motion(ReadOnlySpan<double> y, out Vec3 held, out Vec3 acceleration)
        {
            held = acceleration = Vec3.NaN;
            var q = Of(y);
            var p = ForwardPose.Of(_robot, q).Working;
            var pose = PoseResult.At(_robot, p, q);
            if (!(pose.Parallel > LeastHold)) return false;
            for (int i = 0; i < _n; i++)
                if (!(pose.Serial[i] > LeastHold)) return false;
            var speed = Of(y[_n..]);
            var v = pose.DpDq * speed;
            var equation = _dynamics.Equation(p, v);
            var back = pose.DpDq.Transpose();
            var inertia = back * equation.Mass * pose.DpDq;
            var constant = back * (equation.Coriolis + equation.Weight);
            Span<double> excess = stackalloc double[3], found = stackalloc double[3], matrix = stackalloc double[9], right = stackalloc double[3];
            excess.Clear();
            for (int i = 0; i < _n; i++) excess[i] = ChainMotion.Of(_robot.Chains[i], p, v).Excess;
            var bare = inertia * new Vec3(excess[0], excess[1], excess[2]) - constant;
            for (int i = 0; i < 3; i++)
            {
                bool slides = i < _n && _way[i] != 0;
                for (int j = 0; j < 3; j++) matrix[3 * i + j] = slides && j < _n && _way[j] != 0 ? Row(inertia, i)[j] : i == j ? 1 : 0;
                var body = _dynamics.Chains[Math.Min(i, _n - 1)];
                right[i] = slides ? bare[i] - body.Viscous * speed[i] - _way[i] * body.Coulomb : 0;
            }
            var solved = new Mat3(new(matrix[0], matrix[1], matrix[2]), new(matrix[3], matrix[4], matrix[5]), new(matrix[6], matrix[7], matrix[8])).Inverse()
                * new Vec3(right[0], right[1], right[2]);
            acceleration = solved;
            held = inertia * acceleration - bare;
            return acceleration.IsFinite;
        }

        private static Vec3 Row(in Mat3 m, int i) => i == 0 ? m.Row0 : i == 1 ? m.Row1 : m.Row2;

        private Vec3 Of(ReadOnlySpan<double> v) => new(v[0], v[1], _n > 2 ? v[2] : 0);

        /// <summary>Keeps the largest speeds and energy; returns the place of the platform and its velocity.</summary>
        private (Vec3 P, Vec3 V) Follow(double[] y)
        {
            Vec3 q = Of(y), speed = Of(y.AsSpan(_n));
            var p = ForwardPose.Of(_robot, q).Working;
            var v = PoseResult.At(_robot, p, q).DpDq * speed;
            for (int i = 0; i < _n; i++) _fastest[i] = Math.Max(_fastest[i], Math.Abs(speed[i]));
            (_platform, _energy) = (Math.Max(_platform, v.Norm), Math.Max(_energy, Energies.Of(_dynamics, new(p, v, Vec3.Zero)).Kinetic));
            return (p, v);
        }

        private Fall Ended(FallEnd end, double[] y, double t, Vec3 load, Vec3 first)
        {
            var (p, v) = Follow(y);
            return new(end, load, first, t, Of(y), Of(y.AsSpan(_n)), p, v, new(_fastest[0], _fastest[1], _fastest[2]), _platform, _energy);
        }
    }
}
