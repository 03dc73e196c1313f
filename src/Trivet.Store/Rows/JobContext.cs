using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Design;

namespace Trivet.Store.Rows;

/// <summary>The one model. Each database has a context of its own below, so that each has its own set of migrations.</summary>
internal abstract class JobContext(DbContextOptions options) : DbContext(options)
{
    public DbSet<CellRow> Cells => Set<CellRow>();
    public DbSet<RevisionRow> Revisions => Set<RevisionRow>();
    public DbSet<DraftRow> Drafts => Set<DraftRow>();
    public DbSet<EditRow> Edits => Set<EditRow>();
    public DbSet<ExportRow> Exports => Set<ExportRow>();
    public DbSet<PersonRow> Persons => Set<PersonRow>();
    public DbSet<DeviceRow> Devices => Set<DeviceRow>();
    public DbSet<EntryRow> Entries => Set<EntryRow>();
    public DbSet<ReceiptRow> Receipts => Set<ReceiptRow>();
    public DbSet<PhotographRow> Photographs => Set<PhotographRow>();

    protected override void OnModelCreating(ModelBuilder modelBuilder)
    {
        modelBuilder.Entity<CellRow>(row =>
        {
            row.ToTable("cells");
            row.HasKey(c => c.Id);
        });
        modelBuilder.Entity<RevisionRow>(row =>
        {
            row.ToTable("revisions");
            row.HasKey(r => new { r.CellId, r.Number });
            row.HasIndex(r => r.Hash);
            row.HasOne<CellRow>().WithMany().HasForeignKey(r => r.CellId).OnDelete(DeleteBehavior.Restrict);
        });
        modelBuilder.Entity<DraftRow>(row =>
        {
            row.ToTable("drafts");
            row.HasKey(d => new { d.CellId, d.Person });
            row.HasOne<CellRow>().WithMany().HasForeignKey(d => d.CellId).OnDelete(DeleteBehavior.Restrict);
        });
        modelBuilder.Entity<EditRow>(row =>
        {
            row.ToTable("edits");
            row.HasKey(e => new { e.CellId, e.Person, e.Number });
            row.HasOne<DraftRow>().WithMany().HasForeignKey(e => new { e.CellId, e.Person }).OnDelete(DeleteBehavior.Restrict);
        });
        modelBuilder.Entity<ExportRow>(row =>
        {
            row.ToTable("exports");
            row.HasKey(e => new { e.CellId, e.Path });
            row.HasOne<CellRow>().WithMany().HasForeignKey(e => e.CellId).OnDelete(DeleteBehavior.Restrict);
        });
        modelBuilder.Entity<EntryRow>(row =>
        {
            row.ToTable("entries");
            row.HasKey(e => new { e.Device, e.Sequence, e.Hash });
            row.HasAlternateKey(e => e.Hash);
        });
        modelBuilder.Entity<ReceiptRow>(row =>
        {
            row.ToTable("receipts");
            row.HasKey(r => r.Number);
            row.Property(r => r.Number).ValueGeneratedNever();
            row.HasOne<EntryRow>().WithOne().HasForeignKey<ReceiptRow>(r => r.EntryHash).HasPrincipalKey<EntryRow>(e => e.Hash).OnDelete(DeleteBehavior.Restrict);
        });
        modelBuilder.Entity<PhotographRow>(row =>
        {
            row.ToTable("photographs");
            row.HasKey(p => p.Hash);
        });
        modelBuilder.Entity<PersonRow>(row =>
        {
            row.ToTable("persons");
            row.HasKey(p => p.Id);
        });
        modelBuilder.Entity<DeviceRow>(row =>
        {
            row.ToTable("devices");
            row.HasKey(d => d.Id);
        });
        // Lower-case names with underscores need no quotes when a person looks into either database.
        foreach (var property in modelBuilder.Model.GetEntityTypes().SelectMany(e => e.GetProperties()))
            property.SetColumnName(string.Concat(property.Name.Select((c, i) => char.IsUpper(c) && i > 0 ? "_" + c : c.ToString())).ToLowerInvariant());
    }
}

internal sealed class SqliteJobContext(DbContextOptions<SqliteJobContext> options) : JobContext(options);

internal sealed class PostgresJobContext(DbContextOptions<PostgresJobContext> options) : JobContext(options);

/// <summary>Lets <c>dotnet ef migrations add NAME --context SqliteJobContext --output-dir Migrations/Sqlite</c> build the context.</summary>
internal sealed class SqliteJobContextFactory : IDesignTimeDbContextFactory<SqliteJobContext>
{
    public SqliteJobContext CreateDbContext(string[] args) =>
        new(new DbContextOptionsBuilder<SqliteJobContext>().UseSqlite("Data Source=:memory:").Options);
}

internal sealed class PostgresJobContextFactory : IDesignTimeDbContextFactory<PostgresJobContext>
{
    public PostgresJobContext CreateDbContext(string[] args) =>
        new(new DbContextOptionsBuilder<PostgresJobContext>().UseNpgsql("Host=localhost").Options);
}
