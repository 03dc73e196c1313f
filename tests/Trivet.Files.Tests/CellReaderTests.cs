using System.Text;
using Trivet.Cells;
using Xunit;

namespace Trivet.Files.Tests;

public class CellReaderTests
{
    [Theory]
    [InlineData("""{"trivet":1,"robto":{}}""", "/robto", "no field \"robto\"", "\"robot\" is meant?")]
    [InlineData("""{"trivet":1,"robot":{"familly":"rail delta"}}""", "/robot/familly", "no field", "\"family\" is meant?")]
    [InlineData("""{"trivet":1,"robot":{"Common":{}}}""", "/robot/Common", "no field", "\"common\" is meant?")]
    [InlineData("""{"trivet":1,"robot":{"xyzzy":1}}""", "/robot/xyzzy", "no field", "fields here: family, ")]
    [InlineData("""{"trivet":1,"robot":{"common":{"rod":560}}}""", "/robot/common/rod", "560 has no unit", "\"560 mm\"")]
    [InlineData("""{"trivet":1,"robot":{"common":{"rod":"560"}}}""", "/robot/common/rod", "no unit", "\"560 mm\"")]
    [InlineData("""{"trivet":1,"robot":{"common":{"rod":"56 deg"}}}""", "/robot/common/rod", "deg is the unit of an angle", "use one of m, mm")]
    [InlineData("""{"trivet":1,"robot":{"common":{"rod":{"x":1}}}}""", "/robot/common/rod", "an object stands where a length", "\"300 mm\"")]
    [InlineData("""{"trivet":1,"robot":{"common":{"rod":[1,2]}}}""", "/robot/common/rod", "a list stands where", "\"300 mm\"")]
    [InlineData("""{"trivet":1,"robot":{"family":"rail delt"}}""", "/robot/family", "none of the words", "\"rail delta\" is meant?")]
    [InlineData("""{"trivet":1,"robot":{"family":"RailDelta"}}""", "/robot/family", "none of the words", "\"rail delta\" is meant?")]
    [InlineData("""{"trivet":1,"robot":{"family":"hexapod"}}""", "/robot/family", "none of the words", "use one of \"rail delta\", \"crank delta\"")]
    [InlineData("""{"trivet":1,"robot":{"family":7}}""", "/robot/family", "a number stands where a word", "\"rail delta\"")]
    [InlineData("""{"trivet":1,"robot":{"cameAssembled":"yes"}}""", "/robot/cameAssembled", "a text stands where true or false", "true")]
    [InlineData("""{"trivet":1,"robot":{"dexterity":{"largestCondition":"4"}}}""", "/robot/dexterity/largestCondition", "a text stands where a plain number", "4.5")]
    [InlineData("""{"trivet":1,"robot":{"dexterity":{"largestCondition":1e400}}}""", "/robot/dexterity/largestCondition", "1e400 is too large", "machine")]
    [InlineData("""{"trivet":1,"stations":{"a":{"columns":2.5}}}""", "/stations/a/columns", "2.5 is not a whole number", "3")]
    [InlineData("""{"trivet":1,"stations":{"a":{"columns":99999999999}}}""", "/stations/a/columns", "not a whole number in range", "3")]
    [InlineData("""{"trivet":1,"stations":{"Tray Left":{}}}""", "/stations/Tray Left", "\"Tray Left\" is not an id", "like \"tray-left\"")]
    [InlineData("""{"trivet":1,"stations":{"a/b~c":{}}}""", "/stations/a~1b~0c", "is not an id", "like \"a-b-c\"")]
    [InlineData("""{"trivet":1,"stations":[]}""", "/stations", "a list stands where an object belongs", "keyed by id")]
    [InlineData("""{"trivet":1,"stations":{"a":{},"a":{}}}""", "/stations/a", "stated twice", "keep one")]
    [InlineData("""{"trivet":1,"name":"a","name":"b"}""", "/name", "stated twice", "keep one")]
    [InlineData("""{"trivet":1,"name":"\ud800"}""", "/name", "half a character", "whole character")]
    [InlineData("""{"trivet":1,"\udc00":1}""", "", "half a character", "whole character")]
    [InlineData("""{"name":"a"}""", "/trivet", "format version is missing", "\"trivet\": 1")]
    [InlineData("""{"trivet":2,"futureField":{}}""", "/trivet", "format version 2; this Trivet reads up to 1", "newer Trivet")]
    [InlineData("""{"trivet":0}""", "/trivet", "no format version 0", "\"trivet\": 1")]
    [InlineData("""{"trivet":"1"}""", "/trivet", "not a whole number", "\"trivet\": 1")]
    [InlineData("""{"trivet":1,"robot":{"common":{"travelTo":"500 mm"}}}""", "/robot/common/travelTo", "nothing says yet whether a length or an angle", "robot.family")]
    [InlineData("""{"trivet":1,"robot":{"common":{"travelTo":"500 mm"},"family":"crank delta"}}""", "/robot/common/travelTo", "a length stands here, but the robot is a crank delta", "\"30 deg\"")]
    [InlineData("""{"trivet":1,"robot":{"family":"rail delta"},"drives":{"largestSpeed":"90 deg/s"}}""", "/drives/largestSpeed", "the robot is a rail delta", "m/s")]
    [InlineData("""{"trivet":1,"robot":{"family":"rail delta"},"controller":{"axes":{"c":{"drives":"rotary","zeroAt":"1 mm"}}}}""", "/controller/axes/c/zeroAt", "drives the rotary axis", "\"30 deg\"")]
    [InlineData("[]", "", "a list stands where an object belongs", "write an object")]
    [InlineData("17", "", "a number stands where an object belongs", "write an object")]
    public void An_error_names_place_problem_and_remedy(string json, string pointer, string problem, string remedy)
    {
        var read = Read(json);
        Assert.Null(read.Cell);
        var error = Assert.Single(read.Errors, e => e.Problem.Contains(problem, StringComparison.Ordinal));
        Assert.Equal(pointer, error.Pointer);
        Assert.Contains(remedy, error.Remedy, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("", "empty", "trivet")]
    [InlineData("  \n", "empty", "trivet")]
    [InlineData("{\"trivet\":1", "1 closing bracket is missing", "complete")]
    [InlineData("{\"trivet\":1,\"robot\":{\"common\":{", "3 closing brackets are missing", "complete")]
    [InlineData("{\"trivet\":1,\"name\":\"ab", "ends inside a text", "double quote")]
    [InlineData("{\"trivet\":1 \"name\":\"a\"}", "comma or colon was expected", "comma")]
    [InlineData("{\"trivet\":1,'name':\"a\"}", "single quote", "double quotes")]
    [InlineData("{\"trivet\":1,name:\"a\"}", "bare word", "double quotes")]
    [InlineData("{\"trivet\":NaN}", "bare word", "NaN")]
    [InlineData("{\"trivet\":1}}", "closing bracket does not fit", "check")]
    [InlineData("{\"trivet\":1,\"name\":\"a\nb\"}", "runs over the end of its line", "double quote")]
    [InlineData("{\"trivet\":1,\"robot\"={}}", "equals sign", "colon")]
    public void Broken_json_is_told_with_advice(string json, string problem, string remedy)
    {
        var error = Assert.Single(Read(json).Errors);
        Assert.Contains(problem, error.Problem, StringComparison.Ordinal);
        Assert.Contains(remedy, error.Remedy, StringComparison.Ordinal);
        Assert.Equal("cell.json", error.File);
        Assert.InRange(error.Line, 1, 3);
    }

    [Fact]
    public void All_errors_come_at_once_in_the_order_of_the_file()
    {
        var read = Read("""
            {
              "trivet": 1,
              "robot": {
                "familly": "rail delta",
                "common": { "rod": 560, "µ𝄞": 0, "platformRadius": "55 deg" }
              },
              "stations": { "Tray": {} }
            """);
        Assert.Equal(
            [(4, 5, "/robot/familly"), (5, 24, "/robot/common/rod"), (5, 29, "/robot/common/µ𝄞"), (5, 56, "/robot/common/platformRadius"), (7, 17, "/stations/Tray"), (7, 29, "")],
            read.Errors.Select(e => (e.Line, e.Column, e.Pointer)));
    }

    [Fact]
    public void More_than_a_hundred_errors_are_counted()
    {
        var read = Read("{\"trivet\":1," + string.Join(',', Enumerable.Range(0, 150).Select(i => $"\"x{i}\":1")) + "}");
        Assert.Equal(101, read.Errors.Length);
        Assert.Equal("and 50 more", read.Errors[^1].Problem);
    }

    [Fact]
    public void Deep_nesting_is_refused()
    {
        var read = Read("{\"trivet\":1,\"robot\":" + string.Concat(Enumerable.Repeat("{\"a\":", 100_000)));
        Assert.Contains("deeper than 32", read.Errors[^1].Problem, StringComparison.Ordinal);
    }

    [Fact]
    public void A_document_beyond_the_size_limit_is_refused_unread()
    {
        var read = CellFile.Read(new byte[50_000_000], "big.json");
        Assert.Contains("47 MB", Assert.Single(read.Errors).Problem, StringComparison.Ordinal);
    }

    [Fact]
    public void Files_that_can_not_be_loaded_are_errors()
    {
        Assert.Contains("no such file", Assert.Single(CellFile.Load("/nowhere/cell.json").Errors).Problem, StringComparison.Ordinal);
        Assert.Contains("folder", Assert.Single(CellFile.Load(Path.GetTempPath()).Errors).Problem, StringComparison.Ordinal);
        Assert.NotEmpty(CellFile.Load("a\0b").Errors);
        // A device without an end, where there is one.
        if (File.Exists("/dev/zero")) Assert.Contains("more than 16 MB", Assert.Single(CellFile.Load("/dev/zero").Errors).Problem, StringComparison.Ordinal);
        Assert.NotEmpty(CellFile.Load("").Errors);
    }

    [Fact]
    public void A_byte_order_mark_is_passed_over_and_other_encodings_are_named()
    {
        byte[] plain = Encoding.UTF8.GetBytes("""{"trivet":1,"name":"a"}""");
        Assert.Equal("a", CellFile.Read([0xEF, 0xBB, 0xBF, .. plain], "a").Cell!.Name);
        Assert.Contains("UTF-16", Assert.Single(CellFile.Read(Encoding.Unicode.GetPreamble(), "a").Errors).Problem, StringComparison.Ordinal);
        var error = Assert.Single(CellFile.Read([.. plain[..^3], 0xFF, .. plain[^3..]], "a").Errors);
        Assert.Equal((1, plain.Length - 2), (error.Line, error.Column));
        Assert.Contains("not UTF-8", error.Problem, StringComparison.Ordinal);
    }

    [Fact]
    public void Null_and_the_name_of_a_schema_are_read_as_nothing_stated()
    {
        var cell = Read("""{"$schema":"./cell.schema.json","trivet":1,"name":null,"robot":null,"stations":{"a":null,"b":{"x":null}}}""").Cell!;
        Assert.Equal("""{"stations":{"b":{}},"trivet":1}""", CellFile.Canonical(cell));
    }

    /// <summary>A file written by the first version of the format. It stays as it is for ever, and stays readable. Its canonical form
    /// and hash were computed apart, from the JSON alone, with the exact fractions and hashlib of Python 3.</summary>
    [Fact]
    public void A_file_of_version_1_stays_readable()
    {
        var read = CellFile.Load(Path.Combine(AppContext.BaseDirectory, "format-1.json"));
        Assert.Empty(read.Errors);
        Assert.Equal(0.56, read.Cell!.Robot.Common.Rod);
        Assert.Equal(RobotFamily.RailDelta, read.Cell.Robot.Family);
        Assert.Equal("2b904604b95e1aab2ab49b0c7f88c03eaa116cd5206e768c8566bcd8dbb3e75a", CellFile.Hash(read.Cell));
    }

    [Fact]
    public void An_upgrade_renames_members_and_maps_pointers_and_errors_name_the_file_as_it_stands()
    {
        System.Collections.Immutable.ImmutableArray<FormatStep> steps =
            [new(1, [new("/posts", "stations"), new("/posts/*/size", "width")]), new(2, [new("/stations/*/len", "depth")])];
        var read = CellFile.Read("""{"trivet":1,"posts":{"a":{"size":"20 mm"}}}"""u8, "old.json", 3, steps);
        Assert.Empty(read.Errors);
        Assert.Equal(0.02, read.Cell!.Stations["a"].Width);
        Assert.Equal("/stations/a/width", CellFormat.MapPointer("/posts/a/size", 1, steps));
        Assert.Equal("/stations/a/depth", CellFormat.MapPointer("/posts/a/len", 1, steps));
        Assert.Equal("/posts/a/len", CellFormat.MapPointer("/posts/a/len", 3, steps));
        Assert.Equal("/posts/a/size", Assert.Single(CellFile.Read("""{"trivet":1,"posts":{"a":{"size":20}}}"""u8, "old.json", 3, steps).Errors).Pointer);
    }

    private static CellRead Read(string json) => CellFile.Read(Encoding.UTF8.GetBytes(json), "cell.json");
}
