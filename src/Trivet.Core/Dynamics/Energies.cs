using Trivet.Kinematics;
using Trivet.Numerics;

namespace Trivet.Dynamics;

/// <summary>
/// Energy of everything that moves, joules. While a motion runs, d(Kinetic + Potential)/dt = power of the drives − power lost to friction.
/// </summary>
/// <param name="Kinetic">Rotors included.</param>
/// <param name="Potential">Counted from the base frame's origin for the platform and the rods, from each chain's foot for carriage or arm.</param>
public readonly record struct Energies(double Kinetic, double Potential)
{
    public double Sum => Kinetic + Potential;

    /// <summary>At one instant; the accelerations do not matter. Not a number out of reach.</summary>
    public static Energies Of(RobotDynamics dynamics, in MotionState state)
    {
        var (p, v, _, turn) = state;
        if (!dynamics.Robot.InPlane(p)) return new(double.NaN, double.NaN);
        var platform = dynamics.Platform;
        var turning = platform.Turning;
        var rods = dynamics.Rods;
        var gravity = dynamics.Gravity_B;

        var centre = turning.At(turn.Angle);
        double off2 = centre.X * centre.X + centre.Y * centre.Y;
        var centreVelocity = v + turn.Speed * Vec3.UnitZ.Cross(centre);
        double kinetic = platform.Mass / 2 * v.NormSquared + turning.Mass / 2 * centreVelocity.NormSquared
            + (turning.Inertia - turning.Mass * off2) / 2 * turn.Speed * turn.Speed;
        double potential = -platform.Mass * gravity.Dot(p + platform.Centre) - turning.Mass * gravity.Dot(p + centre);
        for (int i = 0; i < dynamics.Chains.Length; i++)
        {
            var body = dynamics.Chains[i];
            var chain = dynamics.Robot.Chains[i];
            var m = ChainMotion.Of(chain, p, v);
            kinetic += body.Inertia / 2 * m.Speed * m.Speed + rods.KineticEnergy(body.Pair, m.Speed * m.Path, v);
            potential -= gravity.Dot(
                body.WeightAtJoint(chain) * (m.Joint - chain.Foot)
                + body.Pair * (rods.JointWeight * m.Joint + rods.PlatformWeight * (p + chain.B)));
        }
        return new(kinetic, potential);
    }

    /// <summary>Power that the drives give and that friction takes at one instant, watts. Negative given: the motion drives the drives.</summary>
    public static (double Given, double Lost) Power(RobotDynamics dynamics, in MotionState state)
    {
        var demand = dynamics.Demand(state);
        var turning = dynamics.Platform.Turning;
        double given = demand.RotaryTorque * state.Turn.Speed, lost = turning.FrictionAt(state.Turn.Speed) * state.Turn.Speed;
        for (int i = 0; i < dynamics.Chains.Length; i++)
        {
            given += demand.Force[i] * demand.Speed[i];
            lost += dynamics.Chains[i].FrictionAt(demand.Speed[i]) * demand.Speed[i];
        }
        return (given, lost);
    }
}
