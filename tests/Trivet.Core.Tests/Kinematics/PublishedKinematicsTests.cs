using Trivet.Cells;
using Trivet.Kinematics;
using Trivet.Numerics;
using Trivet.Testing;
using Xunit;

namespace Trivet.Core.Tests.Kinematics;

/// <summary>
/// Values K1 to K26 of tests/reference/published-kinematics.md, which names the source of each: printed examples in
/// R. L. Williams II, "The Delta Parallel Robot: Kinematics Solutions" (2016), and numbers derived from textbook formulas outside
/// this project. Lengths there in metres (W) or millimetres, here in metres throughout.
/// </summary>
public class PublishedKinematicsTests
{
    private const double AngleDegrees = 1e-5, Length = 1e-6, Millimetres = 1e-9;

    private static readonly double WBase = 0.567 * Math.Sqrt(3) / 6, WPlatform = 0.076 * Math.Sqrt(3) / 3;
    private static readonly DeltaRobot W = Robots.Crank(WBase, WPlatform, 0.524, 1.244);
    private static readonly DeltaRobot Q = Robots.Crank(0.2, 0.05, 0.3, 0.7);
    private static readonly DeltaRobot Upright = Robots.Rail(0.35, 0.05, 0.5);
    private static readonly DeltaRobot Inclined = Robots.Rail(0.4, 0.06, 0.45, 30);

    private static Vec3 InDegrees(Vec3 q) => 180 / Math.PI * q;
    private static Vec3 Rad(double a, double b, double c) => Math.PI / 180 * new Vec3(a, b, c);
    private static Vec3 Mm(double a, double b, double c) => 1e-3 * new Vec3(a, b, c);

    private static void Near(Vec3 expected, Vec3 actual, double tolerance) =>
        Assert.True((expected - actual).Norm <= tolerance * Math.Sqrt(3), $"expected {expected}, got {actual}, off by {(expected - actual).Norm}");

    private static void Near(double expected, double actual, double tolerance) =>
        Assert.True(Math.Abs(expected - actual) <= tolerance, $"expected {expected}, got {actual}");

    [Theory]
    [InlineData("K1", 0, 0, -0.9, -20.547278, -20.547278, -20.547278)]
    [InlineData("K2", 0.3, 0.5, -1.1, 47.504053, -11.568548, 21.378386)]
    [InlineData("K6", 0.2, -0.1, -1.0, -11.684719, -13.328540, 10.883512)]
    [InlineData("K7", 0.1, 0.25, -1.2, 30.922695, 4.896063, 15.074332)]
    public void Inverse_pose_of_a_crank_delta(string id, double x, double y, double z, double a, double b, double c)
    {
        Assert.NotEmpty(id);
        Near(new(a, b, c), InDegrees(W.Inverse(new(x, y, z))), AngleDegrees);
    }

    [Theory]
    [InlineData(0, 0, -0.9, -20.5, -20.5, -20.5)]
    [InlineData(0.3, 0.5, -1.1, 47.5, -11.6, 21.4)]
    public void Inverse_pose_agrees_with_the_printed_digits_K1_K2(double x, double y, double z, double a, double b, double c) =>
        Near(new(a, b, c), InDegrees(W.Inverse(new(x, y, z))), 0.05);

    [Fact]
    public void Forward_pose_in_the_centre_K3()
    {
        var pose = ForwardPose.Of(W, Vec3.Zero);
        Near(new(0, 0, -1.064452), pose.Working, Length);
        Near(new(0, 0, 1.064452), pose.Mirror, Length);
        Near(-1.065, pose.Working.Z, 1e-3);
    }

    [Fact]
    public void Rounding_the_geometry_shifts_the_angles_as_computed_K4() =>
        Near(new(47.521782, -11.566214, 21.390980), InDegrees(Robots.Crank(0.164, 0.044, 0.524, 1.244).Inverse(new(0.3, 0.5, -1.1))), AngleDegrees);

    [Fact]
    public void Arm_folded_inward_is_the_far_side_K5() =>
        Assert.All(W.Chains, c => Near(-144.288433, c.Inverse(new(0, 0, -0.9), farSide: true) * 180 / Math.PI, AngleDegrees));

    [Fact]
    public void Forward_pose_has_both_roots_K8()
    {
        var pose = ForwardPose.Of(W, Rad(-20, 5, 40));
        Near(new(0.331510, -0.436326, -1.006828), pose.Working, Length);
        Near(new(-0.264748, 0.375456, 0.887726), pose.Mirror, Length);
    }

