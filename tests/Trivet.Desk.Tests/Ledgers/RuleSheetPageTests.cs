using Bunit;
using Trivet.Desk.Components.Pages;
using Trivet.Views.Words;

namespace Trivet.Desk.Ledgers;

/// <summary>A rule's page on the desk: the same texts as docs/rules, which are held elsewhere.</summary>
public sealed class RuleSheetPageTests : BunitContext
{
    [Fact]
    public void Every_rule_that_has_a_text_has_a_page() => Assert.Equal(English.Language.Rules.Keys.Order(StringComparer.Ordinal), RuleIndex.All.Keys);

    [Fact]
    public void A_rule_is_shown_with_what_it_asks_and_how_it_is_judged()
    {
        var page = Render<RuleSheetPage>(p => p.Add(c => c.Id, "reach.travel"));
        Assert.Equal(RuleIndex.All["reach.travel"].Title, page.Find("h1").TextContent);
        Assert.Equal(["What it asks", "How it is judged"], page.FindAll("h2").Select(h => h.TextContent));
        Assert.Contains("interval", page.Find("article").TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public void A_rule_there_is_not_leads_to_those_there_are()
    {
        Assert.Equal("/rules", Render<RuleSheetPage>(p => p.Add(c => c.Id, "no.rule")).Find(".state a").GetAttribute("href"));
        Assert.Equal(RuleIndex.All.Count, Render<RuleSheetPage>().FindAll(".rules tbody tr").Count);
    }
}
