using System.Globalization;
using Trivet.Cells;

namespace Trivet.Store.Saver;

/// <summary>
/// Edits and saves one cell, and says:
///   edit NUMBER                 the edit with these words is on disk
///   saved REVISION HASH NUMBER  the draft was saved after the edit of that number
/// </summary>
internal static class SavesCells
{
    public static async Task ForEverAsync(JobStore store, string from)
    {
        var noon = new DateTimeOffset(2030, 5, 6, 12, 0, 0, TimeSpan.Zero);
        await store.CreateAsync("saved", Cell.Empty with { Name = "first" }, new Stamp("saver", noon), "made");
        int number = int.Parse(from, CultureInfo.InvariantCulture);
        while (true)
        {
            var draft = (await store.DraftAsync("saved", "saver"))!;
            for (int i = 0; i < 3; i++)
            {
                number++;
                draft = ((DraftOutcome.Kept)await store.EditAsync(draft, Cell.Empty with { Name = $"edit {number}" }, noon, Words(number))).Draft;
                Lines.Say($"edit {number}");
            }
            var saved = (SaveOutcome.Saved)await store.SaveDraftAsync(draft, noon, Words(number));
            Lines.Say($"saved {saved.Revision.Number} {saved.Revision.Hash} {number}");
        }
    }

    private static string Words(int number) => $"edit {number}";
}
