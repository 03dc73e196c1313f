using System.Collections.Immutable;
using Trivet.Cells;

namespace Trivet.Settings;

/// <summary>A parameter found in an export.</summary>
/// <param name="Name">As in the export; one that stands there again has "#2" behind it, and so on.</param>
/// <param name="Number">Not a number where the text is none.</param>
public sealed record FoundParameter(string Name, string Text, double Number);

public enum SettingMatch
{
    Equal,
    Differs,
    /// <summary>The export has a text where the plan has a number.</summary>
    NoNumber,
    Missing,
}

/// <summary>One planned parameter held against an export.</summary>
/// <param name="Difference">Found less planned, in the quantity's SI unit; not a number where there is none.</param>
public sealed record ComparedSetting(PlannedSetting Setting, FoundParameter? Found, SettingMatch Match, double Difference);

/// <summary>An exported file held against the plan.</summary>
/// <param name="NotPlanned">Parameters of the export that the plan does not name.</param>
/// <param name="NotComputed">Parameters of the plan whose value could not be computed: their ids.</param>
public sealed record ExportComparison(ImmutableArray<ComparedSetting> Settings, ImmutableArray<FoundParameter> NotPlanned, ImmutableArray<string> NotComputed)
{
    /// <summary>Every planned parameter was computed, found and equal within the controller's step.</summary>
    public bool Same => NotComputed.IsEmpty && Settings.Length > 0 && Settings.All(s => s.Match == SettingMatch.Equal);

    public int Count(SettingMatch match) => Settings.Count(s => s.Match == match);

    public static ExportComparison Of(Cell cell, ImmutableArray<FoundParameter> found)
    {
        var planned = SettingInputs.Read(cell);
        var byName = new Dictionary<string, FoundParameter>(found.Length, StringComparer.Ordinal);
        foreach (var f in found) byName.TryAdd(f.Name, f);
        var keys = planned.Select(p => p.Key).ToHashSet(StringComparer.Ordinal);
        keys.UnionWith(cell.Controller.Settings.Select(s => s.Value.Key ?? s.Value.Name ?? s.Key));
        return new(
            [.. planned.Select(p => Compare(p, byName.GetValueOrDefault(p.Key)))], [.. found.Where(f => !keys.Contains(f.Name))],
            [.. cell.Controller.Settings.InOrder().Select(s => s.Key).Except(planned.Select(p => p.Id))]);
    }

    private static ComparedSetting Compare(PlannedSetting setting, FoundParameter? found)
    {
        if (found is null) return new(setting, null, SettingMatch.Missing, double.NaN);
        if (!setting.Held) return new(setting, found, Texts.Alike(setting.Stated.Value!, found.Text, found.Number) ? SettingMatch.Equal : SettingMatch.Differs, double.NaN);
        if (double.IsNaN(found.Number)) return new(setting, found, SettingMatch.NoNumber, double.NaN);
        // A controller that keeps more digits than it takes may show up to half a step beside what was typed.
        bool equal = Math.Abs(found.Number - setting.Typed) <= setting.Step * (0.5 + 1e-9);
        return new(setting, found, equal ? SettingMatch.Equal : SettingMatch.Differs, setting.Scale.Value(found.Number) - setting.Plan);
    }
}

/// <summary>When two texts of a parameter say the same.</summary>
internal static class Texts
{
    /// <summary>The same text, or the same number written otherwise.</summary>
    public static bool Alike(string planned, string found, double number) =>
        planned.Trim() == found || double.TryParse(planned.Trim(), System.Globalization.NumberStyles.Float, System.Globalization.CultureInfo.InvariantCulture, out double value) && value == number;
}

/// <summary>A parameter that is not the same in a backup and in what was read out.</summary>
/// <param name="Before">Text in the first file; null where it is not there.</param>
/// <param name="Excepted">The exception that lets it differ; null where none does.</param>
public sealed record RestoredDifference(string Name, string? Before, string? After, ExportException? Excepted);

/// <summary>A backup held against what was read out after it was put back, parameter by parameter.</summary>
/// <param name="Equal">Parameters that are the same in both.</param>
public sealed record RestoreProof(int Equal, ImmutableArray<RestoredDifference> Differences)
{
    public int Excepted => Differences.Count(d => d.Excepted is not null);

    /// <summary>Every parameter is the same in both but those named as exceptions, and there was at least one to compare.</summary>
    public bool RestoredEqual => Equal > 0 && Differences.All(d => d.Excepted is not null);

    public static RestoreProof Of(ImmutableArray<FoundParameter> before, ImmutableArray<FoundParameter> after, ImmutableSortedDictionary<string, ExportException> exceptions)
    {
        var now = after.ToDictionary(p => p.Name, StringComparer.Ordinal);
        var then = before.ToDictionary(p => p.Name, StringComparer.Ordinal);
        var differences = ImmutableArray.CreateBuilder<RestoredDifference>();
        int equal = 0;
        foreach (var old in before)
        {
            // Equal numbers may be written with other digits; equal texts are equal whatever they mean.
            if (now.TryGetValue(old.Name, out var other) && (old.Text == other.Text || old.Number == other.Number)) equal++;
            else differences.Add(new(old.Name, old.Text, other?.Text, ExceptionFor(old.Name)));
        }
        foreach (var added in after.Where(p => !then.ContainsKey(p.Name))) differences.Add(new(added.Name, null, added.Text, ExceptionFor(added.Name)));
        return new(equal, differences.ToImmutable());

        ExportException? ExceptionFor(string name) => exceptions.InOrder().Select(e => e.Value).FirstOrDefault(e => e.Name is { Length: > 0 } n && (n == name || n[^1] == '*' && name.StartsWith(n[..^1], StringComparison.Ordinal)));
    }
}
