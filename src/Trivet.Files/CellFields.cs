using System.Collections.Immutable;
using System.Text;
using Trivet.Cells;
using Trivet.Files.Fields;

namespace Trivet.Files;

public enum FieldKind
{
    Text,
    Quantity,
    Whole,
    YesNo,
    Choice,
}

/// <summary>One leaf field of a document, as a form shows it.</summary>
/// <param name="Pointer">JSON pointer: <c>/robot/chains/a/rod</c>.</param>
/// <param name="Label">Short words for a form, from the field's name: "rod".</param>
/// <param name="Description">One sentence: what it is, sign, range. The same text stands in the schema.</param>
/// <param name="Dimension">Length or angle for a drive's coordinate as soon as the cell tells which.</param>
/// <param name="Choices">For a choice: the words allowed; for yes and no those two.</param>
/// <param name="NeededAt">Depth from which it is asked for; null when always optional.</param>
/// <param name="Text">The present value as text, empty when not stated.</param>
public sealed record CellField(
    string Pointer, string Label, string Description, FieldKind Kind, Dimension Dimension,
    ImmutableArray<string> Choices, Depth? NeededAt, string Text)
{
    /// <summary>Present value of a quantity, SI; null when not stated or no quantity.</summary>
    public double? Si { get; init; }

    /// <summary>An example of the right form: <c>300 mm</c>.</summary>
    public string Example { get; init; } = "";
}

/// <summary>The fields of a cell by pointer: what a form shows, and one edit as a new cell.</summary>
public static class CellFields
{
    /// <summary>Every leaf below a pointer ("" for all), in document order, stated or not, for the entries that exist.</summary>
    public static ImmutableArray<CellField> Below(Cell cell, string pointer)
    {
        var fields = ImmutableArray.CreateBuilder<CellField>();
        foreach (var (place, leaf, owner) in Leaves(CellShape.Cell, cell, "", pointer)) fields.Add(Shown(cell, place, leaf, owner));
        return fields.DrainToImmutable();
    }

    public static CellField? Find(Cell cell, string pointer)
    {
        foreach (var (place, leaf, owner) in Leaves(CellShape.Cell, cell, "", pointer))
        {
            if (place == pointer) return Shown(cell, place, leaf, owner);
        }

        return null;
    }

    /// <summary>The cell with one leaf set from text as a person types it ("" clears it), or what is wrong with the text.</summary>
    public static CellRead Set(Cell cell, string pointer, string text)
    {
        if (LeafAt(cell, pointer) is not { } leaf) return Refused(pointer, "there is no such field in this cell", "it may have been removed: open its section again");
        object? value = null;
        if (!string.IsNullOrWhiteSpace(text))
        {
            var read = LeafText.Read(leaf, text, DriveUnits.Of(cell, pointer, leaf.Dimension) ?? leaf.Dimension);
            if (read.Problem.Length > 0) return Refused(pointer, read.Problem, read.Remedy);
            value = read.Value;
            if (value is not null && DriveUnits.Of(cell, pointer, leaf.Dimension) is null)
            {
                var (problem, remedy) = LeafText.DriveUnitProblem(cell, pointer, leaf.Dimension, leaf.Dimension);
                return Refused(pointer, problem, remedy);
            }
        }

        var edited = (Cell)Edit(CellShape.Cell, cell, Segments(pointer), 0, (field, owner) => ((Leaf)field).With(owner, value));
        return TurnedOver(cell, edited) is { } place
            ? Refused(pointer, $"{place} is stated for the present kind of drive and would change its meaning", $"clear {place} first, then state it anew")
            : new CellRead(edited, []);
    }

    /// <summary>The cell with one quantity set in SI (an advice taken, a station dragged).</summary>
    public static Cell SetSi(Cell cell, string pointer, double si)
    {
        if (!double.IsFinite(si)) throw new ArgumentOutOfRangeException(nameof(si), si, "only finite values can be stated");
        if (LeafAt(cell, pointer) is not { Kind: FieldKind.Quantity }) throw new ArgumentException($"{pointer} is no quantity of this cell", nameof(pointer));
        return (Cell)Edit(CellShape.Cell, cell, Segments(pointer), 0, (field, owner) => ((Leaf)field).With(owner, si));
    }

    /// <summary>Adds an empty entry to a keyed collection (<c>/stations/tray-left</c>), or what is wrong with the id.</summary>
    public static CellRead Add(Cell cell, string pointer)
    {
        string[] segments = Segments(pointer);
        string parent = pointer[..Math.Max(0, pointer.LastIndexOf('/'))];
        if (FieldAt(cell, parent) is not (Collection collection, var owner)) return Refused(pointer, "there is no collection of this name in this cell", "it may have been removed: open its section again");
        string id = segments[^1];
        if (!Ids.IsValid(id)) return Refused(pointer, $"\"{Files.Shown.Short(id)}\" is not an id", Ids.Remedy(id));
        var entries = collection.Entries(owner);
        if (entries.Any(e => e.Key == id)) return Refused(pointer, $"\"{id}\" is there already", "choose another id");
        return new CellRead((Cell)Edit(CellShape.Cell, cell, segments[..^1], 0,
            (field, o) => ((Collection)field).With(o, entries.Append(KeyValuePair.Create(id, collection.Shape.Empty)))), []);
    }

