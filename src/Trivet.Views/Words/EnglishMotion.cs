namespace Trivet.Views.Words;

/// <summary>The English texts of the motion sheet.</summary>
internal static class EnglishMotion
{
    public static MotionWords All { get; } = new()
    {
        Laws = ["controller's law", "state to state", "bound along the path"],
        LawNotes =
        [
            "As the controller does it with the settings stated.",
            "Every axis at its limits of speed, acceleration and jerk; the tool may leave the path.",
            "The shortest time along the path that speeds, accelerations and forces allow; jerk is free.",
        ],
        Parts = ["picking", "loaded", "placing", "empty"],
        Limits = ["speed", "acceleration", "jerk", "force", "rod force"],
        Gap = "The path could be run in {gap} less moving time than the controller takes.",
        GapUnknown = "How far the controller's law is from the bound is not known yet.",
        HeldBack = "Loaded, the bound is held back by",
        HeldBackBy = "{limit} of {axis}, {share} of the time",
        HeadLaw = "Law",
        HeadLoaded = "Loaded",
        HeadEmpty = "Empty",
        HeadWaits = "Waits",
        HeadCycle = "Cycle",
        HeadRate = "Rate",
        HeadPeak = "To peak",
        LawChart = "Cycle time by each law",
        Speeds = "The loaded move under each law",
        PeakGuide = "at the peak rate, {rate}",
        Time = "time",
        CycleTime = "cycle time",
        Tool = "tool",
        ToolSpeed = "Speed of the tool",
        ToolAcceleration = "Acceleration of the tool",
        Position = "Position",
        Speed = "Speed",
        Acceleration = "Acceleration",
        Force = "Force",
        Torque = "Torque",
        Voltage = "Voltage at the drives",
        Supply = "voltage",
        LowestAllowed = "lowest allowed",
        HighestAllowed = "highest allowed",
        Power = "Electric power of all drives",
        Drives = "drives",
        Cloud = "Torque against speed, {axis}",
        ShaftSpeed = "speed of the shaft",
        ShaftTorque = "torque at the shaft, below zero while braking",
        CurveAt = "curve at {voltage}",
        CurveNow = "curve now",
        Moves = "",
    };
}
