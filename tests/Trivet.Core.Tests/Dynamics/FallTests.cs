using System.Collections.Immutable;
using Trivet.Cells;
using Trivet.Dynamics;
using Trivet.Kinematics;
using Trivet.Numerics;
using Trivet.Testing;
using Xunit;

namespace Trivet.Core.Tests.Dynamics;

/// <summary>Falls against closed forms of school mechanics, against the energy, and case by case by what holds.</summary>
public class FallTests
{
    private const double G = 9.80665;

    private static readonly ChainHolding Nothing = new(Holding.Nothing, double.NaN);

    private static ImmutableArray<ChainHolding> Each(ChainHolding one, int n = 3) => [.. Enumerable.Repeat(one, n)];

    private static RobotDynamics Alike(DeltaRobot robot, ChainBodies bodies, double platform) =>
        new(robot, [.. robot.Chains.Select(_ => bodies)], new(platform, Vec3.Zero), -G * Vec3.UnitZ);

    /// <summary>Upright rails with 1 m below the carriages.</summary>
    private static RobotDynamics Rails(ChainBodies bodies) => Alike(Robots.Rail(0.35, 0.05, 0.5), bodies, 2);

    private static readonly ChainBodies Carriage = ChainBodies.Rail(1.2, 0.15, 0.06);
    private const double Weighs = 2 + 3 * (1.2 + 0.3);

    // The middle of the rail delta with its carriages 0.2 m below their feet: 0.8 m to fall.
    private static readonly Vec3 Middle = new(0, 0, -0.6);

    private static void Near(double expected, double actual, double tolerance = 1e-7) => Assert.Equal(expected, actual, tolerance);

    [Fact]
    public void All_chains_of_upright_rails_let_go_fall_freely()
    {
        var fall = Fall.From(Rails(Carriage), Each(Nothing), Middle, null);
        Assert.Equal(FallEnd.EndStop, fall.End);
        Near(Math.Sqrt(2 * 0.8 / G), fall.Time);
        for (int i = 0; i < 3; i++)
        {
            Near(-Weighs * G / 3, fall.Load[i]);
            Near(G, fall.Acceleration[i]);
            Near(1.0, fall.Q[i]);
            Near(Math.Sqrt(2 * 0.8 * G), fall.Speed[i]);
        }
        Near(-1.4, fall.P.Z);
        Near(-Math.Sqrt(2 * 0.8 * G), fall.V.Z);
        // What was lost in height is carried as speed: m·g·h.
        Near(Math.Sqrt(2 * 0.8 * G), fall.FastestPlatform);
        Near(Weighs * G * 0.8, fall.Energy, 1e-6);
    }

    [Fact]
    public void Rotors_and_friction_slow_the_fall()
    {
        var fall = Fall.From(Rails(Carriage with { RotorInertia = 0.8, Coulomb = 4 }), Each(Nothing), Middle, null);
        double a = (Weighs * G - 3 * 4) / (Weighs + 3 * 0.8);
        Near(a, fall.Acceleration.X);
        Near(Math.Sqrt(2 * 0.8 * a), fall.Speed.Y);

        // Viscous: v' = g − (b/m)·v, so v = v∞·(1 − e^(−t·g/v∞)) with v∞ = m·g/b, and the way v∞·t − v∞²/g·(1 − e^(−t·g/v∞)).
        var slow = Fall.From(Rails(Carriage with { Viscous = 10 }), Each(Nothing), Middle, null);
        double last = Weighs * G / 30, decay = 1 - Math.Exp(-slow.Time * G / last);
        Near(last * decay, slow.Speed.Z);
        Near(0.8, last * slow.Time - last * last / G * decay);
    }

