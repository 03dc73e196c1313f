using System.Collections.Immutable;
using CsCheck;
using Trivet.Cabinets;
using Trivet.Cells;
using Trivet.Testing;
using Xunit;

namespace Trivet.Core.Tests.Cabinets;

public sealed class RailPlanTests
{
    private static Gen<string> One(params string[] of) => Gen.Int[0, of.Length - 1].Select(i => of[i]);

    private static readonly Gen<OrderRule> Rule =
        from kind in Gen.Enum<RailRuleKind>()
        from of in One("supply", "axis", "io", "m0", "m1")
        from to in One("supply", "axis", "io", "m2")
        from count in Gen.Int[0, 2]
        select new OrderRule("r", kind, of, to, count, 0.01);

    private static readonly Gen<(ImmutableArray<RailModule> Now, ImmutableArray<OrderRule> Rules)> Any =
        from roles in One("supply", "axis", "io").Array[1, 6]
        from placed in Gen.Frequency((5, Gen.Const(true)), (1, Gen.Const(false))).Array[6]
        from rules in Rule.Array[0, 4]
        select (roles.Select((r, i) => new RailModule($"m{i}", r, 0.05, placed[i])).OrderByDescending(m => m.Placed).ToImmutableArray(), rules.ToImmutableArray());

    /// <summary>Every order there is gets tried, and judged by rules written down once more as sentences about places: none moves fewer modules.</summary>
    [Fact]
    public void A_plan_obeys_every_rule_and_moves_as_few_modules_as_can_be() => Any.Sample(c =>
    {
        var plan = RailPlan.Of(c.Now, c.Rules);
        int fewest = Orders([.. c.Now]).Where(o => c.Rules.All(r => Obeys(r, o))).Select(o => Moves(c.Now, o)).DefaultIfEmpty(-1).Min();
        if (fewest < 0)
        {
            Assert.Equal(RailEnd.Impossible, plan.End);
            return;
        }
        Assert.Equal(RailEnd.Found, plan.End);
        RailModule[] order = [.. plan.Order.Select(id => c.Now.Single(m => m.Id == id))];
        Assert.Equal(c.Now.Length, order.Distinct().Count());
        Assert.All(c.Rules, r => Assert.True(Obeys(r, order), $"{r} in {string.Join(' ', plan.Order)}"));
        Assert.Equal(fewest, plan.Moved.Count);
        Assert.Equal(fewest, Moves(c.Now, order));
    }, seed: "0000000000041", iter: Effort.Cases(1500));

    [Fact]
    public void An_order_is_broken_where_the_sentence_about_places_says_so() => Any.Sample(c =>
    {
        foreach (var rule in c.Rules) Assert.Equal(Obeys(rule, [.. c.Now]), rule.BrokenBy(c.Now).IsEmpty);
    }, seed: "0000000000042", iter: Effort.Cases(1500));

    [Fact]
    public void What_is_planned_stays_as_it_is() => Any.Sample(c =>
    {
        var plan = RailPlan.Of(c.Now, c.Rules);
        if (plan.End != RailEnd.Found) return;
        ImmutableArray<RailModule> then = [.. plan.Order.Select(id => c.Now.Single(m => m.Id == id) with { Placed = true })];
        var again = RailPlan.Of(then, c.Rules);
        Assert.Empty(again.Moved);
        Assert.Equal(plan.Order, again.Order);
    }, seed: "0000000000043", iter: Effort.Cases(500));

    [Fact]
    public void A_new_axis_goes_behind_its_like_and_nobody_else_moves()
    {
        ImmutableArray<RailModule> now = [M("s", "supply"), M("c", "controller"), M("a", "axis"), M("b", "axis"), M("in", "io"), M("out", "io"), new("new", "axis", 0.045, false)];
        var plan = RailPlan.Of(now, [new("supply", RailRuleKind.First, "supply"), new("axes", RailRuleKind.Before, "axis", "io")]);
        Assert.Equal(["s", "c", "a", "b", "new", "in", "out"], plan.Order);
        Assert.Empty(plan.Moved);
    }

    [Fact]
    public void Twenty_modules_of_which_two_stand_wrong_are_no_work()
    {
        string[] roles = ["io", "supply", .. Enumerable.Repeat("axis", 10), "controller", .. Enumerable.Repeat("io", 6), "axis"];
        ImmutableArray<RailModule> now = [.. roles.Select((r, i) => M($"m{i:00}", r))];
        var plan = RailPlan.Of(now,
        [
            new("1", RailRuleKind.First, "supply"), new("2", RailRuleKind.Beside, "controller", "supply"), new("3", RailRuleKind.Together, "axis"),
            new("4", RailRuleKind.Last, "io"), new("5", RailRuleKind.AtMostAfter, "controller", "axis", 12),
        ]);
        Assert.Equal(RailEnd.Found, plan.End);
        Assert.Equal(["m00", "m12", "m19"], plan.Moved.Order());
    }

    private static RailModule M(string id, string role) => new(id, role, 0.045, true);

    /// <summary>The rules said again, over a finished order.</summary>
    private static bool Obeys(OrderRule r, RailModule[] o)
    {
        int n = o.Length;
        bool Of(int i) => o[i].Role == r.Of || o[i].Id == r.Of;
        bool To(int i) => o[i].Role == r.To || o[i].Id == r.To;
        int[] all = [.. Enumerable.Range(0, n)], ofs = [.. all.Where(Of)], tos = [.. all.Where(To)];
        return r.Kind switch
        {
            RailRuleKind.First => ofs.All(i => all.Where(k => !Of(k)).All(k => i < k)),
            RailRuleKind.Last => ofs.All(i => all.Where(k => !Of(k)).All(k => i > k)),
            RailRuleKind.Before => ofs.All(i => tos.All(k => i <= k)),
            RailRuleKind.Beside => ofs.All(i => i > 0 && To(i - 1) || i < n - 1 && To(i + 1)),
            RailRuleKind.NotBeside => ofs.All(i => !(i > 0 && To(i - 1)) && !(i < n - 1 && To(i + 1))),
            RailRuleKind.AtMostAfter => ofs.All(i => all.Skip(i + 1).TakeWhile(k => !Of(k)).Count(To) <= r.Count),
            RailRuleKind.Together => ofs.Length == 0 || ofs[^1] - ofs[0] == ofs.Length - 1,
            _ => true,
        };
    }

    private static int Moves(ImmutableArray<RailModule> now, RailModule[] order)
    {
        // Modules without a place are free; of the others, all but a longest rising sequence move.
        int[] at = [.. order.Where(m => m.Placed).Select(m => now.IndexOf(m))];
        int[] longest = new int[at.Length];
        for (int i = 0; i < at.Length; i++) longest[i] = 1 + Enumerable.Range(0, i).Where(k => at[k] < at[i]).Select(k => longest[k]).DefaultIfEmpty(0).Max();
        return at.Length - longest.DefaultIfEmpty(0).Max();
    }

    private static IEnumerable<RailModule[]> Orders(RailModule[] left) =>
        left.Length == 0 ? [[]] : left.SelectMany(m => Orders([.. left.Where(o => o != m)]), (m, rest) => (RailModule[])[m, .. rest]);
}
