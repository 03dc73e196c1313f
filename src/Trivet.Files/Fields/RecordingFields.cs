using Trivet.Cells;

namespace Trivet.Files.Fields;

/// <summary>The table of how what happens at the machine is recorded.</summary>
internal static class RecordingFields
{
    private static readonly Shape Person = new Table<Person>(new Person())
        .Whole("order", p => p.Order, (p, v) => p with { Order = v }, "Place in lists; equal or missing orders follow the id.")
        .Choice("role", Words.PersonRole, p => p.Role, (p, v) => p with { Role = v }, "In which capacity they work at the machine.")
        .YesNo("releases", p => p.Releases, (p, v) => p with { Releases = v },
            "They may let stand, as a second person, what others wrote. Where nobody is stated to, any second person may.")
        .Text("note", p => p.Note, (p, v) => p with { Note = v }, "Anything worth keeping.")
        .Done();

    public static readonly Shape Recording = new Table<Recording>(new Recording())
        .YesNo("releaseOutOfTolerance", r => r.ReleaseOutOfTolerance, (r, v) => r with { ReleaseOutOfTolerance = v },
            "A second person must let stand a reading outside its limit, and an answer that is not the expected one; yes where nothing is stated.")
        .YesNo("releaseDiffers", r => r.ReleaseDiffers, (r, v) => r with { ReleaseDiffers = v },
            "A second person must let stand that the machine is not as planned; yes where nothing is stated.")
        .YesNo("releaseNotPossible", r => r.ReleaseNotPossible, (r, v) => r with { ReleaseNotPossible = v },
            "A second person must let stand that a step can not be done; yes where nothing is stated.")
        .YesNo("releaseWeak", r => r.ReleaseWeak, (r, v) => r with { ReleaseWeak = v },
            "A second person must let stand every step that is done weakly; no where nothing is stated.")
        .YesNo("releaseHoldPoints", r => r.ReleaseHoldPoints, (r, v) => r with { ReleaseHoldPoints = v },
            "A second person must look at every hold point; no where nothing is stated.")
        .Keyed("people", Person, r => r.People, (r, v) => r with { People = v }, "Who writes in the journal, by the ids they sign with; names stay outside.")
        .Text("note", r => r.Note, (r, v) => r with { Note = v }, "Anything worth keeping.")
        .Done();
}
