using System.Collections.Immutable;
using Trivet.Numerics;
using Trivet.Numerics.Beams;
using Trivet.Numerics.Sparse;

namespace Trivet.Frames;

/// <summary>
/// A place on a member whose motion the unknowns give: its displacement is that of <see cref="Translation"/> plus the turn of what carries it times
/// <see cref="Offset"/>; the member's own turn there is <see cref="Rotation"/>. Each is the index of the first of three unknowns, −1 where held.
/// </summary>
/// <param name="P">Where it is, cell frame, metres.</param>
public sealed record FramePlace(Vec3 P, int Translation, int Carrier, Vec3 Offset, int Rotation)
{
    public Vec3 Displacement(ReadOnlySpan<double> x) => At(x, Translation) + At(x, Carrier).Cross(Offset);

    internal static Vec3 At(ReadOnlySpan<double> x, int first) => first < 0 ? Vec3.Zero : new(x[first], x[first + 1], x[first + 2]);
}

/// <summary>A foot: which row of which patch its force on the floor stands in.</summary>
/// <param name="Id">Of the member that stands on it.</param>
public sealed record FrameFoot(string Id, Vec3 P, int Patch, int Row);

/// <summary>
/// The frame as beam elements between places. Ends of members are joined where they come within reach of another member's axis: to the nearest one,
/// by a rigid arm across, and by a spring against turning. Where only ends meet, the member that is earlier in order carries the others.
/// Members that cross without an end there are not joined.
/// <para>
/// Elements are as long as the highest mode asked for allows: with wave number k an element of length h is off by about (k·h)⁴/1440 in frequency.
/// </para>
/// </summary>
public sealed class FrameMesh
{
    /// <summary>k·h: 0.06 ‰ in the highest mode.</summary>
    private const double LongestElement = 0.55;

    /// <summary>A bolted foot of the robot's base, N/m: beside it no member is stiff. Common practice, no source.</summary>
    private const double BoltStiffness = 1e9;

    /// <summary>Places closer than this are one, metres.</summary>
    private const double Same = 1e-3;

    private FrameMesh(Builder b)
    {
        Input = b.Input;
        (Elements, Masses, Joints) = ([.. b.Stiff], [.. b.Masses], [.. b.Joints]);
        (Lines, Feet, Mount, Lift) = ([.. b.Places.Select(p => p.ToImmutableArray())], [.. b.Feet], b.Mount, [.. b.Lift]);
        Pattern = new([.. b.Groups], [.. Elements.Select(p => p.Unknowns), .. Joints, .. Masses.Select(p => p.Unknowns)]);
    }

    public FrameInput Input { get; }

    /// <summary>Places along each member, from its beginning to its end.</summary>
    public ImmutableArray<ImmutableArray<FramePlace>> Lines { get; }

    public ImmutableArray<FrameFoot> Feet { get; }

    /// <summary>The robot's base, a rigid body about the base frame's origin; null where there is no robot.</summary>
    public FramePlace? Mount { get; }

    /// <summary>Of elements, joints and masses, in this order.</summary>
    public Pattern Pattern { get; }
    /// <summary>Stiffness of the elements and of the robot's bolts.</summary>
    public ImmutableArray<Patch> Elements { get; }
    public ImmutableArray<Patch> Masses { get; }
    /// <summary>Unknowns that a joint's spring ties: three turns, or three and three.</summary>
    public ImmutableArray<ImmutableArray<int>> Joints { get; }
    /// <summary>For each patch of mass the rows that lift it.</summary>
    internal ImmutableArray<ImmutableArray<int>> Lift { get; }

    /// <param name="highest">Highest frequency that is to be right, Hz.</param>
    public static FrameMesh Of(FrameInput input, double highest) => new(new Builder(input, highest).Build());

    /// <summary>The springs of all joints at one stiffness, N·m/rad.</summary>
    public IEnumerable<Patch> Springs(double stiffness) => Joints.Select(unknowns =>
    {
        int m = unknowns.Length;
        var k = new double[m * m];
        for (int i = 0; i < m; i++)
        {
            k[i * m + i] = stiffness;
            if (m == 6) k[i * m + (i + 3) % 6] = -stiffness;
        }

        return new Patch(unknowns, k);
    });

    /// <summary>Where the end of a member is fastened.</summary>
    private readonly record struct Hold(int Line, double Along);

