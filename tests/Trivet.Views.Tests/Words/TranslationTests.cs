using System.Collections;
using System.Reflection;
using System.Text.RegularExpressions;
using Trivet.Cells;
using Trivet.Files;
using Trivet.Views.Words;
using Xunit;

namespace Trivet.Views.Tests.Words;

/// <summary>Finds untranslated text: in every pair of records of the procedure, the faults, the journal and the floor page, and in the pages that show them.</summary>
public sealed partial class TranslationTests
{
    /// <summary>What reads the same in both languages: units, abbreviations and what both write alike.</summary>
    private static readonly HashSet<string> Same = ["{hours} h {minutes} min", "{minutes} min", "PIN", "Name", "Person", "Code", "Android", "Windows", "macOS", "Linux", "{part}, {cell}", "{name}: {where}."];

    /// <summary>Records of words and their languages, English first. A language is one file, so a new one is one more here.</summary>
    private static readonly object[][] Pairs =
    [
        [EnglishSteps.Words, GermanSteps.Words], [EnglishFaultCatalogue.Words, GermanFaultCatalogue.Words], [EnglishJournal.Words, GermanJournal.Words], [EnglishFloor.Words, GermanFloor.Words],
        [EnglishAccess.Words, GermanAccess.Words],
    ];

    [Fact]
    public void Each_text_is_translated_and_fills_the_same_places()
    {
        List<string> wrong = [];
        foreach (object[] pair in Pairs)
        {
            var english = Texts(pair[0], pair[0].GetType().Name).ToDictionary(t => t.Path, t => t.Text);
            var german = Texts(pair[1], pair[0].GetType().Name).ToDictionary(t => t.Path, t => t.Text);
            wrong.AddRange(english.Keys.Except(german.Keys).Select(p => $"{p}: not in German"));
            // One language may need an option worded apart that another words with the rest.
            wrong.AddRange(german.Keys.Except(english.Keys).Where(p => !p.Contains("Options[", StringComparison.Ordinal)).Select(p => $"{p}: not in English"));
            foreach (var (path, text) in german)
            {
                if (English().IsMatch(Braces().Replace(text, ""))) wrong.Add($"{path}: English words in \"{text}\"");
                if (!english.TryGetValue(path, out string? other)) continue;
                if (text.Length == 0 != (other.Length == 0)) wrong.Add($"{path}: empty in one language");
                if (text.Length > 0 && text == other && !Same.Contains(text)) wrong.Add($"{path}: the same in both, \"{text}\"");
                if (Places(text) != Places(other)) wrong.Add($"{path}: {Places(other)} in English, {Places(text)} in German");
            }
        }
        Assert.True(wrong.Count == 0, string.Join("\n", wrong));
    }

    /// <summary>Every field that a step rests on, and every collection: its name, what it belongs to, and each word to choose from.</summary>
    [Fact]
    public void Every_field_that_a_step_rests_on_is_named_in_German_with_the_words_to_choose_from()
    {
        List<string> wrong = [];
        foreach (string sample in new[] { "jar-lids", "biscuits", "labels", "tight-corner" })
        {
            var cell = ProcedureWordsTests.Sample(sample);
            var leaves = CellFields.Below(cell, "").ToDictionary(f => f.Pointer);
            foreach (string pointer in Trivet.Assessment.CellProcedure.Of(cell).Inputs)
            {
                string name = FieldNames.Of(cell, pointer, "de");
                if (name == pointer) wrong.Add(pointer);
                if (leaves.TryGetValue(pointer, out var field) && field.Kind == FieldKind.Choice)
                    wrong.AddRange(field.Choices.Where(c => c.Any(char.IsAsciiLetterLower) && FieldNames.Value(pointer, c, "de") == c && !Unchanged.Contains(c)).Select(c => $"{pointer}={c}"));
            }
        }
        Assert.True(wrong.Count == 0, string.Join("\n", wrong.Distinct().Order()));
    }

    /// <summary>Names of standards and levels.</summary>
    private static readonly HashSet<string> Unchanged = ["CANopen", "a", "b", "c", "d", "e"];

    [Theory]
    [InlineData("/robot/chains/a/rod", "Stangenlänge, Kette a")]
    [InlineData("/robot/common/rod", "Stangenlänge, jede Kette")]
    [InlineData("/robot/family", "Bauart")]
    [InlineData("/mount/z", "Höhe z, Aufhängung")]
    [InlineData("/stations/tray-left/columnPitch", "Abstand der Spalten, Station Left tray")]
    [InlineData("/cabinet/addressClasses/rails/switches", "Adressschalter, Adressklasse Rails")]
    [InlineData("/stations", "Stationen")]
    [InlineData("/robot/chains/a/somethingNew", "/robot/chains/a/somethingNew")]
    [InlineData("/somewhereNew/rod", "/somewhereNew/rod")]
    public void A_field_is_told_in_German_or_by_its_pointer_and_never_by_half_of_each(string pointer, string told)
    {
        var cell = Cell.Empty with { Stations = Cell.Empty.Stations.Add("tray-left", new() { Name = "Left tray" }), Cabinet = new() { AddressClasses = new Cabinet().AddressClasses.Add("rails", new() { Name = "Rails" }) } };
        Assert.Equal(told, FieldNames.Of(cell, pointer, "de"));
    }

    [Theory]
    [InlineData("/robot/chains/a/holding", "brake", "Bremse")]
    [InlineData("/robot/chains/a/rod", "560.5 mm", "560,5 mm")]
    [InlineData("/cabinet/modules/m/fan", "yes", "ja")]
    [InlineData("/cabinet/modules/m/name", "2.5 brake", "2.5 brake")]
    [InlineData("/cables/c/from", "supply", "supply")]
    public void A_value_is_told_in_the_manner_of_the_language_and_a_name_as_it_stands(string pointer, string text, string told) =>
        Assert.Equal(told, FieldNames.Value(pointer, text, "de"));

