using System.Buffers.Binary;
using SkiaSharp;
using Trivet.Files.Entries;
using Trivet.Testing;

namespace Trivet.Desk.Sync;

/// <summary>
/// Which pictures are taken. Sound ones come from makers that are not ours: libjpeg-turbo (tests/reference/README-pictures.md) and Skia. Faults
/// are made in them by the rules of ITU-T T.81, annex B (from memory).
/// </summary>
public sealed class JpegCheckTests
{
    private static readonly byte[] EndOfImage = [0xFF, 0xD9];

    private static readonly byte[] Baseline = Picture("baseline"), Progressive = Picture("progressive"), Restarts = Picture("restarts");

    public static TheoryData<string> SoundOnes => ["baseline", "progressive", "restarts", "progressive-restarts", "three-scans", "grey", "full-colour"];

    [Theory, MemberData(nameof(SoundOnes))]
    public void A_sound_picture_is_taken_whole_and_neither_shorter_nor_longer(string name)
    {
        byte[] picture = Picture(name);
        Assert.Null(JpegCheck.Problem(picture));
        Assert.All(Enumerable.Range(0, picture.Length), length => Assert.NotNull(JpegCheck.Problem(picture.AsSpan(0, length))));
        foreach (byte[] behind in (byte[][])[[0], [0xFF], [0xD9], EndOfImage, [0xFF, 0xFF, 0xD9], [.. "PK\u0003\u0004"u8], picture])
            Assert.Contains("behind the picture", JpegCheck.Problem([.. picture, .. behind]), StringComparison.Ordinal);
    }

    [Fact]
    public void What_another_maker_draws_anew_is_taken()
    {
        var random = new Random(20300510);
        foreach (int quality in (int[])[1, 40, 85, 100])
            for (int side = 1; side <= 65; side += 8)
            {
                using var bitmap = new SKBitmap(side, 2 * side);
                bitmap.Pixels = [.. Enumerable.Range(0, 2 * side * side).Select(_ => new SKColor((uint)random.Next() | 0xFF000000))];
                Assert.Null(JpegCheck.Problem(bitmap.Encode(SKEncodedImageFormat.Jpeg, quality).ToArray()));
            }
    }

    [Fact]
    public void What_tells_more_is_refused_wherever_it_stands()
    {
        byte[] place = [.. "Exif\0\0 a place"u8], thumbnail = [.. "JFXX\0"u8, 0x10], views = [.. "MPF\0"u8], words = [.. "words"u8];
        byte[][] told =
        [
            .. Enumerable.Range(0xE0, 16).Select(m => Segment((byte)m, place)), Segment(0xFE, words), Segment(0xE0, thumbnail), Segment(0xE2, views), Segment(0xF7, words),
            // A second header, and one with a small picture of its own; a profile in pieces, and one too short for any.
            Segment(0xE0, [.. "JFIF\0"u8, 1, 1, 0, 0, 1, 0, 1, 0, 0]), Segment(0xE0, [.. "JFIF\0"u8, 1, 1, 0, 0, 1, 0, 1, 1, 1, 9, 9, 9]),
            Segment(0xE2, [.. "ICC_PROFILE\0"u8, 1, 2, .. new byte[128]]), Segment(0xE2, [.. "ICC_PROFILE\0"u8, 1, 1, .. words]),
        ];
        foreach (byte[] picture in (byte[][])[Baseline, Progressive])
            Assert.All(told, segment =>
            {
                foreach (int at in Markers(picture).Where(m => !IsRestart(picture, m)))
                    Assert.Contains("tells more", JpegCheck.Problem(With(picture, at, segment)), StringComparison.Ordinal);
            });
    }

