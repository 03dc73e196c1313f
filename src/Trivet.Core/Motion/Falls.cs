using System.Collections.Immutable;
using Trivet.Cells;
using Trivet.Dynamics;
using Trivet.Findings;
using Trivet.Kinematics;
using Trivet.Numerics;
using Trivet.Reach;

namespace Trivet.Motion;

/// <summary>Where within a station or a cycle a fall begins.</summary>
public enum FallPoint
{
    /// <summary>Over the middle of a station's zone, at its approach height: the highest it asks for.</summary>
    Approach,
    /// <summary>Where a cycle begins to carry, halfway along its loaded move, and where it puts down.</summary>
    Pick,
    Halfway,
    Place,
}

/// <summary>One fall, with how far the tool comes down.</summary>
/// <param name="Drop">From its start to the end that was computed, against gravity, metres; negative where it rises.</param>
/// <param name="Tool_C">Tool centre point at the end, cell frame, metres.</param>
public sealed record FallOutcome(Fall Fall, double Drop, Vec3 Tool_C);

/// <summary>What happens at one place when one chain lets go and the others are held, or when all let go.</summary>
/// <param name="Chain">Id of the chain; null for all.</param>
/// <param name="Holding">What keeps the chain up; of all chains, the weakest.</param>
/// <param name="Load">Size of what the drive holds there at rest, N or N·m; of all chains, the largest.</param>
/// <param name="AsHeld">By its holding as stated, its rotor going along; friction that is not stated as holding counts for nothing.</param>
/// <param name="Gone">With nothing left of its drive, neither holding nor friction nor rotor: as when a belt tears.</param>
public sealed record FallCase(string? Chain, ChainHolding Holding, double Load, FallOutcome AsHeld, FallOutcome Gone);

/// <summary>A place of a cell with what falls there.</summary>
/// <param name="Pointer">Station or cycle.</param>
/// <param name="Part">Id of the part in the gripper; null for none.</param>
/// <param name="Tool_C">Tool centre point, cell frame, metres.</param>
/// <param name="P_B">Platform reference point, base frame, metres.</param>
/// <param name="Cases">Chain by chain in their order, then all together.</param>
public sealed record FallPlace(string Pointer, FallPoint Point, string? Part, Vec3 Tool_C, Vec3 P_B, ImmutableArray<FallCase> Cases)
{
    /// <summary>
    /// The worst that a single fault, or none, lets happen: all drives off and each chain held as stated, or one chain with nothing left of its drive
    /// and the others held. All chains without any holding are not in it.
    /// </summary>
    public IEnumerable<FallOutcome> WithOneFault => Cases.Select(c => c.Chain is null ? c.AsHeld : c.Gone);
}

/// <summary>One chain as the robot stands.</summary>
/// <param name="Load">Size of what the drive holds, N or N·m.</param>
/// <param name="Free">Acceleration of the drive coordinate if all drives let go and nothing rubs, m/s² or rad/s².</param>
/// <param name="Drop">How far the platform comes down for each metre or radian of the coordinate, metres.</param>
public sealed record RestChain(string Chain, ChainHolding Holding, double Load, double Free, double Drop);

/// <summary>The robot at rest over a station.</summary>
/// <param name="Part">Id of the part in the gripper; null for none.</param>
public sealed record RestPlace(string Pointer, string? Part, Vec3 Tool_C, Vec3 P_B, ImmutableArray<RestChain> Chains);

/// <summary>
/// Where the chains of a cell fall to, and how fast, at every station and at three points of every cycle. An aid to the risk assessment, never a
/// substitute: see <see cref="Fall"/> for what it leaves out.
/// </summary>
/// <param name="Places">Stations with the heaviest part of the brief in the gripper, cycles with the part they carry.</param>
/// <param name="Missing">Pointers that are not stated, so that there is nothing or less than all.</param>
public sealed record Falls(ImmutableArray<FallPlace> Places, ImmutableArray<string> Missing, ImmutableArray<Contradiction> Problems)
{
    public static Falls Of(Cell cell, CancellationToken stop = default)
    {
        var places = ImmutableArray.CreateBuilder<FallPlace>();
        var reading = new Reading();
        var problems = ImmutableArray.CreateBuilder<Contradiction>();
        foreach (string pointer in PointersOf(cell))
        {
            if (stop.IsCancellationRequested) break;
            var own = new Reading();
            places.AddRange(At(cell, pointer, own, problems));
            foreach (string missing in own.MissingFields) reading.Missing(missing);
        }
        return new(places.ToImmutable(), reading.MissingFields, [.. problems.Distinct()]);
    }

