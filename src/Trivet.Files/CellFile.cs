using Trivet.Cells;

namespace Trivet.Files;

/// <summary>The cell document as text: reading, writing, its canonical form and hash.</summary>
public static class CellFile
{
    /// <summary>Reads a document. Never throws, whatever the input; time and memory are bounded by its size.</summary>
    public static CellRead Read(ReadOnlySpan<byte> utf8, string fileName) => throw new NotImplementedException();

    /// <summary>The document as people read and edit it: indented, quantities with the unit usual for the field.</summary>
    public static string Write(Cell cell) => throw new NotImplementedException();

    /// <summary>The one canonical form: sorted, no white space, shortest round-trip numbers in SI. Two equal cells give equal text.</summary>
    public static string Canonical(Cell cell) => throw new NotImplementedException();

    /// <summary>SHA-256 of the canonical form as UTF-8, lower-case hexadecimal: the name of the revision.</summary>
    public static string Hash(Cell cell) => throw new NotImplementedException();
}
