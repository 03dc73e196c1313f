using System.Collections.Immutable;

namespace Trivet.Views.Words;

/// <summary>
/// Fields of the description as the procedure, the journal and the floor page name them, in a language other than English: those that a step rests on.
/// English names follow from the fields' own (<see cref="Fields"/>). A language is one file with one value of this record.
/// </summary>
public sealed record FieldWords
{
    /// <summary>BCP 47 tag.</summary>
    public required string Tag { get; init; }

    /// <summary>Numbers are written with a decimal comma.</summary>
    public required bool DecimalComma { get; init; }

    /// <summary>By the name of a field or a collection; where one name means two things, by <c>owner/name</c>.</summary>
    public required ImmutableDictionary<string, string> Names { get; init; }

    /// <summary>By the name of a section: what a field belongs to; empty where it goes without saying.</summary>
    public required ImmutableDictionary<string, string> Sections { get; init; }

    /// <summary>One entry of a collection, by the collection's name or <c>owner/name</c>: {name}</summary>
    public required ImmutableDictionary<string, string> Entries { get; init; }

    /// <summary>{field} {of}</summary>
    public required string FieldOf { get; init; }

    /// <summary>Words to choose from, by <c>field=word</c>.</summary>
    public required ImmutableDictionary<string, string> Values { get; init; }

    public required string Yes { get; init; }
    public required string No { get; init; }

    /// <summary>Fields whose text a person wrote: it is told as it stands.</summary>
    public static ImmutableHashSet<string> Written { get; } = ["name", "text", "label", "mark", "note"];

    /// <summary>Null for a language that names fields as they are named in the description.</summary>
    public static FieldWords? In(string tag) => tag == GermanFields.Words.Tag ? GermanFields.Words : null;
}
