using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using System.Text.Json;
using System.Xml;
using CsCheck;
using Microsoft.VisualBasic.FileIO;
using Trivet.Cells;
using Trivet.Files.Exchange;
using Trivet.Testing;
using Xunit;

namespace Trivet.Files.Tests.Exchange;

public sealed class ParameterExportTests
{
    private static readonly ExportMapping Columns = new() { Form = ExportForm.Columns, Separator = ";", NameColumn = 2, ValueColumn = 3, GroupColumn = 1, HeadLines = 1, Comment = "#" };

    private static ExportRead Read(string text, ExportMapping mapping, bool comma = false) => ParameterExport.Read(Encoding.UTF8.GetBytes(text), new() { Export = mapping, DecimalComma = comma }, "export");

    private static string Told(ExportRead read) => string.Join("|", read.Parameters.Select(p => $"{p.Name}={p.Text}:{p.Number.ToString("R", CultureInfo.InvariantCulture)}"));

    [Fact]
    public void Columns_are_read_with_head_comment_group_and_quotes() =>
        Assert.Equal("K/rod=680,2:680.2|K/say \"a;b\"=x:NaN|rod=1,5:1.5", Told(Read("axis;name;value\r\n# note\r\nK;rod;680,2\r\nK;\"say \"\"a;b\"\"\";x\r\n\r\n;rod;1,5", Columns, comma: true)));

    [Fact]
    public void Pairs_are_read_with_sections_and_any_sign_between()
    {
        var pairs = new ExportMapping { Form = ExportForm.Pairs, Separator = ":=", Sections = true, Comment = "//" };
        Assert.Equal("a=1:1|turn/v max=-2.5e3:-2500|turn/text=x := y:NaN|turn/hex=0x1F:31", Told(Read("// head\na := 1\n[turn]\nv max := -2.5e3\n  text := \"x := y\"\nhex := 0x1F\n", pairs)));
        Assert.Equal("a=1:1|b=2:2", Told(Read("a   1\n b 2", new() { Form = ExportForm.Columns, Separator = "blank", NameColumn = 1, ValueColumn = 2 })));
        Assert.Equal("a=1:1", Told(Read("a\t1\tmm", new() { Form = ExportForm.Columns, Separator = "tab", NameColumn = 1, ValueColumn = 2 })));
    }

    [Fact]
    public void Json_is_read_flat_by_lists_and_by_stars()
    {
        const string Text = """{"axes":[{"name":"K","p":[{"id":"rod","v":680.2},{"id":"on","v":true}]},{"name":"L","p":[{"id":"rod","v":"680,0"}]}],"time":null}""";
        Assert.Equal("/axes/0/name=K:NaN|/axes/0/p/0/id=rod:NaN|/axes/0/p/0/v=680.2:680.2|/axes/0/p/1/id=on:NaN|/axes/0/p/1/v=true:NaN|/axes/1/name=L:NaN|/axes/1/p/0/id=rod:NaN|/axes/1/p/0/v=680,0:680|/time=:NaN",
            Told(Read(Text, new() { Form = ExportForm.Json }, comma: true)));
        Assert.Equal("0/rod=680.2:680.2|0/on=true:NaN|1/rod=680,0:680", Told(Read(Text, new() { Form = ExportForm.Json, List = "/axes/*/p", NameAt = "id", ValueAt = "/v" }, comma: true)));
        Assert.Equal("a=1:1|b/c=2:2", Told(Read("""{"all":{"a":1,"b":{"c":2}}}""", new() { Form = ExportForm.Json, List = "all" })));
    }

