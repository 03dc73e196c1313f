using Trivet.Cells;

namespace Trivet.Bolting;

/// <summary>
/// How far screw and clamped layers yield by force [VDI-2230-1], section 5.1, metres per newton.
/// <para>
/// Screw: its parts in a row, l/(E·A): the head as 0.4 d (socket) or 0.5 d (hexagon) of nominal area; the clamped length as thread at its root, since cap
/// screws so short have thread up to the head; the engaged thread as 0.5 d at its root and 0.33 d (tapped) or 0.4 d (nut) of nominal area in the
/// nut's material.
/// Layers: the cone of pressure that opens from the head with tan φ, to the middle with a nut and to the joint's face with a tapped hole, cut off at the
/// width of the narrowest layer. A layer from z₁ to z₂ gives ∫dz/(E·π/4·(D² − d²)), in closed form where D grows evenly.
/// </para>
/// </summary>
public static class Resilience
{
    public static double OfScrew(JointInput input)
    {
        var t = input.Thread;
        double e = input.Class.Modulus, head = input.Screw.Head == ScrewHead.Hexagon ? 0.5 : 0.4;
        bool nut = input.Into != ThreadIn.Tapped;
        double inNut = (nut ? 0.4 : 0.33) * t.D / ((nut ? e : input.ThreadStuff.Modulus) * t.NominalArea);
        return (head * t.D / t.NominalArea + (input.ClampLength + 0.5 * t.D) / t.RootArea) / e + inNut;
    }

    public static double OfLayers(JointInput input)
    {
        double length = input.ClampLength, dw = input.Bearing, hole = input.Thread.Passage, width = input.Layers.Min(l => l.Width);
        bool nut = input.Into != ThreadIn.Tapped;
        double open = nut ? length / 2 : length;
        double tan = TanOfCone(length / dw, (double.IsFinite(width) ? width : dw + length) / dw, nut);
        double sum = 0, from = 0;
        foreach (var layer in input.Layers)
        {
            double to = from + layer.Thickness;
            // With a nut the cone closes again from the middle on: the two halves mirror each other.
            if (!nut || to <= open) sum += Stretch(from, to) / layer.Stuff.Modulus;
            else if (from >= open) sum += Stretch(length - to, length - from) / layer.Stuff.Modulus;
            else sum += (Stretch(from, open) + Stretch(length - to, open)) / layer.Stuff.Modulus;
            from = to;
        }
        return sum;

        double Stretch(double a, double b)
        {
            // Where the cone meets the layers' edge it goes on as a tube.
            double edge = (width - dw) / (2 * tan);
            if (a >= edge) return (b - a) / Area(width);
            if (b > edge) return Stretch(a, edge) + Stretch(edge, b);
            double d1 = dw + 2 * a * tan, d2 = dw + 2 * b * tan;
            // ∫ dz/(D² − d²) with dD = 2·tan φ·dz.
            return 4 / Math.PI * (Math.Log((d2 - hole) / (d2 + hole)) - Math.Log((d1 - hole) / (d1 + hole))) / (4 * hole * tan);
        }

        double Area(double d) => Math.PI / 4 * (d * d - hole * hole);
    }

    /// <summary>[VDI-2230-1], equations 41 and 42: a screw in a tapped hole, and one with a nut.</summary>
    private static double TanOfCone(double slenderness, double spread, bool nut) => nut
        ? 0.362 + 0.032 * Math.Log(slenderness / 2) + 0.153 * Math.Log(spread)
        : 0.348 + 0.013 * Math.Log(slenderness) + 0.193 * Math.Log(spread);
}
