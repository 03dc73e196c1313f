using System.Diagnostics;

namespace Trivet.Design.Tests;

/// <summary>The source tree that the tests were built from.</summary>
internal static class Repository
{
    public static string Root { get; } = Find();

    public static string File(string path) => Path.Combine(Root, path);

    /// <summary>Every text file that belongs to the repository, as a path from its root.</summary>
    public static IEnumerable<string> Files()
    {
        string[] notOurs = ["bin", "obj", "node_modules", "artifacts", "TestResults", "BenchmarkDotNet.Artifacts", ".git", "demo-job"];
        var folders = new Stack<string>([Root]);
        while (folders.TryPop(out string? folder))
        {
            foreach (string sub in Directory.EnumerateDirectories(folder))
                if (!notOurs.Contains(Path.GetFileName(sub))) folders.Push(sub);
            foreach (string file in Directory.EnumerateFiles(folder)) yield return Path.GetRelativePath(Root, file);
        }
    }

    private static string Find()
    {
        for (var at = new DirectoryInfo(AppContext.BaseDirectory); at is not null; at = at.Parent)
            if (at.EnumerateFiles("Trivet.slnx").Any()) return at.FullName;
        throw new UnreachableException("The tests run inside the source tree.");
    }
}