    [Fact]
    public void Xml_is_read_flat_and_by_lists()
    {
        const string Text = "<?xml version=\"1.0\" encoding=\"iso-8859-1\"?><d xmlns=\"urn:x\"><axis n=\"K\"><p id=\"1\" v=\"2,5\"/><p id=\"2\"><w>3</w></p></axis><axis n=\"L\"><p id=\"1\" v=\"4\"/></axis></d>";
        Assert.Equal("/d/axis[1]/@n=K:NaN|/d/axis[1]/p[1]/@id=1:1|/d/axis[1]/p[1]/@v=2,5:2.5|/d/axis[1]/p[2]/@id=2:2|/d/axis[1]/p[2]/w=3:3|/d/axis[2]/@n=L:NaN|/d/axis[2]/p/@id=1:1|/d/axis[2]/p/@v=4:4",
            Told(Read(Text, new() { Form = ExportForm.Xml }, comma: true)));
        var list = new ExportMapping { Form = ExportForm.Xml, List = "/d/axis/p", NameAt = "@id", GroupAt = "../@n", ValueAt = "@v" };
        Assert.Equal("parameter 2 has nothing at @v", Assert.Single(Read(Text, list, comma: true).Errors).Problem);
        Assert.Equal("K/1=2,5:2.5|L/1=4:4", Told(Read(Text.Replace("<p id=\"2\"><w>3</w></p>", "", StringComparison.Ordinal), list, comma: true)));
        Assert.Equal("p=3:3", Told(Read("<d><q><p><w>3</w></p></q></d>", new() { Form = ExportForm.Xml, List = "d/*/p", ValueAt = "w" })));
    }

    /// <summary>One sign for decimals only: what a point means where a comma is the sign, nobody knows.</summary>
    [Theory]
    [InlineData("1.5", false, 1.5)]
    [InlineData("1,5", false, double.NaN)]
    [InlineData("1.500", true, double.NaN)]
    [InlineData("1,500", true, 1.5)]
    [InlineData("1.234,5", true, double.NaN)]
    [InlineData("+2e-3", false, 0.002)]
    [InlineData("12 mm", false, double.NaN)]
    [InlineData("1e999", false, double.NaN)]
    [InlineData("0x7F", true, 127)]
    [InlineData("NaN", false, double.NaN)]
    [InlineData("", false, double.NaN)]
    public void A_number_is_read_with_the_sign_of_the_controller(string text, bool comma, double number) => Assert.Equal(number, ParameterExport.Number(text, comma));

    [Fact]
    public void What_stands_twice_is_kept_apart() => Assert.Equal("a=1:1|a#2=2:2|b=3:3", Told(Read("a=1\na=2\nb=3", new() { Form = ExportForm.Pairs, Separator = "=" })));

    [Fact]
    public void A_file_or_mapping_that_does_not_do_is_refused_with_its_place()
    {
        var pairs = new ExportMapping { Form = ExportForm.Pairs, Separator = "=" };
        Assert.Equal("/controller/export/form", Assert.Single(Read("a=1", new()).Errors).Pointer);
        Assert.Equal("/controller/export/nameColumn", Assert.Single(Read("a=1", new() { Form = ExportForm.Columns, Separator = "," }).Errors).Pointer);
        Assert.Equal("/controller/export/separator", Assert.Single(Read("a=1", Columns with { Separator = "::" }).Errors).Pointer);
        var line = Assert.Single(Read("a=1\nb 2\n", pairs).Errors);
        Assert.Equal(("export", 2), (line.File, line.Line));
        Assert.Equal(3, Assert.Single(Read("h\nK;a;1\nK;a\n", Columns).Errors).Line);
        Assert.Contains("closed", Assert.Single(Read("h\nK;\"a;1\n", Columns).Errors).Problem, StringComparison.Ordinal);
        Assert.Contains("no parameter", Assert.Single(Read("\n\n", pairs).Errors).Problem, StringComparison.Ordinal);
        Assert.Equal("/controller/export/list", Read("{}", new() { Form = ExportForm.Json, List = "/a" }).Errors[0].Pointer);
        Assert.Equal(2, Assert.Single(Read("{\n\"a\": x}", new() { Form = ExportForm.Json }).Errors).Line);
        Assert.NotEmpty(Read("<a><b></a>", new() { Form = ExportForm.Xml }).Errors);
        // Not UTF-8: refused, unless it is said to be Latin 1.
        byte[] latin = Encoding.Latin1.GetBytes("größe=1");
        Assert.Contains("UTF-8", Assert.Single(ParameterExport.Read(latin, new() { Export = pairs }, "e").Errors).Problem, StringComparison.Ordinal);
        Assert.Equal("größe", ParameterExport.Read(latin, new() { Export = pairs with { Encoding = ExportEncoding.Latin1 } }, "e").Parameters[0].Name);
        Assert.Equal("größe", ParameterExport.Read([.. Encoding.Unicode.Preamble, .. Encoding.Unicode.GetBytes("größe=1")], new() { Export = pairs }, "e").Parameters[0].Name);
        Assert.Equal(ParameterExport.MostErrors, Read(string.Concat(Enumerable.Repeat("x\n", 500)), pairs).Errors.Length);
    }

