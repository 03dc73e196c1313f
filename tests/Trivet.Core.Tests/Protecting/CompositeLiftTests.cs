using Trivet.Cells;
using Trivet.Findings;
using Trivet.Protecting;
using Xunit;

namespace Trivet.Core.Tests.Protecting;

/// <summary>Several lifts in one shift.</summary>
public sealed class CompositeLiftTests
{
    /// <summary>
    /// The manual's worked case of three tasks (NIOSH 94-110, section 3, from memory): loads 30, 20, 10 lb, FIRWL 20, 20, 15 lb, 1, 2 and 4 lifts a minute, up to
    /// one hour: FM 0.94, 0.88 for three and 0.70 for seven a minute; CLI = 1.6 + 0.07 + 0.20, 1.9 to one place.
    /// </summary>
    [Fact]
    public void Three_tasks_of_the_manual_come_to_their_composite_index()
    {
        LiftTask Task(double load, double recommended, double perMinute) => new(load, recommended, perMinute / 60, LiftDuration.Short, 0.9);
        LiftTask[] tasks = [Task(10, 15, 4), Task(30, 20, 1), Task(20, 20, 2)];
        Assert.Equal(1.6 + 0.07 + 0.20, LiftingEquation.Composite(tasks), 0.01);
        double byHand = 1.5 / .94 + 1.0 * (1 / .88 - 1 / .94) + 10.0 / 15 * (1 / .70 - 1 / .88);
        Assert.Equal(byHand, LiftingEquation.Composite(tasks), 1e-12);
        Assert.Equal(1.5 / .94, LiftingEquation.Composite([tasks[1]]), 1e-12);
        Assert.Equal(double.PositiveInfinity, LiftingEquation.Composite([.. tasks, Task(5, 20, 15)]));
    }

    [Fact]
    public void Two_lifts_by_hand_are_judged_together_and_one_alone_is_not()
    {
        var one = new Lift { Mass = 8, FromHeight = 0.8, ToHeight = 1.2, FromReach = 0.3, ToReach = 0.4, Coupling = Coupling.Good, Frequency = 2.0 / 60 };
        Cell Of(params (string, Lift)[] lifts) => Cell.Empty with
        {
            Handling = new() { Lifts = Keyed.Empty<Lift>().AddRange(lifts.Select(l => KeyValuePair.Create(l.Item1, l.Item2))) },
        };
        Assert.Contains(LiftChecks.Of(Of(("a", one))).Coverage, c => c.Rule == ProtectRules.LiftsTogether);
        var plan = LiftChecks.Of(Of(("a", one), ("b", one with { Frequency = 5.0 / 60 })));
        var together = Assert.IsType<Judged>(Assert.Single(plan.Findings, f => f.Rule == ProtectRules.LiftsTogether));
        double largest = plan.Findings.OfType<Judged>().Where(f => f.Rule == ProtectRules.Lift).Max(f => f.Value);
        Assert.True(together.Value > largest);
        Assert.Contains("/handling/lifts/b/frequency", together.Inputs);
        // A lift with an aid is nobody's.
        Assert.Contains(LiftChecks.Of(Of(("a", one), ("b", one with { Aid = "hoist", AidCapacity = 50 }))).Coverage, c => c.Rule == ProtectRules.LiftsTogether);
    }
}
