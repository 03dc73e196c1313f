using System.Collections.Immutable;
using Trivet.Files.Entries;
using Trivet.Files.Floor;
using Trivet.Journal;
using Xunit;

namespace Trivet.Files.Tests.Floor;

public sealed class DeviceChainTests
{
    private static Entry Says(string text) => new()
    {
        Device = "d", Sequence = 99, Previous = "nonsense", Ticks = 639_000_000_000_000_000, LocalOffset = 60, Person = "ada", Cell = "jar-lids", Revision = "", Says = new Written(text),
    };

    private static ImmutableArray<DeviceEntry> Chain(int length)
    {
        var chain = ImmutableArray.CreateBuilder<DeviceEntry>();
        for (int i = 0; i < length; i++) chain.Add(DeviceChain.Next(chain.Count == 0 ? null : chain[^1], Says($"entry {i}")));
        return chain.ToImmutable();
    }

    private static string ReceiptOf(DeviceEntry entry, long number) => EntryText.Of(new Receipt(number, entry.Hash, "", 639_000_000_000_000_000));

    [Fact]
    public void Each_entry_follows_on_the_one_before_and_a_changed_word_shows()
    {
        var chain = Chain(3);
        Assert.Equal([1, 2, 3], chain.Select(e => e.Sequence));
        Assert.True(DeviceChain.IsWhole(chain));
        Assert.False(DeviceChain.IsWhole([chain[0], chain[2]]));
        Assert.False(DeviceChain.IsWhole(chain.SetItem(1, chain[1] with { Text = chain[1].Text.Replace("entry 1", "entry 7", StringComparison.Ordinal) })));
        // The entries of a device look whole to the journal as well.
        Assert.Empty(Mismatches.Of([.. chain.Select(e => DeviceChain.Read(e.Text, "")!)]));
    }

    [Fact]
    public void What_has_no_receipt_is_sent_in_order_and_in_small_batches()
    {
        var chain = Chain(120);
        chain = chain.SetItem(0, chain[0] with { Receipt = ReceiptOf(chain[0], 1) });
        var batch = DeviceChain.ToSend(chain.Reverse());
        Assert.Equal(Enumerable.Range(2, DeviceChain.LargestBatch).Select(i => (long)i), batch.Select(e => e.Sequence));
        // One that is larger than a batch goes alone rather than never.
        var large = DeviceChain.Next(null, Says(new string('x', 7000)));
        Assert.Single(DeviceChain.ToSend([large with { Text = large.Text + new string(' ', DeviceChain.LargestText) }, DeviceChain.Next(large, Says("y"))]));
    }

    [Fact]
    public void An_answer_cut_short_confirms_what_it_names_and_the_rest_is_sent_again()
    {
        var sent = DeviceChain.ToSend(Chain(3));
        var changed = DeviceChain.Confirm(sent, new([new(ReceiptOf(sent[0], 7), "", ""), new("", "damaged", "send again")], 0));
        Assert.Equal([(1L, true, ""), (2L, false, "damaged")], changed.Select(c => (c.Sequence, c.Receipt.Length > 0, c.Problem)));
        // The same answer once more changes nothing.
        Assert.Empty(DeviceChain.Confirm(changed, new([new(ReceiptOf(sent[1], 8), "", ""), new("", "damaged", "")], 0)));
    }

    [Fact]
    public void A_receipt_of_another_entry_is_not_believed()
    {
        var sent = DeviceChain.ToSend(Chain(2));
        Assert.Empty(DeviceChain.Confirm(sent, new([new(ReceiptOf(sent[1], 7), "", ""), new("nonsense", "", "")], 0)));
    }

    [Theory]
    // By hand: asked at 100, answered at 300, the desk's clock then 1200: the middle is 200, so the desk is ahead by 1000.
    [InlineData(100, 300, 1200, 1000L)]
    [InlineData(100, 100, 50, -50L)]
    [InlineData(0, 30_000_000, 50, null)]
    [InlineData(100, 50, 75, null)]
    public void The_clock_is_compared_in_the_middle_of_the_way(long sent, long received, long desk, long? offset) =>
        Assert.Equal(offset, DeviceChain.ClockOffset(sent, received, desk));
}
