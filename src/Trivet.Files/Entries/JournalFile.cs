using System.Collections.Immutable;
using System.Text;

namespace Trivet.Files.Entries;

/// <summary>Entries brought as a file: lines of canonical text, as a device or another store writes them.</summary>
/// <param name="Entries">Texts of the entries that are sound, in the order of the file.</param>
/// <param name="Errors">Lines that are damaged, with their number; and receipts whose entry is not in the file.</param>
public sealed record JournalFile(ImmutableArray<string> Entries, ImmutableArray<FileError> Errors)
{
    /// <summary>Reads to the end whatever comes: a damaged line keeps no other out. A line too long is passed over without being held.</summary>
    public static JournalFile Read(TextReader text, string file)
    {
        var entries = ImmutableArray.CreateBuilder<string>();
        var errors = ImmutableArray.CreateBuilder<FileError>();
        var hashes = new HashSet<string>(StringComparer.Ordinal);
        var receipts = new List<(int Line, string Entry)>();
        int number = 0;
        while (ReadLine(text) is { } line)
        {
            number++;
            if (line.Length == 0) continue;
            var read = EntryReader.Read(line);
            if (!read.Ok)
            {
                errors.Add(new FileError(file, number, 1, "", $"the line is damaged: {read.Problem}", "bring the file again as it was written"));
            }
            else if (read.Receipt is { } receipt)
            {
                receipts.Add((number, receipt.Entry));
            }
            else
            {
                hashes.Add(read.Hash);
                entries.Add(line);
            }
        }
        foreach (var (line, entry) in receipts.Where(r => !hashes.Contains(r.Entry)))
            errors.Add(new FileError(file, line, 1, "", $"the entry {entry[..12]}… of this receipt is not in the file, or was changed", "bring the file again as it was written"));
        return new(entries.ToImmutable(), errors.ToImmutable());
    }

    /// <summary>The next line without its end; of one that is too long its beginning, which is then refused as too long. Null at the end.</summary>
    private static string? ReadLine(TextReader text)
    {
        var line = new StringBuilder();
        int c = text.Read();
        if (c < 0) return null;
        for (; c is >= 0 and not '\n'; c = text.Read())
            if (line.Length <= EntryText.Largest) line.Append((char)c);
        if (line.Length > 0 && line[^1] == '\r') line.Length--;
        return line.ToString();
    }
}
