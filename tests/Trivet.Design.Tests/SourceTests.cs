using Xunit;

namespace Trivet.Design.Tests;

/// <summary>House numbers and words that the source text keeps to.</summary>
public sealed class SourceTests
{
    private static IEnumerable<string> Code =>
        Repository.Files().Where(f => f.EndsWith(".cs", StringComparison.Ordinal) && !f.Contains("Migrations", StringComparison.Ordinal));

    [Fact]
    public void A_file_over_400_lines_gives_its_reason_at_its_head()
    {
        var wrong = from file in Code
                    let lines = File.ReadAllLines(Repository.File(file))
                    where lines.Length > 400 && !lines.Take(5).Any(l => l.StartsWith("// Long because", StringComparison.Ordinal))
                    select $"{file}: {lines.Length} lines. Split it, or begin with \"// Long because ...\".";
        Assert.Empty(wrong);
    }

    [Fact]
    public void No_stub_is_left_behind()
    {
        string stub = "NotImplemented" + "Exception";
        Assert.DoesNotContain(Code, f => File.ReadAllText(Repository.File(f)).Contains(stub, StringComparison.Ordinal));
    }

    [Fact]
    public void No_type_is_named_for_an_empty_role()
    {
        string[] roles = ["Manager", "Helper", "Helpers", "Util", "Utils", "Utilities", "Base"];
        var wrong = from project in Compiled.Projects.Values
                    from type in Compiled.Types(project)
                    where type.FullName.StartsWith("Trivet", StringComparison.Ordinal)
                    let name = type.Name.Split('`')[0]
                    where roles.Any(r => name.EndsWith(r, StringComparison.Ordinal))
                    select type.FullName;
        Assert.Empty(wrong);
    }

    [Fact]
    public void The_text_names_no_machine_and_no_registry()
    {
        // Put together here, so that this file itself stays clean.
        string[] banned = ["/" + "work/", "/" + "tmp/", "/ro" + "ot/", "/home/" + "user", "api.nuget" + ".org", "registry.npmjs" + ".org"];
        string[] texts = [".cs", ".csproj", ".props", ".md", ".json", ".js", ".mjs", ".css", ".razor", ".html", ".txt", ".csv", ".xml", ".slnx", ""];
        var wrong = from file in Repository.Files()
                    where texts.Contains(Path.GetExtension(file))
                    from line in File.ReadLines(Repository.File(file)).Select((text, i) => (text, number: i + 1))
                    from word in banned
                    where line.text.Contains(word, StringComparison.Ordinal)
                    select $"{file}:{line.number}: {word}";
        Assert.Empty(wrong);
    }
}
