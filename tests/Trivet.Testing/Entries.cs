using Trivet.Files.Entries;
using Trivet.Findings;
using Trivet.Journal;
using Trivet.Procedures;

namespace Trivet.Testing;

/// <summary>Invented devices and what they write: each keeps its own chain, and clocks may be set as a test wants them.</summary>
public sealed class WritingDevice(string id, string person = "ada", string cell = "jar-lids")
{
    public static readonly DateTime Noon = new(2030, 5, 6, 12, 0, 0, DateTimeKind.Utc);

    private long _sequence;
    private string _previous = "";

    public string Id => id;

    /// <summary>The device's clock.</summary>
    public DateTime Now { get; set; } = Noon;

    public long? ClockOffset { get; set; }

    /// <summary>The next entry of the chain; the clock goes on by a second.</summary>
    public Kept Write(Statement says, string step = "", string ask = "", string? by = null, string revision = "", string note = "")
    {
        Now = Now.AddSeconds(1);
        var kept = EntryText.Keep(new Entry
        {
            Device = id,
            Sequence = ++_sequence,
            Previous = _previous,
            Ticks = Now.Ticks,
            LocalOffset = 120,
            ClockOffset = ClockOffset,
            Person = by ?? person,
            Cell = cell,
            Revision = revision,
            Step = step,
            Ask = ask,
            Note = note,
            Says = says,
        });
        _previous = kept.Hash;
        return kept;
    }

    /// <summary>One of each kind of statement, with words that are hard to write.</summary>
    public static IReadOnlyList<Statement> EveryKind { get; } =
    [
        new Measured("12,30 mm", "m", 0.0123, 0.00001),
        new Measured("5.6e-5 mm", "m", 5.6e-8, 0),
        new Chosen("carriage-b"),
        new Counted(12),
        new Written("“ä” 机 😀 \"q\" \\ \n \t \u0001 \u007f </script>"),
        new Ticked(),
        new Photographed(new string('a', 64)),
        new Signed(Skill.SafetyPerson, "0.1.0", new string('b', 64), [new("reach.travel:/stations/tray", Verdict.Holds, 0.1), new("brief.x:/brief", Verdict.Open, double.NaN)]),
        new NotPossible("no ladder"),
        new Differs("four screws instead of six"),
        new Begun(),
        new EnergyDeclared(EnergyLevel.Isolated, new Measured("0,3 V", "V", 0.3, 0.1)),
        new EnergyDeclared(EnergyLevel.AllAxes, null),
        new Happened(Upset.PlugsMoved, "X4 and X5"),
        new Interrupted("lunch"),
        new Seen("motor-hums", ""),
        new Released(new string('c', 64)),
        new Corrected(new string('d', 64), "read upside down", new Measured("66 Ω", "Ω", 66, 1)),
        new Corrected(new string('d', 64), "not this machine", null),
        new Erased(new string('a', 64), "shows a person"),
    ];
}
