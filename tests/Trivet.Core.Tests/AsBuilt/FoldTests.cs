using Trivet.AsBuilt;
using Trivet.Cells;
using Trivet.Findings;
using Trivet.Journal;
using Trivet.Procedures;
using Trivet.Testing;
using Xunit;
using static Trivet.Core.Tests.AsBuilt.InventedWork;

namespace Trivet.Core.Tests.AsBuilt;

public sealed class FoldTests
{
    private readonly WritingDevice _ada = new("tablet-1"), _bob = new("desk-2", "bob") { Now = WritingDevice.Noon.AddHours(2) };

    [Fact]
    public void With_nothing_written_the_first_steps_are_not_begun_and_the_others_wait_for_them()
    {
        var progress = Fold([]);
        Assert.Equal([Standing.NotBegun, Standing.NotBegun, Standing.Waiting, Standing.Waiting, Standing.Waiting], progress.Steps.Select(s => s.Standing));
        Assert.Equal(["rod:a", "stop-chain"], progress.Of("home:a")!.WaitsFor);
        Assert.Equal(["home:a"], progress.Of("run")!.WaitsFor);
        Assert.Null(progress.Level);
        Assert.All(progress.Steps, s => Assert.False(s.MayBegin));
        Assert.Equal((50, 40), (progress.MinutesLeft, progress.MinutesAtBest));
    }

    [Fact]
    public void Done_as_it_should_be_all_is_done_and_a_step_of_ticks_is_weak()
    {
        var progress = Fold(_ada.AllDone());
        Assert.Equal([Standing.Done, Standing.Done, Standing.Done, Standing.Done, Standing.DoneWeak], progress.Steps.Select(s => s.Standing));
        Assert.Equal([Weakness.TickOnly], progress.Of("run")!.Weaknesses);
        Assert.Empty(progress.Mismatches);
        Assert.Equal((0, 0, EnergyLevel.AllAxes), (progress.MinutesLeft, progress.MinutesAtBest, progress.Level));
    }

    [Fact]
    public void A_step_is_in_progress_from_its_beginning_until_all_is_answered()
    {
        var entries = new List<Kept> { _ada.Write(Level(EnergyLevel.Isolated)) };
        Assert.True(Fold(entries).Of("bus-ohms")!.MayBegin);
        entries.Add(_ada.Write(new Begun(), "bus-ohms"));
        Assert.Equal(Standing.InProgress, Fold(entries).StandingOf(Ohms));
        entries.Add(_ada.Write(Ω(60), "bus-ohms", "ohms"));
        Assert.Equal(Standing.InProgress, Fold(entries).StandingOf(Ohms));
        entries.Add(_ada.Write(new Written("A17"), "bus-ohms", "serial"));
        Assert.Equal(Standing.Done, Fold(entries).StandingOf(Ohms));
    }

    [Fact]
    public void A_tick_in_the_place_of_values_is_weak_and_says_why()
    {
        Assert.Equal([Weakness.TickOnly, Weakness.NotAnswered], Of("bus-ohms", ("", new Ticked())).Weaknesses);
        var step = Of("bus-ohms", ("ohms", new Ticked()), ("serial", new Written("A17")));
        Assert.Equal((Standing.DoneWeak, Weakness.OtherThanAsked), (step.Standing, Assert.Single(step.Weaknesses)));
        Assert.Equal([Weakness.OtherThanAsked], Of("rod:a", ("length", new Measured("20 °C", "°C", 20, 1))).Weaknesses);
        Assert.Contains(Weakness.OtherThanAsked, Of("stop-chain", ("opens", new Chosen("all three")), ("devices", new Counted(3))).Weaknesses);
    }

    [Theory]
    [InlineData(54.9, Standing.OutOfTolerance, Verdict.FallsShort)]
    [InlineData(65.1, Standing.OutOfTolerance, Verdict.FallsShort)]
    [InlineData(55.5, Standing.Done, Verdict.Tight)]
    [InlineData(60, Standing.Done, Verdict.Holds)]
    public void A_reading_is_judged_at_once(double ohms, Standing standing, Verdict verdict)
    {
        var step = Of("bus-ohms", ("ohms", Ω(ohms)), ("serial", new Written("A17")));
        Assert.Equal((standing, verdict), (step.Standing, step.Asks[0].Verdict));
        // Read to 1 Ω: 1/√12 (JCGM 100, 4.3.7, from memory).
        Assert.Equal(0.288675134594813, step.Asks[0].Uncertainty, 15);
    }

