using System.Collections.Immutable;

namespace Trivet.Views.Words;

/// <summary>The English texts of the rules and reasons of gripping and compressed air.</summary>
internal static class EnglishGripping
{
    private const string MotionNote = "The accelerations are those of the part's centre of mass over the cycle under the controller's law, the rotary axis' turning included; the worst instant is named.";

    private const string FrictionNote = "Friction is an interval: as stated, or by the state of the surface. The value is taken with the largest friction, its bound with the smallest: between both it stays open until a trial narrows the interval.";

    private const string TimeNote = "Times are computed until they are measured: a tenth of them counts as standard uncertainty.";

    public static ImmutableDictionary<string, RuleText> Rules { get; } = new Dictionary<string, RuleText>
    {
        ["grip.described"] = new("description of gripping",
            "A part that falls off stops the line, and may hit someone. What holds it must be described before that can be judged. The rule appears only while something can not be as stated.",
            "Each field is read with its pointer; what can not be is named.",
            "none"),
        ["grip.vacuum-force"] = new("force on the cups",
            "The cups must lift the part against its weight and its acceleration, and their friction must take it along sideways. **A part that comes off at speed flies: nobody may be in its way.**",
            "S·m·(g + a_z + a_xy/μ) with the stated factor S. " + MotionNote + " " + FrictionNote,
            "number of cups times their area times the vacuum; the cell description"),
        ["grip.peel"] = new("peeling moment",
            "A part hangs below the cups' lips, so its acceleration sideways also tilts it: it is peeled off at one edge long before it would slide.",
            "S·m·(|r × f| + f_z·b): r from the middle of the lips to the centre of mass, f = a − g, b the distance to the nearest edge of the cups. " + MotionNote,
            "force of the cups times that distance; the cell description"),
        ["grip.vacuum-level"] = new("vacuum",
            "Porous or uneven parts leak. Where the generator can not keep up, the level on which the force rests is never reached.",
            "The pressure at which suction and leakage are equal: suction falls to nothing at the deepest vacuum, leakage grows with the difference to ambient.",
            "level; the cell description"),
        ["grip.pick-time"] = new("time to hold",
            "The tool waits at the pick until the part is held, no longer. When hose and cups take more time than that, the part is dropped now and then and nobody finds out why.",
            "Vacuum: the valve, then V/(S + c)·ln((p₀ − p_eq)/(p − p_eq)) for hose and cups. Fingers: their closing time. " + TimeNote,
            "pick dwell of the cycle; the cell description"),
        ["grip.release-time"] = new("time to let go",
            "A part that still hangs on when the tool rises is pulled out of its place.",
            "Vacuum: the valve, then the time in which the blow-off fills hose and cups up to ambient pressure. Fingers: their opening time. " + TimeNote,
            "place dwell of the cycle; the cell description"),
        ["grip.finger-force"] = new("force of a finger",
            "By friction, all fingers together carry the part against weight and acceleration. By form, closing force only keeps them shut against what pushes sideways. Soft parts set a limit the other way.",
            "Friction: S·m·|a − g|/(n·μ). Form: S·m·a_xy, all of it against one finger. " + MotionNote + " " + FrictionNote,
            "force of one finger; the cell description"),
        ["grip.air-pressure"] = new("pressure of the air",
            "A user of air that asks for more than the supply has never gets its force.",
            "The pressure that the user states.",
            "pressure of the supply; the cell description"),
        ["grip.air-flow"] = new("use of air",
            "Air is dear, and a thin supply sags just when the line is fastest.",
            "Free air of all users in a cycle times the peak rate. Cylinders: strokes times (p + p₀)/p₀, hoses times p/p₀. Ejectors run from the begin of the pick to the middle of the place, blow-offs for their time.",
            "flow of the supply; the cell description"),
    }.ToImmutableDictionary();

    public static ImmutableDictionary<string, string> Reasons { get; } = new Dictionary<string, string>
    {
        ["grip.not-positive"] = "It must be above zero.",
        ["grip.negative"] = "It can not be below zero.",
        ["grip.deeper-than-nothing"] = "A vacuum is less than the ambient pressure of 101.3 kPa below it: there is no more air to take away.",
        ["grip.friction-turned"] = "The smallest friction is above the largest: exchange frictionFrom and frictionTo.",
        ["grip.hose-twice"] = "The hose is named in `hose` and says its own size: leave hoseDiameter and hoseLength out, or the hose.",
        ["grip.no-such-hose"] = "There is no such hose under /pneumatics/hoses: give the id of one, with a diameter above zero.",
        ["grip.no-vacuum"] = "The tool has no vacuum cups.",
        ["grip.no-fingers"] = "The tool has no fingers.",
        ["grip.no-part"] = "The cycle names no part of the brief, so there is nothing to hold.",
        ["grip.waits-for"] = "Waits for the description of {fields}.",
        ["grip.never-reached"] = "The level is never reached against the leakage.",
        ["grip.no-blow-off"] = "There is no blow-off; how a part lets go by itself is not computed.",
        ["grip.no-air"] = "Nothing is described that uses compressed air.",
    }.ToImmutableDictionary();
}
