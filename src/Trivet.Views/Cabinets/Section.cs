using System.Collections.Immutable;

namespace Trivet.Views.Cabinets;

/// <summary>A column of a table.</summary>
/// <param name="Key">Its name for programs.</param>
/// <param name="Unit">SI unit of its numbers; null for texts.</param>
public sealed record Column(string Key, string Head, string? Unit = null)
{
    public bool IsNumber => Unit is not null;
}

/// <summary>What stands in a table: as people read it, and as a number in SI where it is one.</summary>
public readonly record struct Entry(string Text, double Value = double.NaN);

/// <summary>A table in finished texts.</summary>
/// <param name="Id">Its name for programs.</param>
/// <param name="Pointers">For each row the part of the description it speaks of.</param>
public sealed record SheetTable(string Id, string Title, ImmutableArray<Column> Columns, ImmutableArray<ImmutableArray<Entry>> Rows, ImmutableArray<string> Pointers);

/// <summary>One value with its name.</summary>
/// <param name="Id">Its name for programs.</param>
public sealed record Fact(string Id, string What, string Text, double Value, string Unit);

/// <summary>One matter of the electrical sheet: what to be careful with, values, tables, and the rules whose findings belong to it.</summary>
public sealed record Section(
    string Id, string Title, ImmutableArray<string> Cautions, ImmutableArray<Fact> Facts, ImmutableArray<SheetTable> Tables, ImmutableArray<string> Rules)
{
    public bool IsEmpty => Facts.IsEmpty && Tables.All(t => t.Rows.IsEmpty);
}
