using System.Collections.Immutable;
using Trivet.Kinematics;
using Trivet.Numerics;

namespace Trivet.Reach;

/// <summary>What a map shows at each place of a plane.</summary>
public enum MapQuantity
{
    /// <summary>Distance of the nearest reading to the end of its travel, over half the travel: 1 in the middle of all, 0 at an end.</summary>
    TravelLeft,
    /// <summary>Condition number of ∂q/∂p, 2-norm: 1 at best, growing towards a singular pose.</summary>
    Condition,
    /// <summary>Largest swing of a rod in its ball joints, radians.</summary>
    Swing,
}

/// <summary>A flat plane of tool-centre-point positions, cell frame: <c>Origin + u·U + v·V</c>. U, V and Origin are at right angles, metres.</summary>
public readonly record struct WorkingPlane(Vec3 Origin, Vec3 U, Vec3 V)
{
    /// <summary>At a height: u is x of the cell, v is y.</summary>
    public static WorkingPlane Level(double z_C) => new(new(0, 0, z_C), Vec3.UnitX, Vec3.UnitY);

    /// <summary>The plane that the tool centre point of a two-chain robot moves in: u along x of its base, v along z.</summary>
    public static WorkingPlane OfRobot(CellGeometry cell, double rotary = 0, double linearAxis = 0)
    {
        var across = cell.X_CB.R.Column(1);
        return new(across.Dot(cell.TcpFor(Vec3.Zero, rotary, linearAxis)) * across, cell.X_CB.R.Column(0), cell.X_CB.R.Column(2));
    }

    public Vec3 At(double u, double v) => Origin + u * U + v * V;

    /// <summary>Where a place of the cell is seen on the plane, at right angles to it.</summary>
    public (double U, double V) Of(Vec3 p_C) => (U.Dot(p_C), V.Dot(p_C));
}

/// <summary>
/// A quantity over a plane of the cell, on a grid of tool-centre-point positions. Row by row: the value at column i and row j
/// is <c>Values[j·Columns + i]</c>, at u = FromU + i·Step, v = FromV + j·Step. Not a number outside the reach.
/// </summary>
/// <param name="FromU">u of the first column, metres.</param>
/// <param name="FromV">v of the first row, metres.</param>
/// <param name="Step">Distance of neighbours, metres.</param>
public sealed record PlaneMap(MapQuantity Quantity, WorkingPlane Plane, double FromU, double FromV, double Step, int Columns, int Rows, ImmutableArray<double> Values)
{
    public double At(int column, int row) => Values[row * Columns + column];

    /// <summary>
    /// Maps a quantity with the rotary axis and the linear axis at the positions given. Empty (no columns) where the robot is not
    /// complete or nothing is reached in that plane.
    /// </summary>
    /// <param name="joints">Ball joints of the chains, in their order; needed for the swing only.</param>
    /// <param name="resolution">Columns along the longer side.</param>
    public static PlaneMap Of(
        CellGeometry cell, WorkingPlane plane, MapQuantity quantity, int resolution = 96, ImmutableArray<BallJoint> joints = default, double rotary = 0, double linearAxis = 0)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(resolution, 4);
        if (quantity == MapQuantity.Swing && joints.IsDefaultOrEmpty) throw new ArgumentException("A map of the swing needs the ball joints.", nameof(joints));
        PlaneMap empty = new(quantity, plane, 0, 0, 0, 0, 0, []);
        if (cell.Robot is not { } robot) return empty;

        var set = new ReachableSet(robot);
        var outline = PlaneOutline(cell, set, plane, rotary, linearAxis, 32);
        if (outline.Loops.IsEmpty) return empty;
        var (fromU, toU, fromV, toV) = Extent(plane, outline.Loops.SelectMany(l => l));
        double step = Math.Max(toU - fromU, toV - fromV) / (resolution - 1);
        if (!(step > 0)) return empty;

        int columns = (int)Math.Ceiling((toU - fromU) / step) + 1, rows = (int)Math.Ceiling((toV - fromV) / step) + 1;
        var values = ImmutableArray.CreateBuilder<double>(columns * rows);
        double[] x = new double[columns], y = new double[columns], z = new double[columns];
        double[] q1 = new double[columns], q2 = new double[columns], q3 = new double[columns], condition = new double[columns];
        for (int j = 0; j < rows; j++)
        {
            for (int i = 0; i < columns; i++)
                (x[i], y[i], z[i]) = cell.PlatformFor(plane.At(fromU + i * step, fromV + j * step), rotary, linearAxis);
            PoseBatch.Inverse(robot, x, y, z, q1, q2, q3, condition);
            for (int i = 0; i < columns; i++)
            {
                Vec3 p = new(x[i], y[i], z[i]);
                values.Add(!set.Contains(p) ? double.NaN
                    : quantity == MapQuantity.Condition ? condition[i]
                    : Value(robot, p, new(q1[i], q2[i], q3[i]), quantity, joints));
            }
        }

        return new(quantity, plane, fromU, fromV, step, columns, rows, values.MoveToImmutable());
    }

    /// <summary>
    /// The outline of the tool-centre-point positions reached in a plane. A two-chain robot reaches but a line of any other plane than its
    /// own, <see cref="WorkingPlane.OfRobot"/>, which the grid then misses: the outline is empty.
    /// </summary>
    public static Outline PlaneOutline(CellGeometry cell, ReachableSet set, WorkingPlane plane, double rotary = 0, double linearAxis = 0, int resolution = 80)
    {
        if (set.Box.IsEmpty) return new(plane.Origin, plane.U, plane.V, []);
        var (fromU, toU, fromV, toV) = Extent(plane, Enumerable.Range(0, 8).Select(corner => cell.TcpFor(new(
            (corner & 1) == 0 ? set.Box.Low.X : set.Box.High.X,
            (corner & 2) == 0 ? set.Box.Low.Y : set.Box.High.Y,
            (corner & 4) == 0 ? set.Box.Low.Z : set.Box.High.Z), rotary, linearAxis)));
        return ReachableVolume.Section(
            p_C => set.Contains(cell.PlatformFor(p_C, rotary, linearAxis)), plane.Origin, plane.U, plane.V, (fromU, toU), (fromV, toV), resolution);
    }

    private static (double FromU, double ToU, double FromV, double ToV) Extent(WorkingPlane plane, IEnumerable<Vec3> places)
    {
        var seen = places.Select(plane.Of).ToList();
        return (seen.Min(p => p.U), seen.Max(p => p.U), seen.Min(p => p.V), seen.Max(p => p.V));
    }

    private static double Value(DeltaRobot robot, Vec3 p, Vec3 q, MapQuantity quantity, ImmutableArray<BallJoint> joints)
    {
        double worst = quantity == MapQuantity.Swing ? 0 : 1;
        for (int i = 0; i < robot.Chains.Length; i++)
        {
            var chain = robot.Chains[i];
            worst = quantity == MapQuantity.Swing
                ? Math.Max(worst, Swing.Of(chain, joints[i], p, q[i]))
                : Math.Min(worst, Math.Min(q[i] - chain.TravelFrom, chain.TravelTo - q[i]) / (0.5 * (chain.TravelTo - chain.TravelFrom)));
        }

        return worst;
    }
}
