using System.Collections.Immutable;
using Trivet.Cells;
using Trivet.Faults;
using Trivet.Findings;
using Trivet.Settings;

namespace Trivet.Procedures;

/// <summary>The control supply alone, the motor supply locked off and measured dead: the stop chain first, then what the cabinet says of itself.</summary>
internal static class ControlSupply
{
    public static void Add(StepList steps)
    {
        var cell = steps.Cell;
        var locked = new Reading();
        double discharge = Discharge(cell, locked);
        steps.Gates[Gate.ControlOn] =
        [
            steps.Add("motor-supply-locked", "", "/cabinet/sources", StepPlace.Site, EnergyLevel.Isolated, Skill.Electrician, 5 + Waiting(discharge), steps.After(Gate.BeforePower), locked, s => s with
            {
                Numbers = [new("discharge", "s", discharge)],
                Asks = [MeasuredDead.Ask, new AskedChoice("lock", ["fitted", "not-fitted"], "fitted"), new AskedPhotograph("lock-seen")],
                Tools = ["voltmeter", "lock"],
                HoldPoint = true,
                UpsetBy = [Upset.PowerCycled, Upset.PlugsMoved, Upset.Transported],
            }),
        ];
        string lamps = Indicators(steps);
        steps.Gates[Gate.StopChain] = [StopChain(steps, "stop-chain", "", "/guarding", EnergyLevel.ControlSupplyOnly, [lamps])];

        var control = ImmutableArray.CreateBuilder<string>();
        var after = steps.After(Gate.StopChain);
        control.Add(FarEnd(steps, after));
        if (cell.Cabinet.Modules.Values.Any(m => m.Address is not null)) control.Add(Bus(steps, after));
        if (!cell.Io.Signals.IsEmpty) control.Add(Resting(steps, after));
        var settings = new Reading();
        settings.Used("/controller/axes", string.Join('\n', cell.Controller.Axes.Keys));
        settings.Used("/motion/settings/pathSpeed", cell.Motion.Settings.PathSpeed);
        settings.Used("/motion/settings/pathAcceleration", cell.Motion.Settings.PathAcceleration);
        var typed = Settings(cell, settings, _ => true);
        control.Add(steps.Add("settings", "", "/controller", StepPlace.Site, EnergyLevel.ControlSupplyOnly, Skill.Engineer, 30, [.. after, .. control], settings, s => s with
        {
            Settings = typed.Length <= MostListed ? typed : [],
            Numbers = typed.IsEmpty ? [] : [new("count", "1", typed.Length)],
            Asks = [new AskedChoice("read-back", ["equal", "differs"], "equal"), .. typed.IsEmpty ? [] : new Asked[] { new AskedCount("parameters", typed.Length) }, new AskedText("file")],
            Probes = [Probe.SettingsReadBack],
            UpsetBy = [Upset.PowerCycled],
        }));
        steps.Gates[Gate.Control] = control.ToImmutable();
    }

    /// <summary>Parameters that are listed in one step: more do not fit a card, and are typed from their own list.</summary>
    private const int MostListed = 60;

    /// <summary>Parameters as they are typed; one that the description leaves open is told by its own rules.</summary>
    public static ImmutableArray<TypedSetting> Settings(Cell cell, Reading reading, Func<ControllerSetting, bool> which)
    {
        reading.Used("/controller/settings", string.Join('\n', cell.Controller.Settings.InOrder().Select(s => s.Key)));
        reading.Used("/controller/decimalComma", cell.Controller.DecimalComma);
        var typed = ImmutableArray.CreateBuilder<TypedSetting>();
        foreach (var (id, setting) in cell.Controller.Settings.InOrder())
        {
            if (!which(setting)) continue;
            var own = new Reading();
            if (SettingInputs.Read(cell, id, own, ImmutableArray.CreateBuilder<Contradiction>()) is { } planned) typed.Add(new(planned, cell.Controller.DecimalComma == true));
            reading.Used(own);
        }
        return typed.ToImmutable();
    }

