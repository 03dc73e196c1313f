using System.Collections.Immutable;
using System.Globalization;
using Trivet.Cells;
using Trivet.Views.Cabinets;
using Trivet.Views.Papers;
using Trivet.Views.Words;

namespace Trivet.Views.Cabling;

/// <summary>All tables of cables and signals on A4 across, to be laid beside the work.</summary>
public static class CablePapers
{
    public static ImmutableArray<Paper> Schedule(Cell cell, string revision, Locale? locale = null)
    {
        var language = (locale ?? Locale.English).Language;
        string title = Locale.Fill(language.Cabling.Schedule, ("cell", cell.Name ?? language.UnnamedCell));
        var blocks = new List<FlowBlock> { new FlowHeading(title, true) };
        foreach (var section in CableSections.Of(cell, locale).Concat(SignalSections.Of(cell, locale)))
        {
            foreach (string caution in section.Cautions) blocks.Add(new FlowParagraph(caution, true));
            foreach (var table in section.Tables.Where(t => !t.Rows.IsEmpty))
            {
                blocks.Add(new FlowHeading(table.Title));
                blocks.Add(FlowTable.Fitted([.. table.Columns.Select(c => c.Head)], [.. table.Rows.Select(r => r.Select((e, k) => table.Columns[k].IsNumber ? e.Text.Replace(' ', '\u00a0') : e.Text).ToImmutableArray())]));
            }
        }
        return Flow.Pages(title, title, 297, 210, blocks, (page, pages) =>
            $"{revision}  {Locale.Fill(language.Cabling.PageOf, ("page", page.ToString(CultureInfo.InvariantCulture)), ("pages", pages.ToString(CultureInfo.InvariantCulture)))}");
    }
}
