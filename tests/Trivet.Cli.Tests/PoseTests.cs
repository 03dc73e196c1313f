using System.Globalization;
using Trivet.Cells;
using Trivet.Files;
using Xunit;

namespace Trivet.Cli.Tests;

/// <summary>
/// Batch poses against tests/reference/poses-rail.csv and poses-crank.csv, computed independently for this project with NumPy
/// (closed form for the readings, singular values by LAPACK). The rail file counts the rail coordinate upward; Trivet downward.
/// </summary>
public sealed class PoseTests
{
    [Theory, InlineData("rail"), InlineData("crank")]
    public async Task Drive_readings_and_condition_agree_with_the_reference(string family)
    {
        using var folder = new TemporaryFolder();
        var reference = Rows(await File.ReadAllTextAsync(Repository.File($"tests/reference/poses-{family}.csv"), TestContext.Current.CancellationToken));
        string points = folder.File("points.csv");
        await File.WriteAllLinesAsync(points, ["x[m],y[m],z[m]", .. reference.Select(r => Line(r[..3]))], TestContext.Current.CancellationToken);

        var run = await Run.Trivet("pose", CellFile(folder, family), "--points", points);
        Assert.StartsWith(family == "rail" ? "x[mm],y[mm],z[mm],q_a[mm]," : "x[mm],y[mm],z[mm],q_a[deg],", run.Output, StringComparison.Ordinal);
        var computed = Rows(run.Output);
        Assert.Equal(reference.Length, computed.Length);
        double toSi = family == "rail" ? -1e-3 : Math.PI / 180;
        for (int i = 0; i < reference.Length; i++)
        {
            // The reference is printed with twelve digits.
            for (int chain = 0; chain < 3; chain++) Assert.Equal(reference[i][3 + chain], computed[i][3 + chain] * toSi, 1e-11);
            Assert.Equal(reference[i][6], computed[i][6], 1e-9 * reference[i][6]);
        }
    }

    [Fact]
    public async Task A_table_goes_there_and_back()
    {
        using var folder = new TemporaryFolder();
        string points = folder.File("points.csv"), readings = folder.File("readings.csv"), back = folder.File("back.csv");
        await File.WriteAllTextAsync(points, "z[mm];y[mm];x[mm]\n-700;0;0\n-712,5;20;-35\n", TestContext.Current.CancellationToken);
        string cell = Repository.Sample("jar-lids");
        Assert.Equal(ExitCode.AllHold, (await Run.Trivet("pose", cell, "--points", points, "--out", readings)).Code);
        Assert.Equal(ExitCode.AllHold, (await Run.Trivet("pose", cell, "--joints", readings, "--out", back)).Code);
        var (there, andBack) = (Rows(await File.ReadAllTextAsync(readings, TestContext.Current.CancellationToken)), Rows(await File.ReadAllTextAsync(back, TestContext.Current.CancellationToken)));
        Assert.Equal(-35, there[1][0]);
        Assert.Equal(-712.5, there[1][2]);
        for (int i = 0; i < there.Length; i++)
            for (int k = 0; k < 6; k++) Assert.Equal(there[i][k], andBack[i][k], 1e-9);
    }

