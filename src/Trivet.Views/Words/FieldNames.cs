using System.Collections.Immutable;
using System.Globalization;
using Trivet.Cells;

namespace Trivet.Views.Words;

/// <summary>Fields and their values in the language of the procedure, the journal and the floor page.</summary>
public static class FieldNames
{
    /// <summary>A field in words; its pointer, whole, where the language has no name for it: never half of each.</summary>
    /// <param name="cell">For the names of what it belongs to; the empty cell where only ids are known.</param>
    public static string Of(Cell cell, string pointer, string tag)
    {
        if (FieldWords.In(tag) is not { } words) return Fields.Words(cell, pointer);
        string[] path = Fields.Path(pointer);
        if (path.Length == 0) return pointer;
        if (Named(words.Names, path, path.Length - 1) is not { } field) return pointer;
        // What it belongs to, from the nearest outward; a section of the whole cell is told only where nothing nearer is.
        List<string> owners = [];
        for (int i = path.Length - 2; i >= 0; i--)
        {
            string? owner = IsEntry(path[..(i + 1)]) ? Named(words.Entries, path, i - 1) is { } entry ? Locale.Fill(entry, ("name", Fields.NameOf(cell, path[..(i + 1)]))) : null
                : IsEntry(path[..(i + 2)]) || i == 0 && owners.Count > 0 ? ""
                : Named(words.Sections, path, i);
            if (owner is null) return pointer;
            if (owner.Length > 0) owners.Add(owner);
        }
        return owners.Count == 0 ? field : Locale.Fill(words.FieldOf, ("field", field), ("of", string.Join(", ", owners)));
    }

    /// <summary>A value as the description writes it, in the manner of the language: words to choose from translated, numbers with its decimal sign.</summary>
    public static string Value(string pointer, string text, string tag)
    {
        if (FieldWords.In(tag) is not { } words) return text;
        string field = Fields.Path(pointer) is [.., var last] ? last : "";
        if (FieldWords.Written.Contains(field)) return text;
        if (words.Values.TryGetValue($"{field}={text}", out string? word)) return word;
        if (text is "yes" or "no") return text == "yes" ? words.Yes : words.No;
        string number = text.Split(' ', 2)[0];
        return words.DecimalComma && double.TryParse(number, NumberStyles.Float, CultureInfo.InvariantCulture, out _) ? number.Replace('.', ',') + text[number.Length..] : text;
    }

    /// <summary>Points of a curve or a way count as entries here: they have no names of their own.</summary>
    private static bool IsEntry(string[] path) => Fields.IsEntry(path) || path is [.., "curve" or "waypoints", _];

    private static string? Named(ImmutableDictionary<string, string> words, string[] path, int at) =>
        (at > 0 ? words.GetValueOrDefault($"{path[IsEntry(path[..at]) ? at - 2 : at - 1]}/{path[at]}") : null) ?? words.GetValueOrDefault(path[at]);
}
