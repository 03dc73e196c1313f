using System.Collections.Immutable;
using Trivet.Adapters;
using Trivet.Cells;
using Trivet.Numerics;
using Trivet.Views.Papers;
using Trivet.Views.Words;

namespace Trivet.Views.Mechanical;

/// <summary>What a plate's title block says beside the plate itself.</summary>
/// <param name="Piece">Empty for a single plate; which of two otherwise.</param>
/// <param name="Made">Date, as the host knows it.</param>
public sealed record PlateTitle(string Name, string Piece, string Cell, string Revision, string Made)
{
    /// <summary>What ISO 7200 asks for besides; empty where it is not stated. A stack's two plates are the sheets of one document.</summary>
    public string Owner { get; init; } = "";
    public string Number { get; init; } = "";
    public string Creator { get; init; } = "";
    public string ApprovedBy { get; init; } = "";
    public string Sheet { get; init; } = "1/1";
}

/// <summary>
/// The shop drawing of an adapter plate on A3: seen from above, a section through the middle that meets most kinds of holes, the table of holes with
/// their places, callouts, notes, title block. Lengths in millimetres.
/// </summary>
public static class PlateDrawing
{
    private const double PaperWidth = 420, PaperHeight = 297;
    // Where the view and the section may be, and where the tables begin.
    private const double ViewX = 128, ViewY = 190, ViewRoom = 150, SectionY = 50, SectionRoom = 60, TableX = 236;
    private const int MostRows = 24;
    private const double TagType = 2.3;

    // Scales of [ISO-5455].
    private static readonly (double Factor, string Name)[] Scales = [(5, "5:1"), (2, "2:1"), (1, "1:1"), (0.5, "1:2"), (0.2, "1:5"), (0.1, "1:10")];

    public static Paper Of(AdapterPlate plate, PlateTitle title, Locale? locale = null)
    {
        var where = locale ?? Locale.English;
        var words = where.Language.Plate;
        var (least, most) = plate.Outline.Box;
        double extent = 1000 * Math.Max(most.X - least.X, most.Y - least.Y);
        var scale = Scales.FirstOrDefault(s => s.Factor * extent <= ViewRoom && s.Factor * 1000 * plate.Thickness <= SectionRoom / 2, Scales[^1]);
        var table = new DraftingTable(title.Name, Locale.Fill(words.Description, ("name", title.Name)), PaperWidth, PaperHeight);
        var view = new View(table, plate, scale.Factor * 1000, where);
        var groups = HoleCallouts.Of(plate, where);
        double angle = view.CutAngle();
        view.FromAbove(new(ViewX, ViewY), groups, angle);
        view.Section(new(ViewX, SectionY), angle);
        table.Text(DraftingTable.Left + 4, table.Top - 7, words.SeenFromAbove, DraftingTable.Heading, strong: true);
        table.Text(DraftingTable.Left + 4, SectionY + 27, words.Section, DraftingTable.Heading, strong: true);

        string Mm(double metres) => HoleCallouts.Millimetres(metres, where);
        string Stated(string text) => text.Length > 0 ? text : words.NotStated;
        double top = table.Frame(title.Name,
        [
            new(words.Owner, Stated(title.Owner)), new(words.Number, Stated(title.Number)), new(words.DocumentType, words.DocumentTypeText),
            new(words.Creator, Stated(title.Creator)), new(words.ApprovedBy, title.ApprovedBy.Length > 0 ? title.ApprovedBy : words.NotApproved), new(words.Sheet, title.Sheet),
            new(words.Material, plate.Stuff.Id), new(words.Thickness, Mm(plate.Thickness)), new(words.Mass, Numbers.Quantity(plate.Mass, "kg", where)),
            new(words.Clocking, $"{Numbers.Plain(plate.Clocking * 180 / Math.PI, 1, where)}°"), new(words.Scale, scale.Name), new(words.Tolerances, words.ToleranceText),
            new(words.Cell, title.Cell), new(words.Revision, title.Revision), new(words.Drawn, title.Made),
            new(words.Edges, words.EdgesText), new(words.Pieces, title.Piece.Length == 0 ? "1" : title.Piece), new(where.Language.Drawing.Dimensions, where.Language.Drawing.Millimetres),
        ]);
        double y = table.Top - 7;
        table.Text(TableX, y, words.Callouts, DraftingTable.Heading, strong: true);
        y = table.Table(TableX, y - 2.5, [10, 8, 114, 38], [["", "", words.HeadHole, words.HeadScrew], .. groups.Select(g => (IReadOnlyList<string>)
            [g.Letter, $"{g.Holes.Length}×", g.Callout, g.Screw])]);
        y -= 7;
        table.Text(TableX, y, words.Holes, DraftingTable.Heading, strong: true);
        HoleTable(table, TableX, y - 2.5, plate, groups, words, Mm);
        Notes(table, top, plate, words, Mm);
        return table.Done();
    }

