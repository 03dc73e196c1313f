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
    /// A settling time of a cycle with which the frame settles in time, whole hundredths of a second. A longer wait makes a longer cycle, whose harmonics meet the modes
    /// elsewhere, so it is tried; not a number where several tries do not end.
    /// </summary>
    /// <param name="first">What is needed with the settling planned now, seconds.</param>
    public static double EnoughSettle(Cell cell, string id, FrameStudy study, double tolerance, double first)
    {
        double needed = first;
        for (int trial = 0; trial < 4 && double.IsFinite(needed); trial++)
        {
            double settle = Math.Ceiling(needed * 100 - 1e-6) / 100;
            var changed = cell with { Motion = cell.Motion with { Cycles = cell.Motion.Cycles.SetItem(id, cell.Motion.Cycles[id] with { Settle = settle }) } };
            if (Load(changed, TimedCycle.Of(changed).Single(c => c.Id == id)) is not { Reaction.IsFinite: true } load) return double.NaN;
            double then = Settling.Of(study, study.FineJoints, load, tolerance).Max(s => s.Worst.Wait);
            if (then <= settle) return settle;
            needed = Math.Max(then, settle + 0.01);
        }

        return double.NaN;
    }

    /// <summary>What the swinging may use, with the pointer that says so; null where nothing does.</summary>
    public static (double Value, string Pointer)? Tolerance(Cell cell, Reading reading)
    {
        reading.Used("/frame/limits/settleTolerance", cell.Frame.Limits.SettleTolerance);
        if (cell.Frame.Limits.SettleTolerance is { } stated) return stated > 0 ? (stated, "/frame/limits/settleTolerance") : null;
        return DriveParts.Tolerance(cell.Brief, reading) is var (tolerance, pointer) ? (UsualShare * tolerance, pointer) : null;
    }

    /// <summary>The moving masses where they are in the middle of the first cycle; none while they are not described or nothing moves.</summary>
    private static ImmutableArray<PointMass> Moving(Cell cell, ImmutableArray<TimedCycle> cycles, Pose x_CB, Reading reading)
    {
        reading.Used("/motion/cycles", string.Join('\n', cell.Motion.Cycles.InOrder().Select(c => c.Key)));
        if (cycles.IsEmpty) return [];
        reading.Used(cycles[0].Reading());
        if (cycles[0].Input is not { Loaded: { } dynamics } input) return [];
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