    private sealed class Builder(FrameInput input, double highest)
    {
        public FrameInput Input { get; } = input;
        public List<int> Groups { get; } = [];
        public List<Patch> Stiff { get; } = [];
        public List<Patch> Masses { get; } = [];
        public List<ImmutableArray<int>> Lift { get; } = [];
        public List<ImmutableArray<int>> Joints { get; } = [];
        public List<FrameFoot> Feet { get; } = [];
        public List<FramePlace>[] Places { get; } = new List<FramePlace>[input.Lines.Length];
        public FramePlace? Mount { get; private set; }

        private readonly List<double>[] _along = [.. input.Lines.Select(l => new List<double> { 0, l.Bar.Length })];
        private readonly Hold?[,] _holds = new Hold?[input.Lines.Length, 2];
        private readonly Dictionary<(int Line, double Along), FramePlace> _known = [];
        private int _unknowns;

        public Builder Build()
        {
            for (int i = 0; i < Input.Lines.Length; i++)
                for (int end = 0; end < 2; end++) _holds[i, end] = Nearest(i, End(i, end));
            for (int i = 0; i < Input.Lines.Length; i++)
                for (int end = 0; end < 2; end++)
                    if (Final(i, end) is { } hold) _holds[i, end] = hold with { Along = Station(hold.Line, hold.Along) };
            var robot = Input.Mount;
            (Vec3 P, Hold At)[] hung = [.. Input.Masses.Select(m => (m.P_C, Hang(m.P_C)))];
            (Vec3 P, Hold At)[] bolts = robot is null ? [] : [.. robot.Bolts_C.Select(p => (p, Hang(p)))];

            for (int i = 0; i < Input.Lines.Length; i++) _along[i].Sort();
            for (int i = 0; i < Input.Lines.Length; i++) Line(i);
            for (int i = 0; i < hung.Length; i++) AddMass(Input.Masses[i].Mass, Motion(_known[(hung[i].At.Line, hung[i].At.Along)], hung[i].P));
            if (robot is not null) Base(robot, bolts);
            return this;
        }

        private Vec3 End(int line, int end) => end == 0 ? Input.Lines[line].Bar.From : Input.Lines[line].Bar.To;

        private Vec3 Point(int line, double along)
        {
            var bar = Input.Lines[line].Bar;
            return bar.From + along / bar.Length * (bar.To - bar.From);
        }

        /// <summary>What holds the end of a member: null for a foot and for an end that is free or carries others.</summary>
        private Hold? Nearest(int line, Vec3 p)
        {
            if (FrameInputs.IsFoot(p)) return null;
            (double Distance, int Rank, Hold Hold)? best = null;
            for (int j = 0; j < Input.Lines.Length; j++)
            {
                if (j == line) continue;
                var other = Input.Lines[j];
                var (s, distance) = FrameInputs.Distance(other.Bar, p);
                if (distance > Input.Lines[line].Reach + other.Reach + Same) continue;
                bool within = s > Same && s < other.Bar.Length - Same;
                if (!within && j > line) continue;
                double rounded = Math.Round(distance, 6);
                int rank = within ? 0 : 1;
                if (best is { } b && (b.Distance, b.Rank).CompareTo((rounded, rank)) <= 0) continue;
                best = (rounded, rank, new(j, s));
            }

            return best?.Hold;
        }

        /// <summary>An end that is held by an end that is itself held goes to what holds that one.</summary>
        private Hold? Final(int line, int end)
        {
            var hold = _holds[line, end];
            for (int steps = 0; hold is { } h && steps <= Input.Lines.Length; steps++)
            {
                int at = h.Along <= Same ? 0 : h.Along >= Input.Lines[h.Line].Bar.Length - Same ? 1 : -1;
                if (at < 0 || _holds[h.Line, at] is not { } beyond || beyond.Line == line) return hold;
                hold = beyond;
            }

            return hold;
        }

        /// <summary>A place along a member; one that is there already where it is near enough.</summary>
        private double Station(int line, double along)
        {
            foreach (double known in _along[line])
                if (Math.Abs(known - along) <= Same) return known;
            _along[line].Add(along);
            return along;
        }

        private Hold Hang(Vec3 p)
        {
            int line = Enumerable.Range(0, Input.Lines.Length).MinBy(i => Math.Round(FrameInputs.Distance(Input.Lines[i].Bar, p).Distance - Input.Lines[i].Reach, 6));
            return new(line, Station(line, FrameInputs.Distance(Input.Lines[line].Bar, p).Along));
        }

