using System.Collections.Immutable;
using Trivet.Cells;
using Trivet.Findings;
using Trivet.Numerics;
using Trivet.Numerics.Sparse;

namespace Trivet.Frames;

/// <summary>An interval of joint stiffness, N·m/rad; infinite at both ends where joints do not turn.</summary>
public readonly record struct JointInterval(double From, double To)
{
    public bool Contains(double stiffness) => stiffness >= From && stiffness <= To;
}

/// <summary>Joint stiffnesses at which what has no order is computed.</summary>
/// <param name="At">N·m/rad, rising.</param>
/// <param name="Rise">Factor by which a resonance between two of them may rise above what both show; 1 where nothing is reserved for that.</param>
public sealed record JointSamples(ImmutableArray<double> At, double Rise);

/// <summary>What a measurement made of the joints' stiffness.</summary>
/// <param name="Pointer">The measured field.</param>
/// <param name="Left">What of the interval before agrees with it within two standard uncertainties; null where nothing does.</param>
/// <param name="AtSoft">What the model gives with the softest joints, in the unit of the measurement.</param>
public sealed record Narrowing(string Pointer, double Measured, double Uncertainty, JointInterval? Left, double AtSoft, double AtStiff);

/// <summary>
/// A frame studied over the interval of its joints' stiffness.
/// <para>
/// Stiffer joints only add to K a matrix that is nowhere negative, so by Rayleigh's and Courant's principles no eigenvalue falls when a joint
/// stiffens ([Parlett1998, 10.3], from memory), and K⁻¹ gives way nowhere more: frequencies and static gives lie between those with all joints softest and
/// with all stiffest, whichever joint is how stiff. The forced response has no such order: a mode may meet a harmonic of the motion at any stiffness, within a half-power width of 2ζ. It is sampled so finely that
/// no mode steps by more than half of that width from sample to sample; what a peak between two samples may still rise above them is reserved.
/// </para>
/// </summary>
public sealed class FrameStudy
{
    /// <summary>Modes that are computed.</summary>
    public const int ModeCount = 10;

    /// <summary>Joint stiffnesses at which what stands still is sampled, the ends among them.</summary>
    private const int Samples = 7;

    /// <summary>How often an interval of stiffness is halved at most while its modes step too far.</summary>
    private const int MostHalvings = 4;

    private readonly Dictionary<double, FrameSolution> _at = [];
    private readonly Lazy<JointSamples> _fine;

    private FrameStudy(FrameMesh mesh, FrameMeasured measured)
    {
        (Mesh, Stated) = (mesh, new(mesh.Input.JointFrom, mesh.Input.JointTo));
        Joints = Stated;
        _fine = new(Refine);
        (DampingFrom, DampingTo) = (mesh.Input.DampingFrom, mesh.Input.DampingTo);
        if (!Soft.Usable) return;
        Measurements = [.. Measure(measured)];
        var left = Stated;
        foreach (var one in Measurements)
            if (one.Left is { } l) left = new(Math.Max(left.From, l.From), Math.Min(left.To, l.To));
        if (left.From <= left.To) Joints = left;
        if (measured.TapDamping is not { } damping || !(damping > 0)) return;
        double u = 2 * (measured.TapDampingUncertainty ?? 0);
        (DampingFrom, DampingTo) = (Math.Max(damping - u, 0.1 * damping), Math.Min(damping + u, 0.4));
    }

    public FrameMesh Mesh { get; }

    /// <summary>As the description states it, and as what was measured leaves it.</summary>
    public JointInterval Stated { get; }
    public JointInterval Joints { get; }
    public double DampingFrom { get; }
    public double DampingTo { get; }
    public ImmutableArray<Narrowing> Measurements { get; private init; } = [];

    /// <summary>With all joints at their softest and their stiffest.</summary>
    public FrameSolution Soft => At(Joints.From);
    public FrameSolution Stiff => At(Joints.To);

    public bool Usable => Soft.Usable && Stiff.Usable;

    /// <summary>Joint stiffnesses for what stands still, evenly in their logarithm.</summary>
    public ImmutableArray<double> SampledJoints => !(Joints.To > Joints.From)
        ? [Joints.From]
        : [.. Enumerable.Range(0, Samples).Select(i => i == Samples - 1 ? Joints.To : Joints.From * Math.Pow(Joints.To / Joints.From, i / (Samples - 1.0)))];

    /// <summary>For what swings: from one to the next no mode steps by more than the smallest damping ratio, half of its half-power width.</summary>
    public JointSamples FineJoints => _fine.Value;

    /// <summary>The frequency of a mode with softest and stiffest joints, Hz: an exact band for this model.</summary>
    public (double Low, double High) Band(int mode) => (Soft.Modes[mode].Hz, Stiff.Modes[mode].Hz);

