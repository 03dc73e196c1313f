using System.Collections.Immutable;
using Trivet.Numerics;

namespace Trivet.Files.Meshes;

/// <summary>Triangles read from a file, three corners each, metres, z up; or what is wrong with it and what would be right.</summary>
internal sealed record MeshRead(ImmutableArray<Vec3> Corners, string? Problem = null, string Remedy = "")
{
    /// <summary>More are refused: a tool part has some ten thousand.</summary>
    public const int MostTriangles = 2_000_000;

    public static MeshRead Refused(string problem, string remedy) => new([], problem, remedy);

    public static MeshRead TooMany { get; } = Refused($"it has more than {MostTriangles} triangles", "write it coarser: mass properties need no fine surface");
}
