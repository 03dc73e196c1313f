using System.Collections.Immutable;
using Trivet.Assessment;
using Trivet.Cells;
using Trivet.Findings;
using Trivet.Kinematics;
using Trivet.Numerics;
using Trivet.Reach;
using Trivet.Views.Motion;
using Trivet.Views.Words;

namespace Trivet.Views.Drawings;

/// <summary>The drawings of a cell.</summary>
public static class CellDrawings
{
    private const double LabelSize = 12;

    /// <summary>Plan (seen from above) with dimensions, frame, robot, stations; the worst point of the finding marked when given.</summary>
    /// <param name="way">Way of the tool through a cycle, at whose start the robot is then drawn.</param>
    /// <param name="limits">Limits that the outline of the reach keeps beyond travel.</param>
    public static Drawing Plan(Assessed cell, Finding? marked = null, Locale? locale = null, CycleWay? way = null, ReachLimits? limits = null) =>
        Draw(Seen.FromAbove, cell, marked, way, limits ?? ReachLimits.None, locale ?? Locale.English);

    /// <summary>Elevation (seen along cell y) with dimensions.</summary>
    public static Drawing Elevation(Assessed cell, Finding? marked = null, Locale? locale = null, CycleWay? way = null, ReachLimits? limits = null) =>
        Draw(Seen.AlongY, cell, marked, way, limits ?? ReachLimits.None, locale ?? Locale.English);

    /// <summary>Travel or dexterity over one working plane: contours, limits, stations. With three chains the level plane at a height of the
    /// cell frame; with two the plane that the robot moves in, whatever the height.</summary>
    public static Drawing WorkingPlane(Assessed cell, double z_C, PlaneQuantity quantity, Locale? locale = null) =>
        PlaneSheet.Draw(cell, z_C, quantity, locale ?? Locale.English);

    private static Drawing Draw(Seen seen, Assessed cell, Finding? marked, CycleWay? way, ReachLimits limits, Locale locale)
    {
        var words = locale.Language.Drawing;
        string name = cell.Cell.Name ?? locale.Language.UnnamedCell;
        string drawing = seen == Seen.FromAbove ? words.Plan : words.Elevation;
        string description = Locale.Fill(seen == Seen.FromAbove ? words.PlanDescription : words.ElevationDescription, ("cell", name));
        var sheet = new Sheet($"{drawing}: {name}", description, SheetFrame.Width, SheetFrame.Height);
        var frame = new SheetFrame(sheet, locale);
        var posture = way is null ? Posture.Representative(cell, marked) : Posture.At(cell, way.Loaded[0], way.Rotary, way.LinearAxisAt);
        // A robot that reaches nothing still has its rails.
        posture ??= Posture.At(cell, Vec3.NaN, 0, 0);
        var reach = CellParts.Reach(seen, cell.Geometry, limits);
        var extents = CellParts.ExtentsOf(seen, cell, posture, reach);
        string scale = "–";
        if (extents.Empty)
            Labels.Centred(sheet, frame.Area, [(frame.Area.X + frame.Area.Width / 2, frame.Area.Y + frame.Area.Height / 2)],
                TextMetrics.Cut(words.NothingToDraw, LabelSize, frame.Area.Width - 20), LabelSize, "s");
        else
        {
            var view = View.Fit(seen, extents, Inner(seen, frame.Area));
            scale = "1 : " + view.Denominator.ToString(locale.Culture);
            new CellView(sheet, view, frame.Area, extents, cell, posture, reach, limits.Any, way, locale).Draw(marked);
        }

        frame.Title(name, drawing, scale, seen == Seen.FromAbove ? words.PlanSeen : words.ElevationSeen, cell.Proved ? words.StateProved : words.StatePreview);
        frame.Marked(marked, cell.Cell);
        if (seen == Seen.AlongY) RobotTable(frame, cell, locale);
        else MountTable(frame, cell.Cell, locale);
        frame.Space(10);
        frame.Stations(cell);
        return sheet.Finish() with { Picture = (frame.Area.X, frame.Area.Y, frame.Area.Width, frame.Area.Height) };
    }

    /// <summary>The view's own room: dimensions stand left and below, level marks at the right of an elevation.</summary>
    private static Box Inner(Seen seen, Box area) => seen == Seen.FromAbove
        ? new(area.X + 100, area.Y + 28, area.Width - 100 - 34, area.Height - 28 - 104)
        : new(area.X + 66, area.Y + 26, area.Width - 66 - 128, area.Height - 26 - 72);

    private static void MountTable(SheetFrame frame, Cell cell, Locale locale)
    {
        var words = locale.Language.Drawing;
        frame.Heading(words.Mount, "x", "y", "z");
        frame.Row(cell.Robot.Family switch { RobotFamily.RailDelta => words.RailDelta, RobotFamily.CrankDelta => words.CrankDelta, _ => words.Robot },
            frame.Millimetres(cell.Mount.X), frame.Millimetres(cell.Mount.Y), frame.Millimetres(cell.Mount.Z));
        if (cell.Mount.Yaw is { } yaw && yaw != 0) frame.Row(words.Yaw, Numbers.Quantity(yaw, "rad", locale));
    }

    private static void RobotTable(SheetFrame frame, Assessed assessed, Locale locale)
    {
        var words = locale.Language.Drawing;
        var cell = assessed.Cell;
        frame.Heading(words.Robot);
        if (cell.Robot.Family is { } family) frame.Row(family == RobotFamily.RailDelta ? words.RailDelta : words.CrankDelta, $"{cell.Robot.Chains.Count} {words.Chains}");
        if (assessed.Geometry.Robot is not { } robot) return;
        bool rail = robot.Family == RobotFamily.RailDelta;
        Each(words.Rod, c => c.Rod, "m");
        if (!rail) Each(words.UpperArm, c => c.Arm, "m");
        Each(words.BaseRadius, c => Level(c.Foot), "m");
        Each(words.PlatformRadius, c => Level(c.B), "m");
        Each(words.Travel, c => c.TravelTo - c.TravelFrom, rail ? "m" : "rad");
        frame.Row(words.ToolLength, Numbers.Quantity(-assessed.Geometry.Tcp_P.Z, "m", locale));

        void Each(string name, Func<Chain, double> of, string unit)
        {
            ImmutableArray<string> texts = [.. robot.Chains.Select(c => Numbers.Quantity(of(c), unit, locale)).Distinct()];
            frame.Row(name, texts.Length == 1 ? texts[0] : words.Differs);
        }

        static double Level(Vec3 v) => Math.Sqrt(v.X * v.X + v.Y * v.Y);
    }
}

public enum PlaneQuantity
{
    Travel,
    Dexterity,
}
