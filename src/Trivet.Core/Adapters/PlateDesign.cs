using System.Collections.Immutable;
using Trivet.Cells;
using Trivet.Fasteners;
using Trivet.Numerics;

namespace Trivet.Adapters;

/// <summary>What is chosen of a plate, before it is measured.</summary>
/// <param name="HeadsAbove">How the heads that would lie on the upper face are sunk where they must be.</param>
internal readonly record struct PlateChoice(double Clocking, double Thickness, PlateFace FirstFitted, ScrewHead HeadsAbove, ScrewHead HeadsBelow);

/// <summary>
/// Makes one plate from a choice and measures it. Where the part on a side has threads, the screws pass the plate and their heads lie on the other
/// face: proud where they stand beside the other part, sunk where it covers one of them. Where the part is passed by its screws, the plate is
/// tapped. A boss gets a recess, a bore likewise for a loose ring; a pin gets its hole.
/// </summary>
internal static class PlateDesign
{
    // Room between a boss and the bottom of its recess, and between a head and the part beside it: common practice.
    private const double BossClearance = 0.5e-3, HeadClearance = 0.5e-3;

    public static AdapterPlate Of(AdapterInput input, in PlateChoice choice)
    {
        double t = choice.Thickness;
        BoltPattern above = input.Above, below = input.Below.Turned(choice.Clocking);
        var holes = ImmutableArray.CreateBuilder<AdapterHole>();
        var measures = ImmutableArray.CreateBuilder<PlateMeasure>();
        Centre(input, above, below, t, holes);
        Side(input, PlateFace.Above, above, below.Face, t, choice.HeadsBelow, holes, measures);
        Side(input, PlateFace.Below, below, above.Face, t, choice.HeadsAbove, holes, measures);
        Pins(input, PlateFace.Above, above, t, holes);
        Pins(input, PlateFace.Below, below, t, holes);

        double wall = double.PositiveInfinity, floor = double.PositiveInfinity;
        for (int i = 0; i < holes.Count; i++)
        {
            floor = Math.Min(floor, FloorOf(holes[i], t));
            for (int j = i + 1; j < holes.Count; j++) wall = Math.Min(wall, holes[i].WallTo(holes[j]));
        }
        measures.Add(new(AdapterRules.Wall, "", wall, input.Wall));
        if (double.IsFinite(floor)) measures.Add(new(AdapterRules.Floor, "", floor, input.Floor));
        double room = KeyAccess.Measure(input, choice.FirstFitted, above, below, holes, measures);

        (Vec2 At, double Radius)[] discs = [.. holes.Select(h => (h.At, h.Widest + input.Edge))];
        // The fitted outline is worth its while only for a plate that may work; round a lost one a circle does.
        var outline = input.Round || measures.Any(m => !m.Holds) ? Outline.Circle(RoundedUp(discs.Max(d => d.At.Norm + d.Radius))) : Outline.Round(discs);
        double edge = holes.Min(h => outline.Depth(h.At) - h.Widest);
        measures.Add(new(AdapterRules.Edge, "", edge, input.Edge));
        return Finished(input, choice, holes.ToImmutable(), outline, Math.Min(wall, edge), room, measures.ToImmutable());
    }

    /// <summary>The plate with its figures, those of the holes it then has.</summary>
    internal static AdapterPlate Finished(
        AdapterInput input, in PlateChoice choice, ImmutableArray<AdapterHole> holes, Outline outline, double wall, double room, ImmutableArray<PlateMeasure> measures)
    {
        double volume = outline.Area * choice.Thickness - holes.Sum(h => h.Volume);
        var (axial, tilt) = PlateStiffness.Between(input.Stuff, choice.Thickness, input.Above.Radius, input.Below.Radius);
        return new(
            input.Stuff, input.Above, input.Below.Turned(choice.Clocking), choice.Thickness, choice.Clocking, choice.FirstFitted, holes, outline, volume, volume * input.Stuff.Density, wall, room, axial, tilt, measures);
    }

    /// <summary>Recesses for bosses or rings, and the passage, all about the middle: one hole where they open into each other.</summary>
    private static void Centre(AdapterInput input, BoltPattern above, BoltPattern below, double t, ImmutableArray<AdapterHole>.Builder holes)
    {
        double upper = Recess(above), lower = Recess(below), bore = input.Bore / 2;
        if (bore > 0)
        {
            var steps = ImmutableArray.CreateBuilder<HoleStep>();
            double from = t, to = 0;
            if (upper > 0 && above.CentringDiameter / 2 > bore) steps.Add(new(t, from = t - upper, above.CentringDiameter / 2, above.CentringDiameter / 2));
            if (lower > 0 && below.CentringDiameter / 2 > bore) to = lower;
            steps.Add(new(from, to, bore, bore));
            if (to > 0) steps.Add(new(to, 0, below.CentringDiameter / 2, below.CentringDiameter / 2));
            bool pilot = steps.Count > 1;
            holes.Add(new(pilot ? HoleKind.Pilot : HoleKind.Passage, from < t ? PlateFace.Above : PlateFace.Below, from < t ? PlateFace.Above : pilot ? PlateFace.Below : null, Vec2.Zero, steps.ToImmutable()));
            return;
        }
        if (upper > 0) holes.Add(new(HoleKind.Pilot, PlateFace.Above, PlateFace.Above, Vec2.Zero, [new(t, t - upper, above.CentringDiameter / 2, above.CentringDiameter / 2)]));
        if (lower > 0) holes.Add(new(HoleKind.Pilot, PlateFace.Below, PlateFace.Below, Vec2.Zero, [new(lower, 0, below.CentringDiameter / 2, below.CentringDiameter / 2)]));

        static double Recess(BoltPattern part) => part.Centring switch
        {
            Centring.Boss => part.CentringDepth + BossClearance,
            // A ring centres over three millimetres already: common practice.
            Centring.Bore => Math.Min(part.CentringDepth, 3e-3),
            _ => 0,
        };
    }

