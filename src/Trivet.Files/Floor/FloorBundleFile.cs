using System.Collections.Immutable;
using System.Security.Cryptography;
using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using Trivet.BringUp;
using Trivet.Findings;

namespace Trivet.Files.Floor;

/// <summary>
/// A floor bundle as JSON: format version, content, and the hash of the content, so that a bundle that was cut or altered on its way
/// is refused. The hash guards against damage, not against ill will. Lengths are text with their unit.
/// </summary>
public static class FloorBundleFile
{
    public const int Version = 1;

    /// <summary>Largest bundle read, bytes: what a browser keeps for one page, by common practice five million characters, bounds it.</summary>
    public const int LargestFile = 4 * 1024 * 1024;

    private const string Again = "Export the bundle again and bring it over whole.";

    // The text is never part of a page, so drawings keep their angle brackets and the file its readers.
    private static readonly JsonWriterOptions Style = new() { Indented = true, NewLine = "\n", Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    /// <summary>SHA-256 of the content in its one written form, lower-case hexadecimal.</summary>
    public static string Hash(FloorBundle bundle) => Convert.ToHexStringLower(SHA256.HashData(Json(bundle, hash: "")));

    public static string Write(FloorBundle bundle) => Encoding.UTF8.GetString(Json(bundle, Hash(bundle)));

    /// <summary>Reads a bundle. Never throws, whatever the input.</summary>
    public static FloorBundleRead Read(ReadOnlyMemory<byte> utf8)
    {
        if (utf8.Length > LargestFile) return Refuse("The file is larger than a bundle may be.", "See that it is the file you mean.");
        try
        {
            using var document = JsonDocument.Parse(utf8, new JsonDocumentOptions { MaxDepth = 8 });
            var root = document.RootElement;
            if (root.ValueKind != JsonValueKind.Object || !root.TryGetProperty("trivetFloor", out var version))
                return Refuse("This file is not a floor bundle.", "Export one from the cell's page at the desk.");
            if (version.ValueKind != JsonValueKind.Number || !version.TryGetInt32(out int number) || number != Version)
                return Refuse("This bundle is of another version than this page reads.", "Bring the page up to date, or export the bundle with the program that serves it.");

            var cell = root.GetProperty("cell");
            var bundle = new FloorBundle(
                Text(cell, "id"), Text(cell, "name"), Text(cell, "revision"),
                [.. root.GetProperty("steps").EnumerateArray().Select(Step)],
                root.GetProperty("pictures").EnumerateObject().ToImmutableSortedDictionary(p => p.Name, p => p.Value.GetString() ?? "", StringComparer.Ordinal));
            return Hash(bundle) == Text(root, "hash") ? new FloorBundleRead(bundle, "", "") : Refuse("The bundle was cut or altered: its hash does not fit.", Again);
        }
        // The reader's own exceptions for text that is not JSON, a field that is not there, a value of another kind, and a number out of range.
        catch (Exception e) when (e is JsonException or KeyNotFoundException or InvalidOperationException or FormatException or ArgumentException)
        {
            return Refuse("This bundle cannot be read.", Again);
        }
    }

    private static FloorStep Step(JsonElement step)
    {
        var source = step.GetProperty("source");
        var limit = Limit.Between(Length(step, "lower"), Length(step, "upper"),
            new Source(Enum.Parse<SourceKind>(Text(source, "kind")), Text(source, "key"), Text(source, "place")));
        var measuring = new Measuring(
            Text(step, "id"), Enum.Parse<MeasuredLength>(Text(step, "measures")), new Subject(Text(step, "subject"), Text(step, "case")),
            [.. step.GetProperty("inputs").EnumerateArray().Select(i => i.GetString() ?? "")], Length(step, "planned"), limit);
        return new FloorStep(measuring, Text(step, "title"), Text(step, "how"), Text(step, "caution"), Text(step, "picture"));
    }

    private static string Text(JsonElement element, string name) => element.GetProperty(name).GetString() ?? "";

    private static double Length(JsonElement step, string name) =>
        Quantity.Parse(Text(step, name), Dimension.Length) is { Ok: true } read ? read.Value : throw new FormatException(name);

    private static byte[] Json(FloorBundle bundle, string hash)
    {
        using var stream = new MemoryStream();
        using (var json = new Utf8JsonWriter(stream, Style))
        {
            json.WriteStartObject();
            json.WriteNumber("trivetFloor", Version);
            json.WriteString("hash", hash);
            json.WriteStartObject("cell");
            json.WriteString("id", bundle.CellId);
            json.WriteString("name", bundle.CellName);
            json.WriteString("revision", bundle.Revision);
            json.WriteEndObject();
            json.WriteStartArray("steps");
            foreach (var step in bundle.Steps) Write(json, step);
            json.WriteEndArray();
            json.WriteStartObject("pictures");
            foreach (var (name, svg) in bundle.Pictures) json.WriteString(name, svg);
            json.WriteEndObject();
            json.WriteEndObject();
        }
        return stream.ToArray();
    }

    private static void Write(Utf8JsonWriter json, FloorStep step)
    {
        var measuring = step.Measuring;
        json.WriteStartObject();
        json.WriteString("id", measuring.Id);
        json.WriteString("measures", measuring.What.ToString());
        json.WriteString("title", step.Title);
        json.WriteString("how", step.How);
        json.WriteString("caution", step.Caution);
        json.WriteString("picture", step.Picture);
        json.WriteString("subject", measuring.Subject.Pointer);
        json.WriteString("case", measuring.Subject.Case);
        json.WriteStartArray("inputs");
        foreach (string input in measuring.Inputs) json.WriteStringValue(input);
        json.WriteEndArray();
        json.WriteString("planned", Quantity.Format(measuring.Planned, Dimension.Length));
        json.WriteString("lower", Quantity.Format(measuring.Limit.Lower, Dimension.Length));
        json.WriteString("upper", Quantity.Format(measuring.Limit.Upper, Dimension.Length));
        json.WriteStartObject("source");
        json.WriteString("kind", measuring.Limit.Source.Kind.ToString());
        json.WriteString("key", measuring.Limit.Source.Key);
        json.WriteString("place", measuring.Limit.Source.Place);
        json.WriteEndObject();
        json.WriteEndObject();
    }

    private static FloorBundleRead Refuse(string problem, string remedy) => new(null, problem, remedy);
}
