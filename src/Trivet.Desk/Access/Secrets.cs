using System.Security.Cryptography;
using System.Text;

namespace Trivet.Desk.Access;

/// <summary>Random secrets, and how they are kept and compared.</summary>
internal static class Secrets
{
    /// <summary>256 random bits as 64 hexadecimal digits.</summary>
    public static string Key() => RandomNumberGenerator.GetHexString(64, lowercase: true);

    /// <summary>What is kept of a key. A key of 256 random bits can not be guessed from its hash, so one round of SHA-256 is enough.</summary>
    public static string Hash(string key) => Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(key)));

    /// <summary>Whether two secrets are the same, in a time that does not tell where they differ. Their length is no secret.</summary>
    public static bool Same(string one, string other) => CryptographicOperations.FixedTimeEquals(Encoding.UTF8.GetBytes(one), Encoding.UTF8.GetBytes(other));
}
