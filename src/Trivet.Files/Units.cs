using System.Collections.Immutable;
using System.Numerics;

namespace Trivet.Files;

/// <summary>A unit: its symbol, other spellings that are read, and its exact size in SI as a fraction.</summary>
/// <param name="Symbol">As written: <c>mm</c>, <c>m/s²</c>.</param>
/// <param name="Spellings">Other spellings, compared after <see cref="Units.Plain"/>.</param>
/// <param name="Numerator">Numerator of the SI size; π stands in it with 50 digits.</param>
/// <param name="Denominator">Denominator of the SI size.</param>
internal sealed record Unit(string Symbol, ImmutableArray<string> Spellings, BigInteger Numerator, BigInteger Denominator)
{
    /// <summary>The size as a power of ten: -3 for mm; null where it is none.</summary>
    public int? PowerOfTen { get; } = Log10(Numerator) - Log10(Denominator);

    /// <summary>Fractions such as 3/8 are in use with inches and feet only.</summary>
    public bool TakesFractions => Symbol is "in" or "ft";

    private static int? Log10(BigInteger value)
    {
        int power = value.ToString(System.Globalization.CultureInfo.InvariantCulture).Length - 1;
        return BigInteger.Pow(10, power) == value ? power : null;
    }
}

/// <summary>A kind of quantity with its units: the SI one first, then the others.</summary>
/// <param name="Measures">What it measures, for messages: "a length".</param>
/// <param name="Usual">Index of the unit used when a field names none.</param>
/// <param name="Example">A text of the right form.</param>
internal sealed record UnitSet(Dimension Dimension, string Measures, int Usual, string Example, ImmutableArray<Unit> All)
{
    public Unit Si => All[0];
    public Unit UsualUnit => All[Usual];
}

/// <summary>
/// Every unit once, as data. Sizes are exact: international inch 25.4 mm and foot 304.8 mm (yard and pound agreement of 1959,
/// from memory), degree π/180, minute 60 s, bar 100 kPa (SI brochure, from memory). A turn is 2π: revolutions per minute as
/// an angular speed are 2π/60 rad/s.
/// </summary>
internal static class Units
{
    // π to 50 decimals (OEIS A000796, from memory): far beyond a double, so that 180 deg is Math.PI to the last bit.
    private static readonly BigInteger PiNumerator = BigInteger.Parse("314159265358979323846264338327950288419716939937510", System.Globalization.CultureInfo.InvariantCulture);
    private static readonly BigInteger PiDenominator = BigInteger.Pow(10, 50);

