namespace Trivet.Testing;

/// <summary>Published data in tests/reference, found upward from the test program's own folder.</summary>
public static class ReferenceData
{
    public static string Path(string name) => System.IO.Path.Combine(Folder("reference"), name);

    /// <summary>A folder under tests/ of the source tree.</summary>
    public static string Folder(string name)
    {
        for (var folder = new DirectoryInfo(AppContext.BaseDirectory); folder is not null; folder = folder.Parent)
        {
            string candidate = System.IO.Path.Combine(folder.FullName, "tests", name);
            if (Directory.Exists(candidate)) return candidate;
        }
        throw new DirectoryNotFoundException($"No folder tests/{name} above {AppContext.BaseDirectory}.");
    }
}
