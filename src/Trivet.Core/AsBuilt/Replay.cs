using System.Collections.Immutable;
using Trivet.Journal;

namespace Trivet.AsBuilt;

/// <summary>An answer that counts, and since when what it tells is known.</summary>
/// <param name="Index">Place in the order of the journal of the entry that was written at the machine; a correction does not move it.</param>
/// <param name="Written">That entry: its person, revision and time are those of the evidence.</param>
/// <param name="Kept">The entry that says what counts: the same, or the one that corrected it.</param>
internal sealed record Evidence(int Index, string Ask, Answer Answer, Kept Written, Kept Kept);

/// <summary>What the entries about one step come to, up to a place in the journal: corrections taken in, nothing judged.</summary>
/// <param name="Live">Answers that count, in the order they were written.</param>
internal sealed record Replay(ImmutableArray<Evidence> Live, bool Begun, ImmutableArray<Kept> Releases)
{
    /// <param name="about">Every entry about the step, with its place in the journal, in order.</param>
    /// <param name="before">Entries from this place on are not yet there.</param>
    public static Replay Of(IReadOnlyList<(int Index, Kept Kept)> about, int before = int.MaxValue)
    {
        var live = new Dictionary<string, Evidence>(StringComparer.Ordinal);
        var replaced = new Dictionary<string, Evidence>(StringComparer.Ordinal);
        var begun = new HashSet<string>(StringComparer.Ordinal);
        var releases = new List<Kept>();
        foreach (var (index, kept) in about)
        {
            if (index >= before) break;
            switch (kept.Entry.Says)
            {
                case Answer answer: live[kept.Hash] = new(index, kept.Entry.Ask, answer, kept, kept); break;
                case Journal.Begun: begun.Add(kept.Hash); break;
                case Released: releases.Add(kept); break;
                case Corrected corrected:
                    begun.Remove(corrected.Entry);
                    releases.RemoveAll(r => r.Hash == corrected.Entry);
                    live.Remove(corrected.Entry, out var old);
                    if (old is not null) replaced[kept.Hash] = old;
                    if (corrected.Instead is { } instead && (old ?? replaced.GetValueOrDefault(corrected.Entry)) is { } place)
                        live[kept.Hash] = place with { Answer = instead, Kept = kept };
                    // Taking back a correction without putting anything in its place lets stand again what it had corrected.
                    else if (corrected.Instead is null && replaced.TryGetValue(corrected.Entry, out var restored))
                        live[restored.Kept.Hash] = restored;
                    break;
            }
        }
        return new([.. live.Values.OrderBy(e => e.Index).ThenBy(e => e.Kept.Hash, StringComparer.Ordinal)], begun.Count > 0, [.. releases]);
    }

    /// <summary>The answer that counts for something asked, or for the step as a whole (an empty id): the one written last.</summary>
    public Evidence? Last(string ask) => Live.LastOrDefault(e => e.Ask == ask);
}
