using System.Buffers;
using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.RegularExpressions;
using Trivet.Cells;
using Trivet.Files.Fields;

namespace Trivet.Files;

/// <summary>
/// The JSON Schema (draft 2020-12) of the cell document, generated from the same field table the reader uses. Editors complete and
/// check by it; what it can not say (that the family decides between length and angle) the reader does.
/// </summary>
public static class CellSchema
{
    /// <summary>The schema's name; no address, since nothing has to be fetched.</summary>
    public const string Id = "urn:trivet:cell:1";

    public static string Json()
    {
        var buffer = new ArrayBufferWriter<byte>();
        using (var json = new Utf8JsonWriter(buffer, new JsonWriterOptions { Indented = true, NewLine = "\n", Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping }))
        {
            json.WriteStartObject();
            json.WriteString("$schema", "https://json-schema.org/draft/2020-12/schema");
            json.WriteString("$id", Id);
            json.WriteString("title", "Trivet cell");
            json.WriteString("description", "One pick-and-place cell around a delta robot: robot, frame, tool, stations, cabinet and cables.");
            WriteShape(json, CellShape.Cell, isDocument: true);
            WriteQuantities(json);
            json.WriteEndObject();
        }

        return Encoding.UTF8.GetString(buffer.WrittenSpan) + "\n";
    }

    /// <summary>Members of an object schema: type, properties, nothing else allowed.</summary>
    private static void WriteShape(Utf8JsonWriter json, Shape shape, bool isDocument = false)
    {
        json.WriteString("type", "object");
        json.WriteStartObject("properties");
        if (isDocument)
        {
            json.WriteStartObject("trivet");
            json.WriteString("description", "Version of the format; stands first.");
            json.WriteNumber("const", CellFormat.Current);
            json.WriteEndObject();
            json.WriteStartObject("$schema");
            json.WriteString("description", "Names this schema for an editor; dropped when the file is written again.");
            json.WriteString("type", "string");
            json.WriteEndObject();
        }

        foreach (var field in shape.Fields)
        {
            json.WriteStartObject(field.Name);
            WriteField(json, field);
            json.WriteEndObject();
        }

        json.WriteEndObject();
        if (isDocument)
        {
            json.WriteStartArray("required");
            json.WriteStringValue("trivet");
            json.WriteEndArray();
        }

        json.WriteBoolean("additionalProperties", false);
    }

    private static void WriteField(Utf8JsonWriter json, Field field)
    {
        switch (field)
        {
            case Section section:
                json.WriteString("description", section.Description);
                WriteShape(json, section.Shape);
                break;
            case Collection collection:
                json.WriteString("description", collection.Description + " Keyed by id.");
                json.WriteString("type", "object");
                json.WriteStartObject("patternProperties");
                json.WriteStartObject(Ids.Pattern);
                WriteShape(json, collection.Shape);
                json.WriteEndObject();
                json.WriteEndObject();
                json.WriteBoolean("additionalProperties", false);
                break;
            case Leaf leaf:
                WriteLeaf(json, leaf);
                break;
        }
    }

    private static void WriteLeaf(Utf8JsonWriter json, Leaf leaf)
    {
        json.WriteString("description", Described(leaf));
        switch (leaf.Kind)
        {
            case FieldKind.Text:
                json.WriteString("type", "string");
                break;
            case FieldKind.Whole:
                json.WriteString("type", "integer");
                json.WriteNumber("minimum", int.MinValue);
                json.WriteNumber("maximum", int.MaxValue);
                break;
            case FieldKind.YesNo:
                json.WriteString("type", "boolean");
                break;
            case FieldKind.Choice:
                json.WriteStartArray("enum");
                foreach (string word in leaf.Choices) json.WriteStringValue(word);
                json.WriteEndArray();
                break;
            case FieldKind.Quantity when leaf.Dimension == Dimension.One:
                json.WriteString("type", "number");
                break;
            default:
                json.WriteString("$ref", "#/$defs/" + Name(leaf.Dimension));
                break;
        }
    }

    private static void WriteQuantities(Utf8JsonWriter json)
    {
        json.WriteStartObject("$defs");
        foreach (var dimension in Enum.GetValues<Dimension>().Where(d => d != Dimension.One))
        {
            var sets = Units.For(dimension);
            json.WriteStartObject(Name(dimension));
            json.WriteString("title", string.Join(" or ", sets.Select(s => s.Measures)) + " with its unit");
            json.WriteString("description", $"Number and unit as text. Units: {Quantity.UnitsThatFit(dimension)}.");
            json.WriteString("type", "string");
            json.WriteString("pattern", Pattern(dimension));
            json.WriteStartArray("examples");
            foreach (var set in sets) json.WriteStringValue(set.Example);
            json.WriteEndArray();
            json.WriteEndObject();
        }

        json.WriteEndObject();
    }

    /// <summary>The regular expression (ECMA-262) of a quantity: number, decimal comma or point, fraction; then one of the units.</summary>
    internal static string Pattern(Dimension dimension)
    {
        var spellings = Units.For(dimension).SelectMany(s => s.All).SelectMany(u => u.Spellings.Append(u.Symbol)).Distinct()
            .Select(s => Regex.Escape(s).Replace("deg", "(?:deg|°)", StringComparison.Ordinal).Replace("\\ ", "[ ·]?", StringComparison.Ordinal)
                .Replace("µ", "[µμu]", StringComparison.Ordinal).Replace("²", "(?:²|\\^?2)", StringComparison.Ordinal))
            .Distinct();
        return $@"^\s*[-+−]?[0-9.,][0-9.,/\s]*(?:[eE][-+]?[0-9]+)?\s*(?:{string.Join('|', spellings)})\s*$";
    }

    internal static string Described(Leaf leaf) =>
        leaf.NeededAt is { } depth ? $"{leaf.Description} Asked for from depth {Words.Depth[(int)depth]} on." : leaf.Description;

    private static string Name(Dimension dimension)
    {
        string name = dimension.ToString();
        return char.ToLowerInvariant(name[0]) + name[1..];
    }
}
