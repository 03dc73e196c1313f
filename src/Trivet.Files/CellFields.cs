using System.Collections.Immutable;
using Trivet.Cells;

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
/// <param name="Choices">For a choice: the words allowed.</param>
/// <param name="NeededAt">Depth from which it is asked for; null when always optional.</param>
/// <param name="Text">The present value as text, empty when not stated.</param>
public sealed record CellField(
    string Pointer, string Label, string Description, FieldKind Kind, Dimension Dimension,
    ImmutableArray<string> Choices, Depth? NeededAt, string Text);

/// <summary>The fields of a cell by pointer: what a form shows, and one edit as a new cell.</summary>
public static class CellFields
{
    /// <summary>Every leaf below a pointer ("" for all), in document order, stated or not, for the entries that exist.</summary>
    public static ImmutableArray<CellField> Below(Cell cell, string pointer) => throw new NotImplementedException();

    public static CellField? Find(Cell cell, string pointer) => throw new NotImplementedException();

    /// <summary>The cell with one leaf set from text as a person types it ("" clears it), or what is wrong with the text.</summary>
    public static CellRead Set(Cell cell, string pointer, string text) => throw new NotImplementedException();

    /// <summary>The cell with one quantity set in SI (an advice taken, a station dragged).</summary>
    public static Cell SetSi(Cell cell, string pointer, double si) => throw new NotImplementedException();

    /// <summary>Adds an empty entry to a keyed collection (<c>/stations/tray-left</c>), or what is wrong with the id.</summary>
    public static CellRead Add(Cell cell, string pointer) => throw new NotImplementedException();

    public static Cell Remove(Cell cell, string pointer) => throw new NotImplementedException();

    /// <summary>The fields that differ between two cells, with both texts: what changed from one revision to another.</summary>
    public static ImmutableArray<FieldChange> Changes(Cell before, Cell after) => throw new NotImplementedException();
}

/// <summary>A leaf that differs between two cells; an empty text means not stated there.</summary>
public sealed record FieldChange(string Pointer, string Before, string After);
