using System.Collections.Immutable;
using Trivet.Numerics;

namespace Trivet.Adapters;

/// <summary>
/// Mass properties of plates as they are designed, without screws and pins. The outline's moments of area are integrals along its edge: of what is homogeneous of
/// degree n, 1/(n + 2)·∮ f·(p × dp) (Gauss' theorem). A hole is a pile of discs, whose moments are elementary. Both integrals are exact by Gauss' rule but for arcs,
/// where eight points on a quarter turn leave less than rounding.
/// </summary>
public static class PlateBody
{
    /// <summary>Of a plate or a stack of them, upper one first. Origin in the middle of the uppermost face, axes those of the upper pattern, z up; SI.</summary>
    public static MassProperties Of(ImmutableArray<AdapterPlate> plates)
    {
        MassProperties sum = default;
        double below = 0, turned = 0;
        foreach (var plate in plates)
        {
            below += plate.Thickness;
            sum += Of(plate).Turned(Mat3.RotationZ(turned)).MovedBy(-below * Vec3.UnitZ);
            turned += plate.Clocking;
        }
        return sum;
    }

    /// <summary>Of one plate, in its own axes.</summary>
    public static MassProperties Of(AdapterPlate plate)
    {
        var (area, first, square, product) = MomentsOf(plate.Outline);
        double t = plate.Thickness;
        var all = new Moments(
            area * t, new(first.X * t, first.Y * t, area * t * t / 2),
            new(square.X * t, square.Y * t, area * t * t * t / 3), new(product * t, first.Y * t * t / 2, first.X * t * t / 2));
        foreach (var hole in plate.Holes)
            foreach (var step in hole.Steps) all -= Of(step, hole.At);
        return all.Body(plate.Stuff.Density);
    }

    // Gauss' rules on 0 to 1 ([AbramowitzStegun1964, 25.4.30], from memory; the tests hold them against closed forms).
    private static readonly ImmutableArray<(double At, double Weight)> Three = [(0.1127016653792583, 5.0 / 18), (0.5, 4.0 / 9), (0.8872983346207417, 5.0 / 18)];

    private static readonly ImmutableArray<(double At, double Weight)> Eight =
    [
        .. new[] { (0.1834346424956498, 0.3626837833783620), (0.5255324099163290, 0.3137066458778873), (0.7966664774136267, 0.2223810344533745), (0.9602898564975363, 0.1012285362903763) }
            .SelectMany(p => new[] { ((1 - p.Item1) / 2, p.Item2 / 2), ((1 + p.Item1) / 2, p.Item2 / 2) }),
    ];

    /// <summary>Area, ∫x and ∫y, ∫x² and ∫y², ∫xy.</summary>
    private static (double Area, Vec2 First, Vec2 Square, double Product) MomentsOf(Outline outline)
    {
        double area = 0, product = 0, x = 0, y = 0, xx = 0, yy = 0;
        foreach (var piece in outline.Pieces)
        {
            int parts = piece.IsArc ? (int)Math.Ceiling(piece.Sweep / (Math.PI / 2) - 1e-9) : 1;
            for (int i = 0; i < parts; i++)
            {
                foreach (var (at, weight) in Eight)
                {
                    double s = (i + at) / parts;
                    var (p, along) = piece.IsArc ? OnArc(piece, s) : (piece.From + s * (piece.To - piece.From), piece.To - piece.From);
                    double cross = weight / parts * p.Cross(along);
                    area += cross / 2;
                    (x, y) = (x + cross / 3 * p.X, y + cross / 3 * p.Y);
                    (xx, yy, product) = (xx + cross / 4 * p.X * p.X, yy + cross / 4 * p.Y * p.Y, product + cross / 4 * p.X * p.Y);
                }
            }
        }
        return (area, new(x, y), new(xx, yy), product);

        static (Vec2, Vec2) OnArc(OutlinePiece piece, double s)
        {
            var arm = (piece.From - piece.Centre).Turned(s * piece.Sweep);
            return (piece.Centre + arm, piece.Sweep * new Vec2(-arm.Y, arm.X));
        }
    }

    private static Moments Of(HoleStep step, Vec2 at)
    {
        Moments sum = default;
        foreach (var (s, weight) in Three)
        {
            double z = step.Bottom + s * (step.Top - step.Bottom), r = step.RadiusBottom + s * (step.RadiusTop - step.RadiusBottom);
            double volume = weight * (step.Top - step.Bottom) * Math.PI * r * r;
            sum += new Moments(
                volume, volume * new Vec3(at.X, at.Y, z), volume * new Vec3(at.X * at.X + r * r / 4, at.Y * at.Y + r * r / 4, z * z), volume * new Vec3(at.X * at.Y, at.Y * z, z * at.X));
        }
        return sum;
    }

    /// <summary>Volume, ∫r, ∫x² ∫y² ∫z², and ∫xy ∫yz ∫zx.</summary>
    private readonly record struct Moments(double Volume, Vec3 First, Vec3 Square, Vec3 Product)
    {
        public static Moments operator +(Moments a, Moments b) => new(a.Volume + b.Volume, a.First + b.First, a.Square + b.Square, a.Product + b.Product);
        public static Moments operator -(Moments a, Moments b) => new(a.Volume - b.Volume, a.First - b.First, a.Square - b.Square, a.Product - b.Product);

        public MassProperties Body(double density)
        {
            var c = First / Volume;
            double xx = Square.X - Volume * c.X * c.X, yy = Square.Y - Volume * c.Y * c.Y, zz = Square.Z - Volume * c.Z * c.Z;
            double xy = Product.X - Volume * c.X * c.Y, yz = Product.Y - Volume * c.Y * c.Z, zx = Product.Z - Volume * c.Z * c.X;
            return new(density * Volume, c, density * new Mat3(new(yy + zz, -xy, -zx), new(-xy, zz + xx, -yz), new(-zx, -yz, xx + yy)));
        }
    }
}
