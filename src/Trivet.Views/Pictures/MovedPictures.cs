using System.Collections.Immutable;
using Trivet.Assessment;
using Trivet.Cells;
using Trivet.Numerics;
using Trivet.Views.Drawings;
using Trivet.Views.Words;

namespace Trivet.Views.Pictures;

/// <summary>Pictures of something done by hand: a foot turned, a part pushed, a level laid on.</summary>
internal static class MovedPictures
{
    private const double Long = 84, LevelLong = 0.3, LevelHigh = 0.06, LevelWide = 0.03;

    /// <summary>The frame with an arrow upward at each foot that is marked: a foot is raised and never lowered.</summary>
    public static Drawing? Foot(Assessed cell, string pointer, Locale locale)
    {
        var pieces = SlantedPictures.Marked(CellSolids.Of(cell, Fitted.Frame), pointer);
        if (!pieces.Any(p => p.Marked)) return null;
        return SlantedPictures.Draw(cell, pointer, pieces, SolidPicture.Best(pieces, SlantedPictures.Elevation), false, locale, locale.Language.Picture.Foot, (sheet, picture) =>
        {
            foreach (var foot in pieces.Where(p => p.Marked))
            {
                var (x, y) = picture.At(foot.Solid.Middle);
                x += x > PicturePage.Width / 2 ? 42 : -42;
                PicturePage.Arrow(sheet, (x, y), (x, y - Long));
            }
        });
    }

    /// <summary>A part from near by with arrows both ways along its movement.</summary>
    public static Drawing? Push(Assessed cell, string pointer, Fitted fitted, Locale locale)
    {
        if (Movement(cell, pointer) is not { } move) return SlantedPictures.Detail(cell, pointer, fitted, false, locale);
        return SlantedPictures.Detail(cell, move.Part, fitted, false, locale, locale.Language.Picture.Push, (sheet, picture) =>
        {
            foreach (var way in move.Ways)
            {
                var (x, y) = picture.At(move.At);
                var (tx, ty) = picture.At(move.At + 0.1 * way);
                double dx = tx - x, dy = ty - y, n = Math.Sqrt(dx * dx + dy * dy);
                if (n < 4) continue;
                (dx, dy) = (dx / n, dy / n);
                // Beside the part, not over it, nor over the leader; away from a part that goes many ways.
                bool line = move.Ways.Length == 2;
                double gap = line ? 14 : Math.Min(52, 0.3 * picture.Area.Width), aside = line ? 46 : 0;
                if (Math.Abs(dy) > Math.Abs(dx)) x += aside;
                else y += aside;
                PicturePage.Arrow(sheet, (x + gap * dx, y + gap * dy), (x + (gap + Long) * dx, y + (gap + Long) * dy), 13);
            }
        });
    }

    /// <summary>What of an axis one pushes, where it is, and the directions it goes.</summary>
    private static (string Part, Vec3 At, ImmutableArray<Vec3> Ways)? Movement(Assessed cell, string pointer)
    {
        if ((Posture.Representative(cell, null) ?? Posture.At(cell, Vec3.NaN, 0, Scene.AlongAxis(cell))) is not { } posture) return null;
        switch (Fields.Path(pointer))
        {
            case ["robot", "chains", var id, ..] when posture.Chains.FirstOrDefault(c => c.Id == id) is { } chain && chain.Joint.IsFinite:
                bool rail = chain.Family == RobotFamily.RailDelta;
                var along = rail ? (chain.End - chain.Start).Unit() : chain.Half.Cross(chain.Joint - chain.Start).Unit();
                return ($"/robot/chains/{id}/{(rail ? "carriage" : "arm")}", chain.Joint, [along, -along]);
            case ["robot"] or ["robot", "platform", ..] when posture.Closed:
                var r = cell.Geometry.X_CB.R;
                return ("/robot/platform", posture.Platform, [r.Column(0), -r.Column(0), r.Column(1), -r.Column(1), r.Column(2)]);
            case ["robot", "linearAxis", ..] when cell.Geometry.LinearDirection_C.Norm > 0.5:
                return ("/mount", cell.Geometry.X_CB.P, [cell.Geometry.LinearDirection_C, -cell.Geometry.LinearDirection_C]);
            default: return null;
        }
    }

