using System.Text.RegularExpressions;
using Xunit;

namespace Trivet.Design.Tests;

/// <summary>Every source that the code names stands in docs/sources.md, and every page it names is there.</summary>
public sealed partial class SourceKeyTests
{
    [Fact]
    public void Every_key_used_stands_in_the_bibliography()
    {
        string bibliography = File.ReadAllText(Repository.File("docs/sources.md"));
        var used = from file in Repository.Files()
                   where file.StartsWith("src", StringComparison.Ordinal) && file.EndsWith(".cs", StringComparison.Ordinal)
                   let text = File.ReadAllText(Repository.File(file))
                   from Match match in Bracketed().Matches(text).Concat(Named().Matches(text))
                   select (match.Groups["key"].Value, file);
        var missing = used.Where(u => !bibliography.Contains($"| [{u.Value}] |", StringComparison.Ordinal)).Select(u => $"{u.file}: [{u.Value}]");
        Assert.NotEmpty(used);
        Assert.Empty(missing);
    }

    [Fact]
    public void Every_page_a_rule_is_derived_on_is_there()
    {
        var pages = from file in Repository.Files()
                    where file.StartsWith("src", StringComparison.Ordinal) && file.EndsWith(".cs", StringComparison.Ordinal)
                    from Match match in Page().Matches(File.ReadAllText(Repository.File(file)))
                    select match.Value;
        Assert.NotEmpty(pages);
        Assert.DoesNotContain(pages.Distinct(), page => !File.Exists(Repository.File(page)));
    }

    /// <summary>An author-year key in a comment.</summary>
    [GeneratedRegex(@"\[(?<key>[A-Z][A-Za-z]+[12][0-9]{3})\]")]
    private static partial Regex Bracketed();

    /// <summary>The key of a rule's or limit's source.</summary>
    [GeneratedRegex(@"SourceKind\.(Standard|Literature|FromMemory), ""(?<key>[^""]+)""")]
    private static partial Regex Named();

    [GeneratedRegex(@"docs/[a-z0-9./-]+\.md")]
    private static partial Regex Page();
}
