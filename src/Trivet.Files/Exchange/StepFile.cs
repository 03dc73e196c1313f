using System.Globalization;
using System.Text;
using Trivet.Adapters;
using Trivet.Numerics;

namespace Trivet.Files.Exchange;

/// <summary>
/// A plate as a STEP file (ISO 10303-21, application protocol 214): one solid with a closed shell of exact planes, cylinders and cones, in
/// millimetres, in the plate's own axes. A tapped hole has the diameter of its drill.
/// <para>
/// Each face's loop runs counter-clockwise seen from outside the solid. A full round face is one loop: lower circle, seam up, upper circle, seam down.
/// </para>
/// </summary>
public static class StepFile
{
    /// <param name="name">Of the part.</param>
    /// <param name="made">When it was made, ISO 8601; Trivet's core has no clock.</param>
    public static string Of(AdapterPlate plate, string name, string made) => new Writer(plate).Write(Plain(name), made);

    /// <summary>Characters that a string of part 21 takes as they are; others become an underscore.</summary>
    private static string Plain(string text) => string.Concat(text.Select(c => c is >= ' ' and <= '~' and not ('\'' or '\\') ? c : '_'));

    /// <summary>A closed circle edge with its one vertex.</summary>
    private readonly record struct Ring(int Edge, int Vertex);

    private sealed class Writer(AdapterPlate plate)
    {
        private readonly StringBuilder _data = new();
        private readonly List<int> _faces = [];
        private int _last;
        private int _up, _down, _right;

