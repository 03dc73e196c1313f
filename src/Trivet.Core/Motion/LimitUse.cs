using System.Collections.Immutable;
using Trivet.Dynamics;
using Trivet.Numerics;

namespace Trivet.Motion;

/// <summary>What limits a motion.</summary>
public enum LimitKind
{
    Speed,
    Acceleration,
    Jerk,
    /// <summary>Force or torque of the drive against its speed.</summary>
    Force,
    /// <summary>Pull or push in a rod.</summary>
    RodForce,
}

/// <summary>The worst that a motion asks of one limit.</summary>
/// <param name="Value">Attained, SI, not negative.</param>
/// <param name="Limit">What is allowed there and then.</param>
/// <param name="At">Where in the motion.</param>
public sealed record LimitUse(string Axis, LimitKind Kind, double Value, double Limit, Instant At)
{
    public double Use => Value / Limit;

    /// <summary>The worst of each axis and kind over a motion; only what is limited. Not a number counts as the worst.</summary>
    /// <param name="known">The loads at the same instants, where they were computed already.</param>
    public static ImmutableArray<LimitUse> Of(ImmutableArray<Instant> instants, ImmutableArray<AxisCapacity> axes, RobotDynamics? dynamics, LoadSeries? known = null)
    {
        var worst = new Dictionary<(int, LimitKind), LimitUse>();
        for (int k = 0; k < instants.Length; k++)
        {
            var instant = instants[k];
            var demand = dynamics?.Demand(instant.State);
            var loads = dynamics is null ? default : known?.Each[k] ?? Loads.Of(dynamics, instant.State);
            for (int i = 0; i < axes.Length; i++)
            {
                var axis = axes[i];
                bool rotary = axis.Axis == AxisCapacity.Rotary;
                var turn = instant.State.Turn;
                double speed = rotary ? turn.Speed : instant.Speed[i];
                Note(i, LimitKind.Speed, speed, axis.Limits.Speed, instant);
                Note(i, LimitKind.Acceleration, rotary ? turn.Acceleration : instant.Acceleration[i], axis.Limits.Acceleration, instant);
                Note(i, LimitKind.Jerk, rotary ? instant.TurnJerk : instant.Jerk[i], axis.Limits.Jerk, instant);
                if (demand is not { } forces) continue;
                if (axis.Force is { } envelope) Note(i, LimitKind.Force, rotary ? forces.RotaryTorque : forces.Force[i], envelope.At(speed), instant);
                if (!rotary) Note(i, LimitKind.RodForce, Math.Max(loads.Rods(i).Most, -loads.Rods(i).Least), axis.RodForce, instant);
            }
        }
        return [.. worst.OrderBy(w => w.Key).Select(w => w.Value)];

        void Note(int i, LimitKind kind, double value, double limit, in Instant instant)
        {
            if (double.IsPositiveInfinity(limit)) return;
            value = Math.Abs(value);
            if (worst.TryGetValue((i, kind), out var so) && (double.IsNaN(so.Use) || value / limit <= so.Use)) return;
            worst[(i, kind)] = new(axes[i].Axis, kind, value, limit, instant);
        }
    }
}
