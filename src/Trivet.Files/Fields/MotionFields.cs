using Trivet.Cells;

namespace Trivet.Files.Fields;

/// <summary>The tables of what is moved from where to where, and of the controller's settings for it.</summary>
internal static class MotionFields
{
    private static readonly Shape Settings = new Table<MotionSettings>(new MotionSettings())
        .Choice("profile", Words.Profile, s => s.Profile, (s, v) => s with { Profile = v },
            "How the controller shapes a move in time: constant accelerations, or with ramps of acceleration.", Depth.Build)
        .Choice("along", Words.ProfileAlong, s => s.Along, (s, v) => s with { Along = v },
            "What the controller runs the profile along: the path of the tool centre point, or every axis by itself.", Depth.Build)
        .Quantity("pathSpeed", Dimension.Speed, s => s.PathSpeed, (s, v) => s with { PathSpeed = v }, "Speed limit along the path.", Depth.Build)
        .Quantity("pathAcceleration", Dimension.Acceleration, s => s.PathAcceleration, (s, v) => s with { PathAcceleration = v },
            "Acceleration limit along the path.", Depth.Build)
        .Quantity("pathJerk", Dimension.Jerk, s => s.PathJerk, (s, v) => s with { PathJerk = v }, "Jerk limit along the path.", Depth.Build)
        .Quantity("blend", Dimension.Length, s => s.Blend, (s, v) => s with { Blend = v }, "Distance from a corner within which the path is rounded.", Depth.Build)
        .Quantity("comfort", Dimension.One, s => s.Comfort, (s, v) => s with { Comfort = v },
            "Fraction of every limit that is kept in reserve, from 0 up to but not including 1; 0.1 where nothing is stated.")
        .Text("note", s => s.Note, (s, v) => s with { Note = v }, "Anything worth keeping.")
        .Done();

    private static readonly Shape Waypoint = new Table<Waypoint>(new Waypoint())
        .Whole("order", w => w.Order, (w, v) => w with { Order = v }, "Place on the way; equal or missing orders follow the id.")
        .Quantity("x", Dimension.Length, w => w.X, (w, v) => w with { X = v }, "Tool centre point, cell frame.", Depth.Build)
        .Quantity("y", Dimension.Length, w => w.Y, (w, v) => w with { Y = v }, "The same along y.", Depth.Build)
        .Quantity("z", Dimension.Length, w => w.Z, (w, v) => w with { Z = v }, "The same along z.", Depth.Build)
        .Text("note", w => w.Note, (w, v) => w with { Note = v }, "Anything worth keeping.")
        .Done();

    private static readonly Shape Cycle = new Table<Cycle>(new Cycle())
        .Whole("order", c => c.Order, (c, v) => c with { Order = v }, "Place in lists; equal or missing orders follow the id.")
        .Text("name", c => c.Name, (c, v) => c with { Name = v }, "What people call it.")
        .Text("part", c => c.Part, (c, v) => c with { Part = v }, "Id of the part that is carried.", Depth.Build)
        .Text("pick", c => c.Pick, (c, v) => c with { Pick = v }, "Id of the station where it is picked.", Depth.Build)
        .Choice("pickAt", Words.PlaceWithin, c => c.PickAt, (c, v) => c with { PickAt = v },
            "Where in that station: its middle, its first or last place, or the corner farthest from the other station, which is taken where nothing is stated.")
        .Text("place", c => c.Place, (c, v) => c with { Place = v }, "Id of the station where it is placed.", Depth.Build)
        .Choice("placeAt", Words.PlaceWithin, c => c.PlaceAt, (c, v) => c with { PlaceAt = v }, "Where in that station.")
        .Choice("shape", Words.PathShape, c => c.Shape, (c, v) => c with { Shape = v },
            "Up, across and down with rounded corners; straight; an arc through the only waypoint; straight from waypoint to waypoint. Up, across and down where nothing is stated.")
        .Quantity("rise", Dimension.Length, c => c.Rise, (c, v) => c with { Rise = v },
            "Height above the higher of both places at which the tool travels across; the larger approach of both stations where nothing is stated.")
        .Quantity("blend", Dimension.Length, c => c.Blend, (c, v) => c with { Blend = v }, "Distance from a corner within which this path is rounded, in place of that of the settings.")
        .Quantity("pickDwell", Dimension.Time, c => c.PickDwell, (c, v) => c with { PickDwell = v }, "Time at the pick until the part is held.", Depth.Build, "ms")
        .Quantity("placeDwell", Dimension.Time, c => c.PlaceDwell, (c, v) => c with { PlaceDwell = v }, "Time at the place until the part is let go.", Depth.Build, "ms")
        .Quantity("settle", Dimension.Time, c => c.Settle, (c, v) => c with { Settle = v },
            "Time to come to rest before each of both; none where nothing is stated.", null, "ms")
        .Keyed("waypoints", Waypoint, c => c.Waypoints, (c, v) => c with { Waypoints = v },
            "Places the tool centre point passes on the loaded move; the empty move passes them in reverse.")
        .Text("note", c => c.Note, (c, v) => c with { Note = v }, "Anything worth keeping.")
        .Done();

    public static readonly Shape Plan = new Table<MotionPlan>(new MotionPlan())
        .Section("settings", Settings, p => p.Settings, (p, v) => p with { Settings = v }, "The settings of the controller's motion law.")
        .Keyed("cycles", Cycle, p => p.Cycles, (p, v) => p with { Cycles = v }, "The cycles: pick, loaded move, place, empty move back.")
        .Text("note", p => p.Note, (p, v) => p with { Note = v }, "Anything worth keeping.")
        .Done();
}
