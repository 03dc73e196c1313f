using System.Collections.Immutable;
using Trivet.Frames;
using Trivet.Numerics;
using Xunit;

namespace Trivet.Core.Tests.Frames;

/// <summary>Setting up from readings of frames that are bent on purpose.</summary>
public class SettingUpTests
{
    private const double Width = 1.0, Depth = 0.9, Height = 1.8;

    private static readonly ImmutableArray<SetUpPoint> Points = SettingUp.PointsOf(
    [
        .. from x in new[] { 0, Width } from y in new[] { 0, Depth } select new FrameBar(FormattableString.Invariant($"p{x}{y}"), "", new(x, y, 0), new(x, y, Height), null, 0.06, 0.06),
        new("beam", "", new(0, 0, Height), new(Width, 0, Height), null, 0.06, 0.06),
    ]);

    /// <summary>Every reading there is, of corners moved by a function.</summary>
    private static SettingUp Read(Func<Vec3, Vec3> moved, Func<SetUpReading, bool>? only = null)
    {
        Vec3[] real = [.. Points.Select(p => p.P + moved(p.P))];
        var readings = ImmutableArray.CreateBuilder<SetUpReading>();
        for (int a = 0; a < real.Length; a++)
        {
            if (a % 2 == 1) readings.Add(new(SetUpKind.Height, a, -1, real[a].Z + 0.25, SettingUp.HeightUncertainty));
            for (int b = a + 1; b < real.Length; b++)
            {
                readings.Add(new(SetUpKind.Distance, a, b, (real[b] - real[a]).Norm, SettingUp.TapeUncertainty));
                var way = real[b] - real[a];
                if (a % 2 == 1 && b % 2 == 1) readings.Add(new(SetUpKind.Level, a, b, way.Z / (way with { Z = 0 }).Norm, SettingUp.LevelUncertainty));
            }
        }

        return SettingUp.Of(Points, [.. readings.Where(r => only is null || only(r))]);
    }

    private static SetUpQuantity Of(SettingUp result, string id) => result.Quantities.First(q => q.Id == id);

    [Fact]
    public void The_posts_of_a_frame_are_its_corners() =>
        Assert.Equal(["p00.foot", "p00.top", "p00.9.foot", "p00.9.top", "p10.foot", "p10.top", "p10.9.foot", "p10.9.top"], Points.Select(p => p.Name));

    [Fact]
    public void A_lean_is_found_by_its_diagonals()
    {
        // Leaning along x by 3 mm over the height: the sides along x lose their right angle by 3/1800, the others and the level nothing. By the diagonals: their
        // difference over a side of 1 m is shear times 2·w·h/d, which is what a tape shows.
        var result = Read(p => new(0.003 * p.Z / Height, 0, 0));
        double lean = 0.003 / Height;
        foreach (var side in result.Quantities.Where(q => q.Id == "square-side"))
        {
            bool alongX = side.Corner[..2] != side.Other[..2];
            Assert.Equal(alongX ? lean : 0, Math.Abs(side.Value), 0.05 * lean);
        }

        Assert.Equal(0, Of(result, "twist").Value, 0.05 * lean);
        Assert.Equal(0, Of(result, "level-x").Value, 1e-5);
        Assert.Contains(result.Quantities, q => q.Within == false);
    }

    [Fact]
    public void A_twist_and_a_tilt_are_told_apart()
    {
        var twist = Read(p => 0.002 * p.Z / Height * Vec3.UnitZ.Cross(p - new Vec3(Width / 2, Depth / 2, 0)) with { Z = 0 });
        Assert.Equal(0.002, Of(twist, "twist").Value, 1e-4);
        Assert.Equal(0, Of(twist, "level-x").Value, 1e-5);
        var tilt = Read(p => new(0, 0, 0.001 * p.X));
        Assert.Equal(0.001, Of(tilt, "level-x").Value, 3e-5);
        Assert.Equal(0, Of(tilt, "level-y").Value, 3e-5);
        Assert.Equal(0, Of(tilt, "twist").Value, 1e-4);
    }

    [Fact]
    public void The_low_feet_are_raised_to_the_highest_and_no_more()
    {
        // One post stands 2 mm low.
        var result = Read(p => p is { X: > 0.5, Y: > 0.5 } ? new(0, 0, -0.002) : Vec3.Zero);
        var low = result.Turns.Single(t => t.Foot == "p10.9");
        Assert.Equal(0.002, low.Raise, 2e-4);
        Assert.False(low.Leave);
        Assert.All(result.Turns.Where(t => t.Foot != "p10.9"), t => Assert.True(t.Leave || t.Raise < 3e-4));
        Assert.All(result.Turns, t => Assert.True(t.Raise >= 0));
    }

    [Fact]
    public void The_fit_and_its_doubt_are_those_of_a_dense_one()
    {
        // Second opinion: level along x from heights alone has the textbook variance σ²/Σ(x − x̄)², nearly independent of the prior.
        var result = Read(_ => Vec3.Zero, r => r.Kind == SetUpKind.Height);
        double sum = Points.Where((_, i) => i % 2 == 1).Sum(p => Math.Pow(p.P.X - Width / 2, 2));
        Assert.Equal(SettingUp.HeightUncertainty / Math.Sqrt(sum), Of(result, "level-x").Uncertainty, 0.01 * SettingUp.HeightUncertainty);
        // Nothing read: doubt everywhere, and nothing claimed.
        var none = SettingUp.Of(Points, []);
        Assert.All(none.Quantities, q => Assert.Null(q.Within));
    }

    [Fact]
    public void What_is_to_be_measured_next_leaves_as_little_doubt_as_promised()
    {
        var before = SettingUp.Of(Points, []);
        var next = before.Next(3);
        Assert.Equal(3, next.Length);
        Assert.True(next[0].Left <= next[1].Left && next[1].Left <= next[2].Left && next[2].Left < 1);
        var best = next[0];
        int from = Points.Select(p => p.Name).ToList().IndexOf(best.From), to = best.To.Length == 0 ? -1 : Points.Select(p => p.Name).ToList().IndexOf(best.To);
        double value = best.Kind == SetUpKind.Distance ? (Points[to].P - Points[from].P).Norm : best.Kind == SetUpKind.Height ? Points[from].P.Z : 0;
        double uncertainty = best.Kind switch { SetUpKind.Distance => SettingUp.TapeUncertainty, SetUpKind.Height => SettingUp.HeightUncertainty, _ => SettingUp.LevelUncertainty };
        var after = SettingUp.Of(Points, [new(best.Kind, from, to, value, uncertainty)]);
        double Doubt(SettingUp s) => s.Quantities.Sum(q => Math.Pow(q.Uncertainty / q.Limit, 2));
        Assert.Equal(best.Left, Doubt(after) / Doubt(before), 1e-6);
        Assert.DoesNotContain(after.Next(50), n => n.Kind == best.Kind && n.From == best.From && n.To == best.To);
    }
}
