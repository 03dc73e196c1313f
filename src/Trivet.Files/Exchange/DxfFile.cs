using System.Globalization;
using System.Text;
using Trivet.Adapters;
using Trivet.Cells;

namespace Trivet.Files.Exchange;

/// <summary>
/// A plate as DXF for cutting: ASCII in the form of release 12, which every cutting program reads, in millimetres, seen from above. The outline is
/// one closed polyline with bulges, or a circle; each step of a hole is a circle. Layers say what a circle is; only OUTLINE, PASSAGE and
/// THROUGH are cut through, the others are worked from the face that their name gives.
/// </summary>
public static class DxfFile
{
    private static readonly (string Name, int Colour)[] Layers =
    [
        ("OUTLINE", 7), ("THROUGH", 5), ("TAPPED", 1), ("DOWEL_H7", 6), ("PILOT_H7", 6), ("SUNK_ABOVE", 3), ("SUNK_BELOW", 4), ("LIGHTENING", 8),
    ];

    public static string Of(AdapterPlate plate)
    {
        var text = new StringBuilder();
        var (least, most) = plate.Outline.Box;
        Pair(text, 999, "Trivet adapter plate, millimetres, seen from above");
        Pair(text, 0, "SECTION");
        Pair(text, 2, "HEADER");
        Pair(text, 9, "$ACADVER");
        Pair(text, 1, "AC1009");
        Pair(text, 9, "$EXTMIN");
        Point(text, least.X, least.Y, 0);
        Pair(text, 9, "$EXTMAX");
        Point(text, most.X, most.Y, 0);
        Pair(text, 0, "ENDSEC");
        Tables(text);
        Pair(text, 0, "SECTION");
        Pair(text, 2, "ENTITIES");
        Contour(text, plate.Outline);
        foreach (var hole in plate.Holes)
        {
            foreach (double radius in hole.Steps.SelectMany(s => new[] { s.RadiusTop, s.RadiusBottom }).Distinct())
                Circle(text, LayerOf(hole, radius), hole.At.X, hole.At.Y, radius);
        }
        Pair(text, 0, "ENDSEC");
        Pair(text, 0, "EOF");
        return text.ToString();
    }

    /// <summary>The layer of one of a hole's circles: the narrowest goes through where the hole does.</summary>
    private static string LayerOf(AdapterHole hole, double radius)
    {
        string sunk = hole.From == PlateFace.Above ? "SUNK_ABOVE" : "SUNK_BELOW";
        bool narrowest = radius <= hole.Steps.Min(s => Math.Min(s.RadiusTop, s.RadiusBottom));
        return hole.Kind switch
        {
            HoleKind.Tapped => "TAPPED",
            HoleKind.Dowel => "DOWEL_H7",
            HoleKind.Pilot when hole.Steps.Length > 1 && narrowest => "THROUGH",
            HoleKind.Pilot => "PILOT_H7",
            HoleKind.Lightening => "LIGHTENING",
            HoleKind.Counterbored or HoleKind.Countersunk when !narrowest => sunk,
            _ => "THROUGH",
        };
    }

    private static void Tables(StringBuilder text)
    {
        Pair(text, 0, "SECTION");
        Pair(text, 2, "TABLES");
        Pair(text, 0, "TABLE");
        Pair(text, 2, "LTYPE");
        Pair(text, 70, "1");
        Pair(text, 0, "LTYPE");
        Pair(text, 2, "CONTINUOUS");
        Pair(text, 70, "0");
        Pair(text, 3, "Solid line");
        Pair(text, 72, "65");
        Pair(text, 73, "0");
        Number(text, 40, 0);
        Pair(text, 0, "ENDTAB");
        Pair(text, 0, "TABLE");
        Pair(text, 2, "LAYER");
        Pair(text, 70, (Layers.Length + 1).ToString(CultureInfo.InvariantCulture));
        foreach (var (name, colour) in Layers.Prepend(("0", 7)))
        {
            Pair(text, 0, "LAYER");
            Pair(text, 2, name);
            Pair(text, 70, "0");
            Pair(text, 62, colour.ToString(CultureInfo.InvariantCulture));
            Pair(text, 6, "CONTINUOUS");
        }
        Pair(text, 0, "ENDTAB");
        Pair(text, 0, "ENDSEC");
    }

    private static void Contour(StringBuilder text, Outline outline)
    {
        if (outline.Pieces is [{ IsCircle: true } circle])
        {
            Circle(text, "OUTLINE", circle.Centre.X, circle.Centre.Y, circle.Radius);
            return;
        }
        Pair(text, 0, "POLYLINE");
        Pair(text, 8, "OUTLINE");
        Pair(text, 66, "1");
        Point(text, 0, 0, 0);
        Pair(text, 70, "1");
        foreach (var piece in outline.Pieces)
        {
            Pair(text, 0, "VERTEX");
            Pair(text, 8, "OUTLINE");
            Point(text, piece.From.X, piece.From.Y, 0);
            // The bulge is the tangent of a quarter of the arc's angle, positive counter-clockwise.
            if (piece.IsArc) Number(text, 42, Math.Tan(piece.Sweep / 4));
        }
        Pair(text, 0, "SEQEND");
        Pair(text, 8, "OUTLINE");
    }

    private static void Circle(StringBuilder text, string layer, double x, double y, double radius)
    {
        Pair(text, 0, "CIRCLE");
        Pair(text, 8, layer);
        Point(text, x, y, 0);
        Number(text, 40, 1000 * radius);
    }

    private static void Point(StringBuilder text, double x, double y, double z)
    {
        Number(text, 10, 1000 * x);
        Number(text, 20, 1000 * y);
        Number(text, 30, 1000 * z);
    }

    private static void Number(StringBuilder text, int code, double value) => Pair(text, code, value.ToString("0.0#########", CultureInfo.InvariantCulture));

    private static void Pair(StringBuilder text, int code, string value) =>
        text.Append(code.ToString(CultureInfo.InvariantCulture).PadLeft(3)).Append("\r\n").Append(value).Append("\r\n");
}
