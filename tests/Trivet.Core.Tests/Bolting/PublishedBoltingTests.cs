using System.Collections.Immutable;
using Trivet.Bolting;
using Trivet.Cells;
using Trivet.Fasteners;
using Trivet.Numerics;
using Xunit;

namespace Trivet.Core.Tests.Bolting;

/// <summary>
/// Preload and torque against VDI 2230-1:2015, table A1 (its digits from memory, recomputed apart from this project): hexagon heads, medium holes,
/// friction the same in thread and under the head. Tolerance: one in the last digit of the table.
/// </summary>
public sealed class PublishedBoltingTests
{
    [Theory]
    [InlineData("M4", "8.8", 0.10, 4.5, 2.6)]
    [InlineData("M4", "8.8", 0.12, 4.4, 3.0)]
    [InlineData("M4", "8.8", 0.14, 4.3, 3.3)]
    [InlineData("M6", "8.8", 0.10, 10.4, 9.0)]
    [InlineData("M6", "8.8", 0.12, 10.2, 10.1)]
    [InlineData("M6", "8.8", 0.14, 9.9, 11.3)]
    [InlineData("M8", "8.8", 0.10, 19.1, 21.6)]
    [InlineData("M8", "8.8", 0.12, 18.6, 24.6)]
    [InlineData("M8", "8.8", 0.14, 18.1, 27.3)]
    [InlineData("M5", "10.9", 0.12, 10.6, 8.6)]
    [InlineData("M6", "10.9", 0.12, 14.9, 14.9)]
    [InlineData("M8", "12.9", 0.12, 32.0, 42.2)]
    [InlineData("M6", "12.9", 0.14, 17.0, 19.3)]
    public void Preload_and_torque_are_those_of_the_table(string thread, string strength, double friction, double preload, double torque)
    {
        var (t, c) = (MetricThread.Find(thread)!, PropertyClass.Find(strength)!);
        double f = Tightening.LargestPreload(t, c, friction);
        Assert.Equal(preload, f / 1000, 0.101);
        Assert.Equal(torque, f * Tightening.Arm(t, Screw.Of(t, ScrewHead.Hexagon).Bearing, friction), 0.101);
    }

    /// <summary>The table's larger sizes are printed in whole newton metres.</summary>
    [Theory]
    [InlineData("M10", 0.10, 30.3, 43)]
    [InlineData("M10", 0.14, 28.8, 54)]
    [InlineData("M12", 0.12, 43.0, 84)]
    public void And_so_of_larger_screws(string thread, double friction, double preload, double torque)
    {
        var t = MetricThread.Find(thread)!;
        double f = Tightening.LargestPreload(t, PropertyClass.Find("8.8")!, friction);
        Assert.Equal(preload, f / 1000, 0.12);
        Assert.Equal(torque, f * Tightening.Arm(t, Screw.Of(t, ScrewHead.Hexagon).Bearing, friction), 1.0);
    }

    /// <summary>Stainless screws: the same formula with 450 MPa, computed apart.</summary>
    [Theory]
    [InlineData(0.10, 7.35, 6.30)]
    [InlineData(0.12, 7.16, 7.14)]
    [InlineData(0.14, 6.97, 7.91)]
    public void Stainless_screws_follow_their_own_yield_strength(double friction, double preload, double torque)
    {
        var t = MetricThread.Find("M6")!;
        double f = Tightening.LargestPreload(t, PropertyClass.Find("A2-70")!, friction);
        Assert.Equal(preload, f / 1000, 0.005);
        Assert.Equal(torque, f * Tightening.Arm(t, 8.88e-3, friction), 0.005);
    }

    /// <summary>The nut factor K = M/(F·d) of M8 at 0.12, computed apart: 0.1649.</summary>
    [Fact]
    public void The_nut_factor_is_that_of_the_handbook()
    {
        var t = MetricThread.Find("M8")!;
        Assert.Equal(0.1649, Tightening.Arm(t, 11.63e-3, 0.12) / t.D, 1e-4);
    }

    /// <summary>M6 over 12 mm, basic profile: 197.9 mm², 25.7 kN at 130 MPa, computed apart. The joint takes off 0.8 pitches of chamfer.</summary>
    [Fact]
    public void The_area_that_strips_is_that_of_the_basic_profile()
    {
        double area = JointResult.StripArea(Joint() with { Engagement = 12e-3 + 0.8e-3 });
        Assert.Equal(197.9e-6, area, 0.05e-6);
        Assert.Equal(25.7e3, area * 130e6, 50.0);
    }

