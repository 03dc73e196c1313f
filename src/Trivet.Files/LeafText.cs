using Trivet.Cells;
using Trivet.Files.Fields;

namespace Trivet.Files;

/// <summary>A leaf's value read from text, or what is wrong with it.</summary>
internal readonly record struct LeafRead(object? Value, string Problem, string Remedy)
{
    public (object?, string, string) AsTuple => (Value, Problem, Remedy);
}

/// <summary>Values of leaves as people read and type them, and the words for what belongs in one.</summary>
internal static class LeafText
{
    /// <summary>Reads what a person typed; the dimension is the one that holds in this cell.</summary>
    public static LeafRead Read(Leaf leaf, string text, Dimension dimension)
    {
        switch (leaf.Kind)
        {
            case FieldKind.Text:
                return HasLoneSurrogate(text) ? new(null, "this text holds half a character", "write the whole character") : new(text, "", "");
            case FieldKind.Whole:
                return int.TryParse(text.Trim(), System.Globalization.NumberStyles.AllowLeadingSign, System.Globalization.CultureInfo.InvariantCulture, out int whole)
                    ? new(whole, "", "")
                    : new(null, $"\"{Shown.Short(text)}\" is not a whole number in range", "write a whole number such as 3");
            case FieldKind.YesNo:
                return text.Trim().ToLowerInvariant() switch
                {
                    "yes" or "true" => new(true, "", ""),
                    "no" or "false" => new(false, "", ""),
                    _ => new(null, $"\"{Shown.Short(text)}\" is neither yes nor no", "write yes or no"),
                };
            case FieldKind.Choice:
                if (leaf.Choices.Contains(text)) return new(text, "", "");
                string words = string.Join(", ", leaf.Choices.Select(w => $"\"{w}\""));
                return new(null, $"\"{Shown.Short(text)}\" is none of the words allowed here",
                    Nearest.To(text, leaf.Choices) is { } near ? $"\"{near}\" is meant? (allowed: {words})" : $"use one of {words}");
            default:
                var read = Quantity.Parse(text, dimension);
                return read.Ok ? new(read.Value, "", "") : new(null, read.Problem, read.Remedy);
        }
    }

    /// <summary>The value as text for a form; empty when not stated.</summary>
    public static string Show(Cell cell, Leaf leaf, string pointer, object? value) => value switch
    {
        null => "",
        double si => FormatQuantity(cell, leaf, pointer, si, canonical: false),
        int whole => whole.ToString(System.Globalization.CultureInfo.InvariantCulture),
        bool yes => yes ? "yes" : "no",
        _ => (string)value,
    };

    /// <summary>The quantity in the field's usual unit, or in SI for the canonical form.</summary>
    public static string FormatQuantity(Cell cell, Leaf leaf, string pointer, double si, bool canonical)
    {
        var dimension = DriveUnits.Of(cell, pointer, leaf.Dimension) ?? Units.For(leaf.Dimension)[0].Dimension;
        return Quantity.Format(si, dimension, canonical ? Units.Set(dimension).Si.Symbol : leaf.Unit);
    }

    public static string UsualUnit(Leaf leaf) => leaf.Unit ?? Units.For(leaf.Dimension)[0].UsualUnit.Symbol;

    /// <summary>What belongs in the leaf, in words: "a length as text with its unit".</summary>
    public static string Wanted(Leaf leaf) => leaf.Kind switch
    {
        FieldKind.Text => "a text",
        FieldKind.Whole => "a whole number",
        FieldKind.YesNo => "true or false",
        FieldKind.Choice => "a word from a list",
        _ when leaf.Dimension == Dimension.One => "a plain number",
        _ => string.Join(" or ", Units.For(leaf.Dimension).Select(s => s.Measures)) + " as text with its unit",
    };

    /// <summary>An example as it stands in JSON.</summary>
    public static string Example(Leaf leaf) => leaf.Kind switch
    {
        FieldKind.Text => "\"some words\"",
        FieldKind.Whole => "3",
        FieldKind.YesNo => "true",
        FieldKind.Choice => $"\"{leaf.Choices[0]}\"",
        _ when leaf.Dimension == Dimension.One => "4.5",
        _ => $"\"{Units.For(leaf.Dimension)[0].Example}\"",
    };

    /// <summary>What is wrong with stating a drive's value in this dimension in this cell; empty when nothing is.</summary>
    public static (string Problem, string Remedy) DriveUnitProblem(Cell cell, string pointer, Dimension wanted, Dimension stated)
    {
        if (wanted == Dimension.Setting)
        {
            if (DriveUnits.Of(cell, pointer, wanted) is not { } needed) return ("nothing says yet what this is measured in", "state the parameter's quantity first, and robot.family where it is of a chain's drive");
            return needed == stated ? ("", "") : ($"{Units.Set(stated).Measures} stands here, but this parameter holds {Units.Set(needed).Measures}", $"write it like \"{Units.Set(needed).Example}\", or mend its quantity");
        }

        string either = string.Join(" or ", Units.For(wanted).Select(s => s.Measures));
        if (DriveUnits.Of(cell, pointer, wanted) is not { } right)
        {
            return ($"nothing says yet whether {either} belongs here", "state robot.family first: \"rail delta\" for carriages on rails, \"crank delta\" for upper arms");
        }

        if (right == stated) return ("", "");
        var set = Units.Set(right);
        return ($"{Units.Set(stated).Measures} stands here, but {DriveUnits.Reason(cell, pointer)}: {set.Measures} belongs here",
            $"write it like \"{set.Example}\", or mend the field that decides");
    }

    private static bool HasLoneSurrogate(string text)
    {
        for (int i = 0; i < text.Length; i++)
        {
            if (!char.IsSurrogate(text[i])) continue;
            if (i + 1 >= text.Length || !char.IsSurrogatePair(text[i], text[i + 1])) return true;
            i++;
        }

        return false;
    }
}
