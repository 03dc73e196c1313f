using Trivet.Cells;
using Trivet.Findings;
using Trivet.Reach;
using Xunit;

namespace Trivet.Tests.Reach;

/// <summary>Margins that fall off linearly from known places, so that the best mount is known without the search.</summary>
public class MountSearchTests
{
    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    private static readonly Rule Near = new("test.near", "Near enough", Trade.Reach, "m", Sense.AtMost, 0.1, new(SourceKind.CommonPractice, ""));
    private static readonly Rule Level = Near with { Id = "test.level" };
    private static readonly Cell Cell = Cell.Empty with { Mount = new() { X = 0.1, Y = -0.05, Z = 1.0 } };

    /// <summary>Two stations to be near to and a height to keep: max-min lies midway, at x = 0.05, y = 0.1, z = 1.1.</summary>
    private static Ledger Judge(Cell cell)
    {
        var m = cell.Mount;
        double To(double x, double y) => Math.Sqrt(Math.Pow(m.X!.Value - x, 2) + Math.Pow(m.Y!.Value - y, 2));
        return Ledger.Of([Of(Near, "a", To(-0.1, 0.1)), Of(Near, "b", To(0.2, 0.1)), Of(Level, "a", Math.Abs(m.Z!.Value - 1.1))], []);

        static Judged Of(Rule rule, string station, double distance) =>
            new(rule, new("/stations/" + station), [], distance, Limit.AtMost(0.5, new(SourceKind.CommonPractice, "")), Assurance.Exact);
    }

    [Fact]
    public void Best_mount_is_where_the_nearest_limits_balance()
    {
        var result = MountSearch.Best(Cell, new(), Judge, stop: Stop);
        Assert.Equal(MountStop.NoBetterNearby, result.Stop);
        Assert.Equal(0.05, result.Mount.X!.Value, 0.003);
        Assert.Equal(0.1, result.Mount.Y!.Value, 0.02);
        Assert.Equal(1 - 0.15 / 0.5, result.WorstMargin, 0.005);
        Assert.True(result.WorstMargin > result.Before);
    }

    [Fact]
    public void What_is_not_free_stays()
    {
        var result = MountSearch.Best(Cell, new(X: false, Y: false), Judge, stop: Stop);
        Assert.Equal(Cell.Mount.X, result.Mount.X);
        Assert.Equal(Cell.Mount.Y, result.Mount.Y);
        Assert.Null(result.Mount.Yaw);
    }

    [Fact]
    public void Search_gives_the_same_answer_twice_and_never_a_worse_mount()
    {
        var first = MountSearch.Best(Cell, new(), Judge, stop: Stop);
        Assert.Equal(first, MountSearch.Best(Cell, new(), Judge, stop: Stop));
        var again = MountSearch.Best(Cell with { Mount = first.Mount }, new(), Judge, stop: Stop);
        Assert.True(again.WorstMargin >= first.WorstMargin);
    }

    [Fact]
    public void Cancelled_search_says_so_and_gives_no_worse_mount()
    {
        using var stop = new CancellationTokenSource();
        stop.Cancel();
        var result = MountSearch.Best(Cell, new(), Judge, stop: stop.Token);
        Assert.Equal(MountStop.Cancelled, result.Stop);
        Assert.True(result.WorstMargin >= result.Before);
    }

    [Fact]
    public void Nothing_to_judge_or_to_move_is_said()
    {
        Assert.Equal(MountStop.NothingToDo, MountSearch.Best(Cell, new(), _ => Ledger.Empty, stop: Stop).Stop);
        Assert.Equal(MountStop.NothingToDo, MountSearch.Best(Cell.Empty, new(), _ => Judge(Cell), stop: Stop).Stop);
    }

    [Fact]
    public void Trade_shows_the_worst_margin_of_each_rule_at_each_height()
    {
        var trade = MountSearch.OverHeight(Cell, 0.9, 1.3, 4, Judge, Stop);
        Assert.Equal([0.9, 1.0, 1.1, 1.2, 1.3], trade.Heights.Select(z => Math.Round(z, 9)));
        Assert.Equal(["test.level", "test.near"], trade.Curves.Select(c => c.Rule.Id));
        Assert.Equal([0.6, 0.8, 1, 0.8, 0.6], trade.Curves[0].Margins.Select(m => Math.Round(m, 9)));
        Assert.Equal(trade.Curves[1].Margins.Zip(trade.Curves[0].Margins, Math.Min), trade.Worst);
    }
}