    /// <summary>Entities that would grow to gigabytes, files fetched from elsewhere, depths that would break a stack: none is followed.</summary>
    [Fact]
    public void Nothing_grows_and_nothing_is_fetched()
    {
        const string Grows = "<!DOCTYPE a [<!ENTITY x \"xxxxxxxxxx\"><!ENTITY y \"&x;&x;&x;&x;&x;&x;\">]><a>&y;</a>", Fetches = "<!DOCTYPE a SYSTEM \"file:///etc/hostname\"><a/>";
        foreach (string bad in (string[])[Grows, Fetches, string.Concat(Enumerable.Repeat("<a>", 100)) + string.Concat(Enumerable.Repeat("</a>", 100)), string.Concat(Enumerable.Repeat("<a>", 100_000))])
            Assert.NotEmpty(Read(bad, new() { Form = ExportForm.Xml }).Errors);
        Assert.NotEmpty(Read(new string('[', 100) + new string(']', 100), new() { Form = ExportForm.Json }).Errors);
        Assert.NotEmpty(ParameterExport.Read(new byte[ParameterExport.LargestFile + 1], new() { Export = Columns }, "e").Errors);
        Assert.NotEmpty(Read(string.Concat(Enumerable.Range(0, ParameterExport.MostParameters + 1).Select(i => $"p{i}=1\n")), new() { Form = ExportForm.Pairs, Separator = "=" }).Errors);
        Assert.NotEmpty(Read("a=" + new string('x', ParameterExport.LongestText + 1), new() { Form = ExportForm.Pairs, Separator = "=" }).Errors);
    }

    private static readonly Gen<string> Names = Gen.String[Gen.Char['!', '~'], 1, 12].Where(n => n.Trim().Length > 0);
    private static readonly Gen<(string Name, string Value)[]> Tables = Gen.Select(Names, Gen.String[Gen.Char[' ', '~'], 0, 12]).Array[1, 20];

