using System.Text;
using CsCheck;
using Trivet.Testing;
using Xunit;

namespace Trivet.Files.Tests;

/// <summary>Whatever the bytes: a cell without errors, or errors with places inside the file; never an exception.</summary>
public class CellFuzzTests
{
    private static readonly byte[] Whole = Encoding.UTF8.GetBytes(Samples.Find("jar-lids")!.Text);

    /// <summary>Small files at each byte; the large one takes the square of its length, so it is cut at some four thousand bytes, and at all of them in a long run.</summary>
    [Theory, InlineData("labels"), InlineData("tight-corner"), InlineData("jar-lids")]
    public void A_file_cut_off_at_any_byte_is_refused_with_a_place(string name)
    {
        byte[] whole = Encoding.UTF8.GetBytes(Samples.Find(name)!.Text);
        Assert.NotNull(CellFile.Read(whole, "cell.json").Cell);
        int last = Array.LastIndexOf(whole, (byte)'}');
        int step = Math.Max(1, last / Effort.Cases(4_000));
        for (int length = 0; length < last; length += step) Assert.Null(Checked(whole.AsSpan(0, length)).Cell);
        Assert.Null(Checked(whole.AsSpan(0, last)).Cell);
    }

    [Fact]
    public void Random_bytes_are_refused_in_good_order() =>
        Gen.Byte.Array[0, 300].Sample(bytes => { Checked(bytes); }, seed: "0000000000002", iter: Effort.Cases(20_000));

    [Theory]
    [InlineData("{\"\\ud800\": 1, \"trivet\": 1}")]
    [InlineData("{\"\\ud800null,null,null}")]
    public void Half_a_character_before_the_version_is_refused_in_good_order(string text) => Assert.Null(Checked(Encoding.UTF8.GetBytes(text)).Cell);

    [Fact]
    public void Random_json_is_refused_in_good_order() =>
        Gen.OneOf("{", "}", "[", "]", ":", ",", "\"", "\"trivet\"", "1", "\"robot\"", "\"chains\"", "\"a\"", "\"rod\"", "\"1 mm\"", "null", "true", "-", "1e400", "//", "/*", "*/", "\n", "\\", "\\u", "\\ud800", "é", "\uFEFF")
            .Array[0, 60].Sample(parts => { Checked(Encoding.UTF8.GetBytes(string.Concat(parts))); }, seed: "0000000000003", iter: Effort.Cases(30_000));

    [Fact]
    public void A_good_file_with_a_few_bytes_changed_is_read_or_refused() =>
        Gen.Select(Gen.Int[0, Whole.Length - 1], Gen.OneOf(Gen.Byte, Gen.OneOf("{}[]:,\"'\\/0e-. µ\n"u8.ToArray()))).Array[1, 5].Sample(
            changes =>
            {
                byte[] bytes = [.. Whole];
                foreach (var (at, value) in changes) bytes[at] = value;
                Checked(bytes);
            },
            seed: "0000000000004", iter: Effort.Cases(2_000));

    [Fact]
    public void A_good_file_with_a_piece_missing_or_doubled_is_read_or_refused() =>
        Gen.Select(Gen.Int[0, Whole.Length - 1], Gen.Int[1, 400], Gen.Bool).Sample(
            (at, length, twice) =>
            {
                int end = Math.Min(at + length, Whole.Length);
                Checked(twice ? [.. Whole[..end], .. Whole[at..]] : [.. Whole[..at], .. Whole[end..]]);
            },
            seed: "0000000000005", iter: Effort.Cases(2_000));

    [Fact]
    public void Every_value_replaced_by_one_of_another_kind_is_one_error_at_its_pointer()
    {
        string[] others = ["{}", "[]", "\"\"", "\"x\"", "1e400", "-1e-400", "\"NaN mm\"", "\"3 V\"", "12.5", "true", "\"\\udfff\"", "\"1e400 mm\""];
        RandomCells.Any.Sample(
            cell =>
            {
                string text = CellFile.Write(cell);
                foreach (var field in CellFields.Below(cell, "").Where(f => f.Text.Length > 0 && f.Pointer.Count(c => c == '/') == 1))
                {
                    foreach (string other in others)
                    {
                        string broken = System.Text.RegularExpressions.Regex.Replace(text, $"(\"{field.Pointer[1..]}\": )\"[^\"]*\"", m => m.Groups[1].Value + other, System.Text.RegularExpressions.RegexOptions.None);
                        Checked(Encoding.UTF8.GetBytes(broken));
                    }
                }
            },
            seed: "0000000000006", iter: Effort.Cases(20));
    }

    /// <summary>Sixteen megabytes of the worst kinds. The limits are generous: they catch a quadratic reader, not a slow machine.</summary>
    [Theory]
    [InlineData("{\"trivet\":1,\"stations\":{", "\"{0}\":{},", "a")]
    [InlineData("{\"trivet\":1,", "\"{0}\":1,", "unknown-name-")]
    [InlineData("{\"trivet\":1,\"name\":", "{0}[", "")]
    [InlineData("{\"trivet\":1,\"robot\":{\"common\":{", "\"rod\":1,", "")]
    public void The_largest_files_are_read_in_time_and_memory_bounded_by_their_size(string head, string piece, string name)
    {
        var text = new StringBuilder(head);
        for (int i = 0; text.Length < 4_000_000; i++) text.Append(piece.Replace("{0}", name.Length == 0 ? "" : name + i, StringComparison.Ordinal));
        byte[] bytes = Encoding.UTF8.GetBytes(text.ToString());
        long before = GC.GetAllocatedBytesForCurrentThread();
        var read = Checked(bytes);
        long allocated = GC.GetAllocatedBytesForCurrentThread() - before;
        Assert.InRange(read.Errors.Length, 1, 102);
        Assert.True(allocated < 200L * bytes.Length, $"{allocated} bytes for {bytes.Length}");
    }

    private static CellRead Checked(ReadOnlySpan<byte> utf8)
    {
        var read = CellFile.Read(utf8, "cell.json");
        Assert.Equal(read.Cell is null, read.Errors.Length > 0);
        int lines = utf8.Count((byte)'\n') + 1;
        foreach (var error in read.Errors)
        {
            Assert.InRange(error.Line, 1, lines);
            Assert.True(error.Column >= 1 && error.Problem.Length > 0 && error.Remedy.Length > 0, error.ToString());
            Assert.DoesNotContain("Exception", error.Problem, StringComparison.Ordinal);
        }

        return read;
    }
}
