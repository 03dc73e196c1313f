using System.Collections.Immutable;
using Trivet.Procedures;
using Trivet.Testing;
using Xunit;

namespace Trivet.Core.Tests.Procedures;

public sealed class ScheduleTests
{
    private static Step Step(string id, double minutes, EnergyLevel energy, StepPlace place, int people, params ImmutableArray<string> after) =>
        new() { Id = id, Kind = id, Subject = new("/robot"), Place = place, Energy = energy, By = Skill.Fitter, Minutes = minutes, People = people, After = after };

    [Fact]
    public void Two_people_share_what_is_isolated_and_nobody_works_beside_power()
    {
        ImmutableArray<Step> steps =
        [
            Step("a", 10, EnergyLevel.Isolated, StepPlace.Site, 1), Step("b", 10, EnergyLevel.Isolated, StepPlace.Site, 1), Step("on", 5, EnergyLevel.ControlSupplyOnly, StepPlace.Site, 1, "a"),
            Step("bench", 20, EnergyLevel.Isolated, StepPlace.Shop, 1),
        ];
        Assert.Equal(45, Schedule.Of(steps, 1).Minutes);
        Assert.Equal(25, Schedule.Of(steps, 2).Minutes);
        Assert.Equal(20, Schedule.Of(steps, 2).Critical);
        Assert.Equal(["bench"], Schedule.Of(steps, 2).OnCriticalWay);
    }

    [Fact]
    public void Every_plan_keeps_the_order_and_no_one_is_at_two_places()
    {
        var random = new Random(31337);
        for (int i = 0; i < Effort.Cases(200); i++)
        {
            var steps = ImmutableArray.CreateBuilder<Step>();
            for (int n = 0; n < 12; n++)
                steps.Add(Step($"s{n}", 1 + random.Next(20), (EnergyLevel)random.Next(3), (StepPlace)(2 * random.Next(2)), 1 + random.Next(2), [.. Enumerable.Range(0, n).Where(_ => random.Next(5) == 0).Select(m => $"s{m}")]));
            foreach (int people in new[] { 1, 2 })
            {
                var plan = Schedule.Of(steps.ToImmutable(), people);
                var by = plan.Steps.ToDictionary(p => p.Step.Id);
                Assert.Equal(12, by.Count);
                Assert.All(plan.Steps, p => Assert.All(p.Step.After, a => Assert.True(by[a].End <= p.Begin)));
                foreach (var p in plan.Steps)
                    foreach (var q in plan.Steps)
                    {
                        if (p == q || p.End <= q.Begin || q.End <= p.Begin) continue;
                        Assert.Empty(p.People.Intersect(q.People));
                        if (p.Step.Place == StepPlace.Site && q.Step.Place == StepPlace.Site) Assert.Equal((EnergyLevel.Isolated, EnergyLevel.Isolated), (p.Step.Energy, q.Step.Energy));
                    }
                Assert.InRange(plan.Minutes, plan.Critical, steps.Sum(s => s.Minutes));
            }
        }
    }

    [Fact]
    public void What_is_done_takes_no_time_any_more()
    {
        ImmutableArray<Step> steps = [Step("a", 10, EnergyLevel.Isolated, StepPlace.Site, 1), Step("b", 7, EnergyLevel.Isolated, StepPlace.Site, 1, "a")];
        Assert.Equal(7, Schedule.Of(steps, 1, new HashSet<string> { "a" }).Minutes);
        Assert.Equal(0, Schedule.Of([], 2).Minutes);
    }
}
