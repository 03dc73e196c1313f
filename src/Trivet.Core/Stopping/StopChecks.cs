using System.Collections.Immutable;
using Trivet.Cells;
using Trivet.Findings;

namespace Trivet.Stopping;

/// <summary>Holds one safety function against what is asked of it.</summary>
internal static class StopChecks
{
    /// <summary>What is missing or can not be.</summary>
    public static IEnumerable<Finding> Described(Cell cell, string id)
    {
        var function = cell.Stopping.Functions[id];
        string at = StopInputs.PointerOf(id);
        var reading = new Reading();
        reading.Used("/depth", cell.Depth);
        reading.Need(function.Kind, at + "/kind", SafetyKind.Other);
        Text(function.Trigger, at + "/trigger");
        StopInputs.Required(function, at, reading);
        reading.Need(function.Level, at + "/level", PerformanceLevel.A);
        reading.Need(function.Category, at + "/category", SafetyCategory.B);
        Text(function.LevelSource, at + "/levelSource");
        reading.Used(at + "/stopCategory", function.StopCategory);
        reading.Used(at + "/rampTime", function.RampTime);
        if (StopInputs.Stops(function.Kind))
        {
            reading.Need(function.StopCategory, at + "/stopCategory", StopCategory.Zero);
            Text(function.Isolates, at + "/isolates");
            if (function.StopCategory == StopCategory.One) reading.Need(function.RampTime, at + "/rampTime");
        }
        if (function.FailureRate is not null) Text(function.FailureRateSource, at + "/failureRateSource");
        if (function.Channels.IsEmpty) reading.Missing(at + "/channels");
        foreach (var (channel, c) in function.Channels)
            if (c.Signal is null) Text(c.Device, $"{at}/channels/{channel}/device");
        if (!reading.Complete) yield return new Unjudged(StopRules.Described, new(at), reading.Inputs, OpenReason.Missing, reading.MissingFields);

        foreach (var (channel, c) in function.Channels)
            if (c.Signal is { } signal && !cell.Io.Signals.ContainsKey(signal)) yield return Wrong($"{at}/channels/{channel}/signal", StopReasons.NoSuchSignal, "/io/signals");
        foreach (string guard in StopInputs.Guards(function))
            if (!cell.Guarding.Fences.ContainsKey(guard) && !cell.Guarding.Devices.ContainsKey(guard))
                yield return new Unjudged(StopRules.Described, new(at + "/guards", guard), [.. new[] { at + "/guards", "/guarding/devices", "/guarding/fences" }.Order(StringComparer.Ordinal)], OpenReason.Failed, [], StopReasons.NoSuchGuard);
        foreach (var (field, value) in new[] { ("rampTime", function.RampTime), ("torqueTime", function.TorqueTime) })
            if (value < 0) yield return Wrong($"{at}/{field}", StopReasons.Negative);
        if (function.FailureRate <= 0) yield return Wrong(at + "/failureRate", StopReasons.Negative);

        void Text(string? text, string pointer)
        {
            reading.Used(pointer, text);
            if (string.IsNullOrWhiteSpace(text)) reading.Missing(pointer);
        }

        static Unjudged Wrong(string pointer, Reason reason, params string[] more) =>
            new(StopRules.Described, new(pointer), [.. more.Append(pointer).Order(StringComparer.Ordinal)], OpenReason.Failed, [], reason);
    }

    public static IEnumerable<Finding> Levels(SafetyFunction function, string at)
    {
        var reading = new Reading();
        var required = StopInputs.Required(function, at, reading);
        reading.Used(at + "/level", function.Level);
        if (required is { } needed && function.Level is { } planned)
            yield return new YesNo(StopRules.Level, new(at), reading.Inputs, planned >= needed, [at + "/level", at + "/risk/severity", at + "/risk/exposure", at + "/risk/avoidance"]);
        if (function is { Level: { } level, Category: { } category })
            yield return new YesNo(
                StopRules.Architecture, new(at), [at + "/category", at + "/level"], level <= RiskGraph.Highest(category) && (category != SafetyCategory.Four || level == PerformanceLevel.E), [at + "/category", at + "/level"]);
    }

