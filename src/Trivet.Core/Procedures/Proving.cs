using System.Collections.Immutable;
using Trivet.BringUp;
using Trivet.Cells;
using Trivet.Faults;
using Trivet.Findings;
using Trivet.Tooling;

namespace Trivet.Procedures;

/// <summary>From the first output to the hand-over.</summary>
internal static class Proving
{
    /// <summary>Speed of the first coordinated moves, m/s. Common practice: far below the 250 mm/s of reduced speed (ISO 10218).</summary>
    private const double SlowSpeed = 0.05;

    private static readonly Source Practice = new(SourceKind.CommonPractice, "");

    public static void Add(StepList steps)
    {
        Gripping(steps);
        Payload(steps);
        string slow = Slow(steps);
        var moving = ImmutableArray.CreateBuilder<string>();
        moving.Add(slow);
        if (steps.Cell.Robot.Rotary.Fitted == true) moving.Add(QuarterTurns(steps, slow));
        foreach (var (id, station) in steps.Cell.Stations.InOrder())
            if (station.Kind == StationKind.Belt) moving.Add(Belt(steps, id, slow));
        string stop = StopTime(steps, moving.ToImmutable());
        string dial = Dial(steps, [stop]);
        var calibrated = Calibrate(steps, [dial]);
        string run = LongRun(steps, [.. calibrated, stop]);
        steps.Gates[Gate.Proved] = [run];
        HandOver(steps);
    }

    private static void Gripping(StepList steps)
    {
        var cell = steps.Cell;
        var gripping = ImmutableArray.CreateBuilder<string>();
        var after = steps.After(Gate.Tool, Gate.StopChain, Gate.Control);
        string[] outputs = [.. cell.Io.Signals.InOrder().Where(s => s.Value.Direction == SignalDirection.Output).Select(s => s.Key)];
        // Empty first; then what holds, before anything is held.
        Act("empty", bounded: true);
        bool vacuum = cell.Tool.Vacuum.Cups > 0 || cell.Tool.Vacuum.Level is not null;
        if (!vacuum && !cell.Pneumatics.Users.IsEmpty)
        {
            var air = new Reading();
            air.Used("/pneumatics/users", string.Join('\n', cell.Pneumatics.Users.Keys));
            gripping.Add(steps.Add("air", "", "/pneumatics", StepPlace.Site, EnergyLevel.ControlSupplyOnly, Skill.Engineer, 8, [.. after, .. gripping], air, s => s with
            {
                Names = [.. cell.Pneumatics.Users.InOrder().Select(u => Shop.Named(air, $"/pneumatics/users/{u.Key}/name", u.Value.Name, u.Key))],
                Asks = [new AskedCount("users", cell.Pneumatics.Users.Count), new AskedValue("time", "s", double.NaN, null), new AskedChoice("leaks", ["none", "heard"], "none")],
                Tools = ["eye-protection"],
                Probes = [Probe.GripRise],
            }));
        }
        if (vacuum)
        {
            var reading = new Reading();
            double level = reading.Need(cell.Tool.Vacuum.Level, "/tool/vacuum/level");
            gripping.Add(steps.Add("vacuum", "", "/tool/vacuum", StepPlace.Site, EnergyLevel.ControlSupplyOnly, Skill.Engineer, 8, [.. after, .. gripping], reading, s => s with
            {
                Asks = [new AskedValue("level", "Pa", level, double.IsNaN(level) ? null : Limit.AtLeast(level, new(SourceKind.Cell, "/tool/vacuum/level"))), new AskedValue("rise", "s", double.NaN, null)],
                Tools = ["vacuum-gauge"],
                Probes = [Probe.GripRise],
            }));
        }
        Act("with-part", bounded: false);
        steps.Gates[Gate.Gripping] = gripping.ToImmutable();

        void Act(string way, bool bounded)
        {
            if (outputs.Length == 0) return;
            var reading = new Reading();
            reading.Used("/io/signals", string.Join('\n', cell.Io.Signals.Keys));
            foreach (string id in outputs)
            {
                reading.Used($"/io/signals/{id}/bank", cell.Io.Signals[id].Bank);
                reading.Used($"/io/signals/{id}/channel", cell.Io.Signals[id].Channel);
                reading.Used($"/io/signals/{id}/direction", cell.Io.Signals[id].Direction);
            }
            gripping.Add(steps.Add("outputs", way, "/io/signals", StepPlace.Site, EnergyLevel.ControlSupplyOnly, Skill.Engineer, 3 + 2 * outputs.Length, [.. after, .. gripping], reading, s => s with
            {
                Names = [.. outputs.Select(id => Shop.Named(reading, $"/io/signals/{id}/name", cell.Io.Signals[id].Name, id))],
                Asks = [new AskedCount("as-planned", outputs.Length), new AskedChoice("answers", ["as-planned", "swapped", "none"], "as-planned")],
                Tools = ["eye-protection"],
                Bounded = bounded,
                Probes = [Probe.Outputs],
                UpsetBy = [Upset.PlugsMoved],
            }));
        }
    }

