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
public sealed record PlateTitle(string Name, string Piece, string Cell, string Revision, string Made);

/// <summary>
/// The shop drawing of an adapter plate on A3: seen from above, a section through the middle that meets most kinds of holes, the table of holes with
/// their places, callouts, notes, title block. Lengths in millimetres.
/// </summary>
public static class PlateDrawing
{
    private const double PaperWidth = 420, PaperHeight = 297;
    // Where the view and the section may be, and where the tables begin.
    private const double ViewX = 128, ViewY = 190, ViewRoom = 150, SectionY = 50, SectionRoom = 60, TableX = 236;
    private const int MostRows = 30;

    // Scales of [ISO-5455].
    private static readonly (double Factor, string Name)[] Scales = [(5, "5:1"), (2, "2:1"), (1, "1:1"), (0.5, "1:2"), (0.2, "1:5"), (0.1, "1:10")];

    public static Paper Of(AdapterPlate plate, AdapterInput input, PlateTitle title, Locale? locale = null)
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
        view.FromAbove(new(ViewX, ViewY), groups, angle, input);
        view.Section(new(ViewX, SectionY), angle);
        table.Text(DraftingTable.Left + 4, table.Top - 7, words.SeenFromAbove, DraftingTable.Heading, strong: true);
        table.Text(DraftingTable.Left + 4, SectionY + 27, words.Section, DraftingTable.Heading, strong: true);

        string Mm(double metres) => HoleCallouts.Millimetres(metres, where);
        double top = table.Frame(title.Name,
        [
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
        HoleTable(table, TableX, y - 2.5, groups, words, Mm);
        Notes(table, top, plate, input, words, Mm);
        return table.Done();
    }

    private static void HoleTable(DraftingTable table, double x, double y, ImmutableArray<HoleGroup> groups, PlateWords words, Func<double, string> mm)
    {
        var rows = groups.SelectMany(g => g.Holes.Select((h, i) => (IReadOnlyList<string>)[$"{g.Letter}{i + 1}", mm(h.At.X), mm(h.At.Y)])).ToList();
        IReadOnlyList<string> heads = [words.HeadTag, "x", "y"];
        int columns = Math.Clamp((rows.Count + MostRows - 1) / MostRows, 1, 3), perColumn = Math.Max(10, (rows.Count + columns - 1) / columns);
        for (int c = 0; c * perColumn < rows.Count; c++) table.Table(x + c * 54, y, [12, 19, 19], [heads, .. rows.Skip(c * perColumn).Take(perColumn)]);
    }

    private static void Notes(DraftingTable table, double top, AdapterPlate plate, AdapterInput input, PlateWords words, Func<double, string> mm)
    {
        var notes = new List<string> { Locale.Fill(words.NoteFirst, ("face", words.Faces[(int)plate.FirstFitted])), words.NoteMark, words.Position };
        foreach (var (part, face) in new[] { (input.Above, PlateFace.Above), (input.Below, PlateFace.Below) })
        {
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
                int kinds = plate.Holes.Where(h => Math.Abs(along.Cross(h.At)) < 0.2 * h.Widest).Select(h => (h.Kind, h.Serves)).Distinct().Sum(k => k.Kind is HoleKind.Lightening ? 0 : k.Serves is not null && k.Kind is not HoleKind.Dowel ? 2 : 1);
                if (kinds > most || (kinds == most && Math.Abs(angle) < Math.Abs(best) - 1e-9)) (most, best) = (kinds, angle);
            }
            return best;
        }

        public void FromAbove(Vec2 middle, ImmutableArray<HoleGroup> groups, double cut, AdapterInput input)
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
            foreach (var part in new[] { input.Above, input.Below })
                if (part.Points.All(p => Math.Abs(p.Norm - part.Radius) < 1e-6)) table.Add(ArcMark.Circle(middle, s * part.Radius, Pen.Centre));
            foreach (var group in groups)
                for (int i = 0; i < group.Holes.Length; i++) Hole(middle, group.Holes[i], $"{group.Letter}{i + 1}");

            CutMarks(middle, cut, reach);
            table.Across(middle.X + s * least.X, middle.X + s * most.X, middle.Y + s * least.Y - 1, middle.Y + s * least.Y - 18, Mm(most.X - least.X));
            table.Upward(middle.Y + s * least.Y, middle.Y + s * most.Y, middle.X + s * least.X - 1, middle.X + s * least.X - 18, Mm(most.Y - least.Y));
            Circles(middle, input, reach);
        }

        private void Hole(Vec2 middle, AdapterHole hole, string tag)
        {
            var at = middle + s * hole.At;
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
                table.Add(new Stroke([at - outward, at + outward], Pen.Thin));
                table.Add(new Stroke([at - across, at + across], Pen.Thin));
            }
            double aside = s * hole.Widest * 0.75 + 0.6;
            table.Text(at.X + aside, at.Y + aside, tag, 2.3);
        }

        /// <summary>Whether a circle of a hole is seen from above: no narrower step lies over it.</summary>
        private static bool Visible(AdapterHole hole, double radius)
        {
            double narrowest = double.PositiveInfinity;
            if (hole.Steps[0].Top < hole.Steps.Max(x => x.Top)) return false;
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
            }
        }

        private void Circles(Vec2 middle, AdapterInput input, double reach)
        {
            double y = middle.Y + reach - 2;
            var below = input.Below.Turned(plate.Clocking);
            foreach (var part in new[] { input.Above, below }.DistinctBy(p => Math.Round(1e5 * p.Radius)))
            {
                if (!part.Points.All(p => Math.Abs(p.Norm - part.Radius) < 1e-6)) continue;
                double angle = 0.95 + (part == below ? -0.35 : 0);
                var at = middle + s * part.Radius * Vec2.Polar(1, angle);
                table.Leader(at, new(middle.X + reach + 6, Math.Max(y, at.Y + 2)), $"Ø{Mm(2 * part.Radius)}");
                y -= 6;
            }
            if (!(Math.Abs(plate.Clocking) > 1e-9)) return;
            double radius = reach + 4;
            table.Add(new ArcMark(middle, radius, Math.Min(0, plate.Clocking), Math.Abs(plate.Clocking), Pen.Thin));
            table.Add(new Stroke([middle + (reach - 2) * Vec2.Polar(1, plate.Clocking), middle + (radius + 2) * Vec2.Polar(1, plate.Clocking)], Pen.Thin));
            var label = middle + (radius + 2) * Vec2.Polar(1, plate.Clocking / 2);
            table.Text(label.X, label.Y, $"{Numbers.Plain(plate.Clocking * 180 / Math.PI, 1, locale)}°");
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
