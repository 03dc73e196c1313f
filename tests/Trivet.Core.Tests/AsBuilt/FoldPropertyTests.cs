using System.Collections.Immutable;
using Trivet.AsBuilt;
using Trivet.Findings;
using Trivet.Journal;
using Trivet.Procedures;
using Trivet.Testing;
using Xunit;
using static Trivet.Core.Tests.AsBuilt.InventedWork;

namespace Trivet.Core.Tests.AsBuilt;

/// <summary>What holds for every procedure and every journal: random ones, from seeds that are told on failure.</summary>
public sealed class FoldPropertyTests
{
    private static readonly int Cases = Effort.Cases(300);

    [Fact]
    public void Only_steps_that_depend_on_a_moved_field_become_stale_and_all_of_them_that_are_done()
    {
        for (int seed = 0; seed < Cases; seed++)
        {
            var random = new Random(seed);
            var (steps, entries) = Work(random);
            string field = $"/field/{random.Next(6)}";
            var still = Fold(steps, entries);
            var moved = Fold(steps, entries, new FieldMove(field, "1 mm", "2 mm"));
            foreach (var (before, after) in still.Steps.Zip(moved.Steps))
            {
                bool depends = before.Step.Inputs.Contains(field);
                if (!depends) Assert.True(before.Stale.SequenceEqual(after.Stale), $"seed {seed}, {before.Step.Id}");
                if (depends && IsClosed(before)) Assert.True(after.Stale.Contains(new Staleness.Field(field, "1 mm", "2 mm")), $"seed {seed}, {before.Step.Id}");
            }
        }
    }

    [Fact]
    public void An_upset_makes_stale_only_what_it_upsets()
    {
        for (int seed = 0; seed < Cases; seed++)
        {
            var random = new Random(seed);
            var (steps, entries) = Work(random);
            var upset = (Upset)random.Next(3);
            var late = new WritingDevice("late") { Now = WritingDevice.Noon.AddYears(1) };
            var before = Fold(steps, entries);
            var after = Fold(steps, [.. entries, late.Write(new Happened(upset, ""))]);
            foreach (var (b, a) in before.Steps.Zip(after.Steps))
                Assert.True(b.Stale.Length < a.Stale.Length == (IsClosed(b) && b.Step.UpsetBy.Contains(upset)), $"seed {seed}, {b.Step.Id}");
        }
    }

    [Fact]
    public void The_order_in_which_entries_come_changes_nothing()
    {
        for (int seed = 0; seed < Cases; seed++)
        {
            var random = new Random(seed);
            var (steps, entries) = Work(random);
            string expected = Told(Fold(steps, entries));
            Kept[] shuffled = [.. entries];
            random.Shuffle(shuffled);
            Assert.True(expected == Told(Fold(steps, shuffled)), $"seed {seed}");
        }
    }

    [Fact]
    public void Devices_that_work_on_different_steps_may_be_in_any_order_among_themselves()
    {
        for (int seed = 0; seed < Cases; seed++)
        {
            var random = new Random(seed);
            // No step comes after another, and none needs a level: nothing of one device can touch what the other does.
            ImmutableArray<Step> steps = [.. Enumerable.Range(0, 8).Select(i => Random(random, i) with { After = [], HoldPoint = false, Energy = EnergyLevel.AllAxes })];
            Kept[][] devices = [.. Enumerable.Range(0, 2).Select(d => Answers(random, new WritingDevice($"device-{d}"), [.. steps.Where((_, i) => i % 2 == d)]))];
            var later = new WritingDevice("device-1") { Now = WritingDevice.Noon.AddDays(3) };
            Kept[] shifted = [.. devices[1].Select(k => later.Write(k.Entry.Says, k.Entry.Step, k.Entry.Ask))];
            Assert.True(Standings(Fold(steps, [.. devices[0], .. devices[1]])) == Standings(Fold(steps, [.. devices[0], .. shifted])), $"seed {seed}");
        }

        static string Standings(Progress p) => string.Join('\n', p.Steps.Select(s => $"{s.Step.Id} {s.Standing} {string.Join(' ', s.Weaknesses)} {s.MinutesLeft}"));
    }

    [Fact]
    public void Adding_an_entry_never_takes_one_away()
    {
        for (int seed = 0; seed < Cases; seed++)
        {
            var (steps, entries) = Work(new Random(seed));
            for (int count = 0; count <= entries.Length; count += 5)
            {
                var progress = Fold(steps, entries[..count]);
                var found = progress.Steps.SelectMany(s => s.History).Concat(progress.Loose).Select(k => k.Hash).Order(StringComparer.Ordinal);
                Assert.True(found.SequenceEqual(entries[..count].Select(k => k.Hash).Order(StringComparer.Ordinal)), $"seed {seed}, {count} entries");
            }
        }
    }