    [Fact]
    public void What_is_not_as_expected_waits_for_a_second_person_and_the_same_one_does_not_count()
    {
        var entries = new List<Kept> { _ada.Write(Ω(70), "bus-ohms", "ohms"), _ada.Write(new Written("A17"), "bus-ohms", "serial") };
        var step = Fold(entries).Of("bus-ohms")!;
        Assert.Equal((Standing.OutOfTolerance, false), (step.Standing, step.LetsOn));
        Assert.Equal([Deviation.OutOfTolerance], step.ToRelease);

        entries.Add(_ada.Write(new Released(step.ReleaseNames!)));
        Assert.Equal(Standing.OutOfTolerance, Fold(entries).StandingOf(Ohms));
        Assert.Contains(Fold(entries).Mismatches, m => m.Kind == MismatchKind.ReleaseDoesNotCount);

        entries.Add(_bob.Write(new Released(step.ReleaseNames!)));
        Assert.Equal((Standing.Released, true), (Fold(entries).StandingOf(Ohms), Fold(entries).Of("bus-ohms")!.LetsOn));

        // A new answer needs a new release.
        _ada.Now = WritingDevice.Noon.AddHours(4);
        entries.Add(_ada.Write(Ω(80), "bus-ohms", "ohms"));
        Assert.Equal(Standing.OutOfTolerance, Fold(entries).StandingOf(Ohms));
    }

    [Fact]
    public void The_cell_says_who_may_release_and_what_needs_it()
    {
        var onlyCleo = Releasing.Of(new Recording { People = Keyed.Empty<Person>().Add("cleo", new Person { Releases = true }).Add("bob", new Person()) });
        var entries = new List<Kept> { _ada.Write(new NotPossible("no ladder"), "bus-ohms") };
        string names = Fold(entries).Of("bus-ohms")!.ReleaseNames!;
        entries.Add(_bob.Write(new Released(names)));
        Assert.Equal(Standing.NotPossible, Fold(entries, onlyCleo).StandingOf(Ohms));
        entries.Add(_bob.Write(new Released(names), by: "cleo"));
        Assert.Equal(Standing.Released, Fold(entries, onlyCleo).StandingOf(Ohms));

        // Where no second person is asked for, whoever did the step may let it stand, but somebody must.
        var alone = Releasing.Of(new Recording { ReleaseNotPossible = false });
        Assert.Equal(Standing.NotPossible, Fold(entries.Take(1), alone).StandingOf(Ohms));
        Assert.Equal(Standing.Released, Fold([entries[0], _ada.Write(new Released(names))], alone).StandingOf(Ohms));
    }

    [Fact]
    public void A_hold_point_waits_for_the_second_person_where_the_cell_says_so()
    {
        var asked = Releasing.Of(new Recording { ReleaseHoldPoints = true });
        var entries = _ada.AllDone().Take(7).ToList();
        Assert.Equal(Standing.Done, Fold(entries).StandingOf(Stop));
        var step = Fold(entries, asked).Of("stop-chain")!;
        Assert.Equal((Standing.PendingRelease, false), (step.Standing, step.LetsOn));
        Assert.Contains("stop-chain", Fold(entries, asked).Of("home:a")!.WaitsFor);
        entries.Add(_bob.Write(new Released(step.ReleaseNames!)));
        Assert.Equal(Standing.Done, Fold(entries, asked).StandingOf(Stop));
    }

    [Fact]
    public void A_weak_hold_point_lets_nobody_on()
    {
        List<Kept> entries = [.. _ada.AllDone().Take(5), _ada.Write(new Ticked(), "stop-chain")];
        var progress = Fold(entries);
        Assert.Equal((Standing.PendingRelease, false), (progress.StandingOf(Stop), progress.Of("stop-chain")!.LetsOn));
        Assert.Contains("stop-chain", progress.Of("home:a")!.WaitsFor);
    }

    [Fact]
    public void A_hold_point_farther_off_is_waited_for_where_all_between_is_done()
    {
        List<Kept> entries = [.. _ada.AllDone()];
        entries.RemoveAll(k => k.Entry.Step is "stop-chain" or "run");
        Assert.True(Fold(entries).Of("home:a")!.LetsOn);
        Assert.Equal(["stop-chain"], Fold(entries).Of("run")!.WaitsFor);
    }

    [Fact]
    public void In_the_shop_nothing_need_be_declared_and_what_is_declared_counts()
    {
        var bench = StepOf("bench", EnergyLevel.Isolated, asks: [new AskedTick("done")]) with { Place = StepPlace.Shop };
        bool MayBegin(params Kept[] entries) => Trivet.AsBuilt.Fold.Of([bench], entries, Usual, Unmoved).Steps[0].MayBegin;
        Assert.True(MayBegin());
        Assert.False(MayBegin(_ada.Write(Level(EnergyLevel.OneAxis))));
    }

