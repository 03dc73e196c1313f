using System.Collections.Immutable;

namespace Trivet.Views.Words;

/// <summary>The English texts about the parameters of the controller.</summary>
internal static class EnglishSettings
{
    public static ImmutableDictionary<string, RuleText> Rules { get; } = new Dictionary<string, RuleText>
    {
        ["settings.described"] = new("description",
            "A value to type cannot be told while its unit, its decimals or the thing that it belongs to are not. The rule appears only while something is missing or impossible.",
            "Each parameter is read with its pointer; two of the same name could not be told apart in an export.",
            "none"),
        ["settings.accuracy"] = new("shift of the platform",
            "A controller that takes too few decimals computes with another robot than the one that stands there. Each such parameter takes some of what calibration, play and wear need.",
            "The controller finds the drive readings for a place with its own number, the robot as planned goes where they put it: the largest shift in the middle and at the corners of every station's zone at working height. One parameter at a time; several may add up. The frame's turn, the mounting height and the tool's point move it directly.",
            "a tenth of the tightest tolerance of the brief (common practice, no source)"),
        ["settings.rounding"] = new("share of what rounding may take",
            "A speed of 1.25 m/s in a field without decimals is another speed.",
            "The planned value less that of the number to be typed, divided by what it may be off. Limits are rounded so that the controller never allows more than the plan.",
            "the stated tolerance, or 1 % of the value, for a reading of an axis 1 % of its travel (common practice, no source)"),
    }.ToImmutableDictionary();

    public static ImmutableDictionary<string, string> Reasons { get; } = new Dictionary<string, string>
    {
        ["settings.none"] = "No parameters of the controller are described: add them under /controller/settings.",
        ["settings.no-such-chain"] = "There is no chain of that id; there are {fields}.",
        ["settings.no-such-axis"] = "There is no axis of that id; there are {fields}.",
        ["settings.no-such-module"] = "There is no module of that id; there are {fields}.",
        ["settings.no-such-message"] = "There is no message of that id; there are {fields}.",
        ["settings.no-such-cycle"] = "There is no cycle of that id; there are {fields}.",
        ["settings.not-the-same"] = "The values differ: state in `of` which of {fields} it belongs to, and add a parameter for each.",
        ["settings.per-unit"] = "A unit is larger than nothing.",
        ["settings.step"] = "A step is above zero and below a thousand million.",
        ["settings.digits"] = "A controller takes 0 to 12 decimals.",
        ["settings.not-of-axis"] = "The axis that carries the robot states none.",
        ["settings.no-limit"] = "The profile as set has no {fields}: take the parameter out, or change the profile.",
        ["settings.no-number"] = "It comes to no number that can be typed: see its unit, its zero, and whether it is meant inverse.",
        ["settings.same-name"] = "The name stands at {fields} too; an export could not tell the two apart. Give each its key in the export.",
        ["settings.no-tolerance"] = "Neither the brief nor the parameter states a tolerance that the rounding could be held against.",
        ["settings.nothing-held"] = "It holds nothing of the plan.",
    }.ToImmutableDictionary();

    public static SettingWords All { get; } = new()
    {
        Title = "Controller settings",
        Cautions =
        [
            "Type with the motors' supply isolated and locked, by whoever may set this controller. A wrong sign, zero or scale makes an axis run away: after a change of one, first motion slow, nobody within reach, the stop in hand, and homing anew.",
            "Parameters of safety functions are not planned here: they belong to the risk assessment and to who validates it.",
        ],
        List = "Values to type in",
        HeadParameter = "Parameter",
        HeadWhere = "Where",
        HeadHolds = "Holds",
        HeadTyped = "Type",
        HeadUnit = "Unit",
        HeadPlan = "Planned",
        HeadOff = "Rounding",
        HeadCosts = "Which costs",
        Quantities =
        [
            "rod length", "length of the upper arm", "radius of the base", "height of the base joint", "radius of the platform", "height of the platform joint", "azimuth", "inclination", "home offset",
            "smallest reading", "largest reading", "reading at home", "direction", "speed limit", "acceleration limit", "jerk limit", "drive step", "travel for a turn of the motor", "gear ratio", "counts for a turn of the motor",
            "continuous current", "peak current", "path speed", "path acceleration", "path jerk", "blend", "turn of the frame", "height of the mounting plane", "TCP x", "TCP y", "TCP z", "address", "bit rate", "period",
        ],
        QuantityOf = "{quantity}, {of}",
        AsStated = "as stated",
        Per = "for {unit}",
        MovesTool = "{distance} at the tool",
        ShareUsed = "{share} of what it may",
        NotComputed = "Not to be told yet, see the findings: {names}.",
        NoSettings = "No parameters of the controller are described.",
        Compare = "Compare with the controller",
        ReadExport = "Read an export",
        Compared = "{file} against the plan",
        Same = "Every planned parameter is there and equal within the controller's step.",
        Counted = "{equal} equal, {differs} different, {missing} missing.",
        NotPlanned = "{count} in the export that the plan does not name: {names}",
        Matches = ["equal", "differs", "no number", "missing"],
        HeadMatch = "Result",
        HeadFound = "Found",
        HeadDifference = "Found less planned",
        HeadThen = "What to do",
        TypeIt = "Type {typed}.",
        TypeOrChange = "Type {typed}, or change {field} if the controller is right.",
        LookForName = "See its name in the export, and whether everything was exported.",
        Proof = "Proof that a backup was restored",
        ProofNote = "Put the backup back, then read the parameters out again and give both files. It proves that this file was restored and nothing of it lost; that the machine works with it, a run proves.",
        BackupFile = "Backup",
        RestoredFile = "Read out after restoring",
        RestoredEqual = "Restored equal: every parameter is the same but those named as exceptions.",
        NotRestored = "Not restored equal.",
        ProofCounted = "{equal} equal, {different} different, of which {excepted} may be.",
        HeadWhich = "Which",
        HeadFile = "File",
        Differences = "Differences",
        HeadParameters = "Parameters",
        HeadHash = "SHA-256",
        HeadBefore = "In the backup",
        HeadAfter = "Read out",
        HeadExcepted = "May differ because",
        NotThere = "(not there)",
        NotExcepted = "–",
        HeadDone = "Typed by, date",
        Signed = "Name, date, signature",
        Refused = "The file was not used.",
        SameFile = "Both files have the same bytes. If the second is a copy of the first and no new read-out, it proves nothing.",
        Save = "Save as PDF",
    };
}
