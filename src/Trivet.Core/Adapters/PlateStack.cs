using System.Collections.Immutable;
using Trivet.Cells;
using Trivet.Fasteners;
using Trivet.Numerics;

namespace Trivet.Adapters;

/// <summary>
/// Two plates where one can't do it. Each is screwed to its own part first, which leaves every head within reach; then they are joined by a ring of
/// screws beside the smaller part, from its side, and two pins between the screws place one on the other. The plate on the far side is tapped.
/// </summary>
internal static class PlateStack
{
    private const int JoiningScrews = 4;
    private const double Clearance = 0.5e-3, Wider = 2e-3;
    private const int MostWider = 20;

    // Between the screws and far apart; not quite opposite, so that the plates fit neither turned nor upside down.
    private static readonly ImmutableArray<double> PinAngles = [Math.PI / 4, 5 * Math.PI / 4 + Math.PI / 18];

    /// <summary>Upper plate first; empty where none was found.</summary>
    public static ImmutableArray<AdapterPlate> Solve(AdapterInput input)
    {
        var screw = Screw.Of(input.Joining, ScrewHead.Cap);
        double need = Math.Max(input.KeyRoom > 0 ? input.KeyRoom : screw.KeyRadius + Clearance, screw.Diameter / 2 + Clearance);
        bool fromAbove = input.Above.Face.Reach <= input.Below.Face.Reach;
        double radius = (fromAbove ? input.Above : input.Below).Face.Reach + need;
        for (int i = 0; i <= MostWider; i++, radius += Wider)
        {
            var stack = At(input, fromAbove, Math.Ceiling(2000 * radius) / 2000);
            if (!stack.IsEmpty) return stack;
        }
        return [];
    }

    private static ImmutableArray<AdapterPlate> At(AdapterInput input, bool fromAbove, double radius)
    {
        var step = input.Clockings.Length > 1 ? input.Clockings[1] - input.Clockings[0] : 5 * Math.PI / 180;
        var ring = new BoltPattern(
            "", [.. Enumerable.Range(0, JoiningScrews).Select(k => Vec2.Polar(radius, 2 * Math.PI * k / JoiningScrews))], input.Joining, false, double.NaN, double.NaN,
            input.Stuff, Centring.None, 0, 0, [.. PinAngles.Select(a => new LocatingPin(input.Joining.D, Vec2.Polar(radius, a)))], MountingFace.Round(2 * (radius + input.Joining.D / 2 + input.Edge)));
        bool lowerIsFar = fromAbove;
        // The far plate first: it is tapped, and its thickness says how long the screws may be.
        var far = Best(input, ring, lowerIsFar, step);
        if (far is null) return [];
        // Where the far part lies over the threads' end the screws end a pitch short of it, else flush.
        var beyond = lowerIsFar ? far.Below.Face : far.Above.Face;
        bool covered = far.Holes.Any(h => h.Serves == (lowerIsFar ? PlateFace.Above : PlateFace.Below) && h.Kind == HoleKind.Tapped && beyond.Beyond(h.At) < input.Joining.D / 2);
        var tapped = ring with { Tapped = true, ThreadDepth = far.Thickness + (covered ? 0 : input.Joining.P), Grip = double.NaN };
        var near = Best(input, tapped, !lowerIsFar, step);
        if (near is null) return [];
        var (upper, lower) = lowerIsFar ? (near, far) : (far, near);
        if (input.Clockings.Length > 1) return [upper, lower];

        // The whole clocking is asked for: what the ring's turn against the upper part leaves is the lower pattern's against the ring.
        double rest = input.Clockings[0] - upper.Clocking;
        var turned = Single(input, lowerIsFar ? ring : tapped, isLower: true) with { Clockings = [rest] };
        return PlateSearch.One(turned) is { } fitting ? [upper, fitting] : [];
    }

    private static AdapterPlate? Best(AdapterInput input, BoltPattern ring, bool isLower, double step)
    {
        var single = Single(input, ring, isLower);
        single = single with { Clockings = AdapterInput.ClockingsOf(single.Above, single.Below, step) };
        return PlateSearch.One(single);
    }

    private static AdapterInput Single(AdapterInput input, BoltPattern ring, bool isLower) => input with
    {
        Above = isLower ? ring : input.Above,
        Below = isLower ? input.Below : ring,
        Orders = [isLower ? PlateFace.Below : PlateFace.Above],
        Pieces = 1,
    };
}
