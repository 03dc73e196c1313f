using System.Collections.Immutable;
using System.Globalization;
using System.Numerics;

namespace Trivet.Files;

/// <summary>The kinds of quantity a field may hold, each with its units (Units.cs).</summary>
public enum Dimension
{
    One,
    Length,
    Angle,
    Mass,
    Time,
    Rate,
    Speed,
    Acceleration,
    AngularSpeed,
    AngularAcceleration,
    Current,
    Voltage,
    Power,
    Energy,
    Force,
    Torque,
    Pressure,
    Jerk,
    AngularJerk,
    Damping,
    AngularDamping,
    Stiffness,
    AngularStiffness,
    Inertia,
    Resistance,
    Capacitance,
    TorquePerCurrent,
    /// <summary>Bits per second.</summary>
    BitRate,
    /// <summary>A temperature in degrees Celsius, which is how it is kept: no unit to convert from.</summary>
    Temperature,
    /// <summary>A difference of temperatures, kelvin.</summary>
    TemperatureRise,
    Area,
    Volume,
    Density,
    /// <summary>Volume of free air in a time.</summary>
    Flow,
    /// <summary>Stress, strength or modulus of a material: pascal in the thousands of millions, where <see cref="Pressure"/> is of air.</summary>
    Stress,
    Frequency,
    /// <summary>Second moment of area, and torsion constant.</summary>
    AreaMoment,
    MassPerLength,
    /// <summary>Power through an area for a difference of temperatures.</summary>
    HeatTransfer,
    /// <summary>Length on a rail delta, angle on a crank delta: the text's unit decides, the family must agree.</summary>
    DriveCoordinate,
    /// <summary>Speed or angular speed, likewise.</summary>
    DriveSpeed,
    /// <summary>Acceleration or angular acceleration, likewise.</summary>
    DriveAcceleration,
    /// <summary>Jerk or angular jerk, likewise.</summary>
    DriveJerk,
    /// <summary>Force or torque, likewise.</summary>
    DriveForce,
    /// <summary>Friction per speed, likewise.</summary>
    DriveDamping,
    /// <summary>Force per length or torque per angle, likewise.</summary>
    DriveStiffness,
    /// <summary>Whatever a parameter of the controller holds: the quantity decides, the text's unit must agree.</summary>
    Setting,
}

/// <summary>A parsed quantity or why it was refused.</summary>
/// <param name="Value">SI value; not a number when refused.</param>
/// <param name="Problem">What is wrong; empty when accepted.</param>
/// <param name="Remedy">What would be right; empty when accepted.</param>
/// <param name="Dimension">What the unit measures: tells a length from an angle where a drive's coordinate may be either.</param>
public readonly record struct QuantityResult(double Value, string Problem, string Remedy, Dimension Dimension = Dimension.One)
{
    public bool Ok => Problem.Length == 0;
}

/// <summary>
/// Quantities as text with their unit: <c>"300 mm"</c>. Accepts a decimal comma or point, blanks between groups of three digits
/// and fractions of an inch. Reading is exact up to one final rounding, and what <see cref="Format"/> writes reads back to the same double.
/// </summary>
public static class Quantity
{
    private const int LongestText = 80;

    public static QuantityResult Parse(string text, Dimension dimension)
    {
        string example = Units.For(dimension)[0].Example;
        string plain = NumberText.PlainBlanks(text).Trim();
        if (plain.Length == 0) return Refuse("nothing is stated", $"write it like \"{example}\"");
        if (plain.Length > LongestText) return Refuse("this is too long for a quantity", $"write it like \"{example}\"");

        var number = NumberText.Read(plain);
        if (number.Problem.Length > 0) return Refuse(number.Problem, number.Remedy.Length > 0 ? number.Remedy : $"write it like \"{example}\"");

        string stated = plain[number.Length..].Trim();
        if (dimension == Dimension.One)
        {
            return stated.Length == 0
                ? Finish(number, Units.Set(Dimension.One).Si, Dimension.One)
                : Refuse($"\"{Shown.Short(stated)}\" stands behind a number that has no unit", $"write {plain[..number.Length].Trim()} alone");
        }

        if (stated.Length == 0)
        {
            if (dimension == Dimension.Setting) return Finish(number, Units.Set(Dimension.One).Si, Dimension.One);
            return Refuse($"{plain} has no unit, so it may mean anything", $"add the unit: \"{plain} {Units.For(dimension)[0].UsualUnit.Symbol}\" (units that fit: {UnitsThatFit(dimension)})");
        }

        string key = Units.Plain(stated);
        foreach (var set in Units.For(dimension))
        {
            foreach (var unit in set.All)
            {
                if (!unit.Spellings.Contains(key)) continue;
                if (number.IsFraction && !unit.TakesFractions)
                {
                    return Refuse("fractions are read with in and ft only", $"write {FormatNumber(ExactNumber.ToDouble(number.Numerator, number.Denominator))} {unit.Symbol}");
                }

                return Finish(number, unit, set.Dimension);
            }
        }

        return Refuse(WrongUnit(stated, key, dimension), $"use one of {UnitsThatFit(dimension)}, like \"{example}\"");
    }

