using System.Text;
using CsCheck;
using Trivet.Cells;
using Trivet.Drives;
using Trivet.Files;
using Trivet.Findings;
using Trivet.Motion;
using Trivet.Powering;
using Xunit;

namespace Trivet.Core.Tests.Powering;

public sealed class AllStopTests
{
    private static readonly Cell Lids = CellFile.Read(Encoding.UTF8.GetBytes(Samples.Find("jar-lids")!.Text), "jar-lids").Cell!;

    private static Supply Without(double capacitance) => new(48, 0.1, 500, capacitance);

    /// <summary>Worked example: 2 kg at 2 m/s are 4 J, of which 70 % come back to 48 V: 1 mF 89 V, 4.7 mF 59 V, 10 mF 53.5 V; V = √(V₀² + 2E/C).</summary>
    [Theory]
    [InlineData(0.001, 89, 0.5)]
    [InlineData(0.0047, 59, 0.5)]
    [InlineData(0.010, 53.5, 0.1)]
    public void A_capacitor_alone_rises_as_in_the_worked_example(double capacitance, double volts, double within)
    {
        const double energy = 0.7 * 2 * 2 * 2 / 2;
        double reached = AllStop.Into(Without(capacitance), energy, 0.05, 48).Highest.Value;
        Assert.Equal(volts, reached, within);
        Assert.Equal(Math.Sqrt(48 * 48 + 2 * energy / capacitance), reached, 1e-6);
    }

    /// <summary>With a chopper what comes back is what the capacitor takes and what the resistor burns, however fast the stop.</summary>
    [Fact]
    public void What_comes_back_is_stored_or_burnt() =>
        Gen.Select(Gen.Double[1, 60], Gen.Double[0.01, 0.4], Gen.Double[0.002, 0.02], Gen.Double[2, 12]).Sample((energy, time, capacitance, ohms) =>
        {
            var run = AllStop.Into(new(48, 0.1, 500, capacitance, 56, ohms), energy, time, 50);
            Assert.Equal(energy, run.Energies.Braking + run.Energies.Capacitor, 1e-6 * energy);
            double alone = Math.Sqrt(50 * 50 + 2 * energy / capacitance);
            Assert.True(run.Highest.Value <= alone + 1e-6);
            // A resistor that takes the whole power at the threshold holds it there.
            if (56 * 56 / ohms >= AllStop.PeakOf(energy, time)) Assert.True(run.Highest.Value <= 56.001);
        });

    private static ImmutableFindings Prove(Cell cell)
    {
        var plan = MotorFeedStage.Of(cell, TimedCycle.Of(cell));
        return new([.. plan.Tasks.SelectMany(t => t.Prove(TestContext.Current.CancellationToken))]);
    }

    private sealed record ImmutableFindings(Finding[] All)
    {
        public Judged Of(Rule rule) => Assert.IsType<Judged>(All.First(f => f.Rule == rule));
    }

    [Fact]
    public void The_sample_stops_within_what_its_drives_bear()
    {
        var found = Prove(Lids);
        Assert.DoesNotContain(found.All, f => f.Verdict is Verdict.FallsShort or Verdict.Open);
        Assert.Contains(found.All, f => f.Rule == PowerRules.MotorContinuous);
    }

    /// <summary>Without chopper the voltage is that of the closed form, from the energy of the fastest moment.</summary>
    [Fact]
    public void Without_a_chopper_the_sample_rises_by_the_closed_form()
    {
        var cell = Lids with { Drives = Lids.Drives with { Supply = Lids.Drives.Supply with { BrakingVoltage = null } } };
        var cycle = TimedCycle.Of(cell)[0];
        var feed = MotorFeed.Of(cell, cycle, DriveCase.Of(cell), new())!;
        Assert.Equal(Math.Sqrt(feed.Stop.Start * feed.Stop.Start + 2 * feed.Stop.Energy / 0.010), feed.Stop.Highest, 1e-4);
        Assert.Equal(feed.Stop.Highest, Prove(cell).Of(PowerRules.StopVoltage).Value, 1e-9);
    }

    /// <summary>The energy at the fastest moment can not be more than all the masses at the largest speed of the tool and of any carriage (a bound, not an estimate).</summary>
    [Fact]
    public void The_energy_is_that_of_masses_in_motion()
    {
        var cycle = TimedCycle.Of(Lids)[0];
        var stop = MotorFeed.Of(Lids, cycle, DriveCase.Of(Lids), new())!.Stop;
        double carriages = cycle.Trace!.Series.Axes.Where(a => a.Axis != "rotary").Max(a => a.Speed.Max(Math.Abs));
        double least = 0.5 * 0.3 * Math.Pow(carriages, 2);
        Assert.InRange(stop.Kinetic, least, 100);
        Assert.InRange(stop.At, 0, cycle.Trace!.Duration);
    }

    [Fact]
    public void Half_of_it_coming_back_lifts_less()
    {
        var half = Lids with { Drives = Lids.Drives with { Supply = Lids.Drives.Supply with { ReturnedShare = 0.5, BrakingVoltage = null } } };
        var whole = half with { Drives = half.Drives with { Supply = half.Drives.Supply with { ReturnedShare = 1 } } };
        Assert.True(Prove(half).Of(PowerRules.StopVoltage).Value < Prove(whole).Of(PowerRules.StopVoltage).Value);
    }

    [Fact]
    public void While_an_edit_is_previewed_it_waits() =>
        Assert.All(MotorFeedStage.Of(Lids, TimedCycle.Of(Lids)).Tasks.SelectMany(t => t.Sample()), f => Assert.Equal(OpenReason.NotComputed, f.OpenBecause));
}
