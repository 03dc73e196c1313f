using System.Collections.Immutable;
using Trivet.Cells;
using Trivet.Core.Tests.Dynamics;
using Trivet.Dynamics;
using Trivet.Findings;
using Trivet.Numerics;
using Trivet.Tooling;
using Xunit;

namespace Trivet.Core.Tests.Tooling;

/// <summary>The tool stack: sums against hand calculation with closed forms of elementary mechanics, findings, and what dynamics takes of it.</summary>
public sealed class ToolStackTests
{
    private static ToolPart Plate => new() { Order = 1, Kind = ToolPartKind.Plate, Shape = SolidKind.Box, Width = 0.08, Depth = 0.06, Height = 0.01, Density = 2700 };

    private static ToolPart Axis => new() { Order = 2, Kind = ToolPartKind.RotaryAxis, Shape = SolidKind.Cylinder, Diameter = 0.04, Height = 0.05, Mass = 0.4 };

    private static ToolPart Left => new() { Order = 3, Kind = ToolPartKind.Finger, Shape = SolidKind.Box, Width = 0.01, Depth = 0.02, Height = 0.03, Mass = 0.02, CentreX = -0.02 };

    private static ToolPart Right => Left with { Order = 4, Beside = true, CentreX = 0.02 };

    private static Cell Stack(params (string Id, ToolPart Part)[] parts) => Cell.Empty with
    {
        Robot = new() { Rotary = new() { Fitted = true, Inertia = 1e-4 } },
        Tool = new() { TcpZ = -0.09, Parts = parts.ToImmutableSortedDictionary(p => p.Id, p => p.Part, StringComparer.Ordinal) },
        Brief = new() { Parts = new Dictionary<string, Part> { ["tin"] = new() { Mass = 0.1, Size = new() { Width = 0.05, Depth = 0.05, Height = 0.04 } } }.ToImmutableSortedDictionary(StringComparer.Ordinal) },
    };

    private static Cell Whole => Stack(("plate", Plate), ("turn", Axis), ("left", Left), ("right", Right));

    [Fact]
    public void Masses_and_centres_add_up_from_the_interface_down()
    {
        var sums = ToolSums.Of(Whole, new())!;
        double plate = 2700 * 0.08 * 0.06 * 0.01, mass = plate + 0.4 + 0.04;
        Assert.Equal(mass, sums.Empty.Body.Mass, 12);
        Assert.Equal(-(plate * 0.005 + 0.4 * 0.035 + 0.04 * 0.075) / mass, sums.Empty.Body.Centre.Z, 12);
        Assert.Equal(0, sums.Empty.Body.Centre.X, 12);
        Assert.Equal(mass + 0.1, sums.Heaviest.Body.Mass, 12);
        Assert.Equal("tin", sums.Heaviest.Part);
    }

    [Fact]
    public void Inertia_at_the_interface_and_at_the_tool_centre_point_is_that_of_each_part_and_its_distance()
    {
        var sum = ToolSums.Of(Whole, new())!.Empty;
        double plate = 2700 * 0.08 * 0.06 * 0.01;
        double upright = plate * (0.08 * 0.08 + 0.06 * 0.06) / 12 + 0.4 * 0.02 * 0.02 / 2 + 2 * 0.02 * ((0.01 * 0.01 + 0.02 * 0.02) / 12 + 0.02 * 0.02);
        Assert.Equal(upright, sum.AtInterface.Row2.Z, 15);
        double across(double z) => plate * ((0.06 * 0.06 + 0.01 * 0.01) / 12 + Math.Pow(z + 0.005, 2)) + 0.4 * ((3 * 0.02 * 0.02 + 0.05 * 0.05) / 12 + Math.Pow(z + 0.035, 2))
            + 2 * 0.02 * ((0.02 * 0.02 + 0.03 * 0.03) / 12 + Math.Pow(z + 0.075, 2));
        Assert.Equal(across(0), sum.AtInterface.Row0.X, 12);
        Assert.Equal(across(-0.09), sum.AtTcp.Row0.X, 12);
    }

    [Fact]
    public void What_hangs_below_the_rotary_axis_turns()
    {
        var stack = ToolInputs.Read(Whole, new());
        Assert.Equal(["left", "right"], stack.Elements.Where(e => e.Turns).Select(e => e.Id));
        Assert.Equal([0, -0.01, -0.06, -0.06], stack.Elements.Select(e => Math.Round(e.Top, 12)));
    }

    [Fact]
    public void Old_stacks_of_masses_and_heights_alone_hang_at_half_their_heights()
    {
        var sums = ToolSums.Of(Stack(("a", new() { Order = 1, Mass = 0.3, Height = 0.02 }), ("b", new() { Order = 2, Mass = 0.1, Height = 0.04 })), new())!;
        Assert.Equal(-(0.3 * 0.01 + 0.1 * 0.04) / 0.4, sums.Empty.Body.Centre.Z, 12);
        Assert.Equal(["/tool/parts/a", "/tool/parts/b"], sums.WithoutInertia);
        Assert.False(sums.Empty.Body.InertiaKnown);
    }

