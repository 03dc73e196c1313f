using System.Collections.Immutable;
using Trivet.Adapters;
using Trivet.Cells;
using Trivet.Fasteners;
using Trivet.Findings;
using Trivet.Numerics;

namespace Trivet.Bolting;

/// <summary>Reads joints: those of an adapter plate take screws and layers from the plate that was found.</summary>
public static class JointInputs
{
    // Friction of oiled and of dry screws, of clean metal faces, and a wrench that clicks: common practice; the range of friction after VDI 2230, class B.
    private const double UsualFrom = 0.10, UsualTo = 0.16, UsualFace = 0.10, UsualScatter = 0.1;
    // A nut's height, in diameters.
    private const double NutHeight = 0.8;

    public static string Pointer(string id) => $"/joints/{id}";

    /// <summary>Where the screws are, what they clamp, what they are screwed into.</summary>
    private sealed record Body(ImmutableArray<Vec2> Points, MetricThread Thread, ScrewHead Head, ImmutableArray<Layer> Layers, ThreadIn Into, Stuff ThreadStuff, double Engagement);

    /// <summary>Null where something is missing (the reading lists it) or can not be as stated.</summary>
    /// <param name="plates">Shared by the joints of a cell, so that a plate is searched once.</param>
    public static JointInput? Read(Cell cell, string id, FoundPlates plates, Reading reading, ICollection<Contradiction> wrong)
    {
        string at = Pointer(id);
        var joint = cell.Joints[id];
        int before = wrong.Count;
        reading.Used($"{at}/plate", joint.Plate);
        var body = string.IsNullOrWhiteSpace(joint.Plate) ? Own(cell, joint, at, reading, wrong) : OfPlate(cell, joint, at, plates, reading, wrong);
        reading.Used($"{at}/propertyClass", joint.PropertyClass);
        var strength = PropertyClass.Find(joint.PropertyClass ?? "");
        if (string.IsNullOrWhiteSpace(joint.PropertyClass)) reading.Missing($"{at}/propertyClass");
        else if (strength is null) wrong.Add(new($"{at}/propertyClass", JointReasons.NoSuchClass));
        double from = reading.Or(joint.FrictionFrom, $"{at}/frictionFrom", UsualFrom), to = reading.Or(joint.FrictionTo, $"{at}/frictionTo", UsualTo);
        double face = reading.Or(joint.FaceFriction, $"{at}/faceFriction", UsualFace), scatter = reading.Or(joint.WrenchScatter, $"{at}/wrenchScatter", UsualScatter);
        var roughness = reading.Or(joint.Roughness, $"{at}/roughness", Roughness.Medium);
        double torque = reading.Or(joint.Torque, $"{at}/torque", double.NaN), washer = reading.Or(joint.WasherDiameter, $"{at}/washerDiameter", 0);
        double washerThickness = washer > 0 ? reading.Need(joint.WasherThickness, $"{at}/washerThickness") : 0;
        bool hangs = !reading.Or(joint.Stands, $"{at}/stands", false);
        double slotNut = body?.Into == ThreadIn.SlotNut ? reading.Need(joint.SlotNutForce, $"{at}/slotNutForce") : double.NaN;

        if (!(from > 0)) wrong.Add(new($"{at}/frictionFrom", JointReasons.NotPositive));
        if (!(to >= from)) wrong.Add(new($"{at}/frictionTo", JointReasons.FrictionReversed));
        if (!(face > 0)) wrong.Add(new($"{at}/faceFriction", JointReasons.NotPositive));
        if (!(scatter is >= 0 and < 1)) wrong.Add(new($"{at}/wrenchScatter", JointReasons.ScatterTooLarge));
        if (torque <= 0) wrong.Add(new($"{at}/torque", JointReasons.NotPositive));
        if (slotNut <= 0) wrong.Add(new($"{at}/slotNutForce", JointReasons.NotPositive));
        if (body is null || strength is null || !reading.Complete || wrong.Count > before) return null;

        var screw = Screw.Of(body.Thread, body.Head);
        double bearing = screw.Bearing;
        var layers = body.Layers;
        if (washer > 0)
        {
            if (washer <= bearing || washerThickness <= 0)
            {
                wrong.Add(new($"{at}/washerDiameter", JointReasons.WasherTooSmall));
                return null;
            }
            // A hardened washer spreads the pressure at 45° onto the layer below it; it is itself as stiff as steel and bears the head.
            bearing = Math.Min(washer, bearing + 2 * washerThickness);
        }
        return new(
            id, body.Points, screw, strength, bearing, layers, body.Into, body.ThreadStuff, body.Engagement, slotNut, from, to, face, scatter, roughness, torque, hangs);
    }

