using System.Collections.Immutable;
using Trivet.Numerics;

namespace Trivet.Frames;

/// <summary>A move that ends in a wait.</summary>
/// <param name="Name">Which wait: "pick" or "place".</param>
/// <param name="Index">Entry of the reaction at which the wait begins.</param>
/// <param name="Tool_C">Tool centre point then, cell frame.</param>
public sealed record WaitBegins(string Name, int Index, Vec3 Tool_C);

/// <summary>What a frame makes of one motion that repeats.</summary>
/// <param name="Name">Id of the cycle, or what the series is called.</param>
public sealed record FrameLoad(string Name, ReactionOverTime Reaction, ImmutableArray<WaitBegins> Waits);

/// <summary>The settling wait at one joint stiffness.</summary>
public readonly record struct SettlingAt(double Joint, double Wait, double Residual);

/// <summary>How long the tool must wait after its moves until it swings within the tolerance.</summary>
/// <param name="Samples">For each sampled joint stiffness, with the smallest damping: seconds, and the residual when the move ends, metres.</param>
/// <param name="Worst">The longest of them.</param>
public sealed record Settling(string Load, string Wait, double Tolerance, double Damping, ImmutableArray<SettlingAt> Samples, SettlingAt Worst)
{
    /// <summary>
    /// The wait at each of the stiffnesses given, with the smallest damping, to the tolerance less what a peak between them may rise. What the tool does is
    /// what the base does: the robot is taken as rigid.
    /// </summary>
    public static ImmutableArray<Settling> Of(FrameStudy study, JointSamples joints, FrameLoad load, double tolerance)
    {
        var origin = study.Mesh.Mount!.P;
        ImmutableArray<FrameResponse> responses = [.. joints.At.Select(k => FrameResponse.Of(study.At(k), study.DampingFrom, load.Reaction))];
        return [.. load.Waits.Select(wait =>
        {
            var arm = wait.Tool_C - origin;
            ImmutableArray<SettlingAt> samples = [.. responses.Select(r =>
                new SettlingAt(r.Joint, r.SettlingTime(wait.Index, arm, tolerance / joints.Rise), r.Swing(wait.Index, 0).At(arm).Norm))];
            return new Settling(load.Name, wait.Name, tolerance, study.DampingFrom, samples, samples.MaxBy(s => double.IsNaN(s.Wait) ? double.PositiveInfinity : s.Wait));
        })];
    }
}
