using System.Collections.Immutable;

namespace Trivet.Files;

/// <summary>
/// Gathers errors by byte offset and gives them lines and columns in one pass at the end, so that reading stays linear. After the
/// first hundred the rest are only counted.
/// </summary>
internal sealed class ErrorList
{
    public const int Most = 100;

    private readonly List<(long At, string Pointer, string Problem, string Remedy)> _errors = [];
    private int _more;
    private long _lastAt;

    public bool Any => _errors.Count > 0;

    /// <summary>Further errors are only counted: their words need not be made.</summary>
    public bool Full => _errors.Count >= Most;

    public void Add(long at, string pointer, string problem, string remedy)
    {
        if (Full)
        {
            _more++;
            _lastAt = Math.Max(_lastAt, at);
            return;
        }

        _errors.Add((at, pointer, problem, remedy));
    }

    /// <summary>The errors in the order of the file. Columns count characters (code points), tabs as one.</summary>
    public ImmutableArray<FileError> Located(ReadOnlySpan<byte> utf8, string file)
    {
        var all = new List<(long At, string Pointer, string Problem, string Remedy)>(_errors);
        if (_more > 0) all.Add((_lastAt, "", $"and {_more} more", "mend those above first"));
        var located = ImmutableArray.CreateBuilder<FileError>(all.Count);
        int at = 0, line = 1, column = 1;
        foreach (var error in all.OrderBy(e => e.At))
        {
            for (; at < error.At && at < utf8.Length; at++)
            {
                if (utf8[at] == (byte)'\n') (line, column) = (line + 1, 1);
                else if ((utf8[at] & 0xC0) != 0x80) column++;
            }

            located.Add(new FileError(file, line, column, error.Pointer, error.Problem, error.Remedy));
        }

        return located.DrainToImmutable();
    }
}
