using System.Collections.Immutable;
using Trivet.Cells;
using Trivet.Fasteners;
using Trivet.Findings;
using Trivet.Numerics;

namespace Trivet.Adapters;

/// <summary>The outline of a part's mounting face about the pattern's middle, metres: round where a diameter is given, else a rectangle.</summary>
public readonly record struct MountingFace(double Diameter, double Width, double Depth, double Turn = 0)
{
    // A face whose size nobody stated may lie over all of the plate.
    private const double Unknown = 0.4;

    public static MountingFace Covering => new(Unknown, double.NaN, double.NaN);

    public static MountingFace Round(double diameter) => new(diameter, double.NaN, double.NaN);

    public static MountingFace Rectangle(double width, double depth) => new(double.NaN, width, depth);

    public bool IsRound => Diameter > 0;

    /// <summary>Largest distance of the outline from the middle.</summary>
    public double Reach => IsRound ? Diameter / 2 : Math.Sqrt(Width * Width + Depth * Depth) / 2;

    /// <summary>How far a point lies outside the outline; negative within.</summary>
    public double Beyond(Vec2 p)
    {
        if (IsRound) return p.Norm - Diameter / 2;
        var local = p.Turned(-Turn);
        double x = Math.Abs(local.X) - Width / 2, y = Math.Abs(local.Y) - Depth / 2;
        return x > 0 && y > 0 ? Math.Sqrt(x * x + y * y) : Math.Max(x, y);
    }

    public MountingFace Turned(double angle) => this with { Turn = Turn + angle };
}

/// <summary>A hole for a locating pin.</summary>
public readonly record struct LocatingPin(double Diameter, Vec2 At);

