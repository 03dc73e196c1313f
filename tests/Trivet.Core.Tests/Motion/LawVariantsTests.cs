using Trivet.Cells;
using Trivet.Motion;
using Xunit;

namespace Trivet.Core.Tests.Motion;

/// <summary>The four variants of the controller's law.</summary>
public sealed class LawVariantsTests
{
    /// <summary>Rest to rest along a way long enough to reach its speed: s/v + v/a for a trapezoid, and v/a + s/v + a/j for seven phases (elementary; the same as the trade's
    /// formulas for constant acceleration and constant jerk).</summary>
    [Fact]
    public void Along_the_path_the_times_are_those_of_the_closed_forms()
    {
        var cell = MotionCells.Planar.With(s => s with { PathSpeed = 0.5, PathAcceleration = 10, PathJerk = 400 });
        var input = MotionCells.Input(cell, "across");
        double s = input.Plan.Loaded.Length;
        Assert.Equal(s / 0.5 + 0.5 / 10, Of(cell, ProfileKind.Trapezoidal, ProfileAlong.Path).Law.Loaded.Duration, 1e-9);
        Assert.Equal(s / 0.5 + 0.5 / 10 + 10.0 / 400, Of(cell, ProfileKind.SevenPhase, ProfileAlong.Path).Law.Loaded.Duration, 1e-9);
    }

    [Fact]
    public void The_variant_stated_is_the_cycle_as_it_is_timed_and_each_other_is_that_of_the_cell_that_states_it()
    {
        var cell = MotionCells.Planar;
        Assert.Equal(4, LawVariants.Of(cell, MotionCells.Input(cell, "across")).Length);
        foreach (var along in Enum.GetValues<ProfileAlong>())
        {
            foreach (var profile in Enum.GetValues<ProfileKind>())
            {
                var variant = Of(cell, profile, along);
                var stated = cell.With(s => s with { Profile = profile, Along = along });
                var law = CycleTiming.Solve(MotionCells.Input(stated, "across")).Controller;
                Assert.Equal(law.CycleTime, variant.Law.CycleTime);
                Assert.Equal(profile == ProfileKind.SevenPhase && along == ProfileAlong.Path, variant.Stated);
                Assert.Equal(along == ProfileAlong.Axes, variant.Leaves > 0);
                Assert.True(variant.Worst!.Use > 0);
            }
        }
    }

    [Fact]
    public void What_can_not_be_run_says_why()
    {
        var silent = MotionCells.Planar.With(s => s with { Profile = ProfileKind.Trapezoidal, PathJerk = null });
        Assert.Equal(MotionReasons.NoJerkStated, Of(silent, ProfileKind.SevenPhase, ProfileAlong.Path).Law.Why);
        Assert.Null(Of(silent, ProfileKind.Trapezoidal, ProfileAlong.Axes).Law.Why);
        var belt = LawVariants.Of(MotionCells.Rail, MotionCells.Input(MotionCells.Rail, "belt-to-tray"));
        Assert.All(belt.Where(v => v.Along == ProfileAlong.Axes), v => Assert.Equal(MotionReasons.AxesOnBelt, v.Law.Why));
    }

    private static LawVariant Of(Cell cell, ProfileKind profile, ProfileAlong along) =>
        LawVariants.Of(cell, MotionCells.Input(cell, "across")).Single(v => v.Profile == profile && v.Along == along);
}
