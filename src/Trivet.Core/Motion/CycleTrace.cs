using System.Collections.Immutable;
using Trivet.Drives;
using Trivet.Dynamics;
using Trivet.Findings;
using Trivet.Numerics;

namespace Trivet.Motion;

/// <summary>A stretch of a cycle.</summary>
public enum CyclePart
{
    Picking,
    Loaded,
    Placing,
    Empty,
}

/// <summary>
/// One whole cycle under one law over time, as arrays of one length: what charts, drives and other trades take. It begins with the wait at the pick
/// and ends where the empty move ends. Straight between its times; a jump is two entries at one time.
/// </summary>
/// <param name="Begins">When each part begins, in the order of <see cref="CyclePart"/>, seconds.</param>
/// <param name="S">Along the path of the move, metres; not a number while waiting and where the law leaves the path.</param>
/// <param name="Tool_C">Tool centre point, cell frame, metres.</param>
/// <param name="ToolSpeed">m/s.</param>
/// <param name="ToolAcceleration">m/s²: size of the platform's; the tool's own turning left out.</param>
/// <param name="Jerk">For each axis of the series, in its order, m/s³ or rad/s³.</param>
/// <param name="Force">For each axis, N or N·m at the drive coordinate, rotor and transmission included; not numbers where masses are not described.</param>
/// <param name="Power">Mechanical power of all axes together, watts; negative where the motion drives them. Not numbers where masses are not described.</param>
/// <param name="Series">The same for the drives: position, speed, acceleration and the load's force of each axis.</param>
public sealed record CycleTrace(
    TimingLaw Law, ImmutableArray<double> Times, ImmutableArray<double> Begins, ImmutableArray<double> S, ImmutableArray<Vec3> Tool_C,
    ImmutableArray<double> ToolSpeed, ImmutableArray<double> ToolAcceleration, ImmutableArray<double> Angle, ImmutableArray<ImmutableArray<double>> Jerk,
    ImmutableArray<ImmutableArray<double>> Force, ImmutableArray<double> Power, CycleSeries Series)
{
    /// <summary>Of the robot on its mount, worked out when first asked for; null where masses are not described.</summary>
    public ReactionSeries? Reaction => WhenAsked.Value;

    private Lazy<ReactionSeries?> WhenAsked { get; init; } = new((ReactionSeries?)null);

    public double Duration => Times[^1];

    /// <summary>Null where the law has no motion.</summary>
    public static CycleTrace? Of(CycleResult result, TimingLaw law)
    {
        var timed = result.Laws.Single(l => l.Law == law);
        if (timed.Loaded.Trace is not { } loaded || timed.Empty.Trace is not { } empty) return null;
        var (input, plan) = (result.Input, result.Input.Plan);

        var all = new List<Instant>();
        var begins = ImmutableArray.CreateBuilder<double>();
        double began = 0;
        int carryFrom = Wait(plan.Pick, plan.Loaded);
        Move(loaded);
        Wait(plan.Place, plan.Empty);
        int carryTo = all.Count;
        Move(empty);

        // Sums of phases may fall back by a rounding where two meet.
        for (int i = 1; i < all.Count; i++) all[i] = all[i] with { T = Math.Max(all[i].T, all[i - 1].T) };
        ImmutableArray<double> times = [.. all.Select(i => i.T)];
        ImmutableArray<DriveDemand> demands = input.Loaded is { } full && input.Empty is { } bare
            ? [.. all.Select((instant, i) => (i >= carryFrom && i < carryTo ? full : bare).Demand(instant.State))]
            : [];
        var axes = input.Axes.Select((axis, i) => Axis(input, axis, i, all, demands)).ToImmutableArray();
        var force = input.Axes.Select((axis, i) => Column(all, k => demands.IsEmpty ? double.NaN : ForceOf(axis, i, demands[k]))).ToImmutableArray();
        var tool = all.Select(i => plan.Loaded.ToolOf(i.State.P, i.State.Turn.Angle)).ToImmutableArray();
        bool rotary = input.Axes.Any(a => a.Axis == AxisCapacity.Rotary);
        ImmutableArray<Place> places = [.. all.Select((i, k) => new Place(tool[k], rotary ? i.State.Turn.Angle : double.NaN, i.State.P, plan.Loaded.LinearAxisAt))];
        return new(
            law, times, begins.ToImmutable(), [.. all.Select(i => i.S)], tool,
            [.. all.Select(i => ToolVelocity(plan.Loaded.Tcp, i.State).Norm)], [.. all.Select(i => i.State.A.Norm)], [.. all.Select(i => i.State.Turn.Angle)],
            [.. input.Axes.Select((axis, i) => Column(all, k => axis.Axis == AxisCapacity.Rotary ? all[k].TurnJerk : all[k].Jerk[i]))], force,
            Column(all, k => Enumerable.Range(0, axes.Length).Sum(i => force[i][k] * axes[i].Speed[k])),
            new(plan.Id, times, axes, places, input.Inputs))
        { WhenAsked = new(ReactionOnMount) };

        int Wait(Contact contact, PlatformPath path)
        {
            begins.Add(began);
            Instant first = Waiting(contact, path, 0), last = Waiting(contact, path, contact.Duration);
            // A wait takes time even where none is stated: two entries keep the order of the parts.
            int from = all.Count;
            all.Add(first.After(began));
            // The part is in the gripper from the middle of the pick on, and leaves it in the middle of the place.
            all.Add(Waiting(contact, path, contact.Duration / 2).After(began));
            all.Add(last.After(began));
            began += contact.Duration;
            return from + 1;
        }

        void Move(MoveTrace move)
        {
            begins.Add(began);
            foreach (var instant in move.Instants) all.Add(instant.After(began));
            began += move.Duration;
        }

        ReactionSeries? ReactionOnMount()
        {
            if (input.Loaded is not { } with || input.Empty is not { } without) return null;
            var loads = all.Select((instant, i) => Loads.Of(i >= carryFrom && i < carryTo ? with : without, instant.State)).ToArray();
            return new(times, [.. loads.Select(l => l.Force_B)], [.. loads.Select(l => l.Moment_B)]);
        }
    }

    /// <summary>The robot while the tool stands still or goes along with a belt.</summary>
    private static Instant Waiting(Contact contact, PlatformPath path, double t)
    {
        Vec3 here = path.PlatformFor(contact.Begin_C + t * contact.Velocity_C, contact.Angle);
        var velocity = path.PlatformFor(contact.Begin_C + (t + 1) * contact.Velocity_C, contact.Angle) - here;
        return Instant.Of(path.Robot, t, double.NaN, new(here, velocity, Vec3.Zero, Vec3.Zero), new(contact.Angle), 0);
    }

    private static Vec3 ToolVelocity(Vec3 tcp, in MotionState state) =>
        state.V + state.Turn.Speed * Vec3.UnitZ.Cross(Mat3.RotationZ(state.Turn.Angle) * tcp);

    private static AxisSeries Axis(CycleInput input, AxisCapacity axis, int i, List<Instant> all, ImmutableArray<DriveDemand> demands)
    {
        bool rotary = axis.Axis == AxisCapacity.Rotary;
        var acceleration = Column(all, k => rotary ? all[k].State.Turn.Acceleration : all[k].Acceleration[i]);
        return new(
            axis.Axis, Column(all, k => rotary ? all[k].State.Turn.Angle : all[k].Q[i]), Column(all, k => rotary ? all[k].State.Turn.Speed : all[k].Speed[i]),
            acceleration, Column(all, k => demands.IsEmpty ? double.NaN : ForceOf(axis, i, demands[k]) - input.Reflected[i] * acceleration[k]), LoadInertia(input, axis, i, all));
    }

    private static double ForceOf(AxisCapacity axis, int i, in DriveDemand demand) => axis.Axis == AxisCapacity.Rotary ? demand.RotaryTorque : demand.Force[i];

    /// <summary>Force per acceleration of one axis while the others stand, the part carried, without rotor: the largest over the motion.</summary>
    private static double LoadInertia(CycleInput input, AxisCapacity axis, int i, List<Instant> all)
    {
        const int Every = 16;
        if (input.Loaded is not { } dynamics) return double.NaN;
        if (axis.Axis == AxisCapacity.Rotary) return dynamics.Platform.Turning.Inertia - input.Reflected[i];
        double most = 0;
        for (int k = 0; k < all.Count; k += Every)
        {
            var alone = Kinematics.PoseResult.At(dynamics.Robot, all[k].State.P, all[k].Q).DpDq.Column(i);
            most = Math.Max(most, alone.Dot(dynamics.Equation(all[k].State.P, Vec3.Zero).Mass * alone));
        }
        return most - input.Reflected[i];
    }

    private static ImmutableArray<double> Column(List<Instant> all, Func<int, double> value)
    {
        var column = ImmutableArray.CreateBuilder<double>(all.Count);
        for (int k = 0; k < all.Count; k++) column.Add(value(k));
        return column.MoveToImmutable();
    }
}
