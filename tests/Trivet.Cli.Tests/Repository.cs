namespace Trivet.Cli.Tests;

/// <summary>Files of the source tree that the tests were built from.</summary>
internal static class Repository
{
    private static readonly string Root = Find(new DirectoryInfo(AppContext.BaseDirectory));

    public static string File(string path) => Path.Combine(Root, path);

    public static string Sample(string name) => File($"samples/{name}.json");

    private static string Find(DirectoryInfo at) => at.EnumerateFiles("Trivet.slnx").Any() ? at.FullName : Find(at.Parent!);
}
