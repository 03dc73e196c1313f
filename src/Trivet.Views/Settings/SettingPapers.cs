using System.Collections.Immutable;
using System.Globalization;
using Trivet.Cells;
using Trivet.Views.Papers;
using Trivet.Views.Words;

namespace Trivet.Views.Settings;

/// <summary>The list to be typed, with room to tick off; and the small record of a comparison or a restored backup, to be signed. A4 across.</summary>
public static class SettingPapers
{
    public static ImmutableArray<Paper> List(Cell cell, string revision, Locale? locale = null)
    {
        var words = (locale ?? Locale.English).Language.Setting;
        var blocks = new List<FlowBlock> { new FlowHeading(SettingForms.SettingTitle(cell, locale), true) };
        foreach (var section in SettingSections.Of(cell, locale))
        {
            foreach (string caution in section.Cautions) blocks.Add(new FlowParagraph(caution, true));
            foreach (var fact in section.Facts) blocks.Add(new FlowParagraph(fact.Text));
            var table = section.Tables[0];
            blocks.Add(new FlowTable(
                [.. table.Columns.Take(7).Select(c => c.Head), words.HeadDone], [24, 20, 14, 8, 28, 16, 11, 18], [.. table.Rows.Select(r => r.Take(7).Select(e => e.Text).Append("").ToImmutableArray())]));
        }
        return Pages(SettingForms.SettingTitle(cell, locale), blocks, revision, locale);
    }

    public static ImmutableArray<Paper> Record(ExportSheet sheet, Cell cell, string revision, Locale? locale = null)
    {
        var words = (locale ?? Locale.English).Language.Setting;
        string title = $"{cell.Name ?? (locale ?? Locale.English).Language.UnnamedCell}: {sheet.Title}";
        var blocks = new List<FlowBlock> { new FlowHeading(title, true), new FlowParagraph(sheet.Verdict, true) };
        foreach (string line in sheet.Lines) blocks.Add(new FlowParagraph(line));
        if (sheet.Id == "restored") blocks.Add(new FlowParagraph(words.ProofNote));
        foreach (var table in sheet.Tables.Where(t => !t.Rows.IsEmpty))
            blocks.Add(FlowTable.Fitted([.. table.Columns.Select(c => c.Head)], [.. table.Rows.Select(r => r.Select(e => e.Text).ToImmutableArray())]));
        blocks.Add(new FlowTable([words.Signed], [1], [[" "], [" "]]));
        return Pages(title, blocks, revision, locale);
    }

    private static ImmutableArray<Paper> Pages(string title, List<FlowBlock> blocks, string revision, Locale? locale)
    {
        var language = (locale ?? Locale.English).Language;
        return Flow.Pages(title, title, 297, 210, blocks, (page, pages) =>
            $"{revision}  {Locale.Fill(language.Cabling.PageOf, ("page", page.ToString(CultureInfo.InvariantCulture)), ("pages", pages.ToString(CultureInfo.InvariantCulture)))}");
    }
}
