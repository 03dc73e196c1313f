using System.Collections.Immutable;
using Trivet.Assessment;
using Trivet.Cells;
using Trivet.Reach;

namespace Trivet.Views;

/// <summary>
/// The surface of the reachable volume as the 3-D view draws it. It takes most of a scene's time and rests on robot, mount and tool alone, so a view keeps it
/// while stations are moved.
/// </summary>
public sealed class SceneVolume
{
    /// <summary>Grid steps along the longest side: smooth enough at arm's length, and a third of the time of a fine one.</summary>
    private const int Resolution = 28;

    private readonly (Robot, Mount, ToolStack, double) _of;

    private SceneVolume(Assessed cell)
    {
        _of = Of(cell);
        if (cell.Geometry.Robot is not { } robot) return;
        var surface = ReachableVolume.Surface(new ReachableSet(robot), Resolution);
        if (surface.IsEmpty) return;
        double along = Scene.AlongAxis(cell);
        var numbers = ImmutableArray.CreateBuilder<double>(surface.Vertices.Length);
        for (int i = 0; i < surface.Vertices.Length / 3; i++) numbers.AddRange(Scene.Numbers(cell.Geometry.TcpFor(surface.Vertex(i), 0, along)));
        Items = [new("mesh", "volume", "/robot", numbers.DrainToImmutable(), surface.Triangles)];
    }

    /// <summary>None where the robot is incomplete or reaches nothing.</summary>
    public ImmutableArray<SceneItem> Items { get; } = [];

    /// <summary>The volume of a cell: the one before where nothing changed that it rests on.</summary>
    public static SceneVolume Following(SceneVolume? before, Assessed cell) => before is not null && before._of == Of(cell) ? before : new(cell);

    private static (Robot, Mount, ToolStack, double) Of(Assessed cell) => (cell.Cell.Robot, cell.Cell.Mount, cell.Cell.Tool, Scene.AlongAxis(cell));
}
