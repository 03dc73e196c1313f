using System.Globalization;
using System.Text;
using Trivet.Cells;
using Trivet.Files.Fields;

namespace Trivet.Files;

/// <summary>Writes a cell from the field tables: for people in the order of the tables, or canonical.</summary>
internal static class CellWriter
{
    private const int LongestLine = 110;

    /// <summary>A piece of the document: the text of a single value, or members.</summary>
    private readonly record struct Piece(string? Value, List<KeyValuePair<string, Piece>>? Members);

    public static string Readable(Cell cell)
    {
        var text = new StringBuilder();
        Write(text, Document(cell, canonical: false), 0);
        return text.Append('\n').ToString();
    }

    public static string Canonical(Cell cell)
    {
        var text = new StringBuilder();
        WriteFlat(text, Document(cell, canonical: true), canonical: true);
        return text.ToString();
    }

    private static Piece Document(Cell cell, bool canonical)
    {
        var members = MembersOf(cell, CellShape.Cell, cell, "", canonical);
        members.Insert(0, KeyValuePair.Create("trivet", new Piece(CellFormat.Current.ToString(CultureInfo.InvariantCulture), null)));
        return new Piece(null, members);
    }

    private static List<KeyValuePair<string, Piece>> MembersOf(Cell cell, Shape shape, object owner, string pointer, bool canonical)
    {
        var members = new List<KeyValuePair<string, Piece>>();
        foreach (var field in shape.Fields)
        {
            string place = pointer + "/" + field.Name;
            switch (field)
            {
                case Leaf leaf when leaf.Get(owner) is { } value:
                    members.Add(KeyValuePair.Create(field.Name, new Piece(ValueText(cell, leaf, place, value, canonical), null)));
                    break;
                case Section section:
                    var inner = MembersOf(cell, section.Shape, section.Get(owner), place, canonical);
                    if (inner.Count > 0) members.Add(KeyValuePair.Create(field.Name, new Piece(null, inner)));
                    break;
                case Collection collection:
                    // An entry with nothing in it still exists; a collection without entries does not.
                    var entries = collection.Entries(owner)
                        .Select(e => KeyValuePair.Create(e.Key, new Piece(null, MembersOf(cell, collection.Shape, e.Value, place + "/" + e.Key, canonical))))
                        .ToList();
                    if (entries.Count > 0) members.Add(KeyValuePair.Create(field.Name, new Piece(null, entries)));
                    break;
            }
        }

        return members;
    }

    private static string ValueText(Cell cell, Leaf leaf, string pointer, object value, bool canonical) => value switch
    {
        double si when leaf.Dimension == Dimension.One => Quantity.Format(si, Dimension.One),
        double si => Quoted(LeafText.FormatQuantity(cell, leaf, pointer, si, canonical)),
        int whole => whole.ToString(CultureInfo.InvariantCulture),
        bool yes => yes ? "true" : "false",
        _ => Quoted((string)value),
    };

    private static void Write(StringBuilder text, Piece piece, int indent)
    {
        if (piece.Members is not { Count: > 0 } members || members.TrueForAll(m => m.Value.Members is null))
        {
            int start = text.Length;
            WriteFlat(text, piece, canonical: false);
            if (piece.Members is null || text.Length - start + indent <= LongestLine) return;
            text.Length = start;
        }

        text.Append("{\n");
        for (int i = 0; i < piece.Members!.Count; i++)
        {
            var (name, value) = piece.Members[i];
            text.Append(' ', indent + 2).Append(Quoted(name)).Append(": ");
            Write(text, value, indent + 2);
            text.Append(i + 1 < piece.Members.Count ? ",\n" : "\n");
        }

        text.Append(' ', indent).Append('}');
    }

    private static void WriteFlat(StringBuilder text, Piece piece, bool canonical)
    {
        if (piece.Members is not { } members)
        {
            text.Append(piece.Value);
            return;
        }

        if (members.Count == 0)
        {
            text.Append("{}");
            return;
        }

        IEnumerable<KeyValuePair<string, Piece>> ordered = canonical ? members.OrderBy(m => m.Key, StringComparer.Ordinal) : members;
        string separator = "";
        text.Append(canonical ? "{" : "{ ");
        foreach (var (name, value) in ordered)
        {
            text.Append(separator).Append(Quoted(name)).Append(canonical ? ":" : ": ");
            WriteFlat(text, value, canonical);
            separator = canonical ? "," : ", ";
        }

        text.Append(canonical ? "}" : " }");
    }

    private static string Quoted(string value)
    {
        var text = new StringBuilder(value.Length + 2);
        JsonString.Append(text, value);
        return text.ToString();
    }
}
