using System.Globalization;
using Trivet.Cells;
using Trivet.Files;
using Trivet.Settings;
using Trivet.Views.Words;

namespace Trivet.Views.Settings;

/// <summary>A parameter's value, unit and meaning as people read them.</summary>
public static class SettingTexts
{
    /// <summary>What is typed: all its decimals, with the controller's decimal sign.</summary>
    public static string Typed(PlannedSetting setting, bool decimalComma)
    {
        if (!setting.Held) return setting.Stated.Value ?? "";
        double typed = setting.Typed == 0 ? 0 : setting.Typed;
        string text = typed.ToString("F" + setting.Decimals.ToString(CultureInfo.InvariantCulture), CultureInfo.InvariantCulture);
        return decimalComma ? text.Replace('.', ',') : text;
    }

    /// <summary>The unit as stated, or that of one unit shown: "mm", "0.001 deg", "for mm".</summary>
    public static string Unit(Cell cell, PlannedSetting setting, SettingWords words)
    {
        if (setting.Stated.Unit is { } stated) return stated;
        if (!setting.Held || CellFields.Find(cell, setting.Pointer + "/perUnit") is not { } field) return "";
        string own = field.Dimension == Dimension.One ? "" : Quantity.Symbols(field.Dimension).FirstOrDefault(s => Quantity.Format(setting.Scale.PerUnit, field.Dimension, s) == "1 " + s) ?? Quantity.Format(setting.Scale.PerUnit, field.Dimension);
        return setting.Scale.Inverse && own.Length > 0 ? Locale.Fill(words.Per, ("unit", own)) : own;
    }

    /// <summary>The unit as stated, or that of one unit shown, in signs alone: "mm", "0.001 deg", "1/mm".</summary>
    public static string UnitShown(PlannedSetting setting)
    {
        if (setting.Stated.Unit is { } stated) return stated;
        if (!setting.Held || setting.SiUnit == "1") return "";
        var (per, si) = (setting.Scale.PerUnit, setting.SiUnit);
        string own = Enum.GetValues<Dimension>().Where(d => Quantity.Symbols(d).Contains(si)).Take(1)
            .Select(d => Quantity.Symbols(d).FirstOrDefault(s => Quantity.Format(per, d, s) == "1 " + s) ?? Quantity.Format(per, d)).FirstOrDefault() ?? si;
        return setting.Scale.Inverse ? "1/" + own : own;
    }

    /// <summary>A quantity of the plan with six decimals at most.</summary>
    public static string Planned(double value, string siUnit, Locale? locale = null)
    {
        if (!double.IsFinite(value)) return "–";
        var unit = DisplayUnit.Of(siUnit, value);
        string number = Numbers.Plain(value * unit.PerSi, 6, locale);
        return unit.Symbol.Length == 0 ? number : unit.Symbol[0] == '°' ? number + unit.Symbol : $"{number} {unit.Symbol}";
    }

    public static string Holds(Cell cell, ControllerSetting stated, Locale? locale = null)
    {
        var language = (locale ?? Locale.English).Language;
        if (stated.Quantity is not { } quantity) return language.Setting.AsStated;
        string what = language.Setting.Quantities[(int)quantity];
        if (stated.Of is not { } of) return what;
        string whose = quantity switch
        {
            SettingQuantity.Address => cell.Cabinet.Modules.GetValueOrDefault(of)?.Name ?? of,
            SettingQuantity.Period => cell.Cabinet.Network.Messages.GetValueOrDefault(of)?.Name ?? of,
            >= SettingQuantity.PathSpeed and <= SettingQuantity.Blend => cell.Motion.Cycles.GetValueOrDefault(of)?.Name ?? of,
            _ => Fields.Axis(cell, of, language),
        };
        return Locale.Fill(language.Setting.QuantityOf, ("quantity", what), ("of", whose));
    }
}
