using System.Collections.Immutable;
using Trivet.Cells;
using Trivet.Findings;
using Trivet.Kinematics;
using Trivet.Numerics;

namespace Trivet.Reach;

/// <summary>The questions that each rule asks of a station or a path. What a rule needs beyond that it reads here.</summary>
internal static class ReachChecks
{
    /// <summary>How far off its plane a two-chain robot's platform may be asked to be, metres: what joints and bearings give way by
    /// without notice (common practice, no source).</summary>
    private const double PlaneTolerance = 1e-4;

    public static IEnumerable<ReachSearch> Closure(ReachCase s, Reading reading) => s.Chains.Select((chain, i) => new ReachSearch(
        ReachRules.Closure, s.SubjectOf(s.Robot.ChainIds[i]), s.Motion, new ClosureSearch(s.Motion, chain), 1, 1e-3,
        (v, _) => Math.Sqrt(v), Limit.AtMost(1, ReachRules.Closure.Method), reading.Inputs));

    /// <summary>Travel of the chains. Distance from the middle of what the reserve leaves, over half of it.</summary>
    public static IEnumerable<ReachSearch> Travel(ReachCase s, Reading reading)
    {
        double reserve = reading.Or(s.Cell.Robot.Dexterity.TravelReserve, "/robot/dexterity/travelReserve", 0);
        var rule = s.Robot.Family == RobotFamily.RailDelta ? ReachRules.Travel : ReachRules.Turn;
        return s.Chains.Select((chain, i) =>
        {
            double from = chain.Chain.TravelFrom + reserve, to = chain.Chain.TravelTo - reserve;
            double middle = (from + to) / 2, half = (to - from) / 2;
            var search = new TravelSearch(s.Motion, chain, middle);
            return new ReachSearch(
                rule, s.SubjectOf(s.Robot.ChainIds[i]), s.Motion, search, half, 0.002 * half,
                (v, at) => search.Reading(at[..s.Motion.Variables]) < middle ? middle - v : middle + v,
                Limit.Between(from, to, new(SourceKind.Cell, $"/robot/chains/{s.Robot.ChainIds[i]}")), reading.Inputs);
        });
    }

    /// <summary>What needs no search: the rotary angles and the linear axis of a station, and the plane of a two-chain robot.</summary>
    public static IEnumerable<Finding> Plain(Cell cell, StationCase @case, ImmutableArray<string> inputs)
    {
        var (s, motion) = @case;
        var box = motion.Box;
        var station = cell.Stations[box.Id];
        Place here = motion.PlaceAt(motion.Low);
        if (s.Robot.Planar)
        {
            var (distance, at) = motion.LargestOffPlane();
            yield return new Judged(
                ReachRules.Plane, new(s.At), inputs, distance, Limit.AtMost(PlaneTolerance, ReachRules.Plane.Method), Assurance.Exact)
            { Worst = at };
        }

        if (cell.Robot.Rotary.Fitted == true)
            yield return Axis(ReachRules.Turn, "rotary", "/robot/rotary", cell.Robot.Rotary.TravelFrom, cell.Robot.Rotary.TravelTo, box.RotaryFrom, box.RotaryTo);
        else if (station.RotaryFrom is not (null or 0) || station.RotaryTo is not (null or 0))
            yield return NotFitted("rotary", "/robot/rotary/fitted", "/rotaryFrom", "/rotaryTo");

        if (cell.Robot.LinearAxis.Fitted == true)
            yield return Axis(ReachRules.Travel, "linear", "/robot/linearAxis", cell.Robot.LinearAxis.TravelFrom, cell.Robot.LinearAxis.TravelTo, box.LinearAxisAt, box.LinearAxisAt);
        else if (station.LinearAxisAt is not (null or 0))
            yield return NotFitted("linear", "/robot/linearAxis/fitted", "/linearAxisAt");

        YesNo NotFitted(string axis, string fitted, params ReadOnlySpan<string> fields)
        {
            var evidence = ImmutableArray.CreateBuilder<string>();
            foreach (string field in fields) evidence.Add(s.At + field);
            evidence.Add(fitted);
            return new(ReachRules.Axis, new(s.At, axis), [.. evidence.Order(StringComparer.Ordinal)], false, evidence.ToImmutable());
        }

        Finding Axis(Rule rule, string axis, string at, double? travelFrom, double? travelTo, double from, double to)
        {
            var reading = new Reading();
            double lower = reading.Need(travelFrom, at + "/travelFrom"), upper = reading.Need(travelTo, at + "/travelTo");
            ImmutableArray<string> all = [.. inputs.Union(reading.Inputs).Order(StringComparer.Ordinal)];
            if (!reading.Complete) return new Unjudged(rule, new(s.At, axis), all, OpenReason.Missing, reading.MissingFields);
            double middle = (lower + upper) / 2, worst = Math.Abs(to - middle) > Math.Abs(from - middle) ? to : from;
            var limit = Limit.Between(lower, upper, new(SourceKind.Cell, at));
            return new Judged(rule, new(s.At, axis), all, worst, limit, Assurance.Exact)
            {
                Worst = axis == "rotary" ? here with { Rotary = worst } : here,
            };
        }
    }

    public static IEnumerable<ReachSearch> Swing(ReachCase s, Reading reading)
    {
        var joints = RobotInputs.Joints(s.Cell.Robot, reading);
        return s.Chains.Select((chain, i) => new ReachSearch(
            ReachRules.Swing, s.SubjectOf(s.Robot.ChainIds[i]), s.Motion, new SwingSearch(s.Motion, chain, joints[i]),
            SwingSearch.FromAngle(joints[i], joints[i].Limit), 5e-4, (v, _) => SwingSearch.ToAngle(joints[i], v),
            Limit.AtMost(joints[i].Limit, new(SourceKind.Cell, $"/robot/chains/{s.Robot.ChainIds[i]}/swingLimit")), reading.Inputs));
    }