    private static void Payload(StepList steps)
    {
        var reading = new Reading();
        var tool = ToolInputs.Read(steps.Cell, reading);
        double mass = tool.Elements.Sum(e => e.Body.Mass);
        steps.Gates[Gate.Gripping] =
        [
            .. steps.After(Gate.Gripping),
            steps.Add("payload", "", "/tool", StepPlace.Site, EnergyLevel.ControlSupplyOnly, Skill.Engineer, 5, steps.After(Gate.Tool, Gate.Control), reading, s => s with
            {
                Numbers = [new("mass", "kg", mass)],
                // Scales of a workshop: a twentieth. Common practice, no source.
                Asks = [new AskedValue("weighed", "kg", mass, mass > 0 ? Limit.Between(0.95 * mass, 1.05 * mass, Practice) : null, ShownAfter: true), new AskedChoice("set", ["as-weighed", "differs"], "as-weighed")],
                Tools = ["scales"],
            }),
        ];
    }

    private static string Slow(StepList steps)
    {
        var reading = new Reading();
        reading.Used("/mount/yaw", steps.Cell.Mount.Yaw);
        reading.Used("/controller/frameYaw", steps.Cell.Controller.FrameYaw);
        reading.Used("/controller/zDown", steps.Cell.Controller.ZDown);
        return steps.Add("slow-moves", "", "/robot", StepPlace.Site, EnergyLevel.AllAxes, Skill.Engineer, 15, steps.After(Gate.Homed, Gate.Rotary, Gate.Tool, Gate.Gripping, Gate.FirstEnable), reading, s => s with
        {
            People = 2,
            Numbers = [new("speed", "m/s", SlowSpeed)],
            Asks =
            [
                new AskedChoice("plus-x", ["as-planned", "turned", "mirrored"], "as-planned"), new AskedChoice("plus-y", ["as-planned", "turned", "mirrored"], "as-planned"),
                new AskedChoice("plus-z", ["as-planned", "mirrored"], "as-planned"),
            ],
            Probes = [Probe.SlowCartesian],
            HoldPoint = true,
            UpsetBy = [Upset.PowerCycled, Upset.PlugsMoved, Upset.Transported],
        });
    }

    private static string QuarterTurns(StepList steps, string after)
    {
        var reading = new Reading();
        reading.Used("/robot/rotary/travelFrom", steps.Cell.Robot.Rotary.TravelFrom);
        reading.Used("/robot/rotary/travelTo", steps.Cell.Robot.Rotary.TravelTo);
        return steps.Add("quarter-turns", "", "/robot/rotary", StepPlace.Site, EnergyLevel.AllAxes, Skill.Engineer, 8, [after], reading, s => s with
        {
            People = 2,
            Asks = [new AskedChoice("sense", ["as-planned", "reversed"], "as-planned"), new AskedValue("circle", "m", 0, Limit.AtMost(0.2e-3, Practice))],
            Tools = ["ruled-plate"],
            Probes = [Probe.RotaryTurn],
        });
    }

