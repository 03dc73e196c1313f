using Trivet.Cells;
using Trivet.Dynamics;
using Trivet.Kinematics;
using Trivet.Numerics;
using Trivet.Testing;
using Xunit;

namespace Trivet.Core.Tests.Dynamics;

/// <summary>
/// The forces against two other routes that share no formula with them: the positions of all masses differentiated numerically
/// (d'Alembert), and Lagrange's equation from the energies; robots without any symmetry, mounts at a tilt, the rotary axis turning.
/// </summary>
public class DynamicsPropertiesTests
{
    /// <summary>Masses that stand for all bodies, as functions of platform position and rotary angle. A rod becomes two points (Gauss's rule,
    /// exact for what is quadratic along it).</summary>
    private static List<(double Mass, Vec3 At)> Points(RobotDynamics d, Vec3 p, double angle)
    {
        var q = d.Robot.Inverse(p);
        var turning = d.Platform.Turning;
        List<(double, Vec3)> points = [(d.Platform.Mass, p + d.Platform.Centre), (turning.Mass, p + Mat3.RotationZ(angle) * turning.Centre)];
        for (int i = 0; i < d.Chains.Length; i++)
        {
            var (chain, body) = (d.Robot.Chains[i], d.Chains[i]);
            var joint = chain.Joint(q[i]);
            foreach (double at in new[] { 0.5 - Math.Sqrt(1.0 / 12), 0.5 + Math.Sqrt(1.0 / 12) })
                points.Add((body.RodMass, (1 - at) * joint + at * (p + chain.B)));
            if (chain.Family == RobotFamily.RailDelta)
            {
                points.Add((body.Carriage, joint));
                points.Add((body.Counterweight, 2 * chain.Foot - joint));
            }
            else
            {
                points.Add((body.ArmMass, chain.Foot + body.ArmCentre / chain.Arm * (joint - chain.Foot)));
            }
        }
        return points;
    }

    /// <summary>What a drive coordinate carries beyond the points: rotor, and the arm's own inertia about its centre of mass.</summary>
    private static double Beyond(RobotDynamics d, int i) => d.Chains[i].RotorInertia
        + (d.Robot.Family == RobotFamily.RailDelta ? 0 : d.Chains[i].ArmInertia - d.Chains[i].ArmMass * d.Chains[i].ArmCentre * d.Chains[i].ArmCentre);

    [Fact]
    public void Forces_agree_with_positions_differentiated_numerically() => RandomDynamics.All.Holds(300, c =>
    {
        const double h = 2e-4, step = 1e-5;
        var d = c.Dynamics.WithoutFriction();
        var (p, v, a, turn) = c.State;
        var demand = d.Demand(c.State);

        Vec3 P(double t) => p + t * v + t * t / 2 * a;
        double Angle(double t) => turn.Angle + t * turn.Speed + t * t / 2 * turn.Acceleration;
        var times = new[] { -2 * h, -h, 0, h, 2 * h };
        var along = times.Select(t => Points(d, P(t), Angle(t))).ToArray();
        var readings = times.Select(t => d.Robot.Inverse(P(t))).ToArray();
        double Second(Func<int, double> f) => (-f(0) + 16 * f(1) - 30 * f(2) + 16 * f(3) - f(4)) / (12 * h * h);

        for (int axis = 0; axis < 3; axis += d.Robot.Planar ? 2 : 1)
        {
            var e = step * (axis == 0 ? Vec3.UnitX : axis == 1 ? Vec3.UnitY : Vec3.UnitZ);
            var rates = Rates(Points(d, p + e, turn.Angle), Points(d, p - e, turn.Angle), step);
            var drive = (d.Robot.Inverse(p + e) - d.Robot.Inverse(p - e)) / (2 * step);
            double work = Work(rates), forces = 0;
            for (int i = 0; i < d.Chains.Length; i++)
            {
                work += Beyond(d, i) * Second(k => readings[k][i]) * drive[i];
                forces += demand.Force[i] * drive[i];
            }
            Assert.Equal(work, forces, 2e-5 * (1 + Math.Abs(work)));
        }

        double spare = d.Platform.Turning.Inertia - d.Platform.Turning.Mass * (d.Platform.Turning.Centre with { Z = 0 }).NormSquared;
        double torque = Work(Rates(Points(d, p, turn.Angle + step), Points(d, p, turn.Angle - step), step)) + spare * turn.Acceleration;
        Assert.Equal(torque, demand.RotaryTorque, 1e-6);

        double Work(Vec3[] rates)
        {
            double sum = 0;
            for (int k = 0; k < rates.Length; k++)
            {
                Vec3 second = new(Second(t => along[t][k].At.X), Second(t => along[t][k].At.Y), Second(t => along[t][k].At.Z));
                sum += along[2][k].Mass * (second - d.Gravity_B).Dot(rates[k]);
            }
            return sum;
        }
    });

