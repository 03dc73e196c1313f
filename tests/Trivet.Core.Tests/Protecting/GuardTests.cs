using System.Collections.Immutable;
using System.Text;
using Trivet.Cells;
using Trivet.Files;
using Trivet.Findings;
using Trivet.Kinematics;
using Trivet.Motion;
using Trivet.Numerics;
using Trivet.Protecting;
using Trivet.Reach;
using Trivet.Testing;
using Xunit;

namespace Trivet.Core.Tests.Protecting;

/// <summary>Distances of ISO 13855, 13857 and 13854 (published-values S1 to S14), the maximum space against poses, what is thrown against statics of a rod.</summary>
public sealed class GuardTests
{
    /// <summary>S4 to S8.</summary>
    [Theory]
    [InlineData(ApproachDirection.Normal, 0.10, 14, 0, 200)]
    [InlineData(ApproachDirection.Normal, 0.18, 30, 0, 488)]
    [InlineData(ApproachDirection.Normal, 0.32, 14, 0, 512)]
    [InlineData(ApproachDirection.Normal, 0.045, 14, 0, 100)]
    [InlineData(ApproachDirection.Normal, 0.3, 50, 0, 1330)]
    [InlineData(ApproachDirection.Parallel, 0.3, 50, 300, 1560)]
    [InlineData(ApproachDirection.Parallel, 0.3, 50, 1000, 1330)]
    public void Distance_of_a_device(ApproachDirection approach, double time, double resolution, double height, double expected) =>
        Assert.Equal(expected / 1000, GuardTables.Device(approach, time, resolution / 1000, height / 1000), 9);

    [Fact]
    public void What_the_formula_does_not_cover_has_no_distance()
    {
        Assert.True(double.IsNaN(GuardTables.Device(ApproachDirection.Normal, 0.1, 0.08, 0)));
        Assert.True(double.IsNaN(GuardTables.Device(ApproachDirection.Parallel, 0.1, 0.05, 1.1)));
    }

    /// <summary>S10 and S11.</summary>
    [Theory]
    [InlineData(1400, 2000, 1100)]
    [InlineData(1400, 1000, 1000)]
    [InlineData(1400, 400, 400)]
    [InlineData(1800, 1400, 800)]
    [InlineData(2000, 2600, 500)]
    [InlineData(2000, 1000, 0)]
    [InlineData(2400, 2400, 300)]
    [InlineData(1200, 2200, 1200)]
    [InlineData(2000, 1600, 500)]
    [InlineData(1800, 1200, 700)]
    public void Reaching_over(double fence, double danger, double expected) =>
        Assert.Equal(expected / 1000, GuardTables.ReachOver(fence / 1000, danger / 1000, danger / 1000), 9);

    /// <summary>The standard does not interpolate: the lower guard and the worse height count.</summary>
    [Fact]
    public void Between_the_rows_the_safer_one_counts()
    {
        Assert.Equal(GuardTables.ReachOver(1.4, 1.0, 1.0), GuardTables.ReachOver(1.59, 1.0, 1.0));
        Assert.Equal(0.5, GuardTables.ReachOver(2.0, 1.5, 1.5));
        Assert.Equal(0.6, GuardTables.ReachOver(2.0, 0.5, 2.3));
        Assert.True(double.IsNaN(GuardTables.ReachOver(0.9, 1, 1)));
    }

    /// <summary>S13 and S14.</summary>
    [Fact]
    public void Openings_and_gaps()
    {
        Assert.Equal(0.2, GuardTables.ReachThrough(OpeningShape.Square, 0.04));
        Assert.Equal(0.85, GuardTables.ReachThrough(OpeningShape.Slot, 0.025));
        Assert.Equal(0.12, GuardTables.ReachThrough(OpeningShape.Round, 0.03));
        Assert.True(double.IsInfinity(GuardTables.ReachThrough(OpeningShape.Round, 0.15)));
        Assert.Equal([0.5, 0.3, 0.18, 0.12, 0.05, 0.12, 0.1, 0.025], Enum.GetValues<BodyPart>().Select(GuardTables.SmallestGap));
    }

    private static Cell Sample(string name) => CellFile.Read(Encoding.UTF8.GetBytes(Samples.Find(name)!.Text), name).Cell!;

