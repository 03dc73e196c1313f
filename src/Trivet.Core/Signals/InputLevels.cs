using Trivet.Cells;

namespace Trivet.Signals;

/// <summary>Standard operating ranges of digital inputs for 24 V direct current [IEC-61131-2], from memory where not told otherwise in docs/sources.md.</summary>
/// <param name="OnFrom">Volts from which it is surely on.</param>
/// <param name="OnCurrent">Amperes it takes at least while on.</param>
/// <param name="OffTo">Volts up to which it is surely off, whatever the current.</param>
/// <param name="OffCurrent">Amperes up to which it is surely off.</param>
public readonly record struct InputLevels(double OnFrom, double OnCurrent, double OffTo, double OffCurrent)
{
    public static InputLevels Of(InputType type) => type == InputType.Type1 ? new(15, 0.002, 5, 0.0005) : new(11, 0.002, 5, 0.0015);
}
