using System.Text;
using Trivet.Cells;

namespace Trivet.Files.Exchange;

/// <summary>Reads exports that have a parameter a line: in columns, or name and value apart by a sign.</summary>
internal static class ParameterLines
{
    private const int LongestLine = 16 * 1024;

    public static void Read(string text, ExportMapping mapping, ParameterExport.Gathered to)
    {
        string separator = mapping.Separator switch { "tab" => "\t", "blank" => " ", { } s => s, null => "" };
        if (mapping.Form == ExportForm.Columns && separator.Length != 1)
        {
            to.Wrong(1, 1, "/controller/export/separator", "columns are set apart by one sign", "state one sign, or the word tab or blank");
            return;
        }
        int line = 0, head = Math.Max(0, mapping.HeadLines ?? 0);
        string section = "";
        foreach (var range in Lines(text))
        {
            line++;
            if (line <= head) continue;
            if (to.Full) return;
            string own = text[range];
            string trimmed = own.Trim();
            if (trimmed.Length == 0 || mapping.Comment is { Length: > 0 } comment && trimmed.StartsWith(comment, StringComparison.Ordinal)) continue;
            if (own.Length > LongestLine) to.Wrong(line, 1, "", $"the line is longer than {LongestLine} characters", "see that the file is an export of parameters");
            else if (mapping.Sections == true && trimmed[0] == '[' && trimmed[^1] == ']') section = trimmed[1..^1].Trim();
            else if (mapping.Form == ExportForm.Columns) Row(own, line);
            else Pair(own, line);
        }

        void Pair(string own, int at)
        {
            int sign = own.IndexOf(separator, StringComparison.Ordinal);
            if (sign < 0)
            {
                to.Wrong(at, 1, "", $"the line has no \"{Shown.Short(mapping.Separator!)}\" between name and value", "state how comments begin and how many lines the head has, or mend the separator");
                return;
            }
            string value = own[(sign + separator.Length)..].Trim();
            if (value.Length >= 2 && value[0] == '"' && value[^1] == '"') value = value[1..^1];
            to.Add(Led(section, own[..sign].Trim()), value, at);
        }

        void Row(string own, int at)
        {
            if (Cells(own, separator[0]) is not { } cells)
            {
                to.Wrong(at, 1, "", "a quotation mark is not closed in this line", "close it, or leave quotation marks out");
                return;
            }
            int last = Math.Max(Math.Max(mapping.NameColumn!.Value, mapping.ValueColumn!.Value), mapping.GroupColumn ?? 1);
            if (cells.Count < last)
            {
                to.Wrong(at, 1, "", $"the line has {cells.Count} columns, not {last}", "state how comments begin and how many lines the head has, or mend separator and columns");
                return;
            }
            string group = mapping.GroupColumn is { } g ? cells[g - 1].Trim() : section;
            to.Add(Led(group, cells[mapping.NameColumn.Value - 1].Trim()), cells[mapping.ValueColumn.Value - 1], at);
        }
    }

    /// <summary>A name with what leads it.</summary>
    public static string Led(string group, string name) => group.Length == 0 || name.Length == 0 ? name : $"{group}/{name}";

    private static IEnumerable<Range> Lines(string text)
    {
        int from = 0;
        while (from < text.Length)
        {
            int end = text.AsSpan(from).IndexOfAny('\r', '\n');
            if (end < 0)
            {
                yield return from..;
                yield break;
            }
            yield return from..(from + end);
            from += end + 1;
            if (text[from - 1] == '\r' && from < text.Length && text[from] == '\n') from++;
        }
    }

    /// <summary>The columns of a line, quoted as RFC 4180 has it; runs of blanks are one separator. Null where a quotation mark is not closed.</summary>
    private static List<string>? Cells(string line, char separator)
    {
        var cells = new List<string>();
        var cell = new StringBuilder();
        bool quoted = false, wasQuoted = false;
        for (int i = 0; i < line.Length; i++)
        {
            char c = line[i];
            if (quoted)
            {
                if (c != '"') cell.Append(c);
                else if (i + 1 < line.Length && line[i + 1] == '"') cell.Append(line[++i]);
                else quoted = false;
            }
            else if (c == '"' && cell.Length == 0) quoted = wasQuoted = true;
            else if (c == separator)
            {
                if (separator == ' ' && cell.Length == 0 && !wasQuoted) continue;
                cells.Add(cell.ToString());
                cell.Clear();
                wasQuoted = false;
            }
            else cell.Append(c);
        }
        if (quoted) return null;
        if (separator != ' ' || cell.Length > 0 || wasQuoted) cells.Add(cell.ToString());
        return cells;
    }
}
