using System.Collections.Immutable;
using Trivet.Numerics;

namespace Trivet.Frames;

/// <summary>A diagonal that could be added, and what it would do.</summary>
/// <param name="From">Where it would begin, cell frame.</param>
/// <param name="Mass">Of the brace, kg.</param>
/// <param name="Low">First frequency then, softest joints, Hz.</param>
/// <param name="GainedLow">By how much that is more than now, Hz.</param>
public sealed record Brace(Vec3 From, Vec3 To, double Mass, double Low, double High, double GainedLow, double GainedHigh)
{
    /// <summary>Hertz gained with the softest joints for each kilogram.</summary>
    public double PerKilogram => GainedLow / Mass;
}

/// <summary>
/// Tries a diagonal in every four-sided field of the frame, one at a time, both ways round as one: which gives the first frequency most hertz per
/// kilogram. Whether a brace stands in the way of robot, belt or hands, this does not know.
/// </summary>
public static class BraceAdvice
{
    private const int MostTried = 40;

    /// <summary>A brace that goes down to a foot is fastened to the post a little above it, metres.</summary>
    private const double AboveFloor = 0.1;

    /// <summary>Fields narrower than this are not braced, metres.</summary>
    private const double Narrowest = 0.15;

    /// <param name="brace">What the braces would be made of: any line of that profile.</param>
    /// <returns>The best first; those that gain nothing left out.</returns>
    public static ImmutableArray<Brace> Find(FrameStudy study, FrameLine brace, CancellationToken stop)
    {
        var input = study.Mesh.Input;
        var (soft, stiff) = (study.Joints.From, study.Joints.To);
        double highest = 1.5 * study.Stiff.Modes[0].Hz;
        // The same coarse mesh before and after, so that its own error is not taken for a gain.
        double low = First(input, soft), high = First(input, stiff);
        var tried = ImmutableArray.CreateBuilder<Brace>();
        foreach (var (from, to) in Diagonals(study.Mesh).Take(MostTried))
        {
            stop.ThrowIfCancellationRequested();
            var line = brace with { Bar = brace.Bar with { Id = "tried", From = from, To = to } };
            var with = input with { Lines = input.Lines.Add(line) };
            double newLow = First(with, soft), newHigh = First(with, stiff);
            if (newLow > low * 1.001) tried.Add(new(from, to, line.Beam.Mass * (to - from).Norm, newLow, newHigh, newLow - low, newHigh - high));
        }

        return [.. tried.OrderByDescending(b => b.PerKilogram)];

        double First(FrameInput of, double joint) =>
            FrameSolution.Of(FrameMesh.Of(of, highest), joint, 2) is { Usable: true } solution ? solution.Modes[0].Hz : double.NaN;
    }

    /// <summary>
    /// One diagonal of each field: two members that others connect enclose one between each two neighbouring connections, and one above their feet.
    /// </summary>
    private static IEnumerable<(Vec3 From, Vec3 To)> Diagonals(FrameMesh mesh)
    {
        var links = new SortedDictionary<(int, int), List<(Vec3 A, Vec3 B)>>();
        for (int c = 0; c < mesh.Lines.Length; c++)
        {
            int a = Carrier(c, mesh.Lines[c][0]), b = Carrier(c, mesh.Lines[c][^1]);
            if (a < 0 || b < 0 || a == b) continue;
            var (first, last) = (mesh.Lines[c][0].P, mesh.Lines[c][^1].P);
            if (!links.TryGetValue((Math.Min(a, b), Math.Max(a, b)), out var all)) links[(Math.Min(a, b), Math.Max(a, b))] = all = [];
            all.Add(a < b ? (first, last) : (last, first));
        }

        foreach (var ((a, b), all) in links)
        {
            if (Foot(a) is { } footA && Foot(b) is { } footB) all.Add((footA, footB));
            var rungs = all.OrderBy(r => (r.A - mesh.Lines[a][0].P).Norm).ToArray();
            for (int i = 1; i < rungs.Length; i++)
            {
                var (low, high) = rungs[i - 1].A.Z + rungs[i - 1].B.Z <= rungs[i].A.Z + rungs[i].B.Z ? (rungs[i - 1], rungs[i]) : (rungs[i], rungs[i - 1]);
                // Level fields don't sway; narrow ones have no room; those with a diagonal have one.
                if (Math.Min((high.A - low.A).Norm, (low.A - low.B).Norm) < Narrowest || Math.Abs(high.A.Z - low.A.Z) < Narrowest) continue;
                if (mesh.Lines.Any(l => Joins(l, low.A, high.B) || Joins(l, low.B, high.A))) continue;
                yield return (low.A, high.B);
            }
        }

        // What an end is fastened to: the member that has that place within, or whose own end it is.
        int Carrier(int line, FramePlace end)
        {
            for (int i = 0; i < mesh.Lines.Length; i++)
                if (i != line && end.Translation >= 0 && mesh.Lines[i].Any(p => p.Translation == end.Translation && p.Carrier < 0)) return i;
            return -1;
        }

        Vec3? Foot(int line) => mesh.Lines[line][0].Translation < 0 ? mesh.Lines[line][0].P + AboveFloor * Vec3.UnitZ
            : mesh.Lines[line][^1].Translation < 0 ? mesh.Lines[line][^1].P + AboveFloor * Vec3.UnitZ : null;

        static bool Joins(ImmutableArray<FramePlace> line, Vec3 p, Vec3 q) =>
            ((line[0].P - p).Norm < Narrowest && (line[^1].P - q).Norm < Narrowest) || ((line[0].P - q).Norm < Narrowest && (line[^1].P - p).Norm < Narrowest);
    }
}