    /// <summary>Shortest text that reads back to the same double, in the dimension's usual unit (or the one named).</summary>
    public static string Format(double si, Dimension dimension, string? unit = null)
    {
        if (!double.IsFinite(si)) throw new ArgumentOutOfRangeException(nameof(si), si, "only finite values have a text");
        var chosen = Find(dimension, unit) ?? throw new ArgumentException($"{unit} is no unit of {dimension}", nameof(unit));
        string digits = Digits(si, chosen);
        return chosen.Symbol.Length == 0 ? digits : $"{digits} {chosen.Symbol}";
    }

    /// <summary>The symbols of a dimension's units, the SI unit first: what a form may offer.</summary>
    public static ImmutableArray<string> Symbols(Dimension dimension) =>
        [.. Units.For(dimension).SelectMany(s => s.All).Select(u => u.Symbol).Where(s => s.Length > 0)];

    internal static Unit? Find(Dimension dimension, string? symbol)
    {
        if (symbol is null) return Units.For(dimension)[0].UsualUnit;
        string key = Units.Plain(symbol);
        return Units.For(dimension).SelectMany(s => s.All).FirstOrDefault(u => u.Spellings.Contains(key));
    }

    internal static string UnitsThatFit(Dimension dimension) => string.Join(", ", Symbols(dimension));

    /// <summary>Shortest decimal text of a double, never with a decimal comma.</summary>
    internal static string FormatNumber(double value) => Digits(value, Units.Set(Dimension.One).Si);

    /// <summary>The number alone of a value in a unit, shortest text that reads back to the same double.</summary>
    internal static string FormatNumber(double si, Unit unit) => Digits(si, unit);

    /// <summary>The SI value of a plain number in a unit, rounded once; not a number where it is out of range.</summary>
    internal static double Exactly(string digits, Unit unit)
    {
        var number = NumberText.Read(digits);
        if (number.Problem.Length > 0) return double.NaN;
        return ExactNumber.ToDouble(number.Numerator * unit.Numerator, number.Denominator * unit.Denominator);
    }

    private static string Digits(double si, Unit unit)
    {
        if (si == 0) return "0";
        double size = Math.Abs(si);
        // Fifteen digits name a text that someone typed, if there is one so short; eighteen always suffice.
        for (int digits = 15; ; digits++)
        {
            var (value, exponent) = ExactNumber.ToDecimal(size, unit.Denominator, unit.Numerator, digits);
            string text = ExactNumber.Text(value, exponent, si < 0);
            if (digits == 20 || Exactly(text, unit) == si) return text;
        }
    }

    private static QuantityResult Finish(NumberText number, Unit unit, Dimension dimension)
    {
        double value = ExactNumber.ToDouble(number.Numerator * unit.Numerator, number.Denominator * unit.Denominator);
        if (!double.IsFinite(value)) return Refuse("the number is too large", "write a number that a machine can have");
        return new QuantityResult(value, "", "", dimension);
    }

    private static string WrongUnit(string stated, string key, Dimension dimension)
    {
        string wanted = string.Join(" or ", Units.For(dimension).Select(s => s.Measures));
        foreach (var set in Units.Sets)
        {
            if (set.All.Any(u => u.Spellings.Contains(key))) return $"{Shown.Short(stated)} is the unit of {set.Measures}; {wanted} belongs here";
        }

        foreach (var unit in Units.For(dimension).SelectMany(s => s.All))
        {
            if (unit.Spellings.Contains(key, StringComparer.OrdinalIgnoreCase)) return $"\"{Shown.Short(stated)}\" is not a unit as written: capital and small letters differ, {unit.Symbol} is meant?";
        }

        return $"\"{Shown.Short(stated)}\" is not a unit of {wanted}";
    }

    private static QuantityResult Refuse(string problem, string remedy) => new(double.NaN, problem, remedy);
}
