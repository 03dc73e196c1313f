using System.Collections.Immutable;
using Trivet.Cells;
using Trivet.Findings;

namespace Trivet.Motion;

/// <summary>One way in which a controller could run a cycle with the settings stated.</summary>
/// <param name="Stated">It is the one that the cell states.</param>
/// <param name="Worst">The limit that is used most, over both moves; null where nothing is limited or nothing moves.</param>
public sealed record LawVariant(ProfileKind Profile, ProfileAlong Along, bool Stated, LawResult Law, LimitUse? Worst)
{
    /// <summary>Largest distance of the tool from the planned path, metres; zero along the path.</summary>
    public double Leaves => Math.Max(Law.Loaded.Leaves, Law.Empty.Leaves);
}

/// <summary>
/// The four variants of the controller's law side by side: trapezoidal or of seven phases, along the path or for all axes together, each with the speeds, the
/// jerk and the blend of the cell. A jerk that a trapezoidal setting has no use for counts all the same where it is stated.
/// </summary>
public static class LawVariants
{
    public static ImmutableArray<LawVariant> Of(Cell cell, CycleInput input)
    {
        var stated = input.Settings;
        double jerk = cell.Motion.Settings.PathJerk is { } j and > 0 ? j : double.NaN;
        return
        [
            .. from along in new[] { ProfileAlong.Path, ProfileAlong.Axes }
               from profile in new[] { ProfileKind.Trapezoidal, ProfileKind.SevenPhase }
               select Run(profile, along),
        ];

        LawVariant Run(ProfileKind profile, ProfileAlong along)
        {
            bool seven = profile == ProfileKind.SevenPhase;
            var settings = stated with { Profile = profile, Along = along, Jerk = seven ? jerk : double.PositiveInfinity };
            bool own = profile == stated.Profile && along == stated.Along;
            if (seven && double.IsNaN(jerk))
            {
                var none = new TimedMove(null);
                return new(profile, along, own, new(TimingLaw.Controller, none, none, input.Plan.Pick.Duration + input.Plan.Place.Duration, MotionReasons.NoJerkStated), null);
            }
            var set = input with { Settings = settings };
            var law = CycleTiming.ByController(set).Controller;
            var worst = CycleTiming.Use(law.Loaded, set, set.Loaded).AddRange(CycleTiming.Use(law.Empty, set, set.Empty))
                .Where(u => seven || u.Kind != LimitKind.Jerk).MaxBy(u => double.IsNaN(u.Use) ? double.PositiveInfinity : u.Use);
            return new(profile, along, own, law, worst);
        }
    }
}