    private static Vec3[] Rates(List<(double, Vec3 At)> plus, List<(double, Vec3 At)> minus, double step) =>
        [.. plus.Zip(minus, (one, other) => (one.At - other.At) / (2 * step))];

    /// <summary>Lagrange: d/dt ∂T/∂v − ∂(T − V)/∂p, by central differences of the energies.</summary>
    [Fact]
    public void Forces_agree_with_Lagranges_equation_from_the_energies() => RandomDynamics.All.Holds(300, c =>
    {
        const double h = 1e-4;
        var d = c.Dynamics.WithoutFriction();
        var (p, v, a, turn) = c.State;
        var demand = d.Demand(c.State);
        var pose = PoseResult.At(d.Robot, p);

        for (int axis = 0; axis < 3; axis += d.Robot.Planar ? 2 : 1)
        {
            var e = axis == 0 ? Vec3.UnitX : axis == 1 ? Vec3.UnitY : Vec3.UnitZ;
            double Momentum(double t)
            {
                MotionState then = new(p + t * v + t * t / 2 * a, v + t * a, a, new(turn.Angle + t * turn.Speed + t * t / 2 * turn.Acceleration, turn.Speed + t * turn.Acceleration));
                // The kinetic energy is quadratic in the velocity, so a difference over any step is exact.
                return (Energies.Of(d, then with { V = then.V + e }).Kinetic - Energies.Of(d, then with { V = then.V - e }).Kinetic) / 2;
            }
            double Lagrangian(double s)
            {
                var there = Energies.Of(d, new(p + s * e, v, a, turn));
                return there.Kinetic - there.Potential;
            }
            double needed = Slope(Momentum) - Slope(Lagrangian);
            double given = pose.DqDp.Column(axis).Dot(demand.Force);
            Assert.Equal(needed, given, 1e-6 * (1 + Math.Abs(needed)));
        }

        static double Slope(Func<double, double> f) => (8 * (f(h) - f(-h)) - (f(2 * h) - f(-2 * h))) / (12 * h);
    });

    [Fact]
    public void Forward_dynamics_undoes_the_inverse() => RandomDynamics.All.Holds(1000, c =>
    {
        var demand = c.Dynamics.Demand(c.State);
        var a = c.Dynamics.Forward(c.State.P, c.State.V, demand.Force, c.State.Turn);
        Assert.Equal(0, (a - c.State.A).Norm, 1e-9);
    });

    [Fact]
    public void The_equation_of_motion_says_the_same_and_its_mass_is_symmetric_and_positive() => RandomDynamics.All.Holds(1000, c =>
    {
        var d = c.Dynamics.WithoutFriction();
        var (p, v, a, turn) = c.State;
        var equation = d.Equation(p, v, turn);
        var pushed = PoseResult.At(d.Robot, p).DqDp.Transpose() * d.Demand(c.State).Force;
        Assert.Equal(0, (equation.Mass * a + equation.Coriolis + equation.Weight - pushed).Norm, 1e-9 * (1 + pushed.Norm));
        Assert.Equal(0, (equation.Mass.Row0 - equation.Mass.Column(0)).Norm + (equation.Mass.Row1 - equation.Mass.Column(1)).Norm, 1e-13);
        Assert.True(Spectrum.Symmetric(equation.Mass).Z > 0);
    });

    [Fact]
    public void Without_friction_forces_are_affine_in_acceleration_and_quadratic_in_velocity() => RandomDynamics.All.Holds(300, c =>
    {
        var d = c.Dynamics.WithoutFriction();
        var (p, v, a, _) = c.State;
        Vec3 weight = d.Inverse(p, Vec3.Zero, Vec3.Zero), one = d.Inverse(p, v, a), moving = d.Inverse(p, v, Vec3.Zero);
        Assert.Equal(0, (d.Inverse(p, v, 3 * a) - (one + 2 * (one - moving))).Norm, 1e-9 * (1 + one.Norm));
        Assert.Equal(0, (d.Inverse(p, -3 * v, Vec3.Zero) - (weight + 9 * (moving - weight))).Norm, 1e-9 * (1 + moving.Norm));
    });