    /// <summary>Takes away an entry, clears a leaf or empties a section; the cell itself where there is nothing at the pointer.</summary>
    public static Cell Remove(Cell cell, string pointer)
    {
        string[] segments = Segments(pointer);
        string parent = pointer[..Math.Max(0, pointer.LastIndexOf('/'))];
        if (FieldAt(cell, parent) is (Collection collection, var owner))
        {
            var rest = collection.Entries(owner).Where(e => e.Key != segments[^1]);
            return (Cell)Edit(CellShape.Cell, cell, segments[..^1], 0, (field, o) => ((Collection)field).With(o, rest));
        }

        return FieldAt(cell, pointer) is null ? cell : (Cell)Edit(CellShape.Cell, cell, segments, 0, (field, o) => field switch
        {
            Leaf leaf => leaf.With(o, null),
            Section section => section.With(o, section.Shape.Empty),
            _ => ((Collection)field).With(o, []),
        });
    }

    /// <summary>
    /// The fields that differ between two cells, with both texts: what changed from one revision to another. An entry that came or
    /// went with nothing in it is listed as "{}".
    /// </summary>
    public static ImmutableArray<FieldChange> Changes(Cell before, Cell after)
    {
        var old = Texts(before);
        var now = Texts(after);
        var entriesBefore = Entries(CellShape.Cell, before, "").ToDictionary(e => e.Pointer, e => e.IsEmpty);
        var entriesAfter = Entries(CellShape.Cell, after, "").ToDictionary(e => e.Pointer, e => e.IsEmpty);
        return
        [
            .. entriesBefore.Where(e => e.Value && !entriesAfter.ContainsKey(e.Key)).Select(e => new FieldChange(e.Key, "{}", "")),
            .. entriesAfter.Where(e => e.Value && !entriesBefore.ContainsKey(e.Key)).Select(e => new FieldChange(e.Key, "", "{}")),
            .. old.Keys.Union(now.Keys)
                .Select(p => new FieldChange(p, old.GetValueOrDefault(p, ""), now.GetValueOrDefault(p, "")))
                .Where(c => c.Before != c.After),
        ];
    }

    private static OrderedDictionary<string, string> Texts(Cell cell)
    {
        var texts = new OrderedDictionary<string, string>();
        foreach (var (place, leaf, owner) in Leaves(CellShape.Cell, cell, "", ""))
        {
            if (leaf.Get(owner) is { } value) texts.Add(place, LeafText.Show(cell, leaf, place, value));
        }

        return texts;
    }

    /// <summary>The entries of all collections, and whether nothing is stated in them.</summary>
    private static IEnumerable<(string Pointer, bool IsEmpty)> Entries(Shape shape, object owner, string pointer)
    {
        foreach (var field in shape.Fields)
        {
            string place = pointer + "/" + field.Name;
            if (field is Section section)
            {
                foreach (var inner in Entries(section.Shape, section.Get(owner), place)) yield return inner;
            }
            else if (field is Collection collection)
            {
                foreach (var (id, entry) in collection.Entries(owner))
                    yield return (place + "/" + id, Leaves(collection.Shape, entry, "", "").All(l => l.Leaf.Get(l.Owner) is null));
            }
        }
    }

    /// <summary>Every collection by its pointer: the ids of its entries in their order, as text.</summary>
    internal static Dictionary<string, string> Collections(Cell cell) =>
        CollectionsIn(CellShape.Cell, cell, "").ToDictionary(c => c.Pointer, c => c.Ids, StringComparer.Ordinal);

    private static IEnumerable<(string Pointer, string Ids)> CollectionsIn(Shape shape, object owner, string pointer)
    {
        foreach (var field in shape.Fields)
        {
            string place = pointer + "/" + field.Name;
            if (field is Section section)
            {
                foreach (var inner in CollectionsIn(section.Shape, section.Get(owner), place)) yield return inner;
            }
            else if (field is Collection collection)
            {
                var entries = collection.Entries(owner);
                yield return (place, string.Join(", ", entries.Select(e => e.Key)));
                foreach (var (id, entry) in entries)
                    foreach (var inner in CollectionsIn(collection.Shape, entry, $"{place}/{id}")) yield return inner;
            }
        }
    }

