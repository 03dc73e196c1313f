using System.CommandLine;
using Trivet.Cells;
using Trivet.Files;

namespace Trivet.Cli;

/// <summary>A cell as a command got it.</summary>
/// <param name="Name">As the user named it: the path of the file.</param>
internal sealed record CellInput(string Name, Cell Cell)
{
    /// <summary>
    /// Reads the cell file that a command was given. Null when it was refused: every error then stands on standard error as
    /// <c>file:line:column: pointer: what is wrong. What would be right.</c>
    /// </summary>
    public static CellInput? Read(ParseResult parsed, string path)
    {
        var error = parsed.InvocationConfiguration.Error;
        if (Bytes(path, error) is not { } utf8) return null;
        string name = path == "-" ? "standard input" : path;
        var read = CellFile.Read(utf8, name);
        if (read.Cell is { } cell) return new(name, cell);
        WriteErrors(read, error);
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
                ? $"trivet: cannot read {path}: {e.Message}"
                : $"trivet: there is no file {path}. Give the path of a cell file; `trivet new {path}` starts one.");
            return null;
        }
    }

    private static void WriteErrors(CellRead read, TextWriter error)
    {
        foreach (var e in read.Errors)
            error.WriteLine($"{e.File}:{e.Line}:{e.Column}: {(e.Pointer.Length == 0 ? "" : e.Pointer + ": ")}{e.Problem} {e.Remedy}".TrimEnd());
        error.WriteLine(read.Errors.Length == 1 ? "1 error; nothing was checked." : $"{read.Errors.Length} errors; nothing was checked.");
    }
}
