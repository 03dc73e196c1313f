using System.Collections.Immutable;
using Trivet.Assessment;
using Trivet.Findings;

namespace Trivet.Views;

/// <summary>What the 3-D view draws: plain primitives in the cell frame, metres. A script draws them and computes nothing.</summary>
/// <param name="Kind">"box", "capsule", "mesh" or "point".</param>
/// <param name="Role">"frame", "robot", "rod", "platform", "tool", "station", "volume", "worst": the style sheet's business.</param>
/// <param name="Pointer">The part of the description it stands for, or empty.</param>
/// <param name="Numbers">box: centre, half extents, yaw; capsule: from, to, radius; point: position; mesh: vertices as triples.</param>
/// <param name="Triangles">mesh: vertex indices, three a triangle.</param>
public sealed record SceneItem(string Kind, string Role, string Pointer, ImmutableArray<double> Numbers, ImmutableArray<int> Triangles);

/// <summary>The whole scene, or the part of it that moves with the tool.</summary>
public sealed record Scene(ImmutableArray<SceneItem> Items)
{
    /// <summary>What stands still.</summary>
    public static Scene Fixed(Assessed cell, Finding? marked = null) => throw new NotImplementedException();

    /// <summary>Carriages or arms, rods, platform and tool with the tool centre point at p_C; empty items when out of reach.</summary>
    public static Scene Moving(Assessed cell, double x_C, double y_C, double z_C, double rotary, double linearAxis) => throw new NotImplementedException();
}
