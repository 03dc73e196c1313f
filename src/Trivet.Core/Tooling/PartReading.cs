using System.Collections.Immutable;
using Trivet.Cells;
using Trivet.Findings;
using Trivet.Numerics;

namespace Trivet.Tooling;

/// <summary>Reads one part of the stack, in its own frame: origin at the middle of its upper face.</summary>
internal sealed class PartReading(ToolPart part, string at, Reading reading, ImmutableArray<Contradiction>.Builder problems)
{
    private readonly ImmutableArray<string>.Builder _lacking = ImmutableArray.CreateBuilder<string>();

    /// <summary>What the stated shape needs and does not have.</summary>
    public ImmutableArray<string> Lacking => _lacking.ToImmutable();

    /// <summary>As stated; else the size of a round shape that lies, which follows from its diameters.</summary>
    public double Height()
    {
        double stated = Or(part.Height, "height", double.NaN);
        if (stated < 0) Wrong("height", ToolReasons.Negative);
        if (!double.IsNaN(stated)) return stated;
        bool lies = reading.Or(part.Axis, at + "/axis", SolidAxis.Upright) != SolidAxis.Upright;
        return part.Shape switch
        {
            SolidKind.Sphere or SolidKind.Cylinder or SolidKind.Tube or SolidKind.Ring when lies || part.Shape == SolidKind.Sphere => Or(part.Diameter, "diameter", 0),
            SolidKind.Ring => Math.Max(0, (Or(part.Diameter, "diameter", 0) - Or(part.InnerDiameter, "innerDiameter", 0)) / 2),
            _ => 0,
        };
    }

    public MassProperties Body(double height)
    {
        reading.Used(at + "/shape", part.Shape);
        var shape = part.Shape switch
        {
            null or SolidKind.Given => null,
            SolidKind.Mesh => Mesh(),
            _ => Shape(height),
        };
        double density = Or(part.Density, "density", double.NaN);
        if (density <= 0) Wrong("density", ToolReasons.NotPositive);
        double mass = part.Mass is null && shape is { } solid && !double.IsNaN(density)
            ? Or(part.Mass, "mass", density * solid.Mass)
            : reading.Need(part.Mass, at + "/mass");
        if (mass < 0) Wrong("mass", ToolReasons.Negative);

        var middle = shape?.Centre ?? new Vec3(0, 0, -height / 2);
        var centre = new Vec3(Or(part.CentreX, "centreX", middle.X), Or(part.CentreY, "centreY", middle.Y), Or(part.CentreZ, "centreZ", middle.Z));
        if (part.Shape == SolidKind.Given) return new(mass, centre, Given());
        return shape is { } known ? known.WithMass(mass) with { Centre = centre } : MassProperties.WithoutInertia(mass, centre);
    }

    private MassProperties? Shape(double height)
    {
        var axis = reading.Or(part.Axis, at + "/axis", SolidAxis.Upright);
        double diameter = part.Shape == SolidKind.Box ? 1 : Size(part.Diameter, "diameter");
        double inner = part.Shape is SolidKind.Tube or SolidKind.Ring ? Size(part.InnerDiameter, "innerDiameter") : 0;
        double length = part.Shape is SolidKind.Cylinder or SolidKind.Tube ? axis switch
        {
            SolidAxis.AlongX => Size(part.Width, "width"),
            SolidAxis.AlongY => Size(part.Depth, "depth"),
            _ => Size(part.Height, "height"),
        } : 1;
        double width = part.Shape == SolidKind.Box ? Size(part.Width, "width") : 1, depth = part.Shape == SolidKind.Box ? Size(part.Depth, "depth") : 1;
        double tall = part.Shape == SolidKind.Box ? Size(part.Height, "height") : 1;
        if (inner >= diameter)
        {
            Wrong("innerDiameter", ToolReasons.InnerTooLarge);
            return null;
        }
        if (!(diameter > 0 && inner >= 0 && length > 0 && width > 0 && depth > 0 && tall > 0)) return null;

        var body = part.Shape switch
        {
            SolidKind.Box => SolidShapes.Box(width, depth, tall),
            SolidKind.Cylinder => SolidShapes.Cylinder(diameter, length),
            SolidKind.Tube => SolidShapes.Tube(diameter, inner, length),
            SolidKind.Ring => SolidShapes.Ring(diameter, inner),
            _ => SolidShapes.Sphere(diameter),
        };
        body = axis switch
        {
            SolidAxis.AlongX => body.Turned(Mat3.RotationY(Math.PI / 2)),
            SolidAxis.AlongY => body.Turned(Mat3.RotationX(-Math.PI / 2)),
            _ => body,
        };
        return body.MovedBy(new(0, 0, -height / 2));
    }

