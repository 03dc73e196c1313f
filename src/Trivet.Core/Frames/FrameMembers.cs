using System.Collections.Immutable;
using Trivet.Cells;
using Trivet.Findings;
using Trivet.Numerics;

namespace Trivet.Frames;

/// <summary>A straight member of the frame, whether stated by itself or by the box.</summary>
/// <param name="Id">The member's id, or what it is in the box: <c>post-front-1</c>.</param>
/// <param name="Pointer">What states it.</param>
/// <param name="From">Where its axis begins, cell frame, metres.</param>
/// <param name="Profile">Id of its profile; null where not stated.</param>
/// <param name="Width">Of its section: level, or along x where the member is upright, metres; not a number where not stated.</param>
public sealed record FrameBar(string Id, string Pointer, Vec3 From, Vec3 To, string? Profile, double Width, double Height)
{
    public bool IsPlaced => From.IsFinite && To.IsFinite;

    public double Length => (To - From).Norm;
}

/// <summary>Lists the members of a frame: those of the box, posts first, then the free ones in their order.</summary>
public static class FrameMembers
{
    public const string BoxPointer = "/frame/box";

    public static bool Any(CellFrame frame) => frame.Box.Width is not null || !frame.Members.IsEmpty;

    /// <summary>Members whose fields are missing have coordinates or sections that are not numbers; the reading lists what they lack.</summary>
    public static ImmutableArray<FrameBar> Of(CellFrame frame, Reading reading)
    {
        reading.Used("/frame/members", string.Join('\n', frame.Members.Keys));
        reading.Used(BoxPointer + "/width", frame.Box.Width);
        return [.. frame.Box.Width is null ? [] : Box(frame, reading), .. frame.Members.InOrder().Select(m => Free(frame, m.Key, m.Value, reading))];
    }

    private static FrameBar Free(CellFrame frame, string id, FrameMember member, Reading reading)
    {
        string at = $"/frame/members/{id}";
        var from = new Vec3(reading.Need(member.FromX, at + "/fromX"), reading.Need(member.FromY, at + "/fromY"), reading.Need(member.FromZ, at + "/fromZ"));
        var to = new Vec3(reading.Need(member.ToX, at + "/toX"), reading.Need(member.ToY, at + "/toY"), reading.Need(member.ToZ, at + "/toZ"));
        var (width, height) = Section(frame, member.Profile, reading);
        reading.Used(at + "/profile", member.Profile);
        reading.Used(at + "/order", member.Order);
        return new(
            id, at, from, to, member.Profile, reading.Need(member.SectionWidth ?? Stated(width), at + "/sectionWidth"),
            reading.Need(member.SectionHeight ?? Stated(height), at + "/sectionHeight"));
    }

    private static double? Stated(double value) => double.IsNaN(value) ? null : value;

    private static (double Width, double Height) Section(CellFrame frame, string? profile, Reading reading)
    {
        if (profile is null || !frame.Profiles.TryGetValue(profile, out var section)) return (double.NaN, double.NaN);
        reading.Used($"/frame/profiles/{profile}/width", section.Width);
        reading.Used($"/frame/profiles/{profile}/height", section.Height);
        return (section.Width ?? double.NaN, section.Height ?? double.NaN);
    }

    private static IEnumerable<FrameBar> Box(CellFrame frame, Reading reading)
    {
        var box = frame.Box;
        double width = reading.Need(box.Width, BoxPointer + "/width"), depth = reading.Need(box.Depth, BoxPointer + "/depth");
        double height = reading.Need(box.Height, BoxPointer + "/height");
        double x0 = reading.Or(box.CentreX, BoxPointer + "/centreX", 0) - width / 2, y0 = reading.Or(box.CentreY, BoxPointer + "/centreY", 0) - depth / 2;
        int bays = Math.Clamp(reading.Or(box.Bays, BoxPointer + "/bays", 1), 1, 20);
        reading.Used(BoxPointer + "/lowBeams", box.LowBeams);
        int across = Math.Clamp(reading.Or(box.CrossBeams, BoxPointer + "/crossBeams", 0), 0, 20);
        double spacing = across > 1 ? reading.Need(box.CrossBeamSpacing, BoxPointer + "/crossBeamSpacing") : 0;
        var braces = reading.Or(box.Braces, BoxPointer + "/braces", BoxBraces.None);
        string? post = Profile("postProfile", box.PostProfile), beam = Profile("beamProfile", box.BeamProfile) ?? post;
        string? cross = Profile("crossBeamProfile", box.CrossBeamProfile) ?? beam, brace = Profile("braceProfile", box.BraceProfile) ?? beam;
        double[] xs = [.. Enumerable.Range(0, bays + 1).Select(i => x0 + width * i / bays)];
        (double Y, string Name)[] rows = [(y0, "front"), (y0 + depth, "back")];
        double[] levels = box.LowBeams is { } low ? [low, height] : [height];

        foreach (var (y, name) in rows)
            for (int i = 0; i <= bays; i++) yield return Bar($"post-{name}-{i + 1}", new(xs[i], y, 0), new(xs[i], y, height), post);
        foreach (double z in levels)
        {
            string level = z == height ? "upper" : "lower";
            foreach (var (y, name) in rows)
                for (int i = 0; i < bays; i++) yield return Bar($"{level}-{name}-{i + 1}", new(xs[i], y, z), new(xs[i + 1], y, z), beam);
            for (int i = 0; i <= bays; i++) yield return Bar($"{level}-side-{i + 1}", new(xs[i], y0, z), new(xs[i], y0 + depth, z), beam);
        }

        for (int i = 0; i < across; i++)
        {
            double x = x0 + width / 2 + (i - (across - 1) / 2.0) * spacing;
            yield return Bar($"cross-{i + 1}", new(x, y0, height), new(x, y0 + depth, height), cross);
        }

        double foot = levels.Length > 1 ? levels[0] : Math.Min(0.1 * height, 0.1);
        foreach (var (y, name) in rows)
        {
            if (!(braces == BoxBraces.All || name == "back" && braces is BoxBraces.Back or BoxBraces.BackAndSides)) continue;
            for (int i = 0; i < bays; i++) yield return Bar($"brace-{name}-{i + 1}", new(xs[i], y, foot), new(xs[i + 1], y, height), brace);
        }

        if (braces is BoxBraces.Sides or BoxBraces.BackAndSides or BoxBraces.All)
            foreach (int i in new[] { 0, bays }) yield return Bar($"brace-side-{i + 1}", new(xs[i], y0, foot), new(xs[i], y0 + depth, height), brace);

        string? Profile(string field, string? id)
        {
            reading.Used($"{BoxPointer}/{field}", id);
            return id;
        }

        FrameBar Bar(string id, Vec3 from, Vec3 to, string? profile)
        {
            var (w, h) = Section(frame, profile, reading);
            return new(id, BoxPointer, from, to, profile, w, h);
        }
    }
}