    /// <summary>Joints, platform and tool at many drive readings, by forward poses, stay within; and upward, with rails, the bound is no more than
    /// the platform's own radius and a little too large (with cranks it may be half a metre).</summary>
    [Theory]
    [InlineData("jar-lids")]
    [InlineData("biscuits")]
    [InlineData("labels")]
    public void Nothing_reaches_out_of_the_maximum_space(string name)
    {
        var cell = Sample(name);
        var space = MaximumSpace.Of(cell, new())!;
        var geometry = CellGeometry.Of(cell);
        var robot = geometry.Robot!;
        var points = new List<Vec3>();
        const int Steps = 14;
        for (int i = 0; i <= Steps; i++)
            for (int j = 0; j <= Steps; j++)
                for (int k = 0; k <= (robot.Planar ? 0 : Steps); k++)
                {
                    Vec3 q = new(Reading(0, i), Reading(1, j), robot.Planar ? 0 : Reading(2, k));
                    var p = ForwardPose.Of(robot, q).Working;
                    if (!p.IsFinite) continue;
                    points.Add(geometry.X_CB * p);
                    for (int turn = 0; turn < 4; turn++) points.Add(geometry.TcpFor(p, turn, 0));
                    for (int c = 0; c < robot.Chains.Length; c++) points.Add(geometry.X_CB * robot.Chains[c].Joint(q[c]));
                }
        Assert.True(points.Count > 500);
        foreach (var u in Directions())
        {
            double most = points.Max(p => u.Dot(p));
            Assert.True(most <= space.Support(u) + 1e-9, $"{u}: {most} > {space.Support(u)}");
        }
        Assert.InRange(space.Heights.High, points.Max(p => p.Z), points.Max(p => p.Z) + (name == "jar-lids" ? 0.1 : 0.5));

        double Reading(int chain, int step) => robot.Chains[chain].TravelFrom + step * (robot.Chains[chain].TravelTo - robot.Chains[chain].TravelFrom) / Steps;

        static IEnumerable<Vec3> Directions()
        {
            for (int i = 0; i < 24; i++)
                for (int k = -4; k <= 4; k++)
                {
                    double a = Math.Tau * i / 24, e = Math.PI / 2 * k / 4;
                    yield return new(Math.Cos(e) * Math.Cos(a), Math.Cos(e) * Math.Sin(a), Math.Sin(e));
                }
        }
    }

    [Fact]
    public void A_guard_is_as_far_away_as_its_line()
    {
        var space = MaximumSpace.Of(Sample("jar-lids"), new())!;
        double reaches = space.Support(Vec3.UnitX);
        Assert.Equal(0.6, space.DistanceTo(new(reaches + 0.6, -2, 0), new(reaches + 0.6, 2, 0)), 9);
        Assert.Equal(0.6, space.DistanceTo(new(reaches + 0.6, 2, 0), new(reaches + 0.6, -2, 0)), 9);
        Assert.True(space.DistanceTo(new(0, -1, 0), new(0, 1, 0)) < 0);
    }

    private static ProtectiveDevice Curtain => new()
    {
        Approach = ApproachDirection.Normal, Resolution = 0.03, Distance = 0.6, SensingTime = 0.015, SensingSource = "sheet", LogicTime = 0.02, LogicSource = "sheet",
        DriveTime = 0.01, DriveSource = "sheet", StopTime = 0.135, StopSource = "thirty stops", StopMeasured = true,
    };

    [Fact]
    public void A_muted_device_says_by_what_and_stays_open_for_a_person()
    {
        Finding Muted(ProtectiveDevice device) => GuardChecks.Of(
            Cell.Empty with { Guarding = new() { Edition = DistanceEdition.Iso13855From2010, Devices = Keyed.Empty<ProtectiveDevice>().Add("front", device) } }, [])
            .Findings.Single(f => f.Rule == ProtectRules.Muting);
        Assert.Equal(["/guarding/devices/front/mutedBy", "/guarding/devices/front/mutedKeeps"], Assert.IsType<Unjudged>(Muted(Curtain with { Muted = true })).Missing);
        var whole = Assert.IsType<Unjudged>(Muted(Curtain with { Muted = true, MutedBy = "two crossed beams", MutedKeeps = "the pallet fills the way in" }));
        Assert.Equal((Verdict.Open, ProtectReasons.MutingByPerson), (whole.Verdict, whole.Detail));
    }

