using System.Collections.Immutable;
using Trivet.Cells;
using Trivet.Findings;
using Trivet.Numerics;

namespace Trivet.Kinematics;

/// <summary>How the controller shows one chain's drive reading: <c>shown = ±(q − ZeroAt) / PerUnit</c>, minus where reversed.</summary>
/// <param name="Name">The name the controller shows.</param>
/// <param name="ZeroAt">Drive reading where the controller shows zero, metres or radians.</param>
/// <param name="PerUnit">Drive coordinate per unit shown, above zero: 0.001 when millimetres are shown.</param>
public readonly record struct ControllerAxis(string Name, bool Reversed, double ZeroAt, double PerUnit)
{
    private double Sign => Reversed ? -1 : 1;

    /// <summary>What the controller shows at drive reading q.</summary>
    public double Shown(double q) => Sign * (q - ZeroAt) / PerUnit;

    /// <summary>The drive reading, metres or radians, when the controller shows this.</summary>
    public double Reading(double shown) => ZeroAt + Sign * shown * PerUnit;

    /// <summary>
    /// Reads how one axis is shown: a chain, "rotary" or "linear". One that no axis of the controller drives is shown as Trivet counts it, in millimetres or
    /// degrees, under its own id. A unit that is not above zero is no unit: the readings of that axis are then not numbers.
    /// </summary>
    public static ControllerAxis Of(ControllerMapping mapping, string drives, bool turns, Reading reading)
    {
        const string At = "/controller/axes";
        double usual = turns ? Math.PI / 180 : 1e-3;
        reading.Used(At, string.Join('\n', mapping.Axes.Select(a => $"{a.Key} {a.Value.Drives}")));
        var (id, axis) = mapping.Axes.InOrder().FirstOrDefault(a => a.Value.Drives == drives);
        if (axis is null) return new(drives, false, 0, usual);
        string own = $"{At}/{id}";
        reading.Used($"{own}/name", axis.Name);
        double perUnit = reading.Or(axis.PerUnit, $"{own}/perUnit", usual);
        return new(axis.Name ?? id, reading.Or(axis.Reversed, $"{own}/reversed", false), reading.Or(axis.ZeroAt, $"{own}/zeroAt", 0), perUnit > 0 ? perUnit : double.NaN);
    }
}

/// <summary>
/// Between Trivet's numbers and those the user's controller shows. Every reading typed off a controller goes through it, so that
/// signs, zeros and frames are stated once, in the cell.
/// <para>
/// Places: the controller's frame is the base frame turned by <paramref name="FrameYaw"/> about z, its zero plane at base height
/// <paramref name="ZeroHeight"/>. Where its z grows downward only that reading changes sign; x and y stay.
/// </para>
/// </summary>
/// <param name="Axes">In the order of the chains.</param>
public sealed record ControllerReadings(double FrameYaw, double ZeroHeight, bool ZDown, ImmutableArray<ControllerAxis> Axes)
{
    /// <summary>
    /// Reads the mapping for a robot.
    /// </summary>
    public static ControllerReadings Of(ControllerMapping mapping, DeltaRobot robot, Reading reading)
    {
        const string At = "/controller";
        var axes = robot.ChainIds.Select(chain => ControllerAxis.Of(mapping, chain, robot.Family == RobotFamily.CrankDelta, reading));
        return new(reading.Or(mapping.FrameYaw, $"{At}/frameYaw", 0), reading.Or(mapping.ZeroHeight, $"{At}/zeroHeight", 0),
            reading.Or(mapping.ZDown, $"{At}/zDown", false), [.. axes]);
    }

    /// <summary>A place of the base frame, metres, as the controller shows it, metres.</summary>
    public Vec3 Shown(Vec3 p_B)
    {
        var turned = Mat3.RotationZ(-FrameYaw) * p_B;
        double up = turned.Z - ZeroHeight;
        return new(turned.X, turned.Y, ZDown ? -up : up);
    }

    /// <summary>The place in the base frame, metres, that the controller shows so, metres.</summary>
    public Vec3 Place(Vec3 shown) =>
        Mat3.RotationZ(FrameYaw) * new Vec3(shown.X, shown.Y, (ZDown ? -shown.Z : shown.Z) + ZeroHeight);
}
