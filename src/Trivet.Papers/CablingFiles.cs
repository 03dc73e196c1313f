using System.Collections.Immutable;
using System.Text;
using Trivet.Cells;
using Trivet.Files;
using Trivet.Files.Exchange;
using Trivet.Views.Cabinets;
using Trivet.Views.Cabling;
using Trivet.Views.Papers;
using Trivet.Views.Wiring;
using Trivet.Views.Words;

namespace Trivet.Papers;

/// <summary>A file to be handed out.</summary>
public sealed record PaperFile(string Name, string Media, byte[] Bytes)
{
    internal static PaperFile Of(string name, string media, string text) => new(name, media, new UTF8Encoding(false).GetBytes(text));
}

/// <summary>All that is handed out of the electrical build: lists, diagram, labels, schedule, plan.</summary>
public static class CablingFiles
{
    private const string Book = "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet";

    /// <param name="address">Address of the cell's electrical page, for the QR codes.</param>
    /// <param name="made">What PDF files say of their making.</param>
    public static ImmutableArray<PaperFile> Of(Cell cell, string address, LabelSheet sheet, DateTime made)
    {
        string revision = CellFile.Hash(cell);
        var sections = ElectricalSections.Of(cell);
        var wiring = WiringSheet.Of(cell);
        var labels = CableLabels.Of(cell, address);
        string title = CableLabels.Title(cell);
        var files = ImmutableArray.CreateBuilder<PaperFile>();
        files.Add(PaperFile.Of("plan.json", "application/json", WiringForms.Json(wiring, sections, revision)));
        files.Add(PaperFile.Of("addresses.csv", "text/csv", WiringForms.Csv(wiring)));
        foreach (var table in sections.SelectMany(s => s.Tables).Where(t => !t.Rows.IsEmpty)) files.Add(PaperFile.Of(table.Id + ".csv", "text/csv", SectionForms.Csv(table)));
        files.Add(new("lists.xlsx", Book, WorkbookFile.Of(sections.SelectMany(s => s.Tables).Prepend(Addresses(wiring)))));
        files.Add(new("edit.xlsx", Book, WorkbookFile.Of(FieldList.Collections.Select(c => FieldList.Of(cell, c)).Where(l => !l.Rows.IsEmpty))));
        foreach (string collection in FieldList.Collections)
            if (FieldList.Of(cell, collection) is { Rows.IsEmpty: false } list) files.Add(PaperFile.Of($"edit-{list.Name}.csv", "text/csv", list.Csv()));
        foreach (var (node, _) in cell.Io.Nodes.InOrder()) files.Add(PaperFile.Of(EdsFile.FileName(cell, node), "text/plain", EdsFile.Of(cell, node, made)));
        if (!cell.Controller.Settings.IsEmpty) files.Add(SettingFiles.List(cell, made));
        if (!cell.Hazards.IsEmpty) files.Add(HazardFiles.Register(cell, made));
        if (cell.Cables.IsEmpty) return files.ToImmutable();
        files.Add(PaperFile.Of("diagram.svg", "image/svg+xml", WiringDiagram.Of(cell).Svg));
        files.Add(PaperFile.Of("labels.csv", "text/csv", CableLabels.Csv(labels)));
        files.Add(new("labels.pdf", "application/pdf", PaperPdf.Of(title, made, LabelSheets.Of(title, labels, sheet))));
        var schedule = CablePapers.Schedule(cell, revision[..8]);
        files.Add(new("schedule.pdf", "application/pdf", PaperPdf.Of(schedule[0].Title, made, schedule)));
        return files.ToImmutable();
    }

    /// <summary>Labels of which something had to be left out on such a sheet.</summary>
    public static ImmutableArray<string> Shortened(Cell cell, LabelSheet sheet) => LabelSheets.Shortened(CableLabels.Of(cell, ""), sheet);

    private static SheetTable Addresses(WiringSheet sheet)
    {
        var words = Locale.English.Language.Wiring;
        return new(
            "addresses", words.Addresses,
            [new("place", words.HeadPlace, "1"), new("module", words.HeadModule), new("role", words.HeadRole), new("address", words.HeadAddress, "1"), new("planned", words.HeadPlan, "1"), new("setBy", words.HeadSet)],
            [
                .. sheet.Modules.Select(m => ImmutableArray.Create<Entry>(
                    new("", m.Place), new(m.Name), new(m.Role), new("", m.Address ?? double.NaN), new("", m.Planned ?? double.NaN), new(m.SetBy))),
            ],
            [.. sheet.Modules.Select(m => $"/cabinet/modules/{m.Id}")]);
    }
}