        private int Group(int size)
        {
            Groups.Add(size);
            _unknowns += size;
            return _unknowns - size;
        }

        private FramePlace Node(Vec3 p)
        {
            int first = Group(6);
            return new(p, first, -1, Vec3.Zero, first + 3);
        }

        private FramePlace Place(int line, double along)
        {
            if (_known.TryGetValue((line, along), out var known)) return known;
            int end = along == 0 ? 0 : along == Input.Lines[line].Bar.Length ? 1 : -1;
            var p = Point(line, along);
            FramePlace place;
            if (end >= 0 && FrameInputs.IsFoot(p)) place = Foot(p);
            else if (end >= 0 && _holds[line, end] is { } hold) place = Held(p, Place(hold.Line, hold.Along));
            else place = Node(p);
            return _known[(line, along)] = place;
        }

        private FramePlace Held(Vec3 p, FramePlace by)
        {
            var arm = p - by.P;
            if (Input.Rigid) return new(p, by.Translation, by.Rotation, arm, by.Rotation);
            int own = Group(3);
            Joints.Add(by.Rotation < 0 ? [own, own + 1, own + 2] : [own, own + 1, own + 2, by.Rotation, by.Rotation + 1, by.Rotation + 2]);
            return new(p, by.Translation, by.Rotation, arm, own);
        }

        private FramePlace Foot(Vec3 p)
        {
            if (Input.Hold == Cells.FootHold.Fixed || (Input.Hold == Cells.FootHold.Joint && Input.Rigid)) return new(p, -1, -1, Vec3.Zero, -1);
            int own = Group(3);
            if (Input.Hold == Cells.FootHold.Joint) Joints.Add([own, own + 1, own + 2]);
            return new(p, -1, -1, Vec3.Zero, own);
        }

        private void Line(int i)
        {
            var (bar, beam, _) = Input.Lines[i];
            double bending = Math.Min(beam.BendingY, beam.BendingZ), omega = Math.Tau * highest;
            double wave = Math.Sqrt(Math.Sqrt(omega * omega * beam.Mass / bending));
            var places = Places[i] = [Place(i, 0)];
            for (int k = 1; k < _along[i].Count; k++)
            {
                double from = _along[i][k - 1], to = _along[i][k];
                int parts = Math.Clamp((int)Math.Ceiling(wave * (to - from) / LongestElement), 1, 60);
                for (int j = 1; j <= parts; j++)
                {
                    var next = j == parts ? Place(i, to) : Node(Point(i, from + (to - from) * j / parts));
                    Element(bar, beam, places[^1], next);
                    places.Add(next);
                }
            }
        }

        private void Element(FrameBar bar, in BeamProperties beam, FramePlace a, FramePlace b)
        {
            double length = (b.P - a.P).Norm;
            var axes = Axes((b.P - a.P) / length);
            var turn = new Transform(axes, a, b);
            int patch = Stiff.Count;
            Stiff.Add(turn.Of(TimoshenkoBeam.Stiffness(beam, length)));
            Masses.Add(turn.Of(TimoshenkoBeam.Mass(beam, length)));
            Lift.Add([2, turn.Second + 2]);
            if (a.Translation < 0) Feet.Add(new(bar.Id, a.P, patch, 0));
            if (b.Translation < 0) Feet.Add(new(bar.Id, b.P, patch, turn.Second));
        }

        private void Base(RobotMount robot, (Vec3 P, Hold At)[] bolts)
        {
            Mount = Node(robot.Origin_C);
            foreach (var (p, at) in bolts)
            {
                var (mine, matrix) = Motion(Mount, p);
                var (theirs, other) = Motion(_known[(at.Line, at.Along)], p);
                int m = mine.Length + theirs.Length;
                var k = new double[m * m];
                double[][] rows = [.. Enumerable.Range(0, 3).Select(r => (double[])[.. matrix[r], .. other[r].Select(v => -v)])];
                foreach (var row in rows)
                    for (int i = 0; i < m; i++)
                        for (int j = 0; j < m; j++) k[i * m + j] += BoltStiffness * row[i] * row[j];
                Stiff.Add(new([.. mine, .. theirs], k));
            }

            foreach (var mass in robot.Masses) AddMass(mass.Mass, Motion(Mount, mass.P_C));
        }

