using System.Text;
using Trivet.Cabinets;
using Trivet.Cells;
using Trivet.Files;
using Trivet.Findings;
using Trivet.Wiring;
using Xunit;

namespace Trivet.Core.Tests.Cabinets;

public sealed class CabinetStageTests
{
    private static readonly Cell Lids = Sample("jar-lids"), Biscuits = Sample("biscuits");

    private static Cell Sample(string name) => CellFile.Read(Encoding.UTF8.GetBytes(Samples.Find(name)!.Text), name).Cell!;

    private static Cell With(Cell cell, Func<Cabinet, Cabinet> change) => cell with { Cabinet = change(cell.Cabinet) };

    private static Cell With(Cell cell, string module, Func<Module, Module> change) =>
        With(cell, c => c with { Modules = c.Modules.SetItem(module, change(c.Modules[module])) });

    private static Finding[] All(Cell cell)
    {
        var plan = CabinetStage.Of(cell);
        return [.. plan.Findings, .. plan.Tasks.SelectMany(t => t.Prove(TestContext.Current.CancellationToken))];
    }

    private static Finding[] Bad(Cell cell) => [.. All(cell).Where(f => f.Verdict is Verdict.FallsShort or Verdict.Open)];

    [Fact]
    public void Two_contrasting_cabinets_hold()
    {
        Assert.Empty(Bad(Lids));
        Assert.Empty(Bad(Biscuits));
    }

    [Fact]
    public void A_module_in_the_wrong_place_is_told_with_the_order_that_moves_it_alone()
    {
        var cell = With(Lids, "motor-supply", m => m with { Order = 20 });
        var broken = Bad(cell).Where(f => f.Rule == CabinetRules.Order).ToArray();
        Assert.Contains(broken, f => f.Subject.Pointer == "/cabinet/railRules/supplies");
        Assert.Contains(broken[0].Advice, a => a is { Pointer: "/cabinet/modules/motor-supply/order", From: 20, To: 2 });
        var mended = RailCase.AsPlanned(cell);
        Assert.Empty(Bad(mended));
        Assert.Equal(Lids.Cabinet.Modules.InOrder().Select(m => m.Key).Except(["supply", "motor-supply"]), mended.Cabinet.Modules.InOrder().Select(m => m.Key).Except(["supply", "motor-supply"]));
    }

    [Fact]
    public void While_an_edit_is_previewed_the_search_waits()
    {
        var plan = CabinetStage.Of(With(Lids, "motor-supply", m => m with { Order = 20 }));
        var sampled = plan.Tasks.SelectMany(t => t.Sample()).ToArray();
        Assert.Contains(sampled, f => f.Verdict == Verdict.FallsShort);
        Assert.All(sampled, f => Assert.Empty(f.Advice));
    }

    [Fact]
    public void Rules_that_no_order_obeys_are_said_so()
    {
        var cell = With(Lids, c => c with { RailRules = c.RailRules.Add("wrong", new() { Kind = RailRuleKind.Last, Of = "supply" }) });
        Assert.Contains(Bad(cell), f => f is Unjudged { Detail: { } d } && d == CabinetReasons.NoOrder);
    }

    [Fact]
    public void The_gap_a_rule_wants_takes_rail()
    {
        double Taken(Cell cell) => Assert.IsType<Judged>(Assert.Single(All(cell), f => f.Rule == CabinetRules.Rail)).Value;
        double sum = Lids.Cabinet.Modules.Values.Sum(m => m.Width!.Value);
        Assert.Equal(sum + 0.02, Taken(Lids), 1e-12);
        Assert.Equal(Biscuits.Cabinet.Modules.Values.Sum(m => m.Width!.Value) + 2 * 0.01, Taken(Biscuits), 1e-12);
    }

    [Fact]
    public void Too_warm_is_told_with_the_air_that_would_do()
    {
        var cell = With(Lids, c => c with { Enclosure = c.Enclosure with { FanFlow = null } });
        var warm = Assert.Single(Bad(cell));
        Assert.Equal(CabinetRules.Temperature, warm.Rule);
        double flow = warm.Advice[0].To;
        var cooled = Assert.IsType<Judged>(Assert.Single(All(With(Lids, c => c with { Enclosure = c.Enclosure with { FanFlow = flow } })), f => f.Rule == CabinetRules.Temperature));
        Assert.Equal(50, cooled.Value, 1e-9);
    }

    [Fact]
    public void What_is_missing_is_asked_for_at_the_depth_of_building_only()
    {
        var bare = With(Lids, c => c with { Enclosure = new() });
        Assert.Contains(Bad(bare), f => f is Unjudged u && u.Missing.Contains("/cabinet/enclosure/ambient"));
        Assert.Contains(Bad(bare), f => f is Unjudged u && u.Missing.Contains("/cabinet/enclosure/railLength"));
        Assert.Empty(Bad(bare with { Depth = Depth.Quote }));
    }

    [Theory, InlineData("fanFlow"), InlineData("width")]
    public void What_can_not_be_is_named_with_its_place(string field)
    {
        var cell = With(Lids, c => c with { Enclosure = field == "width" ? c.Enclosure with { Width = -1 } : c.Enclosure with { FanFlow = -1 } });
        Assert.Contains(Bad(cell), f => f.Rule == CabinetRules.Described && f.Subject.Pointer == "/cabinet/enclosure/" + field);
    }

    [Fact]
    public void One_axis_more_goes_behind_the_axes_with_the_next_address_and_nobody_else_changes()
    {
        var more = RailCase.AsPlanned(OneMore.OfRole(Lids, "axis")!);
        Assert.Equal(
            ["supply", "motor-supply", "controller", "axis-a", "axis-b", "axis-c", "axis-turn", "axis-turn-2", "inputs", "outputs"],
            more.Cabinet.Modules.InOrder().Select(m => m.Key));
        var classes = AddressInputs.Read(more, new());
        var tool = classes.Single(c => c.Id == "tool");
        Assert.Equal([21, 22], tool.Plan!.Value);
        Assert.All(classes.Where(c => c.Id != "tool"), c => Assert.Equal(c.Modules.Select(m => m.Set!.Value), c.Plan!.Value));
        Assert.Null(OneMore.OfRole(Lids, "valve"));
    }
}
