using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using System.Text.Json;
using Trivet.Cells;
using Trivet.Procedures;
using Trivet.Views.Answers;
using Trivet.Views.Words;

namespace Trivet.Views.Procedures;

/// <summary>The procedure for people, programs, spreadsheets and reports.</summary>
public static class ProcedureForms
{
    public const string Format = "trivet-procedure";
    public const int Version = 1;

    private const int TitleWidth = 58;

    public static string Text(ProcedureSheet sheet)
    {
        var words = sheet.Words;
        var labels = words.Labels;
        var text = new StringBuilder($"{sheet.Title}\n{sheet.Summary}\n");
        if (sheet.Open.Length > 0) text.Append(sheet.Open).Append('\n');
        int energies = words.Energies.Max(e => e.Length), skills = words.Skills.Max(s => s.Length), titles = Math.Min(TitleWidth, sheet.Steps.Max(s => s.Title.Length));
        string place = "";
        foreach (var s in sheet.Steps)
        {
            if (s.Place != place) text.Append('\n').Append(place = s.Place).Append('\n');
            string title = s.Title.Length > titles ? s.Title[..(titles - 1)] + "…" : s.Title;
            text.Append(CultureInfo.InvariantCulture, $"{(s.Step.HoldPoint ? "#" : " ")}{s.Number,3}  {title.PadRight(titles)}  {s.Energy.PadRight(energies)}  {s.By.PadRight(skills)} {s.Step.People}  {s.Minutes,10}  {s.Step.Id}\n");
        }
        text.Append(CultureInfo.InvariantCulture, $"\n# {labels.HoldPoint}\n\n{labels.BySkill}\n");
        foreach (var k in sheet.Skills)
            text.Append(CultureInfo.InvariantCulture, $"  {k.Name.PadRight(skills)}  {k.Steps,3}  {StepTexts.Time(k.Minutes, words),10}  {labels.FirstNeeded} {StepTexts.Time(k.Begins, words)}\n");
        if (sheet.People > 1)
        {
            var waits = WorkLeft.Lines(sheet.Schedule, sheet.Procedure.Steps, sheet.Words);
            text.Append('\n').Append(labels.WhoWaits).Append('\n');
            foreach (string line in waits.IsEmpty ? [labels.NobodyWaits] : waits) text.Append("  ").Append(line).Append('\n');
        }
        return text.Append('\n').Append(labels.LocalRules).Append('\n').ToString();
    }

    /// <summary>One step with all it says.</summary>
    public static string Text(WordedStep s, ProcedureSheet sheet)
    {
        var labels = sheet.Words.Labels;
        var text = new StringBuilder();
        text.Append(CultureInfo.InvariantCulture, $"{s.Number}  {s.Title}\n");
        foreach (var (what, says) in Lines(s, sheet)) text.Append(CultureInfo.InvariantCulture, $"  {what}: {says.Replace("\n", "\n    ", StringComparison.Ordinal)}\n");
        text.Append(CultureInfo.InvariantCulture, $"  {labels.Record}:\n");
        foreach (var a in s.Asks) text.Append("    ").Append(Line(a, labels)).Append('\n');
        return text.ToString();
    }

    /// <summary>How this cell is made safe: each of the general steps, and under it what the cell has to say of it.</summary>
    public static string Safe(ProcedureSheet sheet)
    {
        var floor = FloorWords.Of(sheet.Words.Tag);
        var text = new StringBuilder(floor.SafeTitle).Append('\n');
        foreach (var (what, says) in SafeLines(sheet))
        {
            text.Append('\n').Append(what).Append('\n');
            foreach (string line in says) text.Append("  ").Append(line).Append('\n');
        }
        return text.Append('\n').Append(floor.SafeDefer).Append('\n').ToString();
    }

    /// <summary>The steps in the order in which they are done, numbered, then what comes down.</summary>
    internal static IEnumerable<(string What, ImmutableArray<string> Says)> SafeLines(ProcedureSheet sheet)
    {
        var (floor, safe) = (FloorWords.Of(sheet.Words.Tag), sheet.Safe);
        yield return ("1  " + floor.SafeStop, safe.Stop);
        yield return ("2  " + floor.SafeOut, []);
        yield return ("3  " + floor.SafeProp, []);
        yield return ("4  " + floor.SafeLock, safe.Lock);
        yield return ("5  " + floor.SafeMeasure, safe.Wait);
        yield return ("6  " + floor.SafeAir, safe.Air);
        yield return (sheet.Words.Safe.WhatStaysLive, safe.Live);
        yield return (floor.WhatFalls, safe.Falls);
    }

    public static string Markdown(ProcedureSheet sheet)
    {
        var labels = sheet.Words.Labels;
        var text = new StringBuilder($"# {sheet.Title}\n\n{sheet.Summary}\n\n");
        if (sheet.Open.Length > 0) text.Append(sheet.Open).Append("\n\n");
        text.Append(labels.LocalRules).Append('\n');
        text.Append(CultureInfo.InvariantCulture, $"\n## {FloorWords.Of(sheet.Words.Tag).SafeTitle}\n");
        foreach (var (what, says) in SafeLines(sheet)) text.Append(CultureInfo.InvariantCulture, $"\n**{what}** {string.Join(' ', says)}\n");
        string place = "";
        foreach (var s in sheet.Steps)
        {
            if (s.Place != place) text.Append(CultureInfo.InvariantCulture, $"\n## {place = s.Place}\n");
            text.Append(CultureInfo.InvariantCulture, $"\n### {s.Number} {s.Title}\n\n");
            foreach (var (what, says) in Lines(s, sheet)) text.Append(CultureInfo.InvariantCulture, $"- **{what}**: {says.ReplaceLineEndings(" ")}\n");
            text.Append(CultureInfo.InvariantCulture, $"\n{labels.Record}:\n\n");
            foreach (var a in s.Asks) text.Append(CultureInfo.InvariantCulture, $"- {Line(a, labels)}\n");
        }
        return text.ToString();
    }

    public static string Csv(ProcedureSheet sheet)
    {
        var text = new StringBuilder("number,step,title,place,energy,by,people,minutes,begin_min,end_min,persons,after,hold_point,held,tools,missing\r\n");
        foreach (var s in sheet.Steps)
        {
            var plan = sheet.PlanOf(s.Step.Id);
            text.Append(string.Join(',',
                CsvCell.Of(s.Number), CsvCell.Of(s.Step.Id), CsvCell.Harmless(s.Title), CsvCell.Of(s.Place), CsvCell.Of(s.Energy), CsvCell.Of(s.By), CsvCell.Of(s.Step.People), CsvCell.Of(s.Step.Minutes),
                CsvCell.Of(plan.Begin), CsvCell.Of(plan.End), CsvCell.Of(Persons(plan)), CsvCell.Of(string.Join(' ', s.Step.After)), s.Step.HoldPoint ? "yes" : "no", CsvCell.Harmless(string.Join("; ", s.Held)),
                CsvCell.Harmless(string.Join("; ", s.Tools)), CsvCell.Of(string.Join(' ', s.Missing)))).Append("\r\n");
        }
        return text.ToString();
    }

    public static string Json(ProcedureSheet sheet, Cell cell, string revision) => JsonAnswer.Of(Format, Version, cell.Name ?? "", revision, json =>
    {
        json.WriteString("language", sheet.Words.Tag);
        json.WriteNumber("people", sheet.People);
        json.WriteNumber("minutes", sheet.Schedule.Minutes);
        json.WriteNumber("minutesOfLongestWay", sheet.Schedule.Critical);
        json.WriteStartObject("makeSafe");
        foreach (var (name, says) in new[] { ("stop", sheet.Safe.Stop), ("lock", sheet.Safe.Lock), ("wait", sheet.Safe.Wait), ("air", sheet.Safe.Air), ("live", sheet.Safe.Live), ("falls", sheet.Safe.Falls) })
        {
            json.WriteStartArray(name);
            foreach (string line in says) json.WriteStringValue(line);
            json.WriteEndArray();
        }
        json.WriteEndObject();
        json.WriteStartArray("waits");
        foreach (var w in sheet.Schedule.Waits)
        {
            json.WriteStartObject();
            json.WriteNumber("person", w.Person + 1);
            json.WriteNumber("from", w.From);
            json.WriteNumber("until", w.Until);
            json.WriteString("before", w.Before);
            json.WriteString("for", w.For);
            json.WriteEndObject();
        }
        json.WriteEndArray();
        json.WriteStartArray("steps");
        foreach (var s in sheet.Steps) Write(json, s, sheet);
        json.WriteEndArray();
    });

    /// <summary>Persons of a plan, counted from 1.</summary>
    public static string Persons(Planned plan) => string.Join("+", plan.People.Select(p => (p + 1).ToString(CultureInfo.InvariantCulture)));

    /// <summary>All that a step says besides what it asks, by heading.</summary>
    public static IEnumerable<(string What, string Says)> Lines(WordedStep s, ProcedureSheet sheet)
    {
        var labels = sheet.Words.Labels;
        var plan = sheet.PlanOf(s.Step.Id);
        (string, string)[] all =
        [
            (labels.What, s.What), (labels.Why, s.Why), (labels.Hazard, s.Hazard), (labels.Caution, s.Caution), (labels.Energy, s.Energy), (labels.HeldBy, string.Join("; ", s.Held)),
            (labels.By, $"{s.By}, {labels.People} {s.Step.People.ToString(CultureInfo.InvariantCulture)}"), (labels.Minutes, s.Minutes), (labels.Begins, StepTexts.Time(plan.Begin, sheet.Words)), (labels.Persons, Persons(plan)),
            (labels.After, string.Join(", ", s.After.Select(a => a.ToString(CultureInfo.InvariantCulture)))), (labels.Tools, string.Join(", ", s.Tools)), (labels.Open, string.Join(", ", s.Missing)),
            (labels.Bad, s.Bad), (labels.DependsOn, Fields(s.Step.Inputs)),
        ];
        foreach (var line in all)
            if (line.Item2.Length > 0) yield return line;
        if (s.Step.HoldPoint) yield return (labels.HoldPoint.Split(':')[0], labels.HoldPoint.Split(':')[^1].Trim());
    }

    /// <summary>Fields one by one, or where they are too many to be read how many of each section.</summary>
    private static string Fields(ImmutableArray<string> inputs)
    {
        const int MostRead = 40;
        return string.Join(", ", inputs.Length <= MostRead ? inputs : inputs.GroupBy(Section).Select(g => g.Count() == 1 ? g.First() : string.Create(CultureInfo.InvariantCulture, $"{g.Key}/… ({g.Count()})")));

        static string Section(string pointer) => string.Join('/', pointer.Split('/').Take(3));
    }

    private static string Line(AskText a, ProcedureLabels labels)
    {
        var text = new StringBuilder(a.What);
        if (a.Form.Length > 0) text.Append(" [").Append(a.Form).Append(']');
        if (a.Planned.Length > 0) text.Append("; ").Append(a.Of is AskedValue { ShownAfter: true } ? a.Planned : $"{labels.Expected} {a.Planned}");
        if (a.Accepted.Length > 0 && a.Of is AskedValue) text.Append("; ").Append(labels.Accepted).Append(' ').Append(a.Accepted);
        if (a.Of is AskedValue { Accepted: null }) text.Append("; ").Append(labels.Kept);
        return text.ToString();
    }

    private static void Write(Utf8JsonWriter json, WordedStep s, ProcedureSheet sheet)
    {
        var (step, plan) = (s.Step, sheet.PlanOf(s.Step.Id));
        json.WriteStartObject();
        json.WriteNumber("number", s.Number);
        json.WriteString("id", step.Id);
        json.WriteString("kind", step.Kind);
        json.WriteString("subject", step.Subject.Pointer);
        json.WriteString("title", s.Title);
        json.WriteString("what", s.What);
        json.WriteString("why", s.Why);
        json.WriteString("hazard", s.Hazard);
        json.WriteString("caution", s.Caution);
        json.WriteString("ifNot", s.Bad);
        json.WriteString("place", Camel(step.Place.ToString()));
        json.WriteString("energy", Camel(step.Energy.ToString()));
        json.WriteString("by", Camel(step.By.ToString()));
        json.WriteNumber("people", step.People);
        json.WriteNumber("minutes", step.Minutes);
        json.WriteNumber("begin", plan.Begin);
        json.WriteNumber("end", plan.End);
        json.WriteBoolean("onLongestWay", sheet.Schedule.OnCriticalWay.Contains(step.Id));
        json.WriteBoolean("holdPoint", step.HoldPoint);
        Texts("persons", plan.People.Select(p => (p + 1).ToString(CultureInfo.InvariantCulture)));
        Texts("after", step.After);
        Texts("inputs", step.Inputs);
        Texts("missing", s.Missing);
        Texts("tools", step.Tools);
        json.WriteStartArray("held");
        foreach (var held in step.Held)
        {
            json.WriteStartObject();
            json.WriteString("chain", held.Chain);
            json.WriteString("by", held.By);
            json.WriteEndObject();
        }
        json.WriteEndArray();
        json.WriteStartArray("asks");
        foreach (var a in s.Asks)
        {
            json.WriteStartObject();
            json.WriteString("id", a.Of.Id);
            json.WriteString("what", a.What);
            json.WriteString("form", a.Of switch { AskedValue => "value", AskedChoice => "choice", AskedCount => "count", AskedText => "text", AskedTick => "tick", AskedPhotograph => "photograph", _ => "signature" });
            if (a.Of is AskedValue v)
            {
                json.WriteString("unit", v.Unit);
                json.WriteFinite("planned", v.Expected);
                json.WriteFinite("lower", v.Accepted?.Lower ?? double.NaN);
                json.WriteFinite("upper", v.Accepted?.Upper ?? double.NaN);
                json.WriteBoolean("plannedShownAfter", v.ShownAfter);
            }
            else if (a.Of is AskedCount c) json.WriteNumber("planned", c.Expected);
            else if (a.Of is AskedChoice { } choice)
            {
                json.WriteString("planned", choice.Expected);
                json.WriteStartArray("answers");
                foreach (string option in choice.Options) json.WriteStringValue(option);
                json.WriteEndArray();
            }
            json.WriteEndObject();
        }
        json.WriteEndArray();
        json.WriteEndObject();

        void Texts(string name, IEnumerable<string> texts)
        {
            json.WriteStartArray(name);
            foreach (string text in texts) json.WriteStringValue(text);
            json.WriteEndArray();
        }

        static string Camel(string name) => char.ToLowerInvariant(name[0]) + name[1..];
    }
}
