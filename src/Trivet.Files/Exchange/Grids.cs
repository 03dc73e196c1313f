using System.Collections.Immutable;
using System.Globalization;
using System.IO.Compression;
using System.Text;
using System.Xml;
using System.Xml.Linq;

namespace Trivet.Files.Exchange;

/// <summary>What became of reading a table of texts: its rows, or why there are none.</summary>
public sealed record GridRead(ImmutableArray<ImmutableArray<string>> Rows, string Problem)
{
    public static GridRead Refused(string problem) => new([], problem);
}

/// <summary>Reads tables of texts that other programs wrote: CSV (RFC 4180; comma, semicolon or tab) and workbooks (ISO/IEC 29500).</summary>
public static class Grids
{
    /// <summary>More than any cell's list has; what is larger is refused unread.</summary>
    private const int MostRows = 20_000, MostColumns = 400;
    private const long MostBytes = 32L << 20;

    private static readonly XNamespace Main = "http://schemas.openxmlformats.org/spreadsheetml/2006/main", Relations = "http://schemas.openxmlformats.org/officeDocument/2006/relationships";

    public static GridRead Csv(string text)
    {
        if (text.Length > 0 && text[0] == '\uFEFF') text = text[1..];
        int end = text.IndexOf('\n', StringComparison.Ordinal);
        string first = end < 0 ? text : text[..end];
        char separator = ",;\t".MaxBy(s => first.Count(c => c == s));
        var rows = ImmutableArray.CreateBuilder<ImmutableArray<string>>();
        var row = ImmutableArray.CreateBuilder<string>();
        var cell = new StringBuilder();
        bool quoted = false;
        for (int i = 0; i < text.Length; i++)
        {
            char c = text[i];
            if (quoted)
            {
                if (c != '"') cell.Append(c);
                else if (i + 1 < text.Length && text[i + 1] == '"') cell.Append(text[++i]);
                else quoted = false;
            }
            else if (c == '"' && cell.Length == 0) quoted = true;
            else if (c == separator) Cell();
            else if (c is '\n' or '\r')
            {
                if (c == '\r' && i + 1 < text.Length && text[i + 1] == '\n') i++;
                Row();
                if (rows.Count > MostRows) return GridRead.Refused($"the list has more than {MostRows} rows");
            }
            else cell.Append(c);
        }
        if (quoted) return GridRead.Refused("a quotation mark is not closed");
        if (cell.Length > 0 || row.Count > 0) Row();
        return new(rows.ToImmutable(), "");

        void Cell()
        {
            string t = cell.ToString();
            // The apostrophe that kept a text from being computed.
            row.Add(t.Length > 1 && t[0] == '\'' && "=+-@\t\r'".Contains(t[1], StringComparison.Ordinal) ? t[1..] : t);
            cell.Clear();
        }

        void Row()
        {
            Cell();
            rows.Add(row.ToImmutable());
            row.Clear();
        }
    }

    /// <summary>The names of a workbook's sheets, or why there are none.</summary>
    public static (ImmutableArray<string> Names, string Problem) Sheets(byte[] file)
    {
        try
        {
            using var zip = new ZipArchive(new MemoryStream(file), ZipArchiveMode.Read);
            return ([.. Part(zip, "xl/workbook.xml").Descendants(Main + "sheet").Select(s => (string?)s.Attribute("name") ?? "")], "");
        }
        catch (Exception e) when (NoBook(e))
        {
            return ([], "it is no workbook that can be read: " + e.Message);
        }
    }

    /// <summary>One sheet of a workbook; formulas count with the value that the program stored last.</summary>
    /// <param name="sheet">Its name; the first sheet where none has it.</param>
    public static GridRead Workbook(byte[] file, string sheet)
    {
        try
        {
            using var zip = new ZipArchive(new MemoryStream(file), ZipArchiveMode.Read);
            if (zip.Entries.Sum(e => e.Length) > MostBytes) return GridRead.Refused("the workbook is larger than any list of a cell");
            var book = Part(zip, "xl/workbook.xml");
            var sheets = book.Descendants(Main + "sheet").ToArray();
            if (sheets.Length == 0) return GridRead.Refused("the workbook has no sheet");
            var chosen = Array.Find(sheets, s => (string?)s.Attribute("name") == sheet) ?? sheets[0];
            string relation = (string?)chosen.Attribute(Relations + "id") ?? "";
            string target = Part(zip, "xl/_rels/workbook.xml.rels").Root!.Elements().First(r => (string?)r.Attribute("Id") == relation).Attribute("Target")!.Value;
            string[] shared = zip.GetEntry("xl/sharedStrings.xml") is null ? [] : [.. Part(zip, "xl/sharedStrings.xml").Root!.Elements(Main + "si").Select(Text)];
            var rows = ImmutableArray.CreateBuilder<ImmutableArray<string>>();
            foreach (var row in Part(zip, target.StartsWith('/') ? target[1..] : "xl/" + target).Descendants(Main + "row"))
            {
                int number = (int?)row.Attribute("r") ?? rows.Count + 1;
                if (number > MostRows) return GridRead.Refused($"the list has more than {MostRows} rows");
                while (rows.Count < number - 1) rows.Add([]);
                var cells = new List<string>();
                foreach (var c in row.Elements(Main + "c"))
                {
                    int column = (string?)c.Attribute("r") is { } place ? Column(place) : cells.Count;
                    if (column >= MostColumns) return GridRead.Refused($"the list has more than {MostColumns} columns");
                    while (cells.Count < column) cells.Add("");
                    cells.Add(Value(c, shared));
                }
                rows.Add([.. cells]);
            }
            return new(rows.ToImmutable(), "");
        }
        catch (Exception e) when (NoBook(e))
        {
            return GridRead.Refused("it is no workbook that can be read: " + e.Message);
        }
    }

    private static bool NoBook(Exception e) => e is InvalidDataException or XmlException or InvalidOperationException or FormatException or NullReferenceException;

    private static XDocument Part(ZipArchive zip, string name)
    {
        var entry = zip.GetEntry(name) ?? throw new InvalidDataException($"it has no part {name}");
        if (entry.Length > MostBytes) throw new InvalidDataException($"its part {name} is too large");
        using var stream = entry.Open();
        using var reader = XmlReader.Create(stream, new() { DtdProcessing = DtdProcessing.Prohibit });
        return XDocument.Load(reader);
    }

    private static string Value(XElement cell, string[] shared)
    {
        string value = (string?)cell.Element(Main + "v") ?? "";
        return (string?)cell.Attribute("t") switch
        {
            "s" => int.TryParse(value, NumberStyles.None, CultureInfo.InvariantCulture, out int i) && i < shared.Length ? shared[i] : "",
            "inlineStr" => cell.Element(Main + "is") is { } inline ? Text(inline) : "",
            "b" => value == "1" ? "yes" : "no",
            _ => value,
        };
    }

    /// <summary>All runs of a text, without what is said of their pronunciation.</summary>
    private static string Text(XElement of) => string.Concat(of.Descendants(Main + "t").Where(t => t.Parent!.Name != Main + "rPh").Select(t => t.Value));

    private static int Column(string place)
    {
        int column = 0;
        foreach (char c in place.TakeWhile(char.IsAsciiLetter)) column = column * 26 + char.ToUpperInvariant(c) - 'A' + 1;
        return column - 1;
    }
}
