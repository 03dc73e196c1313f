using System.Buffers.Binary;
using System.IO.Compression;
using System.Security.Cryptography;
using System.Text;
using SkiaSharp;
using Trivet.Cells;
using Trivet.Papers;
using Trivet.Store;
using Xunit;

namespace Trivet.Cli.Tests;

/// <summary>What is kept of a photograph that came from anywhere.</summary>
public sealed class PhotographTests
{
    private const string Line = "rail-order · 2030-05-06 14:00:01 +02:00 · ada";

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Fact]
    public void Place_camera_and_comments_do_not_go_with_it_and_the_pixels_do()
    {
        byte[] taken = WithExif(Jpeg(640, 480), orientation: 1);
        Assert.True(Contains(taken, "GPS-SECRET") && Contains(taken, "CAMERA-SECRET") && Contains(taken, "COMMENT-SECRET"));

        var made = PhotographFile.Make(taken, Line);

        Assert.Equal("", made.Problem);
        Assert.False(Contains(made.Jpeg!, "SECRET") || Contains(made.Jpeg!, "Exif") || Contains(made.Jpeg!, "ICC"));
        // Nothing but what a decoder needs (ITU-T T.81, B.1.1.3, and the JFIF mark): no application data, no comment.
        Assert.Subset(new HashSet<byte> { 0xE0, 0xDB, 0xC0, 0xC4, 0xDA }, Markers(made.Jpeg!).ToHashSet());
        using var picture = SKBitmap.Decode(made.Jpeg);
        Assert.Equal((made.Width, made.Height), (picture.Width, picture.Height));
        Assert.True(picture.GetPixel(20, 240).Red > 200 && picture.GetPixel(620, 240).Blue > 200);
    }

    [Fact]
    public void A_line_is_burnt_in_below_the_picture_and_takes_none_of_it()
    {
        var made = PhotographFile.Make(Jpeg(640, 480), Line);
        using SKBitmap picture = SKBitmap.Decode(made.Jpeg), empty = SKBitmap.Decode(PhotographFile.Make(Jpeg(640, 480), "").Jpeg);
        Assert.True(made.Height > 480);
        int Lit(SKBitmap b) => Enumerable.Range(480, b.Height - 480).Sum(y => Enumerable.Range(0, b.Width).Count(x => b.GetPixel(x, y).Green > 128));
        Assert.True(Lit(picture) > 300, $"{Lit(picture)} light pixels");
        Assert.Equal(0, Lit(empty));
        // A line that is too long is set smaller: it still ends before the edge.
        using var longer = SKBitmap.Decode(PhotographFile.Make(Jpeg(640, 480), string.Concat(Enumerable.Repeat(Line, 4))).Jpeg);
        Assert.DoesNotContain(Enumerable.Range(480, longer.Height - 480), y => longer.GetPixel(longer.Width - 2, y).Green > 128);
    }

    [Theory]
    // Where the red left half of the stored pixels is after turning: Exif 2.3, tag 274, from memory.
    [InlineData(1, 0.1, 0.5)]
    [InlineData(2, 0.9, 0.5)]
    [InlineData(3, 0.9, 0.5)]
    [InlineData(4, 0.1, 0.5)]
    [InlineData(5, 0.5, 0.1)]
    [InlineData(6, 0.5, 0.1)]
    [InlineData(7, 0.5, 0.9)]
    [InlineData(8, 0.5, 0.9)]
    public void It_stands_upright_as_it_was_taken(int orientation, double x, double y)
    {
        var made = PhotographFile.Make(WithExif(Jpeg(400, 300), orientation), "");
        using var picture = SKBitmap.Decode(made.Jpeg);
        var (width, height) = orientation > 4 ? (300, 400) : (400, 300);
        Assert.Equal(width, picture.Width);
        var red = picture.GetPixel((int)(x * width), (int)(y * height));
        var blue = picture.GetPixel((int)((1 - x) * width), (int)((1 - y) * height));
        Assert.True(red.Red > 200 && red.Blue < 60 && blue.Blue > 200 && blue.Red < 60, $"{red} {blue}");
    }

    [Fact]
    public void A_large_one_is_made_smaller_and_a_png_is_taken()
    {
        var large = PhotographFile.Make(Jpeg(4000, 3000), Line);
        Assert.InRange(large.Width, PhotographFile.LongerSide * 7 / 8, PhotographFile.LongerSide);
        Assert.True(large.Jpeg!.Length < JobStore.LargestPhotograph);
        using var bitmap = Halves(300, 200);
        Assert.Equal(300, PhotographFile.Make(bitmap.Encode(SKEncodedImageFormat.Png, 100).ToArray(), Line).Width);
    }

    [Fact]
    public void A_picture_that_claims_to_be_huge_is_refused_before_it_is_decoded()
    {
        byte[] bomb = Png(60_000, 60_000);
        Assert.True(bomb.Length < 1000);
        long before = GC.GetAllocatedBytesForCurrentThread();
        var made = PhotographFile.Make(bomb, Line);
        Assert.Contains("60000 × 60000", made.Problem, StringComparison.Ordinal);
        Assert.True(GC.GetAllocatedBytesForCurrentThread() - before < 1_000_000);

        // The same with a JPEG's frame header changed (ITU-T T.81, B.2.2: height, then width).
        byte[] jpeg = Jpeg(64, 64);
        int frame = jpeg.AsSpan().IndexOf((ReadOnlySpan<byte>)[0xFF, 0xC0]);
        BinaryPrimitives.WriteUInt16BigEndian(jpeg.AsSpan(frame + 5), 65_000);
        BinaryPrimitives.WriteUInt16BigEndian(jpeg.AsSpan(frame + 7), 65_000);
        Assert.Contains("65000 × 65000", PhotographFile.Make(jpeg, Line).Problem, StringComparison.Ordinal);
    }

    [Fact]
    public void What_is_no_picture_is_cut_off_or_of_another_kind_is_refused()
    {
        byte[] sound = Jpeg(640, 480);
        using var bitmap = Halves(64, 64);
        byte[][] bad = [[], Encoding.ASCII.GetBytes("GIF89a"), sound[..(sound.Length / 3)], [0xFF, 0xD8, 0xFF, 0xE0], bitmap.Encode(SKEncodedImageFormat.Webp, 80).ToArray(), new byte[PhotographFile.LargestFile + 1]];
        Assert.All(bad, b => Assert.True(PhotographFile.Make(b, Line) is { Jpeg: null, Problem.Length: > 0, Remedy.Length: > 0 }));

        var random = new Random(20300509);
        for (int i = 0; i < 300; i++)
        {
            byte[] broken = (byte[])sound.Clone();
            for (int n = 0; n < 5; n++) broken[random.Next(broken.Length)] = (byte)random.Next(256);
            Assert.NotEqual(PhotographFile.Make(broken, Line).Jpeg is null, PhotographFile.Make(broken, Line).Problem.Length == 0);
        }
    }

    [Fact]
    public async Task By_command_it_is_kept_recorded_and_erased()
    {
        using var folder = new TemporaryFolder();
        await using (var store = Assert.IsType<OpenOutcome.Opened>(await JobStore.OpenAsync(new JobLocation.Folder(folder.Path), Stop)).Store)
            await store.CreateAsync("jar-lids", Cell.Empty, new Stamp("ada", DateTimeOffset.UnixEpoch), "made", Stop);
        string file = folder.File("rail.jpg");
        await File.WriteAllBytesAsync(file, WithExif(Jpeg(640, 480), 1), Stop);

        var kept = await Run.Trivet("journal", folder.Path, "jar-lids", "--photograph", file, "--step", "rail-order", "--person", "ada");
        Assert.Equal((0, ""), (kept.Code, kept.Error));
        string hash = kept.Output.Trim()["Kept as ".Length..^1];
        await using (var store = Assert.IsType<OpenOutcome.Opened>(await JobStore.OpenAsync(new JobLocation.Folder(folder.Path), Stop)).Store)
        {
            byte[] content = (await store.PhotographAsync(hash, Stop))!.Content!;
            Assert.Equal(hash, Convert.ToHexStringLower(SHA256.HashData(content)));
            Assert.False(Contains(content, "SECRET"));
        }
        Assert.Contains($"photographed ({hash[..8]})", (await Run.Trivet("journal", folder.Path, "jar-lids", "--step", "rail-order")).Output, StringComparison.Ordinal);

        Assert.Equal(2, (await Run.Trivet("journal", folder.Path, "jar-lids", "--erase", hash)).Code);
        Assert.Equal(0, (await Run.Trivet("journal", folder.Path, "jar-lids", "--erase", hash, "--because", "shows a person")).Code);
        Assert.Equal(0, (await Run.Trivet("journal", folder.Path, "--verify")).Code);
        Assert.Equal(2, (await Run.Trivet("journal", folder.Path, "no-such-cell", "--photograph", file)).Code);
    }

    [Fact]
    public async Task Kept_by_command_it_travels_with_the_journal_and_is_sound_to_the_checker()
    {
        using TemporaryFolder folder = new(), other = new();
        foreach (var each in new[] { folder, other })
        {
            await using var store = Assert.IsType<OpenOutcome.Opened>(await JobStore.OpenAsync(new JobLocation.Folder(each.Path), Stop)).Store;
            await store.CreateAsync("jar-lids", Cell.Empty, new Stamp("ada", DateTimeOffset.UnixEpoch), "made", Stop);
        }
        string file = folder.File("rail.jpg"), export = folder.File("journal.jsonl");
        await File.WriteAllBytesAsync(file, WithExif(Jpeg(640, 480), 1), Stop);
        string hash = (await Run.Trivet("journal", folder.Path, "jar-lids", "--photograph", file, "--person", "ada")).Output.Trim()["Kept as ".Length..^1];

        var written = await Run.Trivet("journal", folder.Path, "--export", export);
        Assert.Equal((0, ""), (written.Code, written.Error));
        Assert.Contains("1 entries and 1 photographs written", written.Output, StringComparison.Ordinal);
        Assert.Equal(await File.ReadAllTextAsync(export, Stop), (await Run.Trivet("journal", folder.Path, "--export", "-")).Output);
        var (code, told) = Trivet.Testing.OutsideProgram.Python(Repository.File("docs/journal-check.py"), export);
        Assert.StartsWith("1 entries, 1 receipts, 1 photographs, 0 not here", told, StringComparison.Ordinal);
        Assert.Equal(0, code);

        var taken = await Run.Trivet("journal", other.Path, "--import", export, "--person", "bob");
        Assert.Equal((0, ""), (taken.Code, taken.Error));
        Assert.Contains("1 photographs received, 0 were here already", taken.Output, StringComparison.Ordinal);
        await using (var store = Assert.IsType<OpenOutcome.Opened>(await JobStore.OpenAsync(new JobLocation.Folder(other.Path), Stop)).Store)
            Assert.Equal(hash, Convert.ToHexStringLower(SHA256.HashData((await store.PhotographAsync(hash, Stop))!.Content!)));

        // Erased here, it is not brought back; one that was changed on the way is refused with its line.
        await Run.Trivet("journal", other.Path, "jar-lids", "--erase", hash, "--because", "shows a person");
        Assert.Contains("1 sind hier gelöscht", (await Run.Trivet("journal", other.Path, "--import", export, "--language", "de")).Output, StringComparison.Ordinal);
        string text = await File.ReadAllTextAsync(export, Stop);
        int at = text.IndexOf("bytes", StringComparison.Ordinal) + 2000;
        await File.WriteAllTextAsync(export, text[..at] + (text[at] == 'A' ? 'B' : 'A') + text[(at + 1)..], Stop);
        var changed = await Run.Trivet("journal", other.Path, "--import", export);
        Assert.Equal(2, changed.Code);
        Assert.Contains("journal.jsonl:3:1: the photograph is not taken: its bytes do not have its hash", changed.Error, StringComparison.Ordinal);
    }

    /// <summary>Left half red, right half blue.</summary>
    private static SKBitmap Halves(int width, int height)
    {
        var bitmap = new SKBitmap(new SKImageInfo(width, height, SKColorType.Rgba8888, SKAlphaType.Opaque));
        using var canvas = new SKCanvas(bitmap);
        canvas.Clear(SKColors.Red);
        using var blue = new SKPaint { Color = SKColors.Blue };
        canvas.DrawRect(width / 2, 0, width - width / 2, height, blue);
        return bitmap;
    }

    private static byte[] Jpeg(int width, int height)
    {
        using var bitmap = Halves(width, height);
        return bitmap.Encode(SKEncodedImageFormat.Jpeg, 90).ToArray();
    }

    /// <summary>Puts an Exif segment with a camera's name, an orientation and a place behind the first marker, and a comment behind it.</summary>
    private static byte[] WithExif(byte[] jpeg, int orientation)
    {
        // A TIFF of one directory with a directory of places below it, little-endian (Exif 2.3, 4.5 and 4.6, from memory).
        var tiff = new MemoryStream();
        var w = new BinaryWriter(tiff);
        w.Write("II"u8);
        w.Write((ushort)42);
        w.Write(8u);
        w.Write((ushort)3);
        Field(0x010F, 2, 14, 200); // the camera's maker, text
        Field(0x0112, 3, 1, (uint)orientation);
        Field(0x8825, 4, 1, 100); // the directory of places
        w.Write(0u);
        w.Seek(100, SeekOrigin.Begin);
        w.Write((ushort)1);
        Field(0x001D, 2, 11, 240); // a date stamp that holds what is looked for
        w.Write(0u);
        w.Seek(200, SeekOrigin.Begin);
        w.Write("CAMERA-SECRET\0"u8);
        w.Seek(240, SeekOrigin.Begin);
        w.Write("GPS-SECRET\0"u8);
        w.Flush();

        byte[] exif = [.. "Exif\0\0"u8, .. tiff.ToArray()], comment = [.. "COMMENT-SECRET"u8];
        return [.. jpeg[..2], .. Segment(0xE1, exif), .. Segment(0xFE, comment), .. jpeg[2..]];

        void Field(ushort tag, ushort type, uint count, uint value)
        {
            w.Write(tag);
            w.Write(type);
            w.Write(count);
            w.Write(value);
        }

        static byte[] Segment(byte marker, byte[] content) => [0xFF, marker, (byte)((content.Length + 2) >> 8), (byte)(content.Length + 2), .. content];
    }

    /// <summary>A small PNG that claims any size (ISO/IEC 15948, 11.2).</summary>
    private static byte[] Png(int width, int height)
    {
        var packed = new MemoryStream();
        using (var zlib = new ZLibStream(packed, CompressionLevel.SmallestSize, leaveOpen: true)) zlib.Write(new byte[100_000]);
        byte[] header = new byte[13];
        BinaryPrimitives.WriteInt32BigEndian(header, width);
        BinaryPrimitives.WriteInt32BigEndian(header.AsSpan(4), height);
        (header[8], header[9]) = (8, 2);
        return [0x89, .. "PNG"u8, 0x0D, 0x0A, 0x1A, 0x0A, .. Chunk("IHDR", header), .. Chunk("IDAT", packed.ToArray()), .. Chunk("IEND", [])];

        static byte[] Chunk(string name, byte[] content)
        {
            byte[] whole = [0, 0, 0, 0, .. Encoding.ASCII.GetBytes(name), .. content, 0, 0, 0, 0];
            BinaryPrimitives.WriteInt32BigEndian(whole, content.Length);
            BinaryPrimitives.WriteUInt32BigEndian(whole.AsSpan(whole.Length - 4), Crc(whole.AsSpan(4, content.Length + 4)));
            return whole;
        }
    }

    private static uint Crc(ReadOnlySpan<byte> bytes)
    {
        uint crc = uint.MaxValue;
        foreach (byte b in bytes)
        {
            crc ^= b;
            for (int i = 0; i < 8; i++) crc = (crc & 1) == 1 ? 0xEDB88320 ^ (crc >> 1) : crc >> 1;
        }
        return ~crc;
    }

    /// <summary>The markers of a JPEG's segments up to its picture data.</summary>
    private static IEnumerable<byte> Markers(byte[] jpeg)
    {
        for (int at = 2; at + 4 <= jpeg.Length && jpeg[at] == 0xFF; at += 2 + BinaryPrimitives.ReadUInt16BigEndian(jpeg.AsSpan(at + 2)))
        {
            yield return jpeg[at + 1];
            if (jpeg[at + 1] == 0xDA) yield break;
        }
    }

    private static bool Contains(byte[] file, string text) => file.AsSpan().IndexOf(Encoding.ASCII.GetBytes(text)) >= 0;
}
