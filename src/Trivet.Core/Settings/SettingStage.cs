using System.Collections.Immutable;
using Trivet.Cells;
using Trivet.Findings;

namespace Trivet.Settings;

/// <summary>What the parameters of the controller have to say of a cell.</summary>
public static class SettingStage
{
    public static StagePlan Of(Cell cell)
    {
        var settings = cell.Controller.Settings;
        if (settings.IsEmpty) return new([], [new(SettingRules.Described, new("/controller"), SettingReasons.NoSettings)], []);
        var findings = ImmutableArray.CreateBuilder<Finding>();
        var coverage = ImmutableArray.CreateBuilder<NotApplicable>();
        bool asked = (cell.Depth ?? Depth.Quote) >= Depth.Build;
        // What a rounding costs is looked for only where there is one.
        var (brief, about) = (new Reading(), new Reading());
        var tightest = SettingChecks.Tightest(cell.Brief, brief);
        var shift = new Lazy<ToolShift?>(() => ToolShift.Of(cell, about));
        findings.AddRange(SameNames(settings));

        foreach (var (id, stated) in settings.InOrder())
        {
            string at = SettingInputs.PointerOf(id);
            var reading = new Reading();
            var wrong = ImmutableArray.CreateBuilder<Contradiction>();
            var planned = SettingInputs.Read(cell, id, reading, wrong);
            foreach (var w in wrong) findings.Add(new Unjudged(SettingRules.Described, new(w.Pointer, id), reading.Inputs, OpenReason.Failed, [], w.Reason));
            if (planned is null)
            {
                if (!reading.Complete) Waits(SettingRules.Described, at, reading);
                else if (wrong.Count == 0) findings.Add(new Unjudged(SettingRules.Described, new(at), reading.Inputs, OpenReason.Failed, [], SettingReasons.NoNumber));
                continue;
            }
            if (!planned.Held)
            {
                coverage.Add(new(SettingRules.Rounding, new(at), SettingReasons.NoHold));
            }
            else if (stated.Tolerance is null && ToolShift.Decides(stated.Quantity!.Value, stated.Of))
            {
                reading.Used(at + "/tolerance", null);
                reading.Used(brief);
                bool moves = planned.Off != 0;
                if (tightest is null) coverage.Add(new(SettingRules.Accuracy, new(at), SettingReasons.NoTolerance));
                else if (moves && shift.Value is null && !about.Complete) Waits(SettingRules.Accuracy, at, about);
                else
                {
                    if (moves) reading.Used(about);
                    findings.Add(SettingChecks.Accuracy(planned, moves ? shift.Value?.For(planned) ?? double.NaN : 0, tightest.Value, reading.Inputs));
                }
            }
            else
            {
                findings.Add(SettingChecks.Rounding(planned, reading));
            }
        }
        return new(findings.ToImmutable(), coverage.ToImmutable(), []);

        void Waits(Rule rule, string at, Reading reading)
        {
            if (asked) findings.Add(new Unjudged(rule, new(at), [.. reading.Inputs.Append("/depth").Distinct().Order(StringComparer.Ordinal)], OpenReason.Missing, reading.MissingFields));
            else coverage.Add(new(rule, new(at), CommonReasons.NotAskedYet));
        }
    }

    /// <summary>A name that stands twice could not be told apart in an export.</summary>
    private static IEnumerable<Finding> SameNames(ImmutableSortedDictionary<string, ControllerSetting> settings)
    {
        foreach (var group in settings.InOrder().GroupBy(s => s.Value.Key ?? s.Value.Name ?? s.Key, StringComparer.Ordinal).Where(g => g.Count() > 1))
        {
            var all = group.ToArray();
            for (int i = 1; i < all.Length; i++)
            {
                string Name(KeyValuePair<string, ControllerSetting> s) => SettingInputs.PointerOf(s.Key) + (s.Value.Key is null ? "/name" : "/key");
                yield return new Unjudged(
                    SettingRules.Described, new(Name(all[i])), [.. settings.Keys.SelectMany(k => new[] { SettingInputs.PointerOf(k) + "/key", SettingInputs.PointerOf(k) + "/name" }).Append("/controller/settings").Order(StringComparer.Ordinal)],
                    OpenReason.Failed, [], SettingReasons.SameName.Naming(Name(all[0])));
            }
        }
    }
}
