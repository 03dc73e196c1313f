using System.Collections.Immutable;
using System.Globalization;
using System.Security.Cryptography;
using System.Text;
using Trivet.Findings;
using Trivet.Journal;
using Trivet.Procedures;

namespace Trivet.Files.Entries;

/// <summary>
/// Entries and receipts as their one canonical text (docs/journal.md), and the hash of it. Numbers of a machine are texts of the fewest
/// digits that read back to the same double, so that no reader rounds them; moments are texts to 100 ns.
/// </summary>
public static class EntryText
{
    /// <summary>Version of the form. A reader keeps what a later version wrote, and does not understand it.</summary>
    public const int Version = 1;

    /// <summary>Largest text of one entry, bytes of UTF-8: a signature with a full ledger has some tens of thousands.</summary>
    public const int Largest = 256 * 1024;

    /// <summary>Longest id, characters.</summary>
    public const int LongestId = 200;

    /// <summary>Longest text that a person writes in one place, characters.</summary>
    public const int LongestWords = 8000;

    private const string Moment = "yyyy-MM-dd'T'HH:mm:ss.fffffff'Z'";

    /// <summary>SHA-256 of a text as UTF-8, lower-case hexadecimal.</summary>
    public static string Hash(string text) => Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(text)));

    /// <summary>The canonical text of an entry. What this program does not understand is never written again.</summary>
    public static string Of(Entry entry) => CanonicalJson.Of(
    [
        new("ask", NullIfEmpty(entry.Ask)),
        new("at", MomentText(entry.Ticks)),
        new("cell", entry.Cell),
        new("clockOffset", entry.ClockOffset),
        new("device", entry.Device),
        new("entry", Version),
        new("instrument", NullIfEmpty(entry.Instrument)),
        new("localOffset", entry.LocalOffset),
        new("note", NullIfEmpty(entry.Note)),
        new("person", entry.Person),
        new("previous", entry.Previous),
        new("revision", entry.Revision),
        new("says", Says(entry.Says)),
        new("sequence", entry.Sequence),
        new("step", NullIfEmpty(entry.Step)),
    ]);

    public static string Of(Receipt receipt) => CanonicalJson.Of(
    [
        new("entry", receipt.Entry),
        new("number", receipt.Number),
        new("previous", receipt.Previous),
        new("receipt", Version),
        new("received", MomentText(receipt.Ticks)),
    ]);

    /// <summary>An entry with its hash, as it is before any store has it.</summary>
    public static Kept Keep(Entry entry) => new(entry, Hash(Of(entry)));

    internal static string MomentText(long ticks) => new DateTime(ticks, DateTimeKind.Utc).ToString(Moment, CultureInfo.InvariantCulture);

    /// <summary>UTC ticks of a moment in the one form; null for any other text.</summary>
    internal static long? MomentOf(string text) =>
        DateTime.TryParseExact(text, Moment, CultureInfo.InvariantCulture, DateTimeStyles.AssumeUniversal | DateTimeStyles.AdjustToUniversal, out var moment)
            ? moment.Ticks
            : null;

    private static string? NullIfEmpty(string text) => text.Length == 0 ? null : text;

    private static string Number(double value) => double.IsFinite(value)
        ? value.ToString("R", CultureInfo.InvariantCulture)
        : throw new ArgumentOutOfRangeException(nameof(value), value, "a reading is a finite number");

    private static List<KeyValuePair<string, object?>> Says(Statement says) => says switch
    {
        Measured m => Kind("measured", ("typed", m.Typed), ("unit", m.Unit), ("value", Number(m.Value)), ("readTo", m.Step > 0 ? Number(m.Step) : null)),
        Chosen c => Kind("chosen", ("option", c.Option)),
        Counted c => Kind("counted", ("count", c.Count)),
        Written w => Kind("written", ("text", w.Text)),
        Ticked => Kind("ticked"),
        Photographed p => Kind("photographed", ("photograph", p.Photograph)),
        Signed s => Kind("signed", ("as", WordOf(s.As)), ("engine", s.Engine), ("head", NullIfEmpty(s.Head)), ("findings", s.Findings.Select(Finding))),
        NotPossible n => Kind("not possible", ("reason", n.Reason)),
        Differs d => Kind("differs", ("words", d.Words)),
        Begun => Kind("begun"),
        EnergyDeclared e => Kind("energy declared", ("level", WordOf(e.Level)), ("dead", e.Dead is { } dead ? Says(dead) : null)),
        Happened h => Kind("happened", ("upset", WordOf(h.Upset)), ("words", NullIfEmpty(h.Words))),
        Interrupted i => Kind("interrupted", ("words", NullIfEmpty(i.Words))),
        Seen s => Kind("seen", ("what", NullIfEmpty(s.What)), ("words", NullIfEmpty(s.Words))),
        Released r => Kind("released", ("entry", r.Entry)),
        Corrected c => Kind("corrected", ("entry", c.Entry), ("reason", c.Reason), ("instead", c.Instead is { } instead ? Says(instead) : null)),
        Erased e => Kind("erased", ("photograph", e.Photograph), ("reason", e.Reason)),
        _ => throw new ArgumentException($"{says.GetType().Name} is not written", nameof(says)),
    };

    private static object Finding(ShownFinding f) =>
        Members(("id", f.Id), ("verdict", WordOf(f.Verdict)), ("value", double.IsFinite(f.Value) ? Number(f.Value) : null));

    private static List<KeyValuePair<string, object?>> Kind(string kind, params (string Name, object? Value)[] members) => Members([("kind", kind), .. members]);

    private static List<KeyValuePair<string, object?>> Members(params (string Name, object? Value)[] members) =>
        [.. members.Select(m => KeyValuePair.Create(m.Name, m.Value))];

    // The words of the form. They are never renamed: old journals stay readable.
    internal static readonly ImmutableArray<(EnergyLevel Level, string Word)> Levels =
    [
        (EnergyLevel.Isolated, "isolated"), (EnergyLevel.ControlSupplyOnly, "control supply only"), (EnergyLevel.OneAxisLimited, "one axis limited"),
        (EnergyLevel.OneAxis, "one axis"), (EnergyLevel.AllAxes, "all axes"),
    ];

    internal static readonly ImmutableArray<(Upset Upset, string Word)> Upsets =
        [(Upset.PowerCycled, "power cycled"), (Upset.PlugsMoved, "plugs moved"), (Upset.Transported, "transported")];

    internal static readonly ImmutableArray<(Skill Skill, string Word)> Skills =
    [
        (Skill.Fitter, "fitter"), (Skill.Electrician, "electrician"), (Skill.Engineer, "engineer"), (Skill.SafetyPerson, "safety person"), (Skill.Customer, "customer"),
    ];

    internal static readonly ImmutableArray<(Verdict Verdict, string Word)> Verdicts =
        [(Verdict.FallsShort, "falls short"), (Verdict.Open, "open"), (Verdict.Tight, "tight"), (Verdict.Holds, "holds")];

    private static string WordOf(EnergyLevel level) => Levels.First(p => p.Level == level).Word;
    private static string WordOf(Upset upset) => Upsets.First(p => p.Upset == upset).Word;
    private static string WordOf(Skill skill) => Skills.First(p => p.Skill == skill).Word;
    private static string WordOf(Verdict verdict) => Verdicts.First(p => p.Verdict == verdict).Word;
}
