using Bunit;
using Trivet.Cells;
using Trivet.Desk.Components.Description;
using Trivet.Files;

namespace Trivet.Desk.Description;

public sealed class FieldRowTests : BunitContext
{
    private static readonly CellField Height = new("/mount/z", "z", "Height of the base frame.", FieldKind.Quantity, Dimension.Length, [], Depth.Quote, "1800 mm");

    [Fact]
    public void A_wrong_text_stays_with_its_remedy_until_it_is_mended()
    {
        string? taken = null;
        var row = Row(Height, text =>
        {
            taken = text;
            return Task.FromResult<FileError?>(text.Contains("furlong", StringComparison.Ordinal) ? new("", 0, 0, "/mount/z", "furlong is no unit of length here", "write 1800 mm") : null);
        });
        row.Find("input").Change("9 furlongs");
        Assert.Equal("9 furlongs", row.Find("input").GetAttribute("value"));
        Assert.Equal("true", row.Find("input").GetAttribute("aria-invalid"));
        Assert.Contains("Write 1800 mm.", row.Find(".error-line").TextContent, StringComparison.Ordinal);
        row.Find("input").Change("1700 mm");
        Assert.Equal("1700 mm", taken);
        Assert.Empty(row.FindAll(".error-line"));
    }

    [Fact]
    public void A_field_that_the_ledger_misses_says_so()
    {
        Assert.NotEmpty(Row(Height with { Text = "" }, missing: true).FindAll(".mark"));
        // An empty field is not asked for by being empty: an upper arm has no place on a rail, a common azimuth none at all.
        Assert.Empty(Row(Height with { Text = "" }).FindAll(".mark"));
    }

    [Fact]
    public void A_choice_offers_its_words_and_the_state_of_not_being_stated()
    {
        var row = Row(Height with { Kind = FieldKind.Choice, Choices = ["nest", "tray", "belt"], Text = "tray" });
        Assert.Equal(["", "nest", "tray", "belt"], row.FindAll("option").Select(o => o.GetAttribute("value")));
        Assert.True(row.FindAll("option")[2].HasAttribute("selected"));
    }

    private IRenderedComponent<FieldRow> Row(CellField field, Func<string, Task<FileError?>>? set = null, bool missing = false) => Render<FieldRow>(p => p
        .Add(c => c.Field, field).Add(c => c.Missing, missing).Add(c => c.Set, set ?? (_ => Task.FromResult<FileError?>(null))));
}
