using Trivet.Cells;

namespace Trivet.Protecting;

/// <summary>One end of a lift. Metres and radians.</summary>
/// <param name="Reach">H: from the ankles forward to the hands.</param>
/// <param name="Height">V: of the hands above the floor.</param>
/// <param name="Turn">A: of the load from straight ahead.</param>
public readonly record struct LiftEnd(double Reach, double Height, double Turn);

/// <summary>One lift among several.</summary>
/// <param name="Recommended">Recommended mass without the factor of frequency, kilograms.</param>
public readonly record struct LiftTask(double Mass, double Recommended, double PerSecond, LiftDuration Duration, double OriginHeight);

/// <summary>
/// The revised NIOSH lifting equation [Waters1994, pages 7 to 29], metric form: RWL = LC·HM·VM·DM·AM·FM·CM with LC = 23 kg, HM = 25/H, VM = 1 − 0.003·|V − 75|,
/// DM = 0.82 + 4.5/D, AM = 1 − 0.0032·A, in centimetres and degrees. H below 25 counts as 25, D below 25 as 25; H above 63, V above 175, D above 175, A above 135°
/// give zero. Full precision; the manual's worksheets round each factor to two places.
/// <para>
/// It holds for one person who lifts with both hands, standing, in a usual room, with nothing slipping underfoot; never for two or more together.
/// </para>
/// </summary>
public static class LiftingEquation
{
    private const double LoadConstant = 23;

    // Table 5: lifts per minute, then factors for up to 1 h (V below 75 cm, V from 75 cm on), up to 2 h, up to 8 h. Up to 1 h as printed; 2 h and 8 h from memory.
    private static readonly double[][] Frequencies =
    [
        [0.2, 1.00, 1.00, .95, .95, .85, .85], [0.5, .97, .97, .92, .92, .81, .81], [1, .94, .94, .88, .88, .75, .75], [2, .91, .91, .84, .84, .65, .65],
        [3, .88, .88, .79, .79, .55, .55], [4, .84, .84, .72, .72, .45, .45], [5, .80, .80, .60, .60, .35, .35], [6, .75, .75, .50, .50, .27, .27],
        [7, .70, .70, .42, .42, .22, .22], [8, .60, .60, .35, .35, .18, .18], [9, .52, .52, .30, .30, 0, .15], [10, .45, .45, .26, .26, 0, .13],
        [11, .41, .41, 0, .23, 0, 0], [12, .37, .37, 0, .21, 0, 0], [13, 0, .34, 0, 0, 0, 0], [14, 0, .31, 0, 0, 0, 0], [15, 0, .28, 0, 0, 0, 0],
    ];

    /// <summary>Recommended mass at one end of a lift, kilograms; zero where nobody should lift.</summary>
    /// <param name="from">Where the lift begins: its height decides the frequency factor.</param>
    /// <param name="to">Where it ends.</param>
    /// <param name="at">The end that is judged, one of both.</param>
    public static double Recommended(LiftEnd from, LiftEnd to, LiftEnd at, double perSecond, LiftDuration duration, Coupling coupling) =>
        LoadConstant * Horizontal(at.Reach) * Vertical(at.Height) * Distance(Math.Abs(to.Height - from.Height)) * Asymmetry(at.Turn)
        * Frequency(perSecond, duration, from.Height) * CouplingOf(coupling, at.Height);

    /// <summary>
    /// Composite lifting index of several lifts by one person in one shift [Waters1994, pages 43 to 46, from memory]: the largest single index, and for each further lift, in falling
    /// order of the single indices, its frequency-independent index times what all lifts so far together leave less of the frequency factor:
    /// L/FIRWL·(1/FM(F₁ + … + Fᵢ) − 1/FM(F₁ + … + Fᵢ₋₁)). All are done for as long as the longest of them. Infinite where together they are too many.
    /// </summary>
    public static double Composite(IEnumerable<LiftTask> lifts)
    {
        LiftTask[] all = [.. lifts];
        var longest = all.Length == 0 ? LiftDuration.Short : all.Max(l => l.Duration);
        LiftTask[] falling = [.. all.OrderByDescending(l => l.Mass / (l.Recommended * Factor(l, l.PerSecond)))];
        double index = 0, often = 0;
        foreach (var lift in falling)
        {
            double before = often, own = lift.Mass / lift.Recommended;
            often += lift.PerSecond;
            index += before == 0 ? own / Factor(lift, often) : own * (1 / Factor(lift, often) - 1 / Factor(lift, before));
            if (!double.IsFinite(index)) return double.PositiveInfinity;
        }
        return index;

        double Factor(LiftTask lift, double perSecond) => Frequency(perSecond, longest, lift.OriginHeight);
    }

    public static double Horizontal(double metres) => metres > 0.63 ? 0 : 0.25 / Math.Max(0.25, metres);

    public static double Vertical(double metres) => metres is < 0 or > 1.75 ? 0 : 1 - 0.3 * Math.Abs(metres - 0.75);

    public static double Distance(double metres) => metres > 1.75 ? 0 : 0.82 + 0.045 / Math.Max(0.25, metres);

    public static double Asymmetry(double radians)
    {
        double degrees = Math.Abs(radians) * 180 / Math.PI;
        return degrees > 135 ? 0 : 1 - 0.0032 * degrees;
    }

    /// <summary>Between two rows of the table the more frequent one counts.</summary>
    public static double Frequency(double perSecond, LiftDuration duration, double originHeight)
    {
        double perMinute = 60 * perSecond;
        var row = Array.Find(Frequencies, f => perMinute <= f[0] * (1 + 1e-12));
        return row is null ? 0 : row[1 + 2 * (int)duration + (originHeight < 0.75 ? 0 : 1)];
    }

    /// <summary>Table 7.</summary>
    public static double CouplingOf(Coupling coupling, double height) => coupling switch
    {
        Coupling.Good => 1,
        Coupling.Fair => height < 0.75 ? 0.95 : 1,
        _ => 0.9,
    };
}
