using Trivet.Cells;

namespace Trivet.Files.Fields;

/// <summary>The table of bolted joints.</summary>
internal static class JointFields
{
    private static readonly Shape Layer = new Table<ClampedLayer>(new ClampedLayer())
        .Whole("order", l => l.Order, (l, v) => l with { Order = v }, "Place from the head on; equal or missing orders follow the id.")
        .Quantity("thickness", Dimension.Length, l => l.Thickness, (l, v) => l with { Thickness = v }, "Its thickness.", Depth.Build)
        .Text("material", l => l.Material, (l, v) => l with { Material = v }, "Id of its material.", Depth.Build)
        .Quantity("width", Dimension.Length, l => l.Width, (l, v) => l with { Width = v }, "Its width across the screw; wide where nothing is stated.")
        .Text("note", l => l.Note, (l, v) => l with { Note = v }, "Anything worth keeping.")
        .Done();

    public static readonly Shape Joint = new Table<Joint>(new Joint())
        .Whole("order", j => j.Order, (j, v) => j with { Order = v }, "Place in the order of tightening; equal or missing orders follow the id.")
        .Text("name", j => j.Name, (j, v) => j with { Name = v }, "What people call it.")
        .Text("plate", j => j.Plate, (j, v) => j with { Plate = v }, "Id of the adapter plate whose screws these are; they and what they clamp are then known.")
        .Choice("side", Words.JointSide, j => j.Side, (j, v) => j with { Side = v }, "Which of them: those of the part above, of the part below, or those between a stack of two.")
        .Text("pattern", j => j.Pattern, (j, v) => j with { Pattern = v }, "Where the screws are: id of an interface or designation of a standard.")
        .Text("thread", j => j.Thread, (j, v) => j with { Thread = v }, "Size of the screws, where it is not that of the pattern.")
        .Text("propertyClass", j => j.PropertyClass, (j, v) => j with { PropertyClass = v }, "Property class of the screws: 8.8, 10.9, 12.9 or A2-70.", Depth.Build)
        .Choice("head", Words.ScrewHead, j => j.Head, (j, v) => j with { Head = v }, "Cap screw, hexagon, or countersunk; cap screw where nothing is stated.")
        .Quantity("washerDiameter", Dimension.Length, j => j.WasherDiameter, (j, v) => j with { WasherDiameter = v },
            "Outer diameter of the hardened washer under the head; none where nothing is stated.")
        .Quantity("washerThickness", Dimension.Length, j => j.WasherThickness, (j, v) => j with { WasherThickness = v }, "Its thickness.")
        .Keyed("clamped", Layer, j => j.Clamped, (j, v) => j with { Clamped = v }, "The layers that the screws clamp, from the head on.")
        .Choice("into", Words.ThreadIn, j => j.Into, (j, v) => j with { Into = v }, "What the screws are screwed into; a tapped hole where nothing is stated.")
        .Text("threadMaterial", j => j.ThreadMaterial, (j, v) => j with { ThreadMaterial = v }, "Id of the thread's material.")
        .Quantity("engagement", Dimension.Length, j => j.Engagement, (j, v) => j with { Engagement = v }, "Length of thread engaged.")
        .Quantity("slotNutForce", Dimension.Force, j => j.SlotNutForce, (j, v) => j with { SlotNutForce = v }, "Slot nut: largest pull in its profile, as the maker states it.")
        .Quantity("frictionFrom", Dimension.One, j => j.FrictionFrom, (j, v) => j with { FrictionFrom = v }, "Smallest friction in thread and under the head; 0.1 where nothing is stated.")
        .Quantity("frictionTo", Dimension.One, j => j.FrictionTo, (j, v) => j with { FrictionTo = v }, "Largest friction in thread and under the head; 0.16 where nothing is stated.")
        .Quantity("faceFriction", Dimension.One, j => j.FaceFriction, (j, v) => j with { FaceFriction = v }, "Smallest friction between the clamped faces; 0.1 where nothing is stated.")
        .Quantity("wrenchScatter", Dimension.One, j => j.WrenchScatter, (j, v) => j with { WrenchScatter = v },
            "Scatter of the wrench either way, as a fraction of the torque; 0.1 where nothing is stated.")
        .Choice("roughness", Words.Roughness, j => j.Roughness, (j, v) => j with { Roughness = v },
            "Roughness Rz of the faces: fine below 10 µm, medium up to 40 µm, coarse up to 160 µm; medium where nothing is stated.")
        .Quantity("torque", Dimension.Torque, j => j.Torque, (j, v) => j with { Torque = v }, "Tightening torque; found where nothing is stated.")
        .Choice("load", Words.JointLoad, j => j.Load, (j, v) => j with { Load = v },
            "What loads the joint: the robot's reaction on its mount, the tool below the joint, or the force and moment stated here.", Depth.Build)
        .Text("carriesFrom", j => j.CarriesFrom, (j, v) => j with { CarriesFrom = v }, "Tool: id of the first part of the tool below the joint; all of it where nothing is stated.")
        .Quantity("atX", Dimension.Length, j => j.AtX, (j, v) => j with { AtX = v }, "Mount: middle of the joint in the base frame; 0 where nothing is stated.")
        .Quantity("atY", Dimension.Length, j => j.AtY, (j, v) => j with { AtY = v }, "Mount: middle of the joint in the base frame; 0 where nothing is stated.")
        .Quantity("atZ", Dimension.Length, j => j.AtZ, (j, v) => j with { AtZ = v }, "Mount: middle of the joint in the base frame; 0 where nothing is stated.")
        .YesNo("stands", j => j.Stands, (j, v) => j with { Stands = v },
            "Whether what the screws hold stands on the joint, so that its weight presses; otherwise it hangs from it and pulls.")
        .Quantity("loadFactor", Dimension.One, j => j.LoadFactor, (j, v) => j with { LoadFactor = v },
            "Multiplies the forces of motion, since stops after a fault are harder than what was planned; 2 where nothing is stated.")
        .Quantity("forceX", Dimension.Force, j => j.ForceX, (j, v) => j with { ForceX = v }, "Stated load, added to that of motion: force across the screws; 0 where nothing is stated.")
        .Quantity("forceY", Dimension.Force, j => j.ForceY, (j, v) => j with { ForceY = v }, "Stated load, added to that of motion: force across the screws; 0 where nothing is stated.")
        .Quantity("forceZ", Dimension.Force, j => j.ForceZ, (j, v) => j with { ForceZ = v }, "Stated load, added to that of motion: force along the screws, upward positive; 0 where nothing is stated.")
        .Quantity("momentX", Dimension.Torque, j => j.MomentX, (j, v) => j with { MomentX = v }, "Stated load, added to that of motion: moment about x; 0 where nothing is stated.")
        .Quantity("momentY", Dimension.Torque, j => j.MomentY, (j, v) => j with { MomentY = v }, "Stated load, added to that of motion: moment about y; 0 where nothing is stated.")
        .Quantity("momentZ", Dimension.Torque, j => j.MomentZ, (j, v) => j with { MomentZ = v }, "Stated load, added to that of motion: moment about the screws' direction; 0 where nothing is stated.")
        .Text("note", j => j.Note, (j, v) => j with { Note = v }, "Anything worth keeping.")
        .Done();
}
