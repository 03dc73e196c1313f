using Trivet.Adapters;
using Trivet.Fasteners;
using Trivet.Numerics;
using Xunit;

namespace Trivet.Core.Tests.Adapters;

public sealed class OutlineAndStiffnessTests
{
    /// <summary>A string round pulleys: two equal discs give two half circles and two straights.</summary>
    [Fact]
    public void Round_two_equal_discs_the_outline_is_a_slot()
    {
        var outline = Outline.Round([(new(-2, 0), 1), (new(2, 0), 1)]);
        Assert.Equal(4, outline.Pieces.Length);
        Assert.Equal(Math.PI + 8, outline.Area, 1e-12);
        Assert.Equal(3, outline.Reach, 1e-12);
        Assert.Equal(1, outline.Depth(new(0.5, 0)), 1e-12);
        Assert.Equal(0.5, outline.Depth(new(2.5, 0)), 1e-12);
    }

    [Fact]
    public void The_outline_holds_every_disc_and_touches_it_or_lies_outside_it()
    {
        var random = new Random(3);
        for (int n = 0; n < 200; n++)
        {
            (Vec2 At, double Radius)[] discs = [.. Enumerable.Range(0, 2 + random.Next(10)).Select(_ => (new Vec2(random.NextDouble() - 0.5, random.NextDouble() - 0.5), 0.02 + 0.1 * random.NextDouble()))];
            var outline = Outline.Round(discs);
            Assert.Equal(2 * Math.PI, outline.Pieces.Sum(p => p.Sweep), 1e-6);
            foreach (var (at, radius) in discs) Assert.True(outline.Depth(at) >= radius - 1e-9, $"case {n}");
            // Cauchy: the length of a convex outline is the mean of its width over all directions, times π.
            const int Directions = 3600;
            double mean = Enumerable.Range(0, Directions).Average(k => discs.Max(d => d.At.Dot(Vec2.Polar(1, 2 * Math.PI * k / Directions)) + d.Radius));
            double length = outline.Pieces.Sum(p => p.IsArc ? p.Radius * p.Sweep : (p.To - p.From).Norm);
            Assert.Equal(2 * Math.PI * mean, length, 1e-4 * length);
        }
    }

    private static readonly Stuff Plain = new("test", 1, 200e9, 0.3, 1, 1, 1, 0);

    /// <summary>A concentrated load in the middle of a simply supported disc: w = F·a²·(3 + ν) / (16·π·(1 + ν)·D) (Timoshenko, Theory of Plates and Shells, from memory).</summary>
    [Fact]
    public void Loaded_along_a_very_small_circle_the_disc_yields_as_under_a_point_load()
    {
        double t = 0.01, a = 0.1, d = 200e9 * t * t * t / (12 * (1 - 0.09));
        var (axial, _) = PlateStiffness.Between(Plain, t, a, 1e-4 * a);
        Assert.Equal(16 * Math.PI * 1.3 * d / (a * a * 3.3), axial, 1e-3 * axial);
    }

    /// <summary>
    /// A rigid hub tilted in a simply supported disc: θ = α·M / (E·t³), α for b/a from Roark's table 11.2 (from memory). A hub that is not rigid
    /// tilts more, but where the ring is thin next to the span not by much.
    /// </summary>
    [Theory]
    [InlineData(0.3, 0.500)]
    [InlineData(0.5, 0.169)]
    [InlineData(0.7, 0.035)]
    public void The_tilt_lies_above_that_of_a_rigid_hub_and_within_reach_of_it(double ratio, double alpha)
    {
        double t = 0.01;
        var (_, tilt) = PlateStiffness.Between(Plain, t, 0.1, 0.1 * ratio);
        double rigid = 200e9 * t * t * t / alpha;
        Assert.InRange(tilt, 0.05 * rigid, rigid);
    }

    /// <summary>Maxwell and Betti: energy of the load is half load times way, so the stiffness is symmetric in which circle is held.</summary>
    [Fact]
    public void Which_circle_is_held_does_not_matter_and_equal_circles_are_stiff()
    {
        Assert.Equal(PlateStiffness.Between(Plain, 0.01, 0.05, 0.03), PlateStiffness.Between(Plain, 0.01, 0.03, 0.05));
        Assert.True(double.IsInfinity(PlateStiffness.Between(Plain, 0.01, 0.05, 0.05).Axial));
        var (thin, _) = PlateStiffness.Between(Plain, 0.01, 0.05, 0.03);
        var (thick, _) = PlateStiffness.Between(Plain, 0.02, 0.05, 0.03);
        Assert.Equal(8 * thin, thick, 1e-9 * thick);
    }

    /// <summary>The same plate in small steps of radius: the tilting disc's equation integrated by differences, an independent way to the same number.</summary>
    [Fact]
    public void Tilting_agrees_with_the_minimum_of_the_bending_energy()
    {
        // Ritz: f(r) = Σ c_k·hats on a fine grid is costly; polynomials with a kink in the third derivative at the load do as well. The energy of
        // w = f·cos θ in a disc: U = D·π/2·∫ [(f″ + f′/r − f/r²)² − 2(1−ν)·(f″·(f′/r − f/r²) − (f′/r − f/r²)²)] r dr.
        const double Nu = 0.3, A = 1, B = 0.5;
        int n = 9;
        Func<double, double>[] f = [.. Enumerable.Range(0, n).Select(k => (Func<double, double>)(r => k < 6 ? Math.Pow(r, k + 1) - r : Kink(r, k - 3) - r * Kink(1, k - 3)))];
        double[,] m = new double[n, n];
        double[] load = new double[n];
        const int Steps = 4000;
        for (int s = 0; s < Steps; s++)
        {
            double r = (s + 0.5) / Steps * A;
            var parts = f.Select(g => Parts(g, r)).ToArray();
            for (int i = 0; i < n; i++)
                for (int j = 0; j < n; j++)
                    m[i, j] += Math.PI * ((parts[i].K + parts[i].H) * (parts[j].K + parts[j].H) - (1 - Nu) * (parts[i].K * parts[j].H + parts[i].H * parts[j].K - 2 * parts[i].H * parts[j].H)) * r / Steps;
        }
        for (int i = 0; i < n; i++) load[i] = Math.PI * B * f[i](B);
        double[] c = MathNet.Numerics.LinearAlgebra.Matrix<double>.Build.DenseOfArray(m).PseudoInverse().Multiply(MathNet.Numerics.LinearAlgebra.Vector<double>.Build.Dense(load)).ToArray();
        double way = c.Select((x, i) => x * f[i](B)).Sum();
        double ritz = Math.PI * B * B / (way / B);
        // Unit bending stiffness: E·t³ = 12·(1 − ν²).
        var (_, tilt) = PlateStiffness.Between(new("unit", 1, 12 * (1 - Nu * Nu), Nu, 1, 1, 1, 0), 1, A, B);
        Assert.Equal(ritz, tilt, 0.02 * ritz);

        static double Kink(double r, int power) => r > B ? Math.Pow(r - B, power) : 0;
        static (double K, double H) Parts(Func<double, double> g, double r)
        {
            const double E = 1e-4;
            double slope = (g(r + E) - g(r - E)) / (2 * E), bend = (g(r + E) - 2 * g(r) + g(r - E)) / (E * E);
            return (bend, slope / r - g(r) / (r * r));
        }
    }
}
