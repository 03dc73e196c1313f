[assembly: AssemblyFixture(typeof(Trivet.EndToEnd.SharedDesk))]

namespace Trivet.EndToEnd;

/// <summary>
/// One desk for all tests that neither end it nor need an empty job folder: each adds a cell of its own. A program that has run a while is also what
/// a person mostly works with, and starting one for every test took longer than the tests.
/// </summary>
public sealed class SharedDesk : IAsyncLifetime
{
    private readonly JobFolder _job = new();
    private RunningDesk? _desk;

    public async ValueTask InitializeAsync()
    {
        if (Chromium.Path is not null) _desk = await RunningDesk.StartAsync(_job.Path);
    }

    /// <summary>Skips the test where there is no browser.</summary>
    public Uri Address
    {
        get
        {
            Assert.SkipWhen(_desk is null, "Chromium is not installed (Debian: chromium).");
            return _desk.Address;
        }
    }

    /// <summary>The job folder it serves.</summary>
    public string Job => _job.Path;

    public async ValueTask DisposeAsync()
    {
        if (_desk is not null) await _desk.DisposeAsync();
        _job.Dispose();
    }
}
