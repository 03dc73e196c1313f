namespace Trivet.EndToEnd;

/// <summary>Places in the source tree that these tests run from.</summary>
internal static class Repository
{
    public static string Root { get; } = Find();

#if DEBUG
    private const string Configuration = "Debug";
#else
    private const string Configuration = "Release";
#endif

    public static string Program => Path.Combine(Root, "src", "Trivet.Cli", "bin", Configuration, "net10.0", "trivet.dll");
    public static string Axe => Path.Combine(Root, "tests", "Trivet.EndToEnd", "node_modules", "axe-core", "axe.min.js");
    public static string Screens => Directory.CreateDirectory(Path.Combine(Root, "artifacts", "screens")).FullName;

    private static string Find()
    {
        var folder = new DirectoryInfo(AppContext.BaseDirectory);
        while (folder is not null && !File.Exists(Path.Combine(folder.FullName, "Trivet.slnx"))) folder = folder.Parent;
        return folder?.FullName ?? throw new InvalidOperationException("These tests run from a build inside the source tree.");
    }
}
