using Trivet.Numerics;
using Trivet.Papers;
using Trivet.Testing;
using Trivet.Views.Papers;
using Trivet.Views.Words;
using Xunit;
using ZXing;

namespace Trivet.Cli.Tests;

/// <summary>The label of a cabinet's door: what a camera and a person read on it.</summary>
public sealed class DoorLabelTests
{
    public static TheoryData<string, string, string> Labels => new()
    {
        { "Jar lids", "jar-lids", "https://desk.example:5174/" },
        { "Donaudampfschifffahrtselektrizitätenhauptbetriebswerk, line 7 of the packing hall with the long name", "biscuits", "https://desk-of-the-hall.packing.works.example.internal:5174/" },
        { new string('m', 120), new string('a', 64), $"https://{string.Join('.', Enumerable.Repeat(new string('h', 49), 5))}:65535/" },
    };

    /// <summary>The page as Poppler draws it at 200 points an inch (Debian: poppler-utils), its code read by ZXing.Net.</summary>
    [Theory, MemberData(nameof(Labels))]
    public void The_code_of_the_drawn_page_is_the_address_of_the_cell(string name, string id, string desk)
    {
        using var folder = new TemporaryFolder();
        string pdf = folder.File("door-label.pdf");
        File.WriteAllBytes(pdf, DoorLabel.File(name, id, new(desk), new DateTime(2030, 5, 6, 7, 8, 9, DateTimeKind.Utc)).Bytes);
        var page = OutsideProgram.GreyPage(pdf, 200);
        Assert.SkipWhen(page.NotRun.Length > 0, page.NotRun);
        // In true size, to a pixel.
        Assert.InRange(page.Width / 200.0 * 25.4, DoorLabel.Width - 0.2, DoorLabel.Width + 0.2);
        Assert.InRange(page.Height / 200.0 * 25.4, DoorLabel.Height - 0.2, DoorLabel.Height + 0.2);
        Assert.Equal($"{desk}floor/?cell={id}", Read(page.Pixels, page.Width, page.Height));
    }

    /// <summary>The same of the marks themselves, and that every line of text stands beside the code and on the label.</summary>
    [Theory, MemberData(nameof(Labels))]
    public void The_address_stands_whole_below_the_code_and_no_line_runs_out(string name, string id, string desk)
    {
        var paper = DoorLabel.Of(name, DoorLabel.Link(new(desk), id));
        const int scale = 10;
        int w = (int)(paper.Width * scale), h = (int)(paper.Height * scale);
        byte[] grey = new byte[w * h];
        Array.Fill(grey, (byte)255);
        foreach (var mark in paper.Marks.OfType<FillMark>())
            for (int y = At(paper.Height - mark.Points.Max(p => p.Y)); y < At(paper.Height - mark.Points.Min(p => p.Y)); y++)
                for (int x = At(mark.Points.Min(p => p.X)); x < At(mark.Points.Max(p => p.X)); x++) grey[y * w + x] = 0;
        Assert.Equal($"{desk}floor/?cell={id}", Read(grey, w, h));

        var labels = paper.Marks.OfType<Label>().ToArray();
        double under = paper.Marks.OfType<FillMark>().Min(m => m.Points.Min(p => p.Y));
        Vec2[] corners = [.. paper.Marks.OfType<FillMark>().SelectMany(m => m.Points)];
        Assert.Equal($"{desk}floor/?cell={id}", string.Concat(labels.Where(l => l.At.Y < under).Select(l => l.Text)));
        foreach (var label in labels)
        {
            double end = label.At.X + DraftingTable.WidthOf(label.Text, label.Size);
            Assert.True(label.At.Y > 1 && end < (label.At.Y < under ? paper.Width : corners.Min(c => c.X)), label.Text);
        }
        foreach (var words in FloorWords.All)
            Assert.Contains(words.DoorLabel, string.Join(' ', labels.Select(l => l.Text)), StringComparison.Ordinal);
        // A name is broken between its words and whole, but for one word that no type is small enough for.
        string strong = string.Join(' ', labels.Where(l => l.Strong).Select(l => l.Text));
        if (name.Contains(' ', StringComparison.Ordinal)) Assert.Equal(name, strong);
        else Assert.EndsWith("…", strong, StringComparison.Ordinal);

        static int At(double millimetres) => (int)Math.Round(millimetres * scale);
    }

    private static string? Read(byte[] grey, int width, int height) =>
        new BarcodeReaderGeneric { Options = { TryHarder = true, PossibleFormats = [BarcodeFormat.QR_CODE] } }
            .Decode(new RGBLuminanceSource(grey, width, height, RGBLuminanceSource.BitmapFormat.Gray8))?.Text;
}
