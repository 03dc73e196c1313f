namespace Trivet.EndToEnd;

/// <summary>An empty job folder that goes away with the test.</summary>
internal sealed class JobFolder : IDisposable
{
    public string Path { get; } = Directory.CreateTempSubdirectory("trivet-job-").FullName;

    public void Dispose()
    {
        try
        {
            Directory.Delete(Path, recursive: true);
        }
        catch (IOException)
        {
            // A killed program may still hold its database for a moment; the system clears its own temporary folder.
        }
    }
}
