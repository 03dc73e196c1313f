using System.Collections.Immutable;

namespace Trivet.Files;

/// <summary>A column of a table of numbers. The head of the file names it with its unit: <c>x[mm]</c>.</summary>
/// <param name="Name">Name without the unit.</param>
/// <param name="Dimension">What it holds; the unit may be any of that kind. A plain number has no brackets.</param>
/// <param name="Optional">May be missing from a file; its values are then not a number.</param>
/// <param name="Unit">Unit written; null for the dimension's usual one.</param>
/// <param name="Answer">Computed by whoever reads the table, and passed over where it stands in it already.</param>
public sealed record CsvColumn(string Name, Dimension Dimension, bool Optional = false, string? Unit = null, bool Answer = false)
{
    /// <summary>True where a file does without it.</summary>
    public bool MayBeMissing => Optional || Answer;

    /// <summary>Head of the column as written: <c>x[mm]</c>.</summary>
    public string Head => Dimension == Dimension.One ? Name : $"{Name}[{Unit ?? Units.For(Dimension)[0].UsualUnit.Symbol}]";
}

/// <summary>
/// Reads a table of numbers row by row in bounded memory. The first line that is neither empty nor a comment (<c>#</c>) is the head;
/// columns may stand in any order. The separator is the comma, the semicolon (then a decimal comma is read too) or the tab.
/// A row that can not be read is listed with line and column of its first error and passed over; after a hundred reading ends.
/// </summary>
public sealed class CsvReader
{
    private const int MostErrors = 100;
    private const int LongestLine = 16 * 1024;

    private readonly TextReader _text;
    private readonly string _file;
    private ImmutableArray<CsvColumn> _columns;
    private readonly ImmutableArray<FileError>.Builder _errors = ImmutableArray.CreateBuilder<FileError>();
    private readonly char[] _line = new char[LongestLine];
    private int _length;
    private char _separator = ',';
    /// <summary>For each column of the file: which of ours it is, and its unit.</summary>
    private (int Column, Unit Unit)[] _layout = [];
    private bool _done;

    public CsvReader(TextReader text, string file, ImmutableArray<CsvColumn> columns) : this(text, file, _ => columns)
    {
    }

    /// <param name="columns">The columns asked for, from the names in the head without their units: where their number is the table's to say.</param>
    public CsvReader(TextReader text, string file, Func<ImmutableArray<string>, ImmutableArray<CsvColumn>> columns)
    {
        _text = text;
        _file = file;
        bool any = NextLine();
        var heads = any ? ReadHeads() : [];
        _columns = columns([.. heads.Select(h => h.Name)]);
        if (any) ReadHead(heads);
        else if (!_done) Refuse(1, "the table is empty", $"begin with a head line: {RightHead()}");
        _done |= _errors.Count > 0;
    }

    /// <summary>The columns asked for.</summary>
    public ImmutableArray<CsvColumn> Columns => _columns;

    /// <summary>True where the file has the column of this index.</summary>
    public bool Has(int column) => Array.Exists(_layout, l => l.Column == column);

    /// <summary>What is wrong so far.</summary>
    public ImmutableArray<FileError> Errors => _errors.ToImmutable();

    /// <summary>Line last read, from 1.</summary>
    public int Line { get; private set; }

    /// <summary>Reads the next good row in the order of the columns asked for, SI; false at the end, or when too much is wrong.</summary>
    public bool Next(Span<double> values)
    {
        if (values.Length < _columns.Length) throw new ArgumentException("there must be room for a value of each column", nameof(values));
        while (!_done && NextLine())
        {
            if (ReadRow(values)) return true;
            if (_errors.Count < MostErrors) continue;
            Refuse(1, "more errors than are listed", "mend those above first");
            break;
        }

        _done = true;
        return false;
    }

    private List<(string Name, string? Unit, int At)> ReadHeads()
    {
        var line = _line.AsSpan(0, _length);
        if (line.Length > 0 && line[0] == '\uFEFF') line = line[1..];
        _separator = line.Contains(';') ? ';' : line.Contains('\t') ? '\t' : ',';
        var heads = new List<(string, string?, int)>();
        foreach (var range in line.Split(_separator))
        {
            string head = Unquoted(line[range]).ToString();
            int bracket = head.IndexOf('[', StringComparison.Ordinal);
            string name = (bracket < 0 ? head : head[..bracket]).Trim();
            heads.Add((name, bracket < 0 ? null : head[(bracket + 1)..].TrimEnd().TrimEnd(']').Trim(), range.Start.GetOffset(line.Length) + 1));
        }

        return heads;
    }

    private void ReadHead(List<(string Name, string? Unit, int At)> heads)
    {
        var layout = new List<(int, Unit)>();
        foreach (var (name, unit, at) in heads)
        {
            int column = Index(name);
            if (column < 0)
            {
                string near = Nearest.To(name, _columns.Select(c => c.Name)) is { } meant ? $"\"{meant}\" is meant? " : "";
                Refuse(at, $"there is no column \"{Shown.Short(name)}\" here", $"{near}The head is {RightHead()}");
                continue;
            }

            var wanted = _columns[column];
            if (layout.Exists(l => l.Item1 == column)) Refuse(at, $"column {name} stands twice", "keep one of the two");
            else if (unit is null && wanted.Dimension != Dimension.One) Refuse(at, $"column {name} names no unit", $"write {wanted.Head}");
            else if (unit is not null && wanted.Dimension == Dimension.One) Refuse(at, $"column {name} has no unit", $"write {wanted.Head}");
            else if (Quantity.Find(wanted.Dimension, unit) is { } found) layout.Add((column, found));
            else Refuse(at, $"\"{Shown.Short(unit ?? "")}\" is no unit of column {name}", $"use one of {Quantity.UnitsThatFit(wanted.Dimension)}, as in {wanted.Head}");
        }

        if (_errors.Count == 0)
        {
            string[] missing = [.. _columns.Where((c, i) => !c.MayBeMissing && !layout.Exists(l => l.Item1 == i)).Select(c => c.Name)];
            if (missing.Length == 1) Refuse(1, $"column {missing[0]} is missing", $"the head is {RightHead()}");
            else if (missing.Length > 1) Refuse(1, $"columns {string.Join(", ", missing[..^1])} and {missing[^1]} are missing", $"the head is {RightHead()}");
        }

        _layout = [.. layout];
    }

