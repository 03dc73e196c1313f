namespace Trivet.Cli.Tests;

/// <summary>A folder of one test, gone when the test is.</summary>
internal sealed class TemporaryFolder : IDisposable
{
    private readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory("trivet-cli-");

    public string Path => _folder.FullName;

    public string File(string name) => System.IO.Path.Combine(_folder.FullName, name);

    public void Dispose() => _folder.Delete(recursive: true);
}