    /// <summary>One layer of one material against the closed formula of VDI 2230-1 for a cone within wide parts (equation 44, from memory).</summary>
    [Theory]
    [InlineData(ThreadIn.Tapped, 1)]
    [InlineData(ThreadIn.Nut, 2)]
    public void Clamped_parts_yield_as_the_closed_formula_says(ThreadIn into, double w)
    {
        var joint = Joint() with { Into = into, Layers = [new(0.02, Steel, double.PositiveInfinity)] };
        double l = 0.02, dw = joint.Bearing, dh = joint.Thread.Passage, spread = (dw + l) / dw, slender = l / dw;
        double tan = into == ThreadIn.Tapped ? 0.348 + 0.013 * Math.Log(slender) + 0.193 * Math.Log(spread) : 0.362 + 0.032 * Math.Log(slender / 2) + 0.153 * Math.Log(spread);
        // The formula has w = 1 for a nut and 2 for a tapped hole; here w counts the other way.
        double k = w == 1 ? 2 : 1;
        double closed = 2 / (k * Steel.Modulus * Math.PI * dh * tan) * Math.Log((dw + dh) * (dw + k * l * tan - dh) / ((dw - dh) * (dw + k * l * tan + dh)));
        Assert.Equal(closed, Resilience.OfLayers(joint), 1e-9 * closed);
    }

    [Fact]
    public void Layers_cut_in_two_yield_as_one_and_a_soft_layer_yields_more()
    {
        var whole = Joint() with { Layers = [new(0.02, Steel, 0.03)] };
        var cut = Joint() with { Layers = [new(0.007, Steel, 0.03), new(0.013, Steel, 0.03)] };
        foreach (var into in new[] { ThreadIn.Tapped, ThreadIn.Nut })
            Assert.Equal(Resilience.OfLayers(whole with { Into = into }), Resilience.OfLayers(cut with { Into = into }), 1e-18);
        var soft = Joint() with { Layers = [new(0.02, Steel with { Modulus = Steel.Modulus / 3 }, 0.03)] };
        Assert.Equal(3 * Resilience.OfLayers(whole), Resilience.OfLayers(soft), 1e-18);
    }

    /// <summary>Loss by embedding is depth over both resiliences: 8 µm over 5.6627e-6 and 2.1750e-6 mm/N gives 1020.7 N, computed apart. Here the same relation with the joint's own.</summary>
    [Fact]
    public void Embedding_takes_its_depth_over_both_resiliences()
    {
        Assert.Equal(1020.7, 8e-3 / (5.6627e-6 + 2.1750e-6), 0.05);
        var r = JointResult.Solve(Joint(), null);
        // Medium roughness with shear: thread 3, head 4.5, one inner face 2.5 µm (table 5 of VDI 2230-1).
        Assert.Equal(10e-6 / (r.ScrewResilience + r.LayerResilience), r.Embedding, 1e-9);
    }

    [Fact]
    public void A_found_torque_keeps_every_limit_and_one_more_digit_would_break_one()
    {
        foreach (var input in new[] { Joint(), Joint() with { Class = PropertyClass.Find("12.9")! }, Joint() with { Engagement = 4e-3, ThreadStuff = Stuff.Known.Single(s => s.Id == "acetal") } })
        {
            var found = JointResult.Solve(input, null);
            Assert.True(found is { ScrewUse: <= 1, PressureUse: <= 1, StripUse: <= 1 });
            double step = Math.Pow(10, Math.Floor(Math.Log10(found.Torque)) - 1);
            var more = JointResult.Solve(input with { Torque = found.Torque + 1.0001 * step }, null);
            Assert.True(Math.Max(more.ScrewUse, Math.Max(more.PressureUse, more.StripUse)) > 1, found.LimitedBy.ToString());
            Assert.Equal(TorqueLimit.Stated, more.LimitedBy);
        }
    }

    internal static readonly Stuff Steel = Stuff.Known.Single(s => s.Id == "steel");

    internal static JointInput Joint() => new(
        "test", [new(0.02, 0.02), new(-0.02, 0.02), new(-0.02, -0.02), new(0.02, -0.02)], Screw.Of(MetricThread.Find("M6")!, ScrewHead.Hexagon), PropertyClass.Find("8.8")!, 8.88e-3,
        [new(0.012, Steel, double.PositiveInfinity)], ThreadIn.Tapped, Steel, 9e-3, double.NaN, 0.10, 0.16, 0.10, 0.1, Roughness.Medium, double.NaN, Hangs: true);
}
