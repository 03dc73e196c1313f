using System.Collections.Immutable;
using System.Globalization;
using Trivet.Journal;
using Trivet.Views.Words;

namespace Trivet.Views.Journals;

/// <summary>Which entries are shown; an empty text is no wish.</summary>
public sealed record JournalFilter(string Cell = "", string Step = "", string Person = "", string Device = "")
{
    /// <param name="step">The step the entry is about: its own, or that of the entry it names.</param>
    public bool Takes(Entry entry, string step) =>
        Fits(Cell, entry.Cell) && Fits(Step, step) && Fits(Person, entry.Person) && Fits(Device, entry.Device);

    private static bool Fits(string wish, string value) => wish.Length == 0 || wish == value;
}

/// <summary>One entry in words.</summary>
/// <param name="Number">Of its receipt; empty without one.</param>
/// <param name="Step">The step it is about, and behind a colon what that asks; empty where it is about none.</param>
/// <param name="Superseded">Corrected or withdrawn since.</param>
public sealed record JournalRow(Kept Kept, string Number, string When, string Step, string Says, bool Superseded);

/// <summary>The journal as a table, the newest first, with what does not fit together in it.</summary>
public sealed record JournalSheet(
    string Title, string Summary, string Head, ImmutableArray<JournalRow> Rows, ImmutableArray<string> Contradictions,
    ImmutableArray<string> Cells, ImmutableArray<string> Steps, ImmutableArray<string> People, ImmutableArray<string> Devices)
{
    /// <param name="entries">The whole journal, in the order of receipts.</param>
    /// <param name="head">Hash of the newest receipt; empty while there is none.</param>
    /// <param name="more">What the procedure finds not to fit, besides the chains of the devices.</param>
    public static JournalSheet Of(
        IReadOnlyCollection<Kept> entries, string head, JournalFilter filter, JournalWords words, ImmutableArray<Mismatch> more)
    {
        var byHash = entries.ToDictionary(k => k.Hash, StringComparer.Ordinal);
        var superseded = entries.Select(k => k.Entry.Says).OfType<Corrected>().Select(c => c.Entry).ToHashSet(StringComparer.Ordinal);
        var rows = from kept in entries.Reverse()
                   let step = StepOf(kept, byHash)
                   where filter.Takes(kept.Entry, step)
                   select new JournalRow(
                       kept, kept.Receipt?.Number.ToString(CultureInfo.InvariantCulture) ?? "", JournalSentences.When(kept.Entry),
                       step + (kept.Entry.Ask.Length > 0 ? $": {kept.Entry.Ask}" : ""), JournalSentences.Of(kept.Entry.Says, words, kept.Entry.Ask), superseded.Contains(kept.Hash));
        var devices = Distinct(k => k.Entry.Device);
        return new(
            words.Title,
            entries.Count == 0 ? words.Empty : JournalSentences.Fill(words.Summary, ("count", Count(entries.Count)), ("devices", Count(devices.Length))),
            head, [.. rows],
            [
                .. Mismatches.Of(entries).Concat(more)
                    .Select(m => JournalSentences.Of(m, byHash.TryGetValue(m.Entries[0], out var kept) ? kept.Entry.Person : "?", words)),
            ],
            Distinct(k => k.Entry.Cell), Distinct(k => StepOf(k, byHash)), Distinct(k => k.Entry.Person), devices);

        ImmutableArray<string> Distinct(Func<Kept, string> of) => [.. entries.Select(of).Where(v => v.Length > 0).Distinct().Order(StringComparer.Ordinal)];
    }

    private static string Count(int count) => count.ToString(CultureInfo.InvariantCulture);

    private static string StepOf(Kept kept, Dictionary<string, Kept> byHash)
    {
        // A correction of a correction is about what the first one was about; a ring can not be, for a hash names only what was there before.
        while (kept.Entry.Step.Length == 0 && Named(kept.Entry.Says) is { } hash && byHash.TryGetValue(hash, out var named)) kept = named;
        return kept.Entry.Step;
    }

    private static string? Named(Statement says) => says switch
    {
        Released released => released.Entry,
        Corrected corrected => corrected.Entry,
        _ => null,
    };
}