    /// <summary>A stated value whose unit would change its kind between two cells; null when there is none.</summary>
    private static string? TurnedOver(Cell before, Cell after)
    {
        foreach (var (place, leaf, owner) in Leaves(CellShape.Cell, after, "", ""))
        {
            if (!DriveUnits.Either(leaf.Dimension) || leaf.Get(owner) is null) continue;
            if (DriveUnits.Of(before, place, leaf.Dimension) != DriveUnits.Of(after, place, leaf.Dimension)) return place;
        }

        return null;
    }

    private static CellField Shown(Cell cell, string pointer, Leaf leaf, object owner)
    {
        object? value = leaf.Get(owner);
        var dimension = DriveUnits.Of(cell, pointer, leaf.Dimension) ?? leaf.Dimension;
        return new CellField(pointer, Label(leaf.Name), leaf.Description, leaf.Kind, dimension, leaf.Choices, leaf.NeededAt, LeafText.Show(cell, leaf, pointer, value))
        {
            Si = value as double?,
            Example = leaf.Kind == FieldKind.Quantity ? Units.For(dimension)[0].Example : "",
        };
    }

    /// <summary>"travelFrom" is shown as "travel from", "tcpX" as "TCP x".</summary>
    private static string Label(string name)
    {
        var label = new StringBuilder();
        foreach (char c in name)
        {
            if (char.IsAsciiLetterUpper(c)) label.Append(' ');
            label.Append(char.ToLowerInvariant(c));
        }

        return label.Replace("tcp", "TCP").ToString();
    }

    /// <summary>The leaves at or below a pointer, with the record that owns each.</summary>
    private static IEnumerable<(string Pointer, Leaf Leaf, object Owner)> Leaves(Shape shape, object owner, string pointer, string below)
    {
        foreach (var field in shape.Fields)
        {
            string place = pointer + "/" + field.Name;
            if (!Related(place, below)) continue;
            switch (field)
            {
                case Leaf leaf:
                    yield return (place, leaf, owner);
                    break;
                case Section section:
                    foreach (var inner in Leaves(section.Shape, section.Get(owner), place, below)) yield return inner;
                    break;
                case Collection collection:
                    foreach (var (id, entry) in collection.Entries(owner))
                    {
                        if (!Related(place + "/" + id, below)) continue;
                        foreach (var inner in Leaves(collection.Shape, entry, place + "/" + id, below)) yield return inner;
                    }

                    break;
            }
        }
    }

    private static bool Related(string place, string below) => Within(place, below) || Within(below, place);

    private static bool Within(string place, string outer) =>
        place.StartsWith(outer, StringComparison.Ordinal) && (place.Length == outer.Length || outer.Length == 0 || place[outer.Length] == '/');

    private static Leaf? LeafAt(Cell cell, string pointer) => FieldAt(cell, pointer) is (Leaf leaf, _) ? leaf : null;

    /// <summary>The field at a pointer and the record that owns it; null where there is none (an entry is no field).</summary>
    private static (Field Field, object Owner)? FieldAt(Cell cell, string pointer)
    {
        string[] segments = Segments(pointer);
        var shape = CellShape.Cell;
        object owner = cell;
        for (int i = 0; i < segments.Length; i++)
        {
            if (shape.Find(segments[i]) is not { } field) return null;
            if (i == segments.Length - 1) return (field, owner);
            switch (field)
            {
                case Section section:
                    (shape, owner) = (section.Shape, section.Get(owner));
                    break;
                case Collection collection:
                    string id = segments[++i];
                    object? entry = collection.Entries(owner).FirstOrDefault(e => e.Key == id).Value;
                    if (entry is null) return null;
                    (shape, owner) = (collection.Shape, entry);
                    break;
                default:
                    return null;
            }
        }

        return null;
    }

    /// <summary>The record with the field at the end of the path changed; the path is known to exist.</summary>
    private static object Edit(Shape shape, object owner, string[] path, int at, Func<Field, object, object> change)
    {
        var field = shape.Find(path[at]) ?? throw new ArgumentException($"there is no field {path[at]}", nameof(path));
        if (at == path.Length - 1) return change(field, owner);
        switch (field)
        {
            case Section section:
                return section.With(owner, Edit(section.Shape, section.Get(owner), path, at + 1, change));
            case Collection collection:
                string id = path[at + 1];
                return collection.With(owner, collection.Entries(owner)
                    .Select(e => e.Key == id ? KeyValuePair.Create(id, Edit(collection.Shape, e.Value, path, at + 2, change)) : e));
            default:
                throw new ArgumentException($"{path[at]} has no fields of its own", nameof(path));
        }
    }

    private static string[] Segments(string pointer) => pointer.Length == 0 ? [] : pointer[1..].Split('/');

    private static CellRead Refused(string pointer, string problem, string remedy) => new(null, [new FileError("", 0, 0, pointer, problem, remedy)]);
}

/// <summary>A leaf that differs between two cells; an empty text means not stated there.</summary>
public sealed record FieldChange(string Pointer, string Before, string After);