    private static Body? Own(Cell cell, Joint joint, string at, Reading reading, ICollection<Contradiction> wrong)
    {
        var pattern = BoltPattern.Read(cell, joint.Pattern, $"{at}/pattern", reading, wrong);
        reading.Used($"{at}/thread", joint.Thread);
        var thread = joint.Thread is null ? pattern?.Thread : MetricThread.Find(joint.Thread);
        if (joint.Thread is not null && thread is null) wrong.Add(new($"{at}/thread", JointReasons.NoSuchThread));
        var head = reading.Or(joint.Head, $"{at}/head", ScrewHead.Cap);
        var into = reading.Or(joint.Into, $"{at}/into", ThreadIn.Tapped);
        reading.Used($"{at}/clamped", string.Join('\n', joint.Clamped.Keys));
        if (joint.Clamped.IsEmpty) reading.Missing($"{at}/clamped");
        var layers = ImmutableArray.CreateBuilder<Layer>();
        foreach (var (key, layer) in joint.Clamped.InOrder())
        {
            string place = $"{at}/clamped/{key}";
            reading.Used($"{place}/order", layer.Order);
            double thickness = reading.Need(layer.Thickness, $"{place}/thickness"), width = reading.Or(layer.Width, $"{place}/width", double.PositiveInfinity);
            if (thickness <= 0) wrong.Add(new($"{place}/thickness", JointReasons.NotPositive));
            if (thread is not null && !(width > Screw.Of(thread, head).Bearing)) wrong.Add(new($"{place}/width", JointReasons.NotPositive));
            if (Named(cell, layer.Material, $"{place}/material", reading, null) is { } stuff) layers.Add(new(thickness, stuff, width));
        }
        bool tapped = into == ThreadIn.Tapped;
        var threadStuff = Named(cell, joint.ThreadMaterial, $"{at}/threadMaterial", reading, tapped ? null : "steel");
        double engagement = tapped ? reading.Need(joint.Engagement, $"{at}/engagement") : reading.Or(joint.Engagement, $"{at}/engagement", NutHeight * (thread?.D ?? 0));
        if (engagement <= 0) wrong.Add(new($"{at}/engagement", JointReasons.NotPositive));
        return pattern is null || thread is null || threadStuff is null || layers.Count != joint.Clamped.Count || layers.Count == 0 ? null
            : new(pattern.Points, thread, head, layers.ToImmutable(), into, threadStuff, engagement);
    }

    private static Body? OfPlate(Cell cell, Joint joint, string at, FoundPlates plates, Reading reading, ICollection<Contradiction> wrong)
    {
        var side = reading.Need(joint.Side, $"{at}/side", JointSide.Above);
        reading.Used("/plates", string.Join('\n', cell.Plates.Keys));
        if (!cell.Plates.ContainsKey(joint.Plate!))
        {
            wrong.Add(new($"{at}/plate", JointReasons.NoSuchPlate.Naming([.. cell.Plates.Keys.Select(AdapterInput.Pointer)])));
            return null;
        }
        var ofPlate = new List<Contradiction>();
        var input = AdapterInput.Read(cell, joint.Plate!, reading, ofPlate);
        if (!reading.Complete) return null;
        var chosen = input is null ? [] : plates.Chosen(input);
        var (plate, face) = side switch
        {
            JointSide.Above => (chosen.FirstOrDefault(), PlateFace.Above),
            JointSide.Below => (chosen.LastOrDefault(), PlateFace.Below),
            _ when chosen.Length < 2 => (null, PlateFace.Above),
            // The ring's heads lie on the plate that is not tapped for it.
            _ => chosen[0].Holes.Any(h => h is { Serves: PlateFace.Below, Kind: HoleKind.Tapped }) ? (chosen[1], PlateFace.Above) : (chosen[0], PlateFace.Below),
        };
        AdapterHole[] holes = plate is null ? [] : [.. plate.Holes.Where(h => h.Serves == face && h.Fitted is not null)];
        if (holes.Length == 0)
        {
            wrong.Add(new($"{at}/side", JointReasons.NoSuchScrews));
            return null;
        }
        var fitted = holes[0].Fitted!;
        var part = side switch { JointSide.Above => input!.Above, JointSide.Below => input!.Below, _ => null };
        bool tapped = holes[0].Kind == HoleKind.Tapped;
        if (tapped && double.IsNaN(fitted.Clamped))
        {
            string name = (side == JointSide.Above ? cell.Plates[joint.Plate!].Above : cell.Plates[joint.Plate!].Below)!;
            reading.Missing($"/interfaces/{name}/grip");
            return null;
        }
        return new(
            [.. holes.Select(h => h.At)], fitted.Screw.Thread, fitted.Screw.Head, [new(fitted.Clamped, tapped && part is not null ? part.Stuff : plate!.Stuff, double.PositiveInfinity)],
            ThreadIn.Tapped, tapped || part is null ? plate!.Stuff : part.Stuff, fitted.Engaged);
    }

    private static Stuff? Named(Cell cell, string? id, string pointer, Reading reading, string? usual)
    {
        reading.Used(pointer, id);
        if (!string.IsNullOrWhiteSpace(id) || usual is not null) return Stuff.Read(cell, string.IsNullOrWhiteSpace(id) ? usual! : id, pointer, reading);
        reading.Missing(pointer);
        return null;
    }
}
