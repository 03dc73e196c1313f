using System.Globalization;
using System.Text;
using System.Text.Json;
using Xunit;

namespace Trivet.Cli.Tests;

/// <summary>
/// Tables of moves against tests/reference/jerk-limited-cases.json and of a path against path-timing.json, both computed independently for
/// this project with general-purpose libraries (README-motion.md beside them).
/// </summary>
public sealed class CycleTests
{
    [Fact]
    public async Task Durations_of_moves_agree_with_the_reference_to_a_billionth_of_a_second()
    {
        using var folder = new TemporaryFolder();
        using var reference = JsonDocument.Parse(await File.ReadAllTextAsync(Repository.File("tests/reference/jerk-limited-cases.json"), TestContext.Current.CancellationToken));
        var cases = reference.RootElement.GetProperty("cases").EnumerateArray().ToArray();
        string[] names = ["p0", "p1", "v0", "v1", "vmax", "amax", "jmax"];
        var table = new StringBuilder(string.Join(',', names.SelectMany(n => Enumerable.Range(1, 3).Select(k => $"{n}{k}"))) + "\n");
        foreach (var one in cases) table.Append(string.Join(',', names.SelectMany(n => one.GetProperty(n).EnumerateArray().Select(v => v.GetRawText()))) + "\n");
        string moves = folder.File("moves.csv");
        await File.WriteAllTextAsync(moves, table.ToString(), TestContext.Current.CancellationToken);

        var run = await Run.Trivet("cycle", "--moves", moves);
        Assert.Equal(ExitCode.AllHold, run.Code);
        var rows = Rows(run.Output);
        Assert.Equal(cases.Length, rows.Length);
        for (int i = 0; i < cases.Length; i++) Assert.Equal(cases[i].GetProperty("duration").GetDouble(), rows[i][^1], 1e-9);

        // What it writes it also reads.
        string again = folder.File("again.csv");
        await File.WriteAllTextAsync(again, run.Output, TestContext.Current.CancellationToken);
        Assert.Equal(run.Output, (await Run.Trivet("cycle", "--moves", again)).Output);
    }

    [Fact]
    public async Task One_axis_from_rest_without_jerk_is_the_trapezoid_in_columns_of_any_order()
    {
        var run = await Moves("amax1;vmax1;p11;p01\n20;2;0,4;0\n");
        Assert.Equal(ExitCode.AllHold, run.Code);
        // d/v + v/a = 0.2 + 0.1
        Assert.Equal("p01,p11,vmax1,amax1,duration\n0,0.4,2,20,0.3\n", run.Output.Replace("0.30000000000000004", "0.3", StringComparison.Ordinal));
    }

    /// <summary>More rows than a block: each as its axes give it one by one, and the same whatever stands around it.</summary>
    [Fact]
    public async Task A_long_table_gives_each_row_what_it_has_alone()
    {
        var random = new Random(7);
        double[][] moves = [.. Enumerable.Range(0, 2300).Select(_ => (double[])
        [
            random.NextDouble(), random.NextDouble(), 2 * random.NextDouble(), 3 * random.NextDouble(),
            0.5 + random.NextDouble(), 0.5 + random.NextDouble(), 5 + 20 * random.NextDouble(), 5 + 20 * random.NextDouble(), 100 + 900 * random.NextDouble(), 100 + 900 * random.NextDouble(),
        ])];
        const string head = "p01,p02,p11,p12,vmax1,vmax2,amax1,amax2,jmax1,jmax2\n";
        string[] lines = [.. moves.Select(m => string.Join(',', m.Select(v => v.ToString("R", CultureInfo.InvariantCulture))))];
        var run = await Moves(head + string.Join('\n', lines) + "\n");
        Assert.Equal(ExitCode.AllHold, run.Code);
        var rows = Rows(run.Output);
        for (int i = 0; i < moves.Length; i++)
        {
            double[] m = moves[i];
            double alone = Numerics.Profiles.Synchronised.Duration([new(m[0], m[2]), new(m[1], m[3])], [new(m[4], m[6], m[8]), new(m[5], m[7], m[9])]);
            Assert.Equal(alone, rows[i][^1], 1e-12 * alone);
        }
        Assert.Equal(run.Output.Split('\n')[1500], (await Moves(head + lines[1499] + "\n")).Output.Split('\n')[1]);
    }

