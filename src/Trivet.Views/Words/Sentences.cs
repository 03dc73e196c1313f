using Trivet.Cells;
using Trivet.Files;
using Trivet.Findings;

namespace Trivet.Views.Words;

/// <summary>Sentences for findings, advice, sources and places. They say what the data says and add no judgement.</summary>
public static class Sentences
{
    /// <summary>The finding in one sentence: "rod clearance at tray-left: 8.4 mm, at least 10 mm wanted; falls short by 16 %".</summary>
    public static string Of(Finding finding, Cell cell, Locale? locale = null)
    {
        var words = (locale ?? Locale.English).Language;
        string what = What(finding.Rule, finding.Subject, cell, locale);
        return finding switch
        {
            Judged j => Locale.Fill(words.Judged,
                ("what", what), ("value", ValueInFull(j, locale)), ("limit", Limit(j, locale)), ("outcome", Outcome(j, locale))),
            YesNo { Verdict: Verdict.Tight } => Locale.Fill(words.YesNoTight, ("what", what)),
            YesNo { Good: true } => Locale.Fill(words.YesNoGood, ("what", what)),
            YesNo y => Locale.Fill(words.YesNoBad, ("what", what), ("fields", FieldList(cell, y.Evidence, locale))),
            Unjudged { Reason: OpenReason.Missing } u => Locale.Fill(words.OpenMissing,
                ("what", what), ("fields", FieldList(cell, u.Missing, locale))),
            Unjudged { Detail: null } u => Locale.Fill(words.OpenOtherNoDetail, ("what", what), ("reason", words.OpenReasons[(int)u.Reason])),
            Unjudged u => Locale.Fill(words.OpenOther, ("what", what), ("reason", words.OpenReasons[(int)u.Reason]), ("detail", Of(u.Detail, cell, locale))),
            _ => throw new ArgumentOutOfRangeException(nameof(finding), finding.GetType().Name, "A finding is judged, yes-or-no or unjudged."),
        };
    }

    /// <summary>The rule and its subject: "rod clearance at tray-left, chain a".</summary>
    public static string What(Rule rule, Subject subject, Cell cell, Locale? locale = null)
    {
        var words = (locale ?? Locale.English).Language;
        string form = subject.Pointer.StartsWith("/stations/", StringComparison.Ordinal) ? words.WhatAt : words.WhatOf;
        return Locale.Fill(form, ("what", RuleNoun(rule, locale)), ("subject", SubjectWords(subject, cell, locale)));
    }

    /// <summary>What a rule looks at, as a short noun; the rule's title where the language has none.</summary>
    public static string RuleNoun(Rule rule, Locale? locale = null) =>
        (locale ?? Locale.English).Language.Rules.GetValueOrDefault(rule.Id)?.Noun ?? rule.Title;

    public static string SubjectWords(Subject subject, Cell cell, Locale? locale = null)
    {
        var words = (locale ?? Locale.English).Language;
        string of = Fields.Words(cell, subject.Pointer, locale);
        if (subject.Case.Length == 0) return of;
        string part = Part(cell, subject.Case, words);
        return Locale.Fill(words.WhatCase, ("subject", of), ("case", part));
    }

    /// <summary>A case within a subject; of a cycle's ways, which of both: "loaded move, chain a".</summary>
    private static string Part(Cell cell, string @case, Language words)
    {
        foreach (string way in new[] { "loaded", "empty" })
        {
            if (@case == way) return words.Cases[way];
            if (@case.StartsWith(way + " ", StringComparison.Ordinal)) return $"{words.Cases[way]}, {Fields.Axis(cell, @case[(way.Length + 1)..], words)}";
        }
        if (cell.Motion.Cycles.TryGetValue(@case, out var cycle)) return cycle.Name ?? @case;
        return cell.Stations.TryGetValue(@case, out var station) ? station.Name ?? @case : Fields.Axis(cell, @case, words);
    }

    public static string VerdictWord(Verdict verdict, Locale? locale = null) => (locale ?? Locale.English).Language.Verdicts[(int)verdict];

