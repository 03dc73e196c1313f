using System.Buffers.Binary;
using System.Globalization;
using System.Text.RegularExpressions;
using Trivet.Adapters;
using Trivet.Cells;
using Trivet.Files.Exchange;
using Trivet.Numerics;
using Trivet.Testing;
using Xunit;

namespace Trivet.Files.Tests.Exchange;

/// <summary>Files for the shop, held against programs that are not ours: ezdxf for DXF, a CAD kernel (Open CASCADE) for STEP. STL is measured by its own triangles.</summary>
public sealed partial class PlateFilesTests
{
    public static TheoryData<string> Cases => ["tapped", "stack-upper", "stack-lower", "round", "countersunk", "passage"];

    private static AdapterPlate Plate(string name) => name switch
    {
        "tapped" => AdapterCells.Solve(AdapterCells.With(AdapterCells.Simple, p => p with { Lighten = true })).Works[0],
        "stack-upper" => AdapterCells.Solve(AdapterCells.Covered).Stack[0],
        "stack-lower" => AdapterCells.Solve(AdapterCells.Covered).Stack[1],
        "round" => AdapterCells.Solve(AdapterCells.With(AdapterCells.Simple, p => p with { Outline = PlateOutline.Round })).Works[0],
        // Too thin for a counterbore of M6, and of steel, in which M4 holds by 6 mm.
        "countersunk" => AdapterCells.Solve(AdapterCells.With(AdapterCells.Simple, p => p with { Thickness = 0.008, Material = "steel" })).Works[0],
        _ => AdapterCells.Solve(AdapterCells.With(AdapterCells.Simple, p => p with { Bore = 0.012 })).Works[0],
    };

    [Fact]
    public void The_cases_have_what_they_are_named_for()
    {
        Assert.Contains(Plate("countersunk").Holes, h => h.Kind == HoleKind.Countersunk);
        Assert.True(Plate("round").Outline.Pieces[0].IsCircle);
        Assert.Contains(Plate("passage").Holes, h => h.Steps.Length > 1 && h.Kind == HoleKind.Pilot);
        Assert.Contains(Plate("tapped").Holes, h => h.Kind == HoleKind.Lightening);
    }

    [Theory, MemberData(nameof(Cases))]
    public void A_cad_kernel_finds_the_solid_valid_its_volume_exact_and_its_cylinders_where_planned(string name)
    {
        var plate = Plate(name);
        string file = Path.Combine(Path.GetTempPath(), $"trivet-{Guid.NewGuid():N}.step");
        try
        {
            File.WriteAllText(file, StepFile.Of(plate, $"Test's {name}", "2026-01-01T00:00:00"));
            var kernel = OutsideProgram.Step(file);
            Assert.SkipWhen(kernel.NotRun.Length > 0, kernel.NotRun);
            Assert.Contains("CHECK This shape seems to be valid", kernel.Output, StringComparison.Ordinal);
            Assert.Matches("(?i)WHAT.*solid", kernel.Output.ReplaceLineEndings(" "));
            double volume = double.Parse(Mass().Match(kernel.Output).Groups["mass"].Value, CultureInfo.InvariantCulture);
            Assert.Equal(1e9 * plate.Volume, volume, 1e-5 * volume);

            var found = Cylinder().Matches(kernel.Output).Select(m => (X: Number(m, "x"), Y: Number(m, "y"), R: Number(m, "r"))).ToArray();
            foreach (var hole in plate.Holes)
                foreach (var step in hole.Steps.Where(s => s.RadiusTop == s.RadiusBottom))
                    Assert.Contains(found, c => Math.Abs(c.X - 1000 * hole.At.X) < 1e-6 && Math.Abs(c.Y - 1000 * hole.At.Y) < 1e-6 && Math.Abs(c.R - 1000 * step.RadiusTop) < 1e-6);
            int cylinders = plate.Holes.Sum(h => h.Steps.Count(s => s.RadiusTop == s.RadiusBottom)) + plate.Outline.Pieces.Count(p => p.IsArc);
            Assert.Equal(cylinders, found.Length);
        }
        finally
        {
            File.Delete(file);
        }
    }

