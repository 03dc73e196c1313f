using System.Reflection;
using Trivet.Findings;
using Trivet.Views.Rules;
using Trivet.Views.Words;

namespace Trivet.Views.Tests.Rules;

/// <summary>
/// Holds docs/rules to the rules. To write the pages anew: set TRIVET_WRITE_DOCS=1 and run these tests.
/// </summary>
public sealed class RulePageTests
{
    /// <summary>Every rule that Trivet.Core states: all public static properties of type Rule, wherever they stand.</summary>
    private static IReadOnlyList<Rule> All { get; } =
    [
        .. typeof(Rule).Assembly.GetExportedTypes().SelectMany(t => t.GetProperties(BindingFlags.Public | BindingFlags.Static))
            .Where(p => p.PropertyType == typeof(Rule)).Select(p => (Rule)p.GetValue(null)!).OrderBy(r => r.Id, StringComparer.Ordinal),
    ];

    public static TheoryData<string> Ids => [.. All.Select(r => r.Id)];

    private static bool Write => Environment.GetEnvironmentVariable("TRIVET_WRITE_DOCS") == "1";

    [Theory, MemberData(nameof(Ids))]
    public void Every_rule_has_a_page_that_says_what_the_rule_says(string id)
    {
        var rule = All.Single(r => r.Id == id);
        Same(RulePage.PathOf(rule), RulePage.Markdown(rule));
    }

    [Fact]
    public void The_list_of_rules_names_them_all() => Same("docs/rules/README.md", RulePage.Index(All));

    [Fact]
    public void No_page_is_left_of_a_rule_that_is_gone() => Assert.Empty(
        Directory.GetFiles(Repository.PathOf("docs/rules"), "*.md").Select(Path.GetFileNameWithoutExtension).Except(All.Select(r => r.Id).Append("README")));

    [Fact]
    public void Rules_have_ids_of_their_own() => Assert.Equal(All.Count, All.Select(r => r.Id).Distinct().Count());

    [Fact]
    public void No_text_is_left_of_a_rule_that_is_gone() => Assert.Empty(English.Language.Rules.Keys.Except(All.Select(r => r.Id)));

    private static void Same(string path, string text)
    {
        string file = Repository.PathOf(path);
        if (Write)
        {
            Directory.CreateDirectory(Path.GetDirectoryName(file)!);
            File.WriteAllText(file, text);
        }

        Assert.Equal(text, File.ReadAllText(file));
    }
}
