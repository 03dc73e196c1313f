namespace Trivet.Desk.Components.Layout;

/// <summary>The sheets of a cell, in the order of the work: path behind the cell's own, and name.</summary>
public static class CellSheets
{
    public static readonly (string Path, string Name)[] All =
    [
        ("", "Ledger and drawing"),
        ("/description", "Description"),
        ("/planes", "Working planes"),
        ("/mount", "Mount"),
        ("/motion", "Motion"),
        ("/mechanical", "Mechanical"),
        ("/electrical", "Electrical"),
        ("/procedure", "Procedure"),
        ("/journal", "Journal"),
        ("/revisions", "Revisions"),
    ];
}