    [Fact]
    public async Task Readings_typed_off_the_controller_pass_through_the_mapping()
    {
        using var folder = new TemporaryFolder();
        string points = folder.File("points.csv"), shown = folder.File("shown.csv"), back = folder.File("back.csv");
        // Biscuits: the controller counts its arms the other way and its frame is turned by a quarter.
        await File.WriteAllTextAsync(points, "x[mm],y[mm],z[mm]\n40,-20,-700\n", TestContext.Current.CancellationToken);
        string cell = Repository.Sample("biscuits");
        Assert.Equal(ExitCode.AllHold, (await Run.Trivet("pose", cell, "--points", points, "--as-shown", "--out", shown)).Code);
        Assert.Equal(ExitCode.AllHold, (await Run.Trivet("pose", cell, "--joints", shown, "--as-shown", "--out", back)).Code);
        var (there, andBack) = (Rows(await File.ReadAllTextAsync(shown, TestContext.Current.CancellationToken)), Rows(await File.ReadAllTextAsync(back, TestContext.Current.CancellationToken)));
        for (int column = 0; column < 6; column++) Assert.Equal(there[0][column], andBack[0][column], 1e-9);

        // The controller's x is the base frame's y, so (40, -20) there is (20, 40) here.
        string own = folder.File("own.csv");
        await File.WriteAllTextAsync(points, "x[mm],y[mm],z[mm]\n20,40,-700\n", TestContext.Current.CancellationToken);
        Assert.Equal(ExitCode.AllHold, (await Run.Trivet("pose", cell, "--points", points, "--out", own)).Code);
        var (asShown, asComputed) = (Rows(await File.ReadAllTextAsync(shown, TestContext.Current.CancellationToken)), Rows(await File.ReadAllTextAsync(own, TestContext.Current.CancellationToken)));
        for (int arm = 3; arm < 6; arm++) Assert.Equal(-asComputed[0][arm], asShown[0][arm], 1e-9);
    }

    [Fact]
    public async Task One_place_in_full_lists_every_mode_of_assembly_with_the_one_chosen()
    {
        var run = await Run.Trivet("pose", Repository.Sample("jar-lids"), "--at", "60 mm, 0 mm, -780 mm");
        Assert.Equal(ExitCode.AllHold, run.Code);
        var lines = run.Output.Split('\n');
        // Two solutions a chain: eight modes, one of them chosen.
        Assert.Equal(8, lines.Count(l => l.StartsWith('●') || l.StartsWith('○')));
        Assert.Equal(1, lines.Count(l => l.StartsWith('●')));
        Assert.Equal(ExitCode.Refused, (await Run.Trivet("pose", Repository.Sample("jar-lids"), "--at", "60, 0, -780")).Code);
        Assert.Equal(ExitCode.NotAllHold, (await Run.Trivet("pose", Repository.Sample("jar-lids"), "--at", "3 m, 0 mm, -780 mm")).Code);
    }

    [Fact]
    public async Task One_set_of_readings_in_full_lists_both_places_with_the_one_chosen()
    {
        string cell = Repository.Sample("jar-lids");
        var run = await Run.Trivet("pose", cell, "--readings", "120 mm, 130 mm, 140 mm");
        Assert.Equal(ExitCode.AllHold, run.Code);
        var lines = run.Output.Split('\n');
        Assert.Equal(["● platform below", "○ platform above"], lines.Where(l => l.StartsWith('●') || l.StartsWith('○')).Select(l => l[..16]));
        // As the table of readings has it, to the digits shown.
        using var folder = new TemporaryFolder();
        string joints = folder.File("joints.csv");
        await File.WriteAllTextAsync(joints, "q_a[mm],q_b[mm],q_c[mm]\n120,130,140\n", TestContext.Current.CancellationToken);
        double[] place = Rows((await Run.Trivet("pose", cell, "--joints", joints)).Output)[0][..3];
        string Shown(double v) => v.ToString("0.#", CultureInfo.InvariantCulture);
        Assert.Contains($"x {Shown(place[0])} mm, y {Shown(place[1])} mm, z {Shown(place[2])} mm", lines[0], StringComparison.Ordinal);

        // Beyond its travel; apart by more than the rods are long; too few; no unit; and as the controller shows them.
        Assert.Equal(ExitCode.NotAllHold, (await Run.Trivet("pose", cell, "--readings", "-5 m, -5 m, -5 m")).Code);
        var apart = await Run.Trivet("pose", cell, "--readings", "0 m, 0 m, 5 m");
        Assert.Equal(ExitCode.NotAllHold, apart.Code);
        Assert.Contains("the rods do not meet", apart.Output, StringComparison.Ordinal);
        Assert.Equal(ExitCode.Refused, (await Run.Trivet("pose", cell, "--readings", "120 mm, 130 mm")).Code);
        Assert.Equal(ExitCode.Refused, (await Run.Trivet("pose", cell, "--readings", "120, 130, 140")).Code);
        Assert.Equal(ExitCode.AllHold, (await Run.Trivet("pose", cell, "--readings", "120, 130, 140", "--as-shown")).Code);
    }