    private static string Belt(StepList steps, string id, string after)
    {
        string at = $"/stations/{id}";
        var reading = new Reading();
        string name = Shop.Named(reading, at + "/name", steps.Cell.Stations[id].Name, id);
        const double stretch = 0.5;
        return steps.Add("belt-tape", id, at, StepPlace.Site, EnergyLevel.ControlSupplyOnly, Skill.Engineer, 10, [after], reading, s => s with
        {
            Names = [name],
            Numbers = [new("stretch", "m", stretch)],
            // Three tenths of a millimetre of the tape on each end over half a metre. Common practice, no source.
            Asks = [new AskedValue("counted", "m", stretch, Limit.Between(stretch - 1e-3, stretch + 1e-3, Practice)), new AskedChoice("sense", ["as-planned", "reversed"], "as-planned")],
            Tools = ["tape"],
            Probes = [Probe.BeltByTape],
        });
    }

    /// <summary>Before anything is energised: people reach in, and the tap finds a loose joint while it can still be tightened.</summary>
    public static string Frame(StepList steps, ImmutableArray<string> after)
    {
        var reading = new Reading();
        reading.Used("/frame/limits/lowestFrequency", steps.Cell.Frame.Limits.LowestFrequency);
        double? least = steps.Cell.Frame.Limits.LowestFrequency;
        return steps.Add("pull-or-tap", "", "/frame", StepPlace.Site, EnergyLevel.Isolated, Skill.Fitter, 15, after, reading, s => s with
        {
            Asks = [new AskedValue("frequency", "Hz", double.NaN, least is { } f ? Limit.AtLeast(f, new(SourceKind.Cell, "/frame/limits/lowestFrequency")) : null), new AskedChoice("joints", ["all-tight", "one-loose"], "all-tight")],
            Tools = ["dial-indicator", "spring-balance"],
            Probes = [Probe.PullOrTap],
            UpsetBy = [Upset.Transported],
        });
    }

    /// <summary>The worst stop there is: all axes from full speed, the supplies logged. A guard distance rests on it.</summary>
    private static string StopTime(StepList steps, ImmutableArray<string> after)
    {
        var cell = steps.Cell;
        var reading = new Reading();
        double planned = double.NaN;
        foreach (var (id, device) in cell.Guarding.Devices)
        {
            reading.Used($"/guarding/devices/{id}/stopTime", device.StopTime);
            if (device.StopTime is { } time && !(time > planned)) planned = time;
        }
        reading.Used("/guarding/devices", string.Join('\n', cell.Guarding.Devices.Keys));
        double top = cell.Drives.Supply.HighestVoltage ?? double.NaN;
        reading.Used("/drives/supply/highestVoltage", cell.Drives.Supply.HighestVoltage);
        return steps.Add("stop-time", "", "/guarding", StepPlace.Site, EnergyLevel.AllAxes, Skill.SafetyPerson, 30, after, reading, s => s with
        {
            People = 2,
            Asks =
            [
                new AskedValue("time", "s", planned, double.IsNaN(planned) ? null : Limit.AtMost(planned, new(SourceKind.Cell, "/guarding/devices"))), new AskedValue("distance", "m", double.NaN, null),
                new AskedValue("motor-voltage", "V", double.NaN, double.IsNaN(top) ? null : Limit.AtMost(top, new(SourceKind.Cell, "/drives/supply/highestVoltage"))),
                new AskedSignature("safety-person", Skill.SafetyPerson),
            ],
            Tools = ["stop-time-meter"],
            Bounded = true,
            Probes = [Probe.StopAllAxes],
            HoldPoint = true,
        });
    }

    private static string Dial(StepList steps, ImmutableArray<string> after) =>
        steps.Add("dial-cycles", "", "/robot", StepPlace.Site, EnergyLevel.AllAxes, Skill.Engineer, 20, after, new Reading(), s => s with
        {
            People = 2,
            Asks = [new AskedValue("drift", "m", 0, Limit.Between(-0.1e-3, 0.1e-3, Practice)), new AskedCount("cycles", 50)],
            Tools = ["dial-indicator"],
            Probes = [Probe.DialAfterCycles],
        });

