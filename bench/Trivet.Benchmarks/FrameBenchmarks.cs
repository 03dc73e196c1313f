using BenchmarkDotNet.Attributes;
using Trivet.Cells;
using Trivet.Frames;
using Trivet.Numerics;

namespace Trivet.Benchmarks;

/// <summary>A box of twelve members of square steel tube, 1.2 × 0.9 × 1.8 m: from the description in computing form to six modes. Budget 3 ms.</summary>
public class FrameBenchmarks
{
    private FrameInput _rigid = null!, _jointed = null!;

    [GlobalSetup]
    public void Make()
    {
        var beam = Section.Tube(0.08, 0.08, 0.004, 0.3).Beam(210e9, 0.3, 7850 * 1.216e-3);
        List<FrameLine> lines = [];
        double[] xs = [0, 1.2], ys = [0, 0.9], zs = [1.8, 0.4];
        foreach (double x in xs)
            foreach (double y in ys) Add(new(x, y, 0), new(x, y, 1.8));
        foreach (double z in zs)
        {
            foreach (double y in ys) Add(new(0, y, z), new(1.2, y, z));
            foreach (double x in xs) Add(new(x, 0, z), new(x, 0.9, z));
        }

        Vec3[] at = [new(0.6, 0, 1.8), new(0.6, 0.9, 1.8), new(0, 0.45, 1.8), new(1.2, 0.45, 1.8)];
        _rigid = new([.. lines], true, double.PositiveInfinity, double.PositiveInfinity, FootHold.Fixed, [.. at.Select(p => new PointMass(p, 7.5))], null);
        _jointed = _rigid with { Rigid = false, JointFrom = 2e4, JointTo = 1e5 };

        void Add(Vec3 from, Vec3 to) => lines.Add(new(new($"m{lines.Count}", "", from, to, null, 0.08, 0.08), beam, 0.05));
    }

    [Benchmark]
    public double Twelve_members_six_modes() => FrameSolution.Of(FrameMesh.Of(_rigid, 140), double.PositiveInfinity, 6).Modes[0].Hz;

    [Benchmark]
    public double The_same_with_joints_that_turn() => FrameSolution.Of(FrameMesh.Of(_jointed, 140), 5e4, 6).Modes[0].Hz;
}
