using System.Text;

namespace Trivet.Files.Entries;

/// <summary>What a line of a journal brought as a file holds. Closed; a sound receipt whose entry is in the file yields none.</summary>
public abstract record JournalFileLine
{
    private JournalFileLine() { }

    /// <param name="Text">Canonical, and sound.</param>
    public sealed record OfEntry(string Text) : JournalFileLine;

    /// <param name="Line">Its number in the file.</param>
    /// <param name="Content">A picture and nothing else, with this hash.</param>
    public sealed record OfPhotograph(int Line, string Hash, byte[] Content) : JournalFileLine;

    /// <summary>A line that is damaged, or a receipt whose entry is not in the file.</summary>
    public sealed record Refused(FileError Error) : JournalFileLine;
}

/// <summary>A journal brought as a file: lines of canonical text, as a device or another store writes them, with photographs or without.</summary>
public static class JournalFile
{
    private const string Again = "bring the file again as it was written";

    /// <summary>Reads to the end whatever comes, one line at a time: a damaged one keeps no other out, one too long is passed over without being held.</summary>
    public static IEnumerable<JournalFileLine> Lines(TextReader text, string file)
    {
        var hashes = new HashSet<string>(StringComparer.Ordinal);
        var receipts = new List<(int Line, string Entry)>();
        for (int number = 1; ReadLine(text) is { } line; number++)
        {
            if (line.Length == 0) continue;
            if (PhotographText.IsOne(line))
            {
                var photograph = PhotographText.Read(line);
                yield return photograph.Ok
                    ? new JournalFileLine.OfPhotograph(number, photograph.Hash, photograph.Content)
                    : Refuse(file, number, $"the photograph is not taken: {photograph.Problem}", photograph.Remedy);
                continue;
            }
            var read = EntryReader.Read(line);
            if (!read.Ok)
            {
                yield return Refuse(file, number, $"the line is damaged: {read.Problem}", Again);
            }
            else if (read.Receipt is { } receipt)
            {
                receipts.Add((number, receipt.Entry));
            }
            else
            {
                hashes.Add(read.Hash);
                yield return new JournalFileLine.OfEntry(line);
            }
        }
        foreach (var (line, entry) in receipts.Where(r => !hashes.Contains(r.Entry)))
            yield return Refuse(file, line, $"the entry {entry[..12]}… of this receipt is not in the file, or was changed", Again);
    }

    private static JournalFileLine.Refused Refuse(string file, int line, string problem, string remedy) => new(new FileError(file, line, 1, "", problem, remedy));

    /// <summary>The next line without its end; of one that is too long its beginning, which is then refused as too long. Null at the end.</summary>
    private static string? ReadLine(TextReader text)
    {
        var line = new StringBuilder();
        int c = text.Read();
        if (c < 0) return null;
        for (; c is >= 0 and not '\n'; c = text.Read())
            if (line.Length <= PhotographText.LongestLine + 1) line.Append((char)c);
        if (line.Length > 0 && line[^1] == '\r') line.Length--;
        return line.ToString();
    }
}
