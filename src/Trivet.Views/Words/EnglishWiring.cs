using System.Collections.Immutable;

namespace Trivet.Views.Words;

/// <summary>The English texts about cabinet, addresses and bus.</summary>
internal static class EnglishWiring
{
    private const string PlanNote =
        "The plan keeps as many of the addresses already set as can be kept. Where any address of the class will do, the first of several modules with one address keeps it, and the others get the lowest that is free. Where addresses follow each other along the rail, those kept leave room for the modules between them: "
        + "with k the number of an address in its class and i the place of its module, k − i must not fall along the rail, and what is kept is a longest such sequence. Where each place has its own address there is nothing to choose.";

    public static ImmutableDictionary<string, RuleText> Rules { get; } = new Dictionary<string, RuleText>
    {
        ["wiring.described"] = new("description",
            "An address that belongs to no class, or a message of nine bytes, is a slip of the pen that costs an hour at the machine. The rule appears only while something is impossible.",
            "Each field is read with its pointer.",
            "none"),
        ["wiring.address-unique"] = new("address given once",
            "Two modules with one address both answer: two carriages may move on one command, and equal frames pass without an error.",
            "Every module of the same range is compared. " + PlanNote,
            "none; ranges are data of the cabinet"),
        ["wiring.address-legal"] = new("address allowed by the bus",
            "A module whose switches stand on an address that the bus does not know stays silent, or falls back to another.",
            "The address against the smallest and the largest that the bus allows.",
            "CANopen: 1 to 127, and what the cabinet states; another bus: what the cabinet states"),
        ["wiring.address-class"] = new("address of its class",
            "A module taken from the shelf, or moved along the rail, brings an address that is not the one its place asks for. What is plugged in then answers for another axis.",
            "The address against the one that the plan of the class has for it. " + PlanNote,
            "first, last, stride and placing of the class; the cabinet"),
        ["wiring.address-switches"] = new("address on the switches",
            "An address that the switches can not show can only be set by guessing.",
            "The address, with what the switches show at zero added, in the base of the switches: 10 or 16 for rotary ones, 2 for levers.",
            "number and positions of the switches; the cabinet"),
        ["wiring.address-classes"] = new("classes kept apart",
            "Where two kinds of module may come to the same address, adding a module to the one breaks the other.",
            "The addresses of each two classes of one range are compared, and each class against the number of its modules.",
            "none"),
        ["wiring.bus-length"] = new("length of the bus",
            "All nodes must see a bit before the next begins; a line that is too long for its bit rate works on the bench and fails on site.",
            "The stated length from end to end against the table of CiA 301; between two bit rates that of the faster one counts.",
            "CiA 301: 1 Mbit/s 25 m, 800 kbit/s 50 m, 500 kbit/s 100 m, 250 kbit/s 250 m, 125 kbit/s 500 m, 50 kbit/s 1000 m, 20 kbit/s 2500 m, 10 kbit/s 5000 m"),
        ["wiring.bus-stub"] = new("longest branch",
            "A branch that ends open throws every edge back at the line.",
            "The stated length of the longest branch.",
            "0.3 m at 1 Mbit/s and longer in proportion to the length of a bit; common practice, no source"),
        ["wiring.bus-terminators"] = new("terminators",
            "One terminator too few and the line rings, one too many and the levels fall: both make errors that come and go. All off, an ohmmeter between the two lines tells: about 60 Ω with two, 120 Ω with one, 40 Ω with three.",
            "The stated number, those inside modules included.",
            "exactly two of 120 Ω, one at either end"),
        ["wiring.bus-load"] = new("load of the bus",
            "A bus that is busy most of the time delivers its less urgent messages late, and a burst of emergencies no longer fits.",
            "The longest that stuffing can make each frame, over its period, over the bit rate, summed. A frame of n bytes has at most 55 + 10n bits with an identifier of 11 bits and 80 + 10n with one of 29, rest between frames included.",
            "what the cabinet states, half where it states nothing (common practice, no source)"),
    }.ToImmutableDictionary();

    public static ImmutableDictionary<string, string> Reasons { get; } = new Dictionary<string, string>
    {
        ["wiring.no-modules"] = "No module is described.",
        ["wiring.no-classes"] = "No class of addresses is described.",
        ["wiring.other-bus"] = "Lengths and frames are known for CANopen only.",
        ["wiring.no-messages"] = "No repeated message is described.",
        ["wiring.eight-bytes"] = "A frame carries 0 to 8 bytes.",
        ["wiring.not-positive"] = "It must be above zero.",
        ["wiring.positions"] = "A rotary switch has 10 or 16 positions.",
        ["wiring.too-fast"] = "No length is known for a bit rate above 1 Mbit/s.",
        ["wiring.no-such-module"] = "There is no module of that id; described are {fields}.",
        ["wiring.no-such-class"] = "There is no class of that id; described are {fields}.",
        ["wiring.empty-class"] = "The class has no address: its stride must lead from the first to the last, below zero where they fall.",
    }.ToImmutableDictionary();

    public static WiringWords All { get; } = new()
    {
        Strip = "Cabinet",
        StripDescription = "{cell}: the modules in order along the rail, with their addresses.",
        Addresses = "Addresses",
        HeadPlace = "Place",
        HeadModule = "Module",
        HeadRole = "Role",
        HeadAddress = "Address",
        HeadPlan = "Plan",
        HeadSet = "Set by",
        SetBy = ["rotary switches {digits}", "levers {levers}", "software"],
        LeverOn = "on",
        LeverOff = "off",
        NotOnSwitches = "can not be shown by its switches",
        Keep = "keep",
        Change = "change to {address}",
        NoRoom = "the class is too small",
        Changes = "{count} to be set anew",
        NoChanges = "All addresses are as planned.",
        Bus = "Bus",
        BitRate = "Bit rate",
        Length = "Length",
        LengthOf = "{length}, at most {limit}",
        Ohms = "Between the lines, all off",
        OhmsOf = "{ohms} as stated ({fitted} fitted)",
        OhmsRight = "about 60 Ω is right",
        Load = "Load, at worst",
        LoadOf = "{load}, at most {limit}",
        Traffic = "Messages sent again and again",
        HeadMessage = "Message",
        HeadFrom = "From",
        HeadBytes = "Bytes",
        HeadPeriod = "Period",
        HeadBits = "Bits at worst",
        HeadLoad = "Load",
        StartUp = "To be heard when the nodes start",
        HeadIdentifier = "Identifier",
        HeadBusTime = "Bus time",
        StartUpNote = "Each node sends one frame of one byte, zero, without being asked. One that is missing, heard twice or not in this list is a wrong address before it is anything else.",
        Caution = "Addresses are set with the cabinet isolated and locked off, and take effect when control supply comes back. Whoever opens a cabinet is an electrically skilled person under the local code.",
        NoModules = "No module is described yet.",
        Waits = "Needs what is not stated: {fields}.",
        Take = "Take the plan",
    };
}