    [Fact]
    public void A_mesh_gives_mass_centre_and_inertia()
    {
        var block = SolidShapes.Box(0.08, 0.06, 0.01);
        var mesh = new MeshSolid
        {
            File = "plate.stl", Volume = block.Mass, CentreX = 0, CentreY = 0, CentreZ = -0.005,
            GyrationX = block.Inertia.Row0.X / block.Mass, GyrationY = block.Inertia.Row1.Y / block.Mass, GyrationZ = block.Inertia.Row2.Z / block.Mass,
        };
        var read = ToolSums.Of(Stack(("plate", new() { Shape = SolidKind.Mesh, Mesh = mesh, Density = 2700, Height = 0.01 })), new())!.Empty.Body;
        var shape = ToolSums.Of(Stack(("plate", Plate)), new())!.Empty.Body;
        Assert.Equal(shape.Mass, read.Mass, 12);
        Assert.Equal(shape.Inertia.Row0.X, read.Inertia.Row0.X, 15);
        Assert.Equal(shape.Centre.Z, read.Centre.Z, 12);
    }

    [Theory]
    [InlineData(1.0, 1.0, 2.1, 0.0, true)]
    [InlineData(1.0, 1.0, 1.9, 0.0, false)]
    [InlineData(1.0, 1.0, 1.0, 0.6, true)]
    [InlineData(1.0, 1.0, 1.0, 0.4, false)]
    public void Only_moments_that_a_body_can_have_are_taken(double x, double y, double z, double xy, bool refused)
    {
        var part = new ToolPart { Mass = 1, Shape = SolidKind.Given, InertiaX = x, InertiaY = y, InertiaZ = z, ProductXY = xy };
        Assert.Equal(refused, ToolInputs.Read(Stack(("given", part)), new()).Problems.Any(p => p.Reason == ToolReasons.NotAnInertia));
    }

    [Fact]
    public void Payload_moment_and_turning_inertia_are_held_against_what_is_stated()
    {
        var cell = Whole;
        cell = cell with { Tool = cell.Tool with { LargestMass = 0.65, LargestInertia = 1e-3, Parts = cell.Tool.Parts.SetItem("turn", Axis with { LargestLoad = 0.5 }) } };
        var findings = ToolChecks.Of(cell).Findings;
        Judged Of(Rule rule, string subject) => findings.OfType<Judged>().Single(f => f.Rule == rule && f.Subject.Pointer == subject);
        double plate = 2700 * 0.08 * 0.06 * 0.01;
        Assert.Equal(plate + 0.54, Of(ToolRules.Payload, "/tool").Value, 12);
        Assert.Equal(Verdict.FallsShort, Of(ToolRules.Payload, "/tool").Verdict);
        Assert.Equal(0.54, Of(ToolRules.Payload, "/tool/parts/turn").Value, 12);
        Assert.Equal(2 * 0.02 * ((0.01 * 0.01 + 0.02 * 0.02) / 12 + 0.02 * 0.02), Of(ToolRules.Turning, "/robot/rotary").Value, 15);
        Assert.Equal(Verdict.Holds, Of(ToolRules.Turning, "/robot/rotary").Verdict);
        Assert.Equal(0, Of(ToolRules.Length, "/tool/tcpZ").Value, 12);
        Assert.Equal(Verdict.FallsShort, ToolChecks.Of(cell with { Tool = cell.Tool with { TcpZ = -0.095 } }).Findings.Single(f => f.Rule == ToolRules.Length).Verdict);
    }

    [Fact]
    public void A_shape_that_lacks_a_size_is_asked_for_and_one_that_can_not_be_is_told()
    {
        var lacking = Assert.IsType<Unjudged>(ToolChecks.Of(Stack(("a", new() { Mass = 1, Shape = SolidKind.Box, Width = 0.1, Height = 0.1 }))).Findings[0]);
        Assert.Equal("/tool/parts/a/depth", Assert.Single(lacking.Missing));
        var wrong = Assert.IsType<Unjudged>(ToolChecks.Of(Stack(("a", new() { Mass = 1, Shape = SolidKind.Tube, Diameter = 0.1, InnerDiameter = 0.1, Height = 0.1 }))).Findings[0]);
        Assert.Equal(("/tool/parts/a/innerDiameter", ToolReasons.InnerTooLarge), (wrong.Subject.Pointer, wrong.Detail));
        var file = Assert.IsType<Unjudged>(ToolChecks.Of(Stack(("a", new() { Mass = 1, Shape = SolidKind.Mesh, Mesh = new() { File = "a.stl" } }))).Findings[0]);
        Assert.Equal(ToolReasons.MeshNotRead, file.Detail);
    }

    /// <summary>One truth: the weight that dynamics moves is that of platform and stack, and the axis turns what hangs on it.</summary>
    [Fact]
    public void Dynamics_moves_what_the_stack_sums_to()
    {
        var cell = DynamicsInputsTests.RailWith(Whole.Tool, new() { Fitted = true, TravelFrom = -3, TravelTo = 3, Friction = 0 }, Whole.Brief);
        var sums = ToolSums.Of(cell, new())!;
        var empty = DynamicsInputs.Read(cell, null, new()).Dynamics!;
        var loaded = DynamicsInputs.Read(cell, "tin", new()).Dynamics!;
        double bare = cell.Robot.PlatformMass!.Value;
        Assert.Equal(bare + sums.Empty.Body.Mass, empty.Platform.Mass + empty.Platform.Turning.Mass, 12);
        Assert.Equal(bare + sums.Heaviest.Body.Mass, loaded.Platform.Mass + loaded.Platform.Turning.Mass, 12);
        double hung = 2 * 0.02 * ((0.01 * 0.01 + 0.02 * 0.02) / 12 + 0.02 * 0.02);
        Assert.Equal(hung, empty.Platform.Turning.Inertia, 15);
        Assert.Equal(hung + 0.1 * (2 * 0.05 * 0.05) / 12, loaded.Platform.Turning.Inertia, 15);
    }
}
