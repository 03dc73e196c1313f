using System.Collections.Immutable;
using Trivet.Cells;
using Trivet.Findings;
using Trivet.Numerics;
using Trivet.Numerics.Beams;

namespace Trivet.Frames;

/// <summary>A point with mass, cell frame.</summary>
public readonly record struct PointMass(Vec3 P_C, double Mass);

/// <summary>A member in computing form.</summary>
/// <param name="Reach">Half the diagonal of its section, metres: how far from its axis something may be and still be fastened to it.</param>
public sealed record FrameLine(FrameBar Bar, BeamProperties Beam, double Reach);

/// <summary>How the robot stands on the frame: as a rigid body bolted at points.</summary>
/// <param name="Origin_C">Origin of the base frame, metres.</param>
/// <param name="Bolts_C">Where it is bolted.</param>
/// <param name="Masses">What of the robot goes along with its base.</param>
public sealed record RobotMount(Vec3 Origin_C, ImmutableArray<Vec3> Bolts_C, ImmutableArray<PointMass> Masses);

/// <summary>Everything that the beam model rests on.</summary>
/// <param name="Rigid">Joints do not turn.</param>
/// <param name="JointFrom">Smallest stiffness of a joint, N·m/rad; the model's own choice where joints are rigid.</param>
public sealed record FrameInput(
    ImmutableArray<FrameLine> Lines, bool Rigid, double JointFrom, double JointTo, FootHold Hold, ImmutableArray<PointMass> Masses, RobotMount? Mount)
{
    public double DampingFrom { get; init; } = FrameInputs.UsualDampingFrom;
    public double DampingTo { get; init; } = FrameInputs.UsualDampingTo;
}

/// <summary>What became of reading the frame; null while something is missing (the reading lists it) or a problem stands.</summary>
public sealed record FrameRead(FrameInput? Input, ImmutableArray<Contradiction> Problems);

/// <summary>
/// Reads the frame into computing form. Defaults: joints that may turn, feet held like joints, Poisson's ratio 0.3, half the area of a given section in
/// shear, damping 0.01 to 0.03 (common practice for bolted frames, no source). Material, section and the joints' stiffness are not assumed.
/// </summary>
public static class FrameInputs
{
    internal const double UsualDampingFrom = 0.01, UsualDampingTo = 0.03;
    private const double UsualPoisson = 0.3, UsualShear = 0.5;

