using System.Text;
using CsCheck;
using Trivet.Cells;
using Trivet.Testing;
using Xunit;

namespace Trivet.Files.Tests;

public class CellFileTests
{
    [Fact]
    public void What_is_written_reads_back_as_the_same_cell() =>
        RandomCells.Any.Sample(
            cell =>
            {
                var read = CellFile.Read(Encoding.UTF8.GetBytes(CellFile.Write(cell)), "cell.json");
                Assert.Empty(read.Errors);
                Assert.Equal(CellFile.Canonical(cell), CellFile.Canonical(read.Cell!));
                Assert.Empty(CellFields.Changes(cell, read.Cell!));
            },
            seed: "0000000000002", iter: Effort.Cases(300));

    [Fact]
    public void The_canonical_form_is_a_document_of_its_own() =>
        RandomCells.Any.Sample(
            cell =>
            {
                string canonical = CellFile.Canonical(cell);
                var read = CellFile.Read(Encoding.UTF8.GetBytes(canonical), "cell.json");
                Assert.Empty(read.Errors);
                Assert.Equal(canonical, CellFile.Canonical(read.Cell!));
            },
            seed: "0000000000003", iter: Effort.Cases(300));

    [Fact]
    public void Units_order_comments_and_white_space_do_not_change_the_hash()
    {
        var plain = Read("""{"trivet":1,"robot":{"family":"rail delta","common":{"rod":"560 mm","swingLimit":"45 deg"},"chains":{"a":{},"b":{"rod":"1 in"}}}}""");
        var other = Read("""
            // a comment
            {
              "robot": {
                "chains": { "b": { "rod": "25,4 mm", }, "a": {} },
                "common": { "swingLimit": "45°", "rod": "0.56 m" }, /* another */
                "note": null,
                "family": "rail delta",
                "dexterity": {}
              },
              "trivet": 1,
            }
            """);
        Assert.Equal(CellFile.Hash(plain), CellFile.Hash(other));
    }

    /// <summary>The hash was computed with the sha256sum of the GNU coreutils over the text in this test.</summary>
    [Fact]
    public void The_canonical_form_and_its_hash_never_change()
    {
        var cell = Read("""{ "trivet": 1, "name": "A", "robot": { "family": "crank delta", "common": { "travelTo": "90 deg", "rod": "560 mm" }, "dexterity": { "largestCondition": 4.5 } } }""");
        Assert.Equal("""{"name":"A","robot":{"common":{"rod":"0.56 m","travelTo":"1.5707963267948966 rad"},"dexterity":{"largestCondition":4.5},"family":"crank delta"},"trivet":1}""", CellFile.Canonical(cell));
        Assert.Equal("774c5fcf1e09d3b1cc278d2137232c875c89ef3c55286a2168ee82b7a81582cd", CellFile.Hash(cell));
    }

    [Fact]
    public void An_entry_with_nothing_in_it_is_kept_and_an_empty_section_is_not()
    {
        var cell = Read("""{ "trivet": 1, "stations": { "nest": {} }, "frame": { "members": {} } }""");
        Assert.Equal("""{"stations":{"nest":{}},"trivet":1}""", CellFile.Canonical(cell));
    }

    [Fact]
    public void Numbers_are_written_and_read_alike_under_a_comma_culture()
    {
        var before = System.Globalization.CultureInfo.CurrentCulture;
        try
        {
            System.Globalization.CultureInfo.CurrentCulture = new System.Globalization.CultureInfo("de-DE");
            var cell = CellFields.SetSi(Cell.Empty, "/robot/common/rod", 0.1235);
            Assert.Contains("123.5 mm", CellFile.Write(cell), StringComparison.Ordinal);
            Assert.Equal(0.1235, Read(CellFile.Write(cell)).Robot.Common.Rod);
        }
        finally
        {
            System.Globalization.CultureInfo.CurrentCulture = before;
        }
    }

    private static Cell Read(string json)
    {
        var read = CellFile.Read(Encoding.UTF8.GetBytes(json), "cell.json");
        Assert.Empty(read.Errors);
        return read.Cell!;
    }
}