    /// <summary>The value found, with enough digits to be told from its limit.</summary>
    public static string Value(Judged j, Locale? locale = null)
    {
        string value = Numbers.Against(j.Value, j.Limit.Lower, j.Limit.Upper, j.Rule.Unit, locale).Value;
        if (!(j.Uncertainty > 0)) return value;
        // The unit stands once, behind both numbers; the degree sign stands close to each.
        string unit = " " + DisplayUnit.Of(j.Rule.Unit).Symbol;
        if (unit.Length > 1 && value.EndsWith(unit, StringComparison.Ordinal)) value = value[..^unit.Length];
        return Locale.Fill((locale ?? Locale.English).Language.WithUncertainty,
            ("value", value), ("uncertainty", Numbers.Quantity(2 * j.Uncertainty, j.Rule.Unit, locale)));
    }

    /// <summary>The value with what is told beside it, for a sentence; a table has no room for that.</summary>
    private static string ValueInFull(Judged j, Locale? locale)
    {
        string value = Value(j, locale);
        return j.Beside is { } beside
            ? $"{value} ({Locale.Fill((locale ?? Locale.English).Language.Asides[beside.Id], ("value", Numbers.Quantity(beside.Value, j.Rule.Unit, locale)))})"
            : value;
    }

    public static string Limit(Judged j, Locale? locale = null)
    {
        var words = (locale ?? Locale.English).Language;
        var (_, lower, upper) = Numbers.Against(j.Value, j.Limit.Lower, j.Limit.Upper, j.Rule.Unit, locale);
        return j.Rule.Sense switch
        {
            Sense.AtMost => Locale.Fill(words.AtMost, ("limit", upper)),
            Sense.AtLeast => Locale.Fill(words.AtLeast, ("limit", lower)),
            _ => Locale.Fill(words.Within, ("lower", lower), ("upper", upper)),
        };
    }

    /// <summary>The verdict with its margin: "falls short by 16 %", "tight, 3.1 % in reserve".</summary>
    public static string Outcome(Judged j, Locale? locale = null)
    {
        var words = (locale ?? Locale.English).Language;
        return j.Verdict switch
        {
            Verdict.FallsShort => Locale.Fill(words.FallsShortBy, ("margin", Numbers.Percent(-j.MarginAttained, locale))),
            Verdict.Tight when j.Margin >= j.Rule.ComfortBand => Locale.Fill(words.TightByUncertainty, ("margin", MarginText(j, locale))),
            Verdict.Tight => Locale.Fill(words.TightBy, ("margin", MarginText(j, locale))),
            Verdict.Holds => Locale.Fill(words.HoldsBy, ("margin", MarginText(j, locale))),
            _ => OpenOutcome(j, words, locale),
        };
    }

    /// <summary>Advice as one sentence: "change height of tray-left from 120 mm to 135 mm; margin then 4 %, worst elsewhere 6 %".</summary>
    public static string Of(Advice advice, Cell cell, Locale? locale = null)
    {
        var words = (locale ?? Locale.English).Language;
        string unit = UnitOf(advice.Pointer, cell);
        string field = Fields.Words(cell, advice.Pointer, locale);
        string to = Numbers.Quantity(advice.To, unit, locale);
        string change = double.IsNaN(advice.From)
            ? Locale.Fill(words.AdviceState, ("field", field), ("to", to))
            : Locale.Fill(words.AdviceChange, ("field", field), ("from", Numbers.Quantity(advice.From, unit, locale)), ("to", to));
        string[] then =
        [
            .. double.IsNaN(advice.MarginThen) ? Array.Empty<string>() : [Locale.Fill(words.AdviceMargin, ("margin", Numbers.Percent(advice.MarginThen, locale)))],
            .. double.IsNaN(advice.WorstElsewhere) ? Array.Empty<string>() : [Locale.Fill(words.AdviceElsewhere, ("elsewhere", Numbers.Percent(advice.WorstElsewhere, locale)))],
        ];
        return then.Length == 0 ? change : $"{change}; {string.Join(", ", then)}";
    }

