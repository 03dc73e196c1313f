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

/// <summary>
/// A quantity over a level plane of the cell frame, on a grid of tool-centre-point positions. Row by row: the value at column i and row j
/// is <c>Values[j·Columns + i]</c>, at x = X + i·Step, y = Y + j·Step. Not a number outside the reach.
/// </summary>
/// <param name="Z">Height of the plane, cell frame, metres.</param>
/// <param name="X">x of the first column, cell frame, metres.</param>
/// <param name="Y">y of the first row, cell frame, metres.</param>
/// <param name="Step">Distance of neighbours, metres.</param>
public sealed record PlaneMap(MapQuantity Quantity, double Z, double X, double Y, double Step, int Columns, int Rows, ImmutableArray<double> Values)
{
    public double At(int column, int row) => Values[row * Columns + column];

    /// <summary>
    /// Maps a quantity with the rotary axis and the linear axis at the positions given. Empty (no columns) where the robot is not
    /// complete or nothing is reached at that height.
    /// </summary>
    /// <param name="joints">Ball joints of the chains, in their order; needed for the swing only.</param>
    /// <param name="resolution">Columns along the longer side.</param>
    public static PlaneMap Of(
        CellGeometry cell, double z_C, MapQuantity quantity, int resolution = 96, ImmutableArray<BallJoint> joints = default, double rotary = 0, double linearAxis = 0)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(resolution, 4);
        if (quantity == MapQuantity.Swing && joints.IsDefaultOrEmpty) throw new ArgumentException("A map of the swing needs the ball joints.", nameof(joints));
        PlaneMap empty = new(quantity, z_C, 0, 0, 0, 0, 0, []);
        if (cell.Robot is not { } robot) return empty;

        var set = new ReachableSet(robot);
        var outline = PlaneOutline(cell, set, z_C, rotary, linearAxis, 32);
        if (outline.Loops.IsEmpty) return empty;
        var box = Bounds.Nothing;
        foreach (Vec3 p in outline.Loops.SelectMany(l => l)) box = box.With(p);
        double step = Math.Max(box.Size.X, box.Size.Y) / (resolution - 1);
        if (!(step > 0)) return empty;

        int columns = (int)Math.Ceiling(box.Size.X / step) + 1, rows = (int)Math.Ceiling(box.Size.Y / step) + 1;
        var values = ImmutableArray.CreateBuilder<double>(columns * rows);
        double[] x = new double[columns], y = new double[columns], z = new double[columns];
        double[] q1 = new double[columns], q2 = new double[columns], q3 = new double[columns], condition = new double[columns];
        for (int j = 0; j < rows; j++)
        {
            for (int i = 0; i < columns; i++)
                (x[i], y[i], z[i]) = cell.PlatformFor(new(box.Low.X + i * step, box.Low.Y + j * step, z_C), rotary, linearAxis);
            PoseBatch.Inverse(robot, x, y, z, q1, q2, q3, condition);
            for (int i = 0; i < columns; i++)
            {
                Vec3 p = new(x[i], y[i], z[i]);
                values.Add(!set.Contains(p) ? double.NaN
                    : quantity == MapQuantity.Condition ? condition[i]
                    : Value(robot, p, new(q1[i], q2[i], q3[i]), quantity, joints));
            }
        }

        return new(quantity, z_C, box.Low.X, box.Low.Y, step, columns, rows, values.MoveToImmutable());
    }

    /// <summary>
    /// The outline of the tool-centre-point positions reached at a height of the cell frame; U = x, V = y of the cell. For two chains
    /// it is the thinnest of strips, and empty unless the robot's plane is met by the grid: draw the vertical section instead.
    /// </summary>
    public static Outline PlaneOutline(CellGeometry cell, ReachableSet set, double z_C, double rotary = 0, double linearAxis = 0, int resolution = 80)
    {
        var box = Bounds.Nothing;
        for (int corner = 0; corner < 8; corner++)
        {
            Vec3 p = new(
                (corner & 1) == 0 ? set.Box.Low.X : set.Box.High.X,
                (corner & 2) == 0 ? set.Box.Low.Y : set.Box.High.Y,
                (corner & 4) == 0 ? set.Box.Low.Z : set.Box.High.Z);
            box = box.With(cell.TcpFor(p, rotary, linearAxis));
        }

        Vec3 origin = new(0, 0, z_C);
        return set.Box.IsEmpty
            ? new(origin, Vec3.UnitX, Vec3.UnitY, [])
            : ReachableVolume.Section(
                p_C => set.Contains(cell.PlatformFor(p_C, rotary, linearAxis)),
                origin, Vec3.UnitX, Vec3.UnitY, (box.Low.X, box.High.X), (box.Low.Y, box.High.Y), resolution);
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