    /// <summary>The same file read by the base library's own readers: TextFieldParser, JsonDocument and XmlDocument.</summary>
    [Fact]
    public void The_base_library_reads_the_same() => Tables.Sample(
        table =>
        {
            string csv = string.Concat(table.Select(t => $"\"{t.Name.Replace("\"", "\"\"", StringComparison.Ordinal)}\",\"{t.Value.Replace("\"", "\"\"", StringComparison.Ordinal)}\"\n"));
            using var parser = new TextFieldParser(new StringReader(csv)) { Delimiters = [","], HasFieldsEnclosedInQuotes = true, TrimWhiteSpace = false };
            var outside = new List<(string, string)>();
            while (!parser.EndOfData) outside.Add((parser.ReadFields()! is var f ? f[0].Trim() : "", f[1].Trim()));
            Assert.Equal(Numbered(outside), Read(csv, new() { Form = ExportForm.Columns, Separator = ",", NameColumn = 1, ValueColumn = 2 }).Parameters.Select(p => (p.Name, p.Text)));

            string json = JsonSerializer.Serialize(table.Select(t => new { n = t.Name, v = t.Value }));
            using var document = JsonDocument.Parse(json);
            Assert.Equal(Numbered(document.RootElement.EnumerateArray().Select(e => (e.GetProperty("n").GetString()!.Trim(), e.GetProperty("v").GetString()!.Trim()))),
                Read(json, new() { Form = ExportForm.Json, List = "/", NameAt = "n", ValueAt = "v" }).Parameters.Select(p => (p.Name, p.Text)));

            var xml = new XmlDocument();
            xml.AppendChild(xml.CreateElement("all"));
            foreach (var (name, value) in table)
            {
                var p = xml.DocumentElement!.AppendChild(xml.CreateElement("p"))!;
                ((XmlElement)p).SetAttribute("n", name);
                p.InnerText = value;
            }
            Assert.Equal(Numbered(xml.SelectNodes("/all/p")!.Cast<XmlElement>().Select(e => (e.GetAttribute("n").Trim(), e.InnerText.Trim()))),
                Read(xml.OuterXml, new() { Form = ExportForm.Xml, List = "/all/p", NameAt = "@n", ValueAt = "." }).Parameters.Select(p => (p.Name, p.Text)));
        },
        seed: "0000000000041", iter: Effort.Cases(300));

    private static IEnumerable<(string, string)> Numbered(IEnumerable<(string Name, string Value)> all)
    {
        var seen = new Dictionary<string, int>(StringComparer.Ordinal);
        foreach (var (name, value) in all)
        {
            int n = seen[name] = seen.GetValueOrDefault(name) + 1;
            yield return (n == 1 ? name : $"{name}#{n}", value);
        }
    }

    /// <summary>Whatever bytes come: parameters or errors, never both, never an exception, never a parameter without a name.</summary>
    [Fact]
    public void Any_bytes_are_parameters_or_errors()
    {
        string[] seeds = [Sample("jar-lids.txt"), Sample("biscuits.xml"), """{"a":[{"b":1,"c":"x"}]}""", "K;rod;1\n"];
        ImmutableArray<ExportMapping> mappings =
        [
            Columns, new() { Form = ExportForm.Pairs, Separator = "=", Sections = true, Comment = ";" }, new() { Form = ExportForm.Json }, new() { Form = ExportForm.Json, List = "/a/*", NameAt = "b" },
            new() { Form = ExportForm.Xml }, new() { Form = ExportForm.Xml, List = "/backup/axis/par", NameAt = "@id", GroupAt = "../@name", ValueAt = "@val" },
        ];
        var gen =
            from seed in Gen.OneOf(seeds)
            from cuts in Gen.Select(Gen.Int[0, 4000], Gen.Byte).Array[0, 8]
            from length in Gen.Int[0, 4000]
            from mapping in Gen.Int[0, mappings.Length - 1]
            from comma in Gen.Bool
            select (seed, cuts, length, mapping, comma);
        gen.Sample(
            c =>
            {
                byte[] bytes = Encoding.UTF8.GetBytes(c.seed);
                foreach (var (at, b) in c.cuts) if (bytes.Length > 0) bytes[at % bytes.Length] = b;
                if (c.length < bytes.Length) bytes = bytes[..c.length];
                var read = ParameterExport.Read(bytes, new() { Export = mappings[c.mapping], DecimalComma = c.comma }, "e");
                Assert.NotEqual(read.Parameters.IsEmpty, read.Errors.IsEmpty);
                Assert.All(read.Parameters, p => Assert.NotEmpty(p.Name));
                Assert.Equal(read.Parameters.Length, read.Parameters.Select(p => p.Name).Distinct().Count());
            },
            seed: "0000000000042", iter: Effort.Cases(3000));
    }

    private static string Sample(string name)
    {
        var at = new DirectoryInfo(AppContext.BaseDirectory);
        while (!at.EnumerateFiles("Trivet.slnx").Any()) at = at.Parent!;
        return File.ReadAllText(Path.Combine(at.FullName, "samples", "exports", name));
    }
}
