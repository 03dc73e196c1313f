using System.Collections.Immutable;
using Trivet.Numerics;
using Trivet.Numerics.Sparse;

namespace Trivet.Frames;

/// <summary>A corner of the frame that can be measured: foot or top of a post, with its place by the drawing.</summary>
/// <param name="Name">"post-front-left.top".</param>
public sealed record SetUpPoint(string Name, Vec3 P);

public enum SetUpKind
{
    /// <summary>By tape, between two corners.</summary>
    Distance,
    /// <summary>By water level or laser, of one corner above a horizon that is the same for all.</summary>
    Height,
    /// <summary>By spirit level laid from one corner towards another, read twice, the level turned end for end between.</summary>
    Level,
}

/// <summary>A reading at the standing frame.</summary>
/// <param name="To">Index of the other corner; −1 for a height.</param>
/// <param name="Value">Metres; for a level the slope upward towards the other corner, m/m, its own zero error taken out.</param>
/// <param name="Uncertainty">Standard uncertainty, in the same unit.</param>
public readonly record struct SetUpReading(SetUpKind Kind, int From, int To, double Value, double Uncertainty);

/// <summary>What is asked of the standing frame.</summary>
/// <param name="Id">"level-x", "square-…", "twist".</param>
/// <param name="Value">m/m.</param>
/// <param name="Uncertainty">Standard uncertainty, m/m.</param>
/// <param name="Limit">Largest either way, m/m; common practice, no source.</param>
public sealed record SetUpQuantity(string Id, string Corner, string Other, double Value, double Uncertainty, double Limit)
{
    /// <summary>Within its limit beyond doubt; null where two standard uncertainties reach over it.</summary>
    public bool? Within => Math.Abs(Value) + 2 * Uncertainty <= Limit ? true : Math.Abs(Value) - 2 * Uncertainty > Limit ? false : null;
}

/// <summary>How far a foot is to be raised.</summary>
/// <param name="Raise">Metres, never below zero: the highest stays.</param>
/// <param name="Leave">Less than can be told from nothing.</param>
public sealed record FootTurn(string Foot, double Raise, double Uncertainty, bool Leave);

/// <summary>A reading that is not there yet, and what it would make of the doubt.</summary>
/// <param name="Left">Part of the doubt over all quantities that would be left, 0 to 1.</param>
public sealed record NextReading(SetUpKind Kind, string From, string To, double Left);

/// <summary>
/// Setting up: level, squareness and twist of a frame of posts from readings by tape, level and laser.
/// <para>
/// The corners' displacements from the drawing are the unknowns of a linear least-squares fit with a prior: corners anywhere within some
/// millimetres, members as long as they were cut. Each reading is a row; small angles, so a distance changes by the displacements along it. A spirit level that is turned
/// end for end reads slope plus zero error, then zero error less slope: half the difference is the slope. What is asked are linear functions of
/// the displacements, and their uncertainty follows from the fit's covariance.
/// </para>
/// </summary>
public sealed class SettingUp
{
    /// <summary>How far from the drawing a corner may stand, metres, and how well members were cut; common practice, no source.</summary>
    private const double Placed = 0.02, Cut = 0.0005;

    /// <summary>Largest slope, and largest departure from a right angle or of the upper from the lower corners; common practice, no source.</summary>
    public const double LevelLimit = 0.5e-3, SquareLimit = 1e-3;

    /// <summary>Standard uncertainties of a reading by tape, by laser or water level, by a level read twice; common practice, no source.</summary>
    public const double TapeUncertainty = 0.0005, HeightUncertainty = 0.0005, LevelUncertainty = 0.1e-3;

    private readonly ImmutableArray<Vec3> _posts;
    private readonly int[] _around;
    private readonly SparseFactor _factor;
    private readonly double[] _moved;

