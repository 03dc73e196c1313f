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
    public static readonly ImmutableArray<string> MotorKind = ["servo", "stepper"];
    public static readonly ImmutableArray<string> Transmission = ["belt", "screw", "gear"];
    public static readonly ImmutableArray<string> Profile = ["trapezoidal", "seven-phase"];
    public static readonly ImmutableArray<string> ProfileAlong = ["path", "axes"];
    public static readonly ImmutableArray<string> PlaceWithin = ["middle", "first", "last", "farthest"];
    public static readonly ImmutableArray<string> PathShape = ["gate", "straight", "arc", "waypoints"];
}
