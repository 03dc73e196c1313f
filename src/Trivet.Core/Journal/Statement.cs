using System.Collections.Immutable;
using Trivet.Findings;
using Trivet.Procedures;

namespace Trivet.Journal;

/// <summary>What an entry says. Closed: the kinds below and the answers are all there are; one of a later program is <see cref="Unread"/>.</summary>
public abstract record Statement
{
    private protected Statement() { }
}

/// <summary>What was answered to something a step asks, or to the step as a whole. Closed.</summary>
public abstract record Answer : Statement
{
    private protected Answer() { }
}

/// <summary>A reading.</summary>
/// <param name="Typed">As it was typed or taken over, with its unit.</param>
/// <param name="Unit">SI unit of value and step: <c>m</c>, <c>Ω</c>.</param>
/// <param name="Value">As it was understood, SI; finite.</param>
/// <param name="Step">Smallest step the reading tells apart, SI; 0 where it is not known.</param>
public sealed record Measured(string Typed, string Unit, double Value, double Step) : Answer;

public sealed record Chosen(string Option) : Answer;

public sealed record Counted(long Count) : Answer;

public sealed record Written(string Text) : Answer;

/// <summary>Only that it was done: weak, and shown as weak.</summary>
public sealed record Ticked : Answer;

/// <param name="Photograph">SHA-256 of the photograph's bytes as the store keeps them.</param>
public sealed record Photographed(string Photograph) : Answer;

/// <summary>A finding as it was shown to who signed.</summary>
/// <param name="Id">Id of the finding.</param>
/// <param name="Value">In the rule's unit; not a number where it has none.</param>
public sealed record ShownFinding(string Id, Verdict Verdict, double Value);

/// <summary>A signature stores what it was given for, since what is derived may come out otherwise in a later program.</summary>
/// <param name="As">In which capacity.</param>
/// <param name="Engine">Version of the program that judged.</param>
/// <param name="Head">Hash of the newest receipt then: the journal that was signed. Empty where there was none.</param>
public sealed record Signed(Skill As, string Engine, string Head, ImmutableArray<ShownFinding> Findings) : Answer;

/// <summary>The step, or what it asks, can not be done here.</summary>
public sealed record NotPossible(string Reason) : Answer;

/// <summary>The machine is not as planned.</summary>
public sealed record Differs(string Words) : Answer;

/// <summary>Someone begins the step.</summary>
public sealed record Begun : Statement;

/// <summary>What the machine is from now on allowed to do, declared by who answers for it.</summary>
/// <param name="Dead">The voltage measured after the discharge time, where the motor supply is off; null where none was measured.</param>
public sealed record EnergyDeclared(EnergyLevel Level, Measured? Dead) : Statement;

/// <summary>Something that spoils evidence.</summary>
public sealed record Happened(Upset Upset, string Words) : Statement;

/// <summary>Work was left: what the machine was declared to be is to be declared again.</summary>
public sealed record Interrupted(string Words) : Statement;

/// <summary>Something seen, whether a step asked for it or not.</summary>
/// <param name="What">Id of the observation; empty where it has words only.</param>
public sealed record Seen(string What, string Words) : Statement;

/// <summary>The writer, as a second person, lets stand what the named entry says.</summary>
/// <param name="Entry">Hash of the entry.</param>
public sealed record Released(string Entry) : Statement;

/// <summary>The named entry was mistaken. It stays, and counts no longer.</summary>
/// <param name="Entry">Hash of the entry.</param>
/// <param name="Instead">What is right; null where it is only withdrawn.</param>
public sealed record Corrected(string Entry, string Reason, Answer? Instead) : Statement;

/// <summary>A photograph was erased; its hash and this entry stay.</summary>
public sealed record Erased(string Photograph, string Reason) : Statement;

/// <summary>Said by a later program: kept as it is and not understood by this one.</summary>
public sealed record Unread(string Kind) : Statement;
