using System.Globalization;
using System.Text.Json;
using Trivet.Cells;
using Xunit;

namespace Trivet.Cli.Tests;

/// <summary>Forces from a table of states against tests/reference/rail-forces.json, computed independently and by a physics engine.</summary>
public sealed class ForcesTests
{
    private static readonly string[] Head = ["x[m]", "y[m]", "z[m]", "vx[m/s]", "vy[m/s]", "vz[m/s]", "ax[m/s2]", "ay[m/s2]", "az[m/s2]"];

    private static readonly string[] Motion = ["p", "v", "a"];

    [Fact]
    public async Task Forces_of_a_table_agree_with_the_reference()
    {
        using var folder = new TemporaryFolder();
        using var reference = JsonDocument.Parse(await File.ReadAllTextAsync(Repository.File("tests/reference/rail-forces.json"), Stop));
        var states = reference.RootElement.GetProperty("states").EnumerateArray().ToArray();
        string table = folder.File("states.csv");
        await File.WriteAllLinesAsync(table, [string.Join(',', Head), .. states.Select(s => string.Join(',', Motion.SelectMany(k => Numbers(s, k)).Select(Text)))], Stop);

        var run = await Run.Trivet("forces", CellFile(folder), "--states", table);
        Assert.Equal("", run.Error);
        Assert.Equal(ExitCode.AllHold, run.Code);
        Assert.StartsWith("x[m],y[m],z[m],vx[m/s],vy[m/s],vz[m/s],ax[m/s²],ay[m/s²],az[m/s²],f_a[N],f_b[N],f_c[N],tension[N],", run.Output, StringComparison.Ordinal);
        var rows = Rows(run.Output);
        Assert.Equal(100, rows.Length);
        for (int i = 0; i < rows.Length; i++)
        {
            // The reference counts upward.
            double[] own = Numbers(states[i], "ownForce");
            for (int chain = 0; chain < 3; chain++) Assert.Equal(-own[chain], rows[i][9 + chain], 1e-9);
        }
    }

    [Fact]
    public async Task The_error_of_lumped_rods_stands_beside_the_forces_and_a_part_weighs()
    {
        using var folder = new TemporaryFolder();
        string table = folder.File("states.csv");
        await File.WriteAllLinesAsync(table, ["z[mm];x[mm];y[mm];vx[mm/s];vy[mm/s];vz[mm/s];ax[mm/s2];ay[mm/s2];az[mm/s2]", "-700;0;0;0;0;0;0;0;0", "-712,5;20;-35;500;0;0;0;9000;0"], Stop);
        string cell = Repository.Sample("jar-lids");
        var with = Rows((await Run.Trivet("forces", cell, "--states", table, "--lumped")).Output);
        var without = Rows((await Run.Trivet("forces", cell, "--states", table, "--without-part")).Output);
        int mount = with[0].Length - 3 - 6;
        // A lid of 9 g; force on the mount along z.
        Assert.Equal(-0.009 * 9.80665, with[0][mount + 2] - without[0][mount + 2], 1e-12);
        // Holding up: the third of the rods' weight that the lumped split moves to the rails hangs on the carriages' own side, so the sum stays.
        Assert.Equal(0, with[0][^3] + with[0][^2] + with[0][^1], 1e-9);
        Assert.True(Math.Abs(with[1][^1]) > 1e-3);
    }

    [Fact]
    public async Task A_table_written_here_can_be_read_here()
    {
        using var folder = new TemporaryFolder();
        string table = folder.File("states.csv"), forces = folder.File("forces.csv");
        await File.WriteAllLinesAsync(table, [string.Join(',', Head), "0.02,-0.03,-0.7,0.5,0.1,-0.2,9,-4,3"], Stop);
        string cell = Repository.Sample("jar-lids");
        Assert.Equal(ExitCode.AllHold, (await Run.Trivet("forces", cell, "--states", table, "--out", forces)).Code);
        Assert.Equal(await File.ReadAllTextAsync(forces, Stop), (await Run.Trivet("forces", cell, "--states", forces)).Output);
    }

