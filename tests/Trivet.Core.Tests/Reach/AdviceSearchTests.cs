using Trivet.Cells;
using Trivet.Findings;
using Trivet.Reach;
using Xunit;

namespace Trivet.Tests.Reach;

/// <summary>
/// A judge with known margins stands in for the assessment: the answers can then be worked out by hand. All numbers invented.
/// </summary>
public class AdviceSearchTests
{
    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    private static readonly Rule Height = new("test.height", "High enough", Trade.Reach, "m", Sense.AtLeast, 0.1, new(SourceKind.CommonPractice, ""));
    private static readonly Rule Rod = Height with { Id = "test.rod", Sense = Sense.AtMost };

    private static readonly Cell Cell = Cell.Empty with
    {
        Mount = new() { Z = 1.0004 },
        Robot = new() { Common = new() { Rod = 0.5 } },
        Stations = Cell.Empty.Stations.Add("tray", new() { Z = 0.2995 }),
    };

    /// <summary>Mount above station at least 0.8 m; rod at most 0.55 m; a longer rod counts as height.</summary>
    private static Ledger Judge(Cell cell)
    {
        double height = cell.Mount.Z!.Value - cell.Stations["tray"].Z!.Value + (cell.Robot.Common.Rod!.Value - 0.5);
        return Ledger.Of(
            [
                new Judged(Height, new("/stations/tray"), [], height, Limit.AtLeast(0.8, new(SourceKind.Cell, "")), Assurance.Exact),
                new Judged(Rod, new("/robot"), [], cell.Robot.Common.Rod.Value, Limit.AtMost(0.55, new(SourceKind.Cell, "")), Assurance.Exact),
            ], []);
    }

    private static Finding Find(Ledger ledger, Rule rule) => ledger.Findings.Single(f => f.Rule == rule);

    /// <summary>By hand: 0.8 m · 1.1 = 0.88 m is needed, so the mount goes to 1.1795 m or the tray to 0.1204 m, rounded to whole millimetres beyond.</summary>
    [Fact]
    public void Smallest_change_that_reaches_comfort_is_found_to_the_millimetre()
    {
        var advice = AdviceSearch.For(Cell, Find(Judge(Cell), Height), Judge, Stop);
        var mount = advice.Single(a => a.Pointer == "/mount/z");
        Assert.Equal(1.0004, mount.From);
        Assert.Equal(1.18, mount.To, 1e-9);
        Assert.Equal(0.8805 / 0.8 - 1, mount.MarginThen, 1e-6);
        Assert.Equal(0.12, advice.Single(a => a.Pointer == "/stations/tray/z").To, 1e-9);
    }

    [Fact]
    public void Promised_margin_is_what_the_changed_cell_is_judged_to_have()
    {
        var advice = AdviceSearch.For(Cell, Find(Judge(Cell), Height), Judge, Stop);
        var mount = advice.Single(a => a.Pointer == "/mount/z");
        var then = Judge(Cell with { Mount = Cell.Mount with { Z = mount.To } });
        Assert.Equal(Find(then, Height).Margin, mount.MarginThen);
        Assert.Equal(Find(then, Rod).Margin, mount.WorstElsewhere);
    }

    /// <summary>The rod would have to grow to 0.68 m, beyond its own limit: that trades one shortfall for another.</summary>
    [Fact]
    public void Change_that_makes_another_finding_fall_short_is_not_offered() =>
        Assert.DoesNotContain(AdviceSearch.For(Cell, Find(Judge(Cell), Height), Judge, Stop), a => a.Pointer == "/robot/common/rod");

    [Fact]
    public void Nothing_is_advised_for_a_finding_that_holds_in_comfort()
    {
        var high = Cell with { Mount = new() { Z = 1.5 } };
        Assert.Empty(AdviceSearch.For(high, Find(Judge(high), Height), Judge, Stop));
    }

    [Fact]
    public void Only_fields_that_are_stated_are_changed()
    {
        var advice = AdviceSearch.For(Cell, Find(Judge(Cell), Height), Judge, Stop);
        Assert.Equal(["/mount/z", "/stations/tray/z"], advice.Select(a => a.Pointer).Order(StringComparer.Ordinal));
    }
}
