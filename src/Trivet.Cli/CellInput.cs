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
        if (string.IsNullOrWhiteSpace(path))
        {
            error.WriteLine("trivet: the name of the cell is empty. Name a cell file, a job folder, or - for standard input.");
            return [];
        }

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
        var read = path == "-" ? StandardInput() : CellFile.Load(path);
        if (read.Cell is { } cell) return new(path == "-" ? "standard input" : path, cell);
        Refusals.Write(read.Errors, error);
        return null;
    }

    /// <summary>Reads no more of standard input than the reader would take, and one byte that tells it there was more.</summary>
    private static CellRead StandardInput()
    {
        using var input = Console.OpenStandardInput();
        using var whole = new MemoryStream();
        var block = new byte[1 << 16];
        for (int read; whole.Length <= CellFile.LargestSize && (read = input.Read(block)) > 0;) whole.Write(block, 0, read);
        return CellFile.Read(whole.GetBuffer().AsSpan(0, (int)whole.Length), "standard input");
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