    /// <summary>Spirit levels, the marked parts, laid on what is to be level: along x and along y.</summary>
    public static Drawing? Level(Assessed cell, string pointer, Fitted fitted, Locale locale)
    {
        var levels = Fields.Path(pointer) switch
        {
            ["frame", ..] => OnFrame(cell.Cell),
            ["mount", ..] => OnBase(cell),
            ["robot", ..] => OnPlatform(cell),
            _ => [],
        };
        if (levels.IsEmpty) return null;
        ImmutableArray<Piece> pieces = [.. CellSolids.Of(cell, fitted & ~Fitted.Guards), .. levels.Select(l => new Piece(l, ["level"], Marked: true))];
        // On the platform the levels are too small to be found in the whole cell.
        if (pointer.StartsWith("/robot", StringComparison.Ordinal)) return SlantedPictures.Near(cell, pieces, locale.Language.Picture.Levels, true, locale, locale.Language.Picture.Level);
        return SlantedPictures.Draw(cell, "", pieces, SolidPicture.Best(pieces, SlantedPictures.Elevation), true, locale, locale.Language.Picture.Level, null, locale.Language.Picture.Levels);
    }

    /// <summary>On the highest level member along each axis, at its middle; the longer one of two.</summary>
    private static ImmutableArray<ConvexSolid> OnFrame(Cell cell)
    {
        var level = Bar.Members(cell).Where(b => Math.Abs(b.Along.Z) < 1e-6).ToArray();
        return [.. ((Vec3[])[Vec3.UnitX, Vec3.UnitY]).Select(axis => level.Where(b => Math.Abs(b.Along.Dot(axis)) > 0.99)
                .OrderByDescending(b => Math.Round(b.Centre.Z + b.HalfHeight, 4)).ThenByDescending(b => Math.Round(b.HalfLength, 4)).ThenBy(b => Math.Round(b.Centre.Y, 4)).ThenByDescending(b => Math.Round(b.Centre.X, 4)).FirstOrDefault())
            .OfType<Bar>().Select(b => Lying(b.Centre + b.HalfHeight * Vec3.UnitZ, b.Along, Math.Min(LevelLong, b.HalfLength)))];
    }

    private static ImmutableArray<ConvexSolid> OnBase(Assessed cell)
    {
        var (p, r) = (cell.Geometry.X_CB.P, cell.Geometry.X_CB.R);
        if (!p.IsFinite) return [];
        double size = (cell.Cell.Robot.Common.BaseRadius ?? 0.2) * 0.5;
        return [Lying(p - size * 0.5 * r.Column(1), r.Column(0), Math.Min(LevelLong, 2 * size)), Lying(p - size * 0.5 * r.Column(0), r.Column(1), Math.Min(LevelLong, 2 * size))];
    }

    private static ImmutableArray<ConvexSolid> OnPlatform(Assessed cell)
    {
        if (Posture.Representative(cell, null) is not { Closed: true } posture) return [];
        var r = cell.Geometry.X_CB.R;
        double top = posture.Chains.Average(c => (c.PlatformJoint - posture.Platform).Dot(r.Column(2))) + 0.006;
        return [Lying(posture.Platform + top * r.Column(2), r.Column(0), 0.12), Lying(posture.Platform + (top + LevelHigh) * r.Column(2), r.Column(1), 0.12)];
    }

    private static ConvexSolid Lying(Vec3 under, Vec3 along, double length) =>
        ConvexSolid.Box(under + LevelHigh / 2 * Vec3.UnitZ, length / 2 * along, LevelWide / 2 * Vec3.UnitZ.Cross(along).Unit(), LevelHigh / 2 * Vec3.UnitZ);
}