    [Fact]
    public void A_profile_of_the_colours_goes_with_it_once()
    {
        byte[] profile = Segment(0xE2, [.. "ICC_PROFILE\0"u8, 1, 1, .. new byte[456]]);
        byte[] once = With(Baseline, 20, profile);
        Assert.Null(JpegCheck.Problem(once));
        Assert.NotNull(JpegCheck.Problem(With(once, 20, profile)));
        // Neither mark is needed: the header's segment ends at 20.
        Assert.Null(JpegCheck.Problem([.. Baseline[..2], .. Baseline[20..]]));
    }

    [Fact]
    public void There_is_exactly_one_frame_header_and_it_comes_before_the_first_scan()
    {
        var (from, to) = SegmentOf(Baseline, 0xC0);
        byte[] frame = Baseline[from..to], without = [.. Baseline[..from], .. Baseline[to..]];
        Assert.Contains("damaged", JpegCheck.Problem(without), StringComparison.Ordinal);
        Assert.Contains("damaged", JpegCheck.Problem(With(Baseline, to, frame)), StringComparison.Ordinal);
        Assert.Contains("damaged", JpegCheck.Problem(With(without, without.Length - 2, frame)), StringComparison.Ordinal);
        // A frame and no scan; a scan and no frame; neither.
        int scan = SegmentOf(Baseline, 0xDA).From;
        foreach (byte[] nothing in (byte[][])[[.. Baseline[..scan], .. EndOfImage], [.. Baseline[..from], .. EndOfImage], [0xFF, 0xD8, .. EndOfImage]])
            Assert.Contains("damaged", JpegCheck.Problem(nothing), StringComparison.Ordinal);
    }

    [Theory]
    // Offsets behind the marker's two bytes: length 2, precision 1, height 2, width 2, components 1, then id, sampling and table of each (B.2.2).
    [InlineData(5, 0, 0, "damaged")]
    [InlineData(3, 0, 0, "not every browser")]
    [InlineData(2, 12, 0, "not every browser")]
    [InlineData(0, 0, 16, "damaged")]
    [InlineData(0, 0, 1, "damaged")]
    [InlineData(7, 4, 0x22, "damaged")]
    [InlineData(9, 0x02, 0, "damaged")]
    [InlineData(9, 0x25, 0, "damaged")]
    [InlineData(10, 4, 0x11, "damaged")]
    public void The_frame_header_is_of_a_kind_that_a_browser_draws(int offset, byte first, byte second, string says)
    {
        byte[] picture = [.. Baseline];
        int at = SegmentOf(picture, 0xC0).From + 2 + offset;
        picture[at] = first;
        if (offset is 0 or 3 or 5) picture[at + 1] = second;
        Assert.Contains(says, JpegCheck.Problem(picture), StringComparison.Ordinal);
    }

    [Fact]
    public void A_picture_may_not_claim_more_pixels_than_can_be_looked_at()
    {
        byte[] picture = [.. Baseline];
        var size = picture.AsSpan(SegmentOf(picture, 0xC0).From + 5, 4);
        BinaryPrimitives.WriteUInt16BigEndian(size, 10_000);
        BinaryPrimitives.WriteUInt16BigEndian(size[2..], 5_000);
        Assert.Null(JpegCheck.Problem(picture));
        BinaryPrimitives.WriteUInt16BigEndian(size[2..], 5_001);
        Assert.Contains("5001 × 10000 pixels", JpegCheck.Problem(picture), StringComparison.Ordinal);
        BinaryPrimitives.WriteInt32BigEndian(size, -1);
        Assert.Contains("65535 × 65535 pixels", JpegCheck.Problem(picture), StringComparison.Ordinal);
    }

    [Fact]
    public void Kinds_that_browsers_do_not_draw_are_refused()
    {
        Assert.Contains("not every browser", JpegCheck.Problem(Picture("arithmetic")), StringComparison.Ordinal);
        int at = SegmentOf(Baseline, 0xC0).From + 1;
        foreach (byte kind in (byte[])[0xC3, 0xC5, 0xC6, 0xC7, 0xC8, 0xC9, 0xCA, 0xCB, 0xCC, 0xCD, 0xCE, 0xCF, 0xDC, 0xDE, 0xDF])
        {
            byte[] other = [.. Baseline];
            other[at] = kind;
            Assert.Contains("not every browser", JpegCheck.Problem(other), StringComparison.Ordinal);
        }
    }