    [Fact]
    public void Forward_pose_K9() => Near(-1.513817, ForwardPose.Of(W, Rad(45, 45, 45)).Working.Z, Length);

    [Fact]
    public void Jacobian_in_the_centre_K10_and_joint_rates_K12()
    {
        var pose = PoseResult.At(W, new(0, 0, -0.9));
        Near(new(0, -0.396806, 0.396806), pose.DpDq.Row0, Length);
        Near(new(0.458192, -0.229096, -0.229096), pose.DpDq.Row1, Length);
        Near(new(-0.129028, -0.129028, -0.129028), pose.DpDq.Row2, Length);
        Near(new(0.561168, 0.561168, 0.223483), pose.Gains, Length);
        Near(2.511013, pose.Condition, Length);
        Near(0.070377, pose.Gains.X * pose.Gains.Y * pose.Gains.Z, Length);
        Near(-0.070377, pose.DpDq.Determinant(), Length);
        Near(new(0, -1.260061, 1.260061), pose.DqDp * Vec3.UnitX, Length);
        Near(new(2.583421, 2.583421, 2.583421), pose.DqDp * -Vec3.UnitZ, Length);
    }

    [Fact]
    public void Jacobian_off_the_centre_K11()
    {
        var pose = PoseResult.At(W, new(0.3, 0.5, -1.1));
        Near(new(-0.042684, -0.440042, 0.570752), pose.DpDq.Row0, Length);
        Near(new(0.748910, -0.187192, -0.294927), pose.DpDq.Row1, Length);
        Near(new(0.122785, -0.440413, -0.162504), pose.DpDq.Row2, Length);
        Near(2.812951, pose.Condition, Length);
        Near(-0.208505, pose.DpDq.Determinant(), Length);
    }

    [Fact]
    public void Closed_form_on_the_axis_K13()
    {
        var p = ForwardPose.Of(W, Rad(30, 30, 30)).Working;
        Near(-1.365867, p.Z, Length);
        Near(-0.589939, PoseResult.At(W, p).DpDq.Row2.Dot(new(1, 1, 1)), Length);
    }

    [Fact]
    public void Arm_and_rod_in_line_lose_the_rank_K14()
    {
        Near(0, PoseResult.At(W, new(0, 0, -1.763936 + 1e-6)).Serial.X, 1e-2);
        Assert.True(double.IsNaN(W.Inverse(new(0, 0, -1.763936 - 1e-6)).X));
        Assert.True(PoseResult.At(W, new(0, 0, -1.763936 + 1e-6)).Gains.Z < 1e-2);
    }

    [Fact]
    public void Integers_of_a_3_4_5_triangle_K15()
    {
        var robot = Robots.Crank(0.25, 0.05, 0.25, 0.75);
        Near(-0.6, ForwardPose.Of(robot, Vec3.Zero).Working.Z, 1e-15);
        Near(Vec3.Zero, robot.Inverse(new(0, 0, -0.6)), 1e-15);
    }

    [Fact]
    public void Inverse_pose_K16()
    {
        Near(new(11.333189, 11.333189, 11.333189), InDegrees(Q.Inverse(Mm(0, 0, -600))), AngleDegrees);
        Near(new(27.337202, 6.905508, 28.708161), InDegrees(Q.Inverse(Mm(100, 50, -650))), AngleDegrees);
    }

    [Fact]
    public void A_drive_step_moves_the_platform_K17()
    {
        var pose = PoseResult.At(Q, Mm(100, 50, -650));
        var step = new Vec3(Robots.Degrees(0.01), 0, 0);
        var moved = ForwardPose.Of(Q, pose.Q + step).Working - pose.P;
        Near(Mm(0.001081, 0.056697, -0.016565), moved, Millimetres);
        // First order: the second-order part of this step is a few nanometres.
        Near(moved.Norm, pose.StepMovement([step.X, 0, 0]), 1e-8);
        Near(1.906020, pose.Condition, Length);
    }

    [Fact]
    public void Rail_delta_in_the_centre_is_exact_K18()
    {
        Near(Mm(200, 200, 200), Upright.Inverse(Mm(0, 0, -600)), 1e-15);
        var pose = ForwardPose.Of(Upright, Mm(200, 200, 200));
        Near(Mm(0, 0, -600), pose.Working, 1e-15);
        Near(Mm(0, 0, 200), pose.Mirror, 1e-15);
    }

