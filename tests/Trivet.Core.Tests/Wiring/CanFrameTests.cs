using CsCheck;
using Trivet.Wiring;
using Xunit;

namespace Trivet.Core.Tests.Wiring;

public sealed class CanFrameTests
{
    /// <summary>Davis, Burns, Bril, Lukkien 2007: 55 + 10n and 80 + 10n bits; 0.54, 0.27 and 0.135 ms for eight bytes at 250, 500 and 1000 kbit/s.</summary>
    [Theory]
    [InlineData(0, false, 55), InlineData(1, false, 65), InlineData(4, false, 95), InlineData(8, false, 135)]
    [InlineData(0, true, 80), InlineData(1, true, 90), InlineData(4, true, 120), InlineData(8, true, 160)]
    public void The_longest_frame_is_that_of_the_published_formula(int bytes, bool extended, int bits) => Assert.Equal(bits, CanFrame.WorstBits(bytes, extended));

    /// <summary>Values of the reference list (two independent implementations): 112, 127, 59 and 94 bits.</summary>
    [Theory]
    [InlineData(0x123, "1122334455667788", 112)]
    [InlineData(0x000, "0000000000000000", 127)]
    [InlineData(0x705, "05", 59)]
    [InlineData(0x181, "3700000000", 94)]
    public void The_exact_length_is_that_of_the_reference_frames(uint id, string data, int bits) =>
        Assert.Equal(bits, CanFrame.Bits(id, Convert.FromHexString(data)));

    [Fact]
    public void No_frame_is_longer_than_the_longest_or_shorter_than_one_without_stuffing() => Gen.Select(Gen.UInt, Gen.Byte.Array[0, 8], Gen.Bool).Sample((id, data, extended) =>
    {
        int bits = CanFrame.Bits(id & (extended ? 0x1FFFFFFFu : 0x7FFu), data, extended);
        Assert.InRange(bits, (extended ? 67 : 47) + 8 * data.Length, CanFrame.WorstBits(data.Length, extended));
    });
}
