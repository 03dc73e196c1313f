using System.Collections.Immutable;
using Trivet.AsBuilt;
using Trivet.Assessment;
using Trivet.Cells;
using Trivet.Files;
using Trivet.Views.Journals;
using Trivet.Views.Words;

namespace Trivet.Papers;

/// <summary>The record of bring-up on paper.</summary>
public static class RecordFiles
{
    /// <param name="progress">The journal laid over the procedure of this cell.</param>
    /// <param name="receipt">Number of the newest receipt, and in <paramref name="head"/> its hash; empty where nothing is recorded.</param>
    /// <param name="tag">BCP 47 tag of the language.</param>
    public static PaperFile Record(Progress progress, Cell cell, long receipt, string head, ImmutableArray<string> contradictions, string tag, DateTime made)
    {
        var (words, steps) = (JournalWords.In(tag), ProcedureWords.In(tag));
        return new(
            "record.pdf", SettingFiles.Pdf,
            PaperPdf.Of(RecordPaper.Title(cell, words, steps), made, RecordPaper.Of(progress, CellProcedure.Of(cell), cell, CellFile.Hash(cell), receipt, head, contradictions, words, steps)));
    }
}