    [Fact]
    public void A_device_whose_line_is_stated_is_as_far_as_a_guard_there()
    {
        var cell = Sample("jar-lids");
        var line = new Fence { FromX = -1.5, FromY = -1.5, ToX = 1.5, ToY = -1.5, Height = 2 };
        var device = Curtain with { FromX = line.FromX, FromY = line.FromY, ToX = line.ToX, ToY = line.ToY, Distance = 9 };
        var findings = GuardChecks.Of(cell with
        {
            Guarding = cell.Guarding with
            {
                Edition = DistanceEdition.Iso13855From2010,
                Devices = Keyed.Empty<ProtectiveDevice>().Add("front", device),
                Fences = Keyed.Empty<Fence>().Add("front", line),
            },
        }, []).Findings.OfType<Judged>().ToArray();
        double there = findings.Single(f => f.Rule == ProtectRules.Clearance).Value;
        var computed = findings.Single(f => f.Rule == ProtectRules.DeviceDistance);
        Assert.Equal(there, computed.Value, 1e-12);
        Assert.InRange(computed.Value, 0.5, 1.5);
        Assert.Contains("/robot/common/rod", computed.Inputs);
    }

    private static Finding Device(ProtectiveDevice device, DistanceEdition? edition = DistanceEdition.Iso13855From2010) =>
        GuardChecks.Of(Cell.Empty with { Guarding = new() { Edition = edition, Devices = Keyed.Empty<ProtectiveDevice>().Add("front", device) } }, []).Findings.Single();

    [Fact]
    public void A_device_holds_only_with_a_measured_stop_an_edition_and_a_source_for_each_time()
    {
        var holds = Assert.IsType<Judged>(Device(Curtain));
        Assert.Equal((Verdict.Holds, 0.488), (holds.Verdict, Math.Round(holds.Limit.Lower, 9)));
        Assert.Equal(Verdict.Open, Device(Curtain with { StopMeasured = false }).Verdict);
        Assert.Equal(Verdict.FallsShort, Device(Curtain with { StopMeasured = false, Distance = 0.4 }).Verdict);
        Assert.Equal(["/guarding/devices/front/driveSource"], Assert.IsType<Unjudged>(Device(Curtain with { DriveSource = " " })).Missing);
        Assert.Equal(["/guarding/edition"], Assert.IsType<Unjudged>(Device(Curtain, null)).Missing);
        Assert.Equal(ProtectReasons.ResolutionNotCovered, Assert.IsType<Unjudged>(Device(Curtain with { Resolution = 0.09 })).Detail);
    }

    /// <summary>ISO 13855:2010, from memory: H at least 15·(d − 50 mm), so a resolution of 80 mm needs the field at 450 mm.</summary>
    [Fact]
    public void A_field_along_which_people_go_must_be_high_enough_for_its_resolution()
    {
        var along = Curtain with { Approach = ApproachDirection.Parallel, Resolution = 0.08, FieldHeight = 0.45, Distance = 3 };
        Assert.Equal(Verdict.Holds, Device(along).Verdict);
        var low = Device(along with { FieldHeight = 0.4 });
        Assert.Equal((Verdict.FallsShort, 0.45), (low.Verdict, Math.Round(low.Advice.Single().To, 9)));
        Assert.Equal(Verdict.FallsShort, Device(along with { Resolution = 0.3, FieldHeight = 0 }).Verdict);
        Assert.Equal(["/guarding/devices/front/resolution"], Assert.IsType<Unjudged>(Device(along with { Resolution = null })).Missing);
    }

    [Fact]
    public void A_guard_lower_than_the_table_begins_falls_short_of_keeping_hands_out() =>
        Assert.Contains(Fenced(Mesh with { Height = 0.9 }), f => f.Rule == ProtectRules.ReachOver && f.Verdict == Verdict.FallsShort);

