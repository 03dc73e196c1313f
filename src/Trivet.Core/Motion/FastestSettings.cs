using System.Collections.Immutable;
using Trivet.Cells;
using Trivet.Findings;

namespace Trivet.Motion;

/// <summary>The fastest settings found, and what they give.</summary>
/// <param name="Settings">As typed; null where none hold every limit.</param>
/// <param name="Cycles">The cycles under them, in the order of the plan.</param>
/// <param name="Now">The same cycles under the settings of the cell.</param>
/// <param name="Tried">How many settings were tried.</param>
public sealed record FastestResult(ControllerSettings? Settings, ImmutableArray<CycleResult> Cycles, ImmutableArray<CycleResult> Now, int Tried)
{
    /// <summary>Mean cycle time, seconds.</summary>
    public double MeanTime => Cycles.IsEmpty ? double.NaN : Cycles.Average(c => c.Controller.CycleTime);
    public double MeanTimeNow => Now.IsEmpty ? double.NaN : Now.Average(c => c.Controller.CycleTime);
}

/// <summary>
/// Looks for the settings of the controller's law under which all cycles together take least time and every limit keeps its comfort margin.
/// <para>
/// A motion slowed down evenly by λ asks 1/λ of the speeds, 1/λ² of the accelerations and 1/λ³ of the jerks. So for each blend, and each shape of
/// profile (how soon the speed is reached, how much of the ramp is jerk), λ alone is searched, by halving; the best shape wins. Then each number is
/// rounded as a person would type it, raised where there is room left, and the whole is confirmed with every limit, the rods' included.
/// </para>
/// How it goes wrong: shapes are tried on a grid, so a few hundredths may be missed. The cycle's own blend, where stated, stays.
/// </summary>
public static class FastestSettings
{
    /// <summary>a·L/v²: how many times the speed could be built up along the path.</summary>
    private static readonly double[] Soon = [1.2, 1.6, 2.2, 3, 4.5, 7, 11];

    /// <summary>j·v/a²: length of the speed ramp over that of the ramp of acceleration.</summary>
    private static readonly double[] Sharp = [1, 1.5, 2.2, 3.5, 6, 12];

    private static readonly double[] Blends = [0.005, 0.01, 0.015, 0.02, 0.025, 0.03, 0.035, 0.04, 0.05, 0.06, 0.07, 0.08, 0.1];

    private const int Halvings = 12, MostRaises = 40;

    /// <param name="cell">All cycles must be complete: see <see cref="CycleInput.Read"/>.</param>
    public static FastestResult Find(Cell cell, CancellationToken stop = default)
    {
        ImmutableArray<CycleInput> inputs = [.. cell.Motion.Cycles.InOrder().Select(c => CycleInput.Read(cell, c.Key, new()).Input).OfType<CycleInput>()];
        if (inputs.Length == 0 || inputs.Length < cell.Motion.Cycles.Count) return new(null, [], [], 0);
        ImmutableArray<CycleResult> now = [.. inputs.Select(i => CycleTiming.Solve(i))];
        if (now.Any(n => n.Controller.Why == MotionReasons.PathNotReached || n.Controller.Why == MotionReasons.AxesOnBelt)) return new(null, [], now, 0);

        var given = inputs[0].Settings;
        double most = 1 - given.Comfort, belt = inputs.Max(i => Math.Max(i.Plan.Pick.Velocity_C.Norm, i.Plan.Place.Velocity_C.Norm));
        double length = inputs.Average(i => i.Plan.Loaded.Length), best = double.PositiveInfinity;
        double[] sharp = given.Profile == ProfileKind.SevenPhase ? Sharp : [double.PositiveInfinity];
        ControllerSettings? found = null;
        int tried = 0;
        bool ownBlends = cell.Motion.Cycles.Values.All(c => c.Blend is not null);
        double last = double.NaN;
        foreach (double blend in ownBlends ? [given.Blend] : Blends)
        {
            if (stop.IsCancellationRequested) break;
            var rounded = inputs.Select(i => WithBlend(cell, i, blend)).ToArray();
            double corners = rounded.Sum(i => i.Plan.Loaded.Path.Corners.Concat(i.Plan.Empty.Path.Corners).Sum(c => c.Half));
            // Blends larger than the legs allow change nothing any more.
            if (corners == last) break;
            last = corners;
            var trial = new Trial(rounded, belt);
            foreach (double soon in Soon)
            {
                foreach (double jerks in sharp)
                {
                    double low = 0, high = 0, time = double.PositiveInfinity;
                    // λ as speed: 4 m/s is beyond any such machine.
                    for (int i = 0; i < Halvings; i++)
                    {
                        double speed = i == 0 ? 4 : (low + high) / 2;
                        tried++;
                        var (duration, use) = trial.Under(Shaped(given, blend, speed, soon, jerks, length));
                        if (use <= most) (low, time) = (speed, duration);
                        else high = speed;
                        if (i == 0 && low > 0) break;
                    }
                    if (!(time < best)) continue;
                    (best, found) = (time, Shaped(given, blend, low, soon, jerks, length));
                }
            }
        }
        return found is null ? new(null, [], now, tried) : Confirmed(cell, inputs, found, most, now, tried);
    }

    private static ControllerSettings Shaped(ControllerSettings given, double blend, double speed, double soon, double sharp, double length)
    {
        double acceleration = soon * speed * speed / length;
        return given with { Blend = blend, Speed = speed, Acceleration = acceleration, Jerk = sharp * acceleration * acceleration / speed };
    }

