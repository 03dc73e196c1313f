using System.Collections.Immutable;

namespace Trivet.Views.Words;

/// <summary>The English texts about the stack of modules and its enclosure.</summary>
internal static class EnglishCabinets
{
    public static ImmutableDictionary<string, RuleText> Rules { get; } = new Dictionary<string, RuleText>
    {
        ["cabinet.described"] = new("description",
            "A width below zero, or rules of which no order obeys all, would make every later number of the cabinet wrong. The rule appears only while something is impossible.",
            "Each field is read with its pointer; rules that contradict each other are found by the search for an order.",
            "none"),
        ["cabinet.order"] = new("order along the rail",
            "Modules that pass power or signals to their neighbours work in some orders only: what feeds stands where its bus bar reaches, what is warm not beside what is tender. Found after wiring, it costs the wiring.",
            "Each rule of the cabinet is held against the modules in their order. The advice is the nearest order that obeys all rules: modules are taken out and put in elsewhere, as few as can be, and those that stay keep their sequence; a shortest-path search finds it, so there is none with fewer moves. A module whose place is not stated counts for nothing and goes behind its like.",
            "the rules of the cabinet: makers' habits, so they are data"),
        ["cabinet.rail"] = new("rail taken",
            "A module that does not fit on the rail ends in a second cabinet.",
            "The widths of all modules and the gaps that rules want between neighbours, summed.",
            "what the enclosure states"),
        ["cabinet.temperature"] = new("temperature inside",
            "Above what a module bears it derates, resets or ages: ten kelvin halve the life of its capacitors (rule of thumb).",
            "What goes in comes out: P = k·A·ΔT + ρ·c·V·ΔT, with the heat of all modules at load, the effective cooling surface A of the enclosure as it stands, k of its walls, and the air V that fans drive through, its density at the temperature inside. Near 32 °C the air's part is the usual V = 3.1·P/ΔT in m³/h. The air is taken as mixed: a module above another is warmer. What the sun puts in and a cooler takes out counts as stated; with a cooler the air inside is taken as no cooler than outside. Heat through a mounting plate is left out. So the value is an estimate.\n"
            + "Cooling surface of width W, height H, depth D: free 1.8·H·(W+D) + 1.4·W·D; at a wall 1.4·W·(H+D) + 1.8·D·H; end of a row 1.4·D·(H+W) + 1.8·W·H, at a wall 1.4·H·(W+D) + 1.4·W·D; middle of a row 1.8·W·H + 1.4·W·D + D·H, at a wall 1.4·W·(H+D) + D·H.",
            "what the module that bears least states"),
    }.ToImmutableDictionary();

    public static ImmutableDictionary<string, string> Reasons { get; } = new Dictionary<string, string>
    {
        ["cabinet.no-modules"] = "No module is described.",
        ["cabinet.no-rail-rules"] = "No rule for the order along the rail is described.",
        ["cabinet.nobody-meant"] = "No module has the role, or the id, that the rule names.",
        ["cabinet.no-order"] = "No order of the modules obeys all rules; take one of them out.",
        ["cabinet.too-many-orders"] = "There are too many orders to try; name fewer roles in the rules.",
        ["cabinet.no-limit"] = "No module states how warm the air around it may be.",
        ["cabinet.not-positive"] = "It must be above zero.",
        ["cabinet.cooler-and-fan"] = "A cooler needs a closed enclosure: with {fields} it cools the hall. State one of the two.",
        ["cabinet.negative"] = "It must not be below zero.",
    }.ToImmutableDictionary();

    public static CabinetWords All { get; } = new()
    {
        Stack = "Order along the rail",
        RailRules = "Rules of the order",
        HeadRule = "Rule",
        HeadVerdict = "Verdict",
        Rules =
        [
            "{of} left of all others", "{of} right of all others", "{of} left of {to}", "{of} beside {to}", "{of} not beside {to}", "{gap} free between {of} and {to}",
            "at most {count} of {to} behind {of}", "{of} in one row",
        ],
        AnyNeighbour = "its neighbours",
        Kept = "kept",
        Broken = "broken by {modules}",
        NobodyMeant = "no such module here",
        RailTaken = "Rail taken",
        RailOf = "{length} with gaps, of {limit}",
        Moves = "To be moved",
        NoMoves = "nothing",
        MovesOf = "{modules}; shown as planned",
        NoOrder = "no order obeys all rules",
        Heat = "Heat",
        HeatByModule = "Heat of the modules",
        HeadModule = "Module",
        HeadAtRest = "At rest",
        HeadAtLoad = "At load",
        HeadBears = "Bears",
        HeadDischarge = "Discharged after",
        HeadFan = "Fan",
        Fan = "own",
        AtRest = "Heat at rest",
        AtLoad = "Heat at load",
        Surface = "Effective cooling surface",
        Gain = "Comes in from outside",
        Cooler = "A cooler takes out",
        Walls = "Walls carry off, per kelvin",
        FanCarries = "Air driven through",
        Inside = "Inside, at load",
        InsideOf = "{temperature}, at most {limit} ({module})",
        FlowWanted = "Air needed at that limit",
        WallsAlone = "none, the walls do",
        NoFlow = "no air of that temperature helps",
        Standby = "Left on outside running hours",
        StandbyOf = "{energy} a year ({hours} at rest)",
        Discharge = "Wait before opening",
        DischargeOf = "{time} after isolation ({module}), then measure",
        HeatCautions =
        [
            "An estimate for choosing an enclosure and a fan: the air is taken as mixed. Measure inside, above the warmest module, after some hours at load.",
            "A fan without its filter cleaned delivers a fraction of its air. Modules need the free width and height that their makers ask for.",
        ],
        DischargeCautions =
        [
            "Isolate, lock off, wait, and measure each d.c. bus dead before touching: capacitors hold their charge after the isolator is off. IEC 60204-1 asks for below 60 V within 5 s, or a warning with the time (from memory). The local code and a licensed person decide.",
        ],
    };
}
