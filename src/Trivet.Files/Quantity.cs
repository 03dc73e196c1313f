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
    Force,
    Torque,
    Pressure,
    /// <summary>Length on a rail delta, angle on a crank delta: the text's unit decides, the family must agree.</summary>
    DriveCoordinate,
}

/// <summary>A parsed quantity or why it was refused.</summary>
/// <param name="Value">SI value; not a number when refused.</param>
/// <param name="Problem">What is wrong; empty when accepted.</param>
/// <param name="Remedy">What would be right; empty when accepted.</param>
public readonly record struct QuantityResult(double Value, string Problem, string Remedy)
{
    public bool Ok => Problem.Length == 0;
}

/// <summary>Quantities as text with their unit: <c>"300 mm"</c>. Accepts a decimal comma or point and fractions of an inch.</summary>
public static class Quantity
{
    public static QuantityResult Parse(string text, Dimension dimension) => throw new NotImplementedException();

    /// <summary>Shortest text that reads back to the same double, in the dimension's usual unit (or the one named).</summary>
    public static string Format(double si, Dimension dimension, string? unit = null) => throw new NotImplementedException();
}