    /// <summary>The trade's factors: fifth order 1.875·d/v and √(5.774·d/a), cycloid 2 and 6.283, seventh order 2.1875 and 7.513.</summary>
    [Theory]
    [InlineData("fifth-order", 1.875, 5.7735)]
    [InlineData("cycloid", 2, 6.2832)]
    [InlineData("seventh-order", 2.1875, 7.5132)]
    public async Task A_smooth_law_takes_what_its_factors_say_and_rests_at_both_ends(string law, double kv, double ka)
    {
        var run = await Moves("p01,p11,vmax1,amax1\n0,0.3,1,1000\n0,0.3,1000,20\n", "--law", law);
        Assert.Equal(ExitCode.AllHold, run.Code);
        Assert.Equal(kv * 0.3, Rows(run.Output)[0][^1], 1e-9);
        Assert.Equal(Math.Sqrt(ka * 0.3 / 20), Rows(run.Output)[1][^1], 1e-5);
        var moving = await Moves("p01,p11,v11,vmax1,amax1\n0,0.3,0.5,1,1000\n", "--law", law);
        Assert.Equal(ExitCode.NotAllHold, moving.Code);
        Assert.Contains(":2:1: a smooth law begins and ends at rest", moving.Error, StringComparison.Ordinal);
        Assert.Equal(ExitCode.Refused, (await Run.Trivet("cycle", Repository.Sample("jar-lids"), "--law", law)).Code);
        Assert.Equal(ExitCode.Refused, (await Run.Trivet("cycle", "--moves", "-", "--law", "snap")).Code);
    }