    public static Judged Channels(SafetyFunction function, SafetyCategory category, string at) =>
        new(StopRules.Channels, new(at), [at + "/category", at + "/channels"], function.Channels.Count,
            Limit.AtLeast(RiskGraph.Channels(category), new(SourceKind.FromMemory, "ISO-13849-1", "6.2")), Assurance.Exact);

    public static Judged FailureRate(double rate, PerformanceLevel level, string at) =>
        new(StopRules.FailureRate, new(at), [at + "/failureRate", at + "/level"], rate * 3600,
            Limit.AtMost(RiskGraph.Band(level).To * 3600, new(SourceKind.FromMemory, "ISO-13849-1", "table 2")), Assurance.Estimated);

    public static YesNo Ends(Cell cell, string id, string at)
    {
        var reading = new Reading();
        ImmutableArray<string> standard = [.. StopInputs.Ends(cell, id, reading).Where(e => !e.Safety).Select(e => e.SafetyAt).Distinct()];
        return new(StopRules.Ends, new(at), reading.Inputs, standard.IsEmpty, standard);
    }

    public static YesNo Category(StopCategory category, string at) =>
        new(StopRules.Category, new(at), [at + "/kind", at + "/stopCategory"], category != StopCategory.Two, [at + "/stopCategory"]);

    public static Finding Reset(SafetyFunction function, string at)
    {
        var reading = new Reading();
        reading.Used(at + "/kind", function.Kind);
        reading.Used(at + "/resetBy", function.ResetBy);
        if (string.IsNullOrWhiteSpace(function.ResetBy)) reading.Missing(at + "/resetBy");
        bool starts = reading.Need(function.ResetStarts, at + "/resetStarts", false), sees = reading.Need(function.ResetSees, at + "/resetSees", true);
        // What is wrong is said before what is missing.
        ImmutableArray<string> bad = [.. new[] { (starts, at + "/resetStarts"), (!sees, at + "/resetSees") }.Where(b => b.Item1).Select(b => b.Item2)];
        return bad.IsEmpty && !reading.Complete
            ? new Unjudged(StopRules.Reset, new(at), reading.Inputs, OpenReason.Missing, reading.MissingFields)
            : new YesNo(StopRules.Reset, new(at), reading.Inputs, bad.IsEmpty, bad);
    }

    /// <summary>Each thing that asks for a function, and whether one of that kind watches it.</summary>
    public static IEnumerable<Finding> Required(Cell cell)
    {
        var reading = new Reading();
        reading.Used("/depth", cell.Depth);
        reading.Used(StopInputs.FunctionsAt, string.Join('\n', cell.Stopping.Functions.Keys));
        var asked = StopInputs.Asked(cell, reading);
        foreach (var (id, function) in cell.Stopping.Functions)
        {
            reading.Used(StopInputs.PointerOf(id) + "/kind", function.Kind);
            reading.Used(StopInputs.PointerOf(id) + "/guards", function.Guards);
        }
        foreach (var (pointer, guard, kind) in asked)
        {
            ImmutableArray<string> by =
            [
                .. cell.Stopping.Functions.Where(f => f.Value.Kind == kind && (guard is null || StopInputs.Guards(f.Value).Contains(guard))).Select(f => StopInputs.PointerOf(f.Key)),
            ];
            yield return new YesNo(StopRules.Required, new(pointer, CaseOf(kind)), reading.Inputs, !by.IsEmpty, by.IsEmpty ? [StopInputs.FunctionsAt] : by);
        }
    }

    /// <summary>The kind as a case of a subject.</summary>
    private static string CaseOf(SafetyKind kind) => kind switch
    {
        SafetyKind.EmergencyStop => "emergency stop",
        SafetyKind.GuardInterlock => "interlock",
        SafetyKind.Muting => "muting",
        _ => "protective device",
    };
}