    public static FrameStudy Of(FrameInput input, FrameMeasured? measured = null)
    {
        // How fine the elements must be is seen from a coarse model with the stiffest joints.
        var coarse = FrameSolution.Of(FrameMesh.Of(input, 0), input.JointTo, ModeCount);
        double highest = coarse.Usable && coarse.Modes.Length > 0 ? Math.Min(coarse.Modes[^1].Hz, 1000) : 100;
        if (coarse.Usable) highest = FrameSolution.Of(FrameMesh.Of(input, highest / 2), input.JointTo, ModeCount) is { Usable: true } better ? Math.Min(better.Modes[^1].Hz, 1000) : highest;
        return new(FrameMesh.Of(input, highest), measured ?? new());
    }

    public FrameSolution At(double joint)
    {
        lock (_at)
            if (_at.TryGetValue(joint, out var known)) return known;
        var found = FrameSolution.Of(Mesh, joint, ModeCount);
        lock (_at) return _at.TryGetValue(joint, out var first) ? first : _at[joint] = found;
    }

    private JointSamples Refine()
    {
        List<double> at = Joints.To > Joints.From ? [Joints.From, Joints.To] : [Joints.From];
        for (int halving = 0; halving < MostHalvings; halving++)
        {
            double[] between = [.. at.Zip(at.Skip(1)).Where(p => Step(p.First, p.Second) > DampingFrom).Select(p => Math.Sqrt(p.First * p.Second))];
            if (between.Length == 0) break;
            Parallel.ForEach(between, k => At(k));
            at.AddRange(between);
            at.Sort();
        }

        // Half a step beside its peak an oscillator shows 1/√(1 + (step/2ζ)²) of it (elementary, for small damping).
        double apart = at.Zip(at.Skip(1)).Select(p => Step(p.First, p.Second)).DefaultIfEmpty(0).Max() / (2 * DampingFrom);
        return new([.. at], Math.Sqrt(1 + apart * apart));
    }

    /// <summary>Largest part of its frequency by which a mode differs between two stiffnesses.</summary>
    private double Step(double softer, double stiffer) => At(softer).Modes.Zip(At(stiffer).Modes).Select(m => m.Second.Hz / m.First.Hz - 1).DefaultIfEmpty(0).Max();

    private IEnumerable<Narrowing> Measure(FrameMeasured m)
    {
        if (m.TapFrequency is { } hz and > 0)
        {
            int mode = Math.Clamp((m.TapMode ?? 1) - 1, 0, ModeCount - 1);
            yield return Narrow("/frame/measured/tapFrequency", hz, m.TapUncertainty ?? 0, k => At(k).Modes is { } all && mode < all.Length ? all[mode].Hz : double.NaN, rising: true);
        }

        if (m is { PullForce: { } force and > 0, PullX: { } x, PullY: { } y, PullZ: { } z, PullDeflection: { } give })
        {
            var (s, c) = Math.SinCos(m.PullAzimuth ?? 0);
            var place = Mesh.Lines.SelectMany(l => l).MinBy(p => (p.P - new Vec3(x, y, z)).Norm)!;
            yield return Narrow("/frame/measured/pullDeflection", give, m.PullUncertainty ?? 0, k => force * At(k).Give(place, new(c, s, 0)), rising: false);
        }
    }

    /// <summary>Stiffnesses at which the model agrees with a reading within two standard uncertainties: all joints taken alike.</summary>
    private Narrowing Narrow(string pointer, double measured, double uncertainty, Func<double, double> model, bool rising)
    {
        double soft = model(Stated.From), stiff = model(Stated.To), low = measured - 2 * uncertainty, high = measured + 2 * uncertainty;
        if (!rising) (low, high) = (high, low);
        // Outward of what it must reach at the soft end is "low", at the stiff end "high".
        bool agrees = rising ? soft <= high && stiff >= low : soft >= high && stiff <= low;
        if (!agrees) return new(pointer, measured, uncertainty, null, soft, stiff);
        if (!(Stated.To > Stated.From)) return new(pointer, measured, uncertainty, Stated, soft, stiff);
        double from = Beyond(soft, low) ? Stated.From : Root(low), to = Beyond(high, stiff) ? Stated.To : Root(high);
        return new(pointer, measured, uncertainty, new(from, to), soft, stiff);

        bool Beyond(double a, double b) => rising ? a >= b : a <= b;

        double Root(double value)
        {
            double a = Math.Log(Stated.From), b = Math.Log(Stated.To);
            for (int i = 0; i < 24; i++)
            {
                double half = (a + b) / 2;
                if (Beyond(model(Math.Exp(half)), value)) b = half;
                else a = half;
            }

            return Math.Exp((a + b) / 2);
        }
    }
}