    private static void HoleTable(DraftingTable table, double x, double y, AdapterPlate plate, ImmutableArray<HoleGroup> groups, PlateWords words, Func<double, string> mm)
    {
        var rows = groups.SelectMany(g => g.Holes.Select((h, i) => (IReadOnlyList<string>)[$"{g.Letter}{i + 1}", mm(h.At.X), mm(h.At.Y), Corner(plate, h) is { } r ? mm(r) : ""])).ToList();
        IReadOnlyList<string> heads = [words.HeadTag, "x", "y", "R"];
        int columns = Math.Clamp((rows.Count + MostRows - 1) / MostRows, 1, 3), perColumn = Math.Max(10, (rows.Count + columns - 1) / columns);
        for (int c = 0; c * perColumn < rows.Count; c++) table.Table(x + c * 56, y, [10, 16, 16, 12], [heads, .. rows.Skip(c * perColumn).Take(perColumn)]);
    }

    /// <summary>Radius of the outline about a hole that it bends round; null for the others.</summary>
    private static double? Corner(AdapterPlate plate, AdapterHole hole)
    {
        foreach (var piece in plate.Outline.Pieces)
            if (piece.IsArc && !piece.IsCircle && (piece.Centre - hole.At).Norm < 1e-9) return piece.Radius;
        return null;
    }

    private static void Notes(DraftingTable table, double top, AdapterPlate plate, PlateWords words, Func<double, string> mm)
    {
        var notes = new List<string> { Locale.Fill(words.NoteFirst, ("face", words.Faces[(int)plate.FirstFitted])), words.NoteMark, words.Position };
        if (plate.Outline.Pieces.Any(p => !p.IsArc)) notes.Add(words.NoteOutline);
        foreach (var (part, face) in new[] { (plate.Above, PlateFace.Above), (plate.Below, PlateFace.Below) })
        {
            if (part.Pins is [var pin, _, ..]) notes.Add(Locale.Fill(words.NotePins, ("d", mm(pin.Diameter)), ("face", words.Faces[(int)face])));
            var recess = plate.Holes.FirstOrDefault(h => h.Kind == HoleKind.Pilot && (h.Serves == face || h.Steps.Length > 1));
            if (part.Centring != Centring.Bore || recess is null) continue;
            notes.Add(Locale.Fill(words.NoteRing, ("d", mm(part.CentringDiameter)), ("length", mm(part.CentringDepth + Math.Min(part.CentringDepth, 3e-3) - 0.5e-3)), ("face", words.Faces[(int)face])));
        }
        double y = top + 4 + 4.4 * notes.Count;
        table.Text(TableX - 6, y, words.Notes, DraftingTable.Heading, strong: true);
        foreach (string note in notes) table.Text(TableX - 6, y -= 4.4, note);
    }

    /// <summary>The views of one plate at a scale.</summary>
    /// <param name="s">Millimetres of the paper for a metre.</param>
    private sealed class View(DraftingTable table, AdapterPlate plate, double s, Locale locale)
    {
        private readonly FreePlaces _free = new();

        private string Mm(double metres) => HoleCallouts.Millimetres(metres, locale);

        /// <summary>The angle of the cut through the middle that meets the most kinds of holes.</summary>
        public double CutAngle()
        {
            double best = 0;
            int most = -1;
            foreach (var hole in plate.Holes.Where(h => h.At.Norm > 1e-6))
            {
                double angle = Math.Atan2(hole.At.Y, hole.At.X);
                if (angle > Math.PI / 2 + 1e-9) angle -= Math.PI;
                if (angle < -Math.PI / 2 + 1e-9) angle += Math.PI;
                var along = Vec2.Polar(1, angle);
                int kinds = plate.Holes.Where(h => Math.Abs(along.Cross(h.At)) < 0.2 * h.Widest).Select(h => (h.Kind, h.Serves)).Distinct().Sum(k => Worth(k.Kind, k.Serves));
                if (kinds > most || (kinds == most && Math.Abs(angle) < Math.Abs(best) - 1e-9)) (most, best) = (kinds, angle);
            }
            return best;
        }