    [Fact]
    public void Fill_bytes_may_stand_before_every_marker()
    {
        foreach (byte[] picture in (byte[][])[Baseline, Progressive, Restarts])
        {
            byte[] filled = picture;
            foreach (int at in Markers(picture).Reverse()) filled = With(filled, at, [0xFF, 0xFF, 0xFF]);
            Assert.True(filled.Length > picture.Length + 20);
            Assert.Null(JpegCheck.Problem(filled));
            // And nothing but these.
            foreach (int at in Markers(picture).Where(m => m < SegmentOf(picture, 0xDA).From))
                Assert.Contains("damaged", JpegCheck.Problem(With(picture, at, [0])), StringComparison.Ordinal);
        }
        // A stuffed byte has one FF before it.
        int scan = SegmentOf(Baseline, 0xDA).To;
        Assert.Null(JpegCheck.Problem(With(Baseline, scan, [0xFF, 0])));
        Assert.Contains("damaged", JpegCheck.Problem(With(Baseline, scan, [0xFF, 0xFF, 0])), StringComparison.Ordinal);
    }

    [Fact]
    public void Restarts_follow_each_other_where_they_were_announced_and_nowhere_else()
    {
        int[] restarts = [.. Markers(Restarts).Where(m => IsRestart(Restarts, m))];
        Assert.Equal([0xD0, 0xD1, 0xD2, 0xD3, 0xD4, 0xD5, 0xD6, 0xD7, 0xD0], restarts.Select(m => (int)Restarts[m + 1]));
        foreach (int at in restarts.SkipLast(1))
        {
            byte[] wrong = [.. Restarts];
            wrong[at + 1] ^= 4;
            Assert.Contains("damaged", JpegCheck.Problem(wrong), StringComparison.Ordinal);
            Assert.Contains("damaged", JpegCheck.Problem([.. Restarts[..at], .. Restarts[(at + 2)..]]), StringComparison.Ordinal);
        }
        var (from, to) = SegmentOf(Restarts, 0xDD);
        Assert.Contains("damaged", JpegCheck.Problem([.. Restarts[..from], .. Restarts[to..]]), StringComparison.Ordinal);
        Assert.Contains("damaged", JpegCheck.Problem(With(Baseline, SegmentOf(Baseline, 0xDA).From, [0xFF, 0xD0])), StringComparison.Ordinal);
    }

    [Fact]
    public void Tables_and_scans_hold_nothing_but_what_they_are_for()
    {
        foreach (byte marker in (byte[])[0xDB, 0xC4, 0xDA])
        {
            var (from, to) = SegmentOf(Progressive, marker);
            byte[] longer = Segment(marker, [.. Progressive[(from + 4)..to], .. "hidden"u8]), shorter = Segment(marker, Progressive[(from + 4)..(to - 1)]), empty = Segment(marker, []);
            foreach (byte[] instead in (byte[][])[longer, shorter, empty])
                Assert.Contains("damaged", JpegCheck.Problem([.. Progressive[..from], .. instead, .. Progressive[to..]]), StringComparison.Ordinal);
        }
        // A scan of a component that the frame has not; markers that stand alone, or mean nothing.
        byte[] other = [.. Baseline];
        other[SegmentOf(other, 0xDA).From + 5] = 77;
        Assert.Contains("damaged", JpegCheck.Problem(other), StringComparison.Ordinal);
        foreach (byte marker in (byte[])[0x00, 0x01, 0x02, 0xBF, 0xD8])
            Assert.Contains("damaged", JpegCheck.Problem(With(Baseline, 20, Segment(marker, []))), StringComparison.Ordinal);
    }

