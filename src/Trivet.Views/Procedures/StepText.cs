using System.Collections.Immutable;
using System.Globalization;
using Trivet.Findings;
using Trivet.Procedures;
using Trivet.Views.Settings;
using Trivet.Views.Words;

namespace Trivet.Views.Procedures;

/// <summary>Something a step asks, in words.</summary>
/// <param name="What">What is recorded.</param>
/// <param name="Form">In which form: the unit of a reading, the answers of a choice, a tick, a photograph, a signature.</param>
/// <param name="Planned">The planned value; empty where none is planned.</param>
/// <param name="Accepted">What is accepted; empty where the answer is kept and not judged.</param>
public sealed record AskText(Asked Of, string What, string Form, string Planned, string Accepted);

/// <summary>One step in words, numbers in the manner of the language.</summary>
/// <param name="Number">Its place in the list, from 1.</param>
/// <param name="What">What to do; a list in it has a line for each group.</param>
/// <param name="After">Numbers of the steps it stands behind.</param>
/// <param name="Missing">Fields whose values the description does not state and the step needs.</param>
public sealed record WordedStep(
    Step Step, int Number, string Title, string What, string Why, string Hazard, string Caution, string Bad, string Energy, string Place, string By, string Minutes,
    ImmutableArray<int> After, ImmutableArray<string> Held, ImmutableArray<string> Tools, ImmutableArray<AskText> Asks, ImmutableArray<string> Missing);

/// <summary>Words steps in one language.</summary>
public static class StepTexts
{
    /// <summary>Numbers as people of the language write them, and the words of its pictures; English keeps the point, as files do.</summary>
    public static Locale LocaleOf(ProcedureWords words) => words.Tag == EnglishSteps.Words.Tag
        ? Locale.English
        : new(English.Language with { Picture = words.Pictures, ChainCase = words.Chain.Replace("{id}", "{case}", StringComparison.Ordinal) }, CultureInfo.GetCultureInfo(words.Tag));

    public static ImmutableArray<WordedStep> Of(Procedure procedure, ProcedureWords words)
    {
        var numbers = procedure.Steps.Select((s, i) => (s.Id, Number: i + 1)).ToDictionary(s => s.Id, s => s.Number, StringComparer.Ordinal);
        var gaps = procedure.Gaps.ToLookup(g => g.Step, g => g.Fields, StringComparer.Ordinal);
        return [.. procedure.Steps.Select(s => Of(s, words, numbers, [.. gaps[s.Id].SelectMany(f => f)]))];
    }

    /// <summary>What a step is called, of this procedure or of another.</summary>
    public static string Title(Step step, ProcedureWords words) => Filled(words.Kinds[step.Kind].Title, step, words, LocaleOf(words));

    private static WordedStep Of(Step step, ProcedureWords words, Dictionary<string, int> numbers, ImmutableArray<string> missing)
    {
        var locale = LocaleOf(words);
        var text = words.Kinds[step.Kind];
        return new(
            step, numbers[step.Id], Fill(text.Title), What(text), Fill(text.Why), Fill(text.Hazard), Fill(text.Caution), Fill(text.Bad), words.Energies[(int)step.Energy], words.Places[(int)step.Place],
            words.Skills[(int)step.By], Time(step.Minutes, words), [.. step.After.Select(a => numbers[a]).Order()],
            [.. step.Held.GroupBy(h => h.By, StringComparer.Ordinal).Select(g => $"{string.Join(", ", g.Select(h => h.Chain))}: {words.Held[g.Key]}")], [.. step.Tools.Select(t => words.Tools[t])],
            [.. step.Asks.Select(a => Of(step, a, words, locale))], missing);

        string Fill(string template) => Filled(template, step, words, locale);

        string What(StepText text)
        {
            string[] places = [.. ValuesOf(step, words, locale).Select(v => v.Name)];
            string more = new[] { text.More, text.Else }.FirstOrDefault(t => t.Length > 0 && Braces(t).All(places.Contains)) ?? "";
            return $"{Fill(text.What)} {Fill(more)}".Trim();
        }
    }

    private static string Filled(string template, Step step, ProcedureWords words, Locale locale)
    {
        if (template.IndexOf('{', StringComparison.Ordinal) < 0) return template;
        var values = ValuesOf(step, words, locale);
        // A number that the description leaves open is a gap in the step, not in the sentence.
        foreach (string id in Braces(template))
            if (!values.Exists(v => v.Name == id)) values.Add((id, words.Labels.Open));
        string filled = Locale.Fill(template, values.ToArray()).Trim();
        return filled.Length > 0 ? char.ToUpper(filled[0], locale.Culture) + filled[1..] : filled;
    }

    private static List<(string Name, string Value)> ValuesOf(Step step, ProcedureWords words, Locale locale)
    {
        string names = step.Names.IsEmpty ? words.Labels.Nothing : string.Join(", ", step.Names);
        var values = new List<(string, string)> { ("names", names), ("name", step.Names.IsEmpty ? words.Labels.Open : step.Names[0]), ("of", What(step, words)), ("digits", step.Names.Length > 1 ? step.Names[1] : "–") };
        foreach (var number in step.Numbers) values.Add((number.Id, Quantity(number.Value, number.Unit, words, locale)));
        foreach (var said in step.Words) values.Add((said.Id, said.Text));
        // Nothing of them is worded: names, places and units stand as the controller has them, which people look for on its screen.
        if (!step.Settings.IsEmpty)
            values.Add(("parameters", string.Join(".\n", step.Settings.GroupBy(s => s.Of.Stated.Where ?? "").Select(g => (g.Key.Length > 0 ? g.Key + ": " : "") + string.Join("; ", g.Select(s => Typed(s)))))));
        return values;

        static string Typed(TypedSetting s) => $"{s.Of.Name} = {SettingTexts.Typed(s.Of, s.DecimalComma)} {SettingTexts.UnitShown(s.Of)}".TrimEnd();
    }