    private static void Side(
        AdapterInput input, PlateFace side, BoltPattern part, MountingFace other, double t, ScrewHead sunk, ImmutableArray<AdapterHole>.Builder holes,
        ImmutableArray<PlateMeasure>.Builder measures)
    {
        string which = side == PlateFace.Above ? "above" : "below";
        if (!part.Tapped)
        {
            // A screw that came through onto the other part would jack the two apart: there it ends a pitch short.
            bool covered = part.Points.Any(p => other.Beyond(p) < part.Thread.D / 2);
            double most = covered ? t - part.Thread.P : t;
            double need = input.Stuff.Engagement * part.Thread.D, length = double.IsNaN(part.Grip) ? double.NaN : Screw.LengthUpTo(part.Grip + most) ?? 0;
            double engaged = double.IsNaN(length) ? most : length - part.Grip;
            var fitted = new FittedScrew(Screw.Of(part.Thread, ScrewHead.Cap), length, part.Grip, engaged, need);
            foreach (var at in part.Points)
                holes.Add(new(HoleKind.Tapped, side, side, at, [Cylinder(t, 0, part.Thread.TapDrill / 2)]) { Thread = part.Thread, Fitted = fitted });
            measures.Add(new(AdapterRules.Engagement, which, engaged, need));
            return;
        }

        var face = side == PlateFace.Above ? PlateFace.Below : PlateFace.Above;
        var cap = Screw.Of(part.Thread, ScrewHead.Cap);
        bool proud = part.Points.All(p => other.Beyond(p) >= cap.Diameter / 2 + HeadClearance);
        var screw = proud ? cap : Screw.Of(part.Thread, sunk);
        double seat = proud ? 0 : sunk == ScrewHead.Countersunk ? 0 : screw.CounterboreDepth;
        double clamped = t - seat, needed = part.Stuff.Engagement * part.Thread.D;
        double reach = part.ThreadDepth - part.Thread.P;
        double screwLength = Screw.LengthUpTo(clamped + reach) ?? 0, engagement = screwLength - clamped;
        var with = new FittedScrew(screw, screwLength, clamped, engagement, needed);
        var steps = proud ? [Cylinder(t, 0, part.Thread.Passage / 2)] : Sunk(screw, face, t);
        var kind = proud ? HoleKind.Through : sunk == ScrewHead.Countersunk ? HoleKind.Countersunk : HoleKind.Counterbored;
        foreach (var at in part.Points) holes.Add(new(kind, face, side, at, steps) { Thread = part.Thread, Fitted = with });
        measures.Add(new(AdapterRules.Engagement, which, engagement, needed));
    }

    private static ImmutableArray<HoleStep> Sunk(Screw screw, PlateFace face, double t)
    {
        double passage = screw.Thread.Passage / 2, wide = screw.Head == ScrewHead.Countersunk ? screw.Diameter / 2 : screw.Counterbore / 2;
        // A right-angled cone narrows by its depth.
        double depth = screw.Head == ScrewHead.Countersunk ? wide - passage : screw.CounterboreDepth;
        double narrow = screw.Head == ScrewHead.Countersunk ? passage : wide;
        if (depth >= t) return [new(t, 0, wide, wide)];
        return face == PlateFace.Above
            ? [new(t, t - depth, wide, narrow), Cylinder(t - depth, 0, passage)]
            : [Cylinder(t, depth, passage), new(depth, 0, narrow, wide)];
    }

    private static void Pins(AdapterInput input, PlateFace side, BoltPattern part, double t, ImmutableArray<AdapterHole>.Builder holes)
    {
        foreach (var pin in part.Pins)
        {
            // One and a half diameters hold a pin: common practice. Where too little would be left below, it goes through.
            double depth = 1.5 * pin.Diameter, r = pin.Diameter / 2;
            if (t - depth < input.Floor) depth = t;
            holes.Add(new(HoleKind.Dowel, side, side, pin.At, [side == PlateFace.Above ? Cylinder(t, t - depth, r) : Cylinder(depth, 0, r)]));
        }
    }

    /// <summary>Thickness left under a blind hole, or under the head that a step carries; infinite for a plain through hole.</summary>
    private static double FloorOf(AdapterHole hole, double t)
    {
        if (hole.Kind is HoleKind.Counterbored) return hole.Steps.Length == 1 ? 0 : hole.Steps.Where(s => s.Widest <= hole.Thread!.Passage / 2 + 1e-9).Sum(s => s.Top - s.Bottom);
        // The edge of a countersunk hole's cone may not come through.
        if (hole.Kind is HoleKind.Countersunk) return hole.Steps.Length == 1 ? 0 : double.PositiveInfinity;
        double top = hole.Steps[0].Top, bottom = hole.Steps[^1].Bottom;
        return Math.Min(top < t ? t - top : double.PositiveInfinity, bottom > 0 ? bottom : double.PositiveInfinity);
    }

    private static HoleStep Cylinder(double top, double bottom, double radius) => new(top, bottom, radius, radius);

    private static double RoundedUp(double radius) => Math.Ceiling(2 * radius * 1000 - 1e-6) / 2000;
}