    /// <summary>Stations and cycles, in their order.</summary>
    public static IEnumerable<string> PointersOf(Cell cell) =>
        [.. cell.Stations.InOrder().Select(s => StationInputs.Pointer(s.Key)), .. cell.Motion.Cycles.InOrder().Select(c => CyclePlan.Pointer(c.Key))];

    /// <summary>The places of one station or cycle; none while something is missing (see the reading) or contradicts itself.</summary>
    public static ImmutableArray<FallPlace> At(Cell cell, string pointer, Reading reading, ImmutableArray<Contradiction>.Builder problems)
    {
        string id = pointer[(pointer.LastIndexOf('/') + 1)..];
        return pointer.StartsWith("/motion", StringComparison.Ordinal) ? OfCycle(cell, id, reading, problems) : OfStation(cell, id, reading, problems);
    }

    /// <summary>Whether <see cref="At"/> would find anything; reads all that it would, and computes nothing.</summary>
    internal static bool Readable(Cell cell, string pointer, Reading reading, ImmutableArray<Contradiction>.Builder problems)
    {
        string id = pointer[(pointer.LastIndexOf('/') + 1)..];
        return pointer.StartsWith("/motion", StringComparison.Ordinal)
            ? CycleOf(cell, id, reading, problems) is not null
            : StationOf(cell, id, reading, problems) is not null;
    }

    private static ImmutableArray<FallPlace> OfStation(Cell cell, string id, Reading reading, ImmutableArray<Contradiction>.Builder problems)
    {
        if (StationOf(cell, id, reading, problems) is not var (robot, part, geometry, box)) return [];
        return [robot.At(StationInputs.Pointer(id), FallPoint.Approach, part, geometry, Over(box), (box.RotaryFrom + box.RotaryTo) / 2, box.LinearAxisAt)];
    }

    /// <summary>At rest over a station, as <see cref="At"/>, and nothing followed; null while something is missing (see the reading) or contradicts itself.</summary>
    public static RestPlace? AtRest(Cell cell, string station, Reading reading, ImmutableArray<Contradiction>.Builder problems) =>
        StationOf(cell, station, reading, problems) is var (robot, part, geometry, box)
            ? robot.Rest(StationInputs.Pointer(station), part, geometry, Over(box), (box.RotaryFrom + box.RotaryTo) / 2, box.LinearAxisAt) : null;

    private static Vec3 Over(StationBox box) => box.X_CS * new Vec3((box.Low.X + box.High.X) / 2, (box.Low.Y + box.High.Y) / 2, box.High.Z);

    private static ImmutableArray<FallPlace> OfCycle(Cell cell, string id, Reading reading, ImmutableArray<Contradiction>.Builder problems)
    {
        if (CycleOf(cell, id, reading, problems) is not var (robot, part, plan)) return [];
        var way = plan.Loaded;
        return
        [
            .. new[] { FallPoint.Pick, FallPoint.Halfway, FallPoint.Place }.Select((point, i) =>
            {
                double s = i * way.Length / 2;
                return robot.At(CyclePlan.Pointer(id), point, part, plan.Geometry, way.Path.At(s).P, way.Turn.At(s).Angle, way.LinearAxisAt);
            }),
        ];
    }

    private static (Falling Robot, string? Part, CellGeometry Geometry, StationBox Box)? StationOf(
        Cell cell, string id, Reading reading, ImmutableArray<Contradiction>.Builder problems)
    {
        string? part = Heaviest(cell, reading);
        var robot = Read(cell, part, reading, problems);
        var read = StationInputs.Read(cell, id, reading);
        problems.AddRange(read.Contradictions);
        var geometry = ReachCase.Shared(cell, reading);
        return robot is null || read.Box is not { } box || !reading.Complete ? null : (robot, part, geometry, box);
    }

    private static (Falling Robot, string? Part, CyclePlan Plan)? CycleOf(Cell cell, string id, Reading reading, ImmutableArray<Contradiction>.Builder problems)
    {
        var read = CycleInputs.Read(cell, id, reading);
        problems.AddRange(read.Contradictions);
        string? part = cell.Motion.Cycles[id].Part;
        reading.Used($"{CyclePlan.Pointer(id)}/part", part);
        var robot = Read(cell, part, reading, problems);
        return robot is null || read.Plan is not { } plan || !reading.Complete ? null : (robot, part, plan);
    }