    /// <summary>Seconds after which every drive is discharged; not a number, and told as missing, where one of them does not say. Nobody is told to wait no time at all.</summary>
    public static double Discharge(Cell cell, Reading reading)
    {
        double longest = 0;
        reading.Used("/cabinet/modules", string.Join('\n', cell.Cabinet.Modules.InOrder().Select(m => m.Key)));
        if (cell.Cabinet.Modules.IsEmpty) return reading.Need((double?)null, "/cabinet/modules");
        foreach (var (id, module) in cell.Cabinet.Modules.InOrder())
        {
            reading.Used($"/cabinet/modules/{id}/motorBranch", module.MotorBranch);
            reading.Used($"/cabinet/modules/{id}/dischargeTime", module.DischargeTime);
            if (module.DischargeTime is { } time) longest = Math.Max(longest, time);
            else if (module.MotorBranch is not null) longest = reading.Need(module.DischargeTime, $"/cabinet/modules/{id}/dischargeTime");
        }
        return longest;
    }

    /// <summary>Minutes of a discharge; one that is not stated is waited for as long as the plate says, and counts a quarter of an hour until then.</summary>
    public static double Waiting(double discharge) => double.IsNaN(discharge) ? 15 : discharge / 60;

    private static string Indicators(StepList steps)
    {
        var cell = steps.Cell;
        var reading = new Reading();
        reading.Used("/cabinet/modules", string.Join('\n', cell.Cabinet.Modules.InOrder().Select(m => m.Key)));
        bool fan = false;
        foreach (var (id, module) in cell.Cabinet.Modules)
        {
            reading.Used($"/cabinet/modules/{id}/fan", module.Fan);
            fan |= module.Fan == true;
        }
        reading.Used("/cabinet/enclosure/fanFlow", cell.Cabinet.Enclosure.FanFlow);
        fan |= cell.Cabinet.Enclosure.FanFlow > 0;
        return steps.Add("indicators", "", "/cabinet", StepPlace.Site, EnergyLevel.ControlSupplyOnly, Skill.Electrician, 10, steps.After(Gate.ControlOn), reading, s => s with
        {
            Names = [.. cell.Cabinet.Modules.InOrder().Select(m => Shop.Named(reading, $"/cabinet/modules/{m.Key}/name", m.Value.Name, m.Key))],
            Asks =
            [
                new AskedChoice("lamps", ["all-well", "one-dark", "fault", "supply-trips", "all-dark"], "all-well"),
                .. fan ? new Asked[] { new AskedChoice("fans", ["all-turn", "one-stands"], "all-turn") } : [], new AskedPhotograph("lamps-seen"),
            ],
            Probes = [Probe.Indicators],
            UpsetBy = [Upset.PlugsMoved, Upset.Transported],
        });
    }

    /// <summary>Every device alone and every channel alone; a reset starts nothing. By somebody who answers for it.</summary>
    public static string StopChain(StepList steps, string kind, string of, string pointer, EnergyLevel energy, ImmutableArray<string> after)
    {
        var cell = steps.Cell;
        var reading = new Reading();
        reading.Used("/guarding/devices", string.Join('\n', cell.Guarding.Devices.InOrder().Select(d => d.Key)));
        reading.Used("/stopping/functions", string.Join('\n', cell.Stopping.Functions.InOrder().Select(f => f.Key)));
        // A stop chain of which nothing is described cannot be proven piece by piece.
        if (cell.Stopping.Functions.IsEmpty && cell.Guarding.Devices.IsEmpty) reading.Missing("/stopping/functions");
        int channels = 0;
        var functions = ImmutableArray.CreateBuilder<string>();
        foreach (var (id, function) in cell.Stopping.Functions.InOrder())
        {
            string at = $"/stopping/functions/{id}";
            reading.Used($"{at}/channels", string.Join('\n', function.Channels.InOrder().Select(c => c.Key)));
            string[] names = [.. function.Channels.InOrder().Select(c => Shop.Named(reading, $"{at}/channels/{c.Key}/name", c.Value.Name, c.Key))];
            channels += names.Length;
            functions.Add(Shop.Named(reading, at + "/name", function.Name, id) + (names.Length > 0 ? $" ({string.Join(", ", names)})" : ""));
        }
        return steps.Add(kind, of, pointer, StepPlace.Site, energy, Skill.SafetyPerson, 20 + 5 * (cell.Guarding.Devices.Count + functions.Count), after, reading, s => s with
        {
            People = 2,
            Names = [.. functions, .. cell.Guarding.Devices.InOrder().Select(d => Shop.Named(reading, $"/guarding/devices/{d.Key}/name", d.Value.Name, d.Key))],
            Asks =
            [
                .. functions.Count > 0 ? new Asked[] { new AskedCount("functions", functions.Count), new AskedCount("channels", channels) } : [],
                new AskedChoice("each-device", ["all-stop", "one-does-not"], "all-stop"), new AskedChoice("each-channel", ["stops-and-refuses", "one-does-not"], "stops-and-refuses"),
                new AskedChoice("reset", ["starts-nothing", "starts"], "starts-nothing"), new AskedSignature("safety-person", Skill.SafetyPerson),
            ],
            Probes = [Probe.StopChain],
            HoldPoint = true,
            UpsetBy = [Upset.PlugsMoved, Upset.Transported],
        });
    }

