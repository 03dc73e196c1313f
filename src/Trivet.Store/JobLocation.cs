using Npgsql;

namespace Trivet.Store;

/// <summary>Where a job lives: a folder on this machine, or a PostgreSQL database. Closed: these two are all there are.</summary>
public abstract record JobLocation
{
    private JobLocation() { }

    /// <summary>A job folder. The store is the file <see cref="FileName"/> in it, with its write-ahead log beside it.</summary>
    /// <remarks>The folder must lie on a disk of this machine: a write-ahead log needs memory shared between processes, which a
    /// network drive does not give (SQLite, "Write-Ahead Logging", section 1).</remarks>
    public sealed record Folder(string Path) : JobLocation
    {
        public const string FileName = "job.sqlite";

        public override string Shown => Path;
    }

    /// <summary>A PostgreSQL database by its connection string. The database must exist; its tables are made on opening.</summary>
    public sealed record Postgres(string ConnectionString) : JobLocation
    {
        /// <summary>Host and database only: user and password never reach a page or a log.</summary>
        public override string Shown
        {
            get
            {
                try
                {
                    var parts = new NpgsqlConnectionStringBuilder(ConnectionString);
                    return $"{parts.Database} on {parts.Host}";
                }
                catch (ArgumentException)
                {
                    return "a PostgreSQL database";
                }
            }
        }
    }

    /// <summary>The location in words that may be shown to anyone.</summary>
    public abstract string Shown { get; }

    /// <summary>Reads what a person typed: text with <c>Host=</c> in it is a connection string, anything else a folder.</summary>
    public static JobLocation Parse(string text) =>
        text.Contains("Host=", StringComparison.OrdinalIgnoreCase) ? new Postgres(text) : new Folder(System.IO.Path.GetFullPath(text));

    public sealed override string ToString() => Shown;
}
