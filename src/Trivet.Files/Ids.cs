namespace Trivet.Files;

/// <summary>Stable ids: lower-case letters, digits and hyphens, a letter first, at most 64. They need no escape in a pointer.</summary>
internal static class Ids
{
    public const int Longest = 64;
    public const string Pattern = "^[a-z][a-z0-9-]{0,63}$";
    public const string Rule = "an id is made of lower-case letters, digits and hyphens, begins with a letter and has at most 64 characters";

    public static bool IsValid(string id)
    {
        if (id.Length is 0 or > Longest || !char.IsAsciiLetterLower(id[0])) return false;
        foreach (char c in id)
        {
            if (!char.IsAsciiLetterLower(c) && !char.IsAsciiDigit(c) && c != '-') return false;
        }

        return true;
    }

    /// <summary>The rule, with the valid id nearest to what was written where there is one.</summary>
    public static string Remedy(string written)
    {
        string tried = string.Concat(written.Take(Longest + 1).Select(c =>
            char.IsAsciiLetterOrDigit(c) ? char.ToLowerInvariant(c) : '-')).Trim('-');
        if (tried.Length > 0 && !char.IsAsciiLetter(tried[0])) tried = "n" + tried;
        return IsValid(tried) && tried != written ? $"{Rule}, like \"{tried}\"" : Rule;
    }
}