    public static IEnumerable<ReachSearch> Dexterity(ReachCase s, Reading reading)
    {
        const string pointer = "/robot/dexterity/largestCondition";
        double limit = reading.Need(s.Cell.Robot.Dexterity.LargestCondition, pointer);
        yield return new(
            ReachRules.Dexterity, s.SubjectOf(""), s.Motion, new DexteritySearch(s.Motion, s.Robot, s.Chains), limit, 0.005 * limit,
            (v, _) => v, Limit.AtMost(limit, new(SourceKind.Cell, pointer)), reading.Inputs);
    }

    public static IEnumerable<ReachSearch> Step(ReachCase s, Reading reading)
    {
        const string pointer = "/robot/dexterity/largestStep";
        var steps = RobotInputs.DriveSteps(s.Cell.Robot, reading);
        double limit = reading.Need(s.Cell.Robot.Dexterity.LargestStep, pointer);
        yield return new(
            ReachRules.Step, s.SubjectOf(""), s.Motion, new StepSearch(s.Motion, s.Robot, s.Chains, steps), limit, 0.005 * limit,
            (v, _) => v, Limit.AtMost(limit, new(SourceKind.Cell, pointer)), reading.Inputs);
    }

    /// <summary>Rods of different chains against each other. The two rods of one chain keep their spacing.</summary>
    public static IEnumerable<ReachSearch> RodsToRods(ReachCase s, Reading reading)
    {
        var rods = Rods(s, reading);
        var pairs = from a in rods from b in rods where a.From < b.From select (a, b);
        return Clearance(s, ReachRules.RodClearance, "rods", RodLimit(s, reading), new(s.Motion, s.Chains, pairs, []), reading);
    }

    public static IEnumerable<ReachSearch> RodsToFrame(ReachCase s, Reading reading) =>
        Against(s, ReachRules.RodClearance, "frame", RodLimit(s, reading), Rods(s, reading), ObstacleInputs.Frame(s.Cell, reading), reading);

    public static IEnumerable<ReachSearch> RodsToWalls(ReachCase s, Reading reading) =>
        Against(s, ReachRules.RodClearance, "walls", RodLimit(s, reading), Rods(s, reading), ObstacleInputs.Walls(s.Cell, reading), reading);

    public static IEnumerable<ReachSearch> ToolToFrame(ReachCase s, Reading reading) =>
        Against(s, ReachRules.ToolClearance, "frame", ToolLimit(s, reading), Hanging(s, reading), ObstacleInputs.Frame(s.Cell, reading), reading);

    public static IEnumerable<ReachSearch> ToolToWalls(ReachCase s, Reading reading) =>
        Against(s, ReachRules.ToolClearance, "walls", ToolLimit(s, reading), Hanging(s, reading), ObstacleInputs.Walls(s.Cell, reading), reading);

    private static (double Value, string Pointer) RodLimit(ReachCase s, Reading reading) =>
        (reading.Need(s.Cell.Robot.Dexterity.RodClearance, "/robot/dexterity/rodClearance"), "/robot/dexterity/rodClearance");

    private static (double Value, string Pointer) ToolLimit(ReachCase s, Reading reading) =>
        (reading.Need(s.Cell.Robot.Dexterity.ToolClearance, "/robot/dexterity/toolClearance"), "/robot/dexterity/toolClearance");

    /// <summary>Both rods of every chain.</summary>
    private static List<MovingBody> Rods(ReachCase s, Reading reading)
    {
        var pairs = RobotInputs.Rods(s.Cell.Robot, reading);
        var rods = new List<MovingBody>();
        for (int i = 0; i < pairs.Length; i++)
        {
            var chain = s.Robot.Chains[i];
            var half = pairs[i].Spacing / 2 * chain.Side;
            rods.Add(new(Anchor.Joint0 + i, half, Anchor.Platform, chain.B + half, pairs[i].Diameter / 2));
            rods.Add(new(Anchor.Joint0 + i, -half, Anchor.Platform, chain.B - half, pairs[i].Diameter / 2));
        }
        return rods;
    }

    /// <summary>The tool as a capsule from the platform reference point to the tool centre point, the platform as a ball about that point.</summary>
    private static List<MovingBody> Hanging(ReachCase s, Reading reading) =>
    [
        .. s.Carried(reading),
        new(Anchor.Platform, Vec3.Zero, Anchor.Tcp, Vec3.Zero, reading.Need(s.Cell.Tool.Radius, "/tool/radius")),
        new(Anchor.Platform, Vec3.Zero, Anchor.Platform, Vec3.Zero, reading.Need(s.Cell.Robot.Dexterity.PlatformRadius, "/robot/dexterity/platformRadius")),
    ];

    private static ReachSearch[] Against(
        ReachCase s, Rule rule, string against, (double Value, string Pointer) limit, List<MovingBody> bodies, ImmutableArray<Obstacle> obstacles, Reading reading)
    {
        var pairs = from body in bodies from obstacle in obstacles select (body, s.InBase(obstacle));
        return obstacles.IsEmpty ? [] : Clearance(s, rule, against, limit, new(s.Motion, s.Chains, [], pairs), reading);
    }

    private static ReachSearch[] Clearance(
        ReachCase s, Rule rule, string against, (double Value, string Pointer) limit, ClearanceSearch search, Reading reading) =>
        [new(rule, s.SubjectOf(against), s.Motion, search, -limit.Value, 1e-4, (v, _) => -v, Limit.AtLeast(limit.Value, new(SourceKind.Cell, limit.Pointer)), reading.Inputs)];
}