    /// <param name="x_CB">Base frame in the cell frame.</param>
    /// <param name="moving">What of the robot moves, where it mostly is: it goes along when the frame sways.</param>
    public static FrameRead Read(CellFrame frame, Pose x_CB, ImmutableArray<PointMass> moving, Reading reading)
    {
        var problems = ImmutableArray.CreateBuilder<Contradiction>();
        var bars = FrameMembers.Of(frame, reading);
        reading.Used("/frame/profiles", string.Join('\n', frame.Profiles.Keys));
        if (frame.Profiles.IsEmpty && bars.Length > 0) reading.Missing("/frame/profiles");
        var profiles = frame.Profiles.ToDictionary(p => p.Key, p => Profile(p.Key, p.Value, reading, problems), StringComparer.Ordinal);
        var lines = ImmutableArray.CreateBuilder<FrameLine>();
        foreach (var bar in bars)
        {
            string field = bar.Pointer == FrameMembers.BoxPointer ? FrameMembers.BoxPointer + "/postProfile" : bar.Pointer + "/profile";
            if (bar.Profile is null)
            {
                reading.Missing(field);
            }
            else if (!profiles.TryGetValue(bar.Profile, out var beam))
            {
                if (!problems.Any(p => p.Pointer == field))
                    problems.Add(new(field, frame.Profiles.IsEmpty ? FrameReasons.NoProfiles : FrameReasons.NoSuchProfile.Naming([.. frame.Profiles.Keys.Select(k => $"/frame/profiles/{k}")])));
            }
            else if (bar.IsPlaced && !(bar.Length > 1e-6))
            {
                problems.Add(new(bar.Pointer, FrameReasons.NoLength));
            }
            else
            {
                double w = Known(bar.Width, 0.04), h = Known(bar.Height, 0.04);
                lines.Add(new(bar, beam, Math.Sqrt(w * w + h * h) / 2));
            }
        }

        bool rigid = reading.Or(frame.Joints.Rigid, "/frame/joints/rigid", false);
        double from = double.PositiveInfinity, to = double.PositiveInfinity;
        if (!rigid)
        {
            from = Positive(reading.Need(frame.Joints.StiffnessFrom, "/frame/joints/stiffnessFrom"), "/frame/joints/stiffnessFrom", problems);
            to = Positive(reading.Need(frame.Joints.StiffnessTo, "/frame/joints/stiffnessTo"), "/frame/joints/stiffnessTo", problems);
            if (from > to) problems.Add(new("/frame/joints/stiffnessFrom", FrameReasons.FromAboveTo.Naming("/frame/joints/stiffnessTo")));
        }

        var hold = reading.Or(frame.Feet.Hold, "/frame/feet/hold", FootHold.Joint);
        double dampingFrom = reading.Or(frame.DampingFrom, "/frame/dampingFrom", Math.Min(UsualDampingFrom, frame.DampingTo ?? 1));
        double dampingTo = reading.Or(frame.DampingTo, "/frame/dampingTo", Math.Max(UsualDampingTo, frame.DampingFrom ?? 0));
        Positive(dampingFrom, "/frame/dampingFrom", problems);
        if (dampingTo >= 0.5) problems.Add(new("/frame/dampingTo", FrameReasons.DampingTooLarge));
        if (dampingFrom > dampingTo) problems.Add(new("/frame/dampingFrom", FrameReasons.FromAboveTo.Naming("/frame/dampingTo")));
        var masses = Masses(frame, reading, problems);
        var bolts = Points(frame, reading);
        double robotMass = NotNegative(reading.Need(frame.RobotMass, "/frame/robotMass"), "/frame/robotMass", problems);
        double centre = reading.Or(frame.RobotCentreZ, "/frame/robotCentreZ", 0);
        if (!reading.Complete || problems.Count > 0) return new(null, problems.ToImmutable());

        var mount = new RobotMount(x_CB.P, bolts, [new(x_CB * new Vec3(0, 0, centre), robotMass), .. moving]);
        if (OnALine(bolts)) problems.Add(new("/frame/mountPoints", FrameReasons.MountOnALine));
        if (!lines.Any(l => IsFoot(l.Bar.From) || IsFoot(l.Bar.To))) problems.Add(new(bars[0].Pointer == FrameMembers.BoxPointer ? FrameMembers.BoxPointer : "/frame/members", FrameReasons.NoFoot));
        foreach (var (id, p) in frame.MountPoints) Near(new(p.X!.Value, p.Y!.Value, p.Z!.Value), $"/frame/mountPoints/{id}");
        foreach (var (id, m) in frame.Masses) Near(new(m.X!.Value, m.Y!.Value, m.Z!.Value), $"/frame/masses/{id}");
        return problems.Count > 0
            ? new(null, problems.ToImmutable())
            : new(new(lines.ToImmutable(), rigid, from, to, hold, masses, mount) { DampingFrom = dampingFrom, DampingTo = dampingTo }, []);

        void Near(Vec3 p, string pointer)
        {
            if (lines.Min(l => Distance(l.Bar, p).Distance - l.Reach) > FarthestFastened) problems.Add(new(pointer, FrameReasons.FarFromMembers));
        }
    }

    /// <summary>A thing that hangs farther than this from the surface of any member was put in the wrong place, metres.</summary>
    private const double FarthestFastened = 0.5;

    /// <summary>Ends this close to the floor stand on it, metres.</summary>
    internal const double OnFloor = 1e-3;

    internal static bool IsFoot(Vec3 p) => Math.Abs(p.Z) <= OnFloor;

    /// <summary>Nearest place on a member's axis: metres from its beginning, and how far away it is.</summary>
    internal static (double Along, double Distance) Distance(FrameBar bar, Vec3 p)
    {
        var axis = (bar.To - bar.From).Unit();
        double s = Math.Clamp((p - bar.From).Dot(axis), 0, bar.Length);
        return (s, (p - bar.From - s * axis).Norm);
    }

