using System.Text;
using System.Text.Json;
using CsCheck;
using Json.Schema;
using Trivet.Files.Fields;
using Trivet.Testing;
using Xunit;

namespace Trivet.Files.Tests;

/// <summary>The schema held against JsonSchema.Net, an independent validator of draft 2020-12.</summary>
public class CellSchemaTests
{
    private static readonly JsonSchema Schema = JsonSchema.FromText(CellSchema.Json());
    private static readonly JsonDocumentOptions Lenient = new() { CommentHandling = JsonCommentHandling.Skip };

    [Fact]
    public void The_schema_is_valid_by_the_schema_of_schemas()
    {
        using var document = JsonDocument.Parse(CellSchema.Json());
        Assert.True(MetaSchemas.Draft202012.Evaluate(document.RootElement).IsValid);
    }

    [Theory]
    [InlineData("jar-lids", true)]
    [InlineData("biscuits", true)]
    [InlineData("labels", true)]
    [InlineData("tight-corner", true)]
    [InlineData("broken", false)]
    public void Samples_validate_unless_broken_on_purpose(string name, bool valid) =>
        Assert.Equal(valid, IsValid(Samples.Find(name)!.Text));

    [Fact]
    public void What_the_reader_accepts_the_schema_accepts() =>
        RandomCells.Any.Sample(
            cell =>
            {
                Assert.True(IsValid(CellFile.Write(cell)));
                Assert.True(IsValid(CellFile.Canonical(cell)));
            },
            seed: "0000000000002", iter: Effort.Cases(100));

    [Theory]
    [InlineData("""{}""")]
    [InlineData("""{"trivet":2}""")]
    [InlineData("""{"trivet":1,"robto":{}}""")]
    [InlineData("""{"trivet":1,"robot":{"family":"raildelta"}}""")]
    [InlineData("""{"trivet":1,"robot":{"common":{"rod":560}}}""")]
    [InlineData("""{"trivet":1,"robot":{"common":{"rod":"560"}}}""")]
    [InlineData("""{"trivet":1,"robot":{"common":{"rod":"560 deg"}}}""")]
    [InlineData("""{"trivet":1,"robot":{"common":{"rod":"NaN mm"}}}""")]
    [InlineData("""{"trivet":1,"stations":{"Tray":{}}}""")]
    [InlineData("""{"trivet":1,"stations":[]}""")]
    [InlineData("""{"trivet":1,"stations":{"a":{"columns":2.5}}}""")]
    public void What_the_reader_refuses_by_form_the_schema_refuses(string json)
    {
        Assert.Null(CellFile.Read(Encoding.UTF8.GetBytes(json), "cell.json").Cell);
        Assert.False(IsValid(json));
    }

    [Theory]
    [InlineData("3/8 in")]
    [InlineData("1 1/2 in")]
    [InlineData("57,5 cm")]
    [InlineData("1 000 mm")]
    [InlineData("50 µm")]
    [InlineData("−7mm")]
    public void Quantities_as_people_type_them_fit_the_pattern(string text)
    {
        Assert.True(Quantity.Parse(text, Dimension.Length).Ok);
        Assert.True(IsValid("""{"trivet":1,"robot":{"common":{"rod":"?"}}}""".Replace("?", text, StringComparison.Ordinal)));
    }

    /// <summary>Every unit of every kind, in each spelling, read and matched.</summary>
    [Fact]
    public void Every_spelling_of_every_unit_fits_its_pattern()
    {
        foreach (var set in Units.Sets.Where(s => s.Dimension != Dimension.One))
        {
            foreach (string spelling in set.All.SelectMany(u => u.Spellings.Append(u.Symbol)))
                Assert.Matches(CellSchema.Pattern(set.Dimension), "1.5 " + spelling);
        }
    }

    [Fact]
    public void Every_field_is_described_in_a_sentence()
    {
        Describe(CellShape.Cell);

        static void Describe(Shape shape)
        {
            foreach (var field in shape.Fields)
            {
                Assert.EndsWith(".", field.Description, StringComparison.Ordinal);
                if (field is Section section) Describe(section.Shape);
                if (field is Collection collection) Describe(collection.Shape);
            }
        }
    }

    private static bool IsValid(string json)
    {
        using var document = JsonDocument.Parse(json, Lenient);
        return Schema.Evaluate(document.RootElement).IsValid;
    }
}