    public static readonly ImmutableArray<UnitSet> Sets =
    [
        new(Dimension.One, "a plain number", 0, "4", [U("", 1, 1)]),
        new(Dimension.Length, "a length", 1, "300 mm",
            [U("m", 1, 1), U("mm", 1, 1000), U("cm", 1, 100), U("µm", 1, 1_000_000), U("in", 254, 10_000, "inch"), U("ft", 3048, 10_000)]),
        new(Dimension.Angle, "an angle", 1, "30 deg", [U("rad", 1, 1), Pi("deg", 1, 180), U("mrad", 1, 1000, "mm/m")]),
        new(Dimension.Mass, "a mass", 0, "1.2 kg", [U("kg", 1, 1), U("g", 1, 1000)]),
        new(Dimension.Time, "a time", 0, "0.3 s", [U("s", 1, 1), U("ms", 1, 1000), U("min", 60, 1), U("h", 3600, 1)]),
        new(Dimension.Rate, "a rate", 1, "45 1/min", [U("1/s", 1, 1, "/s", "Hz"), U("1/min", 1, 60, "/min"), U("1/h", 1, 3600, "/h")]),
        new(Dimension.Speed, "a speed", 0, "0.25 m/s", [U("m/s", 1, 1), U("mm/s", 1, 1000), U("m/min", 1, 60)]),
        new(Dimension.Acceleration, "an acceleration", 0, "20 m/s²", [U("m/s²", 1, 1), U("mm/s²", 1, 1000)]),
        new(Dimension.AngularSpeed, "an angular speed", 1, "360 deg/s",
            [U("rad/s", 1, 1), Pi("deg/s", 1, 180), Pi("1/min", 2, 60, "rpm", "/min")]),
        new(Dimension.AngularAcceleration, "an angular acceleration", 1, "4000 deg/s²", [U("rad/s²", 1, 1), Pi("deg/s²", 1, 180)]),
        new(Dimension.Current, "a current", 0, "1.5 A", [U("A", 1, 1), U("mA", 1, 1000)]),
        new(Dimension.Voltage, "a voltage", 0, "24 V", [U("V", 1, 1), U("mV", 1, 1000)]),
        new(Dimension.Power, "a power", 0, "150 W", [U("W", 1, 1), U("kW", 1000, 1)]),
        new(Dimension.Energy, "an energy", 0, "2.5 J", [U("J", 1, 1), U("kJ", 1000, 1)]),
        new(Dimension.Force, "a force", 0, "40 N", [U("N", 1, 1), U("kN", 1000, 1)]),
        new(Dimension.Torque, "a torque", 0, "1.8 N m", [U("N m", 1, 1), U("N cm", 1, 100)]),
        new(Dimension.Pressure, "a pressure", 1, "6 bar", [U("Pa", 1, 1), U("bar", 100_000, 1), U("kPa", 1000, 1)]),
        new(Dimension.Jerk, "a jerk", 0, "800 m/s³", [U("m/s³", 1, 1), U("mm/s³", 1, 1000)]),
        new(Dimension.AngularJerk, "an angular jerk", 1, "90000 deg/s³", [U("rad/s³", 1, 1), Pi("deg/s³", 1, 180)]),
        new(Dimension.Damping, "a force per speed", 0, "12 N s/m", [U("N s/m", 1, 1)]),
        new(Dimension.AngularDamping, "a torque per angular speed", 0, "0.02 N m s/rad", [U("N m s/rad", 1, 1)]),
        new(Dimension.Stiffness, "a stiffness", 1, "250 N/mm", [U("N/m", 1, 1), U("N/mm", 1000, 1), U("N/µm", 1_000_000, 1)]),
        new(Dimension.AngularStiffness, "a stiffness against turning", 0, "9000 N m/rad", [U("N m/rad", 1, 1), PerPi("N m/deg", 180, 1), U("kN m/rad", 1000, 1)]),
        new(Dimension.Inertia, "a moment of inertia", 1, "0.25 kg cm²", [U("kg m²", 1, 1), U("kg cm²", 1, 10_000), U("g cm²", 1, 10_000_000)]),
        new(Dimension.Resistance, "a resistance", 0, "0.15 ohm", [U("ohm", 1, 1, "Ω"), U("mohm", 1, 1000, "mΩ"), U("kohm", 1000, 1, "kΩ"), U("Mohm", 1_000_000, 1, "MΩ")]),
        new(Dimension.Capacitance, "a capacitance", 1, "10 mF", [U("F", 1, 1), U("mF", 1, 1000), U("µF", 1, 1_000_000)]),
        new(Dimension.BitRate, "a bit rate", 1, "500 kbit/s", [U("bit/s", 1, 1), U("kbit/s", 1000, 1), U("Mbit/s", 1_000_000, 1)]),
        new(Dimension.TorquePerCurrent, "a torque per current", 0, "0.28 N m/A", [U("N m/A", 1, 1)]),
        new(Dimension.Temperature, "a temperature", 0, "40 °C", [U("°C", 1, 1, "C")]),
        new(Dimension.TemperatureRise, "a difference of temperatures", 0, "80 K", [U("K", 1, 1)]),
        new(Dimension.Area, "an area", 1, "40 mm²", [U("m²", 1, 1), U("mm²", 1, 1_000_000), U("cm²", 1, 10_000)]),
        new(Dimension.Volume, "a volume", 1, "12 cm³", [U("m³", 1, 1), U("cm³", 1, 1_000_000, "ml"), U("mm³", 1, 1_000_000_000), U("l", 1, 1000, "dm3", "L")]),
        new(Dimension.Density, "a density", 0, "2700 kg/m³", [U("kg/m³", 1, 1), U("g/cm³", 1000, 1)]),
        new(Dimension.Flow, "a flow of free air", 1, "30 l/min", [U("m³/s", 1, 1), U("l/min", 1, 60_000, "L/min"), U("l/s", 1, 1000, "L/s"), U("m³/h", 1, 3600)]),
        new(Dimension.Stress, "a stress", 1, "200 MPa", [U("Pa", 1, 1), U("MPa", 1_000_000, 1, "N/mm²"), U("GPa", 1_000_000_000, 1)]),
        new(Dimension.Frequency, "a frequency", 0, "35 Hz", [U("Hz", 1, 1, "1/s")]),
        new(Dimension.AreaMoment, "a second moment of area", 1, "10.2 cm⁴",
            [U("m⁴", 1, 1), U("cm⁴", 1, 100_000_000), U("mm⁴", 1, 1_000_000_000_000)]),
        new(Dimension.HeatTransfer, "a heat transfer", 0, "5.5 W/m² K", [U("W/m² K", 1, 1, "W/(m2K)")]),
        new(Dimension.MassPerLength, "a mass per length", 0, "1.2 kg/m", [U("kg/m", 1, 1)]),
    ];