    private static string? Heaviest(Cell cell, Reading reading)
    {
        reading.Used("/brief/parts", string.Join('\n', cell.Brief.Parts.Keys));
        foreach (var (id, part) in cell.Brief.Parts) reading.Used($"/brief/parts/{id}/mass", part.Mass);
        return cell.Brief.Parts.InOrder().Where(p => p.Value.Mass is not null).OrderByDescending(p => p.Value.Mass).Select(p => p.Key).FirstOrDefault();
    }

    private static Falling? Read(Cell cell, string? part, Reading reading, ImmutableArray<Contradiction>.Builder problems)
    {
        var read = DynamicsInputs.Read(cell, part, reading);
        problems.AddRange(read.Problems);
        // A chain whose holding nobody stated is held by nothing: that is said, not asked for.
        var silent = new Reading();
        ImmutableArray<ChainHolding> holding =
        [
            .. RobotInputs.Chains(cell.Robot, silent).Select(c =>
                new ChainHolding(c.Fields.Need("holding", d => d.Holding, Holding.Nothing), c.Fields.Or("holdingForce", d => d.HoldingForce, double.NaN))),
        ];
        reading.Used(silent);
        return read.Dynamics is { } dynamics ? new(dynamics, holding) : null;
    }

    /// <summary>A robot that falls.</summary>
    private sealed class Falling(RobotDynamics dynamics, ImmutableArray<ChainHolding> holding)
    {
        private static readonly ChainHolding Nothing = new(Holding.Nothing, double.NaN);

        private readonly RobotDynamics _frictionless = dynamics.WithoutFriction();

        private readonly RobotDynamics _bare = new(
            dynamics.Robot, [.. dynamics.Chains.Select(c => c with { Viscous = 0, Coulomb = 0, RotorInertia = 0 })],
            dynamics.Platform with { Turning = dynamics.Platform.Turning with { Friction = 0 } }, dynamics.Gravity_B, dynamics.Rods);

        public RestPlace Rest(string pointer, string? part, CellGeometry geometry, Vec3 tool_C, double angle, double linearAxis)
        {
            var robot = dynamics.Robot;
            var p = geometry.PlatformFor(tool_C, angle, linearAxis);
            if (robot.Planar) p = p with { Y = 0 };
            var (load, pose, down) = (dynamics.Inverse(p, Vec3.Zero, Vec3.Zero), PoseResult.At(robot, p), dynamics.Gravity_B.Unit());
            var free = pose.DqDp * _frictionless.Forward(p, Vec3.Zero, Vec3.Zero);
            var drop = pose.DpDq.Transpose() * down;
            return new(pointer, part, tool_C, p, [.. robot.ChainIds.Select((id, i) => new RestChain(id, holding[i], Math.Abs(load[i]), free[i], drop[i]))]);
        }

        public FallPlace At(string pointer, FallPoint point, string? part, CellGeometry geometry, Vec3 tool_C, double angle, double linearAxis)
        {
            var robot = dynamics.Robot;
            var p = geometry.PlatformFor(tool_C, angle, linearAxis);
            if (robot.Planar) p = p with { Y = 0 };
            var load = dynamics.Inverse(p, Vec3.Zero, Vec3.Zero);
            var cases = ImmutableArray.CreateBuilder<FallCase>();
            for (int i = 0; i < robot.Chains.Length; i++) cases.Add(new(robot.ChainIds[i], holding[i], Math.Abs(load[i]), Run(_frictionless, holding, i), Run(_bare, null, i)));
            double most = Enumerable.Range(0, robot.Chains.Length).Max(i => Math.Abs(load[i]));
            cases.Add(new(null, holding.MinBy(h => h.Counted), most, Run(_frictionless, holding, null), Run(_bare, null, null)));
            return new(pointer, point, part, tool_C, p, cases.ToImmutable());

            FallOutcome Run(RobotDynamics with, ImmutableArray<ChainHolding>? held, int? chain)
            {
                var fall = Fall.From(with, held ?? [.. holding.Select(_ => Nothing)], p, chain);
                double drop = (fall.P - p).Dot(with.Gravity_B) / with.Gravity_B.Norm;
                return new(fall, drop, geometry.TcpFor(fall.P, angle, linearAxis));
            }
        }
    }
}