        private void AddMass(double mass, (ImmutableArray<int> Unknowns, double[][] Matrix) at)
        {
            int m = at.Unknowns.Length;
            var values = new double[m * m];
            foreach (var row in at.Matrix)
                for (int i = 0; i < m; i++)
                    for (int j = 0; j < m; j++) values[i * m + j] += mass * row[i] * row[j];
            Masses.Add(new(at.Unknowns, values));
            Lift.Add([2]);
        }

        /// <summary>How a point that is rigidly fastened to a place moves: three rows over its unknowns.</summary>
        private static (ImmutableArray<int> Unknowns, double[][] Matrix) Motion(FramePlace place, Vec3 p)
        {
            var rows = new double[3][];
            for (int r = 0; r < 3; r++) rows[r] = [.. Enumerable.Range(0, 3).Select(c => r == c ? 1.0 : 0), .. Arm(place.Offset, r), .. Arm(p - place.P, r)];
            return ([.. Three(place.Translation), .. Three(place.Carrier), .. Three(place.Rotation)], rows);
        }
    }

    internal static ImmutableArray<int> Three(int first) => first < 0 ? [-1, -1, -1] : [first, first + 1, first + 2];

    /// <summary>Row of the matrix that turns an angle into θ × arm.</summary>
    private static double[] Arm(Vec3 r, int row) => row switch
    {
        0 => [0, r.Z, -r.Y],
        1 => [-r.Z, 0, r.X],
        _ => [r.Y, -r.X, 0],
    };

    /// <summary>Axes of a member: along, width, height. The width of a level one lies level, that of an upright one along x.</summary>
    internal static Mat3 Axes(Vec3 along)
    {
        var width = Math.Abs(along.Z) > 0.9 ? (Vec3.UnitX - along.X * along).Unit() : Vec3.UnitZ.Cross(along).Unit();
        return new(along, width, along.Cross(width));
    }

    /// <summary>Takes a matrix from a beam's own axes to the unknowns of its two places.</summary>
    private sealed class Transform
    {
        private readonly double[] _matrix;
        private readonly ImmutableArray<int> _unknowns;

        public Transform(Mat3 axes, FramePlace a, FramePlace b)
        {
            var unknowns = ImmutableArray.CreateBuilder<int>();
            var columns = new List<double[]>();
            End(a, 0);
            Second = unknowns.Count;
            End(b, 6);
            _unknowns = unknowns.ToImmutable();
            int m = columns.Count;
            _matrix = new double[12 * m];
            for (int j = 0; j < m; j++)
                for (int i = 0; i < 12; i++) _matrix[i * m + j] = columns[j][i];

            void End(FramePlace place, int at)
            {
                unknowns.AddRange(Three(place.Translation));
                for (int j = 0; j < 3; j++) columns.Add(Column(at, axes.Column(j)));
                if (place.Offset != Vec3.Zero)
                {
                    unknowns.AddRange(Three(place.Carrier));
                    for (int j = 0; j < 3; j++) columns.Add(Column(at, axes * Unit(j).Cross(place.Offset)));
                }

                unknowns.AddRange(Three(place.Rotation));
                for (int j = 0; j < 3; j++) columns.Add(Column(at + 3, axes.Column(j)));
            }
        }

        /// <summary>Row where the second end begins.</summary>
        public int Second { get; }

        public Patch Of(double[] own)
        {
            int m = _unknowns.Length;
            double[] half = new double[12 * m], whole = new double[m * m];
            for (int i = 0; i < 12; i++)
                for (int k = 0; k < 12; k++)
                {
                    double value = own[i * 12 + k];
                    if (value == 0) continue;
                    for (int j = 0; j < m; j++) half[i * m + j] += value * _matrix[k * m + j];
                }

            for (int k = 0; k < 12; k++)
                for (int i = 0; i < m; i++)
                {
                    double value = _matrix[k * m + i];
                    if (value == 0) continue;
                    for (int j = 0; j < m; j++) whole[i * m + j] += value * half[k * m + j];
                }

            return new(_unknowns, whole);
        }

        private static Vec3 Unit(int j) => j switch { 0 => Vec3.UnitX, 1 => Vec3.UnitY, _ => Vec3.UnitZ };

        private static double[] Column(int at, Vec3 value)
        {
            var column = new double[12];
            for (int i = 0; i < 3; i++) column[at + i] = value[i];
            return column;
        }
    }
}
