using System.Globalization;
using Trivet.AsBuilt;
using Trivet.Journal;
using Trivet.Procedures;
using Trivet.Views.Words;

namespace Trivet.Views.Journals;

/// <summary>What entries say, what does not fit together and why steps are stale, in words.</summary>
public static class JournalSentences
{
    /// <summary>Characters of a hash that people compare; the whole stands in an export.</summary>
    private const int ShortHash = 8;

    /// <param name="ask">What the entry answers, by its id: an option chosen is told in the words of the step.</param>
    public static string Of(Statement says, JournalWords words, string ask = "") => says switch
    {
        Measured m => Fill(words.Measured, ("text", m.Typed)),
        Chosen c => Fill(words.Chosen, ("text", ProcedureWords.In(words.Tag).OptionOr(ask, c.Option))),
        Counted c => Fill(words.Counted, ("count", Number(c.Count))),
        Written w => Fill(words.Written, ("text", w.Text)),
        Ticked => words.Ticked,
        Photographed p => Fill(words.Photographed, ("hash", Short(p.Photograph))),
        Signed s => Fill(words.Signed, ("as", words.Skills[(int)s.As]), ("count", Number(s.Findings.Length)), ("engine", s.Engine)),
        NotPossible n => Fill(words.NotPossible, ("reason", n.Reason)),
        Differs d => Fill(words.Differs, ("words", d.Words)),
        Begun => words.Begun,
        EnergyDeclared { Dead: { } dead } e => Fill(words.EnergyDeclaredDead, ("level", words.Levels[(int)e.Level]), ("dead", dead.Typed)),
        EnergyDeclared e => Fill(words.EnergyDeclared, ("level", words.Levels[(int)e.Level])),
        Happened h => With(words.Upsets[(int)h.Upset], h.Words),
        Interrupted i => With(words.Interrupted, i.Words),
        Seen { What: Inside.In or Inside.Out } s => With(s.What == Inside.In ? words.WentIn : words.CameOut, s.Words),
        Seen s => Fill(words.Seen, ("words", string.Join(' ', new[] { s.What, s.Words }.Where(w => w.Length > 0)))),
        Released r => Fill(words.Released, ("hash", Short(r.Entry))),
        Corrected { Instead: { } instead } c => Fill(words.Corrected, ("hash", Short(c.Entry)), ("reason", c.Reason), ("instead", Of(instead, words, ask))),
        Corrected c => Fill(words.Withdrawn, ("hash", Short(c.Entry)), ("reason", c.Reason)),
        Erased e => Fill(words.Erased, ("hash", Short(e.Photograph)), ("reason", e.Reason)),
        Unread u => Fill(words.Unread, ("kind", u.Kind)),
        _ => throw new ArgumentException($"{says.GetType().Name} has no words", nameof(says)),
    };

    /// <param name="person">Who wrote the entry it is about.</param>
    public static string Of(Mismatch mismatch, string person, JournalWords words) => Fill(words.Mismatches[(int)mismatch.Kind],
        ("device", mismatch.Device), ("sequence", Number(mismatch.Sequence)), ("first", Number(mismatch.First)), ("last", Number(mismatch.Last)),
        ("time", Span(TimeSpan.FromTicks(mismatch.First))), ("person", person));

    /// <param name="field">Words for a pointer.</param>
    /// <param name="title">Words for the id of a step.</param>
    public static string Of(Staleness why, JournalWords words, Func<string, string> field, Func<string, string> title) => why switch
    {
        Staleness.Field f => Fill(words.StaleField, ("field", field(f.Pointer)), ("from", Stated(f.Pointer, f.From, words)), ("to", Stated(f.Pointer, f.To, words))),
        Staleness.Result r => Fill(words.StaleResult, ("step", title(r.Step))),
        Staleness.Upset u => Fill(words.StaleUpset, ("what", words.Upsets[(int)u.What])),
        Staleness.UnknownRevision u => Fill(words.StaleUnknownRevision, ("revision", u.Revision.Length == 0 ? words.NotStated : Short(u.Revision))),
        _ => throw new ArgumentException($"{why.GetType().Name} has no words", nameof(why)),
    };

    /// <summary>A note: as it was written, but for the beginning of those that the floor page writes by itself.</summary>
    public static string Note(string note, JournalWords words) =>
        note.StartsWith(PageNotes.FromPaper, StringComparison.Ordinal) ? words.FromPaper + note[PageNotes.FromPaper.Length..]
        : note;

    public static string NotSound(int faults, JournalWords words) => Fill(words.NotSound, ("count", Number(faults)));

    public static string Contradictions(int count, JournalWords words) => count == 0 ? words.NoContradictions : Fill(words.Contradictions, ("count", Number(count)));

    public static string Exported(int entries, int photographs, string file, JournalWords words) =>
        Fill(words.Exported, ("count", Number(entries)), ("photographs", Number(photographs)), ("file", file));

    public static string Imported(int taken, int again, JournalWords words) => Fill(words.Imported, ("taken", Number(taken)), ("again", Number(again)));

    public static string Restoring(int revision, DraftCosts costs, JournalWords words) => $"{Fill(words.Restoring, ("revision", Number(revision)))} {costs.Summary}";

    public static string PhotographsImported(int taken, int again, int erased, JournalWords words) =>
        Fill(words.PhotographsImported, ("taken", Number(taken)), ("again", Number(again)), ("erased", Number(erased)));

    public static string DamagedReceipt(long number, JournalWords words) => Fill(words.DamagedReceipt, ("number", Number(number)));

    public static string OlderLeftOut(int shown, JournalWords words) => Fill(words.OlderLeftOut, ("count", Number(shown)));

    public static string Short(string hash) => hash.Length > ShortHash ? hash[..ShortHash] : hash;

    /// <summary>The local time of the device when it wrote, as a person there saw it.</summary>
    public static string When(Entry entry)
    {
        var local = new DateTime(Math.Clamp(entry.Ticks + entry.LocalOffset * TimeSpan.TicksPerMinute, 0, DateTime.MaxValue.Ticks));
        return local.ToString("yyyy-MM-dd HH:mm:ss", CultureInfo.InvariantCulture);
    }

    /// <summary>The line burnt in below a photograph: what it shows, when by the clock there, and whose it is. Ids and numbers alone, so it reads the same in every language.</summary>
    public static string BurntIn(string cell, string step, DateTimeOffset when, string person) =>
        string.Join(" · ", new[] { cell, step, when.ToString("yyyy-MM-dd HH:mm:ss zzz", CultureInfo.InvariantCulture), person }.Where(t => t.Length > 0));

    private static string Stated(string pointer, string text, JournalWords words) => text.Length == 0 ? words.NotStated : FieldNames.Value(pointer, text, words.Tag);

    private static string With(string what, string own) => own.Length == 0 ? what : $"{what}: {own}";

    private static string Span(TimeSpan time) => time.TotalDays >= 1 ? $"{Number((long)time.TotalDays)} d {time:hh\\:mm\\:ss}" : time.ToString(@"hh\:mm\:ss", CultureInfo.InvariantCulture);

    private static string Number(long value) => value.ToString(CultureInfo.InvariantCulture);

    internal static string Fill(string template, params ReadOnlySpan<(string Name, string Value)> values) => Locale.Fill(template, values);
}
