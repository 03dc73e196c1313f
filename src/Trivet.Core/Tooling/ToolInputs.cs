using System.Collections.Immutable;
using Trivet.Cells;
using Trivet.Findings;
using Trivet.Numerics;

namespace Trivet.Tooling;

/// <summary>One part of the stack in computing form.</summary>
/// <param name="Top">Height of its upper face from the platform reference point, metres; zero or below.</param>
/// <param name="Height">How far it reaches down, metres; zero where not stated.</param>
/// <param name="Turns">It hangs below the rotary axis and turns with it.</param>
/// <param name="Body">From the platform reference point, in the platform's axes at rotary angle 0. Its inertia is not a number where nothing says it.</param>
/// <param name="Lacking">Fields that its stated shape still needs.</param>
public sealed record ToolElement(
    string Id, ToolPartKind? Kind, double Top, double Height, bool Turns, MassProperties Body, ImmutableArray<string> Lacking)
{
    public string Pointer => ToolInputs.Pointer(Id);
}

/// <summary>The stack as read. A missing mass makes the reading incomplete.</summary>
public sealed record ToolRead(ImmutableArray<ToolElement> Elements, ImmutableArray<Contradiction> Problems)
{
    /// <summary>What hangs from the upper face of a part: itself, and all below it.</summary>
    public IEnumerable<ToolElement> From(ToolElement part) => Elements.SkipWhile(e => e.Id != part.Id).Where(e => e.Id == part.Id || e.Top < part.Top);

    public MassProperties Sum(Func<ToolElement, bool> of) => Elements.Where(of).Aggregate(default(MassProperties), (sum, e) => sum + e.Body);
}

/// <summary>
/// Reads the tool stack. Parts hang one below the other from the platform reference point, which is the mechanical interface (ISO 9787); one that hangs
/// beside starts at the same face as the part before it. A part's mass is stated, or its density times the volume of shape or mesh. Without a shape its
/// centre of mass is at half its height (it has no other place), and its inertia is not known.
/// </summary>
public static class ToolInputs
{
    public static string Pointer(string id) => $"/tool/parts/{id}";

    public static ToolRead Read(Cell cell, Reading reading)
    {
        var problems = ImmutableArray.CreateBuilder<Contradiction>();
        var elements = ImmutableArray.CreateBuilder<ToolElement>();
        bool axisFitted = reading.Or(cell.Robot.Rotary.Fitted, "/robot/rotary/fitted", false), turns = false;
        double top = 0, hangs = 0;
        reading.Used("/tool/parts", string.Join('\n', cell.Tool.Parts.Keys));
        foreach (var (id, part) in cell.Tool.Parts.InOrder())
        {
            string at = Pointer(id);
            reading.Used(at + "/order", part.Order);
            reading.Used(at + "/kind", part.Kind);
            if (!reading.Or(part.Beside, at + "/beside", false)) top = hangs;
            var fields = new PartReading(part, at, reading, problems);
            double height = fields.Height();
            var body = fields.Body(height);
            elements.Add(new(id, part.Kind, -top, height, turns, body.MovedBy(-top * Vec3.UnitZ), fields.Lacking));
            hangs = Math.Max(hangs, top + height);
            turns |= axisFitted && part.Kind == ToolPartKind.RotaryAxis;
        }

        return new(elements.ToImmutable(), problems.ToImmutable());
    }

    /// <summary>
    /// A part in the gripper: a block of its size that hangs at the tool centre point, in the platform's axes at rotary angle 0. Sizes not stated count as
    /// zero. Null where the brief has no such part.
    /// </summary>
    public static MassProperties? Carried(Cell cell, string part, Reading reading)
    {
        string at = $"/brief/parts/{part}";
        if (!cell.Brief.Parts.TryGetValue(part, out var carried))
        {
            reading.Used("/brief/parts", string.Join('\n', cell.Brief.Parts.Keys));
            return null;
        }

        double mass = reading.Need(carried.Mass, at + "/mass");
        double width = reading.Or(carried.Size.Width, at + "/size/width", 0), depth = reading.Or(carried.Size.Depth, at + "/size/depth", 0);
        double height = reading.Or(carried.Size.Height, at + "/size/height", 0);
        return SolidShapes.Box(1, 1, 1) with
        {
            Mass = mass,
            Centre = Tcp(cell, reading) - height / 2 * Vec3.UnitZ,
            Inertia = mass / 12 * new Mat3(
                new(depth * depth + height * height, 0, 0), new(0, width * width + height * height, 0), new(0, 0, width * width + depth * depth)),
        };
    }

    public static Vec3 Tcp(Cell cell, Reading reading) => new(
        reading.Or(cell.Tool.TcpX, "/tool/tcpX", 0), reading.Or(cell.Tool.TcpY, "/tool/tcpY", 0), reading.Need(cell.Tool.TcpZ, "/tool/tcpZ"));
}
