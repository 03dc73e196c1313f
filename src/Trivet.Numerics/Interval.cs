namespace Trivet.Numerics;

/// <summary>
/// A closed interval of real numbers with outward rounding: the result of every operation contains the exact result for every
/// choice of points in its operands. An operation that is not defined everywhere on its operands gives <see cref="Whole"/>,
/// never a silently narrowed interval; so does anything that is not a number.
/// <para>
/// Basic operations and the square root are correctly rounded in IEEE 754 arithmetic, so one step outward
/// (<see cref="Math.BitDecrement(double)"/>, <see cref="Math.BitIncrement(double)"/>) is enough. The run-time library's
/// trigonometric functions are not promised to be correctly rounded; they are padded by <see cref="LibraryError"/>.
/// </para>
/// </summary>
public readonly struct Interval : IEquatable<Interval>
{
    /// <summary>
    /// Assumed largest relative error of the library's sin, cos, acos and atan2: 8 units in the last place. Common C libraries
    /// state less than 1 to 2 (common practice, no guarantee is published for every platform).
    /// </summary>
    public const double LibraryError = 8 * 1.1102230246251565e-16;

    public double Lower { get; }
    public double Upper { get; }

    private Interval(double lower, double upper, bool _)
    {
        Lower = lower;
        Upper = upper;
    }

    /// <summary>From lower to upper; the whole line when they are not in order or not numbers.</summary>
    public Interval(double lower, double upper)
    {
        bool ordered = lower <= upper;
        Lower = ordered ? lower : double.NegativeInfinity;
        Upper = ordered ? upper : double.PositiveInfinity;
    }

    /// <summary>All real numbers: nothing is known.</summary>
    public static Interval Whole => new(double.NegativeInfinity, double.PositiveInfinity, true);

    public static Interval Zero => default;

    /// <summary>The single number x, taken as exact; the whole line when x is not a number.</summary>
    public static implicit operator Interval(double x) => double.IsNaN(x) ? Whole : new(x, x, true);

    /// <summary>x, known to within ± error.</summary>
    public static Interval Around(double x, double error) =>
        new(Math.BitDecrement(x - Math.Abs(error)), Math.BitIncrement(x + Math.Abs(error)));

    /// <summary>Both ends are numbers: something is known.</summary>
    public bool IsBounded => double.IsFinite(Lower) && double.IsFinite(Upper);

    /// <summary>The middle, within the interval; zero for the whole line.</summary>
    public double Mid => IsBounded ? Math.Clamp(0.5 * Lower + 0.5 * Upper, Lower, Upper) : double.IsFinite(Lower) ? Lower : double.IsFinite(Upper) ? Upper : 0;

    /// <summary>Upper − lower, rounded up.</summary>
    public double Width => Math.BitIncrement(Upper - Lower);

    /// <summary>Largest distance of a point of the interval from x, rounded up.</summary>
    public double RadiusAbout(double x) => Math.BitIncrement(Math.Max(Upper - x, x - Lower));

    /// <summary>Largest absolute value.</summary>
    public double Magnitude => Math.Max(Math.Abs(Lower), Math.Abs(Upper));

    /// <summary>Smallest absolute value.</summary>
    public double Mignitude => Lower > 0 ? Lower : Upper < 0 ? -Upper : 0;

    public bool Contains(double x) => Lower <= x && x <= Upper;
    public bool Contains(Interval other) => Lower <= other.Lower && other.Upper <= Upper;

    /// <summary>Smallest interval that holds both.</summary>
    public Interval Hull(Interval other) => new(Math.Min(Lower, other.Lower), Math.Max(Upper, other.Upper), true);

    /// <summary>
    /// The part common to two enclosures of the same quantity. Two enclosures that do not meet would mean that one of them is
    /// wrong; the whole line is then the only honest answer.
    /// </summary>
    public Interval And(Interval other) => new(Math.Max(Lower, other.Lower), Math.Min(Upper, other.Upper));

    public static Interval operator -(Interval a) => new(-a.Upper, -a.Lower, true);

    public static Interval operator +(Interval a, Interval b) => Outward(a.Lower + b.Lower, a.Upper + b.Upper);

    public static Interval operator -(Interval a, Interval b) => Outward(a.Lower - b.Upper, a.Upper - b.Lower);

    public static Interval operator *(Interval a, Interval b)
    {
        double p = a.Lower * b.Lower, q = a.Lower * b.Upper, r = a.Upper * b.Lower, s = a.Upper * b.Upper;
        return Outward(Math.Min(Math.Min(p, q), Math.Min(r, s)), Math.Max(Math.Max(p, q), Math.Max(r, s)));
    }

    public static Interval operator *(double a, Interval b)
    {
        double p = a * b.Lower, q = a * b.Upper;
        return Outward(Math.Min(p, q), Math.Max(p, q));
    }

    public static Interval operator /(Interval a, Interval b)
    {
        if (b.Contains(0)) return Whole;
        double p = a.Lower / b.Lower, q = a.Lower / b.Upper, r = a.Upper / b.Lower, s = a.Upper / b.Upper;
        return Outward(Math.Min(Math.Min(p, q), Math.Min(r, s)), Math.Max(Math.Max(p, q), Math.Max(r, s)));
    }

    public static Interval Abs(Interval a) => new(a.Mignitude, a.Magnitude, true);

    public static Interval Square(Interval a)
    {
        double low = a.Mignitude, high = a.Magnitude;
        return new(Math.Max(0, Math.BitDecrement(low * low)), Math.BitIncrement(high * high));
    }

    /// <summary>Square root; the whole line when any point is negative.</summary>
    public static Interval Sqrt(Interval a) => a.Lower >= 0
        ? new(Math.Max(0, Math.BitDecrement(Math.Sqrt(a.Lower))), Math.BitIncrement(Math.Sqrt(a.Upper)))
        : Whole;

    public static Interval Sin(Interval a) => Cos(a - HalfPi);

    /// <summary>Cosine of an angle in radians.</summary>
    public static Interval Cos(Interval a)
    {
        // Far from zero the reduction below loses its digits; no angle of a machine is there.
        if (!(a.Magnitude < 1e5) || a.Width >= Math.Tau) return new(-1, 1, true);

        double atLower = Math.Cos(a.Lower), atUpper = Math.Cos(a.Upper);
        double low = Math.Max(-1, Math.Min(atLower, atUpper) - LibraryError), high = Math.Min(1, Math.Max(atLower, atUpper) + LibraryError);

        // cos has an extreme at every multiple of π; one that lies within rounding of an end counts as inside.
        double first = Math.Ceiling(a.Lower / Math.PI - 1e-9), last = Math.Floor(a.Upper / Math.PI + 1e-9);
        for (double k = first; k <= last; k++)
        {
            if (k % 2 == 0) high = 1;
            else low = -1;
        }
        return new(low, high);
    }

    /// <summary>Angle in [0, π] whose cosine is a; the whole line when any point lies outside [−1, 1].</summary>
    public static Interval Acos(Interval a) => a.Lower >= -1 && a.Upper <= 1
        ? new(Math.Max(0, Padded(Math.Acos(a.Upper)).Lower), Padded(Math.Acos(a.Lower)).Upper)
        : Whole;

    /// <summary>
    /// Angle of the point (x, y) in (−π, π]. The whole line where the box of points touches the origin or the negative x axis,
    /// across which the angle jumps.
    /// </summary>
    public static Interval Atan2(Interval y, Interval x)
    {
        if (!y.IsBounded || !x.IsBounded || (x.Lower <= 0 && y.Contains(0))) return Whole;

        // Seen from the origin, the extreme directions of a box that does not hold it are those of its corners.
        double a = Math.Atan2(y.Lower, x.Lower), b = Math.Atan2(y.Lower, x.Upper);
        double c = Math.Atan2(y.Upper, x.Lower), d = Math.Atan2(y.Upper, x.Upper);
        return new(
            Padded(Math.Min(Math.Min(a, b), Math.Min(c, d))).Lower,
            Padded(Math.Max(Math.Max(a, b), Math.Max(c, d))).Upper);
    }

    /// <summary>π/2 between two neighbouring doubles.</summary>
    private static Interval HalfPi => new(Math.BitDecrement(Math.PI / 2), Math.BitIncrement(Math.PI / 2), true);

    private static Interval Padded(double x) => Around(x, LibraryError * Math.Abs(x));

    /// <summary>One step outward; the whole line when an end is not a number (∞ − ∞, 0·∞).</summary>
    private static Interval Outward(double lower, double upper) => new(Math.BitDecrement(lower), Math.BitIncrement(upper));

    public bool Equals(Interval other) => Lower.Equals(other.Lower) && Upper.Equals(other.Upper);
    public override bool Equals(object? obj) => obj is Interval other && Equals(other);
    public override int GetHashCode() => HashCode.Combine(Lower, Upper);
    public static bool operator ==(Interval a, Interval b) => a.Equals(b);
    public static bool operator !=(Interval a, Interval b) => !a.Equals(b);
    public override string ToString() => FormattableString.Invariant($"[{Lower:R}, {Upper:R}]");
}
