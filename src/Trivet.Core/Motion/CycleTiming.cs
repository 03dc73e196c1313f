using System.Collections.Immutable;
using Trivet.Cells;
using Trivet.Dynamics;
using Trivet.Findings;

namespace Trivet.Motion;

/// <summary>The three laws by which a cycle is timed.</summary>
public enum TimingLaw
{
    /// <summary>As the controller does it with its settings.</summary>
    Controller,
    /// <summary>Every axis at its limits of speed, acceleration and jerk, from state to state.</summary>
    States,
    /// <summary>The shortest time along the path that speeds, accelerations and forces allow.</summary>
    Bound,
}

/// <summary>A cycle under one law.</summary>
/// <param name="Waits">Dwells and settling, seconds.</param>
/// <param name="Why">Why there is no motion; null where there is.</param>
public sealed record LawResult(TimingLaw Law, TimedMove Loaded, TimedMove Empty, double Waits, Reason? Why)
{
    /// <summary>Both moves, seconds; not a number where there is none.</summary>
    public double Moving => Loaded.Duration + Empty.Duration;

    public double CycleTime => Moving + Waits;

    /// <summary>Cycles per second if nothing is ever waited for.</summary>
    public double Rate => 1 / CycleTime;

    public bool Found => double.IsFinite(Moving);
}

/// <summary>A cycle under all three laws, and what the controller's law asks of every limit.</summary>
/// <param name="LoadedUse">Of the controller's loaded move; empty where there is none.</param>
/// <param name="HeldBack">What holds back the bound of the loaded move, the largest share first.</param>
public sealed record CycleResult(
    CycleInput Input, LawResult Controller, LawResult States, LawResult Bound, ImmutableArray<LimitUse> LoadedUse, ImmutableArray<LimitUse> EmptyUse,
    ImmutableArray<HeldBack> HeldBack)
{
    /// <summary>Loads along the controller's moves; null where there is none or masses are not described.</summary>
    public LoadSeries? LoadedLoads { get; init; }
    public LoadSeries? EmptyLoads { get; init; }

    public IEnumerable<LawResult> Laws => [Controller, States, Bound];

    /// <summary>By how much the bound is shorter than the controller's moves, as a fraction of the controller's; not a number where one is missing.</summary>
    public double Gap => 1 - Bound.Moving / Controller.Moving;
}

/// <summary>Times a cycle by the three laws. A millisecond or a few; nothing is remembered.</summary>
public static class CycleTiming
{
    private const int PlacesTried = 64;

    /// <param name="points">Of the bound along each path.</param>
    /// <param name="states">Without, the law from state to state is left out: nothing is judged by it.</param>
    public static CycleResult Solve(CycleInput input, int points = PathBound.UsualPoints, bool states = true) =>
        Solve(ByController(input), points, states);

    /// <summary>The other laws added to the controller's.</summary>
    public static CycleResult Solve(CycleResult byController, int points, bool states)
    {
        var (input, plan, controller) = (byController.Input, byController.Input.Plan, byController.Controller);
        double waits = plan.Pick.Duration + plan.Place.Duration;
        if (!Reached(plan.Loaded) || !Reached(plan.Empty))
        {
            return new(input, controller, No(TimingLaw.States), No(TimingLaw.Bound), [], [], []);

            LawResult No(TimingLaw law) => NotReached(law, waits);
        }

        double pick = plan.Pick.Velocity_C.Norm, place = plan.Place.Velocity_C.Norm;
        BoundMove loaded = PathBound.Solve(plan.Loaded, input.Axes, input.Loaded, pick, place, points);
        BoundMove empty = PathBound.Solve(plan.Empty, input.Axes, input.Empty, place, pick, points);
        bool limited = input.Axes.All(a => double.IsFinite(a.Limits.Speed) && double.IsFinite(a.Limits.Acceleration));
        var bound = Law(TimingLaw.Bound, loaded.Move, empty.Move, waits, limited || input.Loaded is not null ? MotionReasons.NoTiming : MotionReasons.NoLimit);
        var stateToState = bound.Found && limited && states
            ? Law(TimingLaw.States, StateLaw.Run(plan.Loaded, input.Axes, pick, place, SpeedAt(loaded)), StateLaw.Run(plan.Empty, input.Axes, place, pick, SpeedAt(empty)), waits, MotionReasons.NoTiming)
            : Law(TimingLaw.States, new(null), new(null), waits, limited ? MotionReasons.NoTiming : MotionReasons.NoLimit);
        LoadSeries? full = LoadsOf(controller.Loaded, input.Loaded), bare = LoadsOf(controller.Empty, input.Empty);
        return new(input, controller, stateToState, bound, Use(controller.Loaded, input, input.Loaded, full), Use(controller.Empty, input, input.Empty, bare), loaded.HeldBack)
        {
            LoadedLoads = full,
            EmptyLoads = bare,
        };

        static Func<double, double> SpeedAt(BoundMove move) => s => Math.Sqrt(move.Traversal.SpeedSquaredAt(s));
    }

