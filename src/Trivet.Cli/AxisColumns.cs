using System.Collections.Immutable;
using System.Globalization;
using Trivet.Files;

namespace Trivet.Cli;

/// <summary>Columns of a table that repeat for each axis: <c>vmax1,vmax2,vmax3</c>. Plain numbers in SI.</summary>
internal static class AxisColumns
{
    /// <summary>How many axes a head speaks of: the highest number behind the name, or 1.</summary>
    public static int Count(ImmutableArray<string> heads, string name)
    {
        int count = 1;
        foreach (string head in heads)
        {
            if (head.StartsWith(name, StringComparison.Ordinal) && head.Length <= name.Length + 4
                && int.TryParse(head.AsSpan(name.Length), NumberStyles.None, CultureInfo.InvariantCulture, out int axis)) count = Math.Max(count, axis);
        }

        return count;
    }

    /// <summary>name1, name2, …</summary>
    public static IEnumerable<CsvColumn> Of(string name, int axes, bool optional = false) =>
        Enumerable.Range(1, axes).Select(axis => new CsvColumn(string.Create(CultureInfo.InvariantCulture, $"{name}{axis}"), Dimension.One, optional));

    /// <summary>Tells every error of a table; false where there are none.</summary>
    public static bool Refused(CsvReader reader, TextWriter error, string consequence = "the table was not used")
    {
        if (reader.Errors.IsEmpty) return false;
        Refusals.Write(reader.Errors, error, consequence);
        return true;
    }
}
