namespace Trivet.Views.Tests;

/// <summary>Finds files of the repository from wherever the tests run.</summary>
internal static class Repository
{
    public static string PathOf(string relative)
    {
        for (var folder = new DirectoryInfo(AppContext.BaseDirectory); folder is not null; folder = folder.Parent)
            if (File.Exists(Path.Combine(folder.FullName, "Trivet.slnx"))) return Path.Combine(folder.FullName, relative);
        throw new DirectoryNotFoundException("The tests run outside the repository: no folder above holds Trivet.slnx.");
    }
}
