using Bunit;
using Trivet.Desk.Components.Ledgers;

namespace Trivet.Desk.Ledgers;

public sealed class LedgerPanelTests : BunitContext
{
    [Fact]
    public void Findings_stand_in_the_order_of_the_ledger_each_with_shape_and_word()
    {
        var panel = Panel();
        string[] words = [.. panel.FindAll("tbody tr .verdict").Select(v => v.TextContent.Trim())];
        Assert.Equal(["falls short", "open", "tight", "holds"], words);
        Assert.All(panel.FindAll("tbody tr .verdict svg"), svg => Assert.NotEmpty(svg.InnerHtml));
    }

    [Fact]
    public void A_verdict_pressed_shows_only_its_findings_and_pressed_again_all()
    {
        var panel = Panel();
        var tight = panel.FindAll(".choice button").Single(b => b.TextContent.Contains("tight", StringComparison.Ordinal));
        tight.Click();
        Assert.Equal("tight", Assert.Single(panel.FindAll("tbody tr .verdict")).TextContent.Trim());
        panel.Find(".choice button[aria-pressed=true]").Click();
        Assert.Equal(4, panel.FindAll("tbody tr .verdict").Count);
    }

    [Fact]
    public void The_find_field_looks_into_the_subject_and_an_empty_answer_says_so()
    {
        var panel = Panel();
        panel.Find("input[type=search]").Input("tra");
        Assert.Single(panel.FindAll("tbody tr .verdict"));
        panel.Find("input[type=search]").Input("no such thing");
        Assert.Contains("No finding is shown", panel.Find(".empty").TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public void An_opened_finding_links_each_input_to_its_field()
    {
        var panel = Panel(Made.Assessed.Ledger.Findings[0].Id);
        var link = panel.Find(".finding .inputs a");
        Assert.Equal("/cell/lids/description?at=%2Fstations%2Fbelt%2Fx", link.GetAttribute("href"));
        Assert.Equal("true", panel.Find("tr.open [data-row]").GetAttribute("aria-expanded"));
    }

    [Fact]
    public void An_opened_finding_links_to_the_page_of_its_rule()
    {
        var panel = Panel(Made.Assessed.Ledger.Findings[0].Id);
        Assert.Equal("/rules/reach.rod-clearance", panel.Find(".finding dl a").GetAttribute("href"));
    }

    [Fact]
    public void Without_a_session_advice_is_shown_but_cannot_be_applied()
    {
        var panel = Panel(Made.Assessed.Ledger.Findings[0].Id);
        Assert.NotEmpty(panel.FindAll(".finding .advice"));
        Assert.Empty(panel.FindAll(".finding .advice button"));
    }

    [Fact]
    public void What_does_not_apply_is_listed_with_its_reason() =>
        Assert.Contains("The robot has no rotary axis.", Panel().Find(".coverage").TextContent, StringComparison.Ordinal);

    private IRenderedComponent<LedgerPanel> Panel(string? selected = null) => Render<LedgerPanel>(p => p
        .Add(c => c.Now, Made.Assessed).Add(c => c.CellId, "lids").Add(c => c.Selected, selected));
}