/// <summary>
/// A part's mounting face with all that a plate or a joint needs of it. Positions in metres, seen from above, in the face's own axes.
/// </summary>
/// <param name="Tapped">The part has threads; otherwise the screws pass it.</param>
/// <param name="ThreadDepth">Full thread from the face; where it is not tapped not a number.</param>
/// <param name="Grip">What the heads clamp of the part, where it is not tapped; not a number where nobody stated it.</param>
/// <param name="CentringDepth">Height of the boss or depth of the bore.</param>
public sealed record BoltPattern(
    string Name, ImmutableArray<Vec2> Points, MetricThread Thread, bool Tapped, double ThreadDepth, double Grip, Stuff Stuff,
    Centring Centring, double CentringDiameter, double CentringDepth, ImmutableArray<LocatingPin> Pins, MountingFace Face)
{
    /// <summary>Mean distance of the holes from the middle.</summary>
    public double Radius => Points.Average(p => p.Norm);

    /// <summary>Turned about its middle, counter-clockwise seen from above.</summary>
    public BoltPattern Turned(double angle) => this with
    {
        Points = [.. Points.Select(p => p.Turned(angle))],
        Pins = [.. Pins.Select(p => p with { At = p.At.Turned(angle) })],
        Face = Face.Turned(angle),
    };

    /// <summary>Into how many equal turns the pattern with its face can be divided without a difference.</summary>
    public int Symmetry()
    {
        const double Same = 1e-6;
        if (Pins.Length > 0) return 1;
        for (int k = Points.Length; k > 1; k--)
        {
            if (!Face.IsRound && (k > 4 || 4 % k != 0 || (k == 4 && Math.Abs(Face.Width - Face.Depth) > Same))) continue;
            double turn = 2 * Math.PI / k;
            if (Points.All(p => Points.Any(q => (p.Turned(turn) - q).Norm < Same))) return k;
        }
        return 1;
    }

    /// <summary>Reads the interface or standard that a field names; null where it is missing or can not be as stated.</summary>
    /// <param name="named">Pointer of that field.</param>
    public static BoltPattern? Read(Cell cell, string? name, string named, Reading reading, ICollection<Contradiction> wrong)
    {
        reading.Used(named, name);
        if (string.IsNullOrWhiteSpace(name))
        {
            reading.Missing(named);
            return null;
        }
        reading.Used("/interfaces", string.Join('\n', cell.Interfaces.Keys));
        if (cell.Interfaces.TryGetValue(name, out var own)) return Own(cell, name, own, reading, wrong);
        if (StandardPatterns.Find(name) is { } standard) return standard.Pattern(cell, named, reading);
        wrong.Add(new(named, AdapterReasons.NoSuchInterface.Naming([.. cell.Interfaces.Keys.Select(k => $"/interfaces/{k}")])));
        return null;
    }

    private static BoltPattern? Own(Cell cell, string id, Interface own, Reading reading, ICollection<Contradiction> wrong)
    {
        string at = $"/interfaces/{id}";
        reading.Used($"{at}/standard", own.Standard);
        BoltPattern? standard = null;
        if (!string.IsNullOrWhiteSpace(own.Standard))
        {
            if (StandardPatterns.Find(own.Standard) is { } found) standard = found.Pattern(cell, $"{at}/standard", reading);
            else
            {
                wrong.Add(new($"{at}/standard", AdapterReasons.NoSuchStandard));
                return null;
            }
        }

        var points = PointsOf(own, at, standard, reading);
        reading.Used($"{at}/thread", own.Thread);
        var thread = own.Thread is null ? standard?.Thread : MetricThread.Find(own.Thread);
        if (own.Thread is null && thread is null) reading.Missing($"{at}/thread");
        else if (thread is null) wrong.Add(new($"{at}/thread", AdapterReasons.NoSuchThread));
        bool tapped = standard is null ? reading.Need(own.Tapped, $"{at}/tapped", true) : reading.Or(own.Tapped, $"{at}/tapped", standard.Tapped);
        double threadDepth = !tapped ? double.NaN : Take(own.ThreadDepth, "threadDepth", standard is { Tapped: true } ? standard.ThreadDepth : null);
        double grip = tapped ? double.NaN : reading.Or(own.Grip, $"{at}/grip", standard?.Grip ?? double.NaN);
        reading.Used($"{at}/material", own.Material);
        var stuff = Stuff.Read(cell, own.Material ?? "steel", $"{at}/material", reading);
        var centring = reading.Or(own.Centring, $"{at}/centring", standard?.Centring ?? Centring.None);
        bool centred = centring != Centring.None;
        double diameter = centred ? Take(own.CentringDiameter, "centringDiameter", standard?.Centring == centring ? standard.CentringDiameter : null) : 0;
        double depth = centred ? Take(own.CentringDepth, "centringDepth", standard?.Centring == centring ? standard.CentringDepth : null) : 0;
        LocatingPin? pin = standard?.Pins is [var first, ..] ? first : null;
        double pinDiameter = reading.Or(own.PinDiameter, $"{at}/pinDiameter", pin?.Diameter ?? 0);
        if (pinDiameter > 0)
        {
            double circle = Take(own.PinCircle, "pinCircle", pin is { } p ? 2 * p.At.Norm : null);
            pin = new(pinDiameter, Vec2.Polar(circle / 2, reading.Or(own.PinAngle, $"{at}/pinAngle", pin is { } q ? Math.Atan2(q.At.Y, q.At.X) : 0)));
        }
        var face = FaceOf(own, at, standard, reading);
        if (points is null || thread is null || stuff is null || !reading.Complete) return null;
        double[] lengths = [.. new[] { threadDepth, grip, diameter, depth, pinDiameter }.Where(l => !double.IsNaN(l))];
        if (lengths.Any(l => l < 0) || (centred && !(diameter > 0)) || (tapped && !(threadDepth > 0)))
        {
            wrong.Add(new(at, AdapterReasons.NotPositive));
            return null;
        }
        return new(own.Name ?? id, points.Value, thread, tapped, threadDepth, grip, stuff, centring, diameter, depth, pin is { } one ? [one] : [], face);

        double Take(double? value, string field, double? fallback) => fallback is { } f ? reading.Or(value, $"{at}/{field}", f) : reading.Need(value, $"{at}/{field}");
    }

    private static ImmutableArray<Vec2>? PointsOf(Interface own, string at, BoltPattern? standard, Reading reading)
    {
        reading.Used($"{at}/shape", own.Shape);
        if (own.Shape is null && standard is not null) return standard.Points;
        switch (reading.Need(own.Shape, $"{at}/shape", PatternShape.Circle))
        {
            case PatternShape.Circle:
                double circle = reading.Need(own.Circle, $"{at}/circle"), start = reading.Or(own.StartAngle, $"{at}/startAngle", 0);
                int holes = reading.Need(own.Holes, $"{at}/holes", 0);
                return circle > 0 && holes is > 0 and <= 64 ? [.. Enumerable.Range(0, holes).Select(i => Vec2.Polar(circle / 2, start + 2 * Math.PI * i / holes))] : null;
            case PatternShape.Rectangle:
                double w = reading.Need(own.Width, $"{at}/width") / 2, d = reading.Need(own.Depth, $"{at}/depth") / 2;
                return w > 0 && d > 0 ? [new(w, d), new(-w, d), new(-w, -d), new(w, -d)] : null;
            default:
                reading.Used($"{at}/points", string.Join('\n', own.Points.Keys));
                if (own.Points.IsEmpty) reading.Missing($"{at}/points");
                Vec2[] points = [.. own.Points.InOrder().Select(p => new Vec2(reading.Need(p.Value.X, $"{at}/points/{p.Key}/x"), reading.Need(p.Value.Y, $"{at}/points/{p.Key}/y")))];
                foreach (var (key, point) in own.Points) reading.Used($"{at}/points/{key}/order", point.Order);
                return points.Length is > 0 and <= 64 ? [.. points] : null;
        }
    }

    private static MountingFace FaceOf(Interface own, string at, BoltPattern? standard, Reading reading)
    {
        reading.Used($"{at}/faceDiameter", own.FaceDiameter);
        reading.Used($"{at}/faceWidth", own.FaceWidth);
        reading.Used($"{at}/faceDepth", own.FaceDepth);
        if (own.FaceDiameter > 0) return MountingFace.Round(own.FaceDiameter.Value);
        if (own.FaceWidth > 0 && own.FaceDepth > 0) return MountingFace.Rectangle(own.FaceWidth.Value, own.FaceDepth.Value);
        return standard?.Face ?? MountingFace.Covering;
    }
}