    public static string Of(Source source, Cell cell, Locale? locale = null)
    {
        var words = (locale ?? Locale.English).Language;
        string form = source.Kind switch
        {
            SourceKind.Standard => words.SourceStandard,
            SourceKind.Literature => words.SourceLiterature,
            SourceKind.Derived => words.SourceDerived,
            SourceKind.Cell => words.SourceCell,
            SourceKind.CommonPractice => words.SourceCommonPractice,
            _ => words.SourceFromMemory,
        };
        if (source.Place.Length == 0) form = form.Replace(", {place}", "", StringComparison.Ordinal);
        string field = source.Kind == SourceKind.Cell ? Fields.Words(cell, source.Key, locale) : "";
        return Locale.Fill(form, ("key", source.Key), ("place", source.Place), ("field", field));
    }

    /// <summary>Where in the cell the worst value is, cell frame.</summary>
    public static string Of(Place place, Locale? locale = null) => Locale.Fill((locale ?? Locale.English).Language.WorstAt,
        ("x", Numbers.Quantity(place.P_C.X, "m", locale)), ("y", Numbers.Quantity(place.P_C.Y, "m", locale)), ("z", Numbers.Quantity(place.P_C.Z, "m", locale)));

    /// <summary>Why something is open, does not apply or cannot be as stated: a whole sentence.</summary>
    public static string Of(Reason reason, Cell cell, Locale? locale = null) =>
        Locale.Fill((locale ?? Locale.English).Language.Reasons[reason.Id], ("fields", FieldList(cell, reason.Fields, locale)));

    private static string MarginText(Judged j, Locale? locale) => Numbers.Percent(j.Margin, locale, j.Rule.ComfortBand);

    private static string OpenOutcome(Judged j, Language words, Locale? locale)
    {
        string open = words.Verdicts[(int)Verdict.Open];
        if (j.OpenBecause == OpenReason.Failed) return $"{open}, {words.NotANumber}";
        if (j.OpenBecause == OpenReason.NotComputed) return Locale.Fill(words.OpenOnlySampled, ("assurance", words.Assurances[(int)j.Assurance]));
        if (!double.IsFinite(j.Bound)) return $"{open}, {words.OpenReasons[(int)OpenReason.NotProved]}";
        string form = j.Rule.Sense switch
        {
            Sense.AtMost => words.OpenBoundAtMost,
            Sense.AtLeast => words.OpenBoundAtLeast,
            _ => words.OpenBoundWithin,
        };
        return Locale.Fill(form, ("bound", Numbers.Against(j.Bound, j.Limit.Lower, j.Limit.Upper, j.Rule.Unit, locale).Value));
    }

    private static string FieldList(Cell cell, IEnumerable<string> pointers, Locale? locale) =>
        Fields.List(pointers.Select(p => Fields.Words(cell, p, locale)), locale);

    /// <summary>The SI unit of a quantity field, as rules name units; a field that holds no quantity has none.</summary>
    private static string UnitOf(string pointer, Cell cell) => CellFields.Find(cell, pointer)?.Dimension switch
    {
        Dimension.Length => "m",
        Dimension.Angle => "rad",
        Dimension.Mass => "kg",
        Dimension.Time => "s",
        Dimension.Rate => "1/s",
        Dimension.Frequency => "Hz",
        Dimension.Speed => "m/s",
        Dimension.Acceleration => "m/s²",
        Dimension.AngularSpeed => "rad/s",
        Dimension.AngularAcceleration => "rad/s²",
        Dimension.Jerk => "m/s³",
        Dimension.AngularJerk => "rad/s³",
        Dimension.Force => "N",
        Dimension.Torque => "N m",
        Dimension.Stiffness => "N/m",
        Dimension.AngularStiffness => "N m/rad",
        Dimension.Current => "A",
        Dimension.Area => "m²",
        Dimension.Flow => "m³/s",
        Dimension.Voltage => "V",
        Dimension.Power => "W",
        Dimension.Energy => "J",
        Dimension.Resistance => "Ω",
        Dimension.Capacitance => "F",
        Dimension.Temperature => "°C",
        Dimension.DriveCoordinate => cell.Robot.Family == RobotFamily.CrankDelta ? "rad" : "m",
        _ => "1",
    };
}
