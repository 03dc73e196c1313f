using Trivet.Assessment;
using Trivet.Files;
using Trivet.Numerics;
using Trivet.Views.Pictures;
using Trivet.Views.Procedures;

namespace Trivet.Papers;

/// <summary>The procedure on paper.</summary>
public static class ProcedureFiles
{
    /// <summary>Side of the code on a card with its quiet zone, and its distance from the edges of the page; millimetres.</summary>
    private const double Code = 27, FromRight = 12, FromTop = 9;

    /// <summary>A card for each step, in order.</summary>
    /// <param name="cell">The cell of the procedure; a preview of it is enough.</param>
    /// <param name="address">Of the cell's page of the procedure, to which the codes lead.</param>
    public static PaperFile Cards(ProcedureSheet sheet, Assessed cell, string address, DateTime made) => new(
        "step-cards.pdf", SettingFiles.Pdf,
        PaperPdf.Of(sheet.Title, made, [.. StepCards.Of(sheet, PictureSet.Of(cell, sheet.Procedure, StepTexts.LocaleOf(sheet.Words)), address, CellFile.Hash(cell.Cell)[..8]).Select(p => p.Paper with
        {
            Marks = [.. p.Paper.Marks, .. p.Link.Length == 0 ? [] : QrMarks.Of(p.Link, new Vec2(StepCards.Width - FromRight - Code, StepCards.Height - FromTop - Code), Code)],
        })]));
}
