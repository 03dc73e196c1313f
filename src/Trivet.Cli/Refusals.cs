using Trivet.Files;

namespace Trivet.Cli;

/// <summary>How refused input is told on standard error.</summary>
internal static class Refusals
{
    /// <summary>One line each, in the form editors and build tools make clickable: <c>file:line:column: …</c></summary>
    public static void Write(IReadOnlyCollection<FileError> errors, TextWriter error, string consequence = "the file was not used")
    {
        foreach (var e in errors)
            error.WriteLine($"{e.File}:{e.Line}:{e.Column}: {(e.Pointer.Length == 0 ? "" : e.Pointer + ": ")}{e.Problem}{(e.Remedy.Length == 0 ? "" : "; " + e.Remedy)}");
        error.WriteLine($"{errors.Count} {(errors.Count == 1 ? "error" : "errors")}; {consequence}.");
    }
}