        /// <summary>What a section is worth that meets such a hole: a sunk head's depth shows nowhere else.</summary>
        private static int Worth(HoleKind kind, PlateFace? serves) => kind switch
        {
            HoleKind.Counterbored or HoleKind.Countersunk => 20,
            HoleKind.Lightening => 0,
            HoleKind.Dowel => 1,
            _ => serves is null ? 1 : 2,
        };

        public void FromAbove(Vec2 middle, ImmutableArray<HoleGroup> groups, double cut)
        {
            Vec2 P(Vec2 p) => middle + s * p;
            foreach (var piece in plate.Outline.Pieces)
            {
                if (piece.IsArc) table.Add(new ArcMark(P(piece.Centre), s * piece.Radius, piece.StartAngle, piece.Sweep, Pen.Outline));
                else table.Add(new Stroke([P(piece.From), P(piece.To)], Pen.Outline));
            }
            var (least, most) = plate.Outline.Box;
            double reach = s * plate.Outline.Reach;
            table.Line(middle.X + s * least.X - 5, middle.Y, middle.X + s * most.X + 5, middle.Y, Pen.Centre);
            table.Line(middle.X, middle.Y + s * least.Y - 5, middle.X, middle.Y + s * most.Y + 5, Pen.Centre);
            foreach (var part in new[] { plate.Above, plate.Below })
                if (part.Points.All(p => Math.Abs(p.Norm - part.Radius) < 1e-6)) table.Add(ArcMark.Circle(middle, s * part.Radius, Pen.Centre));
            foreach (var hole in plate.Holes) Hole(middle, hole);
            CutMarks(middle, cut, reach);
            _free.Line(new(middle.X + s * least.X - 5, middle.Y), new(middle.X + s * most.X + 5, middle.Y));
            _free.Line(new(middle.X, middle.Y + s * least.Y - 5), new(middle.X, middle.Y + s * most.Y + 5));
            table.Across(middle.X + s * least.X, middle.X + s * most.X, middle.Y + s * least.Y - 1, middle.Y + s * least.Y - 18, Mm(most.X - least.X));
            table.Upward(middle.Y + s * least.Y, middle.Y + s * most.Y, middle.X + s * least.X - 1, middle.X + s * least.X - 18, Mm(most.Y - least.Y));
            Clocking(middle, reach);
            Circles(middle, reach);
            foreach (var group in groups)
                for (int i = 0; i < group.Holes.Length; i++) Tag(middle, group.Holes[i], $"{group.Letter}{i + 1}");
        }

        private void Hole(Vec2 middle, AdapterHole hole)
        {
            var at = middle + s * hole.At;
            _free.Hole(at, s * hole.Widest);
            foreach (var (radius, visible) in hole.Steps.SelectMany(step => new[] { (step.RadiusTop, step.Top), (step.RadiusBottom, step.Bottom) })
                .GroupBy(e => e.Item1).Select(g => (g.Key, Visible(hole, g.Key))))
                table.Add(ArcMark.Circle(at, s * radius, visible ? Pen.Outline : Pen.Hidden));
            // Three quarters of a circle mark a thread [ISO-6410-1].
            if (hole is { Kind: HoleKind.Tapped, Thread: { } thread }) table.Add(new ArcMark(at, s * thread.D / 2, Math.PI / 2 + 0.1, 1.5 * Math.PI, Pen.Thin));
            double arm = s * hole.Widest + 1.5;
            if (hole.At.Norm > 1e-9)
            {
                var outward = arm / hole.At.Norm * hole.At;
                var across = new Vec2(-outward.Y, outward.X);
                foreach (var axis in new[] { outward, across })
                {
                    table.Add(new Stroke([at - axis, at + axis], Pen.Thin));
                    _free.Line(at - axis, at + axis);
                }
            }
        }