        public string Write(string name, string made)
        {
            _up = Add("DIRECTION('',(0.,0.,1.))");
            _down = Add("DIRECTION('',(0.,0.,-1.))");
            _right = Add("DIRECTION('',(1.,0.,0.))");
            Solid();
            int shell = Add($"CLOSED_SHELL('',({List(_faces)}))");
            int brep = Add($"MANIFOLD_SOLID_BREP('{name}',#{shell})");
            int millimetre = Add("(LENGTH_UNIT() NAMED_UNIT(*) SI_UNIT(.MILLI.,.METRE.))");
            int radian = Add("(NAMED_UNIT(*) PLANE_ANGLE_UNIT() SI_UNIT($,.RADIAN.))");
            int steradian = Add("(NAMED_UNIT(*) SI_UNIT($,.STERADIAN.) SOLID_ANGLE_UNIT())");
            int accuracy = Add($"UNCERTAINTY_MEASURE_WITH_UNIT(LENGTH_MEASURE(1.E-06),#{millimetre},'distance_accuracy_value','')");
            int context = Add($"(GEOMETRIC_REPRESENTATION_CONTEXT(3) GLOBAL_UNCERTAINTY_ASSIGNED_CONTEXT((#{accuracy})) "
                + $"GLOBAL_UNIT_ASSIGNED_CONTEXT((#{millimetre},#{radian},#{steradian})) REPRESENTATION_CONTEXT('',''))");
            int shape = Add($"ADVANCED_BREP_SHAPE_REPRESENTATION('{name}',(#{Placement(new(0, 0, 0), _up)},#{brep}),#{context})");
            int application = Add("APPLICATION_CONTEXT('core data for automotive mechanical design processes')");
            Add($"APPLICATION_PROTOCOL_DEFINITION('international standard','automotive_design',2000,#{application})");
            int product = Add($"PRODUCT('{name}','{name}','',(#{Add($"PRODUCT_CONTEXT('',#{application},'mechanical')")}))");
            Add($"PRODUCT_RELATED_PRODUCT_CATEGORY('part',$,(#{product}))");
            int formation = Add($"PRODUCT_DEFINITION_FORMATION('','',#{product})");
            int definition = Add($"PRODUCT_DEFINITION('design','',#{formation},#{Add($"PRODUCT_DEFINITION_CONTEXT('part definition',#{application},'design')")})");
            Add($"SHAPE_DEFINITION_REPRESENTATION(#{Add($"PRODUCT_DEFINITION_SHAPE('','',#{definition})")},#{shape})");
            return "ISO-10303-21;\nHEADER;\n"
                + "FILE_DESCRIPTION(('Adapter plate'),'2;1');\n"
                + $"FILE_NAME('{name}.step','{made}',(''),(''),'Trivet','Trivet','');\n"
                + "FILE_SCHEMA(('AUTOMOTIVE_DESIGN { 1 0 10303 214 1 1 1 1 }'));\nENDSEC;\nDATA;\n"
                + _data + "ENDSEC;\nEND-ISO-10303-21;\n";
        }

        private void Solid()
        {
            double t = plate.Thickness;
            var (topOuter, bottomOuter) = Outside(t);
            var above = new List<int>();
            var below = new List<int>();
            foreach (var hole in plate.Holes)
            {
                var rings = Hole(hole);
                if (hole.Steps[0].Top >= t) above.Add(Loop((rings.First.Edge, false)));
                else Plane(hole.At, hole.Steps[0].Top, up: false, Loop((rings.First.Edge, false)));
                if (hole.Steps[^1].Bottom <= 0) below.Add(Loop((rings.Last.Edge, true)));
                else Plane(hole.At, hole.Steps[^1].Bottom, up: true, Loop((rings.Last.Edge, true)));
            }
            Plane(Vec2.Zero, t, up: true, topOuter, [.. above]);
            Plane(Vec2.Zero, 0, up: false, bottomOuter, [.. below]);
        }

        /// <summary>The walls of the outline; the loops of its upper and its lower edge.</summary>
        private (int Top, int Bottom) Outside(double t)
        {
            var pieces = plate.Outline.Pieces;
            if (pieces is [{ IsCircle: true } circle])
            {
                Ring top = Circle(circle.Centre, t, circle.Radius), bottom = Circle(circle.Centre, 0, circle.Radius);
                Round(Cylinder(circle.Centre, circle.Radius), top, bottom, outward: true, circle.Centre + new Vec2(circle.Radius, 0), 0, circle.Centre + new Vec2(circle.Radius, 0), t);
                return (Loop((top.Edge, true)), Loop((bottom.Edge, false)));
            }
            int n = pieces.Length;
            int[] topVertex = [.. pieces.Select(p => Vertex(p.From, t))], bottomVertex = [.. pieces.Select(p => Vertex(p.From, 0))];
            int[] upright = [.. pieces.Select((p, i) => Line(p.From, 0, bottomVertex[i], p.From, t, topVertex[i]))];
            int[] topEdge = new int[n], bottomEdge = new int[n];
            for (int i = 0; i < n; i++)
            {
                var p = pieces[i];
                int next = (i + 1) % n;
                topEdge[i] = Edge(p, t, topVertex[i], topVertex[next]);
                bottomEdge[i] = Edge(p, 0, bottomVertex[i], bottomVertex[next]);
                int loop = Loop((bottomEdge[i], true), (upright[next], true), (topEdge[i], false), (upright[i], false));
                if (p.IsArc) Face(Cylinder(p.Centre, p.Radius), true, loop);
                else
                {
                    var along = (p.To - p.From) / (p.To - p.From).Norm;
                    int normal = Add($"DIRECTION('',({Number(along.Y)},{Number(-along.X)},0.))");
                    int x = Add($"DIRECTION('',({Number(along.X)},{Number(along.Y)},0.))");
                    Face(Add($"PLANE('',#{Add($"AXIS2_PLACEMENT_3D('',#{Point(p.From, 0)},#{normal},#{x})")})"), true, loop);
                }
            }
            return (Loop([.. topEdge.Select(e => (e, true))]), Loop([.. topEdge.Select((_, i) => (bottomEdge[n - 1 - i], false))]));
        }

        /// <summary>The round faces of a hole and the rings between its steps; its first and its last circle.</summary>
        private (Ring First, Ring Last) Hole(AdapterHole hole)
        {
            Ring first = default, upper = default;
            for (int i = 0; i < hole.Steps.Length; i++)
            {
                var s = hole.Steps[i];
                if (i == 0) first = upper = Circle(hole.At, s.Top, s.RadiusTop);
                else if (hole.Steps[i - 1].RadiusBottom != s.RadiusTop)
                {
                    var inner = Circle(hole.At, s.Top, s.RadiusTop);
                    bool up = hole.Steps[i - 1].RadiusBottom > s.RadiusTop;
                    if (up) Plane(hole.At, s.Top, true, Loop((upper.Edge, true)), Loop((inner.Edge, false)));
                    else Plane(hole.At, s.Top, false, Loop((inner.Edge, false)), Loop((upper.Edge, true)));
                    upper = inner;
                }
                var lower = Circle(hole.At, s.Bottom, s.RadiusBottom);
                Round(Surface(hole.At, s), upper, lower, outward: false, hole.At + new Vec2(s.RadiusBottom, 0), s.Bottom, hole.At + new Vec2(s.RadiusTop, 0), s.Top);
                upper = lower;
            }
            return (first, upper);
        }

        private int Surface(Vec2 at, HoleStep s)
        {
            if (s.RadiusTop == s.RadiusBottom) return Cylinder(at, s.RadiusTop);
            bool widensUp = s.RadiusTop > s.RadiusBottom;
            double narrow = Math.Min(s.RadiusTop, s.RadiusBottom), angle = Math.Atan2(Math.Abs(s.RadiusTop - s.RadiusBottom), s.Top - s.Bottom);
            int place = Placement(new(at.X, at.Y, widensUp ? s.Bottom : s.Top), widensUp ? _up : _down);
            return Add($"CONICAL_SURFACE('',#{place},{Length(narrow)},{Number(angle)})");
        }

        private void Round(int surface, Ring top, Ring bottom, bool outward, Vec2 seamLow, double low, Vec2 seamHigh, double high)
        {
            int seam = Line(seamLow, low, bottom.Vertex, seamHigh, high, top.Vertex);
            Face(surface, outward, outward
                ? Loop((bottom.Edge, true), (seam, true), (top.Edge, false), (seam, false))
                : Loop((bottom.Edge, false), (seam, true), (top.Edge, true), (seam, false)));
        }

        private void Plane(Vec2 at, double z, bool up, int outer, params int[] inner)
        {
            int plane = Add($"PLANE('',#{Placement(new(at.X, at.Y, z), up ? _up : _down)})");
            Face(plane, true, outer, inner);
        }

        private void Face(int surface, bool same, int outer, params int[] inner)
        {
            int[] bounds = [Add($"FACE_OUTER_BOUND('',#{outer},.T.)"), .. inner.Select(l => Add($"FACE_BOUND('',#{l},.T.)"))];
            _faces.Add(Add($"ADVANCED_FACE('',({List(bounds)}),#{surface},{(same ? ".T." : ".F.")})"));
        }

        private int Loop(params (int Edge, bool Forward)[] edges) =>
            Add($"EDGE_LOOP('',({List(edges.Select(e => Add($"ORIENTED_EDGE('',*,*,#{e.Edge},{(e.Forward ? ".T." : ".F.")})")).ToArray())}))");

        private int Edge(OutlinePiece p, double z, int from, int to)
        {
            if (!p.IsArc) return Line(p.From, z, from, p.To, z, to);
            int circle = Add($"CIRCLE('',#{Placement(new(p.Centre.X, p.Centre.Y, z), _up)},{Length(p.Radius)})");
            return Add($"EDGE_CURVE('',#{from},#{to},#{circle},.T.)");
        }

        private Ring Circle(Vec2 at, double z, double radius)
        {
            int vertex = Vertex(at + new Vec2(radius, 0), z);
            int circle = Add($"CIRCLE('',#{Placement(new(at.X, at.Y, z), _up)},{Length(radius)})");
            return new(Add($"EDGE_CURVE('',#{vertex},#{vertex},#{circle},.T.)"), vertex);
        }

        private int Line(Vec2 a, double za, int from, Vec2 b, double zb, int to)
        {
            var along = new Vec3(b.X - a.X, b.Y - a.Y, zb - za).Unit();
            int direction = Add($"DIRECTION('',({Number(along.X)},{Number(along.Y)},{Number(along.Z)}))");
            int line = Add($"LINE('',#{Point(a, za)},#{Add($"VECTOR('',#{direction},1.)")})");
            return Add($"EDGE_CURVE('',#{from},#{to},#{line},.T.)");
        }

        private int Cylinder(Vec2 at, double radius) => Add($"CYLINDRICAL_SURFACE('',#{Placement(new(at.X, at.Y, 0), _up)},{Length(radius)})");

        private int Placement(Vec3 at, int axis) => Add($"AXIS2_PLACEMENT_3D('',#{Point(new(at.X, at.Y), at.Z)},#{axis},#{_right})");

        private int Vertex(Vec2 at, double z) => Add($"VERTEX_POINT('',#{Point(at, z)})");

        private int Point(Vec2 at, double z) => Add($"CARTESIAN_POINT('',({Length(at.X)},{Length(at.Y)},{Length(z)}))");

        private int Add(string entity)
        {
            _data.Append(CultureInfo.InvariantCulture, $"#{++_last}={entity};\n");
            return _last;
        }

        private static string List(IEnumerable<int> ids) => string.Join(',', ids.Select(i => $"#{i.ToString(CultureInfo.InvariantCulture)}"));

        private static string Length(double metres) => Number(1000 * metres);

        /// <summary>A real of part 21 has a point; nanometres of a micrometre are enough.</summary>
        private static string Number(double value)
        {
            string text = value.ToString("0.############", CultureInfo.InvariantCulture);
            return text.Contains('.', StringComparison.Ordinal) ? text : text is "-0" ? "0." : text + ".";
        }
    }
}
