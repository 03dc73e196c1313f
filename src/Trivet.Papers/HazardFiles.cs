using Trivet.Cells;
using Trivet.Files;
using Trivet.Views.Stopping;

namespace Trivet.Papers;

/// <summary>The hazard register on paper.</summary>
public static class HazardFiles
{
    public static PaperFile Register(Cell cell, DateTime made) =>
        new("hazard-register.pdf", SettingFiles.Pdf, PaperPdf.Of(HazardPapers.Title(cell), made, HazardPapers.Of(cell, CellFile.Hash(cell)[..8])));
}
