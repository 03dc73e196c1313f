using System.Globalization;
using SpreadCheetah;
using SpreadCheetah.Styling;
using SpreadCheetah.Worksheets;
using Trivet.Files.Exchange;
using Trivet.Views.Cabinets;

namespace Trivet.Papers;

/// <summary>Tables as a workbook (XLSX, ISO/IEC 29500), a sheet each. Texts are written as texts, so what begins with = + - @ is never computed.</summary>
public static class WorkbookFile
{
    private const int LongestName = 31;

    /// <summary>Tables to be read: numbers in SI with the unit in the head.</summary>
    public static byte[] Of(IEnumerable<SheetTable> tables) => Write(tables.Where(t => !t.Rows.IsEmpty).Select(t => (
        t.Id, (IReadOnlyList<string>)["id", .. t.Columns.Select(c => c.Unit is null or "1" ? c.Head : $"{c.Head} [{c.Unit}]")],
        t.Rows.Select((r, i) => (IReadOnlyList<DataCell>)
        [
            new DataCell(t.Pointers[i][(t.Pointers[i].LastIndexOf('/') + 1)..]),
            .. r.Select((e, k) => t.Columns[k].IsNumber ? double.IsFinite(e.Value) ? new DataCell(e.Value) : new DataCell() : new DataCell(e.Text)),
        ]))));

    /// <summary>Lists to be edited and taken back: every field as the cell's document states it.</summary>
    public static byte[] Of(IEnumerable<FieldList> lists) =>
        Write(lists.Select(l => (l.Name, (IReadOnlyList<string>)l.Head, l.Rows.Select(r => (IReadOnlyList<DataCell>)[.. r.Select(t => new DataCell(t))]))));

    private static byte[] Write(IEnumerable<(string Name, IReadOnlyList<string> Head, IEnumerable<IReadOnlyList<DataCell>> Rows)> sheets)
    {
        using var stream = new MemoryStream();
        WriteAsync(stream, sheets).AsTask().GetAwaiter().GetResult();
        return stream.ToArray();
    }

    private static async ValueTask WriteAsync(Stream stream, IEnumerable<(string Name, IReadOnlyList<string> Head, IEnumerable<IReadOnlyList<DataCell>> Rows)> sheets)
    {
        await using var book = await Spreadsheet.CreateNewAsync(stream);
        bool any = false;
        foreach (var (name, head, rows) in sheets)
        {
            any = true;
            var all = rows.ToArray();
            var options = new WorksheetOptions { FrozenRows = 1, FrozenColumns = 1 };
            for (int i = 0; i < head.Count; i++) options.Column(i + 1).Width = Math.Clamp(all.Select(r => Length(r[i])).Append(head[i].Length).Max() + 2, 6, 50);
            await book.StartWorksheetAsync(name.Length > LongestName ? name[..LongestName] : name, options);
            var bold = book.AddStyle(new Style { Font = { Bold = true } });
            await book.AddRowAsync([.. head.Select(h => new SpreadCheetah.Cell(h, bold))]);
            foreach (var row in all) await book.AddRowAsync([.. row]);
        }
        if (!any) await book.StartWorksheetAsync("empty");
        await book.FinishAsync();
    }

    private static int Length(DataCell cell) => string.Create(CultureInfo.InvariantCulture, $"{cell}").Length;
}
