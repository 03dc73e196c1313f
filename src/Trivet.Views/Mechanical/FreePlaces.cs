using Trivet.Numerics;

namespace Trivet.Views.Mechanical;

/// <summary>What already stands in a view, so that the next text or leader is placed free of it. Millimetres of the paper.</summary>
internal sealed class FreePlaces
{
    // A text's height over its type, and the room about it.
    private const double Height = 0.8, Room = 0.4;
    // What it costs to stand on another text, on a hole, on a line: a text must never be covered, a thin line may be.
    private const double OnText = 100, OnHole = 10, OnLine = 3;

    private readonly List<(Vec2 Middle, double Radius)> _holes = [];
    private readonly List<(Vec2 Least, Vec2 Most)> _texts = [];
    private readonly List<(Vec2 From, Vec2 To)> _lines = [];

    public void Hole(Vec2 middle, double radius) => _holes.Add((middle, radius));

    public void Line(Vec2 from, Vec2 to) => _lines.Add((from, to));

    /// <param name="at">Left end of the text's base line.</param>
    public void Text(Vec2 at, double width, double size) => _texts.Add(BoxOf(at, width, size));

    /// <summary>The candidate that covers least, the earlier where they are equal; it then counts as placed.</summary>
    /// <param name="candidates">Left ends of the base line.</param>
    public Vec2 Place(IEnumerable<Vec2> candidates, double width, double size)
    {
        Vec2 best = default;
        double least = double.PositiveInfinity;
        foreach (var at in candidates)
        {
            double cost = CostOfText(at, width, size);
            if (cost < least) (least, best) = (cost, at);
            if (cost == 0) break;
        }
        Text(best, width, size);
        return best;
    }

    public double CostOfText(Vec2 at, double width, double size)
    {
        var box = BoxOf(at, width, size);
        double cost = 0;
        foreach (var (least, most) in _texts)
            if (box.Least.X < most.X && least.X < box.Most.X && box.Least.Y < most.Y && least.Y < box.Most.Y) cost += OnText;
        foreach (var (middle, radius) in _holes)
        {
            Vec2 near = new(Math.Clamp(middle.X, box.Least.X, box.Most.X), Math.Clamp(middle.Y, box.Least.Y, box.Most.Y));
            if ((near - middle).Norm < radius) cost += OnHole;
        }
        foreach (var (from, to) in _lines)
            if (Meets(box, from, to)) cost += OnLine;
        return cost;
    }

    /// <summary>What a leader from its arrow to its text would cross.</summary>
    public double CostOfLeader(Vec2 to, Vec2 from)
    {
        double cost = 0;
        foreach (var box in _texts)
            if (Meets(box, from, to)) cost += OnText;
        foreach (var (middle, radius) in _holes)
            if (Distance(middle, from, to) < radius + Room) cost += OnHole;
        foreach (var line in _lines)
            if (Cross(from, to, line.From, line.To)) cost += OnLine;
        return cost;
    }

    private static bool Cross(Vec2 a, Vec2 b, Vec2 c, Vec2 d) =>
        (b - a).Cross(c - a) * (b - a).Cross(d - a) < 0 && (d - c).Cross(a - c) * (d - c).Cross(b - c) < 0;

    private static double Distance(Vec2 p, Vec2 a, Vec2 b)
    {
        double t = Math.Clamp((p - a).Dot(b - a) / Math.Max((b - a).NormSquared, 1e-12), 0, 1);
        return (a + t * (b - a) - p).Norm;
    }

    /// <summary>Whether a stretch passes through a box: an end lies in it, or it crosses a diagonal.</summary>
    private static bool Meets((Vec2 Least, Vec2 Most) box, Vec2 a, Vec2 b) =>
        Within(box, a) || Within(box, b) || Cross(a, b, box.Least, box.Most) || Cross(a, b, new(box.Least.X, box.Most.Y), new(box.Most.X, box.Least.Y));

    private static bool Within((Vec2 Least, Vec2 Most) box, Vec2 p) => p.X > box.Least.X && p.X < box.Most.X && p.Y > box.Least.Y && p.Y < box.Most.Y;

    private static (Vec2 Least, Vec2 Most) BoxOf(Vec2 at, double width, double size) => (at - new Vec2(Room, Room), at + new Vec2(width + Room, Height * size + Room));
}