    /// <summary>The kinds a field of this dimension may be stated in: itself, or both for a coordinate of a drive.</summary>
    public static ImmutableArray<UnitSet> For(Dimension dimension) => dimension switch
    {
        Dimension.DriveCoordinate => [Set(Dimension.Length), Set(Dimension.Angle)],
        Dimension.DriveSpeed => [Set(Dimension.Speed), Set(Dimension.AngularSpeed)],
        Dimension.DriveAcceleration => [Set(Dimension.Acceleration), Set(Dimension.AngularAcceleration)],
        Dimension.DriveJerk => [Set(Dimension.Jerk), Set(Dimension.AngularJerk)],
        Dimension.DriveForce => [Set(Dimension.Force), Set(Dimension.Torque)],
        Dimension.DriveDamping => [Set(Dimension.Damping), Set(Dimension.AngularDamping)],
        Dimension.Setting =>
        [
            Set(Dimension.Length), Set(Dimension.Angle), Set(Dimension.Speed), Set(Dimension.AngularSpeed), Set(Dimension.Acceleration), Set(Dimension.AngularAcceleration),
            Set(Dimension.Jerk), Set(Dimension.AngularJerk), Set(Dimension.Current), Set(Dimension.Time), Set(Dimension.BitRate), Set(Dimension.One),
        ],
        Dimension.DriveStiffness => [Set(Dimension.Stiffness), Set(Dimension.AngularStiffness)],
        _ => [Set(dimension)],
    };

    public static UnitSet Set(Dimension dimension)
    {
        foreach (var set in Sets)
        {
            if (set.Dimension == dimension) return set;
        }

        throw new ArgumentOutOfRangeException(nameof(dimension), dimension, "no unit set of its own");
    }

    /// <summary>One spelling for each unit: no blanks or dots, u for micro, deg for the degree sign, 2, 3 and 4 for raised ones.</summary>
    public static string Plain(string unit)
    {
        var plain = new System.Text.StringBuilder(unit.Length);
        foreach (char c in unit)
        {
            switch (c)
            {
                case ' ' or '·' or '⋅' or '^': break;
                case 'µ' or 'μ': plain.Append('u'); break;
                case '°' or 'º': plain.Append("deg"); break;
                case '²': plain.Append('2'); break;
                case '³': plain.Append('3'); break;
                case '⁴': plain.Append('4'); break;
                default: plain.Append(c); break;
            }
        }

        return plain.ToString();
    }

    private static Unit U(string symbol, long numerator, long denominator, params ReadOnlySpan<string> spellings) =>
        new(symbol, [Plain(symbol), .. spellings], numerator, denominator);

    private static Unit Pi(string symbol, long numerator, long denominator, params ReadOnlySpan<string> spellings) =>
        new(symbol, [Plain(symbol), .. spellings], PiNumerator * numerator, PiDenominator * denominator);

    private static Unit PerPi(string symbol, long numerator, long denominator) =>
        new(symbol, [Plain(symbol)], PiDenominator * numerator, PiNumerator * denominator);
}
