using System.Text.Json;
using Trivet.Dynamics;
using Trivet.Kinematics;
using Trivet.Numerics;
using Trivet.Testing;
using Xunit;

namespace Trivet.Core.Tests.Dynamics;

/// <summary>
/// Second opinion, live: the MuJoCo physics engine (npm package mujoco-js 0.0.7) with tests/reference/rail-delta-six-rods.xml, where every one
/// of the six rods is a body between ball joints, 27 degrees of freedom in all. Rail forces for motions of the platform.
/// </summary>
public class SixRodForcesTests
{
    private sealed record Case(double[] Heights, double[] V, double[] A);
    private sealed record Moving(double[] Forces, double Left);
    private sealed record Answer(Moving[] Moving);

    private static readonly JsonSerializerOptions CamelCase = new() { PropertyNamingPolicy = JsonNamingPolicy.CamelCase };

    [Fact]
    public void A_physics_engine_needs_the_same_forces_at_the_rails()
    {
        var robot = Robots.Rail(0.3, 0.05, 0.5, azimuths: Robots.EvenAzimuths);
        var bodies = ChainBodies.Rail(0.8, 0.05, 0.08);
        var dynamics = new RobotDynamics(robot, [bodies, bodies, bodies], new(1, Vec3.Zero), -RobotDynamics.StandardGravity * Vec3.UnitZ);
        var random = new Random(23);
        Vec3 Any(double x, double y, double z) => new(x * (random.NextDouble() - 0.5), y * (random.NextDouble() - 0.5), z * (random.NextDouble() - 0.5));
        MotionState[] states = [.. Enumerable.Range(0, 10).Select(_ => new MotionState(Any(0.24, 0.24, 0.2) - 0.55 * Vec3.UnitZ, Any(3, 3, 3), Any(60, 60, 60)))];

        string cases = Path.GetTempFileName();
        NodeProgram engine;
        try
        {
            File.WriteAllText(cases, JsonSerializer.Serialize(
                new { poses = Array.Empty<double[]>(), path = new[] { Heights(robot, new(0, 0, -0.6)) }, moving = states.Select(s => new Case(Heights(robot, s.P), Of(s.V), Of(s.A))) }, CamelCase));
            engine = NodeProgram.Run("six-rods.js", "mujoco-js", ReferenceData.Path("rail-delta-six-rods.xml"), cases);
        }
        finally
        {
            File.Delete(cases);
        }
        Assert.SkipWhen(engine.NotRun.Length > 0, engine.NotRun);

        var answer = JsonSerializer.Deserialize<Answer>(engine.Output, CamelCase)!;
        Assert.Equal(states.Length, answer.Moving.Length);
        Assert.All(answer.Moving.Zip(states), c =>
        {
            // The engine's change of its Jacobian comes from differences, and the model file is written with 12 digits.
            Assert.InRange(c.First.Left, 0, 1e-6);
            var force = -dynamics.Demand(c.Second).Force; // the model counts upward
            for (int i = 0; i < 3; i++) Assert.Equal(force[i], c.First.Forces[i], 1e-7);
        });
    }

    private static double[] Of(Vec3 v) => [v.X, v.Y, v.Z];

    private static double[] Heights(DeltaRobot robot, Vec3 p) => Of(-robot.Inverse(p));
}