    [Fact]
    public void A_photograph_beside_a_step_ends_nothing()
    {
        Assert.Equal(Standing.InProgress, Of("bus-ohms", ("", new Photographed(new string('a', 64)))).Standing);
        Assert.Equal(Standing.DoneWeak, Of("bus-ohms", ("", new Ticked()), ("", new Photographed(new string('a', 64)))).Standing);
    }

    [Fact]
    public void What_is_done_before_a_hold_point_is_kept_and_told()
    {
        List<Kept> entries = [.. _ada.AllDone()];
        entries.RemoveAll(k => k.Entry.Step == "stop-chain");
        var progress = Fold(entries);
        Assert.Equal(3, progress.Mismatches.Count(m => m.Kind == MismatchKind.BeforeHoldPoint));
        Assert.Equal(Standing.DoneWeak, progress.StandingOf(Home));
        Assert.Equal([Weakness.BeforeHoldPoint], progress.Of("home:a")!.Weaknesses);
    }

    [Fact]
    public void A_step_that_needs_isolation_can_not_begin_while_the_journal_says_powered()
    {
        var entries = new List<Kept> { _ada.Write(Level(EnergyLevel.OneAxis)) };
        Assert.False(Fold(entries).Of("bus-ohms")!.EnergyFits);
        Assert.False(Fold(entries).Of("bus-ohms")!.MayBegin);

        entries.Add(_ada.Write(Ω(60), "bus-ohms", "ohms"));
        entries.Add(_ada.Write(new Written("A17"), "bus-ohms", "serial"));
        var progress = Fold(entries);
        // A serial number may be written anywhere; a reading is taken at the machine.
        Assert.Equal(entries[1].Hash, Assert.Single(progress.Mismatches, m => m.Kind == MismatchKind.MorePowerThanAllowed).Entries[0]);
        Assert.Equal((Standing.DoneWeak, Weakness.MorePowerThanAllowed), (progress.StandingOf(Ohms), Assert.Single(progress.Of("bus-ohms")!.Weaknesses)));

        entries.Add(_ada.Write(Level(EnergyLevel.Isolated)));
        Assert.True(Fold(entries).Of("rod:a")!.MayBegin);
    }

    [Theory]
    [InlineData(null, "V", false)]
    [InlineData(48.0, "V", false)]
    [InlineData(-48.0, "V", false)]
    [InlineData(0.3, "A", false)]
    [InlineData(0.3, "V", true)]
    public void Isolated_counts_only_when_measured_dead(double? volts, string unit, bool counts)
    {
        var declared = _ada.Write(new EnergyDeclared(EnergyLevel.Isolated, volts is { } v ? new Measured("", unit, v, 0.1) : null));
        var progress = Fold([declared]);
        Assert.Equal(counts, progress.Level == EnergyLevel.Isolated);
        Assert.Equal(!counts, progress.Mismatches.Any(m => m.Kind == MismatchKind.NotMeasuredDead));
    }

    [Fact]
    public void After_a_power_cycle_or_a_break_what_the_machine_may_do_is_to_be_declared_again()
    {
        foreach (Statement broken in (Statement[])[new Happened(Upset.PowerCycled, ""), new Happened(Upset.Transported, ""), new Interrupted("lunch")])
        {
            var device = new WritingDevice("d");
            Assert.Null(Fold([device.Write(Level(EnergyLevel.Isolated)), device.Write(broken)]).Level);
        }
        Assert.Equal(EnergyLevel.Isolated, Fold([_ada.Write(Level(EnergyLevel.Isolated)), _ada.Write(new Happened(Upset.PlugsMoved, ""))]).Level);
    }

    [Fact]
    public void A_correction_counts_and_the_old_entry_stays()
    {
        var wrong = _ada.Write(Ω(600), "bus-ohms", "ohms");
        List<Kept> entries = [wrong, _ada.Write(new Written("A17"), "bus-ohms", "serial"), _ada.Write(new Corrected(wrong.Hash, "typed a nought too many", Ω(60)))];
        var step = Fold(entries).Of("bus-ohms")!;
        Assert.Equal((Standing.Done, 60.0), (step.Standing, ((Measured)step.Asks[0].Answer!).Value));
        Assert.Equal(entries, step.History);

        // Taken back without anything in its place: the answer is missing again. And that taken back: what was corrected stands again.
        entries.Add(_ada.Write(new Corrected(entries[2].Hash, "it was right", null)));
        Assert.Equal(Standing.OutOfTolerance, Fold(entries).StandingOf(Ohms));
        entries.Add(_ada.Write(new Corrected(wrong.Hash, "not this machine", null)));
        Assert.Equal(Standing.InProgress, Fold(entries).StandingOf(Ohms));
        entries.Add(_ada.Write(new Corrected(entries[4].Hash, "it was this machine", null)));
        Assert.Equal(Standing.OutOfTolerance, Fold(entries).StandingOf(Ohms));
        Assert.Equal(6, Fold(entries).Of("bus-ohms")!.History.Length);
    }

