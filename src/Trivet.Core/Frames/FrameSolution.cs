using System.Collections.Immutable;
using Trivet.Numerics;
using Trivet.Numerics.Sparse;

namespace Trivet.Frames;

/// <summary>A mode of the frame.</summary>
/// <param name="Hz">Frequency.</param>
/// <param name="Vector">Over the unknowns of the mesh; φᵀ·M·φ = 1 kg·m².</param>
public sealed record FrameMode(double Hz, double[] Vector)
{
    public double Omega => Math.Tau * Hz;
}

/// <summary>Displacement and turn of the robot's base about the base frame's origin, cell frame, metres and radians.</summary>
public readonly record struct MountMotion(Vec3 Moved, Vec3 Turned)
{
    /// <summary>Of a point fixed to the base, away from its origin by the arm.</summary>
    public Vec3 At(Vec3 arm) => Moved + Turned.Cross(arm);
}

/// <summary>What a foot puts on the floor, cell frame, newtons and N·m.</summary>
public readonly record struct FootForce(Vec3 Force, Vec3 Moment)
{
    public static FootForce operator +(FootForce a, FootForce b) => new(a.Force + b.Force, a.Moment + b.Moment);
    public static FootForce operator *(double s, FootForce a) => new(s * a.Force, s * a.Moment);
}

/// <summary>
/// The frame with its joints at one stiffness: its modes, and how it gives way under loads. Small displacements, linear; feet do not lift and nothing slips.
/// </summary>
public sealed class FrameSolution
{
    private readonly SparseFactor _factor;
    private double[]? _weight;
    private double[][]? _perLoad;

    private FrameSolution(FrameMesh mesh, double joint, SparseFactor factor, Modes modes)
    {
        (Mesh, Joint, _factor, End) = (mesh, joint, factor, modes.End);
        Modes = [.. modes.Values.Select((v, i) => new FrameMode(Math.Sqrt(v) / Math.Tau, modes.Vectors[i]))];
        Loose = factor.Vanished >= 0 ? Holding(mesh, factor.Vanished) : null;
    }

    public FrameMesh Mesh { get; }

    /// <summary>Stiffness of the joints, N·m/rad; infinite where they do not turn.</summary>
    public double Joint { get; }

    public ModesEnd End { get; }

    public bool Usable => End == ModesEnd.Found;

    /// <summary>Pointer of a member that can move freely; null where all is held.</summary>
    public string? Loose { get; }

    /// <summary>The lowest, rising.</summary>
    public ImmutableArray<FrameMode> Modes { get; }

    public static FrameSolution Of(FrameMesh mesh, double joint, int modes)
    {
        Patch[] stiffness = [.. mesh.Elements, .. mesh.Springs(double.IsFinite(joint) ? joint : 0)];
        var factor = SparseFactor.Of(mesh.Pattern, stiffness);
        return new(mesh, joint, factor, LowestModes.Of(mesh.Pattern, factor, stiffness, mesh.Masses, modes));
    }

    /// <summary>Mass of members and of all that hangs on them, kg, the robot's included.</summary>
    public double Mass => Mesh.Masses.Select((p, i) => Mesh.Lift[i].Sum(r => Mesh.Lift[i].Sum(c => p.Values[r * p.Size + c]))).Sum();

    /// <summary>Displacements under all weights; not numbers where something is loose.</summary>
    public double[] UnderWeight => _weight ??= Solve(Weight());

    /// <summary>What a force and a moment on the robot's base do, cell frame.</summary>
    public MountMotion Under(Vec3 force, Vec3 moment)
    {
        MountMotion sum = default;
        for (int i = 0; i < 6; i++)
        {
            double load = i < 3 ? force[i] : moment[i - 3];
            var one = MountOf(PerLoad[i]);
            sum = new(sum.Moved + load * one.Moved, sum.Turned + load * one.Turned);
        }

        return sum;
    }

    /// <summary>Motion of the robot's base in a vector over the unknowns.</summary>
    public MountMotion MountOf(ReadOnlySpan<double> x)
    {
        int first = Mesh.Mount!.Translation;
        return new(FramePlace.At(x, first), FramePlace.At(x, first + 3));
    }

    /// <summary>What each foot puts on the floor under weights alone: downward is negative z.</summary>
    public ImmutableArray<FootForce> FeetUnderWeight => [.. Mesh.Feet.Select(f => OnFloor(f, UnderWeight) + OwnWeight(f))];

    /// <summary>What each foot puts on the floor for displacements, what weighs on the foot itself left out.</summary>
    public ImmutableArray<FootForce> Feet(double[] x) => [.. Mesh.Feet.Select(f => OnFloor(f, x))];

    /// <summary>Displacements for a unit force along x, y, z and a unit moment about them on the robot's base.</summary>
    internal double[][] PerLoad => _perLoad ??= [.. Enumerable.Range(0, 6).Select(i =>
    {
        var load = new double[Mesh.Pattern.Unknowns];
        load[Mesh.Mount!.Translation + i] = 1;
        return Solve(load);
    })];

    /// <summary>How far a point on a member gives way along a direction for a unit force along it, m/N.</summary>
    public double Give(FramePlace place, Vec3 direction)
    {
        var load = new double[Mesh.Pattern.Unknowns];
        var turning = place.Offset.Cross(direction);
        for (int i = 0; i < 3; i++)
        {
            if (place.Translation >= 0) load[place.Translation + i] += direction[i];
            if (place.Carrier >= 0) load[place.Carrier + i] += turning[i];
        }

        return direction.Dot(place.Displacement(Solve(load)));
    }

    private double[] Solve(double[] load)
    {
        if (_factor.Vanished >= 0) Array.Fill(load, double.NaN);
        else _factor.Solve(load);
        return load;
    }

    private const double Gravity = 9.80665;

    private double[] Weight()
    {
        var load = new double[Mesh.Pattern.Unknowns];
        for (int p = 0; p < Mesh.Masses.Length; p++)
        {
            var patch = Mesh.Masses[p];
            for (int i = 0; i < patch.Size; i++)
                if (patch.Unknowns[i] >= 0)
                    foreach (int up in Mesh.Lift[p]) load[patch.Unknowns[i]] -= Gravity * patch.Values[i * patch.Size + up];
        }

        return load;
    }

    // A foot has no arm across, so the rows of its turning follow those of its moving.
    private FootForce OnFloor(FrameFoot foot, double[] x)
    {
        var patch = Mesh.Elements[foot.Patch];
        double Row(int i) => -patch.RowProduct(foot.Row + i, x);
        return new(new(Row(0), Row(1), Row(2)), new(Row(3), Row(4), Row(5)));
    }

    /// <summary>What of the first element weighs on its foot directly. Elements and their masses stand in the same order.</summary>
    private FootForce OwnWeight(FrameFoot foot)
    {
        var patch = Mesh.Masses[foot.Patch];
        double Along(int row) => -Gravity * Mesh.Lift[foot.Patch].Sum(up => patch.Values[(foot.Row + row) * patch.Size + up]);
        return new(new(Along(0), Along(1), Along(2)), Vec3.Zero);
    }

    private static string? Holding(FrameMesh mesh, int unknown)
    {
        for (int i = 0; i < mesh.Lines.Length; i++)
            if (mesh.Lines[i].Any(p => Has(p.Translation) || Has(p.Rotation))) return mesh.Input.Lines[i].Bar.Pointer;
        return null;

        bool Has(int first) => first >= 0 && unknown >= first && unknown < first + 3;
    }
}