    private MassProperties? Mesh()
    {
        var mesh = part.Mesh;
        if (Need(mesh.File, "mesh/file") && mesh.Volume is null)
        {
            reading.Used(at + "/mesh/volume", null);
            problems.Add(new(at + "/mesh/file", ToolReasons.MeshNotRead));
            return null;
        }

        double volume = Size(mesh.Volume, "mesh/volume");
        var centre = new Vec3(Size(mesh.CentreX, "mesh/centreX", any: true), Size(mesh.CentreY, "mesh/centreY", any: true), Size(mesh.CentreZ, "mesh/centreZ", any: true));
        var inertia = Tensor(
            Size(mesh.GyrationX, "mesh/gyrationX"), Size(mesh.GyrationY, "mesh/gyrationY"), Size(mesh.GyrationZ, "mesh/gyrationZ"),
            Or(mesh.ProductXY, "mesh/productXY", 0), Or(mesh.ProductYZ, "mesh/productYZ", 0), Or(mesh.ProductZX, "mesh/productZX", 0), "mesh/gyrationX");
        return volume > 0 && centre.IsFinite ? new(volume, centre, volume * inertia) : null;
    }

    private Mat3 Given() => Tensor(
        Size(part.InertiaX, "inertiaX", any: true), Size(part.InertiaY, "inertiaY", any: true), Size(part.InertiaZ, "inertiaZ", any: true),
        Or(part.ProductXY, "productXY", 0), Or(part.ProductYZ, "productYZ", 0), Or(part.ProductZX, "productZX", 0), "inertiaX");

    /// <summary>A tensor from moments and products ∫xy dm. A body has one only if ∫x² dm, ∫y² dm, ∫z² dm and the products form a matrix without a
    /// negative eigenvalue (elementary mechanics).</summary>
    private Mat3 Tensor(double x, double y, double z, double xy, double yz, double zx, string field)
    {
        double xx = (y + z - x) / 2, yy = (z + x - y) / 2, zz = (x + y - z) / 2;
        double slack = 1e-9 * (x + y + z);
        double minors = Math.Min(xx * yy - xy * xy, Math.Min(yy * zz - yz * yz, zz * xx - zx * zx));
        double determinant = new Mat3(new(xx, xy, zx), new(xy, yy, yz), new(zx, yz, zz)).Determinant();
        if (xx < -slack || yy < -slack || zz < -slack || minors < -slack * slack - 1e-9 * (x + y + z) * (x + y + z)
            || determinant < -1e-9 * Math.Pow(Math.Abs(x + y + z), 3)) Wrong(field, ToolReasons.NotAnInertia);
        return new(new(x, -xy, -zx), new(-xy, y, -yz), new(-zx, -yz, z));
    }

    /// <summary>A size that the shape needs; not a number, and told, where it is not stated. Above zero unless any value will do.</summary>
    private double Size(double? value, string name, bool any = false)
    {
        reading.Used($"{at}/{name}", value);
        if (value is not { } v)
        {
            _lacking.Add($"{at}/{name}");
            return double.NaN;
        }
        if (!any && v <= 0) Wrong(name, ToolReasons.NotPositive);
        return v;
    }

    private bool Need(string? text, string name)
    {
        reading.Used($"{at}/{name}", text);
        if (!string.IsNullOrWhiteSpace(text)) return true;
        if (part.Mesh.Volume is null) _lacking.Add($"{at}/{name}");
        return false;
    }

    private double Or(double? value, string name, double fallback) => reading.Or(value, $"{at}/{name}", fallback);

    private void Wrong(string name, Reason reason)
    {
        var wrong = new Contradiction($"{at}/{name}", reason);
        if (!problems.Contains(wrong)) problems.Add(wrong);
    }
}