    [Fact]
    public async Task A_state_out_of_reach_stays_empty_and_ends_with_1()
    {
        using var folder = new TemporaryFolder();
        string table = folder.File("states.csv");
        await File.WriteAllLinesAsync(table, [string.Join(',', Head), "5,0,-0.7,0,0,0,0,0,0"], Stop);
        var run = await Run.Trivet("forces", Repository.Sample("jar-lids"), "--states", table);
        Assert.Equal(ExitCode.NotAllHold, run.Code);
        Assert.StartsWith("5,0,-0.7,0,0,0,0,0,0,,,,", run.Output.Split('\n')[1], StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_table_or_a_cell_that_lacks_something_is_refused_with_the_place()
    {
        using var folder = new TemporaryFolder();
        string table = folder.File("states.csv");
        await File.WriteAllLinesAsync(table, [string.Join(',', Head), "0,0,-0.7,0,0,0,0,fast,0"], Stop);
        var run = await Run.Trivet("forces", Repository.Sample("jar-lids"), "--states", table);
        Assert.Equal(ExitCode.Refused, run.Code);
        Assert.Contains(table + ":2:18: ", run.Error, StringComparison.Ordinal);

        await File.WriteAllLinesAsync(table, [string.Join(',', Head), "0,0,-0.7,0,0,0,0,0,0"], Stop);
        var unknown = await Run.Trivet("forces", Repository.Sample("jar-lids"), "--states", table, "--part", "jar");
        Assert.Equal(ExitCode.Refused, unknown.Code);
        Assert.Contains("no part jar. It has lid", unknown.Error, StringComparison.Ordinal);

        var bare = await Run.Trivet("forces", CellFile(folder, c => c with { Robot = c.Robot with { PlatformMass = null } }), "--states", table);
        Assert.Equal(ExitCode.Refused, bare.Code);
        Assert.Contains("/robot/platformMass: Not stated", bare.Error, StringComparison.Ordinal);
        Assert.Equal(ExitCode.Refused, (await Run.Trivet("forces", "a.json", "--states", table, "--part", "lid", "--without-part")).Code);
    }

    /// <summary>More rows than a block, the last block not full: each row as the dynamics give it alone, and the same whatever stands around it.</summary>
    [Fact]
    public async Task A_long_table_gives_each_row_what_it_has_alone()
    {
        using var folder = new TemporaryFolder();
        string table = folder.File("states.csv");
        string cell = CellFile(folder);
        var random = new Random(5);
        double[][] states =
        [
            .. Enumerable.Range(0, 2500).Select(_ => (double[])
            [
                .. Enumerable.Range(0, 2).Select(_ => 0.2 * random.NextDouble() - 0.1), -0.55 + 0.1 * random.NextDouble(),
                .. Enumerable.Range(0, 3).Select(_ => 2 * random.NextDouble() - 1), .. Enumerable.Range(0, 3).Select(_ => 40 * random.NextDouble() - 20),
            ]),
        ];
        await File.WriteAllLinesAsync(table, [string.Join(',', Head), .. states.Select(s => string.Join(',', s.Select(Text)))], Stop);
        var run = await Run.Trivet("forces", cell, "--states", table);
        Assert.Equal(ExitCode.AllHold, run.Code);
        var rows = Rows(run.Output);
        Assert.Equal(states.Length, rows.Length);
        var dynamics = Dynamics.DynamicsInputs.Read(Files.CellFile.Read(await File.ReadAllBytesAsync(cell, Stop), cell).Cell!, null, new()).Dynamics!;
        for (int i = 0; i < rows.Length; i++)
        {
            double[] s = states[i];
            var force = dynamics.Inverse(new(s[0], s[1], s[2]), new(s[3], s[4], s[5]), new(s[6], s[7], s[8]));
            double most = Math.Max(Math.Abs(force.X), Math.Max(Math.Abs(force.Y), Math.Abs(force.Z)));
            for (int chain = 0; chain < 3; chain++) Assert.Equal(force[chain], rows[i][9 + chain], 1e-11 * most);
        }

        await File.WriteAllLinesAsync(table, [string.Join(',', Head), string.Join(',', states[1777].Select(Text))], Stop);
        Assert.Equal(run.Output.Split('\n')[1778], (await Run.Trivet("forces", cell, "--states", table)).Output.Split('\n')[1]);
    }

    [Fact]
    public async Task Falls_are_shown_with_their_caution_and_end_with_1_when_nothing_holds()
    {
        using var folder = new TemporaryFolder();
        string sample = Repository.Sample("jar-lids");
        var held = await Run.Trivet("forces", sample, "--falls");
        Assert.Equal(ExitCode.AllHold, held.Code);
        Assert.Contains("never a substitute", held.Output, StringComparison.Ordinal);
        Assert.Contains("brake, 90 N", held.Output, StringComparison.Ordinal);

        string loose = folder.File("loose.json");
        await File.WriteAllTextAsync(loose, (await File.ReadAllTextAsync(sample, Stop)).Replace("\"holding\": \"brake\"", "\"holding\": \"nothing\"", StringComparison.Ordinal), Stop);
        var falls = await Run.Trivet("forces", loose, "--falls", "--format", "csv");
        Assert.Equal(ExitCode.NotAllHold, falls.Code);
        string[] lines = falls.Output.Split('\n', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries);
        Assert.Equal("place,point,chain,holding,holds[N],load[N],case,end,time[s],drop[m],speed[m/s],energy[J],x[m],y[m],z[m]", lines[0]);
        // Three stations and three points of two cycles; three chains and all of them; as held and with nothing left.
        Assert.Equal(1 + 9 * 4 * 2, lines.Length);
        // All at once without rotors fall freely: v² = 2·g·h (school mechanics).
        foreach (string[] row in lines.Skip(1).Select(l => l.Split(',')).Where(r => r[2].Length == 0 && r[6] == "gone"))
        {
            Assert.Equal("end-stop", row[7]);
            Assert.Equal(Math.Sqrt(2 * 9.80665 * double.Parse(row[9], CultureInfo.InvariantCulture)), double.Parse(row[10], CultureInfo.InvariantCulture), 1e-6);
        }
        using var json = JsonDocument.Parse((await Run.Trivet("forces", loose, "--falls", "--format", "json")).Output);
        Assert.Equal(72, json.RootElement.GetProperty("falls").GetArrayLength());
        Assert.Contains("| chain a | nothing |", (await Run.Trivet("forces", loose, "--falls", "--format", "markdown")).Output, StringComparison.Ordinal);

        var bare = await Run.Trivet("forces", Repository.Sample("labels"), "--falls", "--format", "csv");
        Assert.Equal(ExitCode.NotAllHold, bare.Code);
        Assert.Contains("platform mass", bare.Error, StringComparison.Ordinal);
        Assert.Equal(ExitCode.Refused, (await Run.Trivet("forces", sample)).Code);
        Assert.Equal(ExitCode.Refused, (await Run.Trivet("forces", sample, "--falls", "--states", "-")).Code);
    }

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    // The robot of the reference, as its own head describes it.
    private static string CellFile(TemporaryFolder folder, Func<Cell, Cell>? change = null)
    {
        var cell = Cell.Empty with
        {
            Robot = new Robot
            {
                Family = RobotFamily.RailDelta,
                PlatformMass = 1.0,
                Common = new()
                {
                    BaseRadius = 0.3, BaseHeight = 0, PlatformRadius = 0.05, Rod = 0.5, TravelFrom = -1, TravelTo = 1,
                    RodSpacing = 0.08, RodMass = 0.05, CarriageMass = 0.8,
                },
                Chains = Keyed.Empty<ChainDescription>()
                    .Add("a", new() { Order = 1, Azimuth = 0 })
                    .Add("b", new() { Order = 2, Azimuth = Math.Tau / 3 })
                    .Add("c", new() { Order = 3, Azimuth = 2 * Math.Tau / 3 }),
            },
        };
        string file = folder.File("cell.json");
        File.WriteAllText(file, Files.CellFile.Write(change?.Invoke(cell) ?? cell));
        return file;
    }

    private static double[] Numbers(JsonElement state, string name) => [.. state.GetProperty(name).EnumerateArray().Select(v => v.GetDouble())];

    private static string Text(double value) => value.ToString("R", CultureInfo.InvariantCulture);

    private static double[][] Rows(string csv) =>
    [
        .. csv.Split('\n', StringSplitOptions.RemoveEmptyEntries).Skip(1)
            .Select(l => l.Split(',').Select(v => v.Length == 0 ? double.NaN : double.Parse(v, CultureInfo.InvariantCulture)).ToArray()),
    ];
}
