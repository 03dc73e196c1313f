using System.Collections.Immutable;
using Trivet.Cells;
using Trivet.Findings;
using Trivet.Numerics;

namespace Trivet.Reach;

/// <summary>What became of reading a station. The box is null while a field is missing (the reading lists it) or contradicts itself.</summary>
public sealed record StationRead(StationBox? Box, ImmutableArray<Contradiction> Contradictions);

/// <summary>
/// Reads a station into the box of tool-centre-point positions it asks for. In the station's own frame:
/// nest: ± width/2 along x, ± depth/2 along y about its centre; tray: from the first pocket to the last one of each row and
/// column; belt: 0 to the length of the tracking window along x, ± depth/2 across. Every box reaches from the working height z = 0
/// up to the approach height.
/// </summary>
public static class StationInputs
{
    public static string Pointer(string id) => $"/stations/{id}";

    public static StationRead Read(Cell cell, string id, Reading reading)
    {
        var station = cell.Stations[id];
        string at = Pointer(id);
        var wrong = ImmutableArray.CreateBuilder<Contradiction>();

        var origin = new Vec3(
            reading.Need(station.X, at + "/x"), reading.Need(station.Y, at + "/y"), reading.Need(station.Z, at + "/z"));
        double yaw = reading.Or(station.Yaw, at + "/yaw", 0);
        double approach = NotNegative(reading.Need(station.Approach, at + "/approach"), at + "/approach");
        var (low, high) = Zone(station, at, reading, NotNegative, wrong);

        double from = 0, to = 0, linear = 0;
        if (reading.Or(cell.Robot.Rotary.Fitted, "/robot/rotary/fitted", false))
        {
            from = reading.Need(station.RotaryFrom, at + "/rotaryFrom");
            to = reading.Need(station.RotaryTo, at + "/rotaryTo");
            if (from > to) wrong.Add(new(at + "/rotaryTo", ReachReasons.AnglesEndBeforeTheyBegin));
        }
        if (reading.Or(cell.Robot.LinearAxis.Fitted, "/robot/linearAxis/fitted", false))
            linear = reading.Need(station.LinearAxisAt, at + "/linearAxisAt");

        if (!reading.Complete || wrong.Count > 0) return new(null, wrong.ToImmutable());
        return new(
            new(id, new(Mat3.RotationZ(yaw), origin), new(low.X, low.Y, 0), new(high.X, high.Y, approach), from, to, linear, reading.Inputs), []);

        double NotNegative(double value, string pointer)
        {
            if (value < 0) wrong.Add(new(pointer, ReachReasons.SizeNegative));
            return value;
        }
    }

    private static (Vec3 Low, Vec3 High) Zone(
        Station station, string at, Reading reading, Func<double, string, double> notNegative, ImmutableArray<Contradiction>.Builder wrong)
    {
        switch (reading.Need(station.Kind, at + "/kind", StationKind.Nest))
        {
            case StationKind.Tray:
                double x = Pockets(station.Columns, "columns", station.ColumnPitch, "columnPitch");
                double y = Pockets(station.Rows, "rows", station.RowPitch, "rowPitch");
                return (new(Math.Min(0, x), Math.Min(0, y), 0), new(Math.Max(0, x), Math.Max(0, y), 0));

            case StationKind.Belt:
                double window = notNegative(reading.Need(station.Window, at + "/window"), at + "/window");
                double half = notNegative(reading.Need(station.Depth, at + "/depth"), at + "/depth") / 2;
                return (new(0, -half, 0), new(window, half, 0));

            default:
                if (station.Kind is null) return default;
                double across = notNegative(reading.Need(station.Width, at + "/width"), at + "/width") / 2;
                double along = notNegative(reading.Need(station.Depth, at + "/depth"), at + "/depth") / 2;
                return (new(-across, -along, 0), new(across, along, 0));
        }

        // A pitch may be negative: the pockets then run the other way.
        double Pockets(int? stated, string count, double? pitch, string name)
        {
            int n = reading.Need(stated, $"{at}/{count}", 1);
            if (n < 1) wrong.Add(new($"{at}/{count}", ReachReasons.NoPocket));
            return n > 1 ? (n - 1) * reading.Need(pitch, $"{at}/{name}") : 0;
        }
    }
}
