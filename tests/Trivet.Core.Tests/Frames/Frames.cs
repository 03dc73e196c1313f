using System.Collections.Immutable;
using System.Text.Json;
using Trivet.Cells;
using Trivet.Frames;
using Trivet.Numerics;
using Trivet.Testing;

namespace Trivet.Core.Tests.Frames;

/// <summary>Frames for tests.</summary>
internal static class FrameCases
{
    public const double Aluminium = 70e9, AluminiumDensity = 2700, Steel = 210e9, SteelDensity = 7850;

    /// <summary>Tube 40 × 40 × 3, aluminium: R1 of the published values.</summary>
    public static Section Tube40 { get; } = Section.Tube(0.04, 0.04, 0.003, 0.3);

    public static FrameLine Line(Vec3 from, Vec3 to, Section section, double young = Aluminium, double density = AluminiumDensity, string id = "line") =>
        new(new(id, "/frame/members/" + id, from, to, "p", 0.04, 0.04), section.Beam(young, 0.3, density * section.Area), 0.02);

    public static FrameInput Input(FootHold hold, params ImmutableArray<FrameLine> lines) =>
        new(lines, true, double.PositiveInfinity, double.PositiveInfinity, hold, [], null);

    /// <summary>A frame of tests/reference/frames.json.</summary>
    public static FrameInput Reference(string name, Section section)
    {
        using var json = JsonDocument.Parse(File.ReadAllText(ReferenceData.Path("frames.json")));
        var frame = json.RootElement.GetProperty(name);
        ImmutableArray<FrameLine> lines = [.. frame.GetProperty("members").EnumerateArray().Select((m, i) => Line(Point(m[0]), Point(m[1]), section, Steel, SteelDensity, $"m{i}"))];
        ImmutableArray<PointMass> masses = [.. frame.GetProperty("masses").EnumerateArray().Select(m => new PointMass(Point(m[0]), m[1].GetDouble()))];
        return Input(FootHold.Fixed, lines) with { Masses = masses };

        static Vec3 Point(JsonElement p) => new(p[0].GetDouble(), p[1].GetDouble(), p[2].GetDouble());
    }

    public static double[] ReferenceHz(params ReadOnlySpan<string> path)
    {
        using var json = JsonDocument.Parse(File.ReadAllText(ReferenceData.Path("frames.json")));
        var at = json.RootElement;
        foreach (string name in path) at = at.GetProperty(name);
        return [.. at.EnumerateArray().Select(v => v.GetDouble())];
    }

    public static double[] Hz(FrameInput input, int modes, double highest = 400, double joint = double.PositiveInfinity) =>
        [.. FrameSolution.Of(FrameMesh.Of(input, highest), joint, modes).Modes.Select(m => m.Hz)];
}