    /// <summary>Minutes as hours and minutes.</summary>
    public static string Time(double minutes, ProcedureWords words)
    {
        int whole = (int)Math.Ceiling(minutes - 1e-9);
        return whole < 60
            ? Locale.Fill(words.Labels.JustMinutes, ("minutes", whole.ToString(CultureInfo.InvariantCulture)))
            : Locale.Fill(words.Labels.HoursAndMinutes, ("hours", (whole / 60).ToString(CultureInfo.InvariantCulture)), ("minutes", (whole % 60).ToString(CultureInfo.InvariantCulture)));
    }

    private static IEnumerable<string> Braces(string template)
    {
        for (int open = template.IndexOf('{', StringComparison.Ordinal); open >= 0; open = template.IndexOf('{', open + 1))
            yield return template[(open + 1)..template.IndexOf('}', open)];
    }

    /// <summary>What the step is done to, as its id says.</summary>
    private static string What(Step step, ProcedureWords words)
    {
        int colon = step.Id.IndexOf(':', StringComparison.Ordinal);
        if (colon < 0) return "";
        string of = step.Id[(colon + 1)..];
        return words.Of.GetValueOrDefault($"{step.Kind}.{of}") ?? words.Of.GetValueOrDefault(of)
            ?? (step.Subject.Pointer.StartsWith("/robot/chains/", StringComparison.Ordinal) ? Locale.Fill(words.Chain, ("id", of)) : of);
    }

    private static AskText Of(Step step, Asked asked, ProcedureWords words, Locale locale)
    {
        var labels = words.Labels;
        string what = words.Ask(step.Kind, asked.Id);
        return asked switch
        {
            AskedValue v => Value(v),
            AskedChoice c => new(c, what, string.Join(" / ", c.Options.Select(o => words.Option(c.Id, o))), words.Option(c.Id, c.Expected), words.Option(c.Id, c.Expected)),
            AskedCount c => new(c, what, "", Count(c.Expected), Count(c.Expected)),
            AskedText => new(asked, what, "", "", ""),
            AskedTick => new(asked, what, labels.Tick, "", ""),
            AskedPhotograph => new(asked, what, labels.Photograph, "", ""),
            AskedSignature s => new(s, what, $"{labels.Signature}: {words.Skills[(int)s.By]}", "", ""),
            _ => throw new ArgumentException($"{asked.GetType().Name} has no words", nameof(asked)),
        };

        AskText Value(AskedValue v)
        {
            string unit = UnitOf(v.Unit);
            double largest = new[] { v.Expected, v.Accepted?.Lower ?? double.NaN, v.Accepted?.Upper ?? double.NaN }.Where(double.IsFinite).Select(Math.Abs).DefaultIfEmpty(0).Max();
            string planned = double.IsNaN(v.Expected) ? (v.Accepted is null ? "" : labels.Open) : v.ShownAfter ? labels.ShownAfter : Quantity(v.Expected, unit, words, locale);
            return new(v, what, Symbol(unit, largest), planned, v.ShownAfter ? "" : Limits(v.Accepted, unit, words, locale));
        }
    }

    private static string Limits(Limit? limit, string unit, ProcedureWords words, Locale locale)
    {
        if (limit is null) return "";
        var labels = words.Labels;
        string lower = Quantity(limit.Lower, unit, words, locale), upper = Quantity(limit.Upper, unit, words, locale);
        if (double.IsNegativeInfinity(limit.Lower)) return Locale.Fill(labels.AtMost, ("upper", upper));
        if (double.IsPositiveInfinity(limit.Upper)) return Locale.Fill(labels.AtLeast, ("lower", lower));
        // The limits with as many digits as it takes to tell them from what is planned between them.
        (_, lower, upper) = Numbers.Against((limit.Lower + limit.Upper) / 2, limit.Lower, limit.Upper, unit, locale);
        return Locale.Fill(labels.Between, ("lower", lower), ("upper", upper));
    }

    /// <summary>A slope is read in millimetres to the metre.</summary>
    private static string UnitOf(string unit) => unit == "1" ? "m/m" : unit;

    private static string Symbol(string unit, double largest) => unit == "Ω" && largest >= 1e6 ? "MΩ" : DisplayUnit.Of(unit, largest).Symbol;

    private static string Quantity(double value, string unit, ProcedureWords words, Locale locale)
    {
        if (double.IsNaN(value)) return words.Labels.Open;
        return unit == "Ω" && Math.Abs(value) is >= 1e6 and < double.PositiveInfinity ? Numbers.Quantity(value / 1e6, "MΩ", locale) : Numbers.Quantity(value, unit, locale);
    }

    private static string Count(int count) => count.ToString(CultureInfo.InvariantCulture);
}
