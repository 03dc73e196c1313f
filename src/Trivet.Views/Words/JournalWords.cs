using System.Collections.Immutable;
using Trivet.AsBuilt;
using Trivet.Journal;
using Trivet.Procedures;

namespace Trivet.Views.Words;

/// <summary>The journal in one language; a language is one file with one value of this record. Words in braces are filled in.</summary>
public sealed record JournalWords
{
    /// <summary>BCP 47 tag.</summary>
    public required string Tag { get; init; }
    public required string Title { get; init; }
    public required string HeadNumber { get; init; }
    public required string HeadWhen { get; init; }
    public required string HeadDevice { get; init; }
    public required string HeadPerson { get; init; }
    public required string HeadCell { get; init; }
    public required string HeadStep { get; init; }
    public required string HeadSays { get; init; }
    public required string Empty { get; init; }
    public required string NothingFound { get; init; }
    /// <summary>{count} {devices}</summary>
    public required string Summary { get; init; }
    public required string Head { get; init; }
    public required string NoHead { get; init; }
    public required string Sound { get; init; }
    /// <summary>{count}</summary>
    public required string NotSound { get; init; }
    public required string Checking { get; init; }
    /// <summary>{count}</summary>
    public required string Contradictions { get; init; }
    public required string NoContradictions { get; init; }
    public required string Superseded { get; init; }
    public required string Everybody { get; init; }
    public required string AllDevices { get; init; }
    public required string AllSteps { get; init; }
    public required string AllCells { get; init; }
    public required string Export { get; init; }
    public required string ShowPhotograph { get; init; }
    public required string HowToCheck { get; init; }
    public required string OlderLeftOut { get; init; }

    // What entries say. {text} {count} {words} {level} {dead} {hash} {as} {reason} {instead} {kind} {engine}
    public required string Measured { get; init; }
    public required string Chosen { get; init; }
    public required string Counted { get; init; }
    public required string Written { get; init; }
    public required string Ticked { get; init; }
    public required string Photographed { get; init; }
    public required string Signed { get; init; }
    public required string NotPossible { get; init; }
    public required string Differs { get; init; }
    public required string Begun { get; init; }
    public required string EnergyDeclared { get; init; }
    public required string EnergyDeclaredDead { get; init; }
    public required string Interrupted { get; init; }
    public required string Seen { get; init; }
    /// <summary>Someone went into the cell, or has come out.</summary>
    public required string WentIn { get; init; }
    public required string CameOut { get; init; }
    public required string Released { get; init; }
    public required string Corrected { get; init; }
    public required string Withdrawn { get; init; }
    public required string Erased { get; init; }
    public required string Unread { get; init; }

    // The record on paper, to be signed. {number} {hash}
    public required string RecordTitle { get; init; }
    public required string RecordHead { get; init; }
    public required string RecordNote { get; init; }
    public required string RecordAnswers { get; init; }
    public required string RecordOpen { get; init; }
    public required string RecordSigned { get; init; }
    public required string RecordFile { get; init; }
    public required string HeadVerdict { get; init; }
    public required string HeadStanding { get; init; }
    public required string HeadNote { get; init; }

    // Notes that the floor page writes by itself.
    public required string FromPaper { get; init; }

    // Carried over as a file. {count} {file} {taken} {again} {number}
    public required string Exported { get; init; }
    public required string Imported { get; init; }
    public required string PhotographsImported { get; init; }
    public required string DamagedReceipt { get; init; }

    /// <summary>In the order of <see cref="Upset"/>.</summary>
    public required ImmutableArray<string> Upsets { get; init; }
    /// <summary>In the order of <see cref="EnergyLevel"/>.</summary>
    public required ImmutableArray<string> Levels { get; init; }
    /// <summary>In the order of <see cref="Skill"/>.</summary>
    public required ImmutableArray<string> Skills { get; init; }
    /// <summary>In the order of <see cref="MismatchKind"/>: {device} {sequence} {first} {last} {time} {person}</summary>
    public required ImmutableArray<string> Mismatches { get; init; }
    /// <summary>In the order of <see cref="Standing"/>.</summary>
    public required ImmutableArray<string> Standings { get; init; }
    /// <summary>In the order of <see cref="Weakness"/>.</summary>
    public required ImmutableArray<string> Weaknesses { get; init; }
    /// <summary>In the order of <see cref="Deviation"/>.</summary>
    public required ImmutableArray<string> Deviations { get; init; }

    // Why a step is stale, and what a change costs. {field} {from} {to} {step} {what} {revision} {count} {minutes}
    public required string StaleField { get; init; }
    public required string StaleResult { get; init; }
    public required string StaleUpset { get; init; }
    public required string StaleUnknownRevision { get; init; }
    public required string NotStated { get; init; }
    public required string CostsNothing { get; init; }
    public required string Costs { get; init; }
    public required string CostsLine { get; init; }
    public required string NewStep { get; init; }
    public required string GoneStep { get; init; }
    public required string WaitsFor { get; init; }
    public required string LevelNow { get; init; }
    public required string LevelUnknown { get; init; }
    /// <summary>{done} {steps}</summary>
    public required string HowFar { get; init; }
    /// <summary>{count}</summary>
    public required string ToDoAgain { get; init; }
    /// <summary>Heads what a draft would cost, before it is saved.</summary>
    public required string DraftCosts { get; init; }
    /// <summary>Leads from what a draft would cost to the sheet that says it step by step.</summary>
    public required string WhichAndWhy { get; init; }
    /// <summary>Asks before a revision is restored: {revision}</summary>
    public required string Restoring { get; init; }
    public required string RestoreAllTheSame { get; init; }
    public required string LeaveIt { get; init; }
    public required string WhereItStands { get; init; }
    public required string ShowEntries { get; init; }

    public static ImmutableArray<JournalWords> All => [EnglishJournal.Words, GermanJournal.Words];

    /// <summary>The words of a language; English where there is none.</summary>
    public static JournalWords In(string tag) => All.FirstOrDefault(w => w.Tag == tag) ?? EnglishJournal.Words;
}