    /// <summary>Rounds, slows down evenly until everything holds, then raises each number step by step as far as it holds by itself.</summary>
    private static FastestResult Confirmed(
        Cell cell, ImmutableArray<CycleInput> inputs, ControllerSettings found, double most, ImmutableArray<CycleResult> now, int tried)
    {
        ImmutableArray<CycleInput> set = [.. inputs.Select(i => WithBlend(cell, i, found.Blend))];
        for (double slower = 1; slower < 2; slower += 0.02)
        {
            var typed = AsTyped(found with
            {
                Speed = found.Speed / slower,
                Acceleration = found.Acceleration / (slower * slower),
                Jerk = found.Jerk / (slower * slower * slower),
            });
            if (!Holds(typed)) continue;
            for (int round = 0; round < MostRaises; round++)
            {
                var raised = typed;
                if (Better(raised with { Jerk = Next(raised.Jerk) })) raised = raised with { Jerk = Next(raised.Jerk) };
                if (Better(raised with { Acceleration = Next(raised.Acceleration) })) raised = raised with { Acceleration = Next(raised.Acceleration) };
                if (Better(raised with { Speed = Next(raised.Speed) })) raised = raised with { Speed = Next(raised.Speed) };
                if (raised == typed) break;
                typed = raised;

                bool Better(ControllerSettings next) => next != raised && Time(next) < Time(raised) && Holds(next);
            }
            return new(typed, [.. set.Select(i => CycleTiming.Solve(With(i, typed)))], now, tried);
        }
        return new(null, [], now, tried);

        double Time(ControllerSettings settings) => set.Sum(i => CycleTiming.Controller(With(i, settings), 0).Moving);

        bool Holds(ControllerSettings settings)
        {
            tried++;
            return set.All(i =>
            {
                var law = CycleTiming.Controller(With(i, settings), 0);
                return law.Found && CycleTiming.Use(law.Loaded, i, i.Loaded).AddRange(CycleTiming.Use(law.Empty, i, i.Empty))
                    .All(u => u.Use <= most || (u.Kind == LimitKind.Jerk && i.Settings.Profile == ProfileKind.Trapezoidal));
            });
        }

        static CycleInput With(CycleInput input, ControllerSettings settings) => input with { Settings = settings with { Blend = input.Settings.Blend } };
    }

    /// <summary>Speed, acceleration and jerk rounded down to what a person would type.</summary>
    public static ControllerSettings AsTyped(ControllerSettings settings) =>
        settings with { Speed = Typed(settings.Speed), Acceleration = Typed(settings.Acceleration), Jerk = Typed(settings.Jerk) };

    /// <summary>Steps that a person would type: two figures, halves of the second below 3.</summary>
    private static double Step(double value)
    {
        double unit = Math.Pow(10, Math.Floor(Math.Log10(value) + 1e-9) - 1);
        return value / unit < 30 - 1e-6 ? unit / 2 : unit;
    }

    /// <summary>Down to a step.</summary>
    private static double Typed(double value) => double.IsFinite(value) && value > 0 ? Multiple(Math.Floor(value / Step(value) + 1e-9), Step(value)) : value;

    /// <summary>To a step, up or down; a step itself stays.</summary>
    internal static double Typed(double value, bool up)
    {
        double down = Typed(value);
        return up && down < value * (1 - 1e-9) ? Next(down) : down;
    }

    private static double Next(double value) => double.IsFinite(value) ? Multiple(Math.Round(value / Step(value)) + 1, Step(value)) : value;

    /// <summary>Divided where the step is a fraction: the nearest double to what is typed.</summary>
    private static double Multiple(double count, double step) => step < 1 ? count / Math.Round(1 / step) : count * step;

    private static CycleInput WithBlend(Cell cell, CycleInput input, double blend)
    {
        string id = input.Plan.Id;
        if (cell.Motion.Cycles[id].Blend is not null) return input;
        return input with { Plan = CycleInputs.Read(cell, id, new(), blend).Plan ?? input.Plan, Settings = input.Settings with { Blend = blend } };
    }

    /// <summary>All moves of all cycles under trial settings: time of all together, worst use of any limit.</summary>
    private sealed class Trial(CycleInput[] inputs, double belt)
    {
        private const int AxesSteps = 80;

        private readonly (CycleInput Input, PathDemand Loaded, PathDemand Empty)[] _moves =
        [
            .. inputs.Where(i => i.Settings.Along == ProfileAlong.Path)
                .Select(i => (i, new PathDemand(i.Plan.Loaded, i.Axes, i.Loaded), new PathDemand(i.Plan.Empty, i.Axes, i.Empty))),
        ];

        public (double Duration, double Use) Under(ControllerSettings settings)
        {
            if (settings.Speed < belt) return (double.PositiveInfinity, 0);
            double time = 0, worst = 0;
            foreach (var (input, loaded, empty) in _moves)
            {
                double pick = input.Plan.Pick.Velocity_C.Norm, place = input.Plan.Place.Velocity_C.Norm;
                var (there, thereUse) = loaded.Under(settings, pick, place);
                var (back, backUse) = empty.Under(settings, place, pick);
                (time, worst) = (time + there + back, Math.Max(worst, Math.Max(thereUse, backUse)));
            }
            foreach (var input in inputs.Where(i => i.Settings.Along == ProfileAlong.Axes))
            {
                foreach (var (path, dynamics) in new[] { (input.Plan.Loaded, input.Loaded), (input.Plan.Empty, input.Empty) })
                {
                    if (AxesLaw.Instants(path, settings, input.Axes, AxesSteps) is not { } instants) return (double.PositiveInfinity, double.PositiveInfinity);
                    foreach (var use in LimitUse.Of(instants, input.Axes, dynamics))
                        if (use.Kind is not LimitKind.Jerk || double.IsFinite(settings.Jerk)) worst = Math.Max(worst, use.Use);
                    time += instants[^1].T;
                }
            }
            return (time, worst);
        }
    }
}
