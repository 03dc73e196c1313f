using Trivet.Cells;

namespace Trivet.Bolting;

/// <summary>What limits the tightening torque of a joint.</summary>
public enum TorqueLimit
{
    Screw,
    Pressure,
    Strip,
    SlotNut,
    /// <summary>The description states the torque.</summary>
    Stated,
}

/// <summary>
/// A joint calculated [VDI-2230-1], SI. Preloads are between the wrench's scatter and the range of friction; embedding and creep are taken off the smallest.
/// </summary>
/// <param name="Torque">To be set at the wrench.</param>
/// <param name="PreloadFrom">Smallest preload right after tightening: largest friction, weakest wrench.</param>
/// <param name="PreloadTo">Largest: smallest friction, strongest wrench.</param>
/// <param name="Embedding">Loss as the faces bed in, newtons.</param>
/// <param name="Kept">Smallest preload that stays after embedding and creep; may be below zero.</param>
/// <param name="Share">Share of an outer pull that goes through the screw.</param>
/// <param name="Pull">Largest pull of the load on one screw; zero where it only presses.</param>
/// <param name="Separation">Share of the kept preload that the largest pull takes off, with its safety.</param>
/// <param name="Slip">Share of the kept preload that friction needs, with its safety.</param>
/// <param name="SlipAt">Seconds from the start of the cycle.</param>
public sealed record JointResult(
    JointInput Input, double Torque, TorqueLimit LimitedBy, double PreloadFrom, double PreloadTo, double Embedding, double Kept, double ScrewResilience, double LayerResilience,
    double Share, double Pull, double ScrewUse, double PressureUse, double StripUse, double LargestForce, double Separation, double Slip, double SlipAt, double Fatigue)
{
    /// <summary>Largest over smallest preload after tightening.</summary>
    public double TighteningFactor => PreloadTo / PreloadFrom;

    /// <summary>Whether the load was known; without, shares of it are zero and mean nothing.</summary>
    public bool LoadKnown { get; init; }

    /// <summary>Safety against separation and slipping of [VDI-2230-1]: 1.2 against opening, 1.8 against slipping to and fro.</summary>
    public const double SeparationSafety = 1.2, SlipSafety = 1.8;

    /// <summary>Against stripping, common practice.</summary>
    public const double StripSafety = 1.25;

    public static JointResult Solve(JointInput input, JointLoadCase? load)
    {
        var t = input.Thread;
        double armFrom = Tightening.Arm(input, input.FrictionFrom), armTo = Tightening.Arm(input, input.FrictionTo), s = input.WrenchScatter;
        double screw = Resilience.OfScrew(input), layers = Resilience.OfLayers(input), share = layers / (screw + layers);
        var forces = new BoltForces(input.Points, input.Hangs);
        double pull = load is null ? 0 : Math.Max(0, Most(forces, load, f => f.Pull).Value), added = share * pull;

        double yields = Tightening.LargestPreload(t, input.Class, input.FrictionFrom);
        double pressed = PressureArea(input) * input.Layers[0].Stuff.HeadPressure, stripped = input.ThreadStuff.ShearStrength * StripArea(input) / StripSafety;
        (double Force, TorqueLimit By)[] limits =
        [
            (yields, TorqueLimit.Screw), (pressed - added, TorqueLimit.Pressure), (stripped - added, TorqueLimit.Strip),
            (double.IsNaN(input.SlotNutForce) ? double.PositiveInfinity : input.SlotNutForce - added, TorqueLimit.SlotNut),
        ];
        var least = limits.MinBy(l => l.Force);
        bool stated = !double.IsNaN(input.Torque);
        double torque = stated ? input.Torque : Tightening.Settable(least.Force * armFrom / (1 + s));
        double to = torque * (1 + s) / armFrom, from = torque * (1 - s) / armTo;
        double embedding = Depth(input) / (screw + layers);
        double creep = Math.Max(input.ThreadStuff.Creep, input.Layers.Max(l => l.Stuff.Creep));
        // A preload that embedding eats up leaves nothing: a newton keeps the shares finite, and far above one.
        double kept = from * (1 - creep) - embedding, divisor = Math.Max(kept, 1);
        var (slip, at) = load is null ? (0, double.NaN) : Most(forces, load, f => (SlipSafety * f.Shear / input.FaceFriction + Math.Max(0, f.Pull)) / divisor);
        return new(
            input, torque, stated ? TorqueLimit.Stated : least.By, from, to, embedding, kept, screw, layers, share, pull, to / yields, (to + added) / pressed,
            (to + added) / stripped, to + added, SeparationSafety * pull / divisor, slip, at, Alternating(forces, load, share, t))
        { LoadKnown = load is not null };
    }

    /// <summary>Under head or washer, square metres. A cone bears with the area of its ring seen along the screw.</summary>
    private static double PressureArea(JointInput input) => Math.PI / 4 * (input.Bearing * input.Bearing - input.Thread.Passage * input.Thread.Passage);

    /// <summary>
    /// Shear area of the internal thread, basic profile: π·d·(l/P)·(P/2 + (d − d₂)·tan 30°), over the engaged length less the 0.8 P of its chamfer.
    /// </summary>
    public static double StripArea(JointInput input)
    {
        var t = input.Thread;
        double engaged = Math.Max(0, input.Engagement - 0.8 * t.P);
        return Math.PI * t.D * engaged / t.P * (t.P / 2 + (t.D - t.D2) * Math.Tan(Math.PI / 6));
    }

    /// <summary>Depth of embedding, metres: [VDI-2230-1], table 5, the rows for shear, since every joint here has some.</summary>
    private static double Depth(JointInput input)
    {
        var (thread, head, inner) = input.Roughness switch
        {
            Roughness.Fine => (3.0, 3.0, 2.0),
            Roughness.Medium => (3.0, 4.5, 2.5),
            _ => (3.0, 6.5, 3.5),
        };
        bool nut = input.Into != ThreadIn.Tapped;
        return 1e-6 * (thread + head * (nut ? 2 : 1) + inner * (nut ? input.Layers.Length - 1 : input.Layers.Length));
    }

    /// <summary>Alternating stress over the endurance limit of threads rolled before hardening, 0.85·(150/d + 45) MPa with d in millimetres.</summary>
    private static double Alternating(BoltForces forces, JointLoadCase? load, double share, Fasteners.MetricThread t)
    {
        if (load is null) return 0;
        double widest = 0;
        for (int c = 0; c < load.Cycles.Length; c++)
        {
            int begin = load.Cycles[c].Begins, end = c + 1 < load.Cycles.Length ? load.Cycles[c + 1].Begins : load.Instants.Length;
            for (int i = 0; i < forces.Count; i++)
            {
                double most = double.NegativeInfinity, least = double.PositiveInfinity;
                for (int k = begin; k < end; k++)
                {
                    double p = forces.At(i, load.Instants[k]).Pull;
                    if (double.IsNaN(p)) return double.NaN;
                    (most, least) = (Math.Max(most, p), Math.Min(least, p));
                }
                widest = Math.Max(widest, most - least);
            }
        }
        double stress = share * widest / (2 * t.StressArea), endurance = 0.85e6 * (150 / (1000 * t.D) + 45);
        return stress / endurance;
    }

    private static (double Value, double T) Most(BoltForces forces, JointLoadCase load, Func<BoltForce, double> of)
    {
        double most = double.NegativeInfinity, at = double.NaN;
        foreach (var instant in load.Instants)
        {
            for (int i = 0; i < forces.Count; i++)
            {
                double value = of(forces.At(i, instant));
                if (double.IsNaN(value)) return (double.NaN, instant.T);
                if (value > most) (most, at) = (value, instant.T);
            }
        }
        return (most, at);
    }

    /// <summary>The screws in the order they are tightened: each the farthest from the one before it.</summary>
    public static int[] Crosswise(IReadOnlyList<Numerics.Vec2> points)
    {
        var left = Enumerable.Range(1, points.Count - 1).ToList();
        var order = new List<int> { 0 };
        while (left.Count > 0)
        {
            var last = points[order[^1]];
            int next = left.MaxBy(i => Math.Round((points[i] - last).Norm, 6));
            order.Add(next);
            left.Remove(next);
        }
        return [.. order];
    }
}
