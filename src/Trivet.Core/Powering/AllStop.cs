using System.Collections.Immutable;
using Trivet.Cells;
using Trivet.Drives;
using Trivet.Dynamics;
using Trivet.Findings;
using Trivet.Motion;

namespace Trivet.Powering;

/// <summary>
/// All axes brought to rest together from the moment of a cycle at which they hold most energy, as in an emergency stop of category 1: nothing then takes
/// what another gives, and all of it comes back to the supply, less what transmissions and windings take.
/// </summary>
/// <param name="At">Seconds from the start of the cycle.</param>
/// <param name="Kinetic">Energy of all that moves, rotors included, J.</param>
/// <param name="Falling">Energy from coming down while it stops at the planned deceleration, J.</param>
/// <param name="Time">Seconds of the stop: at so much more than the planned deceleration as a stop after a fault takes.</param>
/// <param name="Returned">What comes back to the supply, J.</param>
/// <param name="Run">The supply during the stop.</param>
public sealed record AllStop(double At, double Kinetic, double Falling, double Time, double Returned, double Start, SupplyRun Run)
{
    public double Energy => Kinetic + Falling;

    /// <summary>Power at the beginning of the stop, W: speed falls evenly, so power does.</summary>
    public double PeakPower => PeakOf(Returned, Time);

    public double Highest => Run.Highest.Value;

    /// <summary>Energy burnt in the braking resistor, J.</summary>
    public double Braking => Run.Energies.Braking;

    public static double PeakOf(double energy, double time) => 2 * energy / time;

    /// <summary>The stop of an energy into a supply.</summary>
    /// <param name="start">Voltage before, V.</param>
    public static SupplyRun Into(Supply supply, double energy, double time, double start) =>
        SupplySimulation.Run(supply, [0, time], [-PeakOf(energy, time), 0], start, 1);

    /// <summary>Null where the cycle has no motion or its masses are not described.</summary>
    /// <param name="slowing">Planned deceleration of a chain's and of the rotary axis; infinite where not limited.</param>
    /// <param name="factor">By how much harder a stop after a fault is.</param>
    /// <param name="share">Of the energy that comes back.</param>
    public static AllStop? Of(TimedCycle cycle, Supply supply, double start, Func<string, double> slowing, double factor, double share)
    {
        if (cycle is not { Input: { Loaded: { } loaded, Empty: { } empty } input, ByController: { } timed }) return null;
        var controller = timed.Laws.Single(l => l.Law == TimingLaw.Controller);
        if (controller.Loaded.Trace is not { } with || controller.Empty.Trace is not { } without) return null;
        double wait = input.Plan.Pick.Duration, between = wait + with.Duration + input.Plan.Place.Duration;
        double[] limits = [.. input.Axes.Select(a => slowing(a.Axis))];
        AllStop? worst = null;
        Look(loaded, with, wait);
        Look(empty, without, between);
        return worst is null ? null : worst with { Run = Into(supply, worst.Returned, worst.Time, start) };

        void Look(RobotDynamics dynamics, MoveTrace move, double begins)
        {
            foreach (var instant in move.Instants)
            {
                double kinetic = Energies.Of(dynamics, instant.State).Kinetic, planned = 0;
                for (int i = 0; i < limits.Length; i++)
                {
                    double speed = input.Axes[i].Axis == AxisCapacity.Rotary ? instant.State.Turn.Speed : instant.Speed[i];
                    planned = Math.Max(planned, Math.Abs(speed) / limits[i]);
                }
                if (!(planned > 0)) continue;
                // Speed falls evenly, so half of what it would come down at full speed.
                double falling = Math.Max(0, -Rising(dynamics, instant.State) * planned / 2);
                if (worst is null || kinetic + falling > worst.Energy)
                    worst = new(begins + instant.T, kinetic, falling, planned / factor, share * (kinetic + falling), start, null!);
            }
        }
    }

    /// <summary>Power against gravity, W, by a difference over a microsecond each way.</summary>
    private static double Rising(RobotDynamics dynamics, MotionState state)
    {
        const double Step = 1e-6;
        double Potential(double t) => Energies.Of(dynamics, state with { P = state.P + t * state.V }).Potential;
        return (Potential(Step) - Potential(-Step)) / (2 * Step);
    }
}
