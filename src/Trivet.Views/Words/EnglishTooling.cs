using System.Collections.Immutable;

namespace Trivet.Views.Words;

/// <summary>The English texts of the tool stack's rules and reasons.</summary>
internal static class EnglishTooling
{
    private const string StackNote = "Parts hang one below the other from the mechanical interface; a part's mass is stated or follows from density and volume, its inertia from its shape, from stated values or from the closed surface of a mesh.";

    public static ImmutableDictionary<string, RuleText> Rules { get; } = new Dictionary<string, RuleText>
    {
        ["tool.described"] = new("description",
            "Every gram below the platform is accelerated in every cycle. A tool part whose shape lacks a size, or can not be as stated, has no centre of mass and no inertia that could be trusted. The rule appears only while something is missing or impossible.",
            "Each field is read with its pointer. " + StackNote,
            "none"),
        ["tool.length"] = new("length of the stack",
            "The tool centre point is where every station expects it. When the stack of plates, axis, gripper and cup ends elsewhere, every pick is too high or too deep.",
            "The lowest end of the stack, from the heights of its parts, against the height of the tool centre point.",
            "1 mm, what rounding and play explain; common practice, no source"),
        ["tool.payload"] = new("payload",
            "The heaviest part counts, not the usual one. What hangs on an interface includes every plate below it.",
            "The sum of the masses below, with the heaviest part of the brief. " + StackNote,
            "largest mass; the cell description"),
        ["tool.inertia"] = new("inertia about the upright axis",
            "A wide part turns far harder than a heavy small one.",
            "The tensors of all parts brought to the mechanical interface by the parallel axis theorem, with the part that makes the sum largest. " + StackNote,
            "largest inertia; the cell description"),
        ["tool.turning"] = new("inertia on the rotary axis",
            "Dynamics and the drive of the rotary axis rest on the inertia that the robot states for it. When a gripper was exchanged and that number was not, the axis loses steps in the worst moment.",
            "The inertia about the axis of all parts below the one that is called a rotary axis. The stated value must be at least that, since it counts the axis' own rotor side as well.",
            "inertia of the rotary axis; the cell description"),
        ["tool.moment"] = new("moment of the tool",
            "A long tool with a part at its end bends platform, plate and ball joints each time it is accelerated across.",
            "At each instant of the cycle under the controller's law, the moment about the interface of all masses below it: m·(a − g) at the centre of mass, and the change of their own angular momentum as they turn. " + StackNote,
            "largest moment; the cell description"),
    }.ToImmutableDictionary();

    public static ImmutableDictionary<string, string> Reasons { get; } = new Dictionary<string, string>
    {
        ["tool.negative"] = "It can not be below zero.",
        ["tool.not-positive"] = "It must be above zero.",
        ["tool.inner-too-large"] = "The inner diameter must be below the outer one.",
        ["tool.not-an-inertia"] = "No body has these moments and products of inertia: each moment is at most the sum of the other two, and products are small beside them.",
        ["tool.mesh-not-read"] = "Nothing was read from this file yet: put it where the path says, from the folder of the cell file or the job folder, and state the path again, or run `trivet tool` on the cell file with --out.",
        ["tool.no-parts"] = "The tool stack has no parts.",
        ["tool.no-limit"] = "There is nothing to hold it against: {fields} is not stated.",
        ["tool.no-heights"] = "The heights of the parts or that of the tool centre point are not all stated.",
        ["tool.inertia-unknown"] = "Nothing says the inertia of {fields}: state a shape, or the inertia itself.",
        ["tool.no-rotary-part"] = "No part of the stack is called a rotary axis, or none hangs below it.",
        ["tool.waits-for"] = "Waits for the description of {fields}.",
    }.ToImmutableDictionary();
}
