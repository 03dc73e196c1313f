using System.Collections.Immutable;
using System.Text;
using Trivet.Cells;

namespace Trivet.Files.Exchange;

/// <summary>
/// The entries of a collection as a list that is edited elsewhere and taken back: a row an entry, its fields in columns named as in the document, values as the
/// document states them. What is nested in collections of its own stays in the cell.
/// </summary>
public sealed record FieldList(string Collection, ImmutableArray<string> Head, ImmutableArray<ImmutableArray<string>> Rows)
{
    /// <summary>Lists that can be taken back.</summary>
    public static ImmutableArray<string> Collections { get; } = ["/cables", "/io/signals", "/io/switches", "/cabinet/modules", "/cabling/devices", "/cabling/ways"];

    public string Name => Collection[(Collection.LastIndexOf('/') + 1)..];

    public static FieldList Of(Cell cell, string collection)
    {
        string[] ids = [.. IdsOf(cell, collection)];
        var fields = ids.ToDictionary(id => id, id => Leaves(cell, collection, id));
        ImmutableArray<string> columns = [.. fields.Values.SelectMany(f => f.Keys).Distinct()];
        return new(collection, ["id", .. columns], [.. ids.Select(id => ImmutableArray.Create([id, .. columns.Select(c => fields[id].GetValueOrDefault(c, ""))]))]);
    }

    private static IEnumerable<string> IdsOf(Cell cell, string collection) => collection switch
    {
        "/cables" => cell.Cables.InOrder().Select(e => e.Key),
        "/io/signals" => cell.Io.Signals.InOrder().Select(e => e.Key),
        "/io/switches" => cell.Io.Switches.InOrder().Select(e => e.Key),
        "/cabinet/modules" => cell.Cabinet.Modules.InOrder().Select(e => e.Key),
        "/cabling/devices" => cell.Cabling.Devices.InOrder().Select(e => e.Key),
        "/cabling/ways" => cell.Cabling.Ways.InOrder().Select(e => e.Key),
        _ => throw new ArgumentOutOfRangeException(nameof(collection), collection, "There is no list of it."),
    };

    /// <summary>Fields of an entry and of its sections by their place in it: <c>fromEnd/connector</c>.</summary>
    private static Dictionary<string, string> Leaves(Cell cell, string collection, string id)
    {
        string at = $"{collection}/{id}/";
        // Below an entry the only segments that are not names are ids of collections within it: cores, points and sockets.
        return CellFields.Below(cell, at[..^1]).Select(f => (Name: f.Pointer[at.Length..], f.Text))
            .Where(f => !f.Name.StartsWith("cores/", StringComparison.Ordinal) && !f.Name.StartsWith("points/", StringComparison.Ordinal) && !f.Name.StartsWith("sockets/", StringComparison.Ordinal)).ToDictionary(f => f.Name, f => f.Text);
    }

    /// <summary>As CSV (RFC 4180); a text that a spreadsheet would take for a formula is led by an apostrophe, which is taken off again.</summary>
    public string Csv()
    {
        var text = new StringBuilder();
        foreach (var row in Rows.Prepend(Head)) text.AppendJoin(',', row.Select(c => Quoted(Harmless(c)))).Append("\r\n");
        return text.ToString();

        static string Harmless(string t) => t.Length > 0 && ("=+-@\t\r".Contains(t[0], StringComparison.Ordinal) || t[0] == '\'') ? "'" + t : t;
        static string Quoted(string t) => t.AsSpan().IndexOfAny(",;\"\r\n") < 0 ? t : $"\"{t.Replace("\"", "\"\"", StringComparison.Ordinal)}\"";
    }
}

/// <summary>What an edited list says that the cell does not.</summary>
/// <param name="Cell">The cell with all that could be taken.</param>
/// <param name="Changes">Field by field.</param>
/// <param name="Errors">What could not be read, with the place in the list and the right form; those fields stay as they were.</param>
/// <param name="Kept">Entries that the list does not have; they stay in the cell.</param>
/// <param name="Unknown">Columns that are no field; passed over.</param>
public sealed record EditedList(Cell Cell, ImmutableArray<FieldChange> Changes, ImmutableArray<FileError> Errors, ImmutableArray<string> Kept, ImmutableArray<string> Unknown)
{
    /// <param name="grid">Rows with the head first, from a CSV or a workbook.</param>
    /// <param name="file">What it is called, for the errors.</param>
    public static EditedList Take(Cell cell, string collection, ImmutableArray<ImmutableArray<string>> grid, string file)
    {
        var errors = ImmutableArray.CreateBuilder<FileError>();
        var own = FieldList.Of(cell, collection);
        if (grid.Length == 0 || !grid[0].Any(h => h.Trim() == "id"))
        {
            errors.Add(new(file, 1, 1, collection, "the list has no column id", "keep the first row and the column id as they were written"));
            return new(cell, [], errors.ToImmutable(), [], []);
        }
        string[] head = [.. grid[0].Select(h => h.Trim())];
        int idAt = Array.IndexOf(head, "id");
        // A field that no entry states yet is a column all the same.
        var after = cell;
        var seen = new HashSet<string>(StringComparer.Ordinal);
        var unknown = new SortedSet<string>(StringComparer.Ordinal);
        for (int r = 1; r < grid.Length; r++)
        {
            var row = grid[r];
            string id = At(row, idAt);
            if (id.Length == 0)
            {
                if (row.Any(c => c.Trim().Length > 0)) errors.Add(new(file, r + 1, idAt + 1, collection, "a row without an id", "give it the id of its entry, or a new one"));
                continue;
            }
            if (!seen.Add(id))
            {
                errors.Add(new(file, r + 1, idAt + 1, $"{collection}/{id}", "this id stands in the list twice; the first row was taken", "give each entry one row"));
                continue;
            }
            bool isNew = own.Rows.All(o => o[0] != id);
            if (isNew)
            {
                var added = CellFields.Add(after, $"{collection}/{id}");
                if (added.Cell is not { } larger)
                {
                    foreach (var e in added.Errors) errors.Add(e with { File = file, Line = r + 1, Column = idAt + 1 });
                    continue;
                }
                after = larger;
            }
            for (int c = 0; c < head.Length; c++)
            {
                if (c == idAt || head[c].Length == 0) continue;
                string pointer = $"{collection}/{id}/{head[c]}", text = At(row, c);
                if (CellFields.Find(after, pointer) is not { } field)
                {
                    unknown.Add(head[c]);
                    continue;
                }
                if (field.Text.Trim() == text) continue;
                var set = CellFields.Set(after, pointer, text);
                if (set.Cell is { } changed) after = changed;
                else foreach (var e in set.Errors) errors.Add(e with { File = file, Line = r + 1, Column = c + 1 });
            }
        }
        return new(after, CellFields.Changes(cell, after), errors.ToImmutable(), [.. own.Rows.Select(r => r[0]).Where(id => !seen.Contains(id))], [.. unknown]);

        static string At(ImmutableArray<string> row, int column) => column < row.Length ? row[column].Trim() : "";
    }
}