    private static bool IsClosed(StepState step) => step.Standing is not (Standing.NotBegun or Standing.Waiting or Standing.InProgress);

    private static Progress Fold(ImmutableArray<Step> steps, IEnumerable<Kept> entries, params ImmutableArray<FieldMove> moves) =>
        Trivet.AsBuilt.Fold.Of(steps, entries, Usual, Unmoved.SetItem("", moves));

    private static string Told(Progress p) => string.Join('\n',
    [
        .. p.Steps.Select(s => $"{s.Step.Id} {s.Standing} {s.LetsOn} {s.EnergyFits} {string.Join(' ', s.WaitsFor)} {string.Join(' ', s.Stale)} {string.Join(' ', s.Weaknesses)} {s.MinutesLeft} {string.Join(' ', s.History.Select(h => h.Hash))}"),
        .. p.Mismatches.Select(m => $"{m.Kind} {m.Device} {m.Sequence} {string.Join(' ', m.Entries)}"),
        $"{p.Level} {p.LevelEntry?.Hash} {p.MinutesLeft} {p.MinutesAtBest} {string.Join(' ', p.Loose.Select(k => k.Hash))}",
    ]);

    private static (ImmutableArray<Step> Steps, Kept[] Entries) Work(Random random)
    {
        ImmutableArray<Step> steps = [.. Enumerable.Range(0, 8).Select(i => Random(random, i))];
        WritingDevice[] devices = [.. Enumerable.Range(0, 3).Select(d => new WritingDevice($"device-{d}", $"person-{d % 2}"))];
        foreach (var device in devices) device.Now = WritingDevice.Noon.AddSeconds(random.Next(100));
        var entries = new List<Kept>();
        for (int i = 0; i < 60; i++)
        {
            var device = devices[random.Next(devices.Length)];
            var step = steps[random.Next(steps.Length)];
            var asked = step.Asks[random.Next(step.Asks.Length)];
            entries.Add(random.Next(12) switch
            {
                0 => device.Write(new EnergyDeclared((EnergyLevel)random.Next(5), new Measured("0 V", "V", 0, 0.1))),
                1 => device.Write(new Happened((Upset)random.Next(3), "")),
                2 when entries.Count > 0 => device.Write(new Corrected(entries[random.Next(entries.Count)].Hash, "?", random.Next(2) == 0 ? null : AnswerTo(random, asked))),
                3 when entries.Count > 0 => device.Write(new Released(entries[random.Next(entries.Count)].Hash)),
                4 => device.Write(new Begun(), step.Id),
                5 => device.Write(random.Next(3) switch { 0 => new NotPossible("x"), 1 => new Differs("y"), _ => new Ticked() }, step.Id),
                6 => device.Write(new Seen("", "z")),
                _ => device.Write(AnswerTo(random, asked), step.Id, asked.Id),
            });
        }
        return (steps, [.. entries]);
    }

    private static Kept[] Answers(Random random, WritingDevice device, Step[] steps) =>
        [.. Enumerable.Range(0, 20).Select(_ => steps[random.Next(steps.Length)]).Select(s => (Step: s, Asked: s.Asks[random.Next(s.Asks.Length)]))
            .Select(x => device.Write(AnswerTo(random, x.Asked), x.Step.Id, x.Asked.Id))];

    private static Answer AnswerTo(Random random, Asked asked) => asked switch
    {
        AskedValue => Ω(random.Next(50, 70)),
        AskedCount => new Counted(random.Next(3)),
        _ => new Ticked(),
    };

    /// <summary>A step that may come after any before it.</summary>
    private static Step Random(Random random, int number) => StepOf(
        $"step-{number}", (EnergyLevel)random.Next(5),
        after: [.. Enumerable.Range(0, number).Where(_ => random.Next(4) == 0).Select(i => $"step-{i}")],
        inputs: [.. Enumerable.Range(0, 6).Where(_ => random.Next(3) == 0).Select(i => $"/field/{i}")],
        asks: [new AskedValue("value", "Ω", 60, random.Next(2) == 0 ? null : Limit.Between(55, 65, Practice), random.Next(3) == 0), new AskedCount("count", 1), new AskedTick("tick")])
        with
    { HoldPoint = random.Next(4) == 0, UpsetBy = [.. Enum.GetValues<Upset>().Where(_ => random.Next(3) == 0)] };
}
