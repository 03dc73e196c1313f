using Trivet.Cells;
using Trivet.Findings;

namespace Trivet.Signals;

/// <summary>Holds the switches at the ends of travel against the hard stops behind them.</summary>
internal static class SwitchChecks
{
    public static IEnumerable<Finding> Of(Cell cell, string id, bool asked, Action<NotApplicable> waits)
    {
        var s = cell.Io.Switches[id];
        string at = $"/io/switches/{id}";
        var reading = new Reading();
        reading.Used(at + "/axis", s.Axis);
        reading.Used("/robot/family", cell.Robot.Family);
        double place = reading.Need(s.At, at + "/at"), hard = reading.Need(s.HardStop, at + "/hardStop");
        var stop = TravelStop.Of(
            reading.Need(s.HomingSpeed, at + "/homingSpeed"), reading.Need(s.Deceleration, at + "/deceleration"), reading.Need(s.Delay, at + "/delay"),
            reading.Or(s.Hysteresis, at + "/hysteresis", 0), reading.Or(s.Tolerance, at + "/tolerance", 0));
        bool straight = s.Axis == "linear" || s.Axis != "rotary" && cell.Robot.Family != RobotFamily.CrankDelta;
        var (toStop, clear) = straight ? (SignalRules.SwitchStop, SignalRules.SwitchClear) : (SignalRules.SwitchStopTurn, SignalRules.SwitchClearTurn);
        if (!reading.Complete)
        {
            if (asked) yield return new Unjudged(toStop, new(at), [.. reading.Inputs.Append("/depth").Order(StringComparer.Ordinal)], OpenReason.Missing, reading.MissingFields);
            else waits(new(toStop, new(at), CommonReasons.NotAskedYet));
            yield break;
        }
        if (hard == place)
        {
            yield return new Unjudged(SignalRules.Described, new(at + "/hardStop"), [at + "/at", at + "/hardStop"], OpenReason.Failed, [], SignalReasons.StopAtSwitch);
            yield break;
        }
        var source = new Source(SourceKind.Derived, "", "docs/signals.md");
        yield return new Judged(toStop, new(at), reading.Inputs, Math.Abs(hard - place), Limit.AtLeast(stop.Needed, source), Assurance.Exact) { Advice = Better(double.NaN) };

        if (SwitchTravel.End(cell, s.Axis, hard > place, reading) is { } end)
        {
            double side = Math.Sign(hard - place);
            if (stop.Clear > 0)
                yield return new Judged(clear, new(at), reading.Inputs, side * (place - end), Limit.AtLeast(stop.Clear, source), Assurance.Exact) { Advice = Better(end) };
        }
        if (s.Kind == SwitchKind.Inductive && s.Gap is { } gap && s.RatedDistance is { } rated)
        {
            var own = new Reading();
            own.Used(at + "/kind", s.Kind);
            own.Used(at + "/gap", gap);
            own.Used(at + "/ratedDistance", rated);
            double factor = own.Or(s.TargetFactor, at + "/targetFactor", 1);
            yield return new Judged(SignalRules.Gap, new(at), own.Inputs, gap, Limit.AtMost(TravelStop.AssuredDistance(rated, factor), new(SourceKind.FromMemory, "IEC-60947-5-2", "0.81 of the rated distance")), Assurance.Exact);
        }

        System.Collections.Immutable.ImmutableArray<Advice> Better(double end)
        {
            double best = double.IsNaN(end) ? hard - Math.Sign(hard - place) * stop.Needed * 1.2 : stop.Place(end, hard);
            bool wanted = double.IsNaN(end) ? Math.Abs(hard - place) < stop.Needed : double.IsFinite(best) && Math.Sign(hard - place) * (place - end) < stop.Clear;
            return wanted && double.IsFinite(best) ? [new(at + "/at", place, best, double.NaN)] : [];
        }
    }
}
