using System.Collections.Immutable;
using Trivet.Cells;
using Trivet.Findings;
using Trivet.Kinematics;
using Trivet.Numerics;
using Trivet.Reach;
using Trivet.Views.Words;

namespace Trivet.Views.Reaches;

/// <summary>One line of what a robot can reach.</summary>
/// <param name="Id">Stable name for programs: <c>cylinder-radius</c>.</param>
/// <param name="What">In words.</param>
/// <param name="Si">Value in SI; not a number where there is none.</param>
/// <param name="Unit">SI unit: <c>m</c>, <c>m3</c>, <c>rad</c>, <c>1</c>.</param>
/// <param name="Shown">Value with its unit as people read it.</param>
/// <param name="Known">How it is known, in a word or two.</param>
public sealed record ReachRow(string Id, string What, double Si, string Unit, string Shown, string Known);

/// <summary>What a robot can reach, in finished texts: a renderer only sets them.</summary>
/// <param name="Rows">In the order they are read: the volume, what fits in it, homing, stations.</param>
public sealed record ReachSheet(string Title, ImmutableArray<ReachRow> Rows)
{
    /// <param name="homing">Names the chains in their order.</param>
    public static ReachSheet Of(Cell cell, DeltaRobot robot, ReachReport report)
    {
        var rows = ImmutableArray.CreateBuilder<ReachRow>();
        if (report.Volume is { } volume)
            rows.Add(new("volume", "Reachable volume", volume.CubicMetres, "m3", Litres(volume.CubicMetres), $"counted, ± {Numbers.Plain(volume.Error * 1000, 2)} l"));
        if (double.IsFinite(report.Area))
            rows.Add(new("area", "Reachable area in the robot's plane", report.Area, "m2", $"{Numbers.Plain(report.Area * 1e4, 0)} cm²", "counted"));
        if (!report.Box.IsEmpty) Corners(rows, "reach", "Reach", report.Box.Low, report.Box.High, "of the surface");
        string below = "";
        if (report.Under is { } plane)
        {
            below = $" under z {Numbers.Quantity(plane, "m")}";
            bool none = report.Cylinder is null && report.LargestBox is null;
            rows.Add(Length("under", "Cylinder and box lie under the plane at z", plane, none ? "nothing is reached under it" : "as asked"));
        }

        if (report.Cylinder is { } cylinder)
        {
            string known = Known(cylinder.Assurance);
            rows.Add(Length("cylinder-radius", $"Largest upright cylinder{below}, radius", cylinder.Radius, known));
            rows.Add(Length("cylinder-height", $"Largest upright cylinder{below}, height", cylinder.Height, known));
            rows.Add(Length("cylinder-from", $"Largest upright cylinder{below}, lower face at z", cylinder.Low.Z, known));
        }

        if (report.LargestBox is { } box) Corners(rows, "box", $"Largest upright box{below}", box.Low, box.High, Known(box.Assurance));
        for (int i = 0; i < report.HomingAlone.Length; i++)
            rows.Add(Homing($"homing-{robot.ChainIds[i]}", $"Chain {robot.ChainIds[i]} moved alone, first bad pose", report.HomingAlone[i], robot.Family));
        if (report.HomingTogether is { } together) rows.Add(Homing("homing-together", "All chains moved, smallest bad difference", together, robot.Family));
        foreach (var station in report.Stations)
        {
            string name = cell.Stations[station.StationId].Name ?? station.StationId;
            rows.Add(Margin($"station-{station.StationId}", $"Worst margin of {name}", station.Margin, station.FindingId));
        }

        return new(cell.Name ?? Locale.English.Language.UnnamedCell, rows.ToImmutable());
    }

    /// <summary>The sheet with the best mount that was found, and the worst margin at each height around it.</summary>
    public ReachSheet With(MountResult best, MountTrade trade)
    {
        const string Known = "sampled, not proved";
        var rows = Rows.ToBuilder();
        rows.Add(Margin("mount-margin-now", "Worst margin of the stations where the robot stands", best.Before, Known));
        rows.Add(Margin("mount-margin", "Worst margin with the best mount found", best.WorstMargin, Stopped(best.Stop)));
        if (best.Mount is { X: { } x, Y: { } y, Z: { } z })
        {
            rows.Add(Length("mount-x", "Best mount found, x", x, Known));
            rows.Add(Length("mount-y", "Best mount found, y", y, Known));
            rows.Add(Length("mount-z", "Best mount found, z", z, Known));
        }

        for (int i = 0; i < trade.Heights.Length; i++)
        {
            var limiting = trade.Curves.Where(c => !double.IsNaN(c.Margins[i])).MinBy(c => c.Margins[i]);
            rows.Add(Margin($"mount-trade-{i + 1}", $"Worst margin with the mount at z {Numbers.Quantity(trade.Heights[i], "m")}", trade.Worst[i],
                limiting is null ? "" : $"limited by: {Sentences.RuleNoun(limiting.Rule)}"));
        }

        return this with { Rows = rows.ToImmutable() };
    }

    private static string Stopped(MountStop stop) => stop switch
    {
        MountStop.NoBetterNearby => "nothing better nearby",
        MountStop.Budget => "best so far, effort used up",
        MountStop.Cancelled => "best so far, stopped",
        _ => "nothing to move",
    };

    private static ReachRow Margin(string id, string what, double margin, string known) =>
        new(id, what, margin, "1", double.IsFinite(margin) ? Numbers.SignedPercent(margin) : "open", known);

    private static void Corners(ImmutableArray<ReachRow>.Builder rows, string id, string what, Vec3 low, Vec3 high, string known)
    {
        for (int i = 0; i < 3; i++)
        {
            rows.Add(Length($"{id}-{"xyz"[i]}-from", $"{what}, {"xyz"[i]} from", low[i], known));
            rows.Add(Length($"{id}-{"xyz"[i]}-to", $"{what}, {"xyz"[i]} to", high[i], known));
        }
    }

    private static ReachRow Length(string id, string what, double metres, string known) => new(id, what, metres, "m", Numbers.Quantity(metres, "m"), known);

    private static ReachRow Homing(string id, string what, HomingAllowance allowance, RobotFamily family)
    {
        string unit = family == RobotFamily.RailDelta ? "m" : "rad";
        string proved = allowance.Bound > 0 ? $"proved: none below {Numbers.Quantity(allowance.Bound, unit)}" : "searched in steps";
        return new(id, what, allowance.Attained, unit, double.IsFinite(allowance.Attained) ? Numbers.Quantity(allowance.Attained, unit) : "none found", proved);
    }

    private static string Known(Assurance assurance) => Locale.English.Language.Assurances[(int)assurance];

    private static string Litres(double cubicMetres) => $"{Numbers.Plain(cubicMetres * 1000, 1)} l";
}
