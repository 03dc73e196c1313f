using System.Collections.Immutable;
using System.Text;
using Trivet.Cells;
using Trivet.Views.Answers;
using Trivet.Views.Words;

namespace Trivet.Views.Cabling;

/// <summary>One label. Both ends of a cable have the same text; they differ only in what they lead to.</summary>
/// <param name="Text">What both ends say.</param>
/// <param name="Here">What this end leads to; empty on an axis label.</param>
/// <param name="NotWith">Whom it must not be swapped with; empty where nothing fits.</param>
/// <param name="Link">What the QR code says: the address of the cable's page; empty on an axis label.</param>
public sealed record CableLabel(string Text, string Name, string Here, string There, string Mark, string NotWith, string Link);

/// <summary>
/// The labels of a cell in order of installation: both ends of each cable one after the other, then a number for the rail or arm, the motor and either rod of each chain,
/// and which side of the base is its front.
/// </summary>
public static class CableLabels
{
    public static string Title(Cell cell, Locale? locale = null)
    {
        var language = (locale ?? Locale.English).Language;
        return Locale.Fill(language.Cabling.LabelSheet, ("cell", cell.Name ?? language.UnnamedCell));
    }

    /// <param name="address">Address of the cell's electrical page, to which the cable is added.</param>
    public static ImmutableArray<CableLabel> Of(Cell cell, string address, Locale? locale = null)
    {
        var words = (locale ?? Locale.English).Language.Cabling;
        var not = CableSections.NotWith(cell);
        var labels = ImmutableArray.CreateBuilder<CableLabel>();
        foreach (var (id, c) in cell.Cables.InOrder())
        {
            string text = CableSections.LabelOf(cell, id), link = $"{address}#{Uri.EscapeDataString($"/cables/{id}")}";
            string warning = not.TryGetValue(id, out var others) ? Locale.Fill(words.NotWith, ("labels", string.Join(", ", others))) : "";
            string from = End(c.From, c.FromEnd), to = End(c.To, c.ToEnd);
            labels.Add(new(text, c.Name ?? id, from, to, c.Mark ?? "", warning, link));
            labels.Add(new(text, c.Name ?? id, to, from, c.Mark ?? "", warning, link));
        }
        int number = 0;
        foreach (var (id, _) in cell.Robot.Chains.InOrder())
        {
            string text = (++number).ToString(System.Globalization.CultureInfo.InvariantCulture), chain = Fields.Axis(cell, id, (locale ?? Locale.English).Language);
            string guide = cell.Robot.Family == RobotFamily.CrankDelta ? words.ArmSticker : words.RailSticker;
            foreach (string part in new[] { guide, words.MotorSticker, words.RodSticker, words.RodSticker }) labels.Add(new(text, chain, part, "", "", "", ""));
        }
        if (number > 0) labels.Add(new(words.FrontMark, words.FrontOf, "", "", "", "", ""));
        return labels.ToImmutable();

        string End(string? place, CableEnd end) => end.Socket is { } socket ? $"{CableSections.PlaceOf(cell, place)} {socket}" : CableSections.PlaceOf(cell, place);
    }

    /// <summary>For the program of a label printer: a label a row.</summary>
    public static string Csv(ImmutableArray<CableLabel> labels)
    {
        var text = new StringBuilder("label,name,here,there,mark,notWith,link\r\n");
        foreach (var l in labels)
            text.AppendJoin(',', new[] { l.Text, l.Name, l.Here, l.There, l.Mark, l.NotWith, l.Link }.Select(CsvCell.Harmless)).Append("\r\n");
        return text.ToString();
    }
}
