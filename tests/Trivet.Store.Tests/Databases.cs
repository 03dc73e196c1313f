using Npgsql;
using Trivet.Cells;
using Trivet.Testing;

[assembly: AssemblyFixture(typeof(Trivet.Store.Tests.Databases))]

namespace Trivet.Store.Tests;

/// <summary>The two databases every test of the suite runs on.</summary>
public enum Database
{
    Sqlite,
    Postgres,
}

/// <summary>Runs a test once on each database.</summary>
[AttributeUsage(AttributeTargets.Method)]
public sealed class OnBothAttribute() : Xunit.v3.DataAttribute
{
    public override ValueTask<IReadOnlyCollection<ITheoryDataRow>> GetData(System.Reflection.MethodInfo testMethod, Xunit.Sdk.DisposalTracker disposalTracker) =>
        ValueTask.FromResult<IReadOnlyCollection<ITheoryDataRow>>([new TheoryDataRow(Database.Sqlite), new TheoryDataRow(Database.Postgres)]);

    public override bool SupportsDiscoveryEnumeration() => true;
}

/// <summary>Holds the one PostgreSQL server of a test run, started when the first test asks.</summary>
public sealed class Databases : IAsyncDisposable
{
    private readonly Lazy<Task<(PostgresServer? Server, string Reason)>> _server = new(PostgresServer.StartAsync);

    /// <summary>A job in a place of its own. Skips the test, with the reason, where there is no PostgreSQL.</summary>
    public async Task<TestJob> NewJobAsync(Database database)
    {
        if (database == Database.Sqlite)
            return new TestJob(new JobLocation.Folder(Directory.CreateTempSubdirectory("trivet-store-").FullName), "");
        string server = await ServerAsync();
        string name = $"job_{Guid.NewGuid():n}";
        await ExecuteAsync(server, $"CREATE DATABASE {name}");
        return new TestJob(new JobLocation.Postgres(new NpgsqlConnectionStringBuilder(server) { Database = name }.ConnectionString), server);
    }

    /// <summary>Connection string of a role that may create databases and roles.</summary>
    public async Task<string> ServerAsync()
    {
        if (Environment.GetEnvironmentVariable(PostgresServer.Variable) is { Length: > 0 } given) return given;
        var (server, reason) = await _server.Value;
        if (server is null) Assert.Skip(reason);
        return server.ConnectionString;
    }

    public static async Task ExecuteAsync(string connectionString, string sql)
    {
        await using var source = NpgsqlDataSource.Create(connectionString);
        await using var command = source.CreateCommand(sql);
        await command.ExecuteNonQueryAsync();
    }

    public async ValueTask DisposeAsync()
    {
        if (_server.IsValueCreated && (await _server.Value).Server is { } server) await server.DisposeAsync();
    }
}

/// <summary>One job of a test, gone when the test is done.</summary>
public sealed class TestJob(JobLocation location, string server) : IAsyncDisposable
{
    private readonly List<JobStore> _opened = [];

    public JobLocation Location => location;

    /// <summary>A folder for files: the job folder, or one beside the database.</summary>
    public string Folder { get; } = location is JobLocation.Folder f ? f.Path : Directory.CreateTempSubdirectory("trivet-store-").FullName;

    public async Task<JobStore> OpenAsync()
    {
        var outcome = await JobStore.OpenAsync(location, TestContext.Current.CancellationToken);
        if (outcome is not OpenOutcome.Opened { Store: var store })
        {
            Assert.Fail(outcome.ToString());
            return null;
        }
        _opened.Add(store);
        return store;
    }

    public async ValueTask DisposeAsync()
    {
        foreach (var store in _opened) await store.DisposeAsync();
        if (location is JobLocation.Postgres postgres)
            await Databases.ExecuteAsync(server, $"DROP DATABASE {new NpgsqlConnectionStringBuilder(postgres.ConnectionString).Database} WITH (FORCE)");
        Directory.Delete(Folder, recursive: true);
    }
}

/// <summary>Invented cells, persons and moments for the tests.</summary>
internal static class Invented
{
    public static readonly DateTimeOffset Noon = new(2030, 5, 6, 12, 0, 0, TimeSpan.Zero);

    public static Cell Named(string name) => Cell.Empty with { Name = name };

    public static Stamp By(string person, int minutes = 0) => new(person, Noon.AddMinutes(minutes));

    public static async Task<Revision> CreateAsync(this JobStore store, string id, string name) =>
        Assert.IsType<SaveOutcome.Saved>(await store.CreateAsync(id, Named(name), By("ada"), "made", TestContext.Current.CancellationToken)).Revision;

    public static async Task<Revision> SaveAsync(this JobStore store, string id, int head, string name) =>
        Assert.IsType<SaveOutcome.Saved>(await store.SaveAsync(id, head, Named(name), By("ada", head), $"named {name}", TestContext.Current.CancellationToken)).Revision;

    public static async Task<Draft> EditAsync(this JobStore store, Draft basis, string name) =>
        Assert.IsType<DraftOutcome.Kept>(await store.EditAsync(basis, Named(name), Noon, $"named {name}", TestContext.Current.CancellationToken)).Draft;

    public static async Task<Draft> KeptAsync(this Task<DraftOutcome> change) => Assert.IsType<DraftOutcome.Kept>(await change).Draft;
}
