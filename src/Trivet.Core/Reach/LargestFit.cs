using Trivet.Findings;
using Trivet.Numerics;

namespace Trivet.Reach;

/// <summary>An upright cylinder of platform positions, base frame, metres.</summary>
/// <param name="Low">Centre of the lower face.</param>
/// <param name="Assurance">Proved: every position in it is reached. Sampled: the proof was not found within its effort.</param>
public sealed record UprightCylinder(Vec3 Low, double Radius, double Height, Assurance Assurance)
{
    public double Volume => Math.PI * Radius * Radius * Height;
}

/// <summary>An upright box of platform positions along the base frame's axes, metres; flat (no depth along y) for two chains.</summary>
/// <param name="Assurance">As for <see cref="UprightCylinder"/>.</param>
public sealed record UprightBox(Vec3 Low, Vec3 High, Assurance Assurance)
{
    public Vec3 Size => High - Low;
}

/// <summary>
/// The largest upright cylinder and box within the reach, under a plane or free in height.
/// <para>
/// How it goes wrong: the search climbs from the best of a coarse table and may stop on a lesser hill; what it returns is nevertheless
/// proved to be within the reach wherever it says so. It is made smaller in small steps, at most by a tenth, until the proof by interval
/// bounds succeeds; so the true largest is a little larger.
/// </para>
/// <para>
/// Model: a cross-section is a gauge g₁…g_m of directions to its border; its scale at a height is the largest t for which
/// centre + t·g_k is reached for all k. A solid between two heights has the smallest scale of the heights between.
/// </para>
/// </summary>
public static class LargestFit
{
    private const int Heights = 32;
    private const int MostBoxes = 60_000;

    /// <summary>How much of a sampled solid's size is tried to be proved, largest first.</summary>
    private static readonly double[] Shares = [0.998, 0.995, 0.99, 0.98, 0.96, 0.93, 0.9];

    /// <summary>The cylinder of largest volume; null where nothing is reached below the plane, and for two chains.</summary>
    /// <param name="top">Height z of the plane above it, base frame; null leaves it free.</param>
    public static UprightCylinder? Cylinder(ReachableSet set, double? top = null, CancellationToken stop = default)
    {
        if (set.Robot.Planar) return null;
        var gauge = new Vec3[72];
        for (int k = 0; k < gauge.Length; k++)
        {
            var (s, c) = Math.SinCos(Math.Tau * k / gauge.Length);
            gauge[k] = new(c, s, 0);
        }

        if (Search(set, top, _ => gauge, _ => Math.PI, shapes: 1) is not { } found) return null;
        var proof = new ReachEnclosure(set);
        foreach (double share in Proving(set))
        {
            double radius = share * found.Scale, z0 = Shrunk(found.Bottom, found.Top, share, top), height = share * (found.Top - found.Bottom);
            Bounds box = new(new(found.X - radius, found.Y - radius, z0), new(found.X + radius, found.Y + radius, z0 + height));
            Interval square = Interval.Square(radius);
            bool Apart(IntervalVec3 p) => (Interval.Square(p.X - found.X) + Interval.Square(p.Y - found.Y)).Lower > square.Upper;
            if (proof.Holds(box, Apart, MostBoxes, stop)) return new(new(found.X, found.Y, z0), radius, height, Assurance.Proved);
        }

        return new(new(found.X, found.Y, found.Bottom), found.Scale, found.Top - found.Bottom, Assurance.Sampled);
    }

    /// <summary>The box of largest volume (two chains: largest area) along the base frame's axes; null where nothing is reached below the plane.</summary>
    /// <param name="top">Height z of the plane above it, base frame; null leaves it free.</param>
    public static UprightBox? Box(ReachableSet set, double? top = null, CancellationToken stop = default)
    {
        bool planar = set.Robot.Planar;
        if (Search(set, top, Gauge, shape => planar ? 2 : 4 * Half(shape).X * Half(shape).Y, shapes: planar ? 1 : 13) is not { } found) return null;
        Vec3 half = found.Scale * Half(found.Shape), centre = new(found.X, found.Y, 0);
        var proof = new ReachEnclosure(set);
        foreach (double share in Proving(set))
        {
            double z0 = Shrunk(found.Bottom, found.Top, share, top), z1 = z0 + share * (found.Top - found.Bottom);
            Bounds box = new(centre - share * half + z0 * Vec3.UnitZ, centre + share * half + z1 * Vec3.UnitZ);
            if (proof.Holds(box, _ => false, MostBoxes, stop)) return new(box.Low, box.High, Assurance.Proved);
        }

        return new(centre - half + found.Bottom * Vec3.UnitZ, centre + half + found.Top * Vec3.UnitZ, Assurance.Sampled);

        // The shape is the angle of the half diagonal, from x: 45° is a square.
        Vec3 Half(double shape) => planar ? Vec3.UnitX : new(Math.Cos(shape), Math.Sin(shape), 0);

        Vec3[] Gauge(double shape)
        {
            if (planar) return [Vec3.UnitX, -Vec3.UnitX];
            const int Side = 12;
            Vec3 h = Half(shape);
            var gauge = new Vec3[4 * Side];
            for (int k = 0; k < Side; k++)
            {
                double along = 2.0 * k / Side - 1;
                gauge[4 * k] = new(along * h.X, -h.Y, 0);
                gauge[4 * k + 1] = new(h.X, along * h.Y, 0);
                gauge[4 * k + 2] = new(-along * h.X, h.Y, 0);
                gauge[4 * k + 3] = new(-h.X, -along * h.Y, 0);
            }

            return gauge;
        }
    }