    private bool ReadRow(Span<double> values)
    {
        values[.._columns.Length].Fill(double.NaN);
        var line = _line.AsSpan(0, _length);
        int field = 0;
        foreach (var range in line.Split(_separator))
        {
            int at = range.Start.GetOffset(line.Length) + 1;
            if (field == _layout.Length)
            {
                Refuse(at, $"this row has more than {_layout.Length} fields", _separator == ',' ? "write a decimal point, not a comma, or separate the fields with semicolons" : "take the field away");
                return false;
            }

            var (column, unit) = _layout[field++];
            var text = Unquoted(line[range]);
            if (!CsvNumber.TryRead(text, unit, decimalComma: _separator != ',', out values[column]))
            {
                Refuse(at, text.IsEmpty ? $"column {_columns[column].Name} is empty here" : $"\"{Shown.Short(text.ToString())}\" is not a number", "write a number only; its unit stands in the head");
                return false;
            }
        }

        if (field == _layout.Length) return true;
        Refuse(_length + 1, $"this row has {field} of {_layout.Length} fields", $"the head is {RightHead()}");
        return false;
    }

    private static ReadOnlySpan<char> Unquoted(ReadOnlySpan<char> field)
    {
        field = field.Trim();
        return field.Length >= 2 && field[0] == '"' && field[^1] == '"' ? field[1..^1].Trim() : field;
    }

    /// <summary>Reads the next line with something on it into the buffer; false at the end or where a line is absurdly long.</summary>
    private bool NextLine()
    {
        while (true)
        {
            _length = 0;
            int c = _text.Read();
            if (c < 0) return false;
            Line++;
            for (; c >= 0 && c != '\n'; c = _text.Read())
            {
                if (_length == LongestLine)
                {
                    Refuse(1, $"this line has more than {LongestLine} characters", "is this a table of numbers?");
                    _done = true;
                    return false;
                }

                _line[_length++] = (char)c;
            }

            var line = _line.AsSpan(0, _length).Trim().TrimStart('\uFEFF');
            if (!line.IsEmpty && line[0] != '#') return true;
        }
    }

    private int Index(string name)
    {
        for (int i = 0; i < _columns.Length; i++)
        {
            if (string.Equals(_columns[i].Name, name, StringComparison.Ordinal)) return i;
        }

        return -1;
    }

    /// <summary>What must stand in the head, then what may.</summary>
    private string RightHead()
    {
        string must = string.Join(',', _columns.Where(c => !c.MayBeMissing).Select(c => c.Head)), may = string.Join(',', _columns.Where(c => c is { Optional: true, Answer: false }).Select(c => c.Head));
        return may.Length == 0 ? must : $"{must}; {may} may follow";
    }

    private void Refuse(int column, string problem, string remedy) =>
        _errors.Add(new FileError(_file, Math.Max(1, Line), column, "", problem, remedy));
}

/// <summary>Writes a table of numbers: the head with units, then a row for each call. What is not a number is left empty.</summary>
public sealed class CsvWriter
{
    private readonly TextWriter _text;
    private readonly ImmutableArray<CsvColumn> _columns;
    private readonly Unit[] _units;

    /// <param name="texts">Heads of columns of words behind the numbers.</param>
    public CsvWriter(TextWriter text, ImmutableArray<CsvColumn> columns, params ReadOnlySpan<string> texts)
    {
        _text = text;
        _columns = columns;
        _units = [.. columns.Select(c => Quantity.Find(c.Dimension, c.Unit) ?? throw new ArgumentException($"{c.Unit} is no unit of {c.Name}", nameof(columns)))];
        _text.Write(string.Join(',', columns.Select(c => c.Head)));
        foreach (string head in texts) _text.Write("," + Field(head));
        _text.Write('\n');
    }

    /// <summary>One row: values in SI in the order of the columns, then words.</summary>
    public void Row(ReadOnlySpan<double> values, params ReadOnlySpan<string> texts)
    {
        if (values.Length != _columns.Length) throw new ArgumentException("a row has a value for each column", nameof(values));
        for (int i = 0; i < values.Length; i++)
        {
            if (i > 0) _text.Write(',');
            if (double.IsFinite(values[i])) _text.Write(Quantity.FormatNumber(values[i], _units[i]));
        }

        foreach (string text in texts) _text.Write("," + Field(text));
        _text.Write('\n');
    }

    /// <summary>Quotes where RFC 4180 asks for them.</summary>
    private static string Field(string text) =>
        text.AsSpan().IndexOfAny(",\"\r\n") < 0 ? text : $"\"{text.Replace("\"", "\"\"", StringComparison.Ordinal)}\"";
}