    [Fact]
    public async Task A_row_without_a_move_stays_empty_says_why_and_ends_with_1()
    {
        var run = await Moves("p01,p11,v01,v11,vmax1,amax1,jmax1\n0,1,3,0,2,20,1000\n0,1,0,0,2,-20,1000\n0,0.004,0,0,2,40,2000\n");
        Assert.Equal(ExitCode.NotAllHold, run.Code);
        var lines = run.Output.TrimEnd().Split('\n');
        Assert.EndsWith(",1000,", lines[1], StringComparison.Ordinal);
        Assert.EndsWith(",1000,", lines[2], StringComparison.Ordinal);
        // Four roundings: 4·(d/2j)^(1/3).
        Assert.Equal(0.04, Rows(run.Output)[2][^1], 1e-12);
        Assert.Contains(":2:1: axis 1 starts or ends faster than its limit", run.Error, StringComparison.Ordinal);
        Assert.Contains(":3:1: axis 1 has a limit that is not above zero", run.Error, StringComparison.Ordinal);
        Assert.Contains("2 rows have no move.", run.Error, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("p01,p11,vmax1\n0,1,2\n", ":1:1: ", "amax1 is missing")]
    [InlineData("p01,p11,vmax1,amx1\n0,1,2,3\n", ":1:15: ", "\"amax1\" is meant?")]
    [InlineData("p01,p11,p02,vmax1,amax1\n0,1,2,3,4\n", ":1:1: ", "columns p12, vmax2 and amax2 are missing")]
    [InlineData("p01,p11,vmax1,amax1\n0,one,2,3\n", ":2:3: ", "\"one\" is not a number")]
    [InlineData("p01[m],p11,vmax1,amax1\n0,1,2,3\n", ":1:1: ", "p01 has no unit")]
    [InlineData("", ":1:1: ", "p01,p11,vmax1,amax1; v01,v11,jmax1 may follow")]
    public async Task A_table_that_is_none_of_moves_is_refused_with_its_place(string table, string place, string words)
    {
        var run = await Moves(table);
        Assert.Equal(ExitCode.Refused, run.Code);
        Assert.Contains(place, run.Error, StringComparison.Ordinal);
        Assert.Contains(words, run.Error, StringComparison.Ordinal);
    }

    /// <summary>The file's own samples and derivatives, 112 points; the converged duration is 0.210582 s. Derivatives of a spline through so few are a little off.</summary>
    [Theory, InlineData(true, 1e-3), InlineData(false, 3e-3)]
    public async Task A_path_of_rails_takes_the_reference_time(bool derivatives, double tolerance)
    {
        using var reference = JsonDocument.Parse(await File.ReadAllTextAsync(Repository.File("tests/reference/path-timing.json"), TestContext.Current.CancellationToken));
        string Three(string name) => string.Join(',', Enumerable.Range(1, 3).Select(k => $"{name}{k}"));
        var table = new StringBuilder($"s,{Three("q")},{Three("vmax")},{Three("amax")}{(derivatives ? $",{Three("dq")},{Three("ddq")}" : "")}\n");
        foreach (var sample in reference.RootElement.GetProperty("samples").EnumerateArray())
        {
            string Values(string name) => string.Join(',', sample.GetProperty(name).EnumerateArray().Select(v => v.GetRawText()));
            table.Append(CultureInfo.InvariantCulture, $"{sample.GetProperty("s").GetRawText()},{Values("q")},2,2,2,40,40,40{(derivatives ? $",{Values("dq_ds")},{Values("d2q_ds2")}" : "")}\n");
        }

        var run = await Path(table.ToString());
        Assert.Equal(ExitCode.AllHold, run.Code);
        var rows = run.Output.TrimEnd().Split('\n');
        Assert.Equal("s,q1,q2,q3,t,sdot,held_back_by", rows[0]);
        var last = rows[^1].Split(',');
        Assert.Equal(0.210582, double.Parse(last[4], CultureInfo.InvariantCulture), tolerance * 0.210582);
        Assert.StartsWith($"duration {last[4]} s", run.Error, StringComparison.Ordinal);
        Assert.Contains(rows, r => r.EndsWith(",velocity 1", StringComparison.Ordinal));
        Assert.Contains(rows, r => r.EndsWith(",acceleration 2", StringComparison.Ordinal));
    }

    [Fact]
    public async Task A_straight_path_with_a_force_is_the_move_by_hand()
    {
        // 2 kg along s against 4 N of gravity with at most 24 N: 10 m/s² up and 14 m/s² down. Over 0.84 m:
        // v² = 2·0.84·10·14/24 and T = v/10 + v/14 = v·24/140.
        var table = new StringBuilder("s,q1,vmax1,amax1,m1,c1,g1,fmax1\n");
        for (int i = 0; i <= 400; i++) table.Append(CultureInfo.InvariantCulture, $"{i * 0.0021},{i * 0.0021},10,100,2,0,4,24\n");
        var run = await Path(table.ToString());
        Assert.Equal(ExitCode.AllHold, run.Code);
        double v = Math.Sqrt(2 * 0.84 * 140 / 24);
        Assert.Equal(v * 24 / 140, double.Parse(run.Error.Split(' ')[1], CultureInfo.InvariantCulture), 1e-5);
    }

    /// <summary>v² = (v₀² + v₁²)/2 + a·d at the peak, and T = (2v − v₀ − v₁)/a (school mechanics).</summary>
    [Fact]
    public async Task A_path_may_be_entered_and_left_at_a_speed()
    {
        string table = "s,q1,vmax1,amax1\n" + string.Concat(Enumerable.Range(0, 401).Select(i => FormattableString.Invariant($"{i * 0.0025},{i * 0.0025},100,10\n")));
        using var folder = new TemporaryFolder();
        string file = folder.File("path.csv");
        await File.WriteAllTextAsync(file, table, TestContext.Current.CancellationToken);
        var run = await Run.Trivet("cycle", "--path", file, "--start-speed", "3", "--end-speed", "2");
        Assert.Equal(ExitCode.AllHold, run.Code);
        double peak = Math.Sqrt((9 + 4) / 2.0 + 10);
        Assert.Equal((2 * peak - 5) / 10, double.Parse(run.Error.Split(' ')[1], CultureInfo.InvariantCulture), 1e-5);
        Assert.Equal(3, Rows(run.Output.Replace("acceleration 1", "", StringComparison.Ordinal))[0][3], 1e-9);
        // From 9 m/s nothing stops within a metre at 10 m/s².
        var fast = await Run.Trivet("cycle", "--path", file, "--start-speed", "9");
        Assert.Equal(ExitCode.NotAllHold, fast.Code);
        Assert.Contains("from the speed at which it starts", fast.Error, StringComparison.Ordinal);
        Assert.Equal(ExitCode.Refused, (await Run.Trivet("cycle", "--path", file, "--start-speed", "-1")).Code);
        Assert.Equal(ExitCode.Refused, (await Run.Trivet("cycle", "--moves", file, "--end-speed", "1")).Code);
    }

    [Fact]
    public async Task A_force_that_falls_with_speed_takes_longer()
    {
        string Table(string head, string tail) => $"s,q1,vmax1,amax1,m1,c1,g1,fmax1{head}\n"
            + string.Concat(Enumerable.Range(0, 201).Select(i => FormattableString.Invariant($"{i * 0.005},{i * 0.005},10,100,2,0,0,20{tail}\n")));
        double Duration(Run run) => double.Parse(run.Error.Split(' ')[1], CultureInfo.InvariantCulture);
        // 2·√(1 m / 10 m/s²) without it.
        Assert.Equal(2 * Math.Sqrt(0.1), Duration(await Path(Table("", ""))), 1e-6);
        Assert.InRange(Duration(await Path(Table(",fall1", ",2"))), 0.66, 0.9);
    }

    [Fact]
    public async Task A_path_without_a_way_through_says_where_and_by_what()
    {
        var run = await Path("s,q1,vmax1,amax1,m1,c1,g1,fmax1\n0,0,1,10,1,0,0,5\n1,1,1,10,1,0,0,5\n2,2,1,10,1,0,30,5\n3,3,1,10,1,0,0,5\n");
        Assert.Equal(ExitCode.NotAllHold, run.Code);
        Assert.Matches(@":[34]:1: the path can not be run through: .*: (force|acceleration) 1", run.Error);
        Assert.Empty(run.Output);
    }

    [Theory]
    [InlineData("s,q1,vmax1,amax1\n0,0,1,1\n", ":2:1: ", "fewer than two points")]
    [InlineData("s,q1,vmax1,amax1\n0,0,1,1\n0,1,1,1\n", ":3:1: ", "s does not rise")]
    [InlineData("s,q1,vmax1,amax1\n0,0,1,1\n1,1,1,0\n", ":3:1: ", "not above zero")]
    [InlineData("s,q1,vmax1,amax1,dq1\n0,0,1,1,1\n1,1,1,1,1\n", ":1:1: ", "only one of dq1 and ddq1")]
    [InlineData("s,q1,vmax1,amax1,fmax1\n0,0,1,1,1\n1,1,1,1,1\n", ":1:1: ", "not all of m1, c1, g1 and fmax1")]
    [InlineData("s,q1,vmax1\n0,0,1\n", ":1:1: ", "amax1 is missing")]
    public async Task A_table_that_is_no_path_is_refused_with_its_place(string table, string place, string words)
    {
        var run = await Path(table);
        Assert.Equal(ExitCode.Refused, run.Code);
        Assert.Contains(place, run.Error, StringComparison.Ordinal);
        Assert.Contains(words, run.Error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Exactly_one_table_is_asked_for()
    {
        Assert.Equal(ExitCode.Refused, (await Run.Trivet("cycle")).Code);
        Assert.Equal(ExitCode.Refused, (await Run.Trivet("cycle", "--moves", "a.csv", "--path", "b.csv")).Code);
        Assert.Equal(ExitCode.Refused, (await Run.Trivet("cycle", "--moves", "there-is-none.csv")).Code);
    }

    private static Task<Run> Moves(string table, params string[] more) => Table("--moves", table, more);

    private static Task<Run> Path(string table) => Table("--path", table);

    private static async Task<Run> Table(string option, string table, params string[] more)
    {
        using var folder = new TemporaryFolder();
        string file = folder.File("table.csv");
        await File.WriteAllTextAsync(file, table, TestContext.Current.CancellationToken);
        return await Run.Trivet(["cycle", option, file, .. more]);
    }

    private static double[][] Rows(string csv) =>
        [.. csv.TrimEnd().Split('\n').Skip(1).Select(l => l.Split(',').Select(v => v.Length == 0 ? double.NaN : double.Parse(v, CultureInfo.InvariantCulture)).ToArray())];
}
