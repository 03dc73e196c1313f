using System.Collections.Immutable;
using Trivet.Cells;
using Trivet.Findings;
using Trivet.Motion;
using Trivet.Numerics;

namespace Trivet.Protecting;

/// <summary>Devices, guards and gaps against the standards' distances.</summary>
public static class GuardChecks
{
    private const string At = "/guarding";

    public static StagePlan Of(Cell cell, ImmutableArray<TimedCycle> cycles) => Devices(cell) + Fences(cell, cycles) + Gaps(cell);

    private static StagePlan Devices(Cell cell)
    {
        var findings = ImmutableArray.CreateBuilder<Finding>();
        foreach (var (id, device) in cell.Guarding.Devices.InOrder())
        {
            string at = $"{At}/devices/{id}";
            var reading = new Reading();
            reading.Need(cell.Guarding.Edition, At + "/edition", DistanceEdition.Iso13855From2010);
            var approach = reading.Need(device.Approach, at + "/approach", ApproachDirection.Normal);
            double time = Time(device.SensingTime, device.SensingSource, "sensing") + Time(device.LogicTime, device.LogicSource, "logic")
                + Time(device.DriveTime, device.DriveSource, "drive") + Time(device.StopTime, device.StopSource, "stop");
            bool normal = approach == ApproachDirection.Normal;
            double resolution = reading.Need(device.Resolution, at + "/resolution");
            double height = normal ? reading.Or(device.FieldHeight, at + "/fieldHeight", double.NaN) : reading.Need(device.FieldHeight, at + "/fieldHeight");
            double distance = DistanceOf(cell, device, at, reading);
            bool measured = reading.Or(device.StopMeasured, at + "/stopMeasured", false);
            var subject = new Subject(at);
            Muting(device, at, findings);
            if (!reading.Complete) findings.Add(new Unjudged(ProtectRules.DeviceDistance, subject, reading.Inputs, OpenReason.Missing, reading.MissingFields));
            else if (device.SensingTime < 0 || device.LogicTime < 0 || device.DriveTime < 0 || device.StopTime < 0 || resolution < 0 || height < 0)
                findings.Add(new Unjudged(ProtectRules.Described, subject, reading.Inputs, OpenReason.Failed, [], ProtectReasons.Negative));
            else if (!normal && height < GuardTables.LowestField(resolution))
                findings.Add(new YesNo(ProtectRules.DeviceDistance, subject, reading.Inputs, false, [at + "/fieldHeight", at + "/resolution"])
                {
                    Advice = [new(at + "/fieldHeight", height, GuardTables.LowestField(resolution), double.NaN)],
                });
            else if (GuardTables.Device(approach, time, resolution, height) is var needed && double.IsNaN(needed))
                findings.Add(new Unjudged(ProtectRules.DeviceDistance, subject, reading.Inputs, OpenReason.Failed, [], normal ? ProtectReasons.ResolutionNotCovered : ProtectReasons.FieldTooHigh));
            else
            {
                // A stop that was not measured is an estimate, and an estimate protects nobody.
                findings.Add(new Judged(
                    ProtectRules.DeviceDistance, subject, reading.Inputs, distance, Limit.AtLeast(needed, new(SourceKind.Standard, "ISO-13855", "6.2.3")),
                    measured ? Assurance.Exact : Assurance.Estimated));
            }

            double Time(double? stated, string? source, string name)
            {
                reading.Used($"{at}/{name}Source", source);
                if (string.IsNullOrWhiteSpace(source)) reading.Missing($"{at}/{name}Source");
                return reading.Need(stated, $"{at}/{name}Time");
            }
        }
        return new(findings.ToImmutable(), cell.Guarding.Devices.IsEmpty ? [new(ProtectRules.DeviceDistance, new(At), ProtectReasons.NoDevices)] : [], []);
    }

    /// <summary>Computed from the device's line to all that the robot can get to; as typed where no line is stated or the robot is not described.</summary>
    private static double DistanceOf(Cell cell, ProtectiveDevice device, string at, Reading reading)
    {
        foreach (var (field, value) in new[] { ("fromX", device.FromX), ("fromY", device.FromY), ("toX", device.ToX), ("toY", device.ToY) }) reading.Used($"{at}/{field}", value);
        if (device is not { FromX: { } fromX, FromY: { } fromY, ToX: { } toX, ToY: { } toY }) return reading.Need(device.Distance, at + "/distance");
        var robot = new Reading();
        var space = MaximumSpace.Of(cell, robot);
        reading.Used(robot);
        Vec3 from = new(fromX, fromY, 0), to = new(toX, toY, 0);
        return space is null || (to - from).Norm < 1e-6 ? reading.Need(device.Distance, at + "/distance") : space.DistanceTo(from, to);
    }

