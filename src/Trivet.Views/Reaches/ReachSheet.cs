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
/// <param name="Places">Whose places they are, and within which limits.</param>
/// <param name="Within">The same for programs: travel, and swing and condition where asked for.</param>
/// <param name="Rows">In the order they are read: the volume, what fits in it, homing, stations.</param>
public sealed record ReachSheet(string Title, string Places, ImmutableArray<string> Within, ImmutableArray<ReachRow> Rows)
{
    private static ReachWords Words => Locale.English.Language.Reach;

    public static ReachSheet Of(Cell cell, DeltaRobot robot, ReachReport report)
    {
        var rows = ImmutableArray.CreateBuilder<ReachRow>();
        if (report.Volume is { } volume)
            rows.Add(new("volume", Words.Volume, volume.CubicMetres, "m3", Litres(volume.CubicMetres), Locale.Fill(Words.CountedWithin, ("error", $"{Numbers.Plain(Math.Max(volume.Error * 1000, 0.01), 2)} l"))));
        if (double.IsFinite(report.Area))
            rows.Add(new("area", Words.Area, report.Area, "m2", $"{Numbers.Plain(report.Area * 1e4, 0)} cm²", Words.Counted));
        if (!report.Box.IsEmpty) Corners(rows, "reach", Words.Reach, report.Box.Low, report.Box.High, Words.OfSurface);
        string below = "";
        if (report.Under is { } plane)
        {
            below = Locale.Fill(Words.Under, ("z", Numbers.Quantity(plane, "m")));
            bool none = report.Cylinder is null && report.LargestBox is null;
            rows.Add(Length("under", Words.UnderPlane, plane, none ? Words.NothingUnder : Words.AsAsked));
        }

        if (report.Cylinder is { } cylinder)
        {
            string known = Known(cylinder.Assurance);
            rows.Add(Length("cylinder-radius", Locale.Fill(Words.CylinderRadius, ("below", below)), cylinder.Radius, known));
            rows.Add(Length("cylinder-height", Locale.Fill(Words.CylinderHeight, ("below", below)), cylinder.Height, known));
            rows.Add(Length("cylinder-from", Locale.Fill(Words.CylinderFrom, ("below", below)), cylinder.Low.Z, known));
        }

        if (report.LargestBox is { } box) Corners(rows, "box", Locale.Fill(Words.Box, ("below", below)), box.Low, box.High, Known(box.Assurance));
        for (int i = 0; i < report.HomingAlone.Length; i++)
            rows.Add(Homing($"homing-{robot.ChainIds[i]}", Locale.Fill(Words.HomingAlone, ("chain", robot.ChainIds[i])), report.HomingAlone[i], robot.Family));
        if (report.HomingTogether is { } together) rows.Add(Homing("homing-together", Words.HomingTogether, together, robot.Family));
        foreach (var station in report.Stations)
        {
            string name = cell.Stations[station.StationId].Name ?? station.StationId;
            rows.Add(Margin($"station-{station.StationId}", Locale.Fill(Words.StationMargin, ("station", name)), station.Margin, station.FindingId));
        }

        string[] limits = [Words.LimitTravel, .. report.Limits.Swing ? [Words.LimitSwing] : Array.Empty<string>(), .. report.Limits.Condition ? [Words.LimitCondition] : Array.Empty<string>()];
        ImmutableArray<string> within = ["travel", .. report.Limits.Swing ? ["swing"] : Array.Empty<string>(), .. report.Limits.Condition ? ["condition"] : Array.Empty<string>()];
        return new(cell.Name ?? Locale.English.Language.UnnamedCell, Locale.Fill(Words.Places, ("limits", Fields.List(limits))), within, rows.ToImmutable());
    }

    /// <summary>The sheet with the best mount that was found, and the worst margin at each height around it.</summary>
    public ReachSheet With(MountResult best, MountTrade trade)
    {
        string known = Words.SampledOnly;
        var rows = Rows.ToBuilder();
        rows.Add(Margin("mount-margin-now", Words.MountNow, best.Before, known));
        rows.Add(Margin("mount-margin", Words.MountBest, best.WorstMargin, Words.MountStops[(int)best.Stop]));
        if (best.Mount is { X: { } x, Y: { } y, Z: { } z })
        {
            rows.Add(Length("mount-x", Locale.Fill(Words.MountAt, ("axis", "x")), x, known));
            rows.Add(Length("mount-y", Locale.Fill(Words.MountAt, ("axis", "y")), y, known));
            rows.Add(Length("mount-z", Locale.Fill(Words.MountAt, ("axis", "z")), z, known));
        }

        for (int i = 0; i < trade.Heights.Length; i++)
        {
            var limiting = trade.Curves.Where(c => !double.IsNaN(c.Margins[i])).MinBy(c => c.Margins[i]);
            rows.Add(Margin($"mount-trade-{i + 1}", Locale.Fill(Words.MountTrade, ("z", Numbers.Quantity(trade.Heights[i], "m"))), trade.Worst[i],
                limiting is null ? "" : Locale.Fill(Words.LimitedBy, ("rule", Sentences.RuleNoun(limiting.Rule)))));
        }

        return this with { Rows = rows.ToImmutable() };
    }

    private static ReachRow Margin(string id, string what, double margin, string known) =>
        new(id, what, margin, "1", double.IsFinite(margin) ? Numbers.SignedPercent(margin) : Words.NotJudged, known);

    private static void Corners(ImmutableArray<ReachRow>.Builder rows, string id, string what, Vec3 low, Vec3 high, string known)
    {
        for (int i = 0; i < 3; i++)
        {
            rows.Add(Length($"{id}-{"xyz"[i]}-from", Locale.Fill(Words.From, ("what", what), ("axis", "xyz"[i..(i + 1)])), low[i], known));
            rows.Add(Length($"{id}-{"xyz"[i]}-to", Locale.Fill(Words.To, ("what", what), ("axis", "xyz"[i..(i + 1)])), high[i], known));
        }
    }

    private static ReachRow Length(string id, string what, double metres, string known) => new(id, what, metres, "m", Numbers.Quantity(metres, "m"), known);

    private static ReachRow Homing(string id, string what, HomingAllowance allowance, RobotFamily family)
    {
        string unit = family == RobotFamily.RailDelta ? "m" : "rad";
        string proved = allowance.Bound > 0 ? Locale.Fill(Words.HomingProved, ("bound", Numbers.Quantity(allowance.Bound, unit))) : Words.HomingSearched;
        return new(id, what, allowance.Attained, unit, double.IsFinite(allowance.Attained) ? Numbers.Quantity(allowance.Attained, unit) : Words.HomingNone, proved);
    }

    private static string Known(Assurance assurance) => Locale.English.Language.Assurances[(int)assurance];

    private static string Litres(double cubicMetres) => $"{Numbers.Plain(cubicMetres * 1000, 1)} l";
}
