using Trivet.Cells;
using Trivet.Findings;
using Trivet.Numerics;

namespace Trivet.Reach;

/// <summary>Reads where the robot's base stands and what hangs from its platform.</summary>
public static class PlacingInputs
{
    /// <summary>
    /// Base frame in the cell frame, X_CB, at linear axis position zero: R_CB = Rz(yaw)·Ry(tiltY)·Rx(tiltX). The position is needed;
    /// turn and tilts are zero where not stated. Components are not a number while something is missing.
    /// </summary>
    public static Pose Mount(Mount mount, Reading reading)
    {
        var position = new Vec3(
            reading.Need(mount.X, "/mount/x"), reading.Need(mount.Y, "/mount/y"), reading.Need(mount.Z, "/mount/z"));
        var turn = Mat3.RotationZ(reading.Or(mount.Yaw, "/mount/yaw", 0))
            * Mat3.RotationY(reading.Or(mount.TiltY, "/mount/tiltY", 0))
            * Mat3.RotationX(reading.Or(mount.TiltX, "/mount/tiltX", 0));
        return new(turn, position);
    }

    /// <summary>
    /// Tool centre point from the platform reference point at rotary angle zero, metres. How far it hangs below is needed; a
    /// sideways offset is zero where not stated.
    /// </summary>
    public static Vec3 Tcp(ToolStack tool, Reading reading) => new(
        reading.Or(tool.TcpX, "/tool/tcpX", 0), reading.Or(tool.TcpY, "/tool/tcpY", 0), reading.Need(tool.TcpZ, "/tool/tcpZ"));

    /// <summary>Unit direction of the axis that carries the robot, cell frame; zero where none is fitted.</summary>
    public static Vec3 LinearDirection(LinearAxis axis, Reading reading)
    {
        if (!reading.Or(axis.Fitted, "/robot/linearAxis/fitted", false)) return Vec3.Zero;
        var (s, c) = Math.SinCos(reading.Or(axis.Azimuth, "/robot/linearAxis/azimuth", 0));
        return new(c, s, 0);
    }
}
