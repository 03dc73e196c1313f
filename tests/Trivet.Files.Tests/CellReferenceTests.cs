using Xunit;

namespace Trivet.Files.Tests;

public class CellReferenceTests
{
    /// <summary>Set to anything to write the page anew instead of comparing it.</summary>
    private const string WriteVariable = "TRIVET_WRITE_DOCS";

    [Fact]
    public void The_page_of_all_fields_is_up_to_date()
    {
        string page = Path.Combine(Root(), "docs", "cell-fields.md");
        if (Environment.GetEnvironmentVariable(WriteVariable) is { Length: > 0 }) File.WriteAllText(page, CellReference.Markdown());
        Assert.True(File.ReadAllText(page).ReplaceLineEndings("\n") == CellReference.Markdown(), $"docs/cell-fields.md differs from the field table: run these tests with {WriteVariable}=1");
    }

    /// <summary>The examples in the page that explains the document, read by the reader they explain.</summary>
    [Fact]
    public void The_examples_of_the_page_about_cell_files_are_read_without_error()
    {
        string page = File.ReadAllText(Path.Combine(Root(), "docs", "cell-file.md")).ReplaceLineEndings("\n");
        var examples = System.Text.RegularExpressions.Regex.Matches(page, "```json\n(.*?)```", System.Text.RegularExpressions.RegexOptions.Singleline);
        Assert.True(examples.Count >= 3);
        foreach (System.Text.RegularExpressions.Match example in examples)
            Assert.Empty(CellFile.Read(System.Text.Encoding.UTF8.GetBytes(example.Groups[1].Value), "cell-file.md").Errors);
    }

    [Fact]
    public void The_errors_that_the_page_shows_are_those_of_the_broken_sample()
    {
        string page = File.ReadAllText(Path.Combine(Root(), "docs", "cell-file.md"));
        string[] shown = [.. page.Split('\n').Where(l => l.StartsWith("broken.json:", StringComparison.Ordinal))];
        var told = CellFile.Read(System.Text.Encoding.UTF8.GetBytes(Samples.Find("broken")!.Text), "broken.json").Errors.Select(e => e.ToString());
        Assert.NotEmpty(shown);
        Assert.Empty(shown.Except(told));
    }

    private static string Root()
    {
        for (var folder = new DirectoryInfo(AppContext.BaseDirectory); folder is not null; folder = folder.Parent)
            if (File.Exists(Path.Combine(folder.FullName, "Trivet.slnx"))) return folder.FullName;
        throw new DirectoryNotFoundException("The tests run outside the repository: no folder above holds Trivet.slnx.");
    }
}