    /// <summary>The enclosure bounds closure, mode and travel alone: within further limits a solid is not proved, and stays sampled.</summary>
    private static double[] Proving(ReachableSet set) => set.Limits.Any ? [] : Shares;

    private static double Shrunk(double bottom, double top, double share, double? plane) =>
        // A solid that touches the plane stays there; a free one shrinks about its middle.
        top >= plane ? top - share * (top - bottom) : 0.5 * (top + bottom) - 0.5 * share * (top - bottom);

    private sealed record Found(double X, double Y, double Bottom, double Top, double Shape, double Scale);

    /// <summary>The solid of largest scale² (or scale, for two chains) × cross-section × height.</summary>
    private static Found? Search(ReachableSet set, double? plane, Func<double, Vec3[]> gaugeOf, Func<double, double> sectionOf, int shapes)
    {
        var box = set.Box;
        double highest = Math.Min(plane ?? double.PositiveInfinity, box.High.Z), step = (highest - box.Low.Z) / Heights;
        if (!(step > 0)) return null;
        int power = set.Robot.Planar ? 1 : 2;

        Found? best = null;
        double most = 0;
        Span<double> scales = stackalloc double[Heights + 1];
        for (int n = 0; n < shapes; n++)
        {
            double shape = Math.PI / 2 * (n + 1) / (shapes + 1);
            var gauge = gaugeOf(shape);
            foreach (Vec3 centre in new[] { Vec3.Zero, box.Centre with { Z = 0 } })
            {
                for (int k = 0; k <= Heights; k++) scales[k] = Scale(set, centre + (box.Low.Z + k * step) * Vec3.UnitZ, gauge, box.Size.Norm);
                for (int from = 0; from < Heights; from++)
                {
                    double scale = scales[from];
                    for (int to = from + 1; to <= Heights && scale > 0; to++)
                    {
                        scale = Math.Min(scale, scales[to]);
                        double volume = sectionOf(shape) * Math.Pow(scale, power) * (to - from) * step;
                        if (volume <= most) continue;
                        most = volume;
                        best = new(centre.X, centre.Y, box.Low.Z + from * step, box.Low.Z + to * step, shape, scale);
                    }
                }
            }
        }

        return best is null ? null : Climb(set, plane, gaugeOf, sectionOf, best, most, power, step, shapes > 1);
    }

    /// <summary>Compass search: along each variable in turn, both ways, halving the steps when nothing improves. No derivative, no chance.</summary>
    private static Found Climb(
        ReachableSet set, double? plane, Func<double, Vec3[]> gaugeOf, Func<double, double> sectionOf, Found best, double most, int power, double step, bool reshape)
    {
        double longest = set.Box.Size.Norm;
        for (double s = step; s > step / 200; s /= 2)
        {
            for (bool better = true; better;)
            {
                better = false;
                foreach (double d in new[] { s, -s })
                {
                    better |= Try(best with { Bottom = best.Bottom + d });
                    better |= Try(best with { Top = best.Top + d });
                    better |= Try(best with { X = best.X + d });
                    if (!set.Robot.Planar) better |= Try(best with { Y = best.Y + d });
                    if (reshape) better |= Try(best with { Shape = best.Shape + d / best.Scale / 4 });
                }
            }
        }

        return best;

        bool Try(Found candidate)
        {
            double height = candidate.Top - candidate.Bottom;
            if (!(height > 0) || candidate.Top > plane || candidate.Shape is <= 0 or >= Math.PI / 2) return false;
            double section = sectionOf(candidate.Shape) * height, needed = Math.Pow(most / section, 1.0 / power);
            double scale = double.PositiveInfinity;
            var gauge = gaugeOf(candidate.Shape);
            // The ends first: they decide most often, and a scale already too small ends the trial.
            const int Slices = 12;
            for (int k = 0; k <= Slices && scale > needed; k++)
            {
                int slice = k switch { 0 => 0, 1 => Slices, _ => k - 1 };
                Vec3 at = new(candidate.X, candidate.Y, candidate.Bottom + height * slice / Slices);
                scale = Math.Min(scale, Scale(set, at, gauge, Math.Min(scale, longest)));
            }

            double volume = section * Math.Pow(scale, power);
            // Without a least gain rounding could keep two candidates changing places.
            if (!(volume > most * (1 + 1e-9))) return false;
            most = volume;
            best = candidate with { Scale = scale };
            return true;
        }
    }

    /// <summary>The largest scale at which the gauge about a centre is reached, looking at a few points on the way out of each direction.</summary>
    private static double Scale(ReachableSet set, Vec3 centre, Vec3[] gauge, double largest)
    {
        if (!set.Contains(centre)) return 0;
        double scale = largest;
        foreach (Vec3 g in gauge)
        {
            const int OnTheWay = 6;
            double within = 0;
            int n = 1;
            for (; n <= OnTheWay && set.Contains(centre + scale * n / OnTheWay * g); n++) within = scale * n / OnTheWay;
            if (n > OnTheWay) continue;
            double without = scale * n / OnTheWay;
            while (without - within > 1e-5 * largest)
            {
                double middle = 0.5 * (within + without);
                if (set.Contains(centre + middle * g)) within = middle;
                else without = middle;
            }

            scale = within;
        }

        return scale;
    }
}
