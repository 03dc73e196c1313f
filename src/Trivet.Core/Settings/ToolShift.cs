using System.Collections.Immutable;
using Trivet.Cells;
using Trivet.Findings;
using Trivet.Kinematics;
using Trivet.Numerics;
using Trivet.Reach;

namespace Trivet.Settings;

/// <summary>
/// How far the platform is moved when the controller computes with a parameter as typed instead of as planned. The controller finds the drive readings for a
/// place with its own numbers; the robot, which is as planned, goes where those readings put it. Looked at in the middle and at the corners of every
/// station's zone at working height; the largest counts.
/// </summary>
internal sealed class ToolShift
{
    private readonly Cell _cell;
    private readonly DeltaRobot _robot;
    private readonly ImmutableArray<(Vec3 P, Vec3 Q)> _places;

    private ToolShift(Cell cell, DeltaRobot robot, ImmutableArray<(Vec3, Vec3)> places) => (_cell, _robot, _places) = (cell, robot, places);

    /// <summary>True for what decides where the platform goes.</summary>
    public static bool Decides(SettingQuantity quantity, string? of) => quantity switch
    {
        <= SettingQuantity.HomeOffset or SettingQuantity.FrameTurn or SettingQuantity.MountHeight or SettingQuantity.TcpX or SettingQuantity.TcpY or SettingQuantity.TcpZ => true,
        SettingQuantity.ReadingAtHome or SettingQuantity.DriveStep or SettingQuantity.TravelPerTurn or SettingQuantity.Ratio => of is not ("rotary" or "linear"),
        _ => false,
    };

    /// <summary>Null while robot or stations are not described as far as it needs.</summary>
    public static ToolShift? Of(Cell cell, Reading reading)
    {
        var robot = RobotInputs.Geometry(cell.Robot, reading).Robot;
        reading.Used("/stations", string.Join('\n', cell.Stations.Keys));
        if (cell.Stations.IsEmpty) reading.Missing("/stations");
        var stations = cell.Stations.InOrder().Select(s => StationInputs.Read(cell, s.Key, reading).Box).OfType<StationBox>().ToImmutableArray();
        var placed = new CellGeometry(
            robot, PlacingInputs.Mount(cell.Mount, reading), PlacingInputs.LinearDirection(cell.Robot.LinearAxis, reading), PlacingInputs.Tcp(cell.Tool, reading), stations, []);
        if (robot is null || !reading.Complete) return null;
        var places = stations.SelectMany(s => Corners(s).Select(c => placed.PlatformFor(s.X_CS * c, s.RotaryFrom, s.LinearAxisAt))).Select(p => (P: p, Q: robot.Inverse(p))).Where(p => p.Q.IsFinite);
        return new(cell, robot, [.. places]);
    }

    private static IEnumerable<Vec3> Corners(StationBox box) =>
        [(box.Low + new Vec3(box.High.X, box.High.Y, box.Low.Z)) / 2, box.Low, new(box.High.X, box.Low.Y, box.Low.Z), new(box.Low.X, box.High.Y, box.Low.Z), new(box.High.X, box.High.Y, box.Low.Z)];

    /// <summary>Metres; not a number where no place can be reached with the parameter as typed.</summary>
    public double For(PlannedSetting setting)
    {
        double off = setting.Off;
        switch (setting.Stated.Quantity)
        {
            case SettingQuantity.MountHeight or SettingQuantity.TcpX or SettingQuantity.TcpY or SettingQuantity.TcpZ:
                return Math.Abs(off);
            case SettingQuantity.FrameTurn:
                return Largest(p => 2 * Math.Abs(Math.Sin(off / 2)) * Math.Sqrt(p.P.X * p.P.X + p.P.Y * p.P.Y));
            case SettingQuantity.ReadingAtHome:
                return Moved(q => q + off * Concerned(setting.Stated.Of));
            case SettingQuantity.DriveStep or SettingQuantity.TravelPerTurn or SettingQuantity.Ratio:
                double share = off / setting.Plan;
                return Moved(q =>
                {
                    var own = Concerned(setting.Stated.Of);
                    return q + share * new Vec3(own.X * q.X, own.Y * q.Y, own.Z * q.Z);
                });
            default:
                if (RobotInputs.Geometry(As(setting), new()).Robot is not { } typed) return double.NaN;
                return Largest(p => (ForwardPose.Of(_robot, typed.Inverse(p.P)).Working - p.P).Norm);
        }
    }

    private double Moved(Func<Vec3, Vec3> readings) => Largest(p => (ForwardPose.Of(_robot, readings(p.Q)).Working - p.P).Norm);

    private double Largest(Func<(Vec3 P, Vec3 Q), double> shift)
    {
        double largest = double.NaN;
        foreach (var place in _places)
        {
            double here = shift(place);
            if (double.IsNaN(here)) return double.NaN;
            largest = double.IsNaN(largest) ? here : Math.Max(largest, here);
        }
        return largest;
    }

    /// <summary>1 for each chain that the parameter is about.</summary>
    private Vec3 Concerned(string? of)
    {
        double One(int i) => i < _robot.ChainIds.Length && (of is null || _robot.ChainIds[i] == of) ? 1 : 0;
        return new(One(0), One(1), One(2));
    }

    /// <summary>The robot as the controller then takes it.</summary>
    private Robot As(PlannedSetting setting)
    {
        double v = setting.Value;
        return _cell.Robot with
        {
            Chains = _cell.Robot.Chains.ToImmutableSortedDictionary(c => c.Key, c => setting.Stated.Of is null || setting.Stated.Of == c.Key ? With(c.Value) : c.Value, StringComparer.Ordinal),
        };

        ChainDescription With(ChainDescription chain) => setting.Stated.Quantity switch
        {
            SettingQuantity.Rod => chain with { Rod = v },
            SettingQuantity.UpperArm => chain with { UpperArm = v },
            SettingQuantity.BaseRadius => chain with { BaseRadius = v },
            SettingQuantity.BaseHeight => chain with { BaseHeight = v },
            SettingQuantity.PlatformRadius => chain with { PlatformRadius = v },
            SettingQuantity.PlatformHeight => chain with { PlatformHeight = v },
            SettingQuantity.Azimuth => chain with { Azimuth = v },
            SettingQuantity.Inclination => chain with { Inclination = v },
            _ => chain with { HomeOffset = v },
        };
    }
}
