using System.Text;
using Trivet.Files.Fields;

namespace Trivet.Files;

/// <summary>The reference of all fields for people, as Markdown, generated from the field table.</summary>
public static class CellReference
{
    public static string Markdown()
    {
        var text = new StringBuilder();
        text.Append("# The fields of a cell file\n\n");
        text.Append("Generated from the field table that reads the file (`CellReference.Markdown`); a test keeps this page true. ");
        text.Append("How the document works is told in [cell-file.md](cell-file.md).\n\n");
        text.Append("*From* names the depth from which a field is asked for; fields without one are optional. `<id>` stands for an id of your own.\n");
        Shape(text, "the document", "", CellShape.Cell, "What people see first: name, depth and note, then one section each.");

        text.Append("\n## Units\n\n| kind | units | example |\n| --- | --- | --- |\n");
        foreach (var set in Units.Sets)
        {
            string units = set.Dimension == Dimension.One ? "none" : Quantity.UnitsThatFit(set.Dimension);
            Line(text, $"| {set.Measures} | {units} | `{set.Example}` |\n");
        }

        return text.ToString();
    }

    // A formattable string would be formatted by the culture of the machine.
    private static void Line(StringBuilder text, string line) => text.Append(line);

    private static void Shape(StringBuilder text, string title, string pointer, Shape shape, string description)
    {
        Line(text, $"\n## {title}\n\n{description}\n\n| field | what it is | value | from |\n| --- | --- | --- | --- |\n");
        foreach (var field in shape.Fields)
        {
            (string value, string from) = field switch
            {
                Leaf leaf => (Value(leaf), leaf.NeededAt is { } depth ? Words.Depth[(int)depth] : ""),
                Section => ("object", ""),
                _ => ("objects by id", ""),
            };
            Line(text, $"| `{field.Name}` | {field.Description} | {value} | {from} |\n");
        }

        foreach (var field in shape.Fields)
        {
            string place = pointer + "/" + field.Name;
            if (field is Section section) Shape(text, $"`{place}`", place, section.Shape, section.Description);
            if (field is Collection collection) Shape(text, $"`{place}/<id>`", place + "/<id>", collection.Shape, collection.Description);
        }
    }

    private static string Value(Leaf leaf) => leaf.Kind switch
    {
        FieldKind.Choice => string.Join(", ", leaf.Choices.Select(c => $"`\"{c}\"`")),
        _ => LeafText.Wanted(leaf).Replace(" as text with its unit", "", StringComparison.Ordinal),
    };
}
