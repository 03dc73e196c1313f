using System.Collections.Immutable;
using System.Globalization;
using System.Text.Json;
using Trivet.Findings;
using Trivet.Procedures;

namespace Trivet.Files.Floor;

/// <summary>A step of a bundle as JSON.</summary>
internal static class FloorStepJson
{
    /// <summary>Throws the reader's own exceptions where something is missing or of another kind.</summary>
    public static FloorStep Read(JsonElement json) => new(
        new Step
        {
            Id = Text(json, "id"),
            Kind = Text(json, "kind"),
            Subject = new Subject(Text(json, "subject"), Text(json, "case")),
            Place = Enum.Parse<StepPlace>(Text(json, "place")),
            Energy = Enum.Parse<EnergyLevel>(Text(json, "energy")),
            By = Enum.Parse<Skill>(Text(json, "by")),
            People = json.GetProperty("people").GetInt32(),
            Minutes = Number(json, "minutes"),
            After = Texts(json, "after"),
            Inputs = Texts(json, "inputs"),
            Asks = [.. json.GetProperty("asks").EnumerateArray().Select(Ask)],
            Names = Texts(json, "names"),
            Tools = Texts(json, "tools"),
            Held = [.. json.GetProperty("held").EnumerateArray().Select(h => new ChainHeld(Text(h, "chain"), Text(h, "by")))],
            HoldPoint = json.GetProperty("holdPoint").GetBoolean(),
            UpsetBy = [.. Texts(json, "upsetBy").Select(Enum.Parse<Upset>)],
        },
        json.GetProperty("words").EnumerateObject().ToImmutableSortedDictionary(w => w.Name, w => Words(w.Value), StringComparer.Ordinal),
        Text(json, "picture"));

    public static void Write(Utf8JsonWriter json, FloorStep of)
    {
        var step = of.Step;
        json.WriteStartObject();
        json.WriteString("id", step.Id);
        json.WriteString("kind", step.Kind);
        json.WriteString("subject", step.Subject.Pointer);
        json.WriteString("case", step.Subject.Case);
        json.WriteString("place", step.Place.ToString());
        json.WriteString("energy", step.Energy.ToString());
        json.WriteString("by", step.By.ToString());
        json.WriteNumber("people", step.People);
        json.WriteString("minutes", Number(step.Minutes));
        FloorBundleFile.Texts(json, "after", step.After);
        FloorBundleFile.Texts(json, "inputs", step.Inputs);
        json.WriteStartArray("asks");
        foreach (var ask in step.Asks) Write(json, ask);
        json.WriteEndArray();
        FloorBundleFile.Texts(json, "names", step.Names);
        FloorBundleFile.Texts(json, "tools", step.Tools);
        json.WriteStartArray("held");
        foreach (var held in step.Held)
        {
            json.WriteStartObject();
            json.WriteString("chain", held.Chain);
            json.WriteString("by", held.By);
            json.WriteEndObject();
        }
        json.WriteEndArray();
        json.WriteBoolean("holdPoint", step.HoldPoint);
        FloorBundleFile.Texts(json, "upsetBy", step.UpsetBy.Select(u => u.ToString()));
        json.WriteStartObject("words");
        foreach (var (language, text) in of.Words)
        {
            json.WriteStartObject(language);
            json.WriteString("title", text.Title);
            json.WriteString("how", text.How);
            json.WriteString("caution", text.Caution);
            json.WriteString("bad", text.Bad);
            json.WriteStartObject("labels");
            foreach (var (id, label) in text.Labels) json.WriteString(id, label);
            json.WriteEndObject();
            json.WriteEndObject();
        }
        json.WriteEndObject();
        json.WriteString("picture", of.Picture);
        json.WriteEndObject();
    }

    private static Asked Ask(JsonElement json)
    {
        string id = Text(json, "id");
        return Text(json, "kind") switch
        {
            "value" => new AskedValue(id, Text(json, "unit"), OptionalNumber(json, "expected", double.NaN),
                json.TryGetProperty("source", out var source)
                    ? Limit.Between(OptionalNumber(json, "lower", double.NegativeInfinity), OptionalNumber(json, "upper", double.PositiveInfinity),
                        new Source(Enum.Parse<SourceKind>(Text(source, "kind")), Text(source, "key"), Text(source, "place")))
                    : null,
                json.GetProperty("shownAfter").GetBoolean()),
            "choice" => new AskedChoice(id, Texts(json, "options"), Text(json, "expected")),
            "count" => new AskedCount(id, json.GetProperty("expected").GetInt32()),
            "text" => new AskedText(id),
            "tick" => new AskedTick(id),
            "photograph" => new AskedPhotograph(id),
            "signature" => new AskedSignature(id, Enum.Parse<Skill>(Text(json, "by"))),
            _ => throw new FormatException(id),
        };
    }

    private static void Write(Utf8JsonWriter json, Asked ask)
    {
        json.WriteStartObject();
        json.WriteString("id", ask.Id);
        switch (ask)
        {
            case AskedValue value:
                json.WriteString("kind", "value");
                json.WriteString("unit", value.Unit);
                if (double.IsFinite(value.Expected)) json.WriteString("expected", Number(value.Expected));
                if (value.Accepted is { } limit)
                {
                    if (double.IsFinite(limit.Lower)) json.WriteString("lower", Number(limit.Lower));
                    if (double.IsFinite(limit.Upper)) json.WriteString("upper", Number(limit.Upper));
                    json.WriteStartObject("source");
                    json.WriteString("kind", limit.Source.Kind.ToString());
                    json.WriteString("key", limit.Source.Key);
                    json.WriteString("place", limit.Source.Place);
                    json.WriteEndObject();
                }
                json.WriteBoolean("shownAfter", value.ShownAfter);
                break;
            case AskedChoice choice:
                json.WriteString("kind", "choice");
                FloorBundleFile.Texts(json, "options", choice.Options);
                json.WriteString("expected", choice.Expected);
                break;
            case AskedCount count:
                json.WriteString("kind", "count");
                json.WriteNumber("expected", count.Expected);
                break;
            case AskedText: json.WriteString("kind", "text"); break;
            case AskedTick: json.WriteString("kind", "tick"); break;
            case AskedPhotograph: json.WriteString("kind", "photograph"); break;
            case AskedSignature signature:
                json.WriteString("kind", "signature");
                json.WriteString("by", signature.By.ToString());
                break;
            default: throw new ArgumentException($"{ask.GetType().Name} is not written", nameof(ask));
        }
        json.WriteEndObject();
    }

    private static FloorText Words(JsonElement json) => new(
        Text(json, "title"), Text(json, "how"), Text(json, "caution"), Text(json, "bad"),
        json.GetProperty("labels").EnumerateObject().ToImmutableSortedDictionary(l => l.Name, l => l.Value.GetString() ?? "", StringComparer.Ordinal));

    private static string Text(JsonElement json, string name) => FloorBundleFile.Text(json, name);

    private static ImmutableArray<string> Texts(JsonElement json, string name) => [.. json.GetProperty(name).EnumerateArray().Select(t => t.GetString() ?? "")];

    private static string Number(double value) => value.ToString("R", CultureInfo.InvariantCulture);

    private static double Number(JsonElement json, string name) =>
        double.TryParse(Text(json, name), NumberStyles.Float, CultureInfo.InvariantCulture, out double value) && double.IsFinite(value) ? value : throw new FormatException(name);

    private static double OptionalNumber(JsonElement json, string name, double otherwise) => json.TryGetProperty(name, out _) ? Number(json, name) : otherwise;
}
