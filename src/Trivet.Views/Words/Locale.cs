using System.Globalization;
using System.Text;

namespace Trivet.Views.Words;

/// <summary>For whom a view is made: the language of its words and the culture of its numbers. Nothing is taken from the thread.</summary>
public sealed record Locale(Language Language, CultureInfo Culture)
{
    /// <summary>English words, invariant numbers: what files and pipes get.</summary>
    public static Locale English { get; } = new(Words.English.Language, CultureInfo.InvariantCulture);

    /// <summary>Fills the words in braces. A brace without a value is our own mistake and throws.</summary>
    internal static string Fill(string template, params ReadOnlySpan<(string Name, string Value)> values)
    {
        var text = new StringBuilder(template.Length + 32);
        int at = 0;
        while (at < template.Length)
        {
            int open = template.IndexOf('{', at);
            if (open < 0) break;
            int close = template.IndexOf('}', open);
            string name = template[(open + 1)..close];
            text.Append(template, at, open - at).Append(Find(values, name, template));
            at = close + 1;
        }

        return text.Append(template, at, template.Length - at).ToString();
    }

    private static string Find(ReadOnlySpan<(string Name, string Value)> values, string name, string template)
    {
        foreach (var (n, v) in values)
            if (n == name) return v;
        throw new ArgumentException($"The text \"{template}\" asks for {{{name}}}, which is not given here.", nameof(values));
    }
}
