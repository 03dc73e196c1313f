using System.Security.Cryptography;

namespace Trivet.Desk.Access;

/// <summary>A code that lets one device in, once.</summary>
/// <param name="Text">8 characters.</param>
/// <param name="By">Id of the person who asked for it.</param>
public sealed record PairingCode(string Text, string By, DateTimeOffset Ends)
{
    /// <summary>As it is shown, in two groups.</summary>
    public string Shown => $"{Text[..4]}-{Text[4..]}";
}

/// <summary>
/// The one pairing code that may be open at a time. It has 8 characters of 32, so 40 bits; after <see cref="MostWrong"/> wrong ones,
/// from wherever they came, it is withdrawn. Whoever guesses therefore succeeds with at most 100 / 2^40, less than 1 in 10 000 million.
/// Safe for concurrent use.
/// </summary>
public sealed class PairingCodes(TimeProvider clock)
{
    public static readonly TimeSpan Life = TimeSpan.FromMinutes(5);

    public const int MostWrong = 100;

    // Digits and letters that are not mistaken for one another when read aloud or copied by hand: no I, L, O and U (as in Crockford's base 32, from memory).
    private const string Alphabet = "0123456789ABCDEFGHJKMNPQRSTVWXYZ";
    private const int Length = 8;

    private readonly Lock _gate = new();
    private PairingCode? _open;

    /// <summary>The code was used, withdrawn or replaced.</summary>
    public event Action? Changed;

    /// <summary>Wrong codes typed while the present code was open.</summary>
    public int Wrong { get; private set; }

    /// <summary>The code that is open now; null where there is none.</summary>
    public PairingCode? Open
    {
        get
        {
            lock (_gate) return _open is { } code && code.Ends > clock.GetUtcNow() ? code : null;
        }
    }

    /// <summary>Makes a new code; one that was still open is withdrawn.</summary>
    public PairingCode Make(string by)
    {
        var code = new PairingCode(RandomNumberGenerator.GetString(Alphabet, Length), by, clock.GetUtcNow() + Life);
        lock (_gate) (_open, Wrong) = (code, 0);
        Changed?.Invoke();
        return code;
    }

    public void Withdraw()
    {
        lock (_gate) _open = null;
        Changed?.Invoke();
    }

    /// <summary>The code if what was typed is it, and it is used up then; else null.</summary>
    public PairingCode? Use(string typed)
    {
        PairingCode? used = null;
        lock (_gate)
        {
            if (_open is not { } code || code.Ends <= clock.GetUtcNow()) return null;
            if (Secrets.Same(Plain(typed), code.Text)) (used, _open) = (code, null);
            else if (++Wrong >= MostWrong) _open = null;
        }
        Changed?.Invoke();
        return used;
    }

    /// <summary>What a person means who reads I, L and O for 1, 1 and 0, and writes groups.</summary>
    private static string Plain(string typed) => typed.Length > 40
        ? ""
        : string.Concat(typed.ToUpperInvariant().Where(c => c is not (' ' or '-')).Select(c => c switch { 'I' or 'L' => '1', 'O' => '0', _ => c }));
}