    /// <summary>The cycle under the controller's law, the other two left out: for those who need no more than what will happen.</summary>
    public static CycleResult ByController(CycleInput input)
    {
        var none = new LawResult(TimingLaw.Bound, new(null), new(null), 0, null);
        double waits = input.Plan.Pick.Duration + input.Plan.Place.Duration;
        var controller = Reached(input.Plan.Loaded) && Reached(input.Plan.Empty) ? Controller(input, waits) : NotReached(TimingLaw.Controller, waits);
        return new(input, controller, none, none, [], [], []);
    }

    private static LawResult NotReached(TimingLaw law, double waits) => new(law, new(null), new(null), waits, MotionReasons.PathNotReached);

    /// <summary>The controller's law alone.</summary>
    public static LawResult Controller(CycleInput input, double waits)
    {
        var (plan, settings) = (input.Plan, input.Settings);
        double pick = plan.Pick.Velocity_C.Norm, place = plan.Place.Velocity_C.Norm;
        if (settings.Along == ProfileAlong.Path)
            return Law(TimingLaw.Controller, PathLaw.Run(plan.Loaded, settings, pick, place), PathLaw.Run(plan.Empty, settings, place, pick), waits, MotionReasons.NoTiming);
        return plan.Pick.Moves || plan.Place.Moves
            ? Law(TimingLaw.Controller, new(null), new(null), waits, MotionReasons.AxesOnBelt)
            : Law(TimingLaw.Controller, AxesLaw.Run(plan.Loaded, settings, input.Axes), AxesLaw.Run(plan.Empty, settings, input.Axes), waits, MotionReasons.NoTiming);
    }

    /// <summary>What a move asks of every limit.</summary>
    /// <param name="known">The loads along it, where they were computed already.</param>
    public static ImmutableArray<LimitUse> Use(TimedMove move, CycleInput input, RobotDynamics? dynamics, LoadSeries? known = null) =>
        move.Trace is { } trace ? LimitUse.Of(trace.Instants, input.Axes, dynamics, known) : [];

    /// <summary>Loads in rods and on the mount along a move; null where there is none or masses are not described.</summary>
    public static LoadSeries? LoadsOf(TimedMove move, RobotDynamics? dynamics) => dynamics is not null && move.Trace is { } trace
        ? LoadSeries.Along(dynamics, [.. trace.Instants.Select(i => i.T)], [.. trace.Instants.Select(i => i.State)])
        : null;

    private static LawResult Law(TimingLaw law, TimedMove loaded, TimedMove empty, double waits, Reason why)
    {
        var result = new LawResult(law, loaded, empty, waits, null);
        return result.Found ? result : result with { Why = why };
    }

    private static bool Reached(PlatformPath path)
    {
        for (int i = 0; i <= PlacesTried; i++)
            if (!path.Robot.Inverse(path.At(path.Length * i / PlacesTried).Platform.P).IsFinite) return false;
        return true;
    }
}
