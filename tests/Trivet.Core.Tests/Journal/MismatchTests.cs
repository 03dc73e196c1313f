using Trivet.Journal;
using Trivet.Testing;
using Xunit;

namespace Trivet.Core.Tests.Journal;

public sealed class MismatchTests
{
    [Fact]
    public void Two_sound_chains_have_nothing_to_show()
    {
        WritingDevice a = new("a"), b = new("b");
        Assert.Empty(Mismatches.Of([a.Write(new Begun()), b.Write(new Begun()), a.Write(new Ticked()), b.Write(new Ticked())]));
    }

    [Fact]
    public void A_gap_is_told_with_what_is_missing()
    {
        var entries = Chain("a", 6);
        var gap = Assert.Single(Mismatches.Of([entries[0], entries[3], entries[4], entries[5]]));
        Assert.Equal((MismatchKind.Gap, "a", 4L, 2L, 3L), (gap.Kind, gap.Device, gap.Sequence, gap.First, gap.Last));
        Assert.Equal(1, Assert.Single(Mismatches.Of([entries[1]])).First);
    }

    [Fact]
    public void A_fork_is_told_and_both_ways_on_are_sound()
    {
        var first = Chain("a", 3);
        var copied = new WritingDevice("a");
        copied.Write(new Counted(0));
        Kept other = copied.Write(new Counted(70)), onward = copied.Write(new Counted(80));

        var found = Mismatches.Of([.. first, other, onward]);

        Assert.Equal([(MismatchKind.Fork, 2L), (MismatchKind.Fork, 3L)], found.Select(m => (m.Kind, m.Sequence)));
        Assert.Equal(new[] { first[1].Hash, other.Hash }.Order(StringComparer.Ordinal), found[0].Entries);
    }

    [Fact]
    public void An_entry_that_does_not_name_the_one_before_is_told()
    {
        var entries = Chain("a", 3);
        var other = new WritingDevice("a") { Now = WritingDevice.Noon.AddHours(1) };
        other.Write(new Counted(5));
        other.Write(new Counted(6));
        var broken = Assert.Single(Mismatches.Of([entries[0], entries[1], other.Write(new Counted(7))]));
        Assert.Equal((MismatchKind.BrokenChain, 3L), (broken.Kind, broken.Sequence));
    }

    [Fact]
    public void A_clock_that_jumps_back_is_told_and_the_order_of_the_device_stays()
    {
        var device = new WritingDevice("a");
        Kept first = device.Write(new Counted(1)), second = device.Write(new Counted(2));
        device.Now = WritingDevice.Noon.AddHours(-1);
        var third = device.Write(new Counted(3));

        var back = Assert.Single(Mismatches.Of([third, second, first]));

        Assert.Equal((MismatchKind.ClockBack, 3L, TimeSpan.FromHours(1) + TimeSpan.FromSeconds(1)), (back.Kind, back.Sequence, TimeSpan.FromTicks(back.First)));
        Assert.Equal([first, second, third], Ordering.Of([third, first, second]));
    }

    [Fact]
    public void A_clock_that_runs_ahead_is_told_and_held_back_by_the_receipt()
    {
        WritingDevice ahead = new("a") { Now = WritingDevice.Noon.AddDays(1) }, right = new("b") { Now = WritingDevice.Noon.AddMinutes(5) };
        Kept early = ahead.Write(new Counted(1)), late = right.Write(new Counted(2));
        early = early with { Receipt = new Receipt(1, early.Hash, "", WritingDevice.Noon.AddMinutes(1).Ticks) };

        Assert.Equal(MismatchKind.ClockAhead, Assert.Single(Mismatches.Of([early, late])).Kind);
        Assert.Equal([early, late], Ordering.Of([late, early]));
    }

    [Fact]
    public void Devices_are_set_in_order_by_their_corrected_clocks()
    {
        WritingDevice a = new("a"), b = new("b") { Now = WritingDevice.Noon.AddHours(-3), ClockOffset = 3 * TimeSpan.TicksPerHour + TimeSpan.TicksPerMillisecond };
        Kept[] inOrder = [a.Write(new Counted(0)), b.Write(new Counted(0)), a.Write(new Counted(1)), b.Write(new Counted(1))];
        Assert.Equal(inOrder, Ordering.Of([.. inOrder.Reverse()]));
    }

    [Fact]
    public void A_correction_of_nothing_and_what_is_not_understood_are_told()
    {
        var device = new WritingDevice("a");
        var found = Mismatches.Of([device.Write(new Corrected(new string('a', 64), "?", null)), device.Write(new Released(new string('b', 64)))]);
        Assert.Equal([MismatchKind.NamesNothing, MismatchKind.NamesNothing], found.Select(m => m.Kind));
        var entry = device.Write(new Ticked());
        Assert.Contains(Mismatches.Of([entry with { Entry = entry.Entry with { Says = new Unread("weighed") } }]), m => m.Kind == MismatchKind.Unread);
    }

    private static Kept[] Chain(string id, int count)
    {
        var device = new WritingDevice(id);
        return [.. Enumerable.Range(0, count).Select(i => device.Write(new Counted(i)))];
    }
}
