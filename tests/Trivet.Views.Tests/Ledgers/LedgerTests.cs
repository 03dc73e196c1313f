using System.Globalization;
using System.Text.Json;
using Trivet.Findings;
using Trivet.Views.Ledgers;

namespace Trivet.Views.Tests.Ledgers;

public sealed class LedgerTests
{
    private static LedgerTable Table { get; } = LedgerTable.Of(HandMade.Assessed);

    [Fact]
    public void Rows_stand_in_the_order_of_the_ledger()
    {
        Assert.Equal(HandMade.Ledger.Findings.Select(f => f.Id), Table.Rows.Select(r => r.Id));
        Assert.Equal("2 falling short, 3 open, 1 tight, 1 holding; worst margin -16 %", Table.Summary);
    }

    [Fact]
    public void A_verdict_is_a_shape_and_a_word_of_its_own()
    {
        var all = Enum.GetValues<Verdict>();
        Assert.Equal(all.Length, all.Select(VerdictMark.Shape).Distinct().Count());
        Assert.Equal(all.Length, all.Select(VerdictMark.Ascii).Distinct().Count());
        Assert.Equal(("▼", "falls short"), (Table.Rows[1].Mark, Table.Rows[1].Word));
    }

    [Theory]
    [InlineData(60)]
    [InlineData(80)]
    [InlineData(120)]
    public void Text_keeps_within_the_width_it_is_given(int width)
    {
        string[] lines = LedgerText.Render(Table, width).Split('\n');
        Assert.All(lines, line => Assert.True(line.Length <= width, line));
        Assert.Contains(lines, line => line.Contains("rod clearance", StringComparison.Ordinal));
    }

    [Fact]
    public void Text_loses_no_word_by_wrapping()
    {
        string[] words = [.. LedgerText.Render(Table, 84).Split(' ', '\n')];
        foreach (var row in Table.Rows)
            foreach (string word in $"{row.Word} {row.Rule} {row.Subject} {row.Value} {row.Limit} {row.Margin} {row.Advice}".Split(' ', StringSplitOptions.RemoveEmptyEntries))
                Assert.Contains(word, words);
    }

    [Fact]
    public void A_narrow_terminal_gets_a_sentence_for_each_finding()
    {
        string text = LedgerText.Render(Table, 60);
        Assert.Contains("\n▼ rod clearance at tray-left: 8.4 mm, at least 10 mm wanted;\n  falls short by 16 %\n  → change height of tray-left from 750 mm to 765 mm;", text);
    }

    [Fact]
    public void Ascii_text_is_ascii() => Assert.All(LedgerText.Render(Table, ascii: true), c => Assert.True(char.IsAscii(c), $"{c}"));

    [Fact]
    public void Markdown_keeps_a_bar_in_a_name_out_of_its_tables()
    {
        string text = LedgerMarkdown.Render(Table);
        Assert.StartsWith("# Lids \\| into trays\n", text);
        var rows = text.Split('\n').Where(l => l.StartsWith('|')).ToList();
        Assert.Equal(2 + Table.Rows.Length + 2 + Table.Coverage.Length, rows.Count);
        Assert.Contains("| ▼ falls short | rod clearance | tray-left | 8.4 mm | at least 10 mm | -16 % | change height of tray-left from 750 mm to 765 mm; margin then 4 %, worst elsewhere 6 % |", rows);
    }

    [Fact]
    public void Csv_holds_every_finding_with_all_digits()
    {
        string[] lines = LedgerCsv.Render(HandMade.Assessed).Split("\r\n", StringSplitOptions.RemoveEmptyEntries);
        Assert.Equal(1 + HandMade.Ledger.Findings.Length + HandMade.Ledger.Coverage.Length, lines.Length);
        string near = Assert.Single(lines, l => l.Contains("test.clearance:/stations/tray-left", StringComparison.Ordinal));
        Assert.StartsWith("fallsShort,test.clearance,/stations/tray-left,,0.0084,0.0084,0.01,,m,", near);
        Assert.Contains("\"change height of tray-left from 750 mm to 765 mm; margin then 4 %, worst elsewhere 6 %\"", near);
    }

    [Fact]
    public void Json_says_all_that_the_findings_say()
    {
        using var document = JsonDocument.Parse(AssessmentJson.Write(HandMade.Assessed, "0123abcd"));
        var root = document.RootElement;
        Assert.Equal("trivet-assessment", root.GetProperty("format").GetString());
        Assert.Equal("0123abcd", root.GetProperty("cell").GetProperty("revision").GetString());
        Assert.Equal(2, root.GetProperty("summary").GetProperty("fallsShort").GetInt32());
        var findings = root.GetProperty("findings").EnumerateArray().ToList();
        Assert.Equal(HandMade.Ledger.Findings.Select(f => f.Id), findings.Select(f => f.GetProperty("id").GetString()));
        var near = Assert.Single(findings, f => f.GetProperty("id").GetString() == HandMade.TooNear.Id);
        Assert.Equal(0.0084, near.GetProperty("value").GetDouble());
        Assert.Equal(JsonValueKind.Null, near.GetProperty("upper").ValueKind);
        Assert.Equal(0.75, near.GetProperty("worst").GetProperty("tcp")[2].GetDouble());
        Assert.Equal("/stations/tray-left/z", near.GetProperty("advice")[0].GetProperty("pointer").GetString());
    }

    // What docs/output-json.md promises is what is written: each name in the output stands in the page, in code type.
    [Fact]
    public void Json_writes_no_field_that_its_page_does_not_explain()
    {
        string page = File.ReadAllText(Repository.PathOf("docs/output-json.md"));
        using var document = JsonDocument.Parse(AssessmentJson.Write(HandMade.Assessed, ""));
        Assert.All(Names(document.RootElement).Distinct(), name => Assert.Contains($"`{name}`", page));

        static IEnumerable<string> Names(JsonElement e) => e.ValueKind switch
        {
            JsonValueKind.Object => e.EnumerateObject().SelectMany(p => Names(p.Value).Prepend(p.Name)),
            JsonValueKind.Array => e.EnumerateArray().SelectMany(Names),
            _ => [],
        };
    }

    [Fact]
    public void Files_for_other_programs_do_not_change_with_the_culture_of_the_thread()
    {
        string before = LedgerCsv.Render(HandMade.Assessed) + AssessmentJson.Write(HandMade.Assessed, "") + LedgerText.Render(Table);
        var culture = CultureInfo.CurrentCulture;
        try
        {
            CultureInfo.CurrentCulture = CultureInfo.GetCultureInfo("de-DE");
            Assert.Equal(before, LedgerCsv.Render(HandMade.Assessed) + AssessmentJson.Write(HandMade.Assessed, "") + LedgerText.Render(LedgerTable.Of(HandMade.Assessed)));
        }
        finally
        {
            CultureInfo.CurrentCulture = culture;
        }
    }
}