    private SettingUp(ImmutableArray<SetUpPoint> points, ImmutableArray<SetUpReading> readings)
    {
        (Points, Readings) = (points, readings);
        _posts = [.. Enumerable.Range(0, points.Length / 2).Select(i => points[2 * i].P)];
        var middle = _posts.Aggregate(Vec3.Zero, (a, b) => a + b) / _posts.Length;
        _around = [.. Enumerable.Range(0, _posts.Length).OrderBy(i => Math.Atan2(_posts[i].Y - middle.Y, _posts[i].X - middle.X))];

        // Three unknowns to a corner, and the horizon of the heights.
        int[] groups = [.. points.Select(_ => 3), 1];
        var patches = new List<Patch>();
        for (int i = 0; i < points.Length; i++)
            patches.Add(new([3 * i, 3 * i + 1, 3 * i + 2], [Weight(Placed), 0, 0, 0, Weight(Placed), 0, 0, 0, Weight(Placed)]));
        patches.Add(new([3 * points.Length], [Weight(100)]));
        var right = new double[3 * points.Length + 1];
        foreach (var (row, value, uncertainty) in Members().Concat(readings.Select(Row)))
        {
            var patch = Square(row, Weight(uncertainty));
            patches.Add(patch);
            foreach (var (unknown, factor) in row) right[unknown] += Weight(uncertainty) * factor * value;
        }

        _factor = SparseFactor.Of(new(groups, [.. patches.Select(p => p.Unknowns)]), patches);
        _factor.Solve(right);
        _moved = right;
        Quantities = [.. Asked().Select(q => new SetUpQuantity(q.Id, q.Corner, q.Other, Value(q.Row), Uncertainty(q.Row), q.Limit))];
        Turns = Feet();
    }

    public ImmutableArray<SetUpPoint> Points { get; }
    public ImmutableArray<SetUpReading> Readings { get; }
    public ImmutableArray<SetUpQuantity> Quantities { get; }
    public ImmutableArray<FootTurn> Turns { get; }

    public static SettingUp Of(ImmutableArray<SetUpPoint> points, ImmutableArray<SetUpReading> readings) => new(points, readings);

    /// <summary>Foot and top of each post: of each upright member that stands on the floor; fewer than three posts have nothing to set up.</summary>
    public static ImmutableArray<SetUpPoint> PointsOf(ImmutableArray<FrameBar> bars)
    {
        var points = ImmutableArray.CreateBuilder<SetUpPoint>();
        foreach (var bar in bars)
        {
            bool up = FrameInputs.IsFoot(bar.From);
            if (!bar.IsPlaced || !(up || FrameInputs.IsFoot(bar.To)) || Math.Abs(bar.To.Z - bar.From.Z) < 0.9 * bar.Length) continue;
            points.Add(new(bar.Id + ".foot", up ? bar.From : bar.To));
            points.Add(new(bar.Id + ".top", up ? bar.To : bar.From));
        }

        return points.Count >= 6 ? points.ToImmutable() : [];
    }

    /// <summary>What to measure next, the most telling first: each taken alone, with the usual instruments.</summary>
    public ImmutableArray<NextReading> Next(int most)
    {
        var asked = Asked().Select(q => (q.Row, q.Limit)).ToArray();
        double doubt = Quantities.Sum(q => q.Uncertainty * q.Uncertainty / (q.Limit * q.Limit));
        var next = new List<NextReading>();
        foreach (var candidate in Candidates().Where(c => !Readings.Any(r => r.Kind == c.Kind && ((r.From, r.To) == (c.From, c.To) || (r.To, r.From) == (c.From, c.To)))))
        {
            var (row, _, uncertainty) = Row(candidate);
            var spread = Spread(row);
            double own = Dot(row, spread) + uncertainty * uncertainty;
            // A reading takes from the variance of c what it has in common with it: (cᵀ·N⁻¹·a)² / (σ² + aᵀ·N⁻¹·a).
            double taken = asked.Sum(q => Math.Pow(Dot(q.Row, spread), 2) / own / (q.Limit * q.Limit));
            next.Add(new(candidate.Kind, Points[candidate.From].Name, candidate.To < 0 ? "" : Points[candidate.To].Name, 1 - taken / doubt));
        }

        return [.. next.OrderBy(n => n.Left).ThenBy(n => n.From, StringComparer.Ordinal).ThenBy(n => n.To, StringComparer.Ordinal).Take(most)];
    }

