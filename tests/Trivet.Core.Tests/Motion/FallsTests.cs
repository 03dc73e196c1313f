using System.Collections.Immutable;
using Trivet.Assessment;
using Trivet.Cells;
using Trivet.Dynamics;
using Trivet.Findings;
using Trivet.Motion;
using Xunit;

namespace Trivet.Core.Tests.Motion;

/// <summary>Falls at the places of a cell, and what the ledger says of them.</summary>
public sealed class FallsTests
{
    private const double G = 9.80665;

    /// <summary>All chains of a robot on upright rails let go without rotors and friction: free fall to the lower end of travel, v² = 2·g·h and E = m·g·h (school mechanics).</summary>
    [Fact]
    public void With_nothing_left_of_the_drives_everything_falls_freely_to_the_first_end_stop()
    {
        var falls = Of(MotionCells.Rail);
        Assert.Equal(["/stations/belt", "/stations/tray", "/stations/nest"], falls.Places.Where(p => p.Point == FallPoint.Approach).Select(p => p.Pointer).Take(3));
        Assert.Equal(6, falls.Places.Count(p => p.Pointer.StartsWith("/motion", StringComparison.Ordinal)));
        double mass = 0.3 + 0.2 + 0.02 + 3 * (0.8 + 2 * 0.05);
        foreach (var place in falls.Places)
        {
            var all = place.Cases[^1];
            Assert.Null(all.Chain);
            Assert.Equal(FallEnd.EndStop, all.Gone.Fall.End);
            Assert.True(all.Gone.Drop > 0.02);
            Assert.Equal(Math.Sqrt(2 * G * all.Gone.Drop), all.Gone.Fall.FastestPlatform, 1e-6);
            Assert.Equal(mass * G * all.Gone.Drop, all.Gone.Fall.Energy, 1e-5);
            Assert.Equal(place.Tool_C.Z - all.Gone.Drop, all.Gone.Tool_C.Z, 1e-9);
            // Rotors that turn along slow the fall.
            if (all.AsHeld.Fall.End == FallEnd.EndStop) Assert.True(all.AsHeld.Fall.FastestPlatform < all.Gone.Fall.FastestPlatform);
        }
    }

    [Fact]
    public void A_brake_stated_to_hold_keeps_everything_up_and_a_prop_or_a_brake_of_unknown_force_does_not()
    {
        Assert.All(Of(Held(Holding.Brake, 100)).Places, p => Assert.All(p.Cases, c => Assert.Equal(FallEnd.Stays, c.AsHeld.Fall.End)));
        foreach (var (kind, force) in new[] { (Holding.Prop, 100.0), (Holding.Nothing, 100.0), (Holding.Brake, double.NaN) })
            Assert.All(Of(Held(kind, force)).Places, p => Assert.All(p.Cases, c => Assert.NotEqual(FallEnd.Stays, c.AsHeld.Fall.End)));
    }

    /// <summary>Friction that was not measured as holding keeps nothing up, however large.</summary>
    [Fact]
    public void Friction_counts_only_where_it_is_stated_as_holding()
    {
        var rough = Held(Holding.Nothing, double.NaN);
        rough = rough with { Robot = rough.Robot with { Common = rough.Robot.Common with { CoulombFriction = 500 } } };
        Assert.All(Of(rough).Places, p => Assert.Equal(FallEnd.EndStop, p.Cases[^1].AsHeld.Fall.End));
        Assert.All(Of(Held(Holding.Friction, 100)).Places, p => Assert.Equal(FallEnd.Stays, p.Cases[^1].AsHeld.Fall.End));
    }

    /// <summary>An estimate that protects people falls short or stays open; within its limit it never holds.</summary>
    [Theory]
    [InlineData(Holding.Brake, 0.01, Verdict.FallsShort)]
    [InlineData(Holding.Brake, 100, Verdict.Open)]
    [InlineData(Holding.Nothing, 0.01, Verdict.FallsShort)]
    [InlineData(Holding.Nothing, 100, Verdict.Open)]
    public void A_fall_within_its_limit_stays_open(Holding kind, double limit, Verdict verdict)
    {
        var cell = Held(kind, 100) with { Depth = Depth.Build };
        cell = cell with { Robot = cell.Robot with { LargestFallSpeed = limit, LargestFallEnergy = limit } };
        Finding[] findings = [.. FallChecks.Of(cell).Tasks.SelectMany(t => t.Prove(TestContext.Current.CancellationToken))];
        var all = Of(cell);
        // Three stations and two cycles.
        Assert.Equal(10, findings.Length);
        Assert.All(findings, f => Assert.Equal(verdict, f.Verdict));
        foreach (var finding in findings)
        {
            var falls = all.Places.Where(p => p.Pointer == finding.Subject.Pointer).SelectMany(p => p.WithOneFault).Select(o => o.Fall).ToArray();
            double worst = falls.Max(f => finding.Rule == FallRules.Speed ? f.FastestPlatform : f.Energy);
            if (finding is Judged judged) Assert.Equal(worst, judged.Value);
            else Assert.Contains(falls, f => f.End == FallEnd.LosesHold);
            Assert.Contains(finding.Rule == FallRules.Speed ? "/robot/largestFallSpeed" : "/robot/largestFallEnergy", finding.Inputs);
            Assert.Contains("/robot/common/holdingForce", finding.Inputs);
        }
        Assert.Equal(OpenReason.NotComputed, Assess.Preview(cell).Ledger.Findings.First(f => f.Rule == FallRules.Speed).OpenBecause);
    }

    [Fact]
    public void Without_a_limit_there_is_no_finding_and_without_masses_the_missing_fields_are_named()
    {
        var ledger = Assess.Preview(MotionCells.Rail).Ledger;
        Assert.DoesNotContain(ledger.Findings, f => f.Rule == FallRules.Speed);
        Assert.Contains(ledger.Coverage, c => c.Rule == FallRules.Speed && c.Reason == MotionReasons.NoLimit);
        var light = MotionCells.Rail with { Robot = MotionCells.Rail.Robot with { PlatformMass = null, LargestFallSpeed = 1 } };
        var falls = Of(light);
        Assert.Empty(falls.Places);
        Assert.Contains("/robot/platformMass", falls.Missing);
        Assert.Contains(Assess.Preview(light).Ledger.Coverage, c => c.Rule == FallRules.Speed && c.Reason.Fields.Contains("/robot/platformMass"));
    }

    private static Falls Of(Cell cell) => Falls.Of(cell, TestContext.Current.CancellationToken);

    private static Cell Held(Holding kind, double force) => MotionCells.Rail with
    {
        Robot = MotionCells.Rail.Robot with
        {
            Common = MotionCells.Rail.Robot.Common with { Holding = kind, HoldingForce = double.IsNaN(force) ? null : force },
            Chains = MotionCells.Rail.Robot.Chains.ToImmutableSortedDictionary(c => c.Key, c => c.Value with { Holding = null, HoldingForce = null }, StringComparer.Ordinal),
        },
    };
}