    /// <summary>A device that is muted says by what, and what keeps people out meanwhile; whether that suffices is for a person to judge.</summary>
    private static void Muting(ProtectiveDevice device, string at, ImmutableArray<Finding>.Builder findings)
    {
        if (device.Muted != true) return;
        var reading = new Reading();
        reading.Used(at + "/muted", device.Muted);
        foreach (var (field, text) in new[] { ("mutedBy", device.MutedBy), ("mutedKeeps", device.MutedKeeps) })
        {
            reading.Used($"{at}/{field}", text);
            if (string.IsNullOrWhiteSpace(text)) reading.Missing($"{at}/{field}");
        }
        findings.Add(reading.Complete
            ? new Unjudged(ProtectRules.Muting, new(at), reading.Inputs, OpenReason.NotProved, [], ProtectReasons.MutingByPerson)
            : new Unjudged(ProtectRules.Muting, new(at), reading.Inputs, OpenReason.Missing, reading.MissingFields));
    }

    private static StagePlan Gaps(Cell cell)
    {
        var findings = ImmutableArray.CreateBuilder<Finding>();
        foreach (var (id, gap) in cell.Guarding.Gaps.InOrder())
        {
            string at = $"{At}/gaps/{id}";
            var reading = new Reading();
            var body = reading.Need(gap.Body, at + "/body", BodyPart.Body);
            double width = reading.Need(gap.Width, at + "/width");
            findings.Add(reading.Complete
                ? new Judged(ProtectRules.Gap, new(at), reading.Inputs, width, Limit.AtLeast(GuardTables.SmallestGap(body), new(SourceKind.Standard, "ISO-13854", "table 1")), Assurance.Exact)
                : new Unjudged(ProtectRules.Gap, new(at), reading.Inputs, OpenReason.Missing, reading.MissingFields));
        }
        return new(findings.ToImmutable(), cell.Guarding.Gaps.IsEmpty ? [new(ProtectRules.Gap, new(At), ProtectReasons.NoGaps)] : [], []);
    }

    private static StagePlan Fences(Cell cell, ImmutableArray<TimedCycle> cycles)
    {
        var findings = ImmutableArray.CreateBuilder<Finding>();
        var coverage = ImmutableArray.CreateBuilder<NotApplicable>();
        var tasks = ImmutableArray.CreateBuilder<StageTask>();
        if (cell.Guarding.Fences.IsEmpty) coverage.Add(new(ProtectRules.Clearance, new(At), ProtectReasons.NoFences));
        foreach (var (id, fence) in cell.Guarding.Fences.InOrder())
        {
            string at = $"{At}/fences/{id}";
            var subject = new Subject(at);
            Height(fence, at, findings);
            FloorGap(fence, at, findings, coverage);
            Energy(cell, cycles, fence, at, coverage, tasks);

            var reading = new Reading();
            var space = MaximumSpace.Of(cell, reading);
            var missing = reading.MissingFields;
            var line = new Reading();
            Vec3 from = new(line.Need(fence.FromX, at + "/fromX"), line.Need(fence.FromY, at + "/fromY"), 0), to = new(line.Need(fence.ToX, at + "/toX"), line.Need(fence.ToY, at + "/toY"), 0);
            reading.Used(line);
            if (!line.Complete) findings.Add(new Unjudged(ProtectRules.Clearance, subject, reading.Inputs, OpenReason.Missing, line.MissingFields));
            else if ((to - from).Norm < 1e-6) findings.Add(new Unjudged(ProtectRules.Described, subject, reading.Inputs, OpenReason.Failed, [], ProtectReasons.NoLength));
            else if (space is null) coverage.Add(new(ProtectRules.Clearance, subject, ProtectReasons.WaitsFor.Naming(missing.IsEmpty ? ["/robot"] : missing)));
            else
            {
                double distance = space.DistanceTo(from, to);
                findings.Add(new Judged(
                    ProtectRules.Clearance, subject, reading.Inputs, distance,
                    Limit.AtLeast(GuardTables.SmallestGap(BodyPart.Body), new(SourceKind.Standard, "ISO-13854", "table 1, body")), Assurance.Proved));
                Over(fence, at, space, distance, new(reading), findings, coverage);
                Through(fence, at, distance, new(reading), findings, coverage);
            }
        }
        return new(findings.ToImmutable(), coverage.ToImmutable(), tasks.ToImmutable());
    }

    private static void Height(Fence fence, string at, ImmutableArray<Finding>.Builder findings)
    {
        var reading = new Reading();
        double height = reading.Need(fence.Height, at + "/height");
        findings.Add(reading.Complete
            ? new Judged(ProtectRules.FenceHeight, new(at), reading.Inputs, height, Limit.AtLeast(GuardTables.LowestFence, new(SourceKind.Standard, "ISO-13857", "4.2.2")), Assurance.Exact)
            : new Unjudged(ProtectRules.FenceHeight, new(at), reading.Inputs, OpenReason.Missing, reading.MissingFields));
    }

