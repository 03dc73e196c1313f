using Trivet.Cells;

namespace Trivet.Files.Fields;

/// <summary>The table of the whole document.</summary>
internal static class CellShape
{
    public static readonly Shape Cell = new Table<Cell>(Cells.Cell.Empty)
        .Text("name", c => c.Name, (c, v) => c with { Name = v }, "What people call the cell.")
        .Choice("depth", Words.Depth, c => c.Depth, (c, v) => c with { Depth = v }, "How much of the description the job needs by now.", Cells.Depth.Quote)
        .Text("note", c => c.Note, (c, v) => c with { Note = v }, "Anything worth keeping.")
        .Section("brief", BriefFields.Brief, c => c.Brief, (c, v) => c with { Brief = v }, "What the customer asked for.")
        .Section("robot", RobotFields.Robot, c => c.Robot, (c, v) => c with { Robot = v }, "The robot.")
        .Section("controller", PlacingFields.Controller, c => c.Controller, (c, v) => c with { Controller = v },
            "How the user's controller names and signs axes, zero, frame and units.")
        .Section("mount", PlacingFields.Mount, c => c.Mount, (c, v) => c with { Mount = v }, "Where the base frame stands in the cell frame.")
        .Section("tool", PlacingFields.Tool, c => c.Tool, (c, v) => c with { Tool = v }, "The tool stack.")
        .Section("pneumatics", ToolingFields.Pneumatics, c => c.Pneumatics, (c, v) => c with { Pneumatics = v }, "Compressed air: supply, users and hoses.")
        .Section("drives", DriveFields.Drives, c => c.Drives, (c, v) => c with { Drives = v }, "Motors, how each axis is driven, and the supply of the motors.")
        .Section("motion", MotionFields.Plan, c => c.Motion, (c, v) => c with { Motion = v }, "The cycles to be run, and the controller's settings for them.")
        .Section("frame", FrameFields.Frame, c => c.Frame, (c, v) => c with { Frame = v }, "The frame that carries the robot.")
        .Keyed("stations", PlacingFields.Station, c => c.Stations, (c, v) => c with { Stations = v }, "Where parts are picked and placed.")
        .Section("cabinet", WiringFields.Cabinet, c => c.Cabinet, (c, v) => c with { Cabinet = v }, "The cabinet.")
        .Keyed("cables", CablingFields.Cable, c => c.Cables, (c, v) => c with { Cables = v }, "The cables.")
        .Section("cabling", CablingFields.Cabling, c => c.Cabling, (c, v) => c with { Cabling = v }, "What cables lead to, and the ways they are laid in.")
        .Section("io", SignalFields.Io, c => c.Io, (c, v) => c with { Io = v }, "Inputs, outputs, and the switches at the ends of travel.")
        .Section("handling", ProtectingFields.Handling, c => c.Handling, (c, v) => c with { Handling = v }, "How heavy things are lifted and hung.")
        .Section("guarding", ProtectingFields.Guarding, c => c.Guarding, (c, v) => c with { Guarding = v }, "What keeps people away from what moves.")
        .Section("recording", RecordingFields.Recording, c => c.Recording, (c, v) => c with { Recording = v },
            "How what happens at the machine is recorded: what a second person must let stand, and who may.")
        .Section("stopping", StoppingFields.Stopping, c => c.Stopping, (c, v) => c with { Stopping = v }, "How the cell is brought to rest: its safety functions.")
        .Keyed("hazards", StoppingFields.Hazard, c => c.Hazards, (c, v) => c with { Hazards = v }, "The hazard register.")
        .Keyed("partsList", ProtectingFields.ListedPart, c => c.PartsList, (c, v) => c with { PartsList = v },
            "Lines of the parts list beyond those that follow from the description, or what is to be said of one of those.")
        .Keyed("interfaces", PlateFields.Interface, c => c.Interfaces, (c, v) => c with { Interfaces = v }, "Mounting faces: bolt patterns with their threads, centring and size.")
        .Keyed("materials", PlateFields.Material, c => c.Materials, (c, v) => c with { Materials = v },
            "Materials of plates and joints beside those that Trivet knows, or in their place; what is not stated of a known one stays as known.")
        .Keyed("plates", PlateFields.Plate, c => c.Plates, (c, v) => c with { Plates = v }, "Adapter plates to be designed.")
        .Keyed("joints", JointFields.Joint, c => c.Joints, (c, v) => c with { Joints = v }, "Bolted joints, in the order they are tightened.")
        .Done();
}