    private static double Weight(double uncertainty) => 1 / (uncertainty * uncertainty);

    private int Foot(int post) => 2 * post;

    private int Top(int post) => 2 * post + 1;

    private IEnumerable<(int A, int B)> Faces() => _around.Length < 3 ? [] : _around.Select((p, i) => (p, _around[(i + 1) % _around.Length]));

    /// <summary>Posts and the beams between neighbouring posts, as long as they were cut.</summary>
    private IEnumerable<((int, double)[] Row, double Value, double Uncertainty)> Members()
    {
        for (int i = 0; i < _posts.Length; i++) yield return (Along(Foot(i), Top(i)), 0, Cut);
        foreach (var (a, b) in Faces())
        {
            yield return (Along(Foot(a), Foot(b)), 0, 2 * Cut);
            yield return (Along(Top(a), Top(b)), 0, Cut);
        }
    }

    private ((int, double)[] Row, double Value, double Uncertainty) Row(SetUpReading r)
    {
        switch (r.Kind)
        {
            case SetUpKind.Distance:
                return (Along(r.From, r.To), r.Value - (Points[r.To].P - Points[r.From].P).Norm, r.Uncertainty);
            case SetUpKind.Height:
                return ([(3 * r.From + 2, 1), (3 * Points.Length, -1)], r.Value - Points[r.From].P.Z, r.Uncertainty);
            default:
                var way = Points[r.To].P - Points[r.From].P;
                double level = (way with { Z = 0 }).Norm;
                return ([(3 * r.To + 2, 1 / level), (3 * r.From + 2, -1 / level)], r.Value - way.Z / level, r.Uncertainty);
        }
    }

    private (int, double)[] Along(int a, int b)
    {
        var way = (Points[b].P - Points[a].P).Unit();
        return [.. Enumerable.Range(0, 3).Select(i => (3 * b + i, way[i])), .. Enumerable.Range(0, 3).Select(i => (3 * a + i, -way[i]))];
    }

    private static Patch Square((int Unknown, double Factor)[] row, double weight)
    {
        int m = row.Length;
        var values = new double[m * m];
        for (int i = 0; i < m; i++)
            for (int j = 0; j < m; j++) values[i * m + j] = weight * row[i].Factor * row[j].Factor;
        return new([.. row.Select(r => r.Unknown)], values);
    }

    private IEnumerable<(string Id, string Corner, string Other, (int, double)[] Row, double Limit)> Asked()
    {
        int[] tops = [.. Enumerable.Range(0, _posts.Length).Select(Top)];
        yield return ("level-x", "", "", Slope(tops, p => p.X), LevelLimit);
        yield return ("level-y", "", "", Slope(tops, p => p.Y), LevelLimit);
        foreach (var (a, b) in Faces())
            yield return ("square-side", Name(a), Name(b), Shear(Foot(a), Foot(b), Top(a), Top(b)), SquareLimit);
        if (_around.Length != 4) yield break;
        int[] order = [.. _around];
        yield return ("square-top", "", "", Shear(Top(order[0]), Top(order[1]), Top(order[3]), Top(order[2])), SquareLimit);
        yield return ("twist", "", "", [.. Turn([.. order.Select(Top)], 1), .. Turn([.. order.Select(Foot)], -1)], SquareLimit);
    }

    private string Name(int post) => Points[Foot(post)].Name[..^".foot".Length];

    /// <summary>Slope of the plane through corners along one direction, by least squares; the directions of a rectangle don't mix.</summary>
    private (int, double)[] Slope(int[] corners, Func<Vec3, double> along)
    {
        double middle = corners.Average(c => along(Points[c].P)), sum = corners.Sum(c => Math.Pow(along(Points[c].P) - middle, 2));
        return [.. corners.Select(c => (3 * c + 2, (along(Points[c].P) - middle) / sum))];
    }