    public static TheoryData<string> Pages
    {
        get
        {
            var pages = new TheoryData<string>();
            string source = Repository.PathOf("src");
            foreach (string folder in new[] { "Trivet.Floor/Pages", "Trivet.Desk/Components/Journals", "Trivet.Desk/Components/Procedures", "Trivet.Desk/Components/Access" })
                foreach (string file in Directory.EnumerateFiles(Path.Combine(source, folder), "*.razor")) pages.Add(Path.GetRelativePath(source, file).Replace('\\', '/'));
            return pages;
        }
    }

    [Theory, MemberData(nameof(Pages))]
    public void A_page_carries_no_text_of_its_own(string page) =>
        Assert.Empty(Literals(File.ReadAllText(Path.Combine(Repository.PathOf("src"), page))).Except(["PDF"]));

    [Fact]
    public void Text_of_a_page_is_found_in_its_markup_in_what_is_read_aloud_and_beside_what_is_filled_in()
    {
        const string page = """
            @using System
            @* a remark *@
            @if (Some.Thing(1).Length > 0)
            {
                <p class="note" title="Tip">@Words.Of("x") and <b>plain</b> @(a ? "b" : "c")</p>
                int at = 1;
            }
            <button aria-label="Shut" @onclick="() => Go(2)">@W.Close</button>
            @code { string hidden = "words"; }
            """;
        Assert.Equal(["Shut", "Tip", "and", "plain"], Literals(page).Order(StringComparer.Ordinal));
    }

    /// <summary>Every text of a record, with where it stands.</summary>
    private static IEnumerable<(string Path, string Text)> Texts(object? of, string path)
    {
        if (of is string text) return [(path, text)];
        if (of is IDictionary map) return map.Keys.Cast<object>().SelectMany(k => Texts(map[k], $"{path}[{k}]"));
        if (of is IEnumerable many) return many.Cast<object>().SelectMany((o, i) => Texts(o, $"{path}[{i}]"));
        // What is computed from other records is compared there; a language's own tag and name differ by what they are.
        return of is null || of.GetType().Namespace != typeof(StepText).Namespace ? []
            : of.GetType().GetProperties(BindingFlags.Public | BindingFlags.Instance).Where(p => p.CanWrite).SelectMany(p => Texts(p.GetValue(of), $"{path}.{p.Name}"));
    }

    /// <summary>Words in a component's markup and in the attributes that are read to people, outside of what it fills in.</summary>
    private static IEnumerable<string> Literals(string page)
    {
        page = Regex.Replace(page, @"@\*.*?\*@", "", RegexOptions.Singleline);
        page = Regex.Replace(page, @"^@code\b.*", "", RegexOptions.Singleline | RegexOptions.Multiline);
        page = Regex.Replace(page, @"^@\{.*?^\}", "", RegexOptions.Singleline | RegexOptions.Multiline);
        var read = Regex.Matches(page, @"(?<=\s)(?:aria-label|alt|title|placeholder)=""([^@""]*)""", RegexOptions.IgnoreCase).Select(m => m.Groups[1].Value).ToArray();
        // An expression in brackets may go over several lines.
        page = Regex.Replace(page, @"@\((?>[^()]+|(?<open>\()|(?<-open>\)))*\)(?(open)(?!))", " ");
        page = Regex.Replace(page, @"</?[a-zA-Z](?:""[^""]*""|[^>""])*>", " ");
        var lines = page.Split('\n').Select(l => l.Trim()).Where(l => !Code().IsMatch(l)).Select(Bare);
        return lines.Concat(read).SelectMany(l => Regex.Matches(Regex.Replace(l, "&#?[a-z0-9]+;", " "), @"\p{L}{2,}").Select(m => m.Value));
    }

    /// <summary>The line without its expressions.</summary>
    private static string Bare(string line)
    {
        var text = new System.Text.StringBuilder();
        for (int i = 0; i < line.Length; i++)
        {
            if (line[i] != '@')
            {
                text.Append(line[i]);
                continue;
            }
            for (i++; i < line.Length; i++)
            {
                if (line[i] is '(' or '[')
                {
                    int depth = 0;
                    do depth += line[i] is '(' or '[' ? 1 : line[i] is ')' or ']' ? -1 : 0;
                    while (depth > 0 && ++i < line.Length);
                }
                else if (!(char.IsLetterOrDigit(line[i]) || line[i] is '_' or '!' or '?' || line[i] == '.' && i + 1 < line.Length && char.IsLetter(line[i + 1]))) break;
            }
            i--;
        }
        return text.ToString();
    }

    private static string Places(string text) => string.Join(' ', Braces().Matches(text).Select(m => m.Value).Where(m => m != "{of}" || !text.Contains("{alike}", StringComparison.Ordinal)).Distinct().Order(StringComparer.Ordinal));

    [GeneratedRegex(@"\{\w+\}")]
    private static partial Regex Braces();

    /// <summary>Small words of English that no German sentence has.</summary>
    [GeneratedRegex(@"\b(the|of|and|with|is|are|which|from|it|this|that)\b")]
    private static partial Regex English();

    /// <summary>A line of code between markup.</summary>
    [GeneratedRegex(@"^(@(using|inject|page|implements|inherits|attribute|namespace|typeparam|if|foreach|for|switch|else)\b.*|(else|case|default|break|switch|foreach|if)\b.*[{});:]?|[{}]|(var|int|bool|string|double)\b.*;)$")]
    private static partial Regex Code();
}
