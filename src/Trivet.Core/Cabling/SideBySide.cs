using Trivet.Numerics;

namespace Trivet.Cabling;

/// <summary>How a way of signals lies to one of power.</summary>
/// <param name="Beside">Length of it that runs along with the other nearer than the parting, metres.</param>
/// <param name="Angle">Smallest angle at which it crosses the other within the parting, radians; π/2 where it does not.</param>
public readonly record struct SideBySide(double Beside, double Angle)
{
    /// <summary>Flatter than this two ways run along, steeper they cross.</summary>
    private const double Along = Math.PI / 4;

    /// <summary>Length of the pieces that a way is looked at in, metres.</summary>
    private const double Piece = 0.05;

    /// <param name="parting">Distance from which on two ways do not mind each other, metres.</param>
    public static SideBySide Of(Line signals, Line power, double parting)
    {
        double beside = 0, angle = Math.PI / 2;
        for (int i = 1; i < signals.Points.Length; i++)
        {
            var (a, b) = (signals.Points[i - 1], signals.Points[i]);
            double length = (b - a).Norm;
            if (!(length > 0)) continue;
            int pieces = Math.Clamp((int)Math.Ceiling(length / Piece), 1, 1000);
            for (int k = 0; k < pieces; k++)
            {
                var (from, to) = (a + (double)k / pieces * (b - a), a + (double)(k + 1) / pieces * (b - a));
                bool along = false;
                for (int j = 1; j < power.Points.Length; j++)
                {
                    var (c, d) = (power.Points[j - 1], power.Points[j]);
                    if (!(Line.Closest(from, to, c, d).Distance < parting * (1 - 1e-9))) continue;
                    double between = Between(b - a, d - c);
                    if (between < Along) along = true;
                    else angle = Math.Min(angle, between);
                }
                if (along) beside += length / pieces;
            }
        }
        return new(beside, angle);
    }

    private static double Between(Vec3 u, Vec3 v) => Math.Atan2(u.Cross(v).Norm, Math.Abs(u.Dot(v)));
}
