using System.Collections.Immutable;
using System.Security.Cryptography;
using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using Trivet.AsBuilt;

namespace Trivet.Files.Floor;

/// <summary>
/// A floor bundle as JSON: format version, content, and the hash of the content, so that a bundle that was cut or altered on its way
/// is refused. The hash guards against damage, not against ill will. Numbers are texts that read back to the same double.
/// </summary>
public static class FloorBundleFile
{
    /// <summary>Version 1 knew lengths only; from 2 on a bundle has the steps of the procedure, each with all that it asks; from 3 on how this cell is made safe.</summary>
    public const int Version = 3;

    /// <summary>Largest bundle read, bytes.</summary>
    public const int LargestFile = 8 * 1024 * 1024;

    // The text is never part of a page, so drawings keep their angle brackets and the file its readers.
    private static readonly JsonWriterOptions Style = new() { Indented = true, NewLine = "\n", Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    /// <summary>SHA-256 of the content in its one written form, lower-case hexadecimal.</summary>
    public static string Hash(FloorBundle bundle) => Convert.ToHexStringLower(SHA256.HashData(Json(bundle, hash: "")));

    public static string Write(FloorBundle bundle) => Encoding.UTF8.GetString(Json(bundle, Hash(bundle)));

    /// <summary>Reads a bundle. Never throws, whatever the input.</summary>
    public static FloorBundleRead Read(ReadOnlyMemory<byte> utf8)
    {
        if (utf8.Length > LargestFile) return Refuse(BundleProblem.TooLarge);
        try
        {
            using var document = JsonDocument.Parse(utf8, new JsonDocumentOptions { MaxDepth = 12 });
            var root = document.RootElement;
            if (root.ValueKind != JsonValueKind.Object || !root.TryGetProperty("trivetFloor", out var version))
                return Refuse(BundleProblem.NotABundle);
            if (version.ValueKind != JsonValueKind.Number || !version.TryGetInt32(out int number) || number > Version)
                return Refuse(BundleProblem.LaterVersion);
            if (number < Version)
                return Refuse(BundleProblem.EarlierVersion);

            var cell = root.GetProperty("cell");
            var bundle = new FloorBundle(
                Text(cell, "id"), Text(cell, "name"), Text(cell, "revision"),
                [.. root.GetProperty("steps").EnumerateArray().Select(FloorStepJson.Read)],
                ReleasingOf(root.GetProperty("releasing")),
                root.GetProperty("moves").EnumerateObject().ToImmutableSortedDictionary(
                    p => p.Name, p => p.Value.EnumerateArray().Select(m => new FieldMove(Text(m, "field"), Text(m, "from"), Text(m, "to"))).ToImmutableArray(), StringComparer.Ordinal),
                root.GetProperty("pictures").EnumerateObject().ToImmutableSortedDictionary(p => p.Name, p => p.Value.GetString() ?? "", StringComparer.Ordinal),
                root.GetProperty("safe").EnumerateObject().ToImmutableSortedDictionary(p => p.Name, p => SafeOf(p.Value), StringComparer.Ordinal));
            if (bundle.Steps.DistinctBy(s => s.Step.Id).Count() != bundle.Steps.Length) return Refuse(BundleProblem.StepTwice);
            return Hash(bundle) == Text(root, "hash") ? new FloorBundleRead(bundle, BundleProblem.None) : Refuse(BundleProblem.Altered);
        }
        // The reader's own exceptions for text that is not JSON, a field that is not there, a value of another kind, and a number out of range.
        catch (Exception e) when (e is JsonException or KeyNotFoundException or InvalidOperationException or FormatException or ArgumentException or OverflowException)
        {
            return Refuse(BundleProblem.Unreadable);
        }
    }

    private static Releasing ReleasingOf(JsonElement element) => new(
        [.. element.GetProperty("bySecond").EnumerateArray().Select(d => Enum.Parse<Deviation>(d.GetString() ?? ""))],
        [.. element.GetProperty("people").EnumerateArray().Select(p => p.GetString() ?? "")]);

    private static SafeText SafeOf(JsonElement element)
    {
        return new(Of("stop"), Of("lock"), Of("wait"), Of("live"), Of("air"), Of("falls"));

        ImmutableArray<string> Of(string name) => [.. element.GetProperty(name).EnumerateArray().Select(t => t.GetString() ?? "")];
    }

    internal static string Text(JsonElement element, string name) => element.GetProperty(name).GetString() ?? "";

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
            foreach (var step in bundle.Steps) FloorStepJson.Write(json, step);
            json.WriteEndArray();
            json.WriteStartObject("releasing");
            Texts(json, "bySecond", bundle.Releasing.BySecond.Order().Select(d => d.ToString()));
            Texts(json, "people", bundle.Releasing.People.Order(StringComparer.Ordinal));
            json.WriteEndObject();
            json.WriteStartObject("moves");
            foreach (var (revision, moves) in bundle.Moves)
            {
                json.WriteStartArray(revision);
                foreach (var move in moves)
                {
                    json.WriteStartObject();
                    json.WriteString("field", move.Pointer);
                    json.WriteString("from", move.From);
                    json.WriteString("to", move.To);
                    json.WriteEndObject();
                }
                json.WriteEndArray();
            }
            json.WriteEndObject();
            json.WriteStartObject("pictures");
            foreach (var (name, svg) in bundle.Pictures) json.WriteString(name, svg);
            json.WriteEndObject();
            json.WriteStartObject("safe");
            foreach (var (tag, safe) in bundle.Safe)
            {
                json.WriteStartObject(tag);
                Texts(json, "stop", safe.Stop);
                Texts(json, "lock", safe.Lock);
                Texts(json, "wait", safe.Wait);
                Texts(json, "live", safe.Live);
                Texts(json, "air", safe.Air);
                Texts(json, "falls", safe.Falls);
                json.WriteEndObject();
            }
            json.WriteEndObject();
            json.WriteEndObject();
        }
        return stream.ToArray();
    }

    internal static void Texts(Utf8JsonWriter json, string name, IEnumerable<string> texts)
    {
        json.WriteStartArray(name);
        foreach (string text in texts) json.WriteStringValue(text);
        json.WriteEndArray();
    }

    private static FloorBundleRead Refuse(BundleProblem problem) => new(null, problem);
}