        /// <summary>A hole's tag beside it, between its axes, and further off where it would stand on something else.</summary>
        private void Tag(Vec2 middle, AdapterHole hole, string tag)
        {
            var at = middle + s * hole.At;
            double width = DraftingTable.WidthOf(tag, TagType), first = hole.At.Norm > 1e-9 ? Math.Atan2(hole.At.Y, hole.At.X) + Math.PI / 4 : Math.PI / 4;
            var candidates =
                from step in Enumerable.Range(0, 5)
                from turn in Enumerable.Range(0, 12)
                let angle = first + turn % 4 * Math.PI / 2 + turn / 4 * Math.PI / 6
                let u = Vec2.Polar(1, angle)
                // The text's middle stands off by as much as its half size reaches towards the hole.
                let off = s * hole.Widest + 0.6 + 1.5 * step + Math.Abs(u.X) * width / 2 + Math.Abs(u.Y) * 0.4 * TagType
                select at + off * u - new Vec2(width / 2, 0.4 * TagType);
            var place = _free.Place(candidates, width, TagType);
            table.Text(place.X, place.Y, tag, TagType);
        }

        /// <summary>Whether a circle of a hole is seen from above: it opens at the upper face, and no narrower step lies over it.</summary>
        private bool Visible(AdapterHole hole, double radius)
        {
            double narrowest = double.PositiveInfinity;
            if (hole.Steps[0].Top < plate.Thickness - 1e-9) return false;
            foreach (var step in hole.Steps)
            {
                if (step.RadiusTop == radius && radius <= narrowest) return true;
                narrowest = Math.Min(narrowest, step.RadiusTop);
                if (step.RadiusBottom == radius && radius <= narrowest) return true;
                narrowest = Math.Min(narrowest, step.RadiusBottom);
            }
            return false;
        }

        private void CutMarks(Vec2 middle, double cut, double reach)
        {
            var along = Vec2.Polar(1, cut);
            foreach (double side in new[] { -1.0, 1.0 })
            {
                Vec2 from = middle + side * (reach + 2) * along, to = middle + side * (reach + 9) * along;
                table.Add(new Stroke([from, to], Pen.Outline));
                var text = middle + side * (reach + 12) * along;
                table.Text(text.X, text.Y - 1.2, "A", DraftingTable.Heading, TextAnchor.Middle, strong: true);
                _free.Text(text - new Vec2(1.5, 1.2), 3, DraftingTable.Heading);
                _free.Line(from, to);
            }
        }

        private void Circles(Vec2 middle, double reach)
        {
            foreach (var part in new[] { plate.Above, plate.Below }.DistinctBy(p => Math.Round(1e5 * p.Radius)))
            {
                if (!part.Points.All(p => Math.Abs(p.Norm - part.Radius) < 1e-6)) continue;
                string text = $"Ø{Mm(2 * part.Radius)}";
                double width = DraftingTable.WidthOf(text);
                var candidates =
                    from row in Enumerable.Range(0, 8)
                    from turn in Enumerable.Range(0, 24)
                    select (To: middle + s * part.Radius * Vec2.Polar(1, 1.3 - 0.1 * turn), From: new Vec2(middle.X + reach + 6, middle.Y + reach - 2 - 6 * row));
                var (to, from) = candidates.MinBy(c => _free.CostOfLeader(c.To, c.From) + _free.CostOfText(c.From + new Vec2(4, -0.9), width, DraftingTable.Type));
                table.Leader(to, from, text);
                _free.Line(to, from);
                _free.Text(from + new Vec2(4, -0.9), width, DraftingTable.Type);
            }
        }

        /// <summary>The angle of the lower pattern against the upper one.</summary>
        private void Clocking(Vec2 middle, double reach)
        {
            if (!(Math.Abs(plate.Clocking) > 1e-9)) return;
            double radius = reach + 4;
            table.Add(new ArcMark(middle, radius, Math.Min(0, plate.Clocking), Math.Abs(plate.Clocking), Pen.Thin));
            table.Add(new Stroke([middle + (reach - 2) * Vec2.Polar(1, plate.Clocking), middle + (radius + 2) * Vec2.Polar(1, plate.Clocking)], Pen.Thin));
            var label = middle + (radius + 2) * Vec2.Polar(1, plate.Clocking / 2);
            string shown = $"{Numbers.Plain(plate.Clocking * 180 / Math.PI, 1, locale)}°";
            table.Text(label.X, label.Y, shown);
            _free.Text(label, DraftingTable.WidthOf(shown), DraftingTable.Type);
        }

