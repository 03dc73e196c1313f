using System.Collections.Immutable;
using Trivet.AsBuilt;
using Trivet.Journal;
using Trivet.Procedures;
using Trivet.Testing;
using Xunit;
using static Trivet.Core.Tests.AsBuilt.InventedWork;

namespace Trivet.Core.Tests.AsBuilt;

public sealed class StalenessTests
{
    private readonly WritingDevice _ada = new("tablet-1");

    [Fact]
    public void A_changed_field_makes_stale_what_depends_on_it_and_only_that()
    {
        var progress = With(_ada.AllDone(), new FieldMove("/robot/chains/a/rod", "300 mm", "310 mm"), new FieldMove("/name", "a", "b"));
        Assert.Equal(["rod:a"], progress.Steps.Where(s => s.Standing == Standing.Stale).Select(s => s.Step.Id));
        Assert.Equal([new Staleness.Field("/robot/chains/a/rod", "300 mm", "310 mm")], progress.Of("rod:a")!.Stale);
        Assert.Equal((10, false), (progress.MinutesLeft, progress.Of("rod:a")!.LetsOn));
        // What was found still stands in what comes after; only what is yet to begin waits.
        Assert.Equal(Standing.Done, progress.StandingOf(Home));
        Assert.Equal(["rod:a"], progress.Of("home:a")!.WaitsFor);
    }

    [Fact]
    public void Done_again_against_the_new_revision_it_is_no_longer_stale()
    {
        var entries = _ada.AllDone();
        entries.Add(_ada.Write(Level(EnergyLevel.Isolated)));
        entries.Add(_ada.Write(Mm(310.01), "rod:a", "length", by: "bob", revision: "new"));
        var moves = Unmoved.SetItem("", [new FieldMove("/robot/chains/a/rod", "300 mm", "310 mm")]).Add("new", []);
        var progress = Trivet.AsBuilt.Fold.Of(Steps, entries, Usual, moves);
        Assert.Equal(Standing.Done, progress.StandingOf(Rod));
        // But homing rested on the old length.
        Assert.Equal([new Staleness.Result("rod:a", "length", entries[^1].Hash)], progress.Of("home:a")!.Stale);
    }

    [Fact]
    public void A_step_done_against_a_revision_that_is_not_known_is_stale()
    {
        var progress = Fold([_ada.Write(Mm(300), "rod:a", "length", revision: new string('9', 64))]);
        Assert.Equal([new Staleness.UnknownRevision(new string('9', 64))], progress.Of("rod:a")!.Stale);
    }

    [Theory]
    // Kept and not judged: more than the readings can tell apart counts (2·√2·0.01 mm/√12 is 8 µm).
    [InlineData("rod:a", "length", 300.025, false)]
    [InlineData("rod:a", "length", 300.05, true)]
    public void An_earlier_result_that_changed_makes_stale_what_was_done_upon_it(string step, string ask, double value, bool stale)
    {
        List<Kept> entries = [.. _ada.AllDone()];
        entries.Add(_ada.Write(Mm(value), step, ask));
        Assert.Equal(stale, Fold(entries).StandingOf(Home) == Standing.Stale);
        Assert.NotEqual(Standing.Stale, Fold(entries).StandingOf(Run));
    }

    [Fact]
    public void A_judged_result_counts_by_whether_it_is_accepted()
    {
        List<Kept> entries = [.. _ada.AllDone()];
        Kept near = _ada.Write(Ω(63), "bus-ohms", "ohms"), outside = _ada.Write(Ω(120), "bus-ohms", "ohms"), other = _ada.Write(new Written("B3"), "bus-ohms", "serial");
        Assert.Equal(Standing.Done, Fold([.. entries, near]).StandingOf(Stop));
        Assert.Equal([new Staleness.Result("bus-ohms", "ohms", outside.Hash)], Fold([.. entries, near, outside]).Of("stop-chain")!.Stale);
        Assert.Equal([new Staleness.Result("bus-ohms", "serial", other.Hash)], Fold([.. entries, other]).Of("stop-chain")!.Stale);
    }

    [Fact]
    public void A_correction_that_changes_an_earlier_result_makes_stale_too_and_one_that_does_not_does_not()
    {
        var entries = _ada.AllDone();
        Kept same = _ada.Write(new Corrected(entries[2].Hash, "capital", new Written("A17"))), other = _ada.Write(new Corrected(entries[2].Hash, "misread", new Written("A11")));
        Assert.Equal(Standing.Done, Fold([.. entries, same]).StandingOf(Stop));
        Assert.Equal(Standing.Stale, Fold([.. entries, other]).StandingOf(Stop));
    }

    [Theory]
    [InlineData(Upset.PlugsMoved, "bus-ohms", "stop-chain")]
    [InlineData(Upset.Transported, "stop-chain")]
    [InlineData(Upset.PowerCycled, "home:a")]
    public void What_happens_to_the_machine_makes_stale_the_evidence_that_rested_on_it(Upset upset, params string[] stale)
    {
        var entries = _ada.AllDone();
        var happened = _ada.Write(new Happened(upset, ""));
        var progress = Fold([.. entries, happened]);
        Assert.Equal(stale, progress.Steps.Where(s => s.Standing == Standing.Stale).Select(s => s.Step.Id));
        Assert.All(progress.Steps.Where(s => s.Standing == Standing.Stale), s => Assert.Equal(new Staleness.Upset(upset, happened.Hash), Assert.Single(s.Stale)));
        Assert.Equal(10 * stale.Length, progress.MinutesLeft);

        // It did not happen after all.
        var taken = _ada.Write(new Corrected(happened.Hash, "another machine", null));
        Assert.DoesNotContain(Fold([.. entries, happened, taken]).Steps, s => s.Standing == Standing.Stale);
    }

    [Fact]
    public void Before_a_change_is_made_it_is_told_what_it_costs()
    {
        var entries = _ada.AllDone();
        var now = Fold(entries);
        var added = StepOf("rod:b", EnergyLevel.Isolated);
        var run = DryRun.Of(now, [Ohms, Rod, Stop, Home, added], entries, Usual, Unmoved.SetItem("", [new FieldMove("/robot/chains/a/rod", "300 mm", "310 mm")]));
        Assert.Equal(["rod:a"], run.Stale.Select(s => s.Step.Id));
        Assert.Equal([new Staleness.Field("/robot/chains/a/rod", "300 mm", "310 mm")], run.Stale[0].Why);
        Assert.Equal(["rod:b"], run.New.Select(s => s.Id));
        Assert.Equal(["run"], run.Gone.Select(s => s.Step.Id));
        Assert.Equal(20, run.Minutes);
    }

    private static Progress With(IEnumerable<Kept> entries, params ImmutableArray<FieldMove> moves) =>
        Trivet.AsBuilt.Fold.Of(Steps, entries, Usual, Unmoved.SetItem("", moves));
}
