using System.Text;
using Trivet.Assessment;
using Trivet.Cells;
using Trivet.Findings;
using Xunit;

namespace Trivet.Files.Tests;

/// <summary>What the tour promises of each sample, proved.</summary>
public class SampleVerdictTests
{
    [Theory]
    [InlineData("jar-lids")]
    [InlineData("biscuits")]
    [InlineData("labels")]
    public void A_good_sample_holds_everywhere(string name)
    {
        var findings = Prove(name);
        Assert.True(findings.Length > 10);
        Assert.All(findings, f => Assert.True(f.Verdict is Verdict.Holds or Verdict.Tight, $"{f.Id}: {f.Verdict}"));
    }

    [Fact]
    public void The_jar_lids_are_tight_in_swing_alone_at_the_left_tray_and_on_the_ways_to_the_trays()
    {
        // What protects people is an estimate and never more than tight.
        var tight = Prove("jar-lids").Where(f => f.Verdict == Verdict.Tight && double.IsFinite(f.Rule.ComfortBand)).ToArray();
        Assert.All(tight, f => Assert.Equal("reach.swing", f.Rule.Id));
        Assert.Equal("/stations/tray-left", Assert.Single(tight, f => f.Subject.Pointer.StartsWith("/stations", StringComparison.Ordinal)).Subject.Pointer);
    }

    /// <summary>The preview is enough: a place out of reach is one whether it was sampled or proved.</summary>
    [Fact]
    public void The_tight_corner_falls_short_at_the_right_tray_alone()
    {
        var fallsShort = Assess.Preview(Read("tight-corner")).Ledger.Findings.Where(f => f.Verdict == Verdict.FallsShort).ToArray();
        Assert.Contains(fallsShort, f => f.Rule.Id == "reach.travel");
        Assert.All(fallsShort, f => Assert.Equal("/stations/tray-right", f.Subject.Pointer));
    }

    private static Cell Read(string name) => CellFile.Read(Encoding.UTF8.GetBytes(Samples.Find(name)!.Text), name).Cell!;

    private static Finding[] Prove(string name) => [.. Assess.Prove(Read(name), null, TestContext.Current.CancellationToken).Ledger.Findings];
}
