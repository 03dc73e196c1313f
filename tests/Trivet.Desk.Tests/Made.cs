using System.Collections.Immutable;
using Trivet.Assessment;
using Trivet.Cells;
using Trivet.Findings;
using Trivet.Numerics;
using Trivet.Reach;

namespace Trivet.Desk;

/// <summary>A small ledger made by hand, one finding of each verdict, so that a component is seen without any computation.</summary>
internal static class Made
{
    private static readonly Source Page = new(SourceKind.CommonPractice, "");
    private static readonly Rule Clearance = new("reach.rod-clearance", "Rods keep their distance", Trade.Reach, "m", Sense.AtLeast, 0.1, Page);

    public static Cell Cell { get; } = Cells.Cell.Empty with
    {
        Name = "Lids",
        Stations = Keyed.Empty<Station>().Add("belt", new Station { Name = "Belt", X = 0.1 }).Add("tray", new Station { X = -0.2 }),
    };

    public static Assessed Assessed { get; } = new(
        Cell,
        new CellGeometry(null, Pose.Identity, Vec3.Zero, Vec3.Zero, [], []),
        Ledger.Of(
            [
                Judged("/stations/belt", 0.0084) with { Advice = [new Advice("/stations/belt/x", 0.1, 0.05, 0.2)] },
                Judged("/stations/tray", 0.0104),
                Judged("/stations/rack", 0.03),
                new Unjudged(Clearance, new Subject("/stations/far"), [], OpenReason.Missing, ["/stations/far/x"]),
            ],
            [new NotApplicable(Clearance, new Subject("/robot/rotary"), ReachReasons.NoRotary)]),
        Proved: true);

    private static Judged Judged(string subject, double value) =>
        new(Clearance, new Subject(subject), [subject + "/x"], value, Limit.AtLeast(0.01, Page), Assurance.Exact);
}
