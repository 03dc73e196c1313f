using System.Collections.Immutable;
using Trivet.BringUp;
using Trivet.Cells;
using Trivet.Faults;
using Trivet.Findings;

namespace Trivet.Procedures;

/// <summary>At the site, with nothing connected: the place made ready, the frame set, the robot hung and tightened.</summary>
internal static class Erecting
{
    /// <summary>Slope of a frame that counts as level. Common practice, no source.</summary>
    private const double Level = 0.5e-3;

    private static readonly Source Practice = new(SourceKind.CommonPractice, "");

    public static void Add(StepList steps)
    {
        var cell = steps.Cell;
        Site(steps);
        Frame(steps);
        var after = steps.After(Gate.Frame, Gate.Bench);
        var lift = new Reading();
        var robot = cell.Handling.Lifts.InOrder().FirstOrDefault(l => !string.IsNullOrWhiteSpace(l.Value.Aid));
        if (robot.Key is null) lift.Missing("/handling/lifts");
        else lift.Used($"/handling/lifts/{robot.Key}/aid", robot.Value.Aid);
        double mass = lift.Need(cell.Handling.Hanging.Mass, "/handling/hanging/mass");
        // The first bolts that carry alone; a count that nobody stated is not asked for as none.
        int bolts = lift.Need(cell.Handling.Hanging.Bolts, "/handling/hanging/bolts", 0);
        string hung = steps.Add("robot-hung", "", "/robot", StepPlace.Site, EnergyLevel.Isolated, Skill.Fitter, 60, after, lift, s => s with
        {
            People = 2,
            Names = robot.Value?.Aid is { } aid ? [aid] : [],
            Numbers = [new("mass", "kg", mass), new("bolts", "1", bolts > 0 ? bolts : double.NaN)],
            Asks = [bolts > 0 ? new AskedCount("bolts", bolts) : new AskedText("bolts"), new AskedChoice("aid", ["carries", "not-used"], "carries"), new AskedPhotograph("hung")],
            Tools = ["lifting-gear", "torque-wrench"],
            HoldPoint = true,
        });
        // Props come before anything of the robot can sink.
        steps.Fitted = steps.CameAssembled ? Fitted.Whole : Fitted.Carriages;

        var measured = ImmutableArray.CreateBuilder<string>();
        foreach (var length in MeasuringSteps.Of(cell).Where(m => m.What is MeasuredLength.MountHeight or MeasuredLength.ChainDistance)) measured.Add(Length(steps, length, [hung]));
        var level = new Reading();
        measured.Add(steps.Add("mount-level", "", "/mount", StepPlace.Site, EnergyLevel.Isolated, Skill.Fitter, 10, [hung], level, s => s with
        {
            Asks = Levels(),
            Tools = ["spirit-level"],
            Probes = [Probe.LevelAndDiagonals],
            UpsetBy = [Upset.Transported],
        }));
        var tight = ImmutableArray.CreateBuilder<string>();
        foreach (var (id, joint) in cell.Joints.InOrder())
            if (joint.Load == JointLoad.Mount) tight.Add(Shop.Joint(steps, id, StepPlace.Site, measured.ToImmutable()));
        var marks = new Reading();
        marks.Used("/mount/yaw", cell.Mount.Yaw);
        marks.Used("/robot/numberedCounterClockwise", cell.Robot.NumberedCounterClockwise);
        foreach (var (id, chain) in cell.Robot.Chains.InOrder()) marks.Used($"/robot/chains/{id}/azimuth", chain.Azimuth ?? cell.Robot.Common.Azimuth);
        string marked = steps.Add("base-marks", "", "/robot", StepPlace.Site, EnergyLevel.Isolated, Skill.Engineer, 5, [hung], marks, s => s with
        {
            Names = [.. cell.Robot.Chains.InOrder().Select(c => c.Key)],
            Asks = [new AskedChoice("front", ["as-planned", "differs"], "as-planned"), new AskedPhotograph("from-above")],
            Probes = [Probe.PlacesAgainstPlan],
        });
        steps.Gates[Gate.Robot] = [.. measured, .. tight, marked, Proving.Frame(steps, [hung, .. measured, .. tight])];
    }

