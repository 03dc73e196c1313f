using System.Collections.Immutable;
using Trivet.Cells;
using Trivet.Dynamics;
using Trivet.Findings;
using Trivet.Kinematics;
using Trivet.Motion;
using Trivet.Numerics;
using Trivet.Tooling;

namespace Trivet.Protecting;

/// <summary>Something that comes off while the robot moves as planned.</summary>
/// <param name="What">"part", or the id of the chain whose rod it is.</param>
/// <param name="Speed">Of its centre of mass, m/s.</param>
/// <param name="Energy">Joules: of a part as it moves along, of a rod with its turning.</param>
/// <param name="Direction_C">Unit direction of its centre of mass, cell frame; the first part of its flight.</param>
/// <param name="Place">Where it comes off.</param>
/// <param name="T">When, seconds from the start of the cycle.</param>
/// <param name="Range">How far it flies across before it is on the floor, without bouncing or drag, metres.</param>
public sealed record Thrown(string What, double Speed, double Energy, Vec3 Direction_C, Place Place, double T, double Range)
{
    /// <summary>
    /// The part and one rod of each chain, each at the instant of its largest energy, as the controller drives the cycle; none where that has no motion. A
    /// uniform rod whose ends move with v₁ and v₂ carries m/6·(v₁² + v₁·v₂ + v₂²) (elementary mechanics).
    /// </summary>
    public static ImmutableArray<Thrown> Of(Cell cell, TimedCycle cycle)
    {
        if (cycle.ByController is not { } timed || timed.Controller.Loaded.Trace is not { } loaded || timed.Controller.Empty.Trace is not { } empty) return [];
        var plan = timed.Input.Plan;
        var r_CB = plan.Geometry.X_CB.R;
        var thrown = ImmutableArray.CreateBuilder<Thrown>();
        bool rotary = cell.Robot.Rotary.Fitted == true;

        string? part = cell.Motion.Cycles[cycle.Id].Part;
        if (part is not null && ToolInputs.Carried(cell, part, new()) is { } held && double.IsFinite(held.Mass))
        {
            double from = plan.Pick.Duration;
            Thrown Of(Instant i)
            {
                var (p, v, _, turn) = i.State;
                var spin = rotary ? turn.Speed * Vec3.UnitZ.Cross(Mat3.RotationZ(turn.Angle) * held.Centre) : Vec3.Zero;
                return Flight("part", held.Mass / 2 * (v + spin).NormSquared, r_CB * (v + spin), plan.Loaded, i, from);
            }
            thrown.Add(loaded.Instants.Select(Of).MaxBy(t => t.Energy)!);
        }

        double back = plan.Pick.Duration + timed.Controller.Loaded.Duration + plan.Place.Duration;
        var robot = plan.Loaded.Robot;
        for (int k = 0; k < robot.Chains.Length; k++)
        {
            string id = robot.ChainIds[k];
            if ((cell.Robot.Chains[id].RodMass ?? cell.Robot.Common.RodMass) is not { } mass) continue;
            int chain = k;
            Thrown Rod(Instant i, PlatformPath path, double from)
            {
                Vec3 joint = i.Speed[chain] * robot.Chains[chain].JointRate(i.Q[chain]), v = i.State.V;
                return Flight(id, mass / 6 * (joint.NormSquared + joint.Dot(v) + v.NormSquared), r_CB * ((joint + v) / 2), path, i, from);
            }
            thrown.Add(loaded.Instants.Select(i => Rod(i, plan.Loaded, plan.Pick.Duration))
                .Concat(empty.Instants.Select(i => Rod(i, plan.Empty, back))).MaxBy(t => t.Energy)!);
        }

        return thrown.ToImmutable();

        Thrown Flight(string what, double energy, Vec3 v_C, PlatformPath path, Instant i, double from)
        {
            var (p, angle) = (i.State.P, i.State.Turn.Angle);
            var at = path.ToolOf(p, angle);
            // Thrown from the height of the tool centre point: z + v_z·t − g·t²/2 = 0.
            const double G = RobotDynamics.StandardGravity;
            double flies = (v_C.Z + Math.Sqrt(v_C.Z * v_C.Z + 2 * G * Math.Max(0, at.Z))) / G;
            double speed = v_C.Norm;
            return new(
                what, speed, energy, speed > 0 ? v_C / speed : Vec3.Zero, new(at, rotary ? angle : double.NaN, p, path.LinearAxisAt), from + i.T,
                flies * Math.Sqrt(v_C.X * v_C.X + v_C.Y * v_C.Y));
        }
    }
}