    private static ImmutableArray<Finding> Fenced(Fence fence)
    {
        var cell = Sample("jar-lids") with { Guarding = new() { Fences = Keyed.Empty<Fence>().Add("right", fence) } };
        var plan = GuardChecks.Of(cell, TimedCycle.Of(cell));
        return [.. plan.Findings, .. plan.Tasks.SelectMany(t => t.Sample())];
    }

    private static Fence Mesh => new() { FromX = 1.4, FromY = -1, ToX = 1.4, ToY = 1, Height = 2.0, FloorGap = 0.15, Opening = OpeningShape.Square, OpeningSize = 0.04 };

    [Fact]
    public void A_guard_is_judged_for_height_room_reach_and_gap()
    {
        var findings = Fenced(Mesh).ToDictionary(f => f.Rule);
        Assert.All(findings.Values, f => Assert.Equal(Verdict.Holds, f.Verdict));
        Assert.Equal([ProtectRules.FenceHeight, ProtectRules.FloorGap, ProtectRules.Clearance, ProtectRules.ReachOver, ProtectRules.Opening], Fenced(Mesh).Select(f => f.Rule));
        Assert.Equal(0.6, ((Judged)findings[ProtectRules.ReachOver]).Limit.Lower, 9);
        Assert.Contains(Fenced(Mesh with { Height = 1.3 }), f => f.Rule == ProtectRules.FenceHeight && f.Verdict == Verdict.FallsShort);
        Assert.Contains(Fenced(Mesh with { FromX = 0.8, ToX = 0.8 }), f => f.Rule == ProtectRules.Clearance && f.Verdict == Verdict.FallsShort);
        Assert.Contains(Fenced(Mesh with { OpeningSize = 0.2 }), f => f.Rule == ProtectRules.Opening && f.Verdict == Verdict.FallsShort);
        Assert.Contains(Fenced(Mesh with { FloorGap = 0.2 }), f => f.Rule == ProtectRules.FloorGap && f.Verdict == Verdict.FallsShort);
        Assert.Contains(Fenced(Mesh with { Height = 2.7 }), f => f is YesNo { Good: true } && f.Rule == ProtectRules.ReachOver);
    }

    /// <summary>The energy of a rod in slices, from positions of its ends a moment apart; of the part from its places over time.</summary>
    [Fact]
    public void What_is_thrown_carries_its_energy_and_never_holds()
    {
        var cell = Sample("jar-lids");
        var cycle = TimedCycle.Of(cell)[0];
        var thrown = Thrown.Of(cell, cycle);
        Assert.Equal(["part", "a", "b", "c"], thrown.Select(t => t.What));
        var robot = cycle.Input!.Plan.Loaded.Robot;
        var instants = cycle.ByController!.Controller.Loaded.Trace!.Instants.Concat(cycle.ByController.Controller.Empty.Trace!.Instants);
        double slices = instants.Max(i =>
        {
            const double Moment = 1e-6;
            Vec3 p = i.State.P, later = p + Moment * i.State.V;
            Vec3 c0 = robot.Chains[0].Joint(i.Q.X), c1 = robot.Chains[0].Joint(i.Q.X + Moment * i.Speed.X), b = robot.Chains[0].B;
            double sum = 0;
            for (int k = 0; k < 200; k++)
            {
                double s = (k + 0.5) / 200;
                sum += (((1 - s) * (c1 - c0) + s * (later - p)) / Moment).NormSquared / 200;
            }
            return 0.062 / 2 * sum;
        });
        Assert.Equal(slices, thrown[1].Energy, 1e-5);
        Assert.InRange(thrown[0].Speed, 0.5, 1.6);
        Assert.Equal(0.009 / 2 * thrown[0].Speed * thrown[0].Speed, thrown[0].Energy, 9);
        Assert.Equal(1, thrown[0].Direction_C.Norm, 9);
        var judged = Fenced(Mesh with { LargestImpact = 50 }).Single(f => f.Rule == ProtectRules.Thrown);
        Assert.Equal(Verdict.Open, judged.Verdict);
        Assert.Equal(Verdict.FallsShort, Fenced(Mesh with { LargestImpact = 0.001 }).Single(f => f.Rule == ProtectRules.Thrown).Verdict);
    }
}
