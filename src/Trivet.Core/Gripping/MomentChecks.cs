using System.Collections.Immutable;
using Trivet.Cells;
using Trivet.Findings;
using Trivet.Motion;
using Trivet.Numerics;
using Trivet.Tooling;

namespace Trivet.Gripping;

/// <summary>Bending moment of the tool about its interfaces over a cycle.</summary>
public static class MomentChecks
{
    /// <summary>What hangs from one face: what turns with the rotary axis, and what does not.</summary>
    private readonly record struct Hung(MassProperties Still, MassProperties Turning)
    {
        /// <summary>Moment about a point of the upright axis, across that axis, newton metres. Bodies without a known inertia count as points.</summary>
        public double Bending(ToolInstant instant, double top, Vec3 gravity)
        {
            var turn = instant.State.Turn;
            var r = Mat3.RotationZ(turn.Angle);
            Vec3 from = new(0, 0, top), still = Still.Centre - from, turned = r * Turning.Centre - from;
            var moment = still.Cross(Still.Mass * instant.Felt(Still.Centre, gravity, turns: false))
                + turned.Cross(Turning.Mass * instant.Felt(Turning.Centre, gravity, turns: true));
            if (Turning.InertiaKnown)
            {
                Vec3 spin = turn.Speed * Vec3.UnitZ, gain = turn.Acceleration * Vec3.UnitZ;
                var own = Turning.Turned(r).Inertia;
                moment += own * gain + spin.Cross(own * spin);
            }
            return Math.Sqrt(moment.X * moment.X + moment.Y * moment.Y);
        }
    }

    public static IEnumerable<Finding> Of(Cell cell, TimedCycle cycle, CarriedMotion motion, ToolSums sums, Reading reading)
    {
        string? part = cell.Motion.Cycles[cycle.Id].Part;
        var held = part is null ? null : ToolInputs.Carried(cell, part, new());
        bool partTurns = cell.Robot.Rotary.Fitted == true;
        foreach (var (pointer, field, limit, elements, top) in Interfaces(cell, sums))
        {
            if (limit is not { } most) continue;
            var without = Sum(elements, null);
            var with = Sum(elements, held);
            var (instant, value) = motion.Worst(i => (i.PartHeld ? with : without).Bending(i, top, motion.Gravity_B), partHeld: false);
            yield return new Judged(
                ToolRules.Moment, new(pointer, cycle.Id), reading.Inputs, value, Limit.AtMost(most, new(SourceKind.Cell, field)), Assurance.Sampled)
            { Worst = instant.Place, WorstTime = instant.T };
        }

        Hung Sum(IEnumerable<ToolElement> elements, MassProperties? carried)
        {
            MassProperties still = default, turning = default;
            foreach (var e in elements)
            {
                if (e.Turns) turning += e.Body;
                else still += e.Body;
            }
            return carried is not { } body ? new(still, turning) : partTurns ? new(still, turning + body) : new(still + body, turning);
        }
    }

    /// <summary>Whether the cell states a limit at all.</summary>
    public static bool Asked(Cell cell) => cell.Tool.LargestMoment is not null || cell.Tool.Parts.Values.Any(p => p.LargestLoadMoment is not null);

    private static IEnumerable<(string Pointer, string Field, double? Limit, IEnumerable<ToolElement> Hung, double Top)> Interfaces(Cell cell, ToolSums sums)
    {
        yield return ("/tool", "/tool/largestMoment", cell.Tool.LargestMoment, sums.Stack.Elements, 0);
        foreach (var e in sums.Stack.Elements)
            yield return (e.Pointer, e.Pointer + "/largestLoadMoment", cell.Tool.Parts[e.Id].LargestLoadMoment, sums.Stack.From(e), e.Top);
    }
}