    [Fact]
    public void A_rotary_axis_at_rest_changes_nothing_but_the_mass() => RandomDynamics.All.Holds(100, c =>
    {
        var (p, v, a, turn) = c.State;
        var still = c.Dynamics.Demand(c.State with { Turn = new(turn.Angle) });
        Assert.Equal(0, (still.Force - c.Dynamics.Inverse(p, v, a)).Norm, 1e-11);
    });

    /// <summary>Along a closed path the drives' work is what friction took, and at every instant the change of energy: composite Simpson over
    /// a smooth motion.</summary>
    [Fact]
    public void Work_of_the_drives_is_change_of_energy_and_friction() => RandomDynamics.All.Holds(40, c =>
    {
        const int n = 2000;
        const double duration = 0.3;
        var d = c.Dynamics;
        var middle = c.State.P;
        double y = d.Robot.Planar ? 0 : 0.01;
        MotionState At(double t)
        {
            double w = Math.Tau / duration;
            var (s, cos) = Math.SinCos(w * t);
            var (s2, c2) = Math.SinCos(2 * w * t);
            return new(
                middle + new Vec3(0.02 * s, y * (cos - 1), 0.01 * s2),
                w * new Vec3(0.02 * cos, -y * s, 0.02 * c2),
                w * w * new Vec3(-0.02 * s, -y * cos, -0.04 * s2),
                new(1.2 * s, 1.2 * w * cos, -1.2 * w * w * s));
        }

        // Friction jumps where a drive turns back, which no smooth rule integrates; viscous friction alone does not.
        d = new(d.Robot, [.. d.Chains.Select(b => b with { Coulomb = 0 })], d.Platform with { Turning = d.Platform.Turning with { Friction = 0 } }, d.Gravity_B);
        double h = duration / n, given = 0, lost = 0;
        double from = Energies.Of(d, At(0)).Sum;
        for (int k = 0; k <= n; k++)
        {
            var power = Energies.Power(d, At(k * h));
            double weight = h / 3 * (k == 0 || k == n ? 1 : k % 2 == 1 ? 4 : 2);
            given += weight * power.Given;
            lost += weight * power.Lost;
            if (k != n / 4) continue;
            // A quarter of the way: the even multiples so far, closed by half an end weight.
            double so = given - weight / 2 * power.Given - (lost - weight / 2 * power.Lost);
            Assert.Equal(Energies.Of(d, At(k * h)).Sum - from, so, 1e-8);
        }
        Assert.True(lost > 0.01);
        Assert.Equal(lost, given, 1e-9);
    });

    [Fact]
    public void Out_of_reach_or_off_the_plane_nothing_is_a_number()
    {
        RandomDynamics.Spatial.Holds(5, c =>
        {
            MotionState far = c.State with { P = new(5, 0, -1) };
            Assert.False(c.Dynamics.Demand(far).Force.IsFinite);
            Assert.False(c.Dynamics.Inverse(far.P, far.V, far.A).IsFinite);
            Assert.False(c.Dynamics.Forward(far.P, far.V, Vec3.Zero).IsFinite);
            Assert.False(double.IsFinite(Energies.Of(c.Dynamics, far).Sum));
            Assert.False(c.Dynamics.Inverse(c.State.P, Vec3.NaN, c.State.A).IsFinite);
        });
        RandomDynamics.Planar.Holds(5, c =>
        {
            MotionState off = c.State with { P = c.State.P with { Y = 1e-3 } };
            Assert.False(c.Dynamics.Demand(off).Force.IsFinite);
            Assert.False(c.Dynamics.Inverse(off.P, off.V, off.A).IsFinite);
            Assert.False(Loads.Of(c.Dynamics, off).Force_B.IsFinite);
        });
    }

    [Fact]
    public void Each_chain_needs_its_masses() => Assert.Throws<ArgumentException>(() =>
        new RobotDynamics(Robots.Rail(0.35, 0.05, 0.5), [ChainBodies.Rail(1, 0.1, 0.06)], new(1, Vec3.Zero), -Vec3.UnitZ));
}
