using Trivet.Files.Floor;

namespace Trivet.Desk.Sync;

/// <summary>Who is told of whom, and for how long.</summary>
public sealed class LiveBoardTests
{
    private static readonly DateTimeOffset Noon = new(2030, 5, 6, 12, 0, 0, TimeSpan.Zero);

    private readonly LiveBoard _board = new();

    [Fact]
    public void Each_device_is_told_of_the_others_at_its_own_cell_by_person()
    {
        AtWork ada = new("tablet-2", "ada", "rods"), bob = new("tablet-1", "bob", "bus"), eve = new("tablet-3", "eve", "");
        Assert.Empty(_board.Tell("lids", bob, Noon));
        Assert.Equal([bob], _board.Tell("lids", ada, Noon));
        Assert.Equal([ada, bob], _board.Tell("lids", eve, Noon));
        Assert.Empty(_board.Tell("jars", new("tablet-4", "dan", "rods"), Noon));
        // One person with two devices is two; the same device at another step is the newer of both.
        AtWork second = ada with { Device = "tablet-5" }, moved = bob with { Step = "feet" };
        _board.Tell("lids", second, Noon);
        Assert.Equal([ada, second, eve], _board.Tell("lids", moved, Noon));
        Assert.Equal([ada, second, moved], _board.Tell("lids", eve, Noon));
    }

    [Fact]
    public void One_that_is_not_heard_of_is_told_of_no_longer_and_comes_back_when_it_is()
    {
        AtWork ada = new("tablet-1", "ada", "rods"), bob = new("tablet-2", "bob", "bus");
        _board.Tell("lids", ada, Noon);
        Assert.Equal([ada], _board.Tell("lids", bob, Noon + LiveBoard.Heard));
        Assert.Empty(_board.Tell("lids", bob, Noon + LiveBoard.Heard + TimeSpan.FromTicks(1)));
        Assert.Equal([bob], _board.Tell("lids", ada, Noon + 2 * LiveBoard.Heard));
        // A device that went to another cell is at that one.
        Assert.Empty(_board.Tell("jars", ada, Noon + 2 * LiveBoard.Heard));
    }

    [Fact]
    public void However_many_tell_something_only_the_newest_are_kept()
    {
        for (int i = 0; i < 3 * LiveBoard.Most; i++) _board.Tell("lids", new($"device-{i}", "ada", ""), Noon.AddMilliseconds(i));
        var told = _board.Tell("lids", new("last", "bob", ""), Noon.AddSeconds(1));
        Assert.Equal(LiveBoard.Most - 1, told.Length);
        Assert.Equal(Enumerable.Range(2 * LiveBoard.Most + 1, LiveBoard.Most - 1).Select(i => $"device-{i}").Order(StringComparer.Ordinal), told.Select(a => a.Device));
        // One that is known makes no other go.
        Assert.Equal(LiveBoard.Most - 1, _board.Tell("lids", new("last", "bob", "rods"), Noon.AddSeconds(1)).Length);
    }

    [Fact]
    public void Devices_may_tell_at_once()
    {
        Parallel.For(0, 8, d =>
        {
            for (int i = 0; i < 500; i++) _board.Tell("lids", new($"device-{d}", "ada", $"step-{i}"), Noon);
        });
        Assert.Equal(Enumerable.Range(0, 8).Select(d => new AtWork($"device-{d}", "ada", "step-499")), _board.Tell("lids", new("last", "bob", ""), Noon));
    }

    [Fact]
    public void What_is_no_device_or_is_too_long_does_not_fit()
    {
        string longest = new('x', 200), tooLong = new('x', 201);
        Assert.True(LiveBoard.Fits(new(longest, longest, longest)) && LiveBoard.Fits(new("d", "", "")));
        AtWork[] bad = [new("", "p", "s"), new(null!, "p", "s"), new("d", null!, "s"), new("d", "p", null!), new(tooLong, "p", "s"), new("d", tooLong, "s"), new("d", "p", tooLong)];
        Assert.All(bad, b => Assert.False(LiveBoard.Fits(b)));
    }
}