    [Fact]
    public void The_number_of_pieces_is_bounded()
    {
        var (from, to) = SegmentOf(Baseline, 0xDB);
        byte[] Many(byte[] piece, int count) => With(Baseline, from, [.. Enumerable.Repeat(piece, count).SelectMany(p => p)]);
        Assert.Null(JpegCheck.Problem(Many(Baseline[from..to], 100)));
        Assert.Contains("too many pieces", JpegCheck.Problem(Many(Baseline[from..to], 1000)), StringComparison.Ordinal);

        byte[] scan = Baseline[SegmentOf(Baseline, 0xDA).From..^2];
        byte[] Again(int count) => With(Baseline, Baseline.Length - 2, [.. Enumerable.Repeat(scan, count - 1).SelectMany(s => s)]);
        Assert.Null(JpegCheck.Problem(Again(JpegCheck.MostScans)));
        Assert.Contains("too many pieces", JpegCheck.Problem(Again(JpegCheck.MostScans + 1)), StringComparison.Ordinal);
    }

    [Fact]
    public void Any_bytes_may_come()
    {
        foreach (byte[] none in (byte[][])[[], [0xFF], [.. "GIF89a"u8], [.. "<html>"u8], Baseline[1..]])
            Assert.Contains("no JPEG", JpegCheck.Problem(none), StringComparison.Ordinal);
        // The longest runs that could be walked twice: all fill, all stuffed, fill before each of many restarts.
        foreach (byte[] run in (byte[][])[[0xFF], [0xFF, 0], [0xFF, 0xFF, 0xD0], [0]])
        {
            byte[] tail = [.. Enumerable.Repeat(run, 4 * 1024 * 1024 / run.Length).SelectMany(r => r)];
            Assert.NotNull(JpegCheck.Problem([.. Baseline[..SegmentOf(Baseline, 0xDA).To], .. tail]));
        }
        var random = new Random(20300511);
        int sound = 0;
        for (int i = 0; i < Effort.Cases(4000); i++)
        {
            byte[] broken = [.. (i % 3) switch { 0 => Baseline, 1 => Progressive, _ => Restarts }];
            for (int n = random.Next(1, 6); n > 0; n--) broken[random.Next(i % 2 == 0 ? 700 : broken.Length)] = (byte)random.Next(256);
            if (JpegCheck.Problem(broken) is null) sound++;
        }
        // Pixels and tables may hold any values: some changes leave a picture.
        Assert.InRange(sound, 1, Effort.Cases(4000) - 1);
    }

    private static byte[] Picture(string name) => File.ReadAllBytes(ReferenceData.Path(Path.Combine("pictures", name + ".jpg")));

    private static byte[] Segment(byte marker, byte[] content) => [0xFF, marker, (byte)((content.Length + 2) >> 8), (byte)(content.Length + 2), .. content];

    private static byte[] With(byte[] picture, int at, byte[] put) => [.. picture[..at], .. put, .. picture[at..]];

    private static bool IsRestart(byte[] picture, int at) => picture[at + 1] is >= 0xD0 and <= 0xD7;

    /// <summary>Where each marker of a sound picture stands, the first left out.</summary>
    private static IEnumerable<int> Markers(byte[] picture)
    {
        for (int at = 2; at < picture.Length - 1; at++)
        {
            if (picture[at] != 0xFF || picture[at + 1] == 0) continue;
            yield return at;
            if (picture[at + 1] != 0xD9 && !IsRestart(picture, at)) at += 1 + BinaryPrimitives.ReadUInt16BigEndian(picture.AsSpan(at + 2));
        }
    }

    private static (int From, int To) SegmentOf(byte[] picture, byte marker)
    {
        int from = Markers(picture).First(m => picture[m + 1] == marker);
        return (from, from + 2 + BinaryPrimitives.ReadUInt16BigEndian(picture.AsSpan(from + 2)));
    }
}
