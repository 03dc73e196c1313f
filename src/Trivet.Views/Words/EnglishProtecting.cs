using System.Collections.Immutable;

namespace Trivet.Views.Words;

/// <summary>The English texts of the rules and reasons of handling and guarding.</summary>
internal static class EnglishProtecting
{
    private const string Aid = "**An aid to the risk assessment, never a substitute for it. Local codes, the current text of the standard and the judgement of a competent person take precedence.**";

    private const string Space = "The distance is from everything the robot can move to, wherever its drives stand, bounded rigorously: rods, platform, tool and the largest part. Bodies of carriages, motors and hoses are not described and not in it.";

    public static ImmutableDictionary<string, RuleText> Rules { get; } = new Dictionary<string, RuleText>
    {
        ["protect.described"] = new("description",
            "What protects people must be possible as it is described. The rule appears only while something is not.\n" + Aid,
            "Each field is read with its pointer; what can not be is named.",
            "none"),
        ["protect.lift"] = new("lifting index",
            "Backs are hurt by lifts that looked easy. One person alone, both hands, standing well, nothing hot, slippery or swinging.\n" + Aid,
            "The revised NIOSH lifting equation, metric, at the begin of the lift and, where the load is placed with care, at its end; the harder end counts. Index = mass over recommended mass.",
            "1: the recommended mass itself (Waters, Putz-Anderson, Garg 1994)"),
        ["protect.lifts-together"] = new("composite lifting index",
            "Each lift may be easy and the shift still too much. All lifts by hand that are described are taken as one person's; who shares them out between people may find each one's by leaving the others' out.\n" + Aid,
            "The composite index of the revised NIOSH lifting equation: the largest single index, and for each further lift, in falling order, its index without the factor of frequency times what all lifts so far together leave less of that factor.",
            "1: the recommended mass itself (Waters, Putz-Anderson, Garg 1994)"),
        ["protect.lift-aid"] = new("lifting aid",
            "What takes more than one person, goes above shoulder height or lies outside the lifting equation is lifted by an aid. How many people could lift it is not computed: people do not share a load evenly, and one of them lets go. **Nobody stands under a hanging load. Slings, hooks and hoist are inspected and rated; a trained person leads.**\n" + Aid,
            "The mass against what the planned aid carries.",
            "capacity of the aid; the cell description"),
        ["protect.bolts"] = new("first bolts",
            "Before the aid lets go and hands leave the robot, enough bolts must hold it. How many is a number of this cell, written on the step. **Props or the aid stay until those bolts are at their torque.**\n" + Aid,
            "S·m·g·(1/n + e/b): the weight evenly on n bolts, and its distance e from their middle on one of them at the smallest spacing b. Prying and the give of what the robot hangs on are left out, so the value is an estimate and never more than tight. Fewer than three bolts fall short: on them it turns.",
            "largest pull of a bolt, with its source; the cell description"),
        ["protect.device-distance"] = new("distance of the device",
            "A light curtain stops the robot only if people need longer to the place of danger than the robot to its stop. Until the worst stop was measured at this machine, the distance stays open.\n" + Aid,
            "ISO 13855:2010 with T = sensing + logic + drive + worst stop, each with its source. The distance is that of the device's line on the floor from the maximum space of the robot where the line is stated, else as typed. Straight through the field: 2000 mm/s·T + 8·(d − 14 mm), at least 100 mm; above 500 mm with 1600 mm/s, at least 500 mm; for d above 40 mm up to 70 mm 1600 mm/s·T + 850 mm. Along the field: 1600 mm/s·T + 1200 mm − 0.4·H, at least 850 mm of it, with the field no lower than H = 15·(d − 50 mm). "
            + "**Not judged here:** reaching over an upright field, the heights of the lowest and the highest beam, crawling under, and people who stay behind the field. Judge them by the standard's own text.",
            "the distance of ISO 13855:2010"),
        ["protect.muting"] = new("muting",
            "**A muted device protects nobody.** While material passes, something else has to keep people out: the material itself, a narrow way in, a guard beside it. Whether it does is seen at the machine, with what passes and without.\n" + Aid,
            "A muted device must state what mutes it and what keeps people out meanwhile. The finding stays open: no calculation closes it; a competent person judges it by the risk assessment and writes it down.",
            "none"),
        ["protect.fence-height"] = new("height of the guard",
            "People climb or fall over a low guard.\n" + Aid,
            "The stated height.",
            "1400 mm without further measures (ISO 13857)"),
        ["protect.reach-over"] = new("reach over the guard",
            "An arm reaches over a guard farther than one thinks.\n" + Aid,
            Space + " The table is not interpolated: between two heights of guards the lower counts, and of all heights at which the robot can be, the one that asks for most.",
            "ISO 13857 table 2, high risk"),
        ["protect.opening"] = new("reach through the guard",
            "Fingers and arms go through openings.\n" + Aid,
            Space,
            "ISO 13857 table 4, by shape and size of the opening"),
        ["protect.floor-gap"] = new("gap under the guard",
            "A gap under the guard lets somebody crawl in, and parts slide out.\n" + Aid,
            "The stated gap. **Not judged here:** how far arms or legs reach under the guard; keep what moves farther away than the standard's table asks for an opening of that size.",
            "180 mm as a slot (ISO 13857)"),
        ["protect.gap"] = new("gap",
            "Between what moves and what stands there is either no room at all or room enough for the part of the body that can get in.\n" + Aid,
            "The stated smallest width.",
            "ISO 13854: body 500, head 300, leg 180, foot 120, toes 50, arm 120, hand 100, finger 25 mm"),
        ["protect.clearance"] = new("room between guard and robot",
            "Somebody who is inside when the robot starts must not be pressed against the guard.\n" + Aid,
            Space,
            "500 mm, room for a body (ISO 13854)"),
        ["protect.thrown"] = new("what is thrown",
            "A part that comes off, or a rod whose joint opens, flies against the guard. A computed energy is an estimate of what is planned, and a fault can be worse: it never holds.\n" + Aid,
            "The largest kinetic energy of the part and of one rod of each chain over the cycles under the controller's law.",
            "energy that the guard stops, with its source; the cell description"),
    }.ToImmutableDictionary();

