using System.Collections.Immutable;
using System.Text;
using Microsoft.EntityFrameworkCore;
using Trivet.Cells;
using Trivet.Files;
using Trivet.Files.Meshes;
using Trivet.Store.Rows;

namespace Trivet.Store;

// A cell file is import and export. The store remembers where it wrote which revision; a file that no longer says what a revision
// says was edited outside, and is offered as a draft with its difference.
public sealed partial class JobStore
{
    /// <summary>More files than a person would look through are not listed.</summary>
    private const int MostOtherFiles = 100;

    /// <summary>Reads a file and adds it as a new cell.</summary>
    public async Task<ImportOutcome> ImportAsync(string file, string cellId, Stamp by, CancellationToken stop = default)
    {
        var read = await ReadFileAsync(file, stop);
        if (read.Cell is not { } cell) return new ImportOutcome.Unreadable(read.Errors);
        var outcome = await CreateAsync(cellId, cell, by, $"read from {Path.GetFileName(file)}", stop);
        if (outcome is not SaveOutcome.Saved saved) return new ImportOutcome.NotSaved(outcome);
        await NoteFileAsync(cellId, file, saved.Revision.Number, stop);
        return new ImportOutcome.Imported(saved.Revision);
    }

    /// <summary>Writes a revision to a file, whole or not at all: a reader never sees half of it.</summary>
    /// <returns>The revision written; null where it is not there, or was written by a later program.</returns>
    /// <exception cref="IOException">The file cannot be written.</exception>
    public async Task<Revision?> ExportAsync(string cellId, int number, string file, CancellationToken stop = default)
    {
        if (await RevisionAsync(cellId, number, stop) is not { } stored || stored.Read().Cell is not { } cell) return null;
        string beside = file + ".part";
        await using (var stream = new FileStream(beside, FileMode.Create, FileAccess.Write, FileShare.None))
        {
            await stream.WriteAsync(Encoding.UTF8.GetBytes(CellFile.Write(cell)), stop);
            stream.Flush(flushToDisk: true);
        }
        File.Move(beside, file, overwrite: true);
        await NoteFileAsync(cellId, file, number, stop);
        return stored.Revision;
    }

    /// <summary>Writes the head into the job folder, as the cell's id with <c>.json</c>. A file that says what no revision says is left alone.</summary>
    public async Task<ExportOutcome> ExportHeadAsync(string cellId, CancellationToken stop = default)
    {
        if (Location is not JobLocation.Folder folder)
            return new ExportOutcome.Refused("This job lies in a database and has no folder for files.", "Read the cell with \"trivet check\" and the connection string.");
        string file = Path.Combine(Path.GetFullPath(folder.Path), $"{cellId}.json"), name = Path.GetFileName(file);
        if (File.Exists(file))
        {
            switch ((await FilesAsync(cellId, stop)).FirstOrDefault(f => f.File == file))
            {
                case CellFileState.InStep or CellFileState.Older:
                    break;
                case CellFileState.Edited:
                    return new ExportOutcome.Refused($"{name} was edited outside.", "Take it as a draft first, or move it away.");
                case null:
                    return new ExportOutcome.Refused($"There is a file {name} that this cell was not written to.", "Move it away, or add it as a cell of its own.");
                default:
                    return new ExportOutcome.Refused($"{name} is there and can not be read as a cell.", "Mend it, or move it away.");
            }
        }

        try
        {
            if (await HeadAsync(cellId, stop) is { } head && await ExportAsync(cellId, head.Revision.Number, file, stop) is { } written)
                return new ExportOutcome.Written(file, written);
            return new ExportOutcome.Refused($"The newest revision of {cellId} can not be read by this program.", "Use the program that wrote it.");
        }
        catch (Exception e) when (e is (IOException and not StoreFailedException) or UnauthorizedAccessException)
        {
            return new ExportOutcome.Refused($"{file} could not be written: {e.Message}", "See that the folder may be written and the disk has room.");
        }
    }

    /// <summary>Names of the files of the job folder that may be cells (<c>*.json</c>) and belong to none yet, sorted; empty for a database.</summary>
    public async Task<ImmutableArray<string>> OtherFilesAsync(CancellationToken stop = default)
    {
        if (Location is not JobLocation.Folder { Path: var folder }) return [];
        var known = await RunAsync((context, stop) => context.Exports.AsNoTracking().Select(e => e.Path).ToListAsync(stop), stop);
        try
        {
            return [.. Directory.EnumerateFiles(folder, "*.json").Select(f => Path.GetFileName(f)).Except(known, StringComparer.Ordinal).Order(StringComparer.Ordinal).Take(MostOtherFiles)];
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            // The folder can not be listed; what is in the store is none the worse for it.
            return [];
        }
    }

    /// <summary>The files a cell was read from or written to, each held against the store.</summary>
    public async Task<ImmutableArray<CellFileState>> FilesAsync(string cellId, CancellationToken stop = default)
    {
        var exports = await RunAsync((context, stop) => context.Exports.AsNoTracking().Where(e => e.CellId == cellId).ToListAsync(stop), stop);
        if (exports.Count == 0) return [];
        var revisions = await RevisionsAsync(cellId, stop);
        var states = ImmutableArray.CreateBuilder<CellFileState>();
        foreach (var export in exports.OrderBy(e => e.Path, StringComparer.Ordinal))
            states.Add(await StateAsync(export, revisions, stop));
        return states.ToImmutable();
    }