    [Fact]
    public void Inverse_pose_of_a_rail_delta_K19_K20()
    {
        Near(Mm(204.525601, 166.898494, 246.131260), Upright.Inverse(Mm(60, 0, -600)), Millimetres);
        var p = Mm(100, -80, -650);
        var q = Upright.Inverse(p);
        Near(Mm(212.278627, 235.800140, 389.926019), q, Millimetres);
        Near(p, ForwardPose.Of(Upright, q).Working, 1e-14);
        Near(Mm(-118.019864, 84.293628, 85.025458), ForwardPose.Of(Upright, q).Mirror, Millimetres);
    }

    [Fact]
    public void Rail_delta_Jacobian_in_the_centre_K21()
    {
        var pose = PoseResult.At(Upright, Mm(0, 0, -600));
        double slope = 0.75;
        for (int i = 0; i < 3; i++)
        {
            var (s, c) = Math.SinCos(Robots.Degrees(Robots.PublishedAzimuths[i]));
            var row = new[] { pose.DqDp.Row0, pose.DqDp.Row1, pose.DqDp.Row2 }[i];
            Near(new(-slope * c, -slope * s, -1), row, 1e-14);
        }
        Near(new(1.732051, 0.918559, 0.918559), pose.DqDp.SingularValues(), Length);
    }

    [Fact]
    public void Isotropic_rail_delta_K22()
    {
        var robot = Robots.Rail(0.408248290 + 0.05, 0.05, 0.5);
        var pose = PoseResult.At(robot, new(0, 0, -0.6));
        Near(new(0.577350, 0.577350, 0.577350), pose.Gains, Length);
        Near(1, pose.Dexterity, 1e-8);
        Near(54.735610, Math.Acos(-pose.Rods.Row0.Unit().Z) * 180 / Math.PI, AngleDegrees);
        // Orthogonal rods span the unit cube.
        Near(1, pose.Parallel, 1e-8);
    }

    [Fact]
    public void Rails_inclined_by_30_degrees_K23()
    {
        var pose = PoseResult.At(Inclined, Mm(0, 0, -500));
        Near(Mm(155.213284, 155.213284, 155.213284), pose.Q, Millimetres);
        Near(new(1.393430, 1.393430, 0.707194), pose.Gains, Length);
        Near(1.970363, pose.Condition, Length);
        var off = PoseResult.At(Inclined, Mm(50, 30, -520));
        Near(Mm(192.221161, 141.469666, 191.285373), off.Q, Millimetres);
        Near(2.144279, off.Condition, Length);
    }

    [Fact]
    public void Sideways_swing_and_lean_of_the_rods_K24()
    {
        var pose = PoseResult.At(Upright, Mm(100, -80, -650));
        Vec3 sideways = new(11.53696, -13.80181, 2.21011), vertical = new(28.90258, 34.06530, 58.65782);
        for (int i = 0; i < 3; i++)
        {
            Near(sideways[i], Upright.Chains[i].CrossBarSwing(pose.P, pose.Q[i]) * 180 / Math.PI, AngleDegrees);
            var rod = new[] { pose.Rods.Row0, pose.Rods.Row1, pose.Rods.Row2 }[i];
            Near(vertical[i], Math.Acos(-rod.Unit().Z) * 180 / Math.PI, AngleDegrees);
        }
    }

    [Fact]
    public void A_long_rod_or_a_shifted_carriage_moves_the_platform_K25_K26()
    {
        var q = Mm(200, 200, 200);
        var at = ForwardPose.Of(Upright, q).Working;
        Near(Mm(0, 0.111122, -0.041653), ForwardPose.Of(LongerBy(0.1e-3, 0), q).Working - at, Millimetres);
        Near(Mm(0, 0.044444, -0.016664), ForwardPose.Of(Upright, q + Mm(0.05, 0, 0)).Working - at, Millimetres);

        var p = Mm(100, -80, -650);
        q = Upright.Inverse(p);
        Near(Mm(0.018122, 0.097466, -0.061097), ForwardPose.Of(LongerBy(0.1e-3, 0), q).Working - p, Millimetres);
        Near(Mm(0.035460, -0.026722, -0.119550), ForwardPose.Of(LongerBy(0.1e-3, 0, 1, 2), q).Working - p, Millimetres);

        static DeltaRobot LongerBy(double more, params int[] which) => Upright with
        {
            Chains = [.. Upright.Chains.Select((c, i) => which.Contains(i) ? c with { Rod = c.Rod + more } : c)],
        };
    }
}