    private static BeamProperties Profile(string id, FrameProfile p, Reading reading, ImmutableArray<Contradiction>.Builder problems)
    {
        string at = $"/frame/profiles/{id}";
        double young = Size(p.YoungModulus, "youngModulus"), poisson = reading.Or(p.PoissonRatio, at + "/poissonRatio", UsualPoisson);
        if (poisson is < 0 or >= 0.5) problems.Add(new(at + "/poissonRatio", FrameReasons.NotPositive));
        var kind = reading.Need(p.Kind, at + "/kind", SectionKind.Tube);
        Section section;
        if (kind == SectionKind.Given)
        {
            section = new(
                Size(p.Area, "area"), Size(p.MomentHigh, "momentHigh"), Size(p.MomentWide, "momentWide"), Size(p.TorsionConstant, "torsionConstant"),
                reading.Or(p.ShearHigh, at + "/shearHigh", UsualShear), reading.Or(p.ShearWide, at + "/shearWide", UsualShear));
            if (!(section.ShearZ > 0)) problems.Add(new(at + "/shearHigh", FrameReasons.NotPositive));
            if (!(section.ShearY > 0)) problems.Add(new(at + "/shearWide", FrameReasons.NotPositive));
        }
        else
        {
            double width = Size(p.Width, "width"), height = Size(p.Height, "height"), wall = kind == SectionKind.Tube ? Size(p.Wall, "wall") : 0;
            if (2 * wall >= Math.Min(width, height)) problems.Add(new(at + "/wall", FrameReasons.WallTooThick));
            section = kind == SectionKind.Tube ? Section.Tube(width, height, wall, poisson) : Section.Bar(width, height, poisson);
        }

        reading.Used(at + "/massPerLength", p.MassPerLength);
        double perLength = p.MassPerLength is null ? Size(p.Density, "density") * section.Area : Size(p.MassPerLength, "massPerLength");
        return section.Beam(young, poisson, perLength);

        double Size(double? value, string field) => Positive(reading.Need(value, $"{at}/{field}"), $"{at}/{field}", problems);
    }

    private static ImmutableArray<PointMass> Masses(CellFrame frame, Reading reading, ImmutableArray<Contradiction>.Builder problems)
    {
        reading.Used("/frame/masses", string.Join('\n', frame.Masses.Keys));
        return [.. frame.Masses.InOrder().Select(m =>
        {
            string at = $"/frame/masses/{m.Key}";
            return new PointMass(
                new(reading.Need(m.Value.X, at + "/x"), reading.Need(m.Value.Y, at + "/y"), reading.Need(m.Value.Z, at + "/z")),
                NotNegative(reading.Need(m.Value.Mass, at + "/mass"), at + "/mass", problems));
        })];
    }

    private static ImmutableArray<Vec3> Points(CellFrame frame, Reading reading)
    {
        reading.Used("/frame/mountPoints", string.Join('\n', frame.MountPoints.Keys));
        if (frame.MountPoints.IsEmpty) reading.Missing("/frame/mountPoints");
        return [.. frame.MountPoints.InOrder().Select(p =>
        {
            string at = $"/frame/mountPoints/{p.Key}";
            return new Vec3(reading.Need(p.Value.X, at + "/x"), reading.Need(p.Value.Y, at + "/y"), reading.Need(p.Value.Z, at + "/z"));
        })];
    }

    /// <summary>Fewer than three points, or all on one line: the base could turn about it.</summary>
    private static bool OnALine(ImmutableArray<Vec3> points) =>
        points.Length < 3 || !points.Any(p => points.Any(q => (p - points[0]).Cross(q - points[0]).Norm > 1e-4));

    private static double Known(double value, double otherwise) => double.IsNaN(value) ? otherwise : value;

    private static double Positive(double value, string pointer, ImmutableArray<Contradiction>.Builder problems)
    {
        if (value <= 0) problems.Add(new(pointer, FrameReasons.NotPositive));
        return value;
    }

    private static double NotNegative(double value, string pointer, ImmutableArray<Contradiction>.Builder problems)
    {
        if (value < 0) problems.Add(new(pointer, FrameReasons.Negative));
        return value;
    }
}