    [Fact]
    public void A_brake_holds_up_to_what_it_is_stated_to_hold()
    {
        double load = Weighs * G / 3;
        var holds = Fall.From(Rails(Carriage), Each(new(Holding.Brake, load + 0.01)), Middle, null);
        Assert.Equal(FallEnd.Stays, holds.End);
        Assert.Equal((0, Vec3.Zero), (holds.Time, holds.Speed));
        var slips = Fall.From(Rails(Carriage), Each(new(Holding.Brake, load - 0.01)), Middle, null);
        Assert.Equal(FallEnd.EndStop, slips.End);
        Near(Math.Sqrt(2 * 0.8 * G), slips.Speed.X);
    }

    [Theory]
    [InlineData(Holding.Nothing)]
    [InlineData(Holding.Prop)]
    public void Nothing_and_a_prop_that_may_not_be_set_hold_nothing(Holding kind) =>
        Assert.Equal(FallEnd.EndStop, Fall.From(Rails(Carriage), Each(new(kind, 1000)), Middle, null).End);

    [Theory]
    [InlineData(Holding.Brake)]
    [InlineData(Holding.Friction)]
    [InlineData(Holding.Counterweight)]
    public void What_nobody_measured_holds_nothing(Holding kind) =>
        Assert.Equal(FallEnd.EndStop, Fall.From(Rails(Carriage), Each(new(kind, double.NaN)), Middle, null).End);

    [Fact]
    public void A_counterweight_holds_the_balance_and_lifts_when_it_is_too_heavy()
    {
        var balanced = Rails(Carriage with { Counterweight = Weighs / 3 });
        Assert.Equal(FallEnd.Stays, Fall.From(balanced, Each(new(Holding.Counterweight, 0.1)), Middle, null).End);
        var lifts = Fall.From(Rails(Carriage with { Counterweight = Weighs / 3 + 0.5 }), Each(new(Holding.Counterweight, 0.1)), Middle, null);
        Assert.Equal(FallEnd.EndStop, lifts.End);
        Near(-1, lifts.Q.X); // the upper end of its travel
        double a = -1.5 * G / (2 * Weighs + 1.5);
        Near(a, lifts.Acceleration.X);
        Near(-Math.Sqrt(2 * 1.2 * -a), lifts.Speed.X);
    }

    /// <summary>The others held, one chain falls until an end stop, or until the rods can not follow: what it loses in height it has in speed.</summary>
    [Fact]
    public void One_chain_alone_keeps_its_energy()
    {
        var ends = new HashSet<FallEnd>();
        RandomDynamics.All.Holds(40, c => KeepsEnergy(c.Dynamics, c.State, ends));
        // The random robots are of every kind: some swing.
        Assert.Equal([FallEnd.EndStop, FallEnd.SwingsBack, FallEnd.LosesHold], ends.Order());
    }

    private static void KeepsEnergy(RobotDynamics moving, MotionState state, HashSet<FallEnd> ends)
    {
        var (d, p) = (Resting(moving).WithoutFriction(), state.P);
        for (int chain = 0; chain < d.Chains.Length; chain++)
        {
            var fall = Fall.From(d, Each(Nothing, d.Chains.Length), p, chain);
            ends.Add(fall.End);
            for (int i = 0; i < d.Chains.Length; i++)
                if (i != chain) Assert.Equal((d.Robot.Inverse(p)[i], 0, 0), (fall.Q[i], fall.Speed[i], fall.Acceleration[i]));

            // The load is that of inverse dynamics; the acceleration follows from it and the energy at unit speed of this drive alone.
            Assert.Equal(0, (fall.Load - d.Inverse(p, Vec3.Zero, Vec3.Zero)).Norm, 1e-9);
            var column = PoseResult.At(d.Robot, p).DpDq.Column(chain);
            double inertia = 2 * Energies.Of(d, new(p, column, Vec3.Zero)).Kinetic;
            Assert.Equal(-fall.Load[chain] / inertia, fall.Acceleration[chain], 1e-8 * (1 + Math.Abs(fall.Acceleration[chain])));

            // Near the pose where the rods lose hold speeds grow without end.
            if (fall.End == FallEnd.LosesHold) continue;
            double before = Energies.Of(d, new(p, Vec3.Zero, Vec3.Zero)).Sum, after = Energies.Of(d, new(fall.P, fall.V, Vec3.Zero)).Sum;
            Assert.Equal(before, after, 1e-5);
        }
    }

