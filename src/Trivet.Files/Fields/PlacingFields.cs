using Trivet.Cells;

namespace Trivet.Files.Fields;

/// <summary>The tables of what stands around the robot: controller mapping, mount, tool, stations.</summary>
internal static class PlacingFields
{
    private static readonly Shape Axis = new Table<AxisMapping>(new AxisMapping())
        .Whole("order", a => a.Order, (a, v) => a with { Order = v }, "Place of the axis on the controller; equal or missing orders follow the id.")
        .Text("name", a => a.Name, (a, v) => a with { Name = v }, "The name the controller shows.")
        .Text("drives", a => a.Drives, (a, v) => a with { Drives = v }, "Id of the chain, or \"rotary\" or \"linear\".", Depth.Build)
        .YesNo("reversed", a => a.Reversed, (a, v) => a with { Reversed = v }, "The controller's value grows against Trivet's coordinate.", Depth.Build)
        .Quantity("zeroAt", Dimension.DriveCoordinate, a => a.ZeroAt, (a, v) => a with { ZeroAt = v },
            "Trivet's coordinate where the controller shows zero.", Depth.Build)
        .Quantity("perUnit", Dimension.DriveCoordinate, a => a.PerUnit, (a, v) => a with { PerUnit = v },
            "Trivet's coordinate for one unit shown: \"1 mm\" for a controller that shows millimetres.", Depth.Build)
        .Text("note", a => a.Note, (a, v) => a with { Note = v }, "Anything worth keeping.")
        .Done();

    public static readonly Shape Controller = new Table<ControllerMapping>(new ControllerMapping())
        .Quantity("frameYaw", Dimension.Angle, c => c.FrameYaw, (c, v) => c with { FrameYaw = v },
            "Turn of the controller's x about z against the base frame, counter-clockwise seen from above.", Depth.Build)
        .Quantity("zeroHeight", Dimension.Length, c => c.ZeroHeight, (c, v) => c with { ZeroHeight = v },
            "Base frame z of the controller's z = 0.", Depth.Build)
        .YesNo("zDown", c => c.ZDown, (c, v) => c with { ZDown = v }, "The controller's z grows downward.", Depth.Build)
        .YesNo("decimalComma", c => c.DecimalComma, (c, v) => c with { DecimalComma = v }, "The controller writes numbers with a decimal comma, on its face and in its exports; a point where nothing is stated.")
        .Keyed("axes", Axis, c => c.Axes, (c, v) => c with { Axes = v }, "The axes as the controller knows them.")
        .Keyed("settings", SettingFields.Setting, c => c.Settings, (c, v) => c with { Settings = v }, "The parameters that are typed into the controller.")
        .Section("export", SettingFields.Export, c => c.Export, (c, v) => c with { Export = v }, "How a file is read that the controller's parameters were exported to.")
        .Text("note", c => c.Note, (c, v) => c with { Note = v }, "Anything worth keeping.")
        .Done();

    public static readonly Shape Mount = new Table<Mount>(new Mount())
        .Quantity("x", Dimension.Length, m => m.X, (m, v) => m with { X = v }, "Base frame origin along the cell's x.", Depth.Quote)
        .Quantity("y", Dimension.Length, m => m.Y, (m, v) => m with { Y = v }, "Base frame origin along the cell's y.", Depth.Quote)
        .Quantity("z", Dimension.Length, m => m.Z, (m, v) => m with { Z = v }, "Height of the mounting plane above the floor.", Depth.Quote)
        .Quantity("yaw", Dimension.Angle, m => m.Yaw, (m, v) => m with { Yaw = v }, "Turn of the base frame about z, counter-clockwise seen from above.")
        .Quantity("tiltX", Dimension.Angle, m => m.TiltX, (m, v) => m with { TiltX = v }, "Tilt about x, applied first.")
        .Quantity("tiltY", Dimension.Angle, m => m.TiltY, (m, v) => m with { TiltY = v }, "Tilt about y, applied before the yaw.")
        .Text("note", m => m.Note, (m, v) => m with { Note = v }, "Anything worth keeping.")
        .Done();

