using System.Collections.Immutable;
using System.Text.Json;
using Trivet.Assessment;
using Trivet.Findings;
using Trivet.Numerics;
using Trivet.Views.Answers;
using Trivet.Views.Words;

namespace Trivet.Views.Ledgers;

/// <summary>
/// The JSON form of an assessment, documented in docs/output-json.md. Fields are added, never renamed or given another meaning,
/// while <see cref="Version"/> stands. Numbers are SI; what is not finite is null.
/// </summary>
public static class AssessmentJson
{
    public const string Format = "trivet-assessment";
    public const int Version = 1;

    /// <param name="revision">Hash that names the revision of the cell; empty when it has none.</param>
    public static string Write(Assessed assessed, string revision, Locale? locale = null) => JsonAnswer.Of(json => Write(json, assessed, revision, locale));

    private static void Write(Utf8JsonWriter json, Assessed assessed, string revision, Locale? locale)
    {
        var (cell, ledger) = (assessed.Cell, assessed.Ledger);
        json.WriteString("format", Format);
        json.WriteNumber("version", Version);
        json.WriteString("engine", typeof(Ledger).Assembly.GetName().Version?.ToString(3));
        json.WriteStartObject("cell");
        if (cell.Name is null) json.WriteNull("name");
        else json.WriteString("name", cell.Name);
        if (revision.Length == 0) json.WriteNull("revision");
        else json.WriteString("revision", revision);
        json.WriteEndObject();
        json.WriteBoolean("proved", assessed.Proved);

        json.WriteStartObject("summary");
        json.WriteBoolean("allHold", ledger.AllHold);
        foreach (var verdict in Enum.GetValues<Verdict>()) json.WriteNumber(Name(verdict), ledger.Count(verdict));
        json.WriteFinite("worstMargin", ledger.WorstMargin);
        json.WriteString("sentence", LedgerTable.SummaryOf(ledger, locale));
        json.WriteEndObject();

        json.WriteStartArray("findings");
        foreach (var finding in ledger.Findings) Write(json, finding, assessed, locale);
        json.WriteEndArray();

        json.WriteStartArray("doesNotApply");
        foreach (var c in ledger.Coverage)
        {
            json.WriteStartObject();
            json.WriteString("rule", c.Rule.Id);
            Write(json, c.Subject);
            json.WriteString("reason", Sentences.Of(c.Reason, cell, locale));
            Write(json, c.Reason);
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    private static void Write(Utf8JsonWriter json, Finding f, Assessed assessed, Locale? locale)
    {
        json.WriteStartObject();
        json.WriteString("id", f.Id);
        json.WriteString("rule", f.Rule.Id);
        Write(json, f.Subject);
        json.WriteString("verdict", Name(f.Verdict));
        if (f.OpenBecause is { } because) json.WriteString("openBecause", Name(because));
        else json.WriteNull("openBecause");
        json.WriteFinite("margin", f.Margin);
        switch (f)
        {
            case Judged j:
                json.WriteString("kind", "judged");
                json.WriteString("unit", f.Rule.Unit);
                json.WriteFinite("value", j.Value);
                json.WriteFinite("bound", j.Bound);
                json.WriteFinite("uncertainty", j.Uncertainty);
                json.WriteFinite("lower", j.Limit.Lower);
                json.WriteFinite("upper", j.Limit.Upper);
                json.WriteString("assurance", Name(j.Assurance));
                Write(json, "limitSource", j.Limit.Source);
                if (j.Beside is { } beside)
                {
                    json.WriteStartObject("beside");
                    json.WriteString("id", beside.Id);
                    json.WriteFinite("value", beside.Value);
                    json.WriteEndObject();
                }
                break;
            case YesNo y:
                json.WriteString("kind", "yesNo");
                Texts(json, "evidence", y.Evidence);
                break;
            case Unjudged u:
                json.WriteString("kind", "unjudged");
                json.WriteString("reason", Name(u.Reason));
                Texts(json, "missing", u.Missing);
                json.WriteString("detail", u.Detail is { } detail ? Sentences.Of(detail, assessed.Cell, locale) : "");
                if (u.Detail is not null) Write(json, u.Detail);
                break;
        }

        Write(json, "method", f.Rule.Method);
        if (f.Worst is { } worst) Write(json, worst);
        if (f.WorstTime is { } time) json.WriteFinite("worstTime", time);
        Texts(json, "inputs", f.Inputs);
        json.WriteStartArray("advice");
        foreach (var advice in f.Advice)
        {
            json.WriteStartObject();
            json.WriteString("pointer", advice.Pointer);
            json.WriteFinite("from", advice.From);
            json.WriteFinite("to", advice.To);
            json.WriteFinite("marginThen", advice.MarginThen);
            json.WriteFinite("worstElsewhere", advice.WorstElsewhere);
            json.WriteString("sentence", Sentences.Of(advice, assessed.Cell, locale));
            json.WriteEndObject();
        }

        json.WriteEndArray();
        json.WriteString("sentence", Sentences.Of(f, assessed.Cell, locale));
        json.WriteEndObject();
    }

    private static void Write(Utf8JsonWriter json, Subject subject)
    {
        json.WriteStartObject("subject");
        json.WriteString("pointer", subject.Pointer);
        json.WriteString("case", subject.Case);
        json.WriteEndObject();
    }

    private static void Write(Utf8JsonWriter json, Reason reason)
    {
        json.WriteStartObject("because");
        json.WriteString("id", reason.Id);
        Texts(json, "fields", reason.Fields);
        json.WriteEndObject();
    }

    private static void Write(Utf8JsonWriter json, string name, Source source)
    {
        json.WriteStartObject(name);
        json.WriteString("kind", Name(source.Kind));
        json.WriteString("key", source.Key);
        json.WriteString("place", source.Place);
        json.WriteEndObject();
    }

    private static void Write(Utf8JsonWriter json, Place place)
    {
        json.WriteStartObject("worst");
        Vector(json, "tcp", place.P_C);
        json.WriteFinite("rotary", place.Rotary);
        Vector(json, "platform", place.P_B);
        json.WriteFinite("linearAxis", place.LinearAxis);
        json.WriteEndObject();
    }

    private static void Vector(Utf8JsonWriter json, string name, Vec3 v)
    {
        json.WriteStartArray(name);
        for (int i = 0; i < 3; i++)
        {
            if (double.IsFinite(v[i])) json.WriteNumberValue(v[i]);
            else json.WriteNullValue();
        }

        json.WriteEndArray();
    }

    private static void Texts(Utf8JsonWriter json, string name, ImmutableArray<string> texts)
    {
        json.WriteStartArray(name);
        foreach (string t in texts) json.WriteStringValue(t);
        json.WriteEndArray();
    }

    /// <summary>The name of a state in this form: its English word in lower camel case.</summary>
    internal static string Name<T>(T state) where T : struct, Enum
    {
        string name = state.ToString();
        return char.ToLowerInvariant(name[0]) + name[1..];
    }
}
