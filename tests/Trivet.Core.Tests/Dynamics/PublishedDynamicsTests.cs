using System.Text.Json;
using Trivet.Dynamics;
using Trivet.Kinematics;
using Trivet.Numerics;
using Trivet.Testing;
using Xunit;

namespace Trivet.Core.Tests.Dynamics;

/// <summary>
/// D1 to D9 of tests/reference/published-dynamics.md, derived from textbook formulas outside this project, and the rail forces of
/// tests/reference/rail-forces.json, computed independently by virtual work and by the MuJoCo physics engine.
/// </summary>
public class PublishedDynamicsTests
{
    private const double Printed = 5.1e-7; // half of the last digit given

    private static readonly Vec3 Gravity = -RobotDynamics.StandardGravity * Vec3.UnitZ;

    // D4 to D6: geometry W, platform and load 1.5 kg, uniform arm of 0.8 kg, both rods of a leg together 0.25 kg.
    private static readonly DeltaRobot W = Robots.Crank(0.567 * Math.Sqrt(3) / 6, 0.076 * Math.Sqrt(3) / 3, 0.524, 1.244);
    private static readonly RobotDynamics Crank = Alike(W, ChainBodies.Crank(0.8, 0.524 / 2, 0.8 * 0.524 * 0.524 / 3, 0.125, double.NaN), 1.5);

    // D7 to D9: geometry K18, load 2.0 kg, carriage 1.2 kg, rods 0.3 kg a leg.
    private static readonly RobotDynamics Rail = Alike(Robots.Rail(0.35, 0.05, 0.5), ChainBodies.Rail(1.2, 0.15, double.NaN), 2.0);

    private static RobotDynamics Alike(DeltaRobot robot, ChainBodies bodies, double platform) =>
        new(robot, [bodies, bodies, bodies], new(platform, Vec3.Zero), Gravity);

    private static void Near(Vec3 expected, Vec3 actual, double tolerance = Printed)
    {
        for (int i = 0; i < 3; i++) Assert.Equal(expected[i], actual[i], tolerance);
    }

    [Fact]
    public void Kinetic_energy_of_a_rod_D1_D2()
    {
        Vec3 v = new(0, 3, 0);
        Assert.Equal(0.3, RodShares.Consistent.KineticEnergy(0.2, Vec3.Zero, v), 1e-15);
        Assert.Equal(0.45, RodShares.Halves.KineticEnergy(0.2, Vec3.Zero, v), 1e-15);
        Assert.Equal(0.3, RodShares.TwoThirds.KineticEnergy(0.2, Vec3.Zero, v), 1e-15);
        Assert.Equal(0.3, RodShares.Consistent.KineticEnergy(0.2, v, -v), 1e-15);
        Assert.Equal(0.9, RodShares.TwoThirds.KineticEnergy(0.2, v, -v), 1e-15);
        Assert.Equal(0.9, RodShares.Halves.KineticEnergy(0.2, v, -v), 1e-15);
    }

    /// <summary>D3: the consistent form is the integral over the rod, here by a Gauss–Legendre rule that is exact for it (Abramowitz and
    /// Stegun 25.4.30, n = 2, from memory).</summary>
    [Fact]
    public void Consistent_shares_are_the_integral_over_the_rod_D3()
    {
        Vec3 aJoint = new(3, -2, 7), aPlatform = new(-1, 5, 2), joint = Vec3.Zero, platform = Vec3.Zero;
        foreach (double at in new[] { 0.5 - Math.Sqrt(1.0 / 12), 0.5 + Math.Sqrt(1.0 / 12) })
        {
            var carried = 0.2 / 2 * ((1 - at) * aJoint + at * aPlatform - Gravity);
            joint += (1 - at) * carried;
            platform += at * carried;
        }
        var shares = RodShares.Consistent;
        Near(joint, 0.2 * (shares.Joint * aJoint + shares.Coupling * aPlatform - shares.JointWeight * Gravity), 1e-14);
        Near(platform, 0.2 * (shares.Coupling * aJoint + shares.Platform * aPlatform - shares.PlatformWeight * Gravity), 1e-14);
    }

