using System.Collections.Immutable;
using Trivet.Numerics;
using Trivet.Views.Pictures;

namespace Trivet.Views.Tests.Pictures;

/// <summary>
/// Hidden lines against points worked out by hand, and against a slow twin that knows nothing of outlines: it looks from points of an edge towards the eye and
/// whether the ray runs inside a solid.
/// </summary>
public sealed class HiddenLinesTests
{
    private static readonly Axonometry Front = Axonometry.From(-Math.PI / 2, 0);

    private static Piece Cube(double x, double y, double z, double half, bool marked = false) => new(ConvexSolid.Box(new(x, y, z), half * Vec3.UnitX, half * Vec3.UnitY, half * Vec3.UnitZ), [], marked);

    /// <summary>Seen from the front, x is to the right and z up: both are squares, and the one behind loses the corner that the near one covers.</summary>
    [Fact]
    public void A_cube_behind_a_cube()
    {
        var lines = LineWork.Once(HiddenLines.Of([Cube(0, 0, 0, 1), Cube(1, 5, 1, 1)], Front).Select(Large));
        string[] drawn = [.. lines.Select(l => FormattableString.Invariant($"{Math.Min(l.X1, l.X2) / 1000:0.###},{Math.Min(l.Y1, l.Y2) / 1000:0.###} {Math.Max(l.X1, l.X2) / 1000:0.###},{Math.Max(l.Y1, l.Y2) / 1000:0.###}")).Order(StringComparer.Ordinal)];
        Assert.Equal(
            ((string[])["-1,-1 -1,1", "-1,-1 1,-1", "-1,1 1,1", "1,-1 1,1", "0,1 0,2", "0,2 2,2", "1,0 2,0", "2,0 2,2"]).Order(StringComparer.Ordinal), drawn);
    }

    [Fact]
    public void A_cube_alone_at_a_slant_shows_nine_edges_of_which_three_are_inner()
    {
        var lines = HiddenLines.Of([Cube(0, 0, 0, 1)], Axonometry.From(-1, 0.5));
        Assert.Equal(6, lines.Count(l => l.Pen == Pen.Outline));
        Assert.Equal(3, lines.Count(l => l.Pen == Pen.Inner));
        Assert.Equal(3, HiddenLines.Of([Cube(0, 0, 0, 1, marked: true)], Axonometry.From(-1, 0.5), behind: true).Count(l => l.Pen == Pen.Behind));
    }

    /// <summary>A bar through a cube: its edges end at the cube's face, and a line shows where.</summary>
    [Fact]
    public void Where_solids_cut_each_other_there_is_a_line()
    {
        var bar = new Piece(ConvexSolid.Box(Vec3.Zero, 0.2 * Vec3.UnitX, 3 * Vec3.UnitY, 0.2 * Vec3.UnitZ), []);
        var view = Axonometry.From(-Math.PI / 3, 0.4);
        var lines = HiddenLines.Of([Cube(0, 0, 0, 1), bar], view);
        // On the near face y = −1 the bar's edges upper and right of its section are hidden behind the bar; those lower and left are where its
        // unseen faces go in. Seen are the lines of its upper and its right face.
        foreach (var (p, q) in ((Vec3, Vec3)[])[(new(-0.2, -1, 0.2), new(0.2, -1, 0.2)), (new(0.2, -1, -0.2), new(0.2, -1, 0.2))])
        {
            var (a, b) = (view.At(p), view.At(q));
            Assert.Contains(lines, l => Is(l, a, b) || Is(l, b, a));
        }

        static bool Is(PageLine l, (double X, double Y) a, (double X, double Y) b) => Math.Abs(l.X1 - a.X) + Math.Abs(l.Y1 - a.Y) + Math.Abs(l.X2 - b.X) + Math.Abs(l.Y2 - b.Y) < 1e-9;
    }

    /// <summary>Two bars end to end, one in the other: their flush faces are one surface without a line across.</summary>
    [Fact]
    public void Flush_faces_of_bodies_in_each_other_are_one()
    {
        var post = new Piece(ConvexSolid.Upright(new(-1, -1, -9), new(1, 1, 1)), []);
        var beam = new Piece(ConvexSolid.Upright(new(0, -1, -1), new(9, 1, 1)), []);
        var lines = LineWork.Once(HiddenLines.Of([post, beam], Axonometry.FromAbove).Select(Large));
        // From above the two are one rectangle: four sides and nothing between.
        Assert.Equal(2 * 10 + 2 * 2, lines.Sum(l => l.Length) / 1000, 1e-6);
    }

