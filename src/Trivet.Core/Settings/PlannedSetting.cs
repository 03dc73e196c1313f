using System.Collections.Immutable;
using Trivet.Cells;

namespace Trivet.Settings;

/// <summary>How the controller writes a quantity of the plan: <c>shown = ±(q − ZeroAt) / PerUnit</c>, minus where reversed; inverse <c>shown = ±PerUnit / (q − ZeroAt)</c>.</summary>
/// <param name="ZeroAt">Planned value where the controller shows zero, SI.</param>
/// <param name="PerUnit">Size of one unit shown, SI, above zero.</param>
public readonly record struct SettingScale(bool Reversed, bool Inverse, double ZeroAt, double PerUnit)
{
    private double Sign => Reversed ? -1 : 1;

    /// <summary>The shown value grows with the quantity.</summary>
    public bool Rises => Reversed == Inverse;

    public double Shown(double q) => Sign * (Inverse ? PerUnit / (q - ZeroAt) : (q - ZeroAt) / PerUnit);

    public double Value(double shown) => ZeroAt + Sign * (Inverse ? PerUnit / shown : shown * PerUnit);
}

/// <summary>A parameter as it is to be typed.</summary>
/// <param name="Field">The field of the cell that decides, for one who would change the plan; empty where several do.</param>
/// <param name="SiUnit">SI unit of the quantity.</param>
/// <param name="Plan">Planned value, SI; not a number where nothing of the plan is held.</param>
/// <param name="Span">What a rounding is held against, SI.</param>
/// <param name="Step">Smallest step in the controller's numbers.</param>
/// <param name="Decimals">As many as the step has.</param>
/// <param name="Typed">What is typed, in the controller's numbers; a whole multiple of the step.</param>
/// <param name="Inputs">The fields it was read from.</param>
public sealed record PlannedSetting(
    string Id, ControllerSetting Stated, string Field, string SiUnit, double Plan, double Span, SettingScale Scale, double Step, int Decimals, double Typed, ImmutableArray<string> Inputs)
{
    public string Pointer => SettingInputs.PointerOf(Id);

    public string Name => Stated.Name ?? Id;

    /// <summary>Its name in an export.</summary>
    public string Key => Stated.Key ?? Name;

    public bool Held => Stated.Quantity is not null;

    /// <summary>The planned quantity as the controller then has it, SI.</summary>
    public double Value => Scale.Value(Typed);

    /// <summary>How far the rounding moves the quantity, SI; zero where only the computation's own rounding is left.</summary>
    public double Off => Math.Abs(Value - Plan) <= 1e-12 * Math.Max(Math.Abs(Plan), Scale.PerUnit) ? 0 : Value - Plan;
}

/// <summary>Rounds to the steps that a controller takes.</summary>
public static class SettingStep
{
    /// <summary>A value this near to a step, in steps, is that step: what is left is rounding of the computation.</summary>
    private const double Near = 1e-6;

    /// <summary>Beyond this many steps a double no longer tells one from the next.</summary>
    public const double MostSteps = 1e15;

    /// <returns>A multiple of the step; not a number where the value has none.</returns>
    public static double Round(double shown, double step, SettingRounding rounding)
    {
        double steps = shown / step, nearest = Math.Round(steps, MidpointRounding.AwayFromZero);
        if (!(step > 0) || !(Math.Abs(steps) < MostSteps)) return double.NaN;
        if (Math.Abs(steps - nearest) < Near) return nearest * step;
        return step * rounding switch
        {
            SettingRounding.Down => Math.Floor(steps),
            SettingRounding.Up => Math.Ceiling(steps),
            _ => nearest,
        };
    }
}