    [Fact]
    public void Holding_torque_in_the_centre_D4()
    {
        Near(new(-4.898679, -4.898679, -4.898679), Crank.Inverse(new(0, 0, -0.9), Vec3.Zero, Vec3.Zero));
        Near(new(-4.941003, -4.941003, -4.941003), Crank.With(RodShares.TwoThirds).Inverse(new(0, 0, -0.9), Vec3.Zero, Vec3.Zero));
    }

    [Fact]
    public void Holding_torque_off_centre_D5()
    {
        Vec3 p = new(0.3, 0.5, -1.1);
        Near(new(0.435240, -10.741083, -5.500213), Crank.Inverse(p, Vec3.Zero, Vec3.Zero));
        Near(new(0.140085, -10.410973, -5.500391), Crank.With(RodShares.TwoThirds).Inverse(p, Vec3.Zero, Vec3.Zero));
    }

    [Fact]
    public void Moving_crank_delta_D6()
    {
        MotionState state = new(new(0.2, -0.1, -1.0), new(1, 0.5, -0.8), new(20, -10, 30));
        var demand = Crank.Demand(state);
        Near(new(2.644353, 0.673911, 2.300119), demand.Speed);
        Near(new(-69.127108, -69.131555, -15.618198), demand.Acceleration);
        Near(new(-32.536810, -35.606624, 14.450032), demand.Force);
        Near(new(-33.489978, -36.659587, 16.650808), Crank.With(RodShares.Halves).Demand(state).Force);
        Near(new(-32.929580, -35.885517, 14.863217), Crank.With(RodShares.TwoThirds).Demand(state).Force);
        Assert.Equal(-76.797708, Energies.Power(Crank, state).Given, Printed);
    }

    [Fact]
    public void Holding_force_of_a_rail_delta_D7_D8()
    {
        var centre = Rail.Inverse(new(0, 0, -0.6), Vec3.Zero, Vec3.Zero);
        Near(new(-21.247742, -21.247742, -21.247742), centre);
        Assert.Equal(-63.743225, centre.X + centre.Y + centre.Z, 1e-12);
        var aside = Rail.Inverse(new(0.1, -0.08, -0.65), Vec3.Zero, Vec3.Zero);
        Near(new(-26.092057, -23.635322, -14.015845), aside);
        Assert.Equal(-63.743225, aside.X + aside.Y + aside.Z, 1e-12);
    }

    [Fact]
    public void Moving_rail_delta_D9()
    {
        var demand = Rail.Demand(new(new(0.1, -0.08, -0.65), new(0.5, 0.3, -0.4), new(10, 5, -8)));
        Near(new(0.665009, 0.040503, 0.826432), demand.Speed);
        Near(new(13.734766, 2.498217, 19.419521), demand.Acceleration);
        Near(new(16.420692, -33.041251, 20.608214), demand.Force);
    }

    private sealed record RailState(double[] P, double[] V, double[] A, double[] Qd, double[] Qdd, double[] OwnForce, double[] MujocoForce);
    private sealed record RailForces(RailState[] States);

    private static readonly JsonSerializerOptions CamelCase = new() { PropertyNamingPolicy = JsonNamingPolicy.CamelCase };

    [Fact]
    public void Rail_forces_agree_with_an_independent_computation_and_with_a_physics_engine()
    {
        var forces = JsonSerializer.Deserialize<RailForces>(File.ReadAllText(ReferenceData.Path("rail-forces.json")), CamelCase)!;
        Assert.Equal(100, forces.States.Length);
        var dynamics = Alike(Robots.Rail(0.3, 0.05, 0.5, azimuths: Robots.EvenAzimuths), ChainBodies.Rail(0.8, 0.05, 0.08), 1.0);
        Assert.All(forces.States, s =>
        {
            var demand = dynamics.Demand(new(Of(s.P), Of(s.V), Of(s.A)));
            // The file counts upward.
            Near(-Of(s.Qd), demand.Speed, 1e-11);
            Near(-Of(s.Qdd), demand.Acceleration, 1e-10);
            Near(-Of(s.OwnForce), demand.Force, 1e-9);
            Near(-Of(s.MujocoForce), demand.Force, 2e-9); // printed with nine decimals
            Near(demand.Force, dynamics.Inverse(Of(s.P), Of(s.V), Of(s.A)), 1e-12);
        });
    }

    private static Vec3 Of(double[] v) => new(v[0], v[1], v[2]);
}