    [Fact]
    public void All_cranks_let_go_keep_their_energy()
    {
        var robot = Robots.Crank(0.2, 0.05, 0.3, 0.7);
        var d = Alike(robot, ChainBodies.Crank(1, 0.12, 0.03, 0.06, 0.06) with { RotorInertia = 0.02 }, 1.5);
        Vec3 p = new(0.05, -0.02, -0.6);
        var fall = Fall.From(d, Each(Nothing), p, null);
        Assert.Equal(FallEnd.EndStop, fall.End);
        Assert.Equal(Energies.Of(d, new(p, Vec3.Zero, Vec3.Zero)).Sum, Energies.Of(d, new(fall.P, fall.V, Vec3.Zero)).Sum, 1e-6);
        // Chains that are not alike here arrive one after the other: exactly one stands at its stop.
        Assert.Equal(1, Enumerable.Range(0, 3).Count(i => Math.Abs(fall.Q[i] - robot.Chains[i].TravelTo) < 1e-9));
    }

    [Fact]
    public void Friction_stops_an_arm_on_its_way_down_and_takes_its_energy()
    {
        // A robot with hardly any platform: the heavy arms swing like pendulums towards hanging straight down.
        var robot = Robots.Crank(0.2, 0.05, 0.3, 0.7);
        var d = Alike(robot, ChainBodies.Crank(2, 0.2, 0.1, 0.001, 0.06) with { Coulomb = 3 }, 0.01);
        Vec3 p = new(0, 0, -0.6);
        var fall = Fall.From(d, Each(Nothing), p, null);
        Assert.Equal(FallEnd.CameToRest, fall.End);
        Assert.Equal(0, fall.Speed.Norm);
        double slid = 0;
        for (int i = 0; i < 3; i++) slid += fall.Q[i] - robot.Inverse(p)[i];
        Assert.Equal(3 * slid, Energies.Of(d, new(p, Vec3.Zero, Vec3.Zero)).Potential - Energies.Of(d, new(fall.P, Vec3.Zero, Vec3.Zero)).Potential, 1e-6);
        Assert.All([fall.Q.X, fall.Q.Y, fall.Q.Z], q => Assert.InRange(q, 0.3, robot.Chains[0].TravelTo));
        var held = d.WithoutFriction().Inverse(fall.P, Vec3.Zero, Vec3.Zero);
        Assert.True(Math.Abs(held.X) <= 3);
    }

    /// <summary>With travel enough, one carriage falls until its rod and those of the others lie in one plane.</summary>
    [Fact]
    public void A_carriage_alone_falls_until_the_rods_lose_hold()
    {
        var fall = Fall.From(Rails(Carriage), Each(Nothing), Middle, 0);
        Assert.Equal(FallEnd.LosesHold, fall.End);
        Assert.True(fall.Q.X > 0.3 && fall.Q.X < 1.0);
    }

    [Fact]
    public void A_fall_from_nowhere_is_not_computed()
    {
        var d = Rails(Carriage);
        Assert.Equal(FallEnd.NotComputed, Fall.From(d, Each(Nothing), new(3, 0, -0.6), null).End);
        Assert.Equal(FallEnd.NotComputed, Fall.From(d, Each(Nothing), new(0, 0, -2), null).End);
        Assert.Equal(FallEnd.NotComputed, Fall.From(Rails(Carriage with { Carriage = double.NaN }), Each(Nothing), Middle, null).End);
    }

    /// <summary>Nothing turns while it falls.</summary>
    private static RobotDynamics Resting(RobotDynamics d) => d.With(d.Platform with { Turning = default });
}
