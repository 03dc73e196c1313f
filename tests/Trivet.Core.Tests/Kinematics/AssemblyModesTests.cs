using Trivet.Kinematics;
using Trivet.Numerics;
using Trivet.Testing;
using Xunit;

namespace Trivet.Core.Tests.Kinematics;

public class AssemblyModesTests
{
    [Fact]
    public void Every_inverse_mode_is_listed_once_and_one_is_chosen() => RandomRobots.All.Holds(300, c =>
    {
        var modes = AssemblyModes.Inverse(c.Robot, c.P);
        Assert.Equal(1 << c.Robot.Chains.Length, modes.Length);
        Assert.Equal(modes.Length, modes.Select(m => string.Join(',', m.Chains)).Distinct().Count());
        Assert.Equal(c.Robot.Inverse(c.P), Assert.Single(modes, m => m.Chosen).Q);
    });

    [Fact]
    public void Every_inverse_mode_closes_the_loops_again() => RandomRobots.All.Holds(300, c =>
    {
        foreach (var mode in AssemblyModes.Inverse(c.Robot, c.P))
        {
            var pose = ForwardPose.Of(c.Robot, mode.Q);
            Assert.True(Math.Min((pose.Working - c.P).Norm, (pose.Mirror - c.P).Norm) < 1e-9, $"{string.Join(',', mode.Chains)}: {pose}");
        }
    });

    [Fact]
    public void The_forward_mode_names_what_each_chain_is_in()
    {
        // K20: both roots of a rail delta. In the mirror root the platform hangs above the carriages.
        var robot = Robots.Rail(0.35, 0.05, 0.5);
        var modes = AssemblyModes.Forward(robot, robot.Inverse(new(0.1, -0.08, -0.65)));
        Assert.Equal((ModeReason.Working, PlatformMode.Below), (modes[0].Reason, modes[0].Platform));
        Assert.Equal([ChainMode.CarriageAbove, ChainMode.CarriageAbove, ChainMode.CarriageAbove], modes[0].Chains);
        Assert.Equal((ModeReason.PastParallelSingularity, PlatformMode.Above), (modes[1].Reason, modes[1].Platform));
        Assert.Equal([ChainMode.CarriageBelow, ChainMode.CarriageBelow, ChainMode.CarriageBelow], modes[1].Chains);
    }

    [Fact]
    public void A_folded_arm_is_past_the_serial_singularity()
    {
        var robot = Robots.Crank(0.2, 0.05, 0.3, 0.7);
        Vec3 p = new(0, 0, -0.6);
        var folded = AssemblyModes.Inverse(robot, p).Single(m => m.Chains.SequenceEqual([ChainMode.ElbowIn, ChainMode.ElbowOut, ChainMode.ElbowOut]));
        Assert.Equal(ModeReason.PastSerialSingularity, folded.Reason);
        Assert.Contains(AssemblyModes.Forward(robot, folded.Q), m => m.Chains.SequenceEqual(folded.Chains) && (m.P - p).Norm < 1e-12 && !m.Chosen);
    }

    [Fact]
    public void Out_of_reach_and_off_the_plane_do_not_close()
    {
        Assert.All(AssemblyModes.Inverse(Robots.Rail(0.35, 0.05, 0.5), new(0.6, 0, -0.6)), m => Assert.Equal(ModeReason.DoesNotClose, m.Reason));
        Assert.All(AssemblyModes.Inverse(Robots.Rail(0.35, 0.05, 0.5, azimuths: [0, 180]), new(0, 0.01, -0.6)), m => Assert.Equal(ModeReason.DoesNotClose, m.Reason));
    }
}