    /// <summary>By how much the angle at the first corner is less than it was drawn: the mean lean of both uprights and the mean slope of both sills.</summary>
    private (int, double)[] Shear(int a, int b, int above, int beyond)
    {
        Vec3 sill = Points[b].P - Points[a].P, rise = Points[above].P - Points[a].P, x = sill.Unit(), y = rise.Unit();
        var row = new List<(int, double)>();
        Add(above, x, 0.5 / rise.Norm);
        Add(a, x, -0.5 / rise.Norm);
        Add(beyond, x, 0.5 / rise.Norm);
        Add(b, x, -0.5 / rise.Norm);
        Add(b, y, 0.5 / sill.Norm);
        Add(a, y, -0.5 / sill.Norm);
        Add(beyond, y, 0.5 / sill.Norm);
        Add(above, y, -0.5 / sill.Norm);
        return [.. row];

        void Add(int corner, Vec3 direction, double factor) => row.AddRange(Enumerable.Range(0, 3).Select(i => (3 * corner + i, factor * direction[i])));
    }

    /// <summary>Mean turn of corners about the upright.</summary>
    private IEnumerable<(int, double)> Turn(int[] corners, double sign)
    {
        var middle = corners.Aggregate(Vec3.Zero, (sum, c) => sum + Points[c].P) / corners.Length;
        double square = corners.Sum(c => ((Points[c].P - middle) with { Z = 0 }).NormSquared);
        foreach (int c in corners)
        {
            var r = Points[c].P - middle;
            yield return (3 * c, -sign * r.Y / square);
            yield return (3 * c + 1, sign * r.X / square);
        }
    }

    private double[] Spread((int Unknown, double Factor)[] row)
    {
        var x = new double[_moved.Length];
        foreach (var (unknown, factor) in row) x[unknown] += factor;
        _factor.Solve(x);
        return x;
    }

    private static double Dot((int Unknown, double Factor)[] row, double[] x) => row.Sum(r => r.Factor * x[r.Unknown]);

    private double Value((int, double)[] row) => Dot(row, _moved);

    private double Uncertainty((int, double)[] row) => Math.Sqrt(Math.Max(0, Dot(row, Spread(row))));

    /// <summary>Each foot is raised until its post's top is as high as the highest: so no foot loses the floor.</summary>
    private ImmutableArray<FootTurn> Feet()
    {
        double[] z = [.. Enumerable.Range(0, _posts.Length).Select(i => Points[Top(i)].P.Z + _moved[3 * Top(i) + 2])];
        int highest = Enumerable.Range(0, z.Length).MaxBy(i => z[i]);
        return [.. Enumerable.Range(0, z.Length).Select(i =>
        {
            double raise = z[highest] - z[i], doubt = i == highest ? 0 : Uncertainty([(3 * Top(highest) + 2, 1), (3 * Top(i) + 2, -1)]);
            return new FootTurn(Name(i), raise, doubt, !(raise > 2 * doubt) || raise < 5e-5);
        })];
    }

    private IEnumerable<SetUpReading> Candidates()
    {
        foreach (var (a, b) in Faces())
        {
            yield return new(SetUpKind.Distance, Foot(a), Top(b), 0, TapeUncertainty);
            yield return new(SetUpKind.Distance, Top(a), Foot(b), 0, TapeUncertainty);
            yield return new(SetUpKind.Level, Top(a), Top(b), 0, LevelUncertainty);
        }

        if (_around.Length == 4)
        {
            for (int i = 0; i < 2; i++)
            {
                yield return new(SetUpKind.Distance, Top(_around[i]), Top(_around[i + 2]), 0, TapeUncertainty);
                yield return new(SetUpKind.Distance, Foot(_around[i]), Foot(_around[i + 2]), 0, TapeUncertainty);
            }
        }

        for (int i = 0; i < _posts.Length; i++) yield return new(SetUpKind.Height, Top(i), -1, 0, HeightUncertainty);
    }
}
