using System.Collections.Immutable;
using Trivet.Cells;

namespace Trivet.Files;

/// <summary>One thing wrong with a file, with everything a person needs to mend it.</summary>
/// <param name="File">Name of the file as the user gave it.</param>
/// <param name="Line">Line from 1; 0 where the text was typed into a form.</param>
/// <param name="Column">Column from 1, in characters; 0 likewise.</param>
/// <param name="Pointer">JSON pointer (RFC 6901) of the place; empty for the document.</param>
/// <param name="Problem">What is wrong.</param>
/// <param name="Remedy">What would be right.</param>
public sealed record FileError(string File, int Line, int Column, string Pointer, string Problem, string Remedy)
{
    /// <summary>One line in the form editors and terminals make into a link: <c>cell.json:12:9: /robot/common/rod: … ; …</c></summary>
    public override string ToString()
    {
        string place = Line > 0 ? $"{File}:{Line}:{Column}: " : "";
        return $"{place}{(Pointer.Length > 0 ? Pointer + ": " : "")}{Problem}; {Remedy}";
    }
}

/// <summary>The outcome of reading a cell file: the cell when there is no error, and all errors at once.</summary>
public sealed record CellRead(Cell? Cell, ImmutableArray<FileError> Errors);