    private static void Site(StepList steps)
    {
        var cell = steps.Cell;
        var reading = new Reading();
        var asks = ImmutableArray.CreateBuilder<Asked>();
        asks.Add(new AskedChoice("floor", ["carries", "not-known"], "carries"));
        asks.Add(new AskedChoice("access", ["free", "not-free"], "free"));
        asks.Add(new AskedChoice("lifting", ["there", "not-there"], "there"));
        reading.Used("/pneumatics/users", string.Join('\n', cell.Pneumatics.Users.Keys));
        if (!cell.Pneumatics.Users.IsEmpty)
        {
            double pressure = reading.Need(cell.Pneumatics.SupplyPressure, "/pneumatics/supplyPressure");
            asks.Add(new AskedValue("air", "Pa", pressure, double.IsNaN(pressure) ? null : Limit.AtLeast(pressure, new(SourceKind.Cell, "/pneumatics/supplyPressure"))));
        }
        foreach (var (id, source) in cell.Cabinet.Sources.InOrder())
        {
            reading.Used($"/cabinet/sources/{id}/alternating", source.Alternating);
            reading.Used($"/cabinet/sources/{id}/fedBy", source.FedBy);
            if (source.Alternating != true || source.FedBy is not null) continue;
            double volts = reading.Need(source.Voltage, $"/cabinet/sources/{id}/voltage");
            // IEC 60204-1, 4.3.2: the equipment works between nine and eleven tenths of the nominal voltage.
            asks.Add(new AskedValue("mains", "V", volts, double.IsNaN(volts) ? null : Limit.Between(0.9 * volts, 1.1 * volts, new(SourceKind.FromMemory, "IEC-60204-1", "4.3.2"))));
        }
        reading.Used("/cabinet/sources", string.Join('\n', cell.Cabinet.Sources.Keys));
        steps.Gates[Gate.Site] =
        [
            steps.Add("site-ready", "", "/brief", StepPlace.Site, EnergyLevel.Isolated, Skill.Electrician, 30, [], reading, s => s with
            {
                Asks = asks.ToImmutable(), Tools = ["voltmeter"], HoldPoint = true, UpsetBy = [Upset.Transported],
            }),
        ];
    }

    private static void Frame(StepList steps)
    {
        var cell = steps.Cell;
        var reading = new Reading();
        reading.Used("/frame/feet/anchored", cell.Frame.Feet.Anchored);
        reading.Used("/frame/feet/threadPitch", cell.Frame.Feet.ThreadPitch);
        double pitch = cell.Frame.Feet.ThreadPitch is > 0 and var p ? p : double.NaN;
        string set = steps.Add("frame-level", "", "/frame", StepPlace.Site, EnergyLevel.Isolated, Skill.Fitter, 40, steps.After(Gate.Site, Gate.Bench), reading, s => s with
        {
            People = 2,
            // A flat is a sixth of a turn: the spanner's grip on the foot's hexagon.
            Numbers = double.IsNaN(pitch) ? [] : [new("pitch", "m", pitch), new("flat", "m", pitch / 6), new("turns", "1", 1e-3 / pitch)],
            Asks = [.. Levels(), new AskedValue("diagonals", "m", 0, Limit.Between(-2e-3, 2e-3, Practice)), new AskedChoice("feet", ["all-carry", "one-hangs"], "all-carry")],
            Tools = ["spirit-level", "tape", "spanners"],
            Probes = [Probe.LevelAndDiagonals],
            UpsetBy = [Upset.Transported],
        });
        if (cell.Frame.Feet.Anchored != true)
        {
            steps.Gates[Gate.Frame] = [set];
            return;
        }
        var anchors = new Reading();
        anchors.Used("/frame/feet/anchored", cell.Frame.Feet.Anchored);
        anchors.Used("/frame/limits/largestAnchorPull", cell.Frame.Limits.LargestAnchorPull);
        steps.Gates[Gate.Frame] =
        [
            steps.Add("frame-anchored", "", "/frame/feet", StepPlace.Site, EnergyLevel.Isolated, Skill.Fitter, 30, [set], anchors, s => s with
            {
                Asks = [new AskedChoice("anchors", ["all-at-torque", "not-all"], "all-at-torque"), .. Levels(), new AskedPhotograph("anchors-seen")],
                Tools = ["torque-wrench", "spirit-level", "drill"],
                Probes = [Probe.LevelAndDiagonals],
                HoldPoint = true,
                UpsetBy = [Upset.Transported],
            }),
        ];
    }

    /// <summary>Read twice, the level turned between.</summary>
    private static ImmutableArray<Asked> Levels() =>
    [
        new AskedValue("slope-x", "1", 0, Limit.Between(-Level, Level, Practice)), new AskedValue("slope-y", "1", 0, Limit.Between(-Level, Level, Practice)),
    ];

    /// <summary>A length as <see cref="MeasuringSteps"/> has it. The plan is shown after the reading: whoever knows it reads it.</summary>
    public static string Length(StepList steps, Measuring of, ImmutableArray<string> after)
    {
        var reading = new Reading();
        foreach (string input in of.Inputs) reading.Used(input, null);
        string where = of.Subject.Pointer.Split('/')[^1];
        return steps.Add($"measure-{Kebab(of.What.ToString())}", of.Subject.Case.Length > 0 ? of.Subject.Case.Replace(' ', '-') : where, of.Subject.Pointer, StepPlace.Site, EnergyLevel.Isolated, Skill.Fitter, 4, after,
            reading, s => s with
            {
                Names = [.. of.Subject.Case.Length > 0 ? of.Subject.Case.Split(" to ") : [where]],
                Asks = [new AskedValue("length", "m", of.Planned, of.Limit, ShownAfter: true)],
                Tools = ["tape"],
                UpsetBy = [Upset.Transported],
            });
    }

    private static string Kebab(string name) => string.Concat(name.Select((c, i) => char.IsUpper(c) ? (i > 0 ? "-" : "") + char.ToLowerInvariant(c) : c.ToString()));
}