    private static ImmutableArray<string> Calibrate(StepList steps, ImmutableArray<string> after)
    {
        var ids = ImmutableArray.CreateBuilder<string>();
        Measuring[] lengths = [.. MeasuringSteps.Of(steps.Cell).Where(l => l.What is MeasuredLength.StationHeight or MeasuredLength.TrayAlongColumns or MeasuredLength.TrayAlongRows)];
        // Hands go in where the tool works.
        string locked = lengths.Length > 0 ? Completing.Isolate(steps, "stations", after) : "";
        foreach (var length in lengths) ids.Add(Erecting.Length(steps, length, [locked]));
        var reading = new Reading();
        reading.Used("/stations", string.Join('\n', steps.Cell.Stations.Keys));
        ids.Add(steps.Add("calibrate", "", "/robot", StepPlace.Site, EnergyLevel.AllAxes, Skill.Engineer, 60, [.. after, .. ids], reading, s => s with
        {
            People = 2,
            Asks = [new AskedCount("points", 13), new AskedText("file"), new AskedText("instruments")],
            Tools = ["ruled-plate", "dial-indicator"],
            UpsetBy = [Upset.Transported],
        }));
        return ids.ToImmutable();
    }

    private static string LongRun(StepList steps, ImmutableArray<string> after)
    {
        var reading = new Reading();
        double? peak = steps.Cell.Brief.PeakRate;
        reading.Used("/brief/peakRate", peak);
        return steps.Add("long-run", "", "/motion", StepPlace.Site, EnergyLevel.AllAxes, Skill.Engineer, 75, after, reading, s => s with
        {
            Asks = [new AskedValue("rate", "1/s", peak ?? double.NaN, peak is { } p ? Limit.AtLeast(p, new(SourceKind.Cell, "/brief/peakRate")) : null), new AskedCount("errors", 0), new AskedChoice("temperatures", ["steady", "rise"], "steady")],
            Tools = ["thermometer", "counter"],
            Probes = [Probe.LongRun],
        });
    }

    private static void HandOver(StepList steps)
    {
        var cell = steps.Cell;
        var accepted = ImmutableArray.CreateBuilder<string>();
        foreach (var (id, requirement) in cell.Brief.Requirements.InOrder())
        {
            string at = $"/brief/requirements/{id}";
            var reading = new Reading();
            reading.Used(at + "/text", requirement.Text);
            reading.Used(at + "/tolerance", requirement.Tolerance);
            reading.Used(at + "/provenBy", requirement.ProvenBy);
            reading.Used(at + "/order", requirement.Order);
            accepted.Add(steps.Add("requirement", id, at, StepPlace.Site, EnergyLevel.AllAxes, Skill.Engineer, 20, steps.After(Gate.Proved), reading, s => s with
            {
                Names = [requirement.Text ?? id],
                Asks = [new AskedChoice("met", ["met", "not-met", "met-with-remark"], "met"), new AskedText("evidence")],
            }));
        }
        accepted.Add(steps.Add("backup", "", "/controller", StepPlace.Site, EnergyLevel.ControlSupplyOnly, Skill.Engineer, 15, steps.After(Gate.Proved), new Reading(), s => s with
        {
            Asks = [new AskedChoice("restored", ["equal", "differs"], "equal"), new AskedText("file")],
        }));
        accepted.Add(steps.Add("training", "", "/brief", StepPlace.Site, EnergyLevel.AllAxes, Skill.Customer, 90, steps.After(Gate.Proved), new Reading(), s => s with
        {
            People = 2,
            Asks = [new AskedText("shown"), new AskedText("done-unaided"), new AskedSignature("customer", Skill.Customer)],
        }));
        steps.Gates[Gate.Accepted] = accepted.ToImmutable();
        steps.Add("hand-over", "", "/brief", StepPlace.Site, EnergyLevel.Isolated, Skill.Engineer, 30, steps.After(Gate.Accepted), new Reading(), s => s with
        {
            Asks = [new AskedText("open-points"), new AskedSignature("engineer", Skill.Engineer), new AskedSignature("customer", Skill.Customer)],
            HoldPoint = true,
        });
    }
}
