using System.Collections.Immutable;
using System.Globalization;
using Trivet.Cells;
using Trivet.Views.Cabinets;
using Trivet.Views.Papers;
using Trivet.Views.Words;

namespace Trivet.Views.Stopping;

/// <summary>The hazard register on paper with the safety functions it leans on, to be read and signed by those who answer for it. A4 across.</summary>
public static class HazardPapers
{
    public static string Title(Cell cell, Locale? locale = null)
    {
        var language = (locale ?? Locale.English).Language;
        return $"{cell.Name ?? language.UnnamedCell}: {language.Stopping.Register}";
    }

    public static ImmutableArray<Paper> Of(Cell cell, string revision, Locale? locale = null)
    {
        var language = (locale ?? Locale.English).Language;
        var words = language.Stopping;
        string title = Title(cell, locale);
        var blocks = new List<FlowBlock> { new FlowHeading(title, true) };
        foreach (string caution in words.HazardCautions) blocks.Add(new FlowParagraph(caution, true));
        // Every column of the register but the last, which stands with the owner.
        var register = HazardSections.Register(cell, locale);
        blocks.Add(Table(register, [0, 2, 3, 4, 5, 6, 7, 8, 9, 10], [24, 13, 18, 16, 9, 48, 9, 30, 17, 15]));
        foreach (var section in HazardSections.Of(cell, locale))
            if (section.Tables[1] is { Rows.IsEmpty: false } proposed)
            {
                blocks.Add(new FlowHeading(proposed.Title));
                blocks.Add(Table(proposed, [0, 1, 2, 3], [40, 60, 25, 25]));
            }
        foreach (var section in StopSections.Of(cell, locale))
        {
            blocks.Add(new FlowHeading(section.Title));
            foreach (string caution in section.Cautions) blocks.Add(new FlowParagraph(caution, true));
            blocks.Add(Table(section.Tables[0], [0, 1, 2, 4, 5, 6, 7, 9, 10, 12, 13], [22, 17, 30, 12, 10, 9, 9, 10, 10, 34, 28]));
            blocks.Add(new FlowHeading(section.Tables[2].Title));
            blocks.Add(Table(section.Tables[2], [0, 2, 3, 4, 5, 6, 7, 8, 9], [30, 24, 16, 12, 14, 40, 15, 15, 12]));
        }
        blocks.Add(new FlowHeading(words.Signed));
        blocks.Add(new FlowParagraph(words.SignedNote));
        blocks.Add(new FlowTable([words.HeadName, words.HeadDateSigned], [1, 1], [[" ", " "], [" ", " "], [" ", " "]]));
        return Flow.Pages(title, title, 297, 210, blocks, (page, pages) =>
            $"{revision}  {Locale.Fill(language.Cabling.PageOf, ("page", page.ToString(CultureInfo.InvariantCulture)), ("pages", pages.ToString(CultureInfo.InvariantCulture)))}");
    }

    private static FlowTable Table(SheetTable table, ImmutableArray<int> columns, ImmutableArray<double> shares) => new(
        [.. columns.Select(c => table.Columns[c].Head)], shares, [.. table.Rows.Select(r => columns.Select(c => r[c].Text).ToImmutableArray())]);
}
