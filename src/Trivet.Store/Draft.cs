using System.Collections.Immutable;
using System.Text;
using Trivet.Files;

namespace Trivet.Store;

/// <summary>One edit of a draft, without its text.</summary>
public sealed record DraftEdit(int Number, DateTimeOffset When, string Words);

/// <summary>
/// A person's edits of a cell since the revision they began from, with a cursor. Each edit is on disk when it is acknowledged, with
/// the whole text after it, so undo and redo work across a restart and need no replay.
/// </summary>
/// <param name="CellId">The cell.</param>
/// <param name="Person">Whose draft it is; each person has one a cell.</param>
/// <param name="Base">Number of the revision the edits began from; with no edits, the head.</param>
/// <param name="Head">Number of the newest revision of the cell.</param>
/// <param name="Version">Grows with every change of the draft; a change names the version it was made on.</param>
/// <param name="Cursor">Number of the edit that is in force; where it is below the first edit, the base is.</param>
/// <param name="Edits">The edits kept, oldest first; those after the cursor are undone.</param>
/// <param name="Text">Canonical text in force: of the edit at the cursor, or of the base.</param>
public sealed record Draft(string CellId, string Person, int Base, int Head, long Version, int Cursor, ImmutableArray<DraftEdit> Edits, string Text)
{
    /// <summary>Edits kept for undo. The oldest go first; what they did stays in the texts of the later ones.</summary>
    public const int LargestDepth = 200;

    /// <summary>True when the text in force is an edit's, so that there is something to save.</summary>
    public bool HasEdits => Edits.Any(e => e.Number == Cursor);

    /// <summary>True when someone saved since the draft was begun: saving it would be refused until it is moved to the head.</summary>
    public bool Behind => Base < Head;

    public bool CanUndo => HasEdits && (Edits[0].Number == 1 || Edits[0].Number < Cursor);
    public bool CanRedo => Edits.Any(e => e.Number == Cursor + 1);

    public CellRead Read() => CellFile.Read(Encoding.UTF8.GetBytes(Text), $"{CellId}, draft of {Person}");
}
