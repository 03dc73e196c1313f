using System.Collections.Immutable;
using Trivet.Cells;
using Trivet.Drives;
using Trivet.Dynamics;
using Trivet.Findings;
using Trivet.Frames;
using Trivet.Numerics;
using Trivet.Reach;

namespace Trivet.Motion;

/// <summary>Brings frame and motion together: what of the robot stands on the frame, and what its cycles put on it.</summary>
public static class FrameRun
{
    /// <summary>Share of the tolerance of place that swinging may use where the cell says nothing. Common practice, no source.</summary>
    private const double UsualShare = 1.0 / 3;

    /// <summary>Waits tried at most until one is enough.</summary>
    private const int MostTrials = 24;

    /// <summary>The frame in computing form, with all that stands on it.</summary>
    public static FrameRead Read(Cell cell, ImmutableArray<TimedCycle> cycles, Reading reading)
    {
        var x_CB = PlacingInputs.Mount(cell.Mount, reading);
        var read = FrameInputs.Read(cell.Frame, x_CB, Moving(cell, cycles, x_CB, reading), reading);
        return LoadFactor(cell, reading) > 0 ? read : new(null, read.Problems.Add(new("/frame/loadFactor", FrameReasons.NotPositive)));
    }

    /// <summary>By how much harder than planned the motion loads feet and anchors.</summary>
    public static double LoadFactor(Cell cell, Reading reading) => reading.Or(cell.Frame.LoadFactor, "/frame/loadFactor", FaultStop.UsualFactor);

    /// <summary>What one cycle puts on the frame under the controller's law; null where it has no motion or masses are not described.</summary>
    public static FrameLoad? Load(Cell cell, TimedCycle cycle)
    {
        if (cycle.Trace is not { Reaction: { } reaction } trace) return null;
        var turn = PlacingInputs.Mount(cell.Mount, new()).R;
        var over = new ReactionOverTime(reaction.Time, [.. reaction.Force_B.Select(f => turn * f)], [.. reaction.Moment_B.Select(m => turn * m)]);
        return new(cycle.Id, over, [Wait("place", CyclePart.Placing), Wait("pick", CyclePart.Picking)]);

        WaitBegins Wait(string name, CyclePart part)
        {
            // The first entry of the wait: of those at the moment when the move has ended, the one where the tool no longer brakes.
            int at = over.IndexAt(trace.Begins[(int)part] + 1e-9);
            return new(name, at, trace.Tool_C[at]);
        }
    }

    /// <summary>
    /// A settling time of a cycle with which the frame settles in time, whole hundredths of a second, with one hundredth less of which it does not. A longer wait makes a longer
    /// cycle, whose harmonics meet the modes elsewhere, so it is tried; not a number where many tries do not end.
    /// </summary>
    /// <param name="first">What is needed with the settling planned now, seconds.</param>
    public static double EnoughSettle(Cell cell, string id, FrameStudy study, double tolerance, double first)
    {
        int wait = Up(first);
        for (int trial = 0; trial < MostTrials; trial++)
        {
            int needed = Needed(wait);
            if (needed < 0) return double.NaN;
            if (needed > wait)
            {
                wait = Math.Max(needed, wait + 1);
                continue;
            }
            while (wait > 0 && Needed(wait - 1) is >= 0 and int less && less < wait) wait--;
            return wait / 100.0;
        }

        return double.NaN;

        // Hundredths of a second that are needed where so many are planned; negative where nothing can be said.
        int Needed(int planned)
        {
            var changed = cell with { Motion = cell.Motion with { Cycles = cell.Motion.Cycles.SetItem(id, cell.Motion.Cycles[id] with { Settle = planned / 100.0 }) } };
            return Load(changed, TimedCycle.Of(changed, id)) is { Reaction.IsFinite: true } load ? Up(Settling.Of(study, study.FineJoints, load, tolerance).Max(s => s.Worst.Wait)) : -1;
        }

        static int Up(double seconds) => seconds < 1000 ? (int)Math.Ceiling(seconds * 100 - 1e-6) : -1;
    }

