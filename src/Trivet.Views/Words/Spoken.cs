namespace Trivet.Views.Words;

/// <summary>Which of the languages there are answers what a person reads.</summary>
internal static class Spoken
{
    /// <param name="all">Words in each language, those first that answer where none is spoken.</param>
    /// <param name="tagOf">BCP 47 tag of a language's words.</param>
    /// <param name="wanted">BCP 47 tags, the best first, as a browser tells them (RFC 9110, 12.5.4): <c>de-AT</c> is answered in German.</param>
    public static T Of<T>(IReadOnlyList<T> all, Func<T, string> tagOf, IEnumerable<string> wanted)
        where T : class =>
        wanted.Select(tag => all.FirstOrDefault(w => tagOf(w).Equals(tag.Split('-')[0], StringComparison.OrdinalIgnoreCase))).FirstOrDefault(w => w is not null) ?? all[0];
}