    /// <summary>Lengths seen of every edge against the share of its points from which the ray to the eye is free, over eighteen scenes from fixed seeds.</summary>
    [Theory, InlineData(1), InlineData(2), InlineData(3), InlineData(4), InlineData(5), InlineData(6)]
    public void What_is_seen_is_what_rays_to_the_eye_find(int seed)
    {
        var random = new Random(seed);
        for (int scene = 0; scene < 3; scene++)
        {
            var pieces = Scene(random, 7);
            var view = Axonometry.From(Math.Tau * random.NextDouble(), Math.PI * (random.NextDouble() - 0.5));
            foreach (var piece in pieces)
            {
                // One solid marked, so that its edges can be told from the others'; cut lines between solids are heavier than nothing and left to the test above.
                Piece[] one = [.. pieces.Select(p => p with { Marked = ReferenceEquals(p, piece) })];
                double drawn = HiddenLines.Of(one, view, markedOnly: true).Sum(l => l.Length), free = piece.Solid.Edges.Sum(e => RayCast(one, piece.Solid, e, view));
                double whole = piece.Solid.Edges.Sum(e => Long(piece.Solid, e, view));
                Assert.True(Math.Abs(drawn - free) <= 0.008 * whole + 1e-3, $"Seed {seed}, scene {scene}: {drawn} drawn, {free} free, of {whole}.");
            }
        }
    }

    [Theory, InlineData(11), InlineData(12), InlineData(13)]
    public void The_order_of_the_solids_does_not_matter(int seed)
    {
        var random = new Random(seed);
        Piece[] pieces = [.. Scene(random, 9).Select((p, i) => p with { Marked = i is 2 or 5 })];
        var view = Axonometry.From(Math.Tau * random.NextDouble(), 0.4);
        string one = Drawn(pieces);
        for (int turn = 0; turn < 4; turn++)
        {
            random.Shuffle(pieces);
            Assert.Equal(one, Drawn(pieces));
        }

        string Drawn(Piece[] order)
        {
            var lines = LineWork.Once(HiddenLines.Of(order, view, 0.05, behind: true).Select(l => l with { X1 = 100 * l.X1, Y1 = 100 * l.Y1, X2 = 100 * l.X2, Y2 = 100 * l.Y2 }));
            return string.Join('\n', Enum.GetValues<Pen>().Select(pen => LineWork.Path(lines.Where(l => l.Pen == pen))));
        }
    }

    [Theory, InlineData(21), InlineData(22)]
    public void No_place_is_drawn_twice(int seed)
    {
        var random = new Random(seed);
        // Each solid twice, and once more marked: all their lines lie on each other.
        var once = Scene(random, 5);
        Piece[] pieces = [.. once, .. once, .. once.Take(2).Select(p => p with { Marked = true })];
        var lines = LineWork.Once(HiddenLines.Of(pieces, Axonometry.From(1, 0.3)).Select(l => l with { X1 = 100 * l.X1, Y1 = 100 * l.Y1, X2 = 100 * l.X2, Y2 = 100 * l.Y2 }));
        Assert.NotEmpty(lines);
        for (int i = 0; i < lines.Length; i++)
            for (int j = 0; j < lines.Length; j++)
            {
                if (i == j) continue;
                // Points along one line that are on another, both ways along it: a crossing is one point.
                var (a, b) = (lines[i], lines[j]);
                int on = Enumerable.Range(0, 50).Count(k => Away(b, a.X1 + (k + 0.5) / 50 * (a.X2 - a.X1), a.Y1 + (k + 0.5) / 50 * (a.Y2 - a.Y1)) < 0.02);
                Assert.True(on * a.Length / 50 < 1.5 || Sine(a, b) > 0.02, $"{a} lies on {b}.");
            }
    }

    [Fact]
    public void The_heavier_pen_stays()
    {
        PageLine[] lines = [new(Pen.Inner, 0, 0, 100, 0), new(Pen.MarkedOutline, 40, 0, 60, 0), new(Pen.Hatch, 0, 0, 0, 50)];
        var once = LineWork.Once(lines);
        Assert.Equal(80, once.Where(l => l.Pen == Pen.Inner).Sum(l => l.Length), 1e-9);
        Assert.Equal(20, once.Where(l => l.Pen == Pen.MarkedOutline).Sum(l => l.Length), 1e-9);
        Assert.Equal(50, once.Where(l => l.Pen == Pen.Hatch).Sum(l => l.Length), 1e-9);
    }