    /// <summary>What the swinging may use, with the pointer that says so; null where nothing does.</summary>
    public static (double Value, string Pointer)? Tolerance(Cell cell, Reading reading)
    {
        reading.Used("/frame/limits/settleTolerance", cell.Frame.Limits.SettleTolerance);
        if (cell.Frame.Limits.SettleTolerance is { } stated) return stated > 0 ? (stated, "/frame/limits/settleTolerance") : null;
        return DriveParts.Tolerance(cell.Brief, reading) is var (tolerance, pointer) ? (UsualShare * tolerance, pointer) : null;
    }

    /// <summary>
    /// The settling wait that a cycle needs: none where the tool is within the tolerance when its moves end, else whole hundredths of a second. Not a number where
    /// the cycle has no motion, masses are not described, or no wait was found that suffices.
    /// </summary>
    public static double Wait(Cell cell, TimedCycle cycle, FrameStudy study, double tolerance)
    {
        if (!study.Usable || Load(cell, cycle) is not { Reaction.IsFinite: true } load) return double.NaN;
        double first = Settling.Of(study, study.FineJoints, load, tolerance).Max(s => s.Worst.Wait);
        return first > 0 ? EnoughSettle(cell, cycle.Id, study, tolerance, first) : first;
    }

    /// <summary>Notes what was measured at the frame as used: it narrows every study.</summary>
    public static void UseMeasured(FrameMeasured m, Reading reading)
    {
        foreach (var (field, value) in new (string, object?)[]
        {
            ("pullForce", m.PullForce), ("pullX", m.PullX), ("pullY", m.PullY), ("pullZ", m.PullZ), ("pullAzimuth", m.PullAzimuth), ("pullDeflection", m.PullDeflection),
            ("pullUncertainty", m.PullUncertainty), ("tapFrequency", m.TapFrequency), ("tapUncertainty", m.TapUncertainty), ("tapMode", m.TapMode),
            ("tapDamping", m.TapDamping), ("tapDampingUncertainty", m.TapDampingUncertainty),
        }) reading.Used("/frame/measured/" + field, value);
    }

    /// <summary>The moving masses where they are in the middle of the first cycle; none while they are not described or nothing moves.</summary>
    private static ImmutableArray<PointMass> Moving(Cell cell, ImmutableArray<TimedCycle> cycles, Pose x_CB, Reading reading)
    {
        reading.Used("/motion/cycles", string.Join('\n', cell.Motion.Cycles.InOrder().Select(c => c.Key)));
        if (cycles.IsEmpty) return [];
        // Where its middle is must not hang on a wait that the frame itself may decide.
        string id = cycles[0].Id;
        var first = cell.Motion.Cycles[id] is { Settle: not null } waiting
            ? TimedCycle.Of(cell with { Motion = cell.Motion with { Cycles = cell.Motion.Cycles.SetItem(id, waiting with { Settle = null }) } }, id) : cycles[0];
        reading.Used(first.Reading());
        if (first.Input is not { Loaded: { } dynamics } input) return [];
        var path = input.Plan.Loaded;
        var p = path.At(path.Length / 2).Platform.P;
        var q = dynamics.Robot.Inverse(p);
        if (!q.IsFinite) return [];
        var masses = ImmutableArray.CreateBuilder<PointMass>();
        double pairs = 0;
        for (int i = 0; i < dynamics.Chains.Length; i++)
        {
            var bodies = dynamics.Chains[i];
            masses.Add(new(x_CB * dynamics.Robot.Chains[i].Joint(q[i]), bodies.Carriage + bodies.Counterweight + bodies.ArmMass + bodies.Pair / 2));
            pairs += bodies.Pair / 2;
        }

        masses.Add(new(x_CB * p, dynamics.PlatformMass + pairs));
        return masses.ToImmutable();
    }
}