    [Theory, MemberData(nameof(Cases))]
    public void Ezdxf_finds_nothing_to_object_to_and_every_circle_where_planned(string name)
    {
        var plate = Plate(name);
        string file = Path.Combine(Path.GetTempPath(), $"trivet-{Guid.NewGuid():N}.dxf");
        try
        {
            File.WriteAllText(file, DxfFile.Of(plate));
            var read = OutsideProgram.Dxf(file);
            Assert.SkipWhen(read.NotRun.Length > 0, read.NotRun);
            string[] lines = read.Output.Split('\n', StringSplitOptions.RemoveEmptyEntries);
            Assert.Equal("AUDIT 0 0", lines[0]);
            var circles = lines.Where(l => l.StartsWith("CIRCLE", StringComparison.Ordinal)).Select(l => l.Split(' ')).ToList();
            foreach (var hole in plate.Holes)
            {
                foreach (double radius in hole.Steps.SelectMany(s => new[] { s.RadiusTop, s.RadiusBottom }).Distinct())
                {
                    int at = circles.FindIndex(c => Near(c[2], hole.At.X) && Near(c[3], hole.At.Y) && Near(c[4], radius));
                    Assert.True(at >= 0, $"{hole.Kind} at {hole.At}");
                    circles.RemoveAt(at);
                }
            }
            double length = plate.Outline.Pieces.Sum(p => p.IsArc ? p.Radius * p.Sweep : (p.To - p.From).Norm);
            if (plate.Outline.Pieces[0].IsCircle) Assert.Equal("OUTLINE", Assert.Single(circles)[1]);
            else
            {
                Assert.Empty(circles);
                string[] outline = Assert.Single(lines, l => l.StartsWith("OUTLINE", StringComparison.Ordinal)).Split(' ');
                Assert.Equal("True", outline[2]);
                Assert.Equal(1000 * length, double.Parse(outline[3], CultureInfo.InvariantCulture), 0.01);
            }
        }
        finally
        {
            File.Delete(file);
        }

        static bool Near(string text, double metres) => Math.Abs(double.Parse(text, CultureInfo.InvariantCulture) - 1000 * metres) < 1e-6;
    }

    [Theory, MemberData(nameof(Cases))]
    public void The_triangles_close_and_hold_the_plates_volume(string name)
    {
        var plate = Plate(name);
        byte[] file = StlFile.Of(plate, name);
        int count = (int)BinaryPrimitives.ReadUInt32LittleEndian(file.AsSpan(80));
        Assert.Equal(84 + 50 * count, file.Length);
        var edges = new Dictionary<(Vec3, Vec3), int>();
        double volume = 0;
        for (int i = 0; i < count; i++)
        {
            Vec3 a = Corner(i, 0), b = Corner(i, 1), c = Corner(i, 2);
            volume += a.Dot(b.Cross(c)) / 6;
            foreach (var edge in new[] { (a, b), (b, c), (c, a) }) edges[edge] = edges.GetValueOrDefault(edge) + 1;
        }
        // Each edge is run through once each way.
        Assert.All(edges, e => Assert.Equal(1, e.Value));
        Assert.All(edges.Keys, e => Assert.True(edges.ContainsKey((e.Item2, e.Item1))));
        Assert.Equal(1e9 * plate.Volume, volume, 2e-3 * volume);

        Vec3 Corner(int triangle, int corner)
        {
            double At(int k) => BinaryPrimitives.ReadSingleLittleEndian(file.AsSpan(84 + 50 * triangle + 12 + 12 * corner + 4 * k));
            return new(At(0), At(1), At(2));
        }
    }

    private static double Number(Match match, string group) => double.Parse(match.Groups[group].Value, CultureInfo.InvariantCulture);

    [GeneratedRegex(@"Mass :\s*(?<mass>[-+.0-9e]+)")]
    private static partial Regex Mass();

    [GeneratedRegex(@"CylindricalSurface\s+Origin :(?<x>[-+.0-9e]+), (?<y>[-+.0-9e]+), [-+.0-9e]+\s+Axis[^\n]*\s+XAxis[^\n]*\s+YAxis[^\n]*\s+Radius :(?<r>[-+.0-9e]+)")]
    private static partial Regex Cylinder();
}
