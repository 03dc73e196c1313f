using Trivet.Cells;
using Trivet.Conductors;

namespace Trivet.Powering;

/// <summary>A wire there and back.</summary>
/// <param name="Section">m².</param>
/// <param name="Length">One way, m.</param>
/// <param name="Ambient">Of the air around it, °C.</param>
/// <param name="Temperature">Of the copper at load, °C.</param>
public sealed record Wire(double Section, double Length, WireLaying Laying, int Grouped, double Ambient, double Temperature)
{
    /// <summary>Ohms there and back.</summary>
    public double Loop => 2 * Length * Copper.Resistance(Section, Temperature);

    public double Capacity => Copper.Capacity(Section, Laying, Ambient, Grouped);
}

/// <summary>When a protection switches off.</summary>
public static class Tripping
{
    /// <summary>Peak of a direct current against the effective value that a magnet's band is stated in (common practice, no source).</summary>
    private static readonly double Peak = Math.Sqrt(2);

    /// <summary>What a fuse of class gG needs to melt within 5 s, times its rating, small ones (gates of IEC 60269-1, from memory).</summary>
    private const double FuseMelts = 5;

    /// <summary>Where the description of an electronic protection states nothing (common practice, no source).</summary>
    public const double ElectronicTrips = 1.3;

    /// <summary>A fuse of class gG melts for certain at 1.6 times its rating only, where a breaker trips at 1.45 (IEC 60269-1, IEC 60898-1, from memory): what a wire must bear more for it.</summary>
    public static double WireFactor(Protection protection) => protection == Protection.Fuse ? 1.6 / 1.45 : 1;

    /// <summary>Band of the magnet, times the rating, effective value (IEC 60898-1); null where there is no magnet.</summary>
    public static (double Not, double Certain)? Magnet(Protection protection) => protection switch
    {
        Protection.BreakerB => (3, 5),
        Protection.BreakerC => (5, 10),
        Protection.BreakerD => (10, 20),
        _ => null,
    };

    /// <summary>Amperes that switch it off for certain and soon. A magnet needs more of a direct current.</summary>
    /// <param name="stated">Of an electronic protection; not a number where nothing is stated.</param>
    public static double Certain(Protection protection, double rating, double stated, bool alternating) => Magnet(protection) is var (_, certain)
        ? certain * rating * (alternating ? 1 : Peak)
        : protection == Protection.Fuse ? FuseMelts * rating : double.IsNaN(stated) ? ElectronicTrips * rating : stated;

    /// <summary>What a fuse of class gG bears for certain for 0.1 s and for 10 s, times its rating (gates of IEC 60269-1 for 16 A: 85 and 33 A, from memory).</summary>
    private const double FuseBearsShort = 5, FuseBearsLong = 2, Short = 0.1, Long = 10;

    /// <summary>Peak of a surge, amperes, that a protection lets pass for certain: a breaker's magnet at its lower end, a fuse by how long it lasts, an electronic one up to where it switches off.</summary>
    /// <param name="trip">Amperes at which an electronic protection switches off at once.</param>
    /// <param name="lasting">Seconds.</param>
    public static double LetsPass(Protection protection, double rating, double trip, double lasting) => Magnet(protection) is var (not, _) ? not * rating * Peak
        : protection == Protection.Electronic ? trip
        : rating * (lasting <= Short ? FuseBearsShort : lasting <= Long ? FuseBearsLong : 1);
}
