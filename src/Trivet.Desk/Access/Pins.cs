using Microsoft.AspNetCore.Identity;
using Microsoft.Extensions.Options;

namespace Trivet.Desk.Access;

/// <summary>
/// PINs, hashed by the framework's own hasher (PBKDF2, HMAC-SHA512, a random salt for each). A PIN of six digits has at most 20 bits: it is the count of
/// attempts in the store that protects it, on devices that were paired before. Whoever has the database can find a PIN by trying.
/// </summary>
internal static class Pins
{
    public const int Shortest = 6, Longest = 64;

    /// <summary>Rounds for HMAC-SHA512 as the OWASP cheat sheet on password storage advises (from memory); some 0.1 s.</summary>
    private const int Rounds = 210_000;

    private static readonly PasswordHasher<string> Hasher = new(Options.Create(new PasswordHasherOptions { IterationCount = Rounds }));

    /// <summary>True for a PIN that may be set: long enough, not one character again and again, not a run such as 123456.</summary>
    public static bool Fit(string pin) => pin.Length is >= Shortest and <= Longest && !pin.Any(char.IsControl)
        && Enumerable.Range(-1, 3).All(step => pin.Zip(pin.Skip(1)).Any(pair => pair.Second - pair.First != step));

    public static string Hash(string person, string pin) => Hasher.HashPassword(person, pin);

    public static bool Right(string person, string hash, string pin) => pin.Length <= Longest && hash.Length > 0
        && Hasher.VerifyHashedPassword(person, hash, pin) != PasswordVerificationResult.Failed;
}
