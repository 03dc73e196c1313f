using Trivet.Files.Entries;
using Trivet.Journal;
using Trivet.Testing;
using Xunit;

namespace Trivet.Files.Tests.Entries;

/// <summary>The checker in docs/, which shares no code with Trivet: Python's own JSON writer and SHA-256.</summary>
public sealed class JournalCheckTests
{
    [Fact]
    public void A_sound_journal_of_two_devices_is_found_sound_and_its_head_is_ours()
    {
        string[] lines = Export(out string head);
        var (code, output) = Check(lines);
        Assert.Equal($"{lines.Length / 2} entries, {lines.Length / 2} receipts, head {head}", output.Trim());
        Assert.Equal(0, code);
    }

    [Fact]
    public void A_changed_word_a_missing_entry_and_a_missing_receipt_are_found()
    {
        string[] lines = Export(out _);
        int words = Array.FindIndex(lines, l => l.Contains("four screws", StringComparison.Ordinal));

        var (code, output) = Check([.. lines.Select(l => l.Replace("four screws", "five screws", StringComparison.Ordinal))]);
        Assert.Equal(1, code);
        Assert.Contains($"receipt {words / 2 + 1}: its entry is not here", output, StringComparison.Ordinal);

        (code, output) = Check([.. lines.Where((_, i) => i != words && i != words + 1)]);
        Assert.Equal(1, code);
        Assert.Contains("does not follow the one before it", output, StringComparison.Ordinal);

        (code, output) = Check([.. lines.Where((_, i) => i != words + 1)]);
        Assert.Equal(1, code);
        Assert.Contains("no receipt", output, StringComparison.Ordinal);
    }

    [Fact]
    public void What_a_device_brings_without_receipts_is_checked_too_and_a_fork_is_found()
    {
        var device = new WritingDevice("tablet-1");
        string[] entries = [.. Enumerable.Range(0, 4).Select(i => EntryText.Of(device.Write(new Counted(i)).Entry))];
        Assert.Equal(0, Check(entries).Code);

        var copied = new WritingDevice("tablet-1");
        copied.Write(new Counted(0));
        var (code, output) = Check([.. entries, EntryText.Of(copied.Write(new Counted(7)).Entry)]);
        Assert.Equal(1, code);
        Assert.Contains("device tablet-1, sequence 2: written twice", output, StringComparison.Ordinal);
    }

    [Fact]
    public void A_file_is_read_to_its_end_whatever_a_line_holds()
    {
        string[] lines = Export(out _);
        var read = JournalFile.Read(new StringReader(string.Join('\n', [.. lines, "{", new string('x', 3 * EntryText.Largest), lines[0]])), "tablet.jsonl");
        Assert.Equal(lines.Length / 2 + 1, read.Entries.Length);
        Assert.Equal([lines.Length + 1, lines.Length + 2], read.Errors.Select(e => e.Line));

        read = JournalFile.Read(new StringReader(string.Join("\r\n", lines).Replace("four screws", "five screws", StringComparison.Ordinal)), "tablet.jsonl");
        Assert.Equal(2, read.Errors.Length);
        Assert.All(read.Errors, e => Assert.Contains("was changed", e.Problem, StringComparison.Ordinal));
    }

    private static string[] Export(out string head)
    {
        WritingDevice[] devices = [new("tablet-1"), new("desk-2")];
        var lines = new List<string>();
        head = "";
        long number = 0;
        foreach (var says in WritingDevice.EveryKind)
        {
            foreach (var device in devices)
            {
                var kept = device.Write(says, "limit-switch:a");
                string receipt = EntryText.Of(new Receipt(++number, kept.Hash, head, device.Now.Ticks));
                lines.AddRange([EntryText.Of(kept.Entry), receipt]);
                head = EntryText.Hash(receipt);
            }
        }
        return [.. lines];
    }

    private static (int Code, string Output) Check(string[] lines)
    {
        string file = Path.GetTempFileName();
        try
        {
            File.WriteAllText(file, string.Join('\n', lines) + "\n");
            return OutsideProgram.Python(Path.Combine(ReferenceData.Folder("outside"), "..", "..", "docs", "journal-check.py"), file);
        }
        finally
        {
            File.Delete(file);
        }
    }
}
