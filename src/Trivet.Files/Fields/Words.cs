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
    public static readonly ImmutableArray<string> ToolPartKind = ["plate", "rotary axis", "gripper", "cup", "finger", "other"];
    public static readonly ImmutableArray<string> SolidKind = ["box", "cylinder", "tube", "ring", "sphere", "given", "mesh"];
    public static readonly ImmutableArray<string> SolidAxis = ["upright", "along x", "along y"];
    public static readonly ImmutableArray<string> SurfaceState = ["dry", "wet", "oily", "film"];
    public static readonly ImmutableArray<string> GripKind = ["friction", "form"];
    public static readonly ImmutableArray<string> AirUserKind = ["cylinder", "ejector", "blow-off"];
    public static readonly ImmutableArray<string> LiftDuration = ["up to 1 h", "up to 2 h", "up to 8 h"];
    public static readonly ImmutableArray<string> Coupling = ["good", "fair", "poor"];
    public static readonly ImmutableArray<string> PersonRole = ["fitter", "electrician", "engineer", "safety person", "customer"];
    public static readonly ImmutableArray<string> DistanceEdition = ["ISO 13855:2010"];
    public static readonly ImmutableArray<string> ApproachDirection = ["normal", "parallel"];
    public static readonly ImmutableArray<string> OpeningShape = ["slot", "square", "round"];
    public static readonly ImmutableArray<string> BodyPart = ["body", "head", "leg", "foot", "toes", "arm", "hand", "finger"];
    public static readonly ImmutableArray<string> Severity = ["S1", "S2"];
    public static readonly ImmutableArray<string> Exposure = ["F1", "F2"];
    public static readonly ImmutableArray<string> Avoidance = ["P1", "P2"];
    public static readonly ImmutableArray<string> PerformanceLevel = ["a", "b", "c", "d", "e"];
    public static readonly ImmutableArray<string> SafetyCategory = ["B", "1", "2", "3", "4"];
    public static readonly ImmutableArray<string> StopCategory = ["0", "1", "2"];
    public static readonly ImmutableArray<string> SafetyKind =
        ["emergency stop", "guard interlock", "protective device", "enabling device", "muting", "mode selection", "unexpected start-up", "other"];
    public static readonly ImmutableArray<string> HazardKind =
        ["crushing", "impact", "drawing in", "falling", "ejection", "stored energy", "electrical", "thermal", "ergonomic", "unexpected start-up", "noise", "material", "other"];
    public static readonly ImmutableArray<string> LifePhase = ["transport", "installation", "commissioning", "operation", "cleaning", "maintenance", "decommissioning"];
    public static readonly ImmutableArray<string> MeasureStep = ["inherently safe design", "safeguarding", "information for use"];
    public static readonly ImmutableArray<string> AddressPlacing = ["by place", "rising", "any"];
    public static readonly ImmutableArray<string> AddressSetting = ["rotary switches", "DIP switches", "software"];
    public static readonly ImmutableArray<string> RailRule = ["first", "last", "before", "beside", "not beside", "gap", "at most after", "together"];
    public static readonly ImmutableArray<string> EnclosureStanding =
        ["free", "at a wall", "end of a row", "end of a row at a wall", "middle of a row", "middle of a row at a wall"];
    public static readonly ImmutableArray<string> EnclosureWall = ["painted sheet steel", "stainless steel", "aluminium", "plastic"];
    public static readonly ImmutableArray<string> Protection = ["fuse gG", "breaker B", "breaker C", "breaker D", "electronic"];
    public static readonly ImmutableArray<string> WireLaying = ["B1", "B2", "C", "E"];
    public static readonly ImmutableArray<string> LoadPurpose = ["logic", "outputs", "brakes", "motors", "mains"];
    public static readonly ImmutableArray<string> BusProtocol = ["CANopen", "other"];
    public static readonly ImmutableArray<string> Carrier = ["nothing", "platform"];
    public static readonly ImmutableArray<string> CableWayKind = ["duct", "energy chain", "loop"];
    public static readonly ImmutableArray<string> CableKind = ["motor", "feedback", "brake", "limit switch", "tool", "inputs and outputs", "network", "supply", "earth"];
    public static readonly ImmutableArray<string> ContactGender = ["pins", "sockets", "terminals"];
    public static readonly ImmutableArray<string> SignalDirection = ["input", "output"];
    public static readonly ImmutableArray<string> InputType = ["type 1", "type 3"];
    public static readonly ImmutableArray<string> Switching = ["PNP", "NPN"];
    public static readonly ImmutableArray<string> ContactKind = ["normally open", "normally closed"];
    public static readonly ImmutableArray<string> ObjectType = ["boolean", "integer 8", "integer 16", "integer 32", "unsigned 8", "unsigned 16", "unsigned 32", "real 32", "visible string"];
    public static readonly ImmutableArray<string> ObjectAccess = ["read only", "write only", "read and write", "constant"];
    public static readonly ImmutableArray<string> SwitchKind = ["mechanical", "inductive", "optical"];
    public static readonly ImmutableArray<string> Supplied = ["bought", "made"];
    public static readonly ImmutableArray<string> PatternShape = ["circle", "rectangle", "list"];
    public static readonly ImmutableArray<string> Centring = ["none", "boss", "bore"];
    public static readonly ImmutableArray<string> PlateFace = ["above", "below"];
    public static readonly ImmutableArray<string> PlateOutline = ["round", "fitted"];
    public static readonly ImmutableArray<string> ScrewHead = ["cap screw", "hexagon", "countersunk"];
    public static readonly ImmutableArray<string> JointSide = ["above", "below", "between"];
    public static readonly ImmutableArray<string> ThreadIn = ["tapped hole", "nut", "slot nut"];
    public static readonly ImmutableArray<string> JointLoad = ["mount", "tool", "stated"];
    public static readonly ImmutableArray<string> Roughness = ["fine", "medium", "coarse"];
    public static readonly ImmutableArray<string> BoxBraces = ["none", "back", "sides", "back and sides", "all"];
    public static readonly ImmutableArray<string> SectionKind = ["tube", "bar", "given"];
    public static readonly ImmutableArray<string> SettingQuantity =
    [
        "rod", "upper arm", "base radius", "base height", "platform radius", "platform height", "azimuth", "inclination", "home offset",
        "smallest reading", "largest reading", "reading at home", "direction", "axis speed", "axis acceleration", "axis jerk", "drive step", "travel per turn", "ratio", "counts per turn",
        "continuous current", "peak current", "path speed", "path acceleration", "path jerk", "blend", "frame turn", "mount height", "TCP x", "TCP y", "TCP z", "address", "bit rate", "period",
    ];
    public static readonly ImmutableArray<string> SettingRounding = ["nearest", "down", "up"];
    public static readonly ImmutableArray<string> ExportForm = ["columns", "pairs", "JSON", "XML"];
    public static readonly ImmutableArray<string> ExportEncoding = ["UTF-8", "Latin 1"];
    public static readonly ImmutableArray<string> FootHold = ["like a joint", "fixed", "pinned"];
}