    /// <summary>Takes an outside edit into a person's draft as one edit, which can be undone like any other.</summary>
    public Task<DraftOutcome> TakeFileAsync(Draft basis, CellFileState.Edited file, DateTimeOffset when, CancellationToken stop = default) =>
        // The file was edited from the revision it held: a draft begun with it must not hide what was saved since.
        EditAsync(basis.Cursor == 0 ? basis with { Base = file.Base } : basis, file.Cell, when, $"taken from {Path.GetFileName(file.File)}", stop);

    private async Task<CellFileState> StateAsync(ExportRow export, ImmutableArray<Revision> revisions, CancellationToken stop)
    {
        string file = FullPath(export.Path);
        if (!File.Exists(file)) return new CellFileState.Gone(file);
        var read = await ReadFileAsync(file, stop);
        if (read.Cell is not { } cell) return new CellFileState.Unreadable(file, read.Errors);
        string hash = CellFile.Hash(cell);
        if (revisions.FirstOrDefault(r => r.Hash == hash) is { } same)
            return same.Number == revisions[0].Number ? new CellFileState.InStep(file) : new CellFileState.Older(file, same);
        var written = await RevisionAsync(export.CellId, export.Number, stop);
        var changes = written?.Read().Cell is { } before ? CellFields.Changes(before, cell) : [];
        return new CellFileState.Edited(file, cell, hash, export.Number, changes);
    }

    private static async Task<CellRead> ReadFileAsync(string file, CancellationToken stop)
    {
        string name = Path.GetFileName(file);
        try
        {
            await using var stream = new FileStream(file, FileMode.Open, FileAccess.Read, FileShare.ReadWrite | FileShare.Delete);
            if (stream.Length > Inputs.LargestText)
                return Unread($"The file is {stream.Length / 1048576.0:0.0} MB long; at most {Inputs.LargestText / 1048576} MB are read.", "See that it is the file you mean.");
            var bytes = new byte[stream.Length];
            int length = await stream.ReadAtLeastAsync(bytes, bytes.Length, throwOnEndOfStream: false, stop);
            var read = CellFile.Read(bytes.AsSpan(0, length), name);
            return read.Cell is { } cell ? MeshFiles.Fill(cell, Path.GetDirectoryName(file) ?? "", name, bytes.AsSpan(0, length)) : read;
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return Unread($"The file cannot be read: {e.Message}", "See that it is there and that you may read it.");
        }

        CellRead Unread(string problem, string remedy) => new(null, [new FileError(name, 1, 1, "", problem, remedy)]);
    }

    private Task<bool> NoteFileAsync(string cellId, string file, int number, CancellationToken stop) => WriteAsync(cellId, false, async (context, _, stop) =>
    {
        string path = KeptPath(file);
        if (await context.Exports.SingleOrDefaultAsync(e => e.CellId == cellId && e.Path == path, stop) is { } known) known.Number = number;
        else context.Exports.Add(new ExportRow { CellId = cellId, Path = path, Number = number });
        return true;
    }, stop);

    /// <summary>A file inside the job folder is kept by its path there, so that the folder can be moved.</summary>
    private string KeptPath(string file)
    {
        string full = Path.GetFullPath(file);
        if (Location is not JobLocation.Folder folder) return full;
        string relative = Path.GetRelativePath(folder.Path, full);
        return relative.StartsWith("..", StringComparison.Ordinal) || Path.IsPathRooted(relative) ? full : relative.Replace('\\', '/');
    }

    private string FullPath(string kept) => Location is JobLocation.Folder folder ? Path.GetFullPath(kept, Path.GetFullPath(folder.Path)) : kept;
}

/// <summary>How an export into the job folder ended. Closed.</summary>
public abstract record ExportOutcome
{
    private ExportOutcome() { }

    public sealed record Written(string File, Revision Revision) : ExportOutcome;

    /// <summary>Nothing was written.</summary>
    public sealed record Refused(string Problem, string Remedy) : ExportOutcome;
}

/// <summary>How an import ended. Closed.</summary>
public abstract record ImportOutcome
{
    private ImportOutcome() { }

    public sealed record Imported(Revision Revision) : ImportOutcome;

    /// <summary>The file is not a cell description; all that is wrong with it.</summary>
    public sealed record Unreadable(ImmutableArray<FileError> Errors) : ImportOutcome;

    /// <summary>The file is in order, but the store did not take it (the id is taken).</summary>
    public sealed record NotSaved(SaveOutcome Outcome) : ImportOutcome;
}

/// <summary>A file that a cell was read from or written to, held against the store. Closed.</summary>
/// <param name="File">Full path.</param>
public abstract record CellFileState(string File)
{
    /// <summary>The file says what the head says.</summary>
    public sealed record InStep(string File) : CellFileState(File);

    /// <summary>The file says what an older revision says: export again to bring it up to date.</summary>
    public sealed record Older(string File, Revision Holds) : CellFileState(File);

    /// <summary>The file was edited outside. <see cref="JobStore.TakeFileAsync"/> makes it a draft.</summary>
    /// <param name="Cell">What the file says now.</param>
    /// <param name="Hash">Hash of that.</param>
    /// <param name="Base">Number of the revision it last held.</param>
    /// <param name="Changes">What was edited since.</param>
    public sealed record Edited(string File, Cell Cell, string Hash, int Base, ImmutableArray<FieldChange> Changes) : CellFileState(File);

    /// <summary>The file cannot be read as a cell; all that is wrong with it.</summary>
    public sealed record Unreadable(string File, ImmutableArray<FileError> Errors) : CellFileState(File);

    /// <summary>The file is no longer there.</summary>
    public sealed record Gone(string File) : CellFileState(File);
}
