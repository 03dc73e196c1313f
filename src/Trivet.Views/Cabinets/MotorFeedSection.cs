using System.Collections.Immutable;
using Trivet.Cells;
using Trivet.Drives;
using Trivet.Motion;
using Trivet.Powering;
using Trivet.Views.Words;

namespace Trivet.Views.Cabinets;

/// <summary>The supply of the motors in finished texts: power of all axes together, and all of them stopping.</summary>
public static class MotorFeedSection
{
    /// <summary>Empty where no cycle can be followed.</summary>
    public static ImmutableArray<Section> Of(Cell cell, Locale? locale = null)
    {
        var words = (locale ?? Locale.English).Language.Power;
        var drives = DriveCase.Of(cell);
        MotorFeed[] feeds = [.. TimedCycle.Of(cell).Select(c => MotorFeed.Of(cell, c, drives, new())).OfType<MotorFeed>()];
        if (feeds.Length == 0) return [];
        var facts = ImmutableArray.CreateBuilder<Fact>();
        var hardest = feeds.MaxBy(f => f.Run.MeanSourcePower)!;
        double wanted = 1.3 * hardest.Run.MeanSourcePower;
        facts.Add(new("continuous", words.Continuous, Locale.Fill(words.ContinuousOf, ("power", Q(hardest.Continuous, "W")), ("wanted", Q(wanted, "W"))), hardest.Continuous, "W"));
        if (hardest.Supply.HasChopper)
        {
            double least = feeds.Max(f => f.LeastOhms), most = feeds.Min(f => f.MostOhms), stops = feeds.Min(f => f.StopsPerHour);
            facts.Add(new("braking-resistance", words.Ohms, Locale.Fill(words.OhmsOf,
                ("ohms", Q(hardest.Supply.BrakingResistance, "Ω")), ("least", double.IsFinite(least) ? Q(least, "Ω") : words.OhmsOpen), ("most", double.IsFinite(most) ? Q(most, "Ω") : words.OhmsOpen)),
                hardest.Supply.BrakingResistance, "ohm"));
            if (double.IsFinite(stops)) facts.Add(new("stops-per-hour", words.StopsPerHour, Numbers.Plain(Math.Floor(Math.Max(0, stops)), 0, locale), stops / 3600, "1/s"));
        }
        else
        {
            facts.Add(new("capacitor-alone", words.Stops, words.Alone, hardest.Supply.Capacitance, "F"));
        }
        return
        [
            new("motor-supply", words.Motors, words.MotorCautions, facts.ToImmutable(),
            [
                new("stops", words.Cycles,
                    [
                        new("cycle", words.HeadCycle), new("mean", words.HeadMean, "W"), new("peak", words.HeadMotorPeak, "W"), new("moment", words.HeadMoment, "s"),
                        new("kinetic", words.HeadEnergy, "J"), new("falling", words.HeadFalling, "J"), new("time", words.HeadStopTime, "s"), new("stopPeak", words.HeadStopPeak, "W"),
                        new("before", words.HeadBefore, "V"), new("reached", words.HeadReached, "V"), new("stored", words.HeadStored, "J"), new("burnt", words.HeadBurnt, "J"),
                    ],
                    [
                        .. feeds.Select(f => ImmutableArray.Create<Entry>(
                            new(cell.Motion.Cycles[f.Cycle].Name ?? f.Cycle), E(f.Run.MeanSourcePower, "W"), E(f.Run.PeakSourcePower.Value, "W"), E(f.Stop.At, "s"), E(f.Stop.Kinetic, "J"),
                            E(f.Stop.Falling, "J"), new($"{Numbers.Plain(f.Stop.Time * 1000, 0, locale)} ms", f.Stop.Time), E(f.Stop.PeakPower, "W"), E(f.Stop.Start, "V"), E(f.Stop.Highest, "V"),
                            E(f.Stop.Run.Energies.Capacitor, "J"), E(f.Stop.Braking, "J"))),
                    ],
                    [.. feeds.Select(f => CyclePlan.Pointer(f.Cycle))]),
            ],
            ["power.motor-continuous", "power.stop-voltage", "power.brake-energy", "power.brake-current"]),
        ];

        string Q(double value, string unit) => Numbers.Quantity(value, unit, locale);

        Entry E(double value, string unit) => new(Q(value, unit), value);
    }
}