    public static ImmutableDictionary<string, string> Reasons { get; } = new Dictionary<string, string>
    {
        ["protect.not-positive"] = "Masses, forces, spacings and numbers are above zero, and a factor is at least 1.",
        ["protect.negative"] = "Times and lengths can not be below zero.",
        ["protect.aid-planned"] = "It is not lifted by hand: a lifting aid is the answer.",
        ["protect.one-lift"] = "Fewer than two lifts are done by hand: there is nothing to add up.",
        ["protect.muting-by-person"] = "What keeps people out while the device is muted is judged by a competent person at the machine, not computed.",
        ["protect.one-person"] = "One person lifts it alone below shoulder height.",
        ["protect.no-lifts"] = "No lift is described.",
        ["protect.no-hanging"] = "Nothing is said of what holds the robot before anything lets go.",
        ["protect.no-fences"] = "No guard is described.",
        ["protect.no-devices"] = "No device that sees people come is described.",
        ["protect.no-gaps"] = "No gap is described.",
        ["protect.resolution-not-covered"] = "The formula of this edition on record here reaches up to a resolution of 70 mm: use the standard's own text.",
        ["protect.field-too-high"] = "The formula of this edition on record here reaches up to a field height of 1000 mm: use the standard's own text.",
        ["protect.closed"] = "The guard has no openings.",
        ["protect.on-the-floor"] = "The guard stands on the floor.",
        ["protect.no-length"] = "The guard begins where it ends.",
        ["protect.no-impact"] = "The guard states no energy that it stops.",
        ["protect.waits-for"] = "Waits for the description of {fields}.",
    }.ToImmutableDictionary();
}