    public static readonly Shape Tool = new Table<ToolStack>(new ToolStack())
        .Quantity("tcpX", Dimension.Length, t => t.TcpX, (t, v) => t with { TcpX = v },
            "Tool centre point from the platform reference point, along x at rotary angle 0.", Depth.Quote)
        .Quantity("tcpY", Dimension.Length, t => t.TcpY, (t, v) => t with { TcpY = v }, "The same along y.", Depth.Quote)
        .Quantity("tcpZ", Dimension.Length, t => t.TcpZ, (t, v) => t with { TcpZ = v }, "The same along z: negative below the platform.", Depth.Quote)
        .Quantity("radius", Dimension.Length, t => t.Radius, (t, v) => t with { Radius = v },
            "Radius of the capsule around the tool, from the platform down to the tool centre point.", Depth.Quote)
        .Quantity("largestMass", Dimension.Mass, t => t.LargestMass, (t, v) => t with { LargestMass = v },
            "The most the platform may carry, tool and part together.")
        .Quantity("largestMoment", Dimension.Torque, t => t.LargestMoment, (t, v) => t with { LargestMoment = v },
            "Largest moment of tool and part about the mechanical interface, in motion.")
        .Quantity("largestInertia", Dimension.Inertia, t => t.LargestInertia, (t, v) => t with { LargestInertia = v },
            "Largest inertia of tool and part about the upright axis through the mechanical interface.")
        .Keyed("parts", ToolingFields.ToolPart, t => t.Parts, (t, v) => t with { Parts = v }, "The stack from the platform outward.")
        .Section("vacuum", ToolingFields.Vacuum, t => t.Vacuum, (t, v) => t with { Vacuum = v }, "Cups that hold the part by vacuum.")
        .Section("fingers", ToolingFields.Fingers, t => t.Fingers, (t, v) => t with { Fingers = v }, "Fingers that hold the part between them.")
        .Text("note", t => t.Note, (t, v) => t with { Note = v }, "Anything worth keeping.")
        .Done();

    public static readonly Shape Station = new Table<Station>(new Station())
        .Whole("order", s => s.Order, (s, v) => s with { Order = v }, "Place in lists; equal or missing orders follow the id.")
        .Text("name", s => s.Name, (s, v) => s with { Name = v }, "What people call it.")
        .Choice("kind", Words.StationKind, s => s.Kind, (s, v) => s with { Kind = v }, "A fixed nest, a tray grid or a moving belt.", Depth.Quote)
        .Text("part", s => s.Part, (s, v) => s with { Part = v }, "Id of the part handled here.", Depth.Build)
        .Quantity("x", Dimension.Length, s => s.X, (s, v) => s with { X = v },
            "Origin of the station along the cell's x: centre of a nest, first pocket of a tray, middle of a belt where its window begins.", Depth.Quote)
        .Quantity("y", Dimension.Length, s => s.Y, (s, v) => s with { Y = v }, "The same along the cell's y.", Depth.Quote)
        .Quantity("z", Dimension.Length, s => s.Z, (s, v) => s with { Z = v }, "Height of the tool centre point at pick or place, above the floor.", Depth.Quote)
        .Quantity("yaw", Dimension.Angle, s => s.Yaw, (s, v) => s with { Yaw = v },
            "Turn of the station's x from the cell's x, counter-clockwise seen from above; a belt runs along its x.")
        .Quantity("approach", Dimension.Length, s => s.Approach, (s, v) => s with { Approach = v },
            "Height above z that the tool rises to before it travels.", Depth.Quote)
        .Quantity("width", Dimension.Length, s => s.Width, (s, v) => s with { Width = v }, "Nest: size of the zone along x, centred.")
        .Quantity("depth", Dimension.Length, s => s.Depth, (s, v) => s with { Depth = v },
            "Nest: size of the zone along y, centred. Belt: usable width across the belt.")
        .Whole("columns", s => s.Columns, (s, v) => s with { Columns = v }, "Tray: pockets along x.")
        .Whole("rows", s => s.Rows, (s, v) => s with { Rows = v }, "Tray: pockets along y.")
        .Quantity("columnPitch", Dimension.Length, s => s.ColumnPitch, (s, v) => s with { ColumnPitch = v }, "Tray: distance of pockets along x.")
        .Quantity("rowPitch", Dimension.Length, s => s.RowPitch, (s, v) => s with { RowPitch = v }, "Tray: distance of pockets along y.")
        .Quantity("window", Dimension.Length, s => s.Window, (s, v) => s with { Window = v }, "Belt: length of the tracking window along x.")
        .Quantity("speed", Dimension.Speed, s => s.Speed, (s, v) => s with { Speed = v }, "Belt: its speed along x.", null, "mm/s")
        .Quantity("rotaryFrom", Dimension.Angle, s => s.RotaryFrom, (s, v) => s with { RotaryFrom = v }, "Smallest angle of the rotary axis taken here.")
        .Quantity("rotaryTo", Dimension.Angle, s => s.RotaryTo, (s, v) => s with { RotaryTo = v }, "Largest angle of the rotary axis taken here.")
        .Quantity("linearAxisAt", Dimension.Length, s => s.LinearAxisAt, (s, v) => s with { LinearAxisAt = v },
            "Position of the axis that carries the robot while it works here.")
        .Quantity("wallHeight", Dimension.Length, s => s.WallHeight, (s, v) => s with { WallHeight = v },
            "Height above z of walls around the zone: belt guides, tray rims.")
        .Quantity("wallGap", Dimension.Length, s => s.WallGap, (s, v) => s with { WallGap = v }, "Distance of those walls from the edge of the zone.")
        .Text("note", s => s.Note, (s, v) => s with { Note = v }, "Anything worth keeping.")
        .Done();
}
