using System.Collections.Immutable;

namespace Trivet.Files.Fields;

/// <summary>The words of the choices, in the order of their enumerations.</summary>
internal static class Words
{
    public static readonly ImmutableArray<string> Depth = ["quote", "build", "as-built"];
    public static readonly ImmutableArray<string> RobotFamily = ["rail delta", "crank delta"];
    public static readonly ImmutableArray<string> Holding = ["nothing", "brake", "counterweight", "friction", "prop"];
    public static readonly ImmutableArray<string> Feedback = ["none", "motor side", "carriage side"];
    public static readonly ImmutableArray<string> JointKind = ["cross bar", "seat"];
    public static readonly ImmutableArray<string> Proof = ["calculation", "measurement", "run", "inspection", "document"];
    public static readonly ImmutableArray<string> StationKind = ["fixed nest", "tray grid", "belt"];
}
