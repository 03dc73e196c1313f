using System.Collections.Immutable;
using Trivet.Cells;
using Trivet.Findings;
using Trivet.Motion;

namespace Trivet.Stopping;

/// <summary>What the safety functions of a cell have to say.</summary>
public static class StopStage
{
    public static StagePlan Of(Cell cell)
    {
        var findings = ImmutableArray.CreateBuilder<Finding>();
        var coverage = ImmutableArray.CreateBuilder<NotApplicable>();
        var tasks = ImmutableArray.CreateBuilder<StageTask>();
        bool asked = (cell.Depth ?? Depth.Quote) >= Depth.Build;
        var functions = cell.Stopping.Functions;
        if (functions.IsEmpty)
        {
            var subject = new Subject(StopInputs.At);
            if (asked) findings.Add(new Unjudged(StopRules.Required, subject, ["/depth", StopInputs.FunctionsAt], OpenReason.Missing, [StopInputs.FunctionsAt]));
            else coverage.Add(new(StopRules.Required, subject, StopReasons.NoFunctions));
            return new(findings.ToImmutable(), coverage.ToImmutable(), []);
        }
        // The robot is read once for all functions, and only where one cuts the torque.
        var rest = new Lazy<Reading?>(() => AtRest(cell));
        if (asked) findings.AddRange(StopChecks.Required(cell));
        else coverage.Add(new(StopRules.Required, new(StopInputs.At), CommonReasons.NotAskedYet));

        foreach (var (id, function) in functions.InOrder())
        {
            string at = StopInputs.PointerOf(id);
            foreach (var finding in StopChecks.Described(cell, id))
            {
                if (finding.OpenBecause == OpenReason.Missing && !asked) coverage.Add(new(finding.Rule, finding.Subject, CommonReasons.NotAskedYet));
                else findings.Add(finding);
            }
            findings.AddRange(StopChecks.Levels(function, at));
            if (function is { Category: { } category, Channels.IsEmpty: false }) findings.Add(StopChecks.Channels(function, category, at));
            if (function.FailureRate is null) coverage.Add(new(StopRules.FailureRate, new(at), StopReasons.NoRate));
            else if (function is { FailureRate: > 0 and { } rate, Level: { } level }) findings.Add(StopChecks.FailureRate(rate, level, at));
            if (!function.Channels.IsEmpty) findings.Add(StopChecks.Ends(cell, id, at));
            if (function is { Kind: SafetyKind.EmergencyStop, StopCategory: { } stop }) findings.Add(StopChecks.Category(stop, at));
            if (!StopInputs.IsReset(function.Kind)) coverage.Add(new(StopRules.Reset, new(at), StopReasons.NoReset));
            else if (StopChecks.Reset(function, at) is var reset && (asked || reset.OpenBecause is null)) findings.Add(reset);
            else coverage.Add(new(StopRules.Reset, new(at), CommonReasons.NotAskedYet));
            AtRestOf(id, function, at);
        }
        return new(findings.ToImmutable(), coverage.ToImmutable(), tasks.ToImmutable());

        void AtRestOf(string id, SafetyFunction function, string at)
        {
            var subject = new Subject(at);
            if (function.StopCategory is null or StopCategory.Two)
            {
                coverage.Add(new(StopRules.Held, subject, StopReasons.KeepsTorque));
                return;
            }
            if (rest.Value is not { } robot)
            {
                coverage.Add(new(StopRules.Held, subject, StopReasons.WaitsFor.Naming("/robot", "/stations")));
                return;
            }
            if (cell.Stopping.LargestSink is null) coverage.Add(new(StopRules.Sink, subject, StopReasons.NoSink));
            var reading = new Reading(robot);
            reading.Used(at + "/stopCategory", function.StopCategory);
            reading.Used(at + "/torqueTime", function.TorqueTime);
            reading.Used(StopInputs.At + "/largestSink", cell.Stopping.LargestSink);
            tasks.Add(new($"stop.falls:{id}", reading.Key, () => [new Unjudged(StopRules.Held, subject, reading.Inputs, OpenReason.NotComputed, [])], _ => Judge(cell, function, at, reading)));
        }
    }

    /// <summary>All that the robot at rest over its stations is read from; null where none can be read.</summary>
    private static Reading? AtRest(Cell cell)
    {
        var reading = new Reading();
        bool any = false;
        foreach (string station in cell.Stations.Keys)
        {
            var own = new Reading();
            any |= Falls.Readable(cell, $"/stations/{station}", own, ImmutableArray.CreateBuilder<Contradiction>());
            reading.Used(own);
        }
        reading.Used("/stations", string.Join('\n', cell.Stations.Keys));
        foreach (var (chain, c) in cell.Robot.Chains) reading.Used($"/robot/chains/{chain}/brakeDelay", c.BrakeDelay);
        reading.Used("/robot/common/brakeDelay", cell.Robot.Common.BrakeDelay);
        return any ? reading : null;
    }

    /// <summary>The robot at rest over every station that is described far enough.</summary>
    public static ImmutableArray<RestPlace> Places(Cell cell) =>
        [.. cell.Stations.InOrder().Select(s => Falls.AtRest(cell, s.Key, new(), ImmutableArray.CreateBuilder<Contradiction>())).OfType<RestPlace>()];

    private static ImmutableArray<Finding> Judge(Cell cell, SafetyFunction function, string at, Reading reading)
    {
        if (StopFall.Of(cell, function, Places(cell), new()) is not { } fall) return [];
        var subject = new Subject(at);
        string[] falling = [.. Fields(ChainAtStop.Falls)], propped = [.. Fields(ChainAtStop.OnlyByProp)];
        if (falling.Length == 0 && propped.Length > 0) return [new Unjudged(StopRules.Held, subject, reading.Inputs, OpenReason.NotProved, [], StopReasons.OnlyProp.Naming([.. propped]))];
        var held = new YesNo(StopRules.Held, subject, reading.Inputs, falling.Length == 0, [.. falling]);
        if (!held.Good || cell.Stopping.LargestSink is not { } largest) return [held];
        return
        [
            held,
            new Judged(
                StopRules.Sink, subject, reading.Inputs, Math.Max(0, fall.ToolDrop), Limit.AtMost(largest, new(SourceKind.Cell, StopInputs.At + "/largestSink")), Assurance.Estimated),
        ];

        IEnumerable<string> Fields(ChainAtStop what) => fall.Chains.Where(c => c.Becomes == what).Select(c =>
            cell.Robot.Chains.TryGetValue(c.Chain, out var own) && own.Holding is not null ? $"/robot/chains/{c.Chain}/holding" : "/robot/common/holding").Distinct();
    }
}
