using System.Collections.Immutable;
using Trivet.Cells;

namespace Trivet.Files.Fields;

/// <summary>
/// A member of a record as the document knows it. Reader, writer, schema and forms all walk these tables, so a field is
/// described in one place. Values go in and out through the lambdas of the table: no reflection, safe to trim.
/// </summary>
internal abstract record Field(string Name, string Description);

/// <summary>A single value. <see cref="Get"/> gives null where nothing is stated; the value is double, int, bool or string (a choice's word).</summary>
internal sealed record Leaf(
    string Name, string Description, FieldKind Kind, Dimension Dimension, string? Unit, ImmutableArray<string> Choices, Depth? NeededAt,
    Func<object, object?> Get, Func<object, object?, object> With) : Field(Name, Description);

/// <summary>A nested object.</summary>
internal sealed record Section(string Name, string Description, Shape Shape, Func<object, object> Get, Func<object, object, object> With)
    : Field(Name, Description);

/// <summary>An object whose members are entries under a stable id.</summary>
internal sealed record Collection(
    string Name, string Description, Shape Shape, Func<object, IReadOnlyList<KeyValuePair<string, object>>> Entries,
    Func<object, IEnumerable<KeyValuePair<string, object>>, object> With) : Field(Name, Description);

/// <summary>The table of one record: its fields in document order, and the record with nothing stated.</summary>
internal sealed record Shape(object Empty, ImmutableArray<Field> Fields)
{
    private readonly Dictionary<string, Field> _byName = Fields.ToDictionary(f => f.Name, StringComparer.Ordinal);

    public Field? Find(string name) => _byName.GetValueOrDefault(name);

    public bool Equals(Shape? other) => ReferenceEquals(this, other);

    public override int GetHashCode() => Fields.Length;
}

/// <summary>Writes down a table; the compiler checks that name, getter and setter belong to one record.</summary>
internal sealed class Table<T>(T empty) where T : notnull
{
    private readonly ImmutableArray<Field>.Builder _fields = ImmutableArray.CreateBuilder<Field>();

    public Table<T> Text(string name, Func<T, string?> get, Func<T, string?, T> with, string description, Depth? neededAt = null) =>
        Add(new Leaf(name, description, FieldKind.Text, Dimension.One, null, [], neededAt,
            o => get((T)o), (o, v) => with((T)o, (string?)v)));

    public Table<T> Quantity(
        string name, Dimension dimension, Func<T, double?> get, Func<T, double?, T> with, string description, Depth? neededAt = null, string? unit = null) =>
        Add(new Leaf(name, description, FieldKind.Quantity, dimension, unit, [], neededAt,
            o => get((T)o), (o, v) => with((T)o, (double?)v)));

    public Table<T> Whole(string name, Func<T, int?> get, Func<T, int?, T> with, string description, Depth? neededAt = null) =>
        Add(new Leaf(name, description, FieldKind.Whole, Dimension.One, null, [], neededAt,
            o => get((T)o), (o, v) => with((T)o, (int?)v)));

    public Table<T> YesNo(string name, Func<T, bool?> get, Func<T, bool?, T> with, string description, Depth? neededAt = null) =>
        Add(new Leaf(name, description, FieldKind.YesNo, Dimension.One, null, ["yes", "no"], neededAt,
            o => get((T)o), (o, v) => with((T)o, (bool?)v)));

    /// <param name="words">One word for each value of the enumeration, in its order.</param>
    public Table<T> Choice<TEnum>(
        string name, ImmutableArray<string> words, Func<T, TEnum?> get, Func<T, TEnum?, T> with, string description, Depth? neededAt = null)
        where TEnum : struct, Enum
    {
        TEnum[] values = Enum.GetValues<TEnum>();
        if (values.Length != words.Length) throw new ArgumentException($"{typeof(TEnum)} needs one word for each of its values", nameof(words));
        return Add(new Leaf(name, description, FieldKind.Choice, Dimension.One, null, words, neededAt,
            o => get((T)o) is { } value ? words[Array.IndexOf(values, value)] : null,
            (o, v) => with((T)o, v is string word ? values[words.IndexOf(word)] : null)));
    }

    public Table<T> Section<TChild>(string name, Shape shape, Func<T, TChild> get, Func<T, TChild, T> with, string description)
        where TChild : notnull =>
        Add(new Section(name, description, shape, o => get((T)o), (o, v) => with((T)o, (TChild)v)));

    public Table<T> Keyed<TEntry>(
        string name, Shape shape, Func<T, ImmutableSortedDictionary<string, TEntry>> get,
        Func<T, ImmutableSortedDictionary<string, TEntry>, T> with, string description)
        where TEntry : notnull, IOrdered =>
        Add(new Collection(name, description, shape,
            o => [.. get((T)o).InOrder().Select(e => KeyValuePair.Create(e.Key, (object)e.Value))],
            (o, entries) => with((T)o, entries.ToImmutableSortedDictionary(e => e.Key, e => (TEntry)e.Value, StringComparer.Ordinal))));

    public Shape Done() => new(empty, _fields.ToImmutable());

    private Table<T> Add(Field field)
    {
        _fields.Add(field);
        return this;
    }
}
