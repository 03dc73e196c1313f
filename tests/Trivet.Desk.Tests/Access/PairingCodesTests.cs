using Trivet.Desk.Network;

namespace Trivet.Desk.Access;

/// <summary>A pairing code by itself: once, for minutes, and not to be guessed.</summary>
public sealed class PairingCodesTests
{
    private readonly SetClock _clock = new(new(2030, 5, 6, 12, 0, 0, TimeSpan.Zero));

    [Fact]
    public void A_code_is_good_once()
    {
        var codes = new PairingCodes(_clock);
        var code = codes.Make("ada");
        Assert.Null(codes.Use("00000000"));
        Assert.Equal(code, codes.Use(code.Text));
        Assert.Null(codes.Use(code.Text));
        Assert.Null(codes.Open);
    }

    [Fact]
    public void A_code_runs_out_and_a_new_one_replaces_it()
    {
        var codes = new PairingCodes(_clock);
        var first = codes.Make("ada");
        var second = codes.Make("ada");
        Assert.Null(codes.Use(first.Text));
        _clock.Now += PairingCodes.Life;
        Assert.Null(codes.Open);
        Assert.Null(codes.Use(second.Text));
        var third = codes.Make("ada");
        codes.Withdraw();
        Assert.Null(codes.Use(third.Text));
    }

    [Fact]
    public void After_a_hundred_wrong_ones_the_code_is_withdrawn()
    {
        var codes = new PairingCodes(_clock);
        var code = codes.Make("ada");
        for (int i = 0; i < PairingCodes.MostWrong - 1; i++) Assert.Null(codes.Use($"wrong {i}"));
        Assert.Equal(code, codes.Open);
        Assert.Null(codes.Use("wrong"));
        Assert.Null(codes.Open);
        Assert.Null(codes.Use(code.Text));
    }

    [Fact]
    public void It_is_read_as_people_write_it()
    {
        var codes = new PairingCodes(_clock);
        var code = codes.Make("ada");
        Assert.Equal(9, code.Shown.Length);
        Assert.NotNull(codes.Use($" {code.Shown.ToLowerInvariant().Replace('0', 'o').Replace('1', 'l')} "));
    }

    /// <summary>40 bits are what the entropy of the code is stated as: 8 characters, each of 32 equally likely. Chi-squared with 31 degrees of freedom is
    /// below 76 with a probability of 1 − 10⁻⁵ (any table of the distribution; from memory).</summary>
    [Fact]
    public void Each_character_is_one_of_32_equally_likely()
    {
        var codes = new PairingCodes(_clock);
        const int Codes = 4000;
        string all = string.Concat(Enumerable.Range(0, Codes).Select(_ => codes.Make("ada").Text));
        var counts = all.GroupBy(c => c).ToDictionary(g => g.Key, g => g.Count());
        Assert.Equal(Codes * 8, all.Length);
        Assert.Equal(32, counts.Count);
        double expected = Codes * 8 / 32.0;
        // A look at chance itself, so the bound is set where a sound generator fails once in some hundred thousand runs.
        Assert.True(counts.Values.Sum(n => (n - expected) * (n - expected) / expected) < 80);
        Assert.DoesNotContain(counts.Keys, c => c is 'I' or 'L' or 'O' or 'U');
    }

    [Theory]
    [InlineData("480271", true)]
    [InlineData("horse staple", true)]
    [InlineData("48027", false)]
    [InlineData("111111", false)]
    [InlineData("123456", false)]
    [InlineData("876543", false)]
    [InlineData("", false)]
    public void A_pin_is_long_enough_and_no_run(string pin, bool fit) => Assert.Equal(fit, Pins.Fit(pin));

    [Fact]
    public void A_pin_is_hashed_with_a_salt_and_slowly()
    {
        string one = Pins.Hash("eve", "480271"), two = Pins.Hash("eve", "480271");
        Assert.NotEqual(one, two);
        Assert.True(Pins.Right("eve", one, "480271"));
        Assert.False(Pins.Right("eve", one, "480272"));
        Assert.False(Pins.Right("eve", "", ""));
        // The framework's format 3: a byte 1, then the function (2 is HMAC-SHA512) and the rounds, big-endian (its source; from memory).
        byte[] bytes = Convert.FromBase64String(one);
        Assert.Equal(1, bytes[0]);
        Assert.Equal(2u, System.Buffers.Binary.BinaryPrimitives.ReadUInt32BigEndian(bytes.AsSpan(1)));
        Assert.True(System.Buffers.Binary.BinaryPrimitives.ReadUInt32BigEndian(bytes.AsSpan(5)) >= 210_000);
    }

    [Fact]
    public void Secrets_are_long_random_and_compared_whole()
    {
        string key = Secrets.Key();
        Assert.Equal(64, key.Length);
        Assert.NotEqual(key, Secrets.Key());
        Assert.True(Secrets.Same(key, string.Concat(key)));
        Assert.False(Secrets.Same(key, key[..63]));
        Assert.False(Secrets.Same(key, key[..63] + "x"));
        // FIPS 180-4 example: SHA-256 of "abc".
        Assert.Equal("ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad", Secrets.Hash("abc"));
    }
}
