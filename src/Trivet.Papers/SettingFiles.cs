using Trivet.Cells;
using Trivet.Files;
using Trivet.Views.Settings;

namespace Trivet.Papers;

/// <summary>The parameters of the controller on paper.</summary>
public static class SettingFiles
{
    public const string Pdf = "application/pdf";

    /// <summary>The list to be typed.</summary>
    public static PaperFile List(Cell cell, DateTime made) =>
        new("settings.pdf", Pdf, PaperPdf.Of(SettingForms.SettingTitle(cell), made, SettingPapers.List(cell, CellFile.Hash(cell)[..8])));

    /// <summary>What became of an export or a backup, to be signed.</summary>
    public static PaperFile Record(ExportSheet sheet, Cell cell, DateTime made) =>
        new($"{sheet.Id}.pdf", Pdf, PaperPdf.Of(sheet.Title, made, SettingPapers.Record(sheet, cell, CellFile.Hash(cell)[..8])));
}
