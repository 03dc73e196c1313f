using System.Text.Json;
using Trivet.Kinematics;
using Trivet.Numerics;
using Trivet.Testing;
using Xunit;

namespace Trivet.Core.Tests.Kinematics;

/// <summary>
/// Second opinion: the MuJoCo physics engine (npm package mujoco-js 0.0.7) with tests/reference/rail-delta-six-rods.xml, where every
/// one of the six rods is a body between ball joints. Trivet knows a pair of rods as one and takes the platform's constant
/// orientation as given; the engine knows neither.
/// </summary>
public class SixRodsTests
{
    private sealed record Standing(double[] P, double Turned, double Gap);
    private sealed record Moment(double[] Heights, double[] P);
    private sealed record Motion(double Gap, double Turned, Moment[] Moments);
    private sealed record Answer(Standing[] Poses, Standing[] Path, Motion Falling);

    private static readonly DeltaRobot Robot = Robots.Rail(0.3, 0.05, 0.5, azimuths: Robots.EvenAzimuths);
    private static readonly JsonSerializerOptions CamelCase = new() { PropertyNamingPolicy = JsonNamingPolicy.CamelCase };

    private static Vec3 Of(double[] v) => new(v[0], v[1], v[2]);

    /// <summary>The model counts the carriages' heights upward.</summary>
    private static double[] Heights(Vec3 p)
    {
        var q = Robot.Inverse(p);
        return [-q.X, -q.Y, -q.Z];
    }

    [Fact]
    public void A_physics_engine_stands_where_the_forward_pose_says_and_stays_assembled()
    {
        var poses = new List<Vec3>();
        var random = new Random(11);
        for (int i = 0; i < 12; i++)
            poses.Add(new(0.24 * (random.NextDouble() - 0.5), 0.24 * (random.NextDouble() - 0.5), -0.45 - 0.2 * random.NextDouble()));

        // Once around a circle of 80 mm radius while rising and sinking by 30 mm.
        var path = new List<Vec3>();
        for (int i = 0; i <= 60; i++)
        {
            var (s, c) = Math.SinCos(i * Math.Tau / 60);
            path.Add(new(0.08 * c, 0.08 * s, -0.6 + 0.03 * Math.Sin(3 * i * Math.Tau / 60)));
        }

        string cases = Path.GetTempFileName();
        NodeProgram engine;
        try
        {
            File.WriteAllText(cases, JsonSerializer.Serialize(new { poses = poses.Select(Heights), path = path.Select(Heights) }));
            engine = NodeProgram.Run("six-rods.js", "mujoco-js", ReferenceData.Path("rail-delta-six-rods.xml"), cases);
        }
        finally
        {
            File.Delete(cases);
        }
        Assert.SkipWhen(engine.NotRun.Length > 0, engine.NotRun);

        var answer = JsonSerializer.Deserialize<Answer>(engine.Output, CamelCase)!;
        Assert.Equal((poses.Count, path.Count, 10), (answer.Poses.Length, answer.Path.Length, answer.Falling.Moments.Length));
        // The model file is written with 12 digits.
        Assert.All(answer.Poses.Zip(poses), c => AssertStands(c.First, c.Second));
        Assert.All(answer.Path.Zip(path), c => AssertStands(c.First, c.Second));

        // The engine's own motion: its joints are stiff springs, which give by some micrometres.
        Assert.InRange(answer.Falling.Gap, 0, 5e-6);
        Assert.InRange(answer.Falling.Turned, 0, 5e-5);
        Assert.All(answer.Falling.Moments, m =>
            Assert.InRange((ForwardPose.Of(Robot, -Of(m.Heights)).Working - Of(m.P)).Norm, 0, 1e-5));

        static void AssertStands(Standing standing, Vec3 p)
        {
            Assert.InRange(standing.Gap, 0, 1e-12);
            Assert.InRange(standing.Turned, 0, 1e-9);
            Assert.InRange((Of(standing.P) - p).Norm, 0, 1e-9);
        }
    }
}