    /// <summary>The hatch of a square seen straight on: lines at 45° at their pitch have, in all, the square's area over the pitch, within a line at either corner.</summary>
    [Fact]
    public void The_hatch_covers_the_face()
    {
        var lines = HiddenLines.Of([Cube(0.013, 0, 0.021, 1, marked: true)], Front, hatch: 0.01);
        Assert.Equal(4 / 0.01, lines.Where(l => l.Pen == Pen.Hatch).Sum(l => l.Length), 4.0);
    }

    private static PageLine Large(PageLine l) => l with { X1 = 1000 * l.X1, Y1 = 1000 * l.Y1, X2 = 1000 * l.X2, Y2 = 1000 * l.Y2 };

    /// <summary>Boxes, prisms and round bars any way up, near enough to stand before each other and into each other.</summary>
    private static ImmutableArray<Piece> Scene(Random random, int count)
    {
        return [.. Enumerable.Range(0, count).Select(i => new Piece(Solid(i), []))];

        ConvexSolid Solid(int i)
        {
            Vec3 p = Any(), along = Any().Unit(), across = along.Cross(Any()).Unit();
            return (i % 3) switch
            {
                0 => ConvexSolid.Box(p, (0.2 + random.NextDouble()) * along, (0.1 + 0.5 * random.NextDouble()) * across, (0.1 + 0.5 * random.NextDouble()) * along.Cross(across)),
                1 => ConvexSolid.Cylinder(p, p + (0.4 + random.NextDouble()) * along, 0.1 + 0.3 * random.NextDouble(), 9),
                _ => ConvexSolid.Prism([.. Enumerable.Range(0, 5).Select(k => p + 0.4 * (Math.Cos(Math.Tau * k / 5) * across + Math.Sin(Math.Tau * k / 5) * along.Cross(across)))], along, _ => false),
            };
        }

        Vec3 Any() => new(2 * random.NextDouble() - 1, 2 * random.NextDouble() - 1, 2 * random.NextDouble() - 1);
    }

    private const int Points = 200;

    /// <summary>The slow twin: length of an edge from whose points a ray to the eye meets no inside of a solid.</summary>
    private static double RayCast(IReadOnlyList<Piece> pieces, ConvexSolid solid, Edge edge, Axonometry view)
    {
        bool left = solid.Faces[edge.Left].Normal.Dot(view.Eye) > 1e-9, right = solid.Faces[edge.Right].Normal.Dot(view.Eye) > 1e-9;
        if (edge.Smooth && left == right) return 0;
        Vec3 a = solid.Vertices[edge.From], b = solid.Vertices[edge.To];
        int seen = 0;
        for (int i = 0; i < Points; i++)
        {
            var p = a + (i + 0.5) / Points * (b - a);
            if (!pieces.Any(piece => Enters(piece.Solid, p, view.Eye))) seen++;
        }

        return Long(solid, edge, view) * seen / Points;
    }

    /// <summary>Whether the ray from a point to the eye runs inside a solid anywhere: cut by each of its faces in turn.</summary>
    private static bool Enters(ConvexSolid solid, Vec3 p, Vec3 eye)
    {
        double from = 0, to = 100;
        foreach (var face in solid.Faces)
        {
            double room = face.Offset - face.Normal.Dot(p), way = face.Normal.Dot(eye);
            if (Math.Abs(way) < 1e-12) to = room <= 0 ? -1 : to;
            else if (way > 0) to = Math.Min(to, room / way);
            else from = Math.Max(from, room / way);
        }

        return to - from > 1e-5;
    }

    private static double Long(ConvexSolid solid, Edge e, Axonometry view)
    {
        var (a, b) = (view.At(solid.Vertices[e.From]), view.At(solid.Vertices[e.To]));
        return Math.Sqrt((a.X - b.X) * (a.X - b.X) + (a.Y - b.Y) * (a.Y - b.Y));
    }

    private static double Away(PageLine l, double x, double y)
    {
        double dx = l.X2 - l.X1, dy = l.Y2 - l.Y1, t = Math.Clamp(((x - l.X1) * dx + (y - l.Y1) * dy) / (dx * dx + dy * dy), 0, 1);
        return Math.Sqrt(Math.Pow(x - l.X1 - t * dx, 2) + Math.Pow(y - l.Y1 - t * dy, 2));
    }

    private static double Sine(PageLine a, PageLine b) => Math.Abs((a.X2 - a.X1) * (b.Y2 - b.Y1) - (a.Y2 - a.Y1) * (b.X2 - b.X1)) / (a.Length * b.Length);
}
