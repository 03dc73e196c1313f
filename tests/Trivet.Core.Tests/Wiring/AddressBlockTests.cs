using System.Collections.Immutable;
using CsCheck;
using Trivet.Cells;
using Trivet.Testing;
using Trivet.Wiring;
using Xunit;

namespace Trivet.Core.Tests.Wiring;

public sealed class AddressBlockTests
{
    private static readonly Gen<(AddressBlock Block, ImmutableArray<int?> Set, AddressPlacing Placing)> Any =
        from first in Gen.Int[0, 12]
        from stride in Gen.Int[-3, 3].Where(s => s != 0)
        from count in Gen.Int[1, 6]
        from placing in Gen.Enum<AddressPlacing>()
        from set in Gen.Int[-3, 20].Array[0, 5]
        from none in Gen.Bool.Array[5]
        select (new AddressBlock(first, stride, first + stride * (count - 1)),
            set.Select((a, i) => none[i] && i % 2 == 0 ? (int?)null : a).ToImmutableArray(), placing);

    /// <summary>Every assignment that obeys the placing is tried: none changes less.</summary>
    [Fact]
    public void A_plan_obeys_the_class_and_changes_as_few_addresses_as_can_be() => Any.Sample(c =>
    {
        var plan = c.Block.Plan(c.Set, c.Placing);
        if (c.Set.Length > c.Block.Count)
        {
            Assert.Null(plan);
            return;
        }
        Assert.NotNull(plan);
        int[] index = [.. plan.Value.Select(a => c.Block.IndexOf(a)!.Value)];
        Assert.True(Obeys(index, c.Placing), string.Join(' ', index));
        int fewest = All(c.Block.Count, c.Set.Length).Where(a => Obeys(a, c.Placing)).Min(a => Changed(a));
        Assert.Equal(fewest, Changed(index));

        int Changed(int[] assignment) => assignment.Where((k, i) => c.Set[i] != c.Block.At(k)).Count();
    }, seed: "0000000000061", iter: Effort.Cases(1000));

    [Fact]
    public void What_is_planned_stays_as_it_is() => Any.Sample(c =>
    {
        if (c.Block.Plan(c.Set, c.Placing) is { } plan) Assert.Equal(plan, c.Block.Plan([.. plan.Select(a => (int?)a)], c.Placing)!.Value);
    });

    [Fact]
    public void A_module_put_between_others_leaves_their_addresses_where_the_class_has_room()
    {
        var block = new AddressBlock(10, 2, 30);
        Assert.Equal([10, 12, 20, 22], block.Plan([10, null, 20, 22], AddressPlacing.Rising)!.Value);
        // No room between 10 and 12: the fewest that move are those behind, or the one before.
        Assert.Equal([10, 12, 14], block.Plan([10, null, 12], AddressPlacing.Rising)!.Value);
        Assert.Equal([10, 14, 12], block.Plan([10, null, 12], AddressPlacing.Any)!.Value);
        Assert.Equal([3, 2, 1], new AddressBlock(3, -1, 1).Plan([null, null, null], AddressPlacing.ByPlace)!.Value);
    }

    [Theory]
    [InlineData(10, 2, 0, 42, new[] { 4, 2 })]
    [InlineData(16, 2, 0, 0x2A, new[] { 2, 10 })]
    [InlineData(16, 1, 8, 3, new[] { 11 })]
    // Levers: the least significant first.
    [InlineData(2, 4, 0, 6, new[] { 0, 1, 1, 0 })]
    public void Switches_read_the_address_in_their_own_base(int positions, int count, int shownAtZero, int address, int[] digits) =>
        Assert.Equal(digits, new AddressSwitches(count, positions, shownAtZero).For(address)!.Value);

    [Theory]
    [InlineData(10, 1, 0, 10)]
    [InlineData(2, 3, 0, 8)]
    [InlineData(16, 1, -4, 3)]
    public void An_address_that_does_not_fit_on_the_switches_is_none(int positions, int count, int shownAtZero, int address) =>
        Assert.Null(new AddressSwitches(count, positions, shownAtZero).For(address));

    private static bool Obeys(int[] index, AddressPlacing placing) => placing switch
    {
        AddressPlacing.ByPlace => index.Select((k, i) => k == i).All(same => same),
        AddressPlacing.Rising => index.Zip(index.Skip(1)).All(p => p.First < p.Second),
        _ => index.Distinct().Count() == index.Length,
    };

    private static IEnumerable<int[]> All(int values, int length) =>
        length == 0 ? [[]] : All(values, length - 1).SelectMany(head => Enumerable.Range(0, values), (head, k) => (int[])[.. head, k]);
}