        /// <summary>The cut through the middle: what each hole takes of it is as wide as the chord that the cut makes.</summary>
        public void Section(Vec2 middle, double cut)
        {
            var along = Vec2.Polar(1, cut);
            double t = plate.Thickness, low = middle.Y - s * t / 2;
            double left = -HalfWidth(along, -1), right = HalfWidth(along, 1);
            double X(double u) => middle.X + s * u;
            double Y(double z) => low + s * z;

            // Cuts across the thickness: material between the openings of all holes, from level to level.
            var met = plate.Holes.Select(h => (Hole: h, U: along.Dot(h.At), Off: Math.Abs(along.Cross(h.At)))).Where(m => m.Off < m.Hole.Widest - 1e-9).ToArray();
            double[] levels = [.. met.SelectMany(m => m.Hole.Steps.SelectMany(x => new[] { x.Top, x.Bottom })).Append(0).Append(t).Distinct().Order()];
            for (int k = 0; k + 1 < levels.Length; k++)
            {
                double z0 = levels[k], z1 = levels[k + 1], from = left;
                var gaps = met.SelectMany(m => m.Hole.Steps.Where(x => x.Bottom <= z0 && x.Top >= z1).Select(x => (m.U, Half: Chord(x.Widest, m.Off)))).Where(g => g.Half > 0).OrderBy(g => g.U).ToArray();
                foreach (var (u, half) in gaps)
                {
                    if (u - half > from) table.Hatch(X(from), Y(z0), s * (u - half - from), s * (z1 - z0));
                    from = Math.Max(from, u + half);
                }
                if (right > from) table.Hatch(X(from), Y(z0), s * (right - from), s * (z1 - z0));
            }
            table.Rectangle(X(left), Y(0), s * (right - left), s * t, Pen.Outline);
            foreach (var (hole, u, off) in met)
            {
                foreach (var x in hole.Steps)
                {
                    double a = Chord(x.RadiusTop, off), b = Chord(x.RadiusBottom, off);
                    foreach (double side in new[] { -1.0, 1.0 }) table.Line(X(u + side * a), Y(x.Top), X(u + side * b), Y(x.Bottom), Pen.Outline);
                    table.Line(X(u - a), Y(x.Top), X(u + a), Y(x.Top), Pen.Outline);
                    table.Line(X(u - b), Y(x.Bottom), X(u + b), Y(x.Bottom), Pen.Outline);
                }
                if (hole is { Kind: HoleKind.Tapped, Thread: { } thread } && Chord(thread.D / 2, off) is > 0 and var half)
                    foreach (double side in new[] { -1.0, 1.0 }) table.Line(X(u + side * half), Y(0), X(u + side * half), Y(t), Pen.Thin);
                table.Line(X(u), Y(0) - 3, X(u), Y(t) + 3, Pen.Centre);
            }
            table.Upward(Y(0), Y(t), X(left) - 1, X(left) - 9, Mm(t));
            Depths(met, X, Y, right, t);
        }

        /// <summary>Depths of counterbores and recesses, beside the cut.</summary>
        private void Depths((AdapterHole Hole, double U, double Off)[] met, Func<double, double> x, Func<double, double> y, double right, double t)
        {
            double at = x(right) + 8;
            foreach (var (top, bottom) in met.SelectMany(m => m.Hole.Steps).Select(st => (st.Top, st.Bottom)).Distinct())
            {
                if (top - bottom >= t - 1e-9 || (top < t && bottom > 0)) continue;
                // What is left after a sunk depth needs no figure of its own.
                if (met.Any(m => m.Hole.Steps.Any(o => o.Top == top && o.Bottom == bottom && o.Widest < m.Hole.Widest - 1e-9))) continue;
                table.Upward(y(bottom), y(top), x(right) + 1, at, Mm(top - bottom));
                at += 8;
            }
        }

        private double HalfWidth(Vec2 along, double side)
        {
            // The outline is convex and the middle lies in it: bisection along the ray.
            double low = 0, high = 2 * plate.Outline.Reach;
            for (int i = 0; i < 60; i++)
            {
                double mid = (low + high) / 2;
                if (Inside(side * mid * along)) low = mid;
                else high = mid;
            }
            return low;
        }

        private bool Inside(Vec2 p)
        {
            foreach (var piece in plate.Outline.Pieces)
            {
                if (piece.IsCircle) return (p - piece.Centre).Norm <= piece.Radius;
                bool left = (piece.To - piece.From).Cross(p - piece.From) >= 0;
                if (!left && !(piece.IsArc && (p - piece.Centre).Norm <= piece.Radius)) return false;
            }
            return true;
        }

        private static double Chord(double radius, double off) => radius > off ? Math.Sqrt(radius * radius - off * off) : 0;
    }
}
