using System.Security.Cryptography;
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
        Assert.Equal($"{lines.Length / 2} entries, {lines.Length / 2} receipts, 0 photographs, 0 not here, head {head}", output.Trim());
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
        var read = Read(string.Join('\n', [.. lines, "{", new string('x', 3 * EntryText.Largest), lines[0]]));
        Assert.Equal(lines.Length / 2 + 1, read.OfType<JournalFileLine.OfEntry>().Count());
        Assert.Equal([lines.Length + 1, lines.Length + 2], Errors(read).Select(e => e.Line));

        read = Read(string.Join("\r\n", lines).Replace("four screws", "five screws", StringComparison.Ordinal));
        Assert.Equal(2, Errors(read).Count());
        Assert.All(Errors(read), e => Assert.Contains("was changed", e.Problem, StringComparison.Ordinal));
    }

    [Fact]
    public void A_photograph_travels_with_its_entry_and_both_readers_hold_it_to_its_hash()
    {
        byte[] picture = File.ReadAllBytes(ReferenceData.Path(Path.Combine("pictures", "grey.jpg")));
        string hash = Convert.ToHexStringLower(SHA256.HashData(picture)), line = PhotographText.Of(hash, picture);
        var device = new WritingDevice("tablet-1");
        string named = EntryText.Of(device.Write(new Photographed(hash)).Entry), erased = EntryText.Of(device.Write(new Erased(hash, "shows a person")).Entry);

        Assert.Equal((0, "1 entries, 0 receipts, 1 photographs, 0 not here, head none"), Trimmed(Check([named, line])));
        Assert.Equal((0, "1 entries, 0 receipts, 0 photographs, 1 not here, head none"), Trimmed(Check([named])));
        Assert.Equal((0, "2 entries, 0 receipts, 0 photographs, 0 not here, head none"), Trimmed(Check([named, erased])));
        Assert.Contains($"photograph {hash}: was erased, and is here", Check([named, erased, line]).Output, StringComparison.Ordinal);
        Assert.Equal(1, Check([named, erased, line]).Code);
        Assert.Equal(picture, Assert.IsType<JournalFileLine.OfPhotograph>(Read(named + "\n" + line)[1]).Content);

        // One byte of the picture changed; another picture under the hash.
        byte[] changed = [.. picture];
        changed[^10] ^= 1;
        var (code, output) = Check([named, PhotographText.Of(hash, changed)]);
        Assert.Equal(1, code);
        Assert.Contains("line 2: the photograph does not have its hash", output, StringComparison.Ordinal);
        Assert.Contains("do not have its hash", Assert.Single(Errors(Read(PhotographText.Of(hash, changed)))).Problem, StringComparison.Ordinal);
    }

    [Fact]
    public void A_photograph_in_another_form_too_large_or_no_picture_is_refused_with_its_line_and_keeps_nothing_out()
    {
        byte[] picture = File.ReadAllBytes(ReferenceData.Path(Path.Combine("pictures", "baseline.jpg")));
        string Of(byte[] bytes) => PhotographText.Of(Convert.ToHexStringLower(SHA256.HashData(bytes)), bytes);
        string sound = Of(picture);
        (string Line, string Why)[] bad =
        [
            (sound.Replace("\"photograph\":1", "\"photograph\":2", StringComparison.Ordinal), "not in the form"),
            (sound[..^40], "not in the form"),
            ("{\"bytes\":\"", "not in the form"),
            (sound.Insert(20, " "), "canonical"),
            (sound.Replace("/9", "/!", StringComparison.Ordinal), "base64"),
            (sound.Replace("\",\"hash", "=\",\"hash", StringComparison.Ordinal), "base64"),
            (Of([.. picture, 0]), "behind the picture"),
            (Of([.. picture[..2], 0xFF, 0xE1, 0, 4, 1, 2, .. picture[2..]]), "tells more"),
            (Of([]), "no JPEG"),
            (Of(new byte[PhotographText.Largest + 1]), "larger than 4 MB"),
            (Of(new byte[3 * PhotographText.Largest]), "larger than 4 MB"),
        ];
        var read = Read(string.Join('\n', [.. bad.Select(b => b.Line), sound]));
        Assert.Equal(Enumerable.Range(1, bad.Length), Errors(read).Select(e => e.Line));
        Assert.All(Errors(read).Zip(bad), e => Assert.Contains(e.Second.Why, e.First.Problem, StringComparison.Ordinal));
        Assert.All(Errors(read), e => Assert.NotEmpty(e.Remedy));
        Assert.Equal(picture, Assert.IsType<JournalFileLine.OfPhotograph>(read[^1]).Content);
        // The largest there may be is not too long: it is looked at, and found to be no picture.
        Assert.Contains("no JPEG", PhotographText.Read(Of(new byte[PhotographText.Largest])).Problem, StringComparison.Ordinal);
    }

    private static List<JournalFileLine> Read(string text) => [.. JournalFile.Lines(new StringReader(text), "tablet.jsonl")];

    private static IEnumerable<FileError> Errors(IEnumerable<JournalFileLine> lines) => lines.OfType<JournalFileLine.Refused>().Select(r => r.Error);

    private static (int Code, string Output) Trimmed((int Code, string Output) told) => (told.Code, told.Output.Trim());

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
