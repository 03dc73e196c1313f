using System.Collections.Immutable;
using Trivet.Cells;
using Trivet.Faults;
using Trivet.Findings;

namespace Trivet.Procedures;

/// <summary>
/// Which wire leads to which axis: by hand and by target with only the control supply on, then by a few millimetres of one propped axis. Carriages are tried
/// alone only while rods and platform are not fitted; of a robot that came assembled the platform is pushed, and no chain is homed by itself.
/// </summary>
internal static class Identifying
{
    /// <summary>Travel by hand, and the share of it that a ruler and a hand may be off. Common practice, no source.</summary>
    private const double HandTravel = 0.05, HandTurn = 10 * Math.PI / 180, HandShare = 0.1;

    /// <summary>Travel of the first move. Common practice, no source: far less than any harm needs.</summary>
    private const double JogTravel = 0.003, JogTurn = Math.PI / 180;

    private static readonly Source Practice = new(SourceKind.CommonPractice, "");

    public static void Add(StepList steps)
    {
        var cell = steps.Cell;
        var after = steps.After(Gate.Control, Gate.StopChain);
        var known = ImmutableArray.CreateBuilder<string>();
        if (steps.CameAssembled) known.Add(Push(steps, after));
        var axes = steps.Axes.Where(a => a.Id != "rotary").ToArray();
        if (!steps.CameAssembled)
            foreach (var (id, pointer) in axes)
                if (HasFeedback(cell, id)) known.Add(Hand(steps, id, pointer, after));
        foreach (var (id, travel) in cell.Io.Switches.InOrder())
            if (travel.Axis != "rotary") known.Add(Target(steps, id, travel, after));
        steps.Gates[Gate.Inputs] = known.ToImmutable();

        if (axes.Length == 0) return;
        // The first enable of all: one axis, propped, and the stop chain once more.
        string first = ControlSupply.StopChain(steps, "first-enable", axes[0].Id, axes[0].Pointer, EnergyLevel.OneAxisLimited, steps.After(Gate.Inputs, Gate.Control, Gate.StopChain));
        steps.Gates[Gate.FirstEnable] = [first];
        var identified = ImmutableArray.CreateBuilder<string>();
        foreach (var (id, pointer) in axes)
        {
            string jogged = Jog(steps, id, pointer, [first]);
            identified.Add(jogged);
            if (!steps.CameAssembled) identified.Add(Home(steps, id, pointer, [jogged]));
        }
        steps.Gates[Gate.Identified] = identified.ToImmutable();
    }

    private static bool HasFeedback(Cell cell, string axis) =>
        !cell.Robot.Chains.TryGetValue(axis, out var chain) || (chain.Feedback ?? cell.Robot.Common.Feedback) is not (null or Feedback.None);

    private static Reading Of(Cell cell, string axis)
    {
        var reading = new Reading();
        reading.Used("/robot/family", cell.Robot.Family);
        if (!cell.Robot.Chains.TryGetValue(axis, out var chain)) return reading;
        reading.Used($"/robot/chains/{axis}/feedback", chain.Feedback);
        reading.Used("/robot/common/feedback", cell.Robot.Common.Feedback);
        return reading;
    }

    public static string Hand(StepList steps, string axis, string pointer, ImmutableArray<string> after)
    {
        var reading = Of(steps.Cell, axis);
        Mapped(steps.Cell, axis, reading);
        double travel = steps.Turns(axis) ? HandTurn : HandTravel;
        // What decides which way and how far the reading counts.
        var typed = ControlSupply.Settings(steps.Cell, reading, s => s.Of == axis && s.Quantity is SettingQuantity.Direction or SettingQuantity.DriveStep or SettingQuantity.TravelPerTurn or SettingQuantity.Ratio or SettingQuantity.CountsPerTurn);
        return steps.Add("hand-move", axis, pointer, StepPlace.Site, EnergyLevel.ControlSupplyOnly, Skill.Engineer, 4, after, reading, s => s with
        {
            People = 2,
            Numbers = [new("travel", steps.Turns(axis) ? "rad" : "m", travel)],
            Settings = typed,
            Held = [.. s.Held.Select(h => h.Chain == axis ? h with { By = "prop" } : h)],
            Asks =
            [
                new AskedChoice("counts", ["this-axis", "another", "none", "two"], "this-axis"), new AskedChoice("sense", ["as-planned", "reversed"], "as-planned"),
                new AskedValue("travel", steps.Turns(axis) ? "rad" : "m", travel, Limit.Between(travel * (1 - HandShare), travel * (1 + HandShare), Practice)),
                new AskedChoice("repeats", ["returns", "does-not"], "returns"),
            ],
            Tools = ["ruler", "props"],
            Probes = [Probe.HandMove, Probe.TravelByRuler],
            UpsetBy = [Upset.PlugsMoved, Upset.Transported],
        });
    }

