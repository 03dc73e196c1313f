namespace Trivet.Wiring;

/// <summary>Lengths of CAN data frames in bits, the three bits of rest between frames included.</summary>
public static class CanFrame
{
    /// <summary>
    /// As long as stuffing can make a frame (Davis, Burns, Bril, Lukkien 2007): of the g + 8n bits that are stuffed, one for each four but the first.
    /// </summary>
    /// <param name="bytes">0 to 8.</param>
    public static int WorstBits(int bytes, bool extended = false)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(bytes, 0);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(bytes, 8);
        int stuffed = (extended ? 54 : 34) + 8 * bytes;
        return stuffed + 13 + (stuffed - 1) / 4;
    }

    /// <summary>As short as a frame can be: without any stuff bit.</summary>
    /// <param name="bytes">0 to 8.</param>
    public static int LeastBits(int bytes, bool extended = false) => (extended ? 54 : 34) + 8 * bytes + 13;

    /// <summary>
    /// Exactly, bit by bit (ISO 11898-1, from memory): start, identifier, remote, format and reserved bits, length, data and the check sum of polynomial
    /// 4599h are stuffed after five equal bits; delimiters, acknowledgement, end and rest are not.
    /// </summary>
    /// <param name="id">11 bits, or 29 when extended.</param>
    public static int Bits(uint id, ReadOnlySpan<byte> data, bool extended = false)
    {
        ArgumentOutOfRangeException.ThrowIfGreaterThan(data.Length, 8);
        var bits = new FrameBits();
        bits.Add(0, 1);
        if (extended)
        {
            bits.Add(id >> 18, 11);
            bits.Add(0b11, 2);
            bits.Add(id & 0x3FFFF, 18);
            bits.Add(0, 3);
        }
        else
        {
            bits.Add(id, 11);
            bits.Add(0, 3);
        }
        bits.Add((uint)data.Length, 4);
        foreach (byte b in data) bits.Add(b, 8);
        bits.Add(bits.CheckSum, 15);
        const int Unstuffed = 1 + 2 + 7 + 3;
        return bits.Count + bits.Stuffed + Unstuffed;
    }

    /// <summary>Bits as they are sent: their number, check sum and stuff bits.</summary>
    private struct FrameBits
    {
        private int _run;
        private bool _last;

        public int Count { get; private set; }
        public int Stuffed { get; private set; }
        public uint CheckSum { get; private set; }

        public void Add(uint value, int width)
        {
            for (int i = width - 1; i >= 0; i--) Add((value >> i & 1) != 0);
        }

        private void Add(bool bit)
        {
            bool turn = bit != ((CheckSum >> 14 & 1) != 0);
            CheckSum = CheckSum << 1 & 0x7FFF;
            if (turn) CheckSum ^= 0x4599;
            _run = Count > 0 && bit == _last ? _run + 1 : 1;
            _last = bit;
            Count++;
            if (_run < 5) return;
            // A bit of the other kind follows, which begins a run of its own.
            Stuffed++;
            _last = !bit;
            _run = 1;
        }
    }
}
