using System.Collections.Immutable;
using System.Text;
using Trivet.Files;

namespace Trivet.Store;

/// <summary>Who acts, and when. Time and person come in as arguments; the store reads no clock.</summary>
/// <param name="Person">Id of the person, resolved outside the store; 1 to 128 characters.</param>
/// <param name="When">The moment, kept as UTC ticks of 100 ns.</param>
public sealed record Stamp(string Person, DateTimeOffset When)
{
    /// <summary>Why the store would not take this as a person's id, with what it would take; null where it would.</summary>
    public static string? WhyNot(string person) => Inputs.OfPerson(person) is { } refusal ? $"{refusal.Problem} {refusal.Remedy}" : null;
}

/// <summary>One saved state of a cell, without its text. Never edited, never deleted.</summary>
/// <param name="CellId">The cell it belongs to.</param>
/// <param name="Number">From 1, without gaps, in the order of saving.</param>
/// <param name="Hash">SHA-256 of the canonical text, lower-case hexadecimal. Two revisions with the same content share it.</param>
/// <param name="ParentHash">Hash of the revision before; empty for the first.</param>
/// <param name="By">Who saved it, and when.</param>
/// <param name="Words">What changed, in the words of the person.</param>
/// <param name="Restores">Number of the revision whose content this one brings back; null where it brings back none.</param>
public sealed record Revision(string CellId, int Number, string Hash, string ParentHash, Stamp By, string Words, int? Restores);

/// <summary>A revision with its canonical text.</summary>
public sealed record StoredCell(Revision Revision, string Text)
{
    /// <summary>Reads the text. Errors occur only where a later program wrote fields this one does not know.</summary>
    public CellRead Read() => CellFile.Read(Encoding.UTF8.GetBytes(Text), $"{Revision.CellId}, revision {Revision.Number}");
}

/// <summary>One line of a job folder's list.</summary>
/// <param name="Id">Stable id of the cell.</param>
/// <param name="Name">The name its head states, or the id where it states none.</param>
/// <param name="Head">The newest revision.</param>
/// <param name="Drafting">Ids of the persons with edits not yet saved, sorted.</param>
public sealed record CellSummary(string Id, string Name, Revision Head, ImmutableArray<string> Drafting);

/// <summary>What differs between two revisions, field by field.</summary>
public sealed record Difference(Revision From, Revision To, ImmutableArray<FieldChange> Changes);
