namespace Trivet.Files;

/// <summary>The word someone probably meant.</summary>
public static class Nearest
{
    private const int LongestWord = 64;

    /// <summary>The nearest of some words by edit distance, case and separators apart; null where none is near.</summary>
    public static string? To(string written, IEnumerable<string> words)
    {
        if (written.Length > LongestWord) return null;
        string plain = Plain(written);
        string? best = null;
        int least = int.MaxValue;
        foreach (string word in words)
        {
            int distance = Distance(plain, Plain(word));
            if (distance < least) (best, least) = (word, distance);
        }

        return best is not null && least <= Math.Max(1, Math.Min(3, Plain(best).Length / 3)) ? best : null;
    }

    private static string Plain(string word) =>
        string.Concat(word.Where(char.IsLetterOrDigit)).ToLowerInvariant();

    /// <summary>Fewest insertions, deletions, exchanges of a letter and swaps of neighbours (optimal string alignment).</summary>
    private static int Distance(string a, string b)
    {
        var d = new int[a.Length + 1, b.Length + 1];
        for (int i = 0; i <= a.Length; i++) d[i, 0] = i;
        for (int j = 0; j <= b.Length; j++) d[0, j] = j;
        for (int i = 1; i <= a.Length; i++)
        {
            for (int j = 1; j <= b.Length; j++)
            {
                int change = d[i - 1, j - 1] + (a[i - 1] == b[j - 1] ? 0 : 1);
                d[i, j] = Math.Min(change, 1 + Math.Min(d[i - 1, j], d[i, j - 1]));
                if (i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1]) d[i, j] = Math.Min(d[i, j], 1 + d[i - 2, j - 2]);
            }
        }

        return d[a.Length, b.Length];
    }
}
