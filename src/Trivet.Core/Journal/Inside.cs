using System.Collections.Immutable;

namespace Trivet.Journal;

/// <summary>
/// Who has said to be inside the cell. What is declared is no proof: someone may be inside who never said so, so this never says that nobody is.
/// </summary>
public static class Inside
{
    /// <summary>Ids of what is seen: someone goes in, someone has come out.</summary>
    public const string In = "inside", Out = "outside";

    /// <summary>Persons by what was said last of each, sorted.</summary>
    /// <param name="entries">The journal of one cell. The words of what was seen name the person; without words it is the writer.</param>
    public static ImmutableArray<string> Of(IEnumerable<Kept> entries)
    {
        var order = Ordering.Of(entries);
        var withdrawn = order.Select(k => k.Entry.Says).OfType<Corrected>().Select(c => c.Entry).ToHashSet(StringComparer.Ordinal);
        var inside = new SortedSet<string>(StringComparer.Ordinal);
        foreach (var kept in order)
        {
            if (kept.Entry.Says is not Seen { What: In or Out } seen || withdrawn.Contains(kept.Hash)) continue;
            string person = seen.Words.Length > 0 ? seen.Words : kept.Entry.Person;
            if (seen.What == In) inside.Add(person);
            else inside.Remove(person);
        }
        return [.. inside];
    }
}