    [Fact]
    public void A_blind_reading_shows_its_expected_value_afterwards_and_is_not_blind_twice()
    {
        Assert.False(Fold([]).Of("rod:a")!.Asks[0].ExpectedMayBeShown);
        var first = _ada.Write(Mm(300.4), "rod:a", "length");
        var once = Fold([first]).Of("rod:a")!;
        Assert.True(once.Asks[0].ExpectedMayBeShown);
        Assert.Equal(Standing.Done, once.Standing);

        Assert.Equal([Weakness.NotBlind], Fold([first, _ada.Write(Mm(300), "rod:a", "length")]).Of("rod:a")!.Weaknesses);
        Assert.Empty(Fold([first, _bob.Write(Mm(300), "rod:a", "length")]).Of("rod:a")!.Weaknesses);
    }

    [Fact]
    public void A_machine_that_differs_and_a_step_that_can_not_be_done_say_so_in_words()
    {
        var differs = Of("rod:a", ("length", Mm(300)), ("", new Differs("the rods are painted")));
        Assert.Equal((Standing.Differs, "the rods are painted", false), (differs.Standing, differs.Words, differs.LetsOn));
        var impossible = Of("rod:a", ("", new NotPossible("no access")));
        Assert.Equal((Standing.NotPossible, "no access"), (impossible.Standing, impossible.Words));
        // A later answer to the same takes the place of what was said to differ.
        Assert.Equal(Standing.Done, Of("rod:a", ("length", new Differs("painted")), ("length", Mm(300))).Standing);
        // Answered after all.
        Assert.Equal(Standing.Done, Of("rod:a", ("", new NotPossible("no access")), ("length", Mm(300))).Standing);
    }

    [Fact]
    public void A_signature_in_another_capacity_is_weak()
    {
        var sign = StepOf("sign", EnergyLevel.AllAxes, asks: [new AskedSignature("name", Skill.SafetyPerson)]);
        Assert.Equal([Weakness.OtherCapacity], Only(new Signed(Skill.Fitter, "0.1.0", "", [])).Weaknesses);
        Assert.Equal(Standing.Done, Only(new Signed(Skill.SafetyPerson, "0.1.0", "", [])).Standing);

        StepState Only(Signed signed) => Trivet.AsBuilt.Fold.Of([sign], [new WritingDevice("d").Write(signed, "sign", "name")], Usual, Unmoved).Steps[0];
    }

    [Fact]
    public void Steps_and_questions_that_are_not_known_are_kept_and_told()
    {
        var entries = new[] { _ada.Write(new Ticked(), "no-such-step"), _ada.Write(new Counted(1), "bus-ohms", "no-such-question") };
        var progress = Fold(entries);
        Assert.Equal([MismatchKind.UnknownStep, MismatchKind.UnknownAsk], progress.Mismatches.Select(m => m.Kind));
        Assert.Equal(entries[..1], progress.Loose);
        Assert.Equal(entries[1..], progress.Of("bus-ohms")!.History);
    }

    [Fact]
    public void Two_devices_that_could_not_know_of_each_other_and_say_otherwise_are_told()
    {
        var ada = _ada.Write(Ω(60), "bus-ohms", "ohms");
        var bob = _bob.Write(Ω(120), "bus-ohms", "ohms");
        Kept late = ada with { Receipt = new Receipt(2, ada.Hash, "", _bob.Now.AddMinutes(5).Ticks) };
        Kept early = ada with { Receipt = new Receipt(1, ada.Hash, "", _bob.Now.AddMinutes(-5).Ticks) };

        Assert.Equal([bob.Hash, ada.Hash], Assert.Single(Fold([late, bob]).Mismatches, m => m.Kind == MismatchKind.AnsweredApart).Entries);
        Assert.DoesNotContain(Fold([early, bob]).Mismatches, m => m.Kind == MismatchKind.AnsweredApart);
    }

    private static StepState Of(string step, params (string Ask, Answer Answer)[] answers)
    {
        var device = new WritingDevice("d");
        return Fold([.. answers.Select(a => device.Write(a.Answer, step, a.Ask))]).Of(step)!;
    }
}
