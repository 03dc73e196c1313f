using System.Collections.Immutable;
using Trivet.Cells;
using Trivet.Findings;

namespace Trivet.Settings;

/// <summary>Reads the parameters of the controller: what the plan says of each, and how the controller writes it.</summary>
public static class SettingInputs
{
    public static string PointerOf(string id) => $"/controller/settings/{id}";

    /// <summary>One parameter as it is to be typed; null while a field is missing (the reading lists it) or impossible.</summary>
    public static PlannedSetting? Read(Cell cell, string id, Reading reading, ImmutableArray<Contradiction>.Builder wrong)
    {
        var stated = cell.Controller.Settings[id];
        string at = PointerOf(id);
        reading.Used(at + "/quantity", stated.Quantity);
        if (stated.Quantity is not { } quantity)
        {
            reading.Used(at + "/value", stated.Value);
            if (string.IsNullOrWhiteSpace(stated.Value)) reading.Missing(at + "/value");
            return reading.Complete ? new(id, stated, at + "/value", "1", double.NaN, double.NaN, new(false, false, 0, 1), 0, 0, double.NaN, reading.Inputs) : null;
        }

        int before = wrong.Count;
        var held = HeldQuantity.Read(cell, quantity, stated.Of, at, reading, wrong);
        if (held is null || wrong.Count > before) return null;
        double perUnit = double.IsNaN(held.Usual.PerUnit) ? reading.Need(stated.PerUnit, at + "/perUnit") : reading.Or(stated.PerUnit, at + "/perUnit", held.Usual.PerUnit);
        if (perUnit <= 0) wrong.Add(new(at + "/perUnit", SettingReasons.PerUnit));
        bool reversed = reading.Or(stated.Reversed, at + "/reversed", held.Usual.Reversed);
        var scale = new SettingScale(reversed, reading.Or(stated.Inverse, at + "/inverse", false), reading.Or(stated.ZeroAt, at + "/zeroAt", held.Usual.ZeroAt), perUnit);
        double plan = held.Value(reversed);

        var (step, decimals) = Step(stated, quantity, at, reading, wrong);
        var rounding = reading.Or(stated.Rounding, at + "/rounding", Usual(quantity, scale));
        if (!reading.Complete || wrong.Count > before) return null;
        double typed = SettingStep.Round(scale.Shown(plan), step, rounding);
        if (!double.IsFinite(typed) || !double.IsFinite(scale.Value(typed)))
        {
            wrong.Add(new(at, SettingReasons.NoNumber));
            return null;
        }
        return new(id, stated, held.Field(reversed), held.SiUnit, plan, double.IsNaN(held.Span) ? Math.Abs(plan) : held.Span, scale, step, decimals, typed, reading.Inputs);
    }

    /// <summary>All parameters that can be typed, in their order.</summary>
    public static ImmutableArray<PlannedSetting> Read(Cell cell) =>
        [.. cell.Controller.Settings.InOrder().Select(s => Read(cell, s.Key, new(), ImmutableArray.CreateBuilder<Contradiction>())).OfType<PlannedSetting>()];

    private static (double Step, int Decimals) Step(ControllerSetting stated, SettingQuantity quantity, string at, Reading reading, ImmutableArray<Contradiction>.Builder wrong)
    {
        const int MostDecimals = 12;
        reading.Used(at + "/step", stated.Step);
        if (stated.Step is { } step)
        {
            if (step > 0 && step < 1e9) return (step, Math.Min((int)new decimal(step).Scale, MostDecimals));
            wrong.Add(new(at + "/step", SettingReasons.Step));
            return (double.NaN, 0);
        }
        int digits = quantity is SettingQuantity.Address or SettingQuantity.Direction or SettingQuantity.CountsPerTurn
            ? reading.Or(stated.Digits, at + "/digits", 0) : reading.Need(stated.Digits, at + "/digits", 0);
        if (digits is >= 0 and <= MostDecimals) return (Math.Pow(10, -digits), digits);
        wrong.Add(new(at + "/digits", SettingReasons.Digits));
        return (double.NaN, 0);
    }

    /// <summary>What limits is rounded so that the controller never allows more than the plan; all else to the nearest.</summary>
    private static SettingRounding Usual(SettingQuantity quantity, SettingScale scale) => quantity switch
    {
        SettingQuantity.SmallestReading => SettingRounding.Up,
        SettingQuantity.LargestReading => SettingRounding.Down,
        SettingQuantity.AxisSpeed or SettingQuantity.AxisAcceleration or SettingQuantity.AxisJerk or SettingQuantity.ContinuousCurrent or SettingQuantity.PeakCurrent
            or SettingQuantity.PathSpeed or SettingQuantity.PathAcceleration or SettingQuantity.PathJerk => scale.Rises ? SettingRounding.Down : SettingRounding.Up,
        _ => SettingRounding.Nearest,
    };
}
