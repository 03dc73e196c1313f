using System.Collections.Immutable;
using System.CommandLine;
using System.Runtime.CompilerServices;
using Trivet.Cells;
using Trivet.Files;
using Trivet.Store;

namespace Trivet.Cli;

/// <summary>A cell as a command got it.</summary>
/// <param name="Name">As the user knows it: the path of the file, or the id in the job.</param>
internal sealed record CellInput(string Name, Cell Cell)
{
    /// <summary>
    /// Reads the cell file, or the newest revision of the cells of a job folder. Empty when the input was refused: every error
    /// then stands on standard error as <c>file:line:column: pointer: what is wrong. What would be right.</c>
    /// </summary>
    public static async Task<ImmutableArray<CellInput>> ReadAsync(ParseResult parsed, string path, string? cellId, CancellationToken stop)
    {
        var error = parsed.InvocationConfiguration.Error;
        if (path != "-" && !File.Exists(path) && (Directory.Exists(path) || path.Contains("Host=", StringComparison.OrdinalIgnoreCase)))
            return await FromJobAsync(path, cellId, error, stop);
        if (cellId is not null)
        {
            error.WriteLine($"trivet: --cell names a cell of a job folder, and {path} is a file. Leave it out.");
            return [];
        }

        return FromFile(path, error) is { } one ? [one] : [];
    }

    /// <summary>Reads exactly one cell, as most commands need it; null when it was refused.</summary>
    public static async Task<CellInput?> ReadOneAsync(ParseResult parsed, string path, string? cellId, CancellationToken stop)
    {
        var cells = await ReadAsync(parsed, path, cellId, stop);
        if (cells.Length <= 1) return cells.SingleOrDefault();
        parsed.InvocationConfiguration.Error.WriteLine(
            $"trivet: {path} holds {cells.Length} cells. Name one with --cell: {string.Join(", ", cells.Select(c => c.Name))}.");
        return null;
    }

    private static CellInput? FromFile(string path, TextWriter error)
    {
        if (Bytes(path, error) is not { } utf8) return null;
        string name = path == "-" ? "standard input" : path;
        var read = CellFile.Read(utf8, name);
        if (read.Cell is { } cell) return new(name, cell);
        Refusals.Write(read.Errors, error);
        return null;
    }

    private static byte[]? Bytes(string path, TextWriter error)
    {
        try
        {
            if (path != "-") return File.ReadAllBytes(path);
            using var input = Console.OpenStandardInput();
            using var whole = new MemoryStream();
            input.CopyTo(whole);
            return whole.ToArray();
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException or ArgumentException or NotSupportedException)
        {
            error.WriteLine(File.Exists(path)
                ? $"trivet: {path} cannot be read: {e.Message}"
                : $"trivet: there is no file or folder {path}. Give the path of a cell file; `trivet new {path}` starts one.");
            return null;
        }
    }

    // Apart, so that reading a bare file loads nothing of the database.
    [MethodImpl(MethodImplOptions.NoInlining)]
    private static async Task<ImmutableArray<CellInput>> FromJobAsync(string path, string? cellId, TextWriter error, CancellationToken stop)
    {
        await using var job = await JobInput.OpenAsync(path, mayBeNew: false, error, stop);
        if (job is null) return [];
        var ids = (await job.CellsAsync(stop)).Select(c => c.Id).ToImmutableArray();
        if (ids.IsEmpty)
        {
            error.WriteLine($"trivet: {job.Location} holds no cell yet. `trivet desk {path}` makes one, or takes a file.");
            return [];
        }

        if (cellId is not null && !ids.Contains(cellId))
        {
            error.WriteLine($"trivet: {job.Location} has no cell {cellId}. It has {string.Join(", ", ids)}.");
            return [];
        }

        var cells = ImmutableArray.CreateBuilder<CellInput>();
        foreach (string id in ids.Where(id => cellId is null || id == cellId))
        {
            var read = (await job.HeadAsync(id, stop))!.Read();
            if (read.Cell is { } cell)
            {
                cells.Add(new(id, cell));
                continue;
            }

            Refusals.Write(read.Errors, error);
            return [];
        }

        return cells.ToImmutable();
    }
}
