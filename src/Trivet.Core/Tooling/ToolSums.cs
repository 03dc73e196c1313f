using System.Collections.Immutable;
using Trivet.Cells;
using Trivet.Findings;
using Trivet.Numerics;

namespace Trivet.Tooling;

/// <summary>
/// The tool's mass properties, alone and with a part. All in the platform's axes at rotary angle 0, from the platform reference point, which is the
/// mechanical interface (ISO 9787); SI.
/// </summary>
/// <param name="Part">Id of the part that is carried; null for none.</param>
/// <param name="Tcp">Tool centre point; z is not a number where not stated.</param>
public sealed record ToolSum(string? Part, MassProperties Body, Vec3 Tcp)
{
    /// <summary>Tensor about the mechanical interface, kg·m².</summary>
    public Mat3 AtInterface => Body.About(Vec3.Zero);

    /// <summary>Tensor about the tool centre point, kg·m².</summary>
    public Mat3 AtTcp => Body.About(Tcp);

    /// <summary>Centre of mass from the tool centre point, metres.</summary>
    public Vec3 CentreFromTcp => Body.Centre - Tcp;
}

/// <summary>The stack summed: empty first, then with each part of the brief.</summary>
public sealed record ToolSums(ToolRead Stack, ImmutableArray<ToolSum> Sums)
{
    public ToolSum Empty => Sums[0];

    /// <summary>With the heaviest part; empty where the brief has none with a mass.</summary>
    public ToolSum Heaviest => Sums.MaxBy(s => s.Body.Mass) ?? Empty;

    /// <summary>Pointers of the parts whose inertia nothing says.</summary>
    public ImmutableArray<string> WithoutInertia => [.. Stack.Elements.Where(e => !e.Body.InertiaKnown).Select(e => e.Pointer)];

    /// <summary>Null while a mass is missing (the reading lists it) or something can not be.</summary>
    public static ToolSums? Of(Cell cell, Reading reading)
    {
        var stack = ToolInputs.Read(cell, reading);
        var tcp = ToolInputs.Tcp(cell, new());
        reading.Used("/tool/tcpX", cell.Tool.TcpX);
        reading.Used("/tool/tcpY", cell.Tool.TcpY);
        reading.Used("/tool/tcpZ", cell.Tool.TcpZ);
        if (!reading.Complete || stack.Problems.Length > 0) return null;
        var alone = stack.Sum(_ => true);
        var sums = ImmutableArray.CreateBuilder<ToolSum>();
        sums.Add(new(null, alone, tcp));
        reading.Used("/brief/parts", string.Join('\n', cell.Brief.Parts.Keys));
        foreach (var (id, _) in cell.Brief.Parts.InOrder())
        {
            // A part without a mass is the brief's matter.
            var own = new Reading();
            var carried = ToolInputs.Carried(cell, id, own);
            reading.Used(own);
            if (own.Complete && carried is { } body) sums.Add(new(id, alone + body, tcp));
        }

        return new(stack, sums.ToImmutable());
    }
}
