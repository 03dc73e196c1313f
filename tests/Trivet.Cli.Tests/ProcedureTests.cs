using System.Globalization;
using System.Text.RegularExpressions;
using System.Xml.Linq;
using Trivet.Testing;
using Xunit;

namespace Trivet.Cli.Tests;

/// <summary>The procedure as the command tells it.</summary>
public sealed class ProcedureTests
{
    [Fact]
    public async Task The_steps_of_a_cell_whose_description_is_whole_are_all_there()
    {
        var lids = await Run.Trivet("procedure", Repository.Sample("jar-lids"));
        Assert.Equal((ExitCode.AllHold, ""), (lids.Code, lids.Error));
        Assert.Matches(@"# +\d+  Prove the stop chain, motor supply locked off +control supply only +safety person +2", lids.Output);
        var german = await Run.Trivet("procedure", Repository.Sample("jar-lids"), "--language", "de", "--people", "1");
        Assert.Matches(@"Sicherheitskette nachweisen", german.Output);
        Assert.DoesNotContain("Prove", german.Output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task One_step_says_all_it_has_to_say_and_a_wrong_name_is_answered_with_the_right_one()
    {
        var one = await Run.Trivet("procedure", Repository.Sample("jar-lids"), "--step", "small-jog:a");
        Assert.Contains("Caution: Props stand under the chains", one.Output, StringComparison.Ordinal);
        Assert.Contains("Held by: a, b, c: prop beneath", one.Output, StringComparison.Ordinal);
        var wrong = await Run.Trivet("procedure", Repository.Sample("jar-lids"), "--step", "smal-jog:a");
        Assert.Equal(ExitCode.Refused, wrong.Code);
        Assert.Contains("Is \"small-jog:a\" meant?", wrong.Error, StringComparison.Ordinal);
        Assert.Equal(ExitCode.Refused, (await Run.Trivet("procedure", Repository.Sample("jar-lids"), "--people", "3")).Code);
    }

    [Fact]
    public async Task Of_two_people_it_is_told_who_waits_for_whom_and_one_waits_for_nobody()
    {
        Assert.Contains("Who waits for whom\n  After ", (await Run.Trivet("procedure", Repository.Sample("jar-lids"))).Output, StringComparison.Ordinal);
        Assert.Contains("Wer auf wen wartet\n  Nach ", (await Run.Trivet("procedure", Repository.Sample("jar-lids"), "--language", "de")).Output, StringComparison.Ordinal);
        Assert.DoesNotContain("Who waits", (await Run.Trivet("procedure", Repository.Sample("jar-lids"), "--people", "1")).Output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task How_the_cell_is_made_safe_is_told_by_itself_and_to_programs()
    {
        var safe = await Run.Trivet("procedure", Repository.Sample("jar-lids"), "--safe");
        Assert.Equal(ExitCode.AllHold, safe.Code);
        Assert.Matches(@"(?s)^Make safe now.*two buttons.*Main switch.*60 s, then measure.*What stays live.*Supply 48 V.*What comes down", safe.Output);
        Assert.Contains("\"makeSafe\": {", (await Run.Trivet("procedure", Repository.Sample("jar-lids"), "--format", "json")).Output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Cards_are_a_file_to_be_printed()
    {
        using var folder = new TemporaryFolder();
        string file = Path.Combine(folder.Path, "cards.pdf");
        var made = await Run.Trivet("procedure", Repository.Sample("jar-lids"), "--cards", file);
        Assert.Equal(ExitCode.AllHold, made.Code);
        Assert.Equal("%PDF"u8.ToArray(), (await File.ReadAllBytesAsync(file, TestContext.Current.CancellationToken))[..4]);
    }

    /// <summary>Poppler reads the file: each card's picture is there in lines, as many as the picture has, and within the margins; no card has a raster.</summary>
    [Theory, InlineData("en"), InlineData("de")]
    public async Task Another_program_finds_the_picture_of_each_card_in_lines_within_the_margins(string language)
    {
        const double Point = 25.4 / 72, Fine = 0.13 / Point;
        using var folder = new TemporaryFolder();
        string file = folder.File("cards.pdf"), pictures = folder.File("pictures");
        Assert.Equal(ExitCode.AllHold, (await Run.Trivet("procedure", Repository.Sample("jar-lids"), "--language", language, "--cards", file)).Code);
        var text = OutsideProgram.PdfText(file);
        Assert.SkipWhen(text.NotRun.Length > 0, text.NotRun);
        // The face that is embedded has letters of Western Europe; what it lacks would be a black box.
        Assert.All(text.Output.Distinct(), c => Assert.True(c is < '\u0100' or '–' or '−' or '…' or '„' or '“' or '”' or '’', $"{c} {(int)c:x}"));
        string[] pages = text.Output.TrimEnd('\f', '\n').Split('\f');
        var shown = (await Run.Trivet("picture", Repository.Sample("jar-lids"), "--steps", pictures)).Output.Split('\n', StringSplitOptions.RemoveEmptyEntries).Select(l => l.Trim().Split("  ")).ToDictionary(l => l[0], l => l[1]);
        // The first card is not a step's: how this cell is made safe.
        Assert.StartsWith(language == "de" ? "Jetzt sicher machen" : "Make safe now", pages[0].Trim(), StringComparison.Ordinal);
        var steps = pages.Select((p, i) => (Step: Regex.Matches(p, @"([a-z-]+(:\S+)?|) +[0-9a-f]{8}")[^1].Groups[1].Value, Page: i + 1)).Skip(1).GroupBy(p => p.Step, p => p.Page).ToArray();
        // One card for each step, and hardly a page more than cards.
        Assert.InRange(pages.Length, steps.Length + 1, steps.Length + 2);
        Assert.True(shown.Keys.ToHashSet().IsSubsetOf(steps.Select(s => s.Key)));
        foreach (var same in steps.GroupBy(s => shown.GetValueOrDefault(s.Key, "none")))
        {
            int fine = 0;
            foreach (int page in same.First())
            {
                var svg = XDocument.Parse(OutsideProgram.PdfPage(file, page).Output);
                Assert.DoesNotContain(svg.Descendants(), e => e.Name.LocalName == "image");
                foreach (var path in svg.Descendants().Where(e => e.Name.LocalName == "path" && Regex.IsMatch((string?)e.Attribute("style") ?? "", "stroke-width:")))
                {
                    double width = double.Parse(Regex.Match((string)path.Attribute("style")!, @"stroke-width:([0-9.]+)").Groups[1].ValueSpan, CultureInfo.InvariantCulture);
                    if (Math.Abs(width - Fine) < 0.01) fine++;
                    foreach (Match at in Regex.Matches((string)path.Attribute("d")!, @"(-?[0-9.]+) (-?[0-9.]+)"))
                    {
                        Assert.InRange(double.Parse(at.Groups[1].ValueSpan, CultureInfo.InvariantCulture) * Point, 14.9, 148 - 14.9);
                        Assert.InRange(double.Parse(at.Groups[2].ValueSpan, CultureInfo.InvariantCulture) * Point, 15, 210 - 10);
                    }
                }
            }
            Assert.Equal(same.Key == "none" ? 0 : FineLines(Path.Combine(pictures, same.Key)), fine);
        }
    }

    /// <summary>Lines of a picture's thinnest classes, counted in the picture itself: edges between two faces, hatching, thin lines of the rail.</summary>
    private static int FineLines(string picture) => XDocument.Load(picture).Descendants().Where(e => ((string?)e.Attribute("class"))?.Split(' ').Any(c => c is "e" or "n" or "d") == true)
        .Sum(e => e.Name.LocalName == "path" ? ((string)e.Attribute("d")!).Count(c => c == 'M') : 1);
}
