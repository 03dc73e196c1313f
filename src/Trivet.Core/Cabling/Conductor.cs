namespace Trivet.Cabling;

/// <summary>Copper conductors.</summary>
public static class Conductor
{
    /// <summary>Usual temperature of a loaded PVC conductor at its limit, °C.</summary>
    public const double Warm = 70;

    /// <summary>Largest resistance at 20 °C of fine-stranded bare copper, class 5 [IEC-60228]: m², Ω/m.</summary>
    private static readonly (double Area, double Resistance)[] Class5 =
    [
        (0.5e-6, 39.0e-3), (0.75e-6, 26.0e-3), (1e-6, 19.5e-3), (1.5e-6, 13.3e-3), (2.5e-6, 7.98e-3), (4e-6, 4.95e-3), (6e-6, 3.30e-3), (10e-6, 1.91e-3), (16e-6, 1.21e-3),
    ];

    /// <summary>Ω of one metre; an area between two of the table's has the resistance of 19.5 Ω mm²/km over it. Not a number for an area that is not positive.</summary>
    /// <param name="area">m².</param>
    /// <param name="celsius">Of the copper: R(T) = R20·(1 + 0.00393·(T − 20)).</param>
    public static double ResistancePerMetre(double area, double celsius)
    {
        if (!(area > 0)) return double.NaN;
        double r20 = 19.5e-9 / area;
        foreach (var (a, r) in Class5)
            if (Math.Abs(a - area) < 1e-3 * a) r20 = r;
        return r20 * (1 + 0.00393 * (celsius - 20));
    }

    /// <summary>Volts lost on two wires of a length with a direct current.</summary>
    public static double Drop(double area, double length, double current, double celsius = Warm) => 2 * length * current * ResistancePerMetre(area, celsius);
}
