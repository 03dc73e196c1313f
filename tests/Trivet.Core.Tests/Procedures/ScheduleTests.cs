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

    /// <summary>Worked by hand: the second person, after five minutes on the bench, can only go on with what the first has prepared.</summary>
    [Fact]
    public void Who_waits_is_told_with_the_step_and_the_person_that_is_waited_for()
    {
        ImmutableArray<Step> steps =
        [
            Step("long", 20, EnergyLevel.Isolated, StepPlace.Site, 1), Step("short", 5, EnergyLevel.Isolated, StepPlace.Shop, 1),
            Step("both", 10, EnergyLevel.Isolated, StepPlace.Site, 2, "long"), Step("on", 4, EnergyLevel.ControlSupplyOnly, StepPlace.Site, 1, "both"), Step("other", 3, EnergyLevel.Isolated, StepPlace.Site, 1, "both"),
        ];
        var plan = Schedule.Of(steps, 2);
        var first = plan.Waits[0];
        Assert.Equal(("both", "long", 5.0, 20.0), (first.Before, first.For, first.From, first.Until));
        Assert.Equal(plan.Steps.First(p => p.Step.Id == "short").People, [first.Person]);
        // Nobody works beside power: what is isolated waits for what is not, or the other way round.
        var second = plan.Waits[1];
        Assert.Equal(("other", "on", 30.0, 34.0), (second.Before, second.For, second.From, second.Until));
        Assert.Empty(Schedule.Of(steps, 1).Waits);
        Assert.Equal(7, Schedule.Of(steps, 2, new HashSet<string> { "long", "short", "both" }).Minutes);
    }

    [Fact]
    public void Nobody_waits_for_himself_and_every_gap_of_a_lane_is_told()
    {
        var random = new Random(4711);
        for (int i = 0; i < Effort.Cases(200); i++)
        {
            ImmutableArray<Step> steps = [.. Enumerable.Range(0, 12).Select(n => Step($"s{n}", 1 + random.Next(20), (EnergyLevel)random.Next(3), (StepPlace)(2 * random.Next(2)), 1 + random.Next(2), [.. Enumerable.Range(0, n).Where(_ => random.Next(5) == 0).Select(m => $"s{m}")]))];
            var plan = Schedule.Of(steps, 2);
            var by = plan.Steps.ToDictionary(p => p.Step.Id);
            Assert.All(plan.Waits, w => Assert.DoesNotContain(w.Person, by[w.For].People));
            Assert.All(plan.Waits, w => Assert.Equal((by[w.Before].Begin, by[w.For].End), (w.Until, w.Until)));
            for (int person = 0; person < 2; person++)
            {
                var lane = plan.Steps.Where(p => p.People.Contains(person)).OrderBy(p => p.Begin).ToArray();
                double worked = lane.Sum(p => p.End - p.Begin), waited = plan.Waits.Where(w => w.Person == person).Sum(w => w.Until - w.From);
                if (lane.Length > 0) Assert.Equal(lane[^1].End, worked + waited, 1e-9);
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