    /// <summary>What the user's controller calls the axis and which way it counts.</summary>
    private static void Mapped(Cell cell, string axis, Reading reading)
    {
        foreach (var (id, mapped) in cell.Controller.Axes)
        {
            reading.Used($"/controller/axes/{id}/drives", mapped.Drives);
            if (mapped.Drives != axis) continue;
            reading.Used($"/controller/axes/{id}/reversed", mapped.Reversed);
            reading.Used($"/controller/axes/{id}/perUnit", mapped.PerUnit);
        }
        reading.Used("/controller/axes", string.Join('\n', cell.Controller.Axes.Keys));
    }

    private static string Target(StepList steps, string id, TravelSwitch travel, ImmutableArray<string> after)
    {
        string at = $"/io/switches/{id}";
        var reading = new Reading();
        string name = Shop.Named(reading, at + "/name", travel.Name, id);
        reading.Used(at + "/signal", travel.Signal);
        reading.Used(at + "/kind", travel.Kind);
        return steps.Add("switch-target", id, at, StepPlace.Site, EnergyLevel.ControlSupplyOnly, Skill.Engineer, 2, after, reading, s => s with
        {
            Names = [name],
            Asks = [new AskedChoice("input", ["this-input", "another", "none", "two"], "this-input"), new AskedChoice("sense", ["as-planned", "reversed"], "as-planned")],
            Tools = travel.Kind == SwitchKind.Inductive ? ["steel-target"] : [],
            Probes = [Probe.SwitchTarget],
            UpsetBy = [Upset.PlugsMoved, Upset.Transported],
        });
    }

    public static string Jog(StepList steps, string axis, string pointer, ImmutableArray<string> after)
    {
        var reading = Of(steps.Cell, axis);
        var drives = steps.Cell.Drives;
        string? motor = drives.Axes.GetValueOrDefault(axis)?.Motor;
        reading.Used($"/drives/axes/{axis}/motor", motor);
        if (motor is null && steps.Cell.Robot.Chains.ContainsKey(axis)) reading.Used("/drives/common/motor", motor = drives.Common.Motor);
        if (motor is not null) reading.Used($"/drives/motors/{motor}/kind", drives.Motors.GetValueOrDefault(motor)?.Kind);
        bool turns = steps.Turns(axis);
        return steps.Add("small-jog", axis, pointer, StepPlace.Site, EnergyLevel.OneAxisLimited, Skill.Engineer, 4, after, reading, s => s with
        {
            People = 2,
            Numbers = [new("travel", turns ? "rad" : "m", turns ? JogTurn : JogTravel)],
            Asks =
            [
                new AskedChoice("moves", ["this-axis", "another", "nothing", "runs-off", "hums"], "this-axis"), new AskedChoice("sense", ["as-planned", "reversed"], "as-planned"),
                new AskedChoice("reading", ["follows", "another-follows", "stands"], "follows"),
            ],
            Tools = ["props"],
            Bounded = true,
            Probes = [Probe.SmallJog],
            UpsetBy = [Upset.PlugsMoved, Upset.Transported],
        });
    }

    public static string Home(StepList steps, string axis, string pointer, ImmutableArray<string> after)
    {
        var reading = Of(steps.Cell, axis);
        return steps.Add("home-alone", axis, pointer, StepPlace.Site, EnergyLevel.OneAxis, Skill.Engineer, 6, after, reading, s => s with
        {
            People = 2,
            Asks =
            [
                new AskedChoice("homes", ["at-its-switch", "away-from-it", "another", "at-once", "times-out"], "at-its-switch"), new AskedChoice("after", ["stays", "goes-limp"], "stays"),
                new AskedChoice("disabled", ["holds", "sinks"], "holds"), new AskedValue("scatter", steps.Turns(axis) ? "rad" : "m", 0, Limit.AtMost(steps.Turns(axis) ? 3e-4 : 1e-4, Practice)),
            ],
            Tools = ["props", "dial-indicator"],
            Bounded = true,
            Probes = [Probe.Homing, Probe.DisableAndWatch],
            UpsetBy = [Upset.PowerCycled, Upset.PlugsMoved, Upset.Transported],
        });
    }

    /// <summary>Lift, then two pushes, drives off: order, sense, handedness and turn of the base at once.</summary>
    public static string Push(StepList steps, ImmutableArray<string> after)
    {
        var reading = new Reading();
        reading.Used("/robot/family", steps.Cell.Robot.Family);
        foreach (var (id, _) in steps.Cell.Robot.Chains.InOrder()) Mapped(steps.Cell, id, reading);
        reading.Used("/mount/yaw", steps.Cell.Mount.Yaw);
        return steps.Add("platform-push", "", "/robot", StepPlace.Site, EnergyLevel.ControlSupplyOnly, Skill.Engineer, 8, after, reading, s => s with
        {
            People = 2,
            Held = [.. s.Held.Select(h => h with { By = "prop" })],
            Asks =
            [
                new AskedChoice("lift", ["all-count-up", "one-differs"], "all-count-up"), new AskedChoice("push-x", ["as-planned", "differs"], "as-planned"),
                new AskedChoice("push-y", ["as-planned", "differs"], "as-planned"),
            ],
            Tools = ["props", "ruler"],
            Probes = [Probe.PlatformPush],
            UpsetBy = [Upset.PlugsMoved, Upset.Transported],
        });
    }
}