    [Fact]
    public async Task A_place_off_the_plane_of_two_chains_is_told_as_that()
    {
        var run = await Run.Trivet("pose", Repository.Sample("labels"), "--at", "0 mm, 10 mm, -500 mm");
        Assert.Equal(ExitCode.NotAllHold, run.Code);
        Assert.Contains("moves in its plane", run.Output, StringComparison.Ordinal);
        Assert.DoesNotContain("does not reach", run.Output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_place_out_of_reach_stays_empty_and_ends_with_1()
    {
        using var folder = new TemporaryFolder();
        string points = folder.File("points.csv");
        await File.WriteAllTextAsync(points, "x[mm],y[mm],z[mm]\n5000,0,-700\n", TestContext.Current.CancellationToken);
        var run = await Run.Trivet("pose", Repository.Sample("jar-lids"), "--points", points);
        Assert.Equal(ExitCode.NotAllHold, run.Code);
        Assert.Equal("5000,0,-700,,,,,,", run.Output.TrimEnd().Split('\n')[1]);
    }

    [Theory]
    [InlineData("x,y,z\n1,2,3\n", ":1:1: ")]
    [InlineData("x[mm],y[mm],z[mm]\n1,2,three\n", ":2:5: ")]
    [InlineData("", ":1:1: ")]
    public async Task A_table_that_cannot_be_read_is_refused_with_its_place(string table, string place)
    {
        using var folder = new TemporaryFolder();
        string points = folder.File("points.csv");
        await File.WriteAllTextAsync(points, table, TestContext.Current.CancellationToken);
        var run = await Run.Trivet("pose", Repository.Sample("jar-lids"), "--points", points);
        Assert.Equal(ExitCode.Refused, run.Code);
        Assert.Contains(points + place, run.Error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Points_and_joints_together_are_refused() =>
        Assert.Equal(ExitCode.Refused, (await Run.Trivet("pose", "a.json", "--points", "a.csv", "--joints", "b.csv")).Code);

    // The geometries stand in the heads of the reference files.
    private static string CellFile(TemporaryFolder folder, string family)
    {
        var common = family == "rail"
            ? new ChainDescription { BaseRadius = 0.3, BaseHeight = 0, PlatformRadius = 0.05, Rod = 0.5, TravelFrom = -1, TravelTo = 1 }
            : new ChainDescription { BaseRadius = 0.2, BaseHeight = 0, PlatformRadius = 0.045, UpperArm = 0.24, Rod = 0.6, TravelFrom = -1.5, TravelTo = 1.5 };
        var cell = Cell.Empty with
        {
            Robot = new Robot
            {
                Family = family == "rail" ? RobotFamily.RailDelta : RobotFamily.CrankDelta,
                Common = common,
                Chains = Keyed.Empty<ChainDescription>()
                    .Add("a", new() { Order = 1, Azimuth = 0 })
                    .Add("b", new() { Order = 2, Azimuth = Math.Tau / 3 })
                    .Add("c", new() { Order = 3, Azimuth = 2 * Math.Tau / 3 }),
            },
        };
        string file = folder.File($"{family}.json");
        File.WriteAllText(file, Files.CellFile.Write(cell));
        return file;
    }

    private static string Line(double[] values) => string.Join(',', values.Select(v => v.ToString("R", CultureInfo.InvariantCulture)));

    private static double[][] Rows(string csv) =>
    [
        .. csv.Split('\n', StringSplitOptions.RemoveEmptyEntries).Where(l => l[0] != '#').Skip(1)
            .Select(l => l.Split(',').Select(v => v.Length == 0 ? double.NaN : double.Parse(v, CultureInfo.InvariantCulture)).ToArray()),
    ];
}
