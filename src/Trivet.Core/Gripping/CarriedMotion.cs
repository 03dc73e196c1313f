using System.Collections.Immutable;
using Trivet.Cells;
using Trivet.Dynamics;
using Trivet.Findings;
using Trivet.Motion;
using Trivet.Numerics;

namespace Trivet.Gripping;

/// <summary>One instant of a tool in motion.</summary>
/// <param name="T">Seconds from the start of the cycle.</param>
/// <param name="State">Of platform and rotary axis, base frame.</param>
/// <param name="PartHeld">The part is in the gripper.</param>
public readonly record struct ToolInstant(double T, MotionState State, Place Place, bool PartHeld)
{
    /// <summary>Acceleration less free fall of a point of the tool, base frame, m/s².</summary>
    /// <param name="point">From the platform reference point at rotary angle 0, metres.</param>
    /// <param name="turns">It turns with the rotary axis.</param>
    public Vec3 Felt(Vec3 point, Vec3 gravity_B, bool turns) =>
        State.A + (turns ? RobotDynamics.CentreAcceleration(Mat3.RotationZ(State.Turn.Angle) * point, State.Turn) : Vec3.Zero) - gravity_B;
}

/// <summary>
/// What a tool and the part it holds go through in a cycle, as the controller drives it. While the tool waits it is not accelerated; a part is in the gripper
/// from the middle of the pick to the middle of the place.
/// </summary>
/// <param name="Gravity_B">Acceleration of free fall, base frame, m/s².</param>
public sealed record CarriedMotion(ImmutableArray<ToolInstant> Instants, Vec3 Gravity_B)
{
    /// <summary>Against free fall.</summary>
    public Vec3 Up_B => -Gravity_B.Unit();

    /// <summary>Null where the cycle is not timed or has no motion, which its own findings tell.</summary>
    public static CarriedMotion? Of(Cell cell, TimedCycle cycle)
    {
        if (cycle.ByController is not { } timed || timed.Controller.Loaded.Trace is not { } loaded || timed.Controller.Empty.Trace is not { } empty) return null;
        var plan = timed.Input.Plan;
        bool rotary = cell.Robot.Rotary.Fitted == true;
        var instants = ImmutableArray.CreateBuilder<ToolInstant>();
        double began = plan.Pick.Duration;
        foreach (var i in loaded.Instants) instants.Add(At(began, i, plan.Loaded, held: true));
        began += loaded.Duration + plan.Place.Duration;
        foreach (var i in empty.Instants) instants.Add(At(began, i, plan.Empty, held: false));
        return new(instants.ToImmutable(), DynamicsInputs.Gravity(cell.Mount, new()));

        ToolInstant At(double from, Instant i, PlatformPath path, bool held)
        {
            var (p, angle) = (i.State.P, i.State.Turn.Angle);
            return new(from + i.T, i.State, new(path.ToolOf(p, angle), rotary ? angle : double.NaN, p, path.LinearAxisAt), held);
        }
    }

    /// <summary>The instant at which something is largest; the first of equals.</summary>
    public (ToolInstant Instant, double Value) Worst(Func<ToolInstant, double> of, bool partHeld)
    {
        var worst = (Instant: default(ToolInstant), Value: double.NegativeInfinity);
        foreach (var instant in Instants)
        {
            if (partHeld && !instant.PartHeld) continue;
            double value = of(instant);
            if (double.IsNaN(value) || value > worst.Value) worst = (instant, value);
            if (double.IsNaN(value)) break;
        }
        return worst;
    }

    /// <summary>Fields that the direction of free fall rests on.</summary>
    internal static void Used(Cell cell, Reading reading) => DynamicsInputs.Gravity(cell.Mount, reading);
}