    private static void FloorGap(Fence fence, string at, ImmutableArray<Finding>.Builder findings, ImmutableArray<NotApplicable>.Builder coverage)
    {
        var reading = new Reading();
        double gap = reading.Or(fence.FloorGap, at + "/floorGap", 0);
        if (gap > 0) findings.Add(new Judged(ProtectRules.FloorGap, new(at), reading.Inputs, gap, Limit.AtMost(GuardTables.LargestFloorGap, new(SourceKind.Standard, "ISO-13857", "lower limbs, slot")), Assurance.Exact));
        else coverage.Add(new(ProtectRules.FloorGap, new(at), ProtectReasons.OnTheFloor));
    }

    private static void Over(
        Fence fence, string at, MaximumSpace space, double distance, Reading reading, ImmutableArray<Finding>.Builder findings, ImmutableArray<NotApplicable>.Builder coverage)
    {
        var subject = new Subject(at);
        double height = reading.Need(fence.Height, at + "/height");
        var (low, high) = space.Heights;
        double needed = GuardTables.ReachOver(height, low, high);
        // Not stated is waited for; lower than the table's lowest guard is no guard against reaching over.
        if (double.IsNaN(height)) coverage.Add(new(ProtectRules.ReachOver, subject, ProtectReasons.WaitsFor.Naming(at + "/height")));
        else if (double.IsNaN(needed)) findings.Add(new YesNo(ProtectRules.ReachOver, subject, reading.Inputs, false, [at + "/height"]));
        else if (needed == 0) findings.Add(new YesNo(ProtectRules.ReachOver, subject, reading.Inputs, true, [at + "/height"]));
        else findings.Add(new Judged(ProtectRules.ReachOver, subject, reading.Inputs, distance, Limit.AtLeast(needed, new(SourceKind.FromMemory, "ISO-13857", "table 2")), Assurance.Proved));
    }

    private static void Through(
        Fence fence, string at, double distance, Reading reading, ImmutableArray<Finding>.Builder findings, ImmutableArray<NotApplicable>.Builder coverage)
    {
        var subject = new Subject(at);
        double size = reading.Or(fence.OpeningSize, at + "/openingSize", 0);
        if (size <= 0)
        {
            coverage.Add(new(ProtectRules.Opening, subject, ProtectReasons.Closed));
            return;
        }
        var shape = reading.Need(fence.Opening, at + "/opening", OpeningShape.Slot);
        double needed = GuardTables.ReachThrough(shape, size);
        if (!reading.Complete) findings.Add(new Unjudged(ProtectRules.Opening, subject, reading.Inputs, OpenReason.Missing, reading.MissingFields));
        else if (double.IsInfinity(needed)) findings.Add(new YesNo(ProtectRules.Opening, subject, reading.Inputs, false, [at + "/openingSize"]));
        else findings.Add(new Judged(ProtectRules.Opening, subject, reading.Inputs, distance, Limit.AtLeast(needed, new(SourceKind.FromMemory, "ISO-13857", "table 4")), Assurance.Proved));
    }

    private static void Energy(
        Cell cell, ImmutableArray<TimedCycle> cycles, Fence fence, string at, ImmutableArray<NotApplicable>.Builder coverage, ImmutableArray<StageTask>.Builder tasks)
    {
        var subject = new Subject(at);
        var reading = new Reading();
        reading.Used(at + "/largestImpact", fence.LargestImpact);
        if (fence.LargestImpact is not { } stops)
        {
            coverage.Add(new(ProtectRules.Thrown, subject, ProtectReasons.NoImpact));
            return;
        }
        if (cycles.All(c => c.Input is null))
        {
            coverage.Add(new(ProtectRules.Thrown, subject, ProtectReasons.WaitsFor.Naming("/motion/cycles")));
            return;
        }
        foreach (var cycle in cycles) reading.Used(cycle.Reading());
        foreach (var (id, chain) in cell.Robot.Chains) reading.Used($"/robot/chains/{id}/rodMass", chain.RodMass);
        reading.Used("/robot/common/rodMass", cell.Robot.Common.RodMass);
        tasks.Add(new($"{ProtectRules.Thrown.Id}:{at}", reading.Key, Judge, _ => Judge()));

        ImmutableArray<Finding> Judge() => cycles.SelectMany(c => Thrown.Of(cell, c)).MaxBy(t => t.Energy) is not { } worst ? [] :
        [
            new Judged(
                ProtectRules.Thrown, new(at, worst.What == "part" ? "" : worst.What), reading.Inputs, worst.Energy, Limit.AtMost(stops, new(SourceKind.Cell, at + "/largestImpact")), Assurance.Estimated)
            { Worst = worst.Place, WorstTime = worst.T },
        ];
    }
}
