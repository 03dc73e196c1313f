using Trivet.Assessment;
using Trivet.Cells;
using Trivet.Findings;
using Trivet.Numerics;
using Trivet.Reach;

namespace Trivet.Views.Tests;

/// <summary>Findings and cells written down by hand, invented, so that a view is tested apart from what computes them.</summary>
internal static class HandMade
{
    public static Source Stated(string pointer) => new(SourceKind.Cell, pointer);

    public static Rule Clearance { get; } = new("test.clearance", "rod clearance", Trade.Reach, "m", Sense.AtLeast, 0.05, new(SourceKind.Derived, "docs/rules", "clearance"));
    public static Rule Swing { get; } = new("test.swing", "rod swing", Trade.Reach, "rad", Sense.AtMost, 0.05, new(SourceKind.CommonPractice, ""), NeedsProof: true);
    public static Rule Travel { get; } = new("test.travel", "travel", Trade.Reach, "m", Sense.Within, 0.05, new(SourceKind.Standard, "ISO 9283:1998", "7.2.1"));

    public static Judged Judge(Rule rule, double value, double lower, double upper, string pointer = "/stations/tray-left", string @case = "") =>
        new(rule, new(pointer, @case), ["/mount/z", pointer + "/z"], value, new(lower, upper, Stated("/robot/dexterity/rodClearance")), Assurance.Proved);

    public static Judged TooNear { get; } = Judge(Clearance, 0.0084, 0.010, double.PositiveInfinity) with
    {
        Worst = new(new(0.1, -0.2, 0.75), double.NaN, Vec3.NaN),
        Advice = [new("/stations/tray-left/z", 0.750, 0.765, 0.04, 0.06)],
    };

    public static Cell Cell { get; } = Cell.Empty with
    {
        Name = "Lids | into trays",
        Robot = new() { Family = RobotFamily.RailDelta, Chains = Keyed.Empty<ChainDescription>().Add("a", new()).Add("b", new()).Add("c", new()) },
        Stations = Keyed.Empty<Station>().Add("tray-left", new() { Kind = StationKind.Tray }).Add("belt", new() { Name = "infeed belt", Kind = StationKind.Belt }),
    };

    public static Ledger Ledger { get; } = Ledger.Of(
    [
        TooNear,
        Judge(Swing, 0.50, double.NegativeInfinity, 0.60, "/stations/tray-left", "a"),
        Judge(Travel, 0.0495, 0, 0.050, "/stations/belt", "b"),
        Judge(Swing, 0.40, double.NegativeInfinity, 0.60, "/stations/belt") with { Assurance = Assurance.Sampled },
        new YesNo(new("test.unique", "addresses", Trade.Electrical, "", Sense.Within, 0, new(SourceKind.CommonPractice, "")), new("/cabinet"), [], false, ["/cabinet/modules/m1/address", "/cabinet/modules/m2/address"]),
        new Unjudged(Clearance, new("/stations/belt"), [], OpenReason.Missing, ["/robot/common/rod", "/stations/belt/window"]),
        new Unjudged(Travel, new("/robot"), [], OpenReason.Failed, [], ReachReasons.NotReached),
    ],
    [new(Swing, new("/stations/tray-left"), ReachReasons.NoWalls)]);

    public static Assessed Assessed { get; } = new(Cell, new CellGeometry(null, Pose.Identity, Vec3.Zero, Vec3.Zero, [], []), Ledger, Proved: true);
}
