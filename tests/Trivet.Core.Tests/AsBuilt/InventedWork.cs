using System.Collections.Immutable;
using Trivet.AsBuilt;
using Trivet.Cells;
using Trivet.Findings;
using Trivet.Journal;
using Trivet.Procedures;
using Trivet.Testing;

namespace Trivet.Core.Tests.AsBuilt;

/// <summary>An invented procedure of a few steps, and who works on it.</summary>
internal static class InventedWork
{
    public static readonly Source Practice = new(SourceKind.CommonPractice, "");

    /// <summary>Bus ohms, isolated: a judged reading and a serial number.</summary>
    public static readonly Step Ohms = StepOf("bus-ohms", EnergyLevel.Isolated, inputs: ["/cabinet/network/terminators"], asks:
        [new AskedValue("ohms", "Ω", 60, Limit.Between(55, 65, Practice)), new AskedText("serial")]) with
    { UpsetBy = [Upset.PlugsMoved] };

    /// <summary>A length that is kept and not judged.</summary>
    public static readonly Step Rod = StepOf("rod:a", EnergyLevel.Isolated, inputs: ["/robot/chains/a/rod"], asks: [new AskedValue("length", "m", 0.3, null, ShownAfter: true)]);

    /// <summary>The hold point: the stop chain is proven.</summary>
    public static readonly Step Stop = StepOf("stop-chain", EnergyLevel.ControlSupplyOnly, after: ["bus-ohms"], asks:
        [new AskedChoice("opens", ["both", "one", "none"], "both"), new AskedCount("devices", 3)]) with
    { HoldPoint = true, UpsetBy = [Upset.PlugsMoved, Upset.Transported] };

    /// <summary>Comes after the hold point and after the rod.</summary>
    public static readonly Step Home = StepOf("home:a", EnergyLevel.OneAxisLimited, after: ["stop-chain", "rod:a"], inputs: ["/robot/chains/a/home"], asks:
        [new AskedTick("moved"), new AskedValue("gap", "m", 0.001, Limit.AtLeast(0.0005, Practice))]) with
    { UpsetBy = [Upset.PowerCycled] };

    public static readonly Step Run = StepOf("run", EnergyLevel.AllAxes, after: ["home:a"], asks: [new AskedTick("ran")]);

    public static readonly ImmutableArray<Step> Steps = [Ohms, Rod, Stop, Home, Run];

    public static readonly Releasing Usual = Releasing.Of(new Recording());

    public static readonly ImmutableDictionary<string, ImmutableArray<FieldMove>> Unmoved =
        ImmutableDictionary<string, ImmutableArray<FieldMove>>.Empty.Add("", []);

    public static Step StepOf(string id, EnergyLevel energy, string[]? after = null, string[]? inputs = null, Asked[]? asks = null) => new()
    {
        Id = id,
        Kind = id.Split(':')[0],
        Subject = new Subject("/robot"),
        Place = StepPlace.Site,
        Energy = energy,
        By = Skill.Fitter,
        Minutes = 10,
        After = [.. after ?? []],
        Inputs = [.. inputs ?? []],
        Asks = [.. asks ?? []],
    };

    public static Measured Ω(double value) => new($"{value} Ω", "Ω", value, 1);

    public static Measured Mm(double value, double readTo = 0.01) => new($"{value} mm", "m", value / 1000, readTo / 1000);

    public static EnergyDeclared Level(EnergyLevel level) => new(level, new Measured("0,2 V", "V", 0.2, 0.1));

    public static Progress Fold(IEnumerable<Kept> entries, Releasing? releasing = null) => Trivet.AsBuilt.Fold.Of(Steps, entries, releasing ?? Usual, Unmoved);

    public static Standing StandingOf(this Progress progress, Step step) => progress.Of(step.Id)!.Standing;

    /// <summary>All of it done as it should be.</summary>
    public static List<Kept> AllDone(this WritingDevice device) =>
    [
        device.Write(Level(EnergyLevel.Isolated)),
        device.Write(Ω(60), "bus-ohms", "ohms"),
        device.Write(new Written("A17"), "bus-ohms", "serial"),
        device.Write(Mm(300.02), "rod:a", "length"),
        device.Write(Level(EnergyLevel.ControlSupplyOnly)),
        device.Write(new Chosen("both"), "stop-chain", "opens"),
        device.Write(new Counted(3), "stop-chain", "devices"),
        device.Write(Level(EnergyLevel.OneAxisLimited)),
        device.Write(new Ticked(), "home:a", "moved"),
        device.Write(Mm(1.1), "home:a", "gap"),
        device.Write(Level(EnergyLevel.AllAxes)),
        device.Write(new Ticked(), "run", "ran"),
    ];
}
