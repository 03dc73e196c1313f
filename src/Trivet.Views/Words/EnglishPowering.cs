using System.Collections.Immutable;

namespace Trivet.Views.Words;

/// <summary>The English texts about supplies, branches and wires.</summary>
internal static class EnglishPowering
{
    private const string Aid = " An aid to the plan, never its approval: it does not say more than tight, and the local code and a licensed person decide.";

    public static ImmutableDictionary<string, RuleText> Rules { get; } = new Dictionary<string, RuleText>
    {
        ["power.described"] = new("description",
            "A branch that names no source, or a wire of a section that nobody makes, leaves a budget that looks whole and is not. The rule appears only while something is missing or impossible.",
            "Each field is read with its pointer.",
            "none"),
        ["power.reserve"] = new("reserve",
            "A supply at its limit ages fast, and the next sensor finds no room.",
            "The currents of all modules, consumers and supplies on its branches: number, times share that is on at a time, times steady current; summed.",
            "what the source gives without end, divided by 1.3 (common practice, no source)"),
        ["power.peak"] = new("largest current",
            "A supply that folds back when a brake is lifted resets the controller.",
            "The peaks of all loads at the same moment, each number times its share that is on at a time.",
            "the source's peak current where every peak is over within the time that it bears it, else what it gives without end"),
        ["power.separate"] = new("separate branches",
            "A shorted valve on the branch of the controller takes the controller down with it, and a coil switched off there disturbs it.",
            "All loads of a branch of direct current are of one purpose: logic, outputs, brakes or motors. Modules count as logic.",
            "none; common practice, no source"),
        ["power.voltage"] = new("voltage",
            "Below 20.4 V a device of 24 V may do anything: valves chatter, brakes drop, sensors lie.",
            "The source's voltage, less the drop of the branch's wire while its whole branch draws its peak, less that of the consumer's own wire at its peak. Each wire there and back, copper at the stated temperature: R = R20·(1 + 0.00393·(T − 20)), R20 of class 5 conductors. Contacts and terminals are left out.",
            "what the consumer states, or its source's voltage less 15 % (IEC 61131-2, from memory)"),
        ["power.load"] = new("load",
            "A protection below its load opens in the afternoon of a warm day.",
            "The steady currents of the branch, each number times its share that is on at a time.",
            "rated or set current of the protection"),
        ["power.wire"] = new("protection against wire",
            "A protection above what its wire bears lets the wire burn." + Aid,
            "Rated or set current of the protection, of a fuse 1.6/1.45 times as much, against the weakest wire behind it: the branch's own and those of its consumers. A wire bears what IEC 60204-1 table 6 states for its section and laying, times the factor for warm air (table D.1) and that for circuits together (table D.2); between rows the careful one. Rows of 0.2, 0.5, 2.5, 10 and 35 mm² are from memory.",
            "what the weakest wire bears"),
        ["power.trip"] = new("short circuit",
            "Behind a long thin wire, or a supply that folds back, a short circuit is a load like another: nothing trips, and the wire glows." + Aid,
            "Current at the far end of the longest wires, copper warm: of mains V/(R + V/I), I their short-circuit current; of a supply V/R, held to what it gives into a short circuit.",
            "what trips for certain: a breaker 5, 10 or 20 times its rating for B, C, D (IEC 60898-1), with direct current √2 as much (common practice); a fuse gG 5 times, within 5 s (from memory); an electronic protection what it states, or 1.3 times its rating"),
        ["power.inrush"] = new("inrush",
            "The capacitors of supplies draw a surge of some milliseconds when switched on; too many behind one breaker trip it, most often after a short failure of the mains.",
            "The stated peaks of all supplies that the branch feeds, summed as if they came at one moment. Supplies started one after the other draw less.",
            "the lower end of the breaker's band, times √2 for the peak: 3, 5 or 10 times the rating for B, C, D (IEC 60898-1)"),
    }.ToImmutableDictionary();

    public static ImmutableDictionary<string, string> Reasons { get; } = new Dictionary<string, string>
    {
        ["power.no-sources"] = "No source, branch or consumer is described.",
        ["power.no-such-source"] = "There is no source of that id.",
        ["power.no-such-branch"] = "There is no branch of that id.",
        ["power.no-such-cable"] = "There is no cable of that id.",
        ["power.no-such-section"] = "No wire is made so: 0.14, 0.25, 0.34, 0.5, 0.75, 1, 1.5, 2.5, 4, 6, 10, 16, 25 or 35 mm².",
        ["power.not-positive"] = "It must be above zero.",
        ["power.negative"] = "It must not be below zero.",
        ["power.not-a-share"] = "It must lie between 0 and 1.",
        ["power.beyond-tables"] = "IEC 60204-1 has no current for such a wire: too thin, too warm, or more than nine circuits together.",
        ["power.no-band"] = "A fuse or an electronic protection has no band to hold a surge against; ask its maker's curve.",
        ["power.no-inrush"] = "No surge is stated for what the branch feeds.",
    }.ToImmutableDictionary();

    public static PowerWords All { get; } = new()
    {
        Budget = "Supplies and consumers",
        Sources = "Sources",
        HeadSource = "Source",
        HeadVoltage = "Voltage",
        HeadGives = "Gives",
        HeadDrawn = "Drawn",
        HeadReserve = "Reserve",
        HeadPeak = "Peak",
        HeadPeakBorne = "Peak borne",
        Consumers = "Consumers by branch",
        HeadConsumer = "Consumer",
        HeadBranch = "Branch",
        HeadPurpose = "For",
        HeadCount = "Count",
        HeadSteady = "Steady",
        HeadFor = "Lasting",
        HeadTogether = "Together",
        HeadBackedUp = "Backed up",
        HeadThere = "Voltage there",
        Purposes = ["logic", "outputs", "brakes", "motors", "supply"],
        Yes = "yes",
        No = "no",
        Branches = "Branches, wires and protection",
        BranchTable = "Branches",
        HeadProtection = "Protection",
        HeadRating = "Rating",
        HeadLoad = "Load",
        HeadWire = "Wire",
        HeadBears = "Wire bears",
        HeadWeakest = "Weakest wire",
        HeadShort = "Short circuit gives",
        HeadTrips = "Trips at",
        Protections = ["fuse gG", "breaker B", "breaker C", "breaker D", "electronic"],
        OwnWire = "its own",
        InrushTable = "Supplies behind breakers",
        HeadSupplies = "Supplies",
        HeadSurge = "Surge together",
        HeadPasses = "Breaker passes",
        HeadMost = "Most of the largest",
        Cautions =
        [
            "Protection, wires and earthing are the work of a licensed person under the local code, who has the last word here. Trivet computes from what is typed; it does not know what is fitted.",
            "Before power: protective bonding, insulation and the conditions for disconnection are measured and recorded (IEC 60204-1 clause 18).",
        ],
    };
}
