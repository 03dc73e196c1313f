using System.Collections.Immutable;
using Trivet.Numerics;

namespace Trivet.Frames;

/// <summary>What one foot puts on the floor over a motion, the worst of the sampled stiffnesses, newtons.</summary>
/// <param name="Weight">Downward, under weights alone with the softest joints.</param>
/// <param name="Largest">Largest downward.</param>
/// <param name="Smallest">Smallest downward; negative where the foot is pulled up.</param>
/// <param name="Level">Largest across, in the floor's plane.</param>
/// <param name="Moment">Largest about level axes that a held foot passes to its anchors, N·m: it comes on top of the pull.</param>
/// <param name="Pull">Largest on its anchors together: upward force, and what of the moment is a couple over their distance; negative while the foot is pressed down.</param>
public readonly record struct FootLoad(string Foot, Vec3 P, double Weight, double Largest, double Smallest, double Level, double Moment, double Pull);

/// <summary>
/// Loads of the feet, and how far the frame is from tipping over an edge of its footprint.
/// <para>
/// Tipping: about each edge of the convex hull of the feet the moment of all weights, over the largest moment with which the rest of the load turns the
/// frame over that edge. The rest is what inertia adds, times the load factor, enlarged by as much as the frame's swinging enlarges the feet's loads. People who lean on the
/// frame, collisions and a floor that gives way are not in it.
/// </para>
/// </summary>
/// <param name="Safety">Weights over the rest, the least of all edges and times; infinite where nothing turns it over.</param>
public sealed record FootLoads(ImmutableArray<FootLoad> Feet, double Safety)
{
    /// <param name="factor">By how much harder the motion is than the reaction given: a stop after a fault. Weight counts once.</param>
    /// <param name="anchorSpacing">Over which a foot's anchors take its moment, metres; not a number where not known: then the pull is without it.</param>
    public static FootLoads Of(FrameStudy study, JointSamples joints, ReactionOverTime reaction, double factor, double anchorSpacing = double.NaN)
    {
        reaction = reaction.Harder(factor);
        var feet = study.Mesh.Feet;
        double[] largest = new double[feet.Length], smallest = new double[feet.Length], level = new double[feet.Length], moment = new double[feet.Length], pull = new double[feet.Length];
        Array.Fill(pull, double.NegativeInfinity);
        Array.Fill(smallest, double.PositiveInfinity);
        var weight = study.Soft.FeetUnderWeight;
        var edges = Edges([.. feet.Select(f => f.P)]);
        double safety = edges.IsEmpty ? double.NaN : double.PositiveInfinity;
        var now = new FootForce[feet.Length];
        foreach (double joint in joints.At)
        {
            var response = FrameResponse.Of(study.At(joint), study.DampingFrom, reaction);
            var still = response.Frame.FeetUnderWeight;
            double[] holding = [.. edges.Select(e => Moment(e, still.AsSpan()))];
            for (int i = 0; i < reaction.Time.Length; i++)
            {
                response.Feet(i, now);
                for (int f = 0; f < feet.Length; f++)
                {
                    var (force, turning) = now[f];
                    largest[f] = Math.Max(largest[f], -force.Z);
                    smallest[f] = Math.Min(smallest[f], -force.Z);
                    level[f] = Math.Max(level[f], (force with { Z = 0 }).Norm);
                    double m = (turning with { Z = 0 }).Norm;
                    moment[f] = Math.Max(moment[f], m);
                    pull[f] = Math.Max(pull[f], force.Z + (anchorSpacing > 0 ? m / anchorSpacing : 0));
                }

                for (int e = 0; e < edges.Length; e++)
                {
                    double turning = holding[e] - Moment(edges[e], now);
                    if (double.IsNaN(turning)) safety = double.NaN;
                    else if (turning > 0) safety = Math.Min(safety, Math.Max(holding[e], 0) / turning);
                }
            }
        }

        return new([.. feet.Select((f, i) => new FootLoad(f.Id, f.P, -weight[i].Force.Z, largest[i], smallest[i], level[i], moment[i], pull[i]))], safety);

        // Moment about an edge of all that the feet put on the floor, what held feet pass on by turning included: positive while the frame stands.
        double Moment((Vec3 Point, Vec3 Inward) edge, ReadOnlySpan<FootForce> forces)
        {
            var along = Vec3.UnitZ.Cross(edge.Inward);
            double sum = 0;
            for (int i = 0; i < forces.Length; i++) sum += ((feet[i].P - edge.Point).Cross(forces[i].Force) + forces[i].Moment).Dot(along);
            return sum;
        }
    }

    /// <summary>Edges of the convex hull of the feet seen from above: a point, and the level direction inward.</summary>
    private static ImmutableArray<(Vec3 Point, Vec3 Inward)> Edges(ImmutableArray<Vec3> feet)
    {
        var edges = ImmutableArray.CreateBuilder<(Vec3, Vec3)>();
        foreach (var a in feet)
        {
            foreach (var b in feet)
            {
                if ((b - a).Norm < 1e-6) continue;
                var inward = Vec3.UnitZ.Cross(b - a).Unit();
                if (feet.All(p => (p - a).Dot(inward) > -1e-9) && feet.Any(p => (p - a).Dot(inward) > 1e-6)) edges.Add((a, inward));
            }
        }

        return edges.ToImmutable();
    }
}
