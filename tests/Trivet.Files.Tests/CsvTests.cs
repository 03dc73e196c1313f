using System.Collections.Immutable;
using CsCheck;
using Trivet.Testing;
using Xunit;

namespace Trivet.Files.Tests;

public class CsvTests
{
    private static readonly ImmutableArray<CsvColumn> Points =
        [new("x", Dimension.Length), new("y", Dimension.Length), new("z", Dimension.Length), new("rotary", Dimension.Angle, Optional: true)];

    [Theory]
    [InlineData("x[mm],y[mm],z[mm]\n1,2,-300.5\n", 0.001, 0.002, -0.3005)]
    [InlineData("# a comment\n\n z[m] , x[mm] , y[cm] \r\n-0.3005,1,0.2\r\n", 0.001, 0.002, -0.3005)]
    [InlineData("\uFEFFx[mm];y[mm];z[mm]\n1;2;-300,5", 0.001, 0.002, -0.3005)]
    [InlineData("x[mm]\ty[mm]\tz[mm]\n1\t2\t-300.5", 0.001, 0.002, -0.3005)]
    [InlineData("\"x[mm]\",\"y[mm]\",\"z[mm]\"\n\"1\",2e0,-300.5", 0.001, 0.002, -0.3005)]
    public void A_table_is_read_in_any_order_of_columns_and_any_unit(string text, double x, double y, double z)
    {
        var (rows, errors) = Read(text);
        Assert.Empty(errors);
        Assert.Equal([x, y, z, double.NaN], Assert.Single(rows));
    }

    [Theory]
    [InlineData("", 1, 1, "empty", "x[mm],y[mm],z[mm]; rotary[deg] may follow")]
    [InlineData("# only\n", 1, 1, "empty", "x[mm]")]
    [InlineData("x,y[mm],z[mm]\n", 1, 1, "names no unit", "x[mm]")]
    [InlineData("x[mm],y[mm]\n", 1, 1, "z is missing", "x[mm],y[mm],z[mm]")]
    [InlineData("rotary[deg],y[mm]\n", 1, 1, "columns x and z are missing", "x[mm],y[mm],z[mm]")]
    [InlineData("x[mm],y[deg],z[mm]\n", 1, 7, "\"deg\" is no unit of column y", "mm")]
    [InlineData("x[mm],y[mm],z[mm],rotery[deg]\n", 1, 19, "no column \"rotery\"", "\"rotary\" is meant?")]
    [InlineData("x[mm],y[mm],z[mm],x[mm]\n", 1, 19, "stands twice", "keep one")]
    [InlineData("x[mm],y[mm],z[mm]\n1,2\n", 2, 4, "2 of 3 fields", "x[mm]")]
    [InlineData("x[mm],y[mm],z[mm]\n1,2,3,4\n", 2, 7, "more than 3 fields", "decimal point")]
    [InlineData("x[mm],y[mm],z[mm]\n1,,3\n", 2, 3, "y is empty", "number")]
    [InlineData("x[mm],y[mm],z[mm]\n1,2 mm,3\n", 2, 3, "\"2 mm\" is not a number", "head")]
    [InlineData("x[mm],y[mm],z[mm]\n1,NaN,3\n", 2, 3, "not a number", "number")]
    [InlineData("x[mm],y[mm],z[mm]\n1,1e400,3\n", 2, 3, "not a number", "number")]
    public void What_is_wrong_is_told_with_line_and_column(string text, int line, int column, string problem, string remedy)
    {
        var error = Assert.Single(Read(text).Errors);
        Assert.Equal((line, column), (error.Line, error.Column));
        Assert.Contains(problem, error.Problem, StringComparison.Ordinal);
        Assert.Contains(remedy, error.Remedy, StringComparison.Ordinal);
    }

    [Fact]
    public void Good_rows_between_bad_ones_are_read()
    {
        var (rows, errors) = Read("x[mm],y[mm],z[mm]\na,0,0\n1,2,3\n0,b,0\n4,5,6\n");
        Assert.Equal([2, 4], errors.Select(e => e.Line));
        Assert.Equal([0.001, 0.004], rows.Select(r => r[0]));
    }

    [Fact]
    public void A_table_of_nonsense_stops_after_a_hundred_errors() =>
        Assert.Equal(101, Read("x[mm],y[mm],z[mm]\n" + string.Concat(Enumerable.Repeat("?,?,?\n", 1000))).Errors.Length);

    [Fact]
    public void A_line_without_end_is_refused_in_bounded_memory()
    {
        var error = Assert.Single(Read("x[mm],y[mm],z[mm]\n" + new string('1', 1_000_000)).Errors);
        Assert.Contains("characters", error.Problem, StringComparison.Ordinal);
    }

    [Fact]
    public void What_is_written_reads_back_as_the_same_doubles() =>
        RandomCells.Values.Array[4].Array[0, 5].Sample(
            rows =>
            {
                using var text = new StringWriter();
                var writer = new CsvWriter(text, Points);
                foreach (double[] row in rows) writer.Row(row);
                var (read, errors) = Read(text.ToString());
                Assert.Empty(errors);
                Assert.Equal(rows, read);
            },
            seed: "0000000000002", iter: Effort.Cases(500));

    [Fact]
    public void Words_stand_behind_the_numbers_and_what_is_no_number_is_left_empty()
    {
        using var text = new StringWriter();
        var writer = new CsvWriter(text, [new("a", Dimension.Length), new("condition", Dimension.One)], "remark");
        writer.Row([0.25, double.NaN], "out of reach, \"far\"");
        Assert.Equal("a[mm],condition,remark\n250,,\"out of reach, \"\"far\"\"\"\n", text.ToString());
    }

    [Fact]
    public void Any_text_is_read_or_refused() =>
        Gen.OneOf("x[mm]", "y[mm]", "z[mm]", ",", ";", "\t", "\n", "#", "1", "-", ".5", "e", "\"", "[", "]", "é").Array[0, 40].Sample(
            parts => { Read("x[mm],y[mm],z[mm]\n" + string.Concat(parts)); Read(string.Concat(parts)); },
            seed: "0000000000003", iter: Effort.Cases(5_000));

    private static (List<double[]> Rows, ImmutableArray<FileError> Errors) Read(string text)
    {
        using var reader = new StringReader(text);
        var csv = new CsvReader(reader, "points.csv", Points);
        var rows = new List<double[]>();
        var row = new double[Points.Length];
        while (csv.Next(row)) rows.Add([.. row]);
        return (rows, csv.Errors);
    }
}