    private static string FarEnd(StepList steps, ImmutableArray<string> after)
    {
        var reading = new Reading();
        double least = reading.Need(steps.Cell.Io.LowestVoltage, "/io/lowestVoltage");
        return steps.Add("control-voltage", "", "/cabinet/sources", StepPlace.Site, EnergyLevel.ControlSupplyOnly, Skill.Electrician, 10, after, reading, s => s with
        {
            Asks = [new AskedValue("far-end", "V", double.NaN, double.IsNaN(least) ? null : Limit.AtLeast(least, new(SourceKind.Cell, "/io/lowestVoltage")))],
            Tools = ["voltmeter"],
            UpsetBy = [Upset.PlugsMoved],
        });
    }

    private static string Bus(StepList steps, ImmutableArray<string> after)
    {
        var reading = new Reading();
        reading.Used("/cabinet/modules", string.Join('\n', steps.Cell.Cabinet.Modules.InOrder().Select(m => m.Key)));
        var names = ImmutableArray.CreateBuilder<string>();
        foreach (var (id, module) in steps.Cell.Cabinet.Modules.InOrder())
        {
            reading.Used($"/cabinet/modules/{id}/address", module.Address);
            if (module.Address is { } address) names.Add($"{address} {Shop.Named(reading, $"/cabinet/modules/{id}/name", module.Name, id)}");
        }
        return steps.Add("bus-listen", "", "/cabinet/network", StepPlace.Site, EnergyLevel.ControlSupplyOnly, Skill.Engineer, 10, after, reading, s => s with
        {
            Names = names.ToImmutable(),
            Numbers = [new("nodes", "1", names.Count)],
            Asks = [new AskedCount("nodes", names.Count), new AskedChoice("heard", ["as-planned", "missing", "stranger", "twice", "errors", "silence"], "as-planned")],
            Tools = ["bus-listener"],
            Probes = [Probe.BusListening],
            UpsetBy = [Upset.PlugsMoved, Upset.Transported],
        });
    }

    private static string Resting(StepList steps, ImmutableArray<string> after)
    {
        var reading = new Reading();
        reading.Used("/io/signals", string.Join('\n', steps.Cell.Io.Signals.Keys));
        var on = ImmutableArray.CreateBuilder<string>();
        foreach (var (id, signal) in steps.Cell.Io.Signals.InOrder())
        {
            reading.Used($"/io/signals/{id}/direction", signal.Direction);
            reading.Used($"/io/signals/{id}/onAtRest", signal.OnAtRest);
            if (signal is { Direction: SignalDirection.Input, OnAtRest: true }) on.Add(Shop.Named(reading, $"/io/signals/{id}/name", signal.Name, id));
        }
        return steps.Add("resting-inputs", "", "/io/signals", StepPlace.Site, EnergyLevel.ControlSupplyOnly, Skill.Engineer, 5, after, reading, s => s with
        {
            Names = on.ToImmutable(),
            Asks = [new AskedCount("on", on.Count)],
            Probes = [Probe.RestingInputs],
            UpsetBy = [Upset.PlugsMoved],
        });
    }
}
