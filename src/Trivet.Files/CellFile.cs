using System.Collections.Immutable;
using System.Security.Cryptography;
using System.Text;
using System.Text.Json;
using Trivet.Cells;
using Trivet.Files.Meshes;

namespace Trivet.Files;

/// <summary>The cell document as text: reading, writing, its canonical form and hash.</summary>
public static class CellFile
{
    /// <summary>Larger documents are refused unread: a cell is a few dozen kilobytes.</summary>
    public const int LargestSize = 16 * 1024 * 1024;

    /// <summary>Reads a document. Never throws, whatever the input; time and memory are bounded by its size.</summary>
    public static CellRead Read(ReadOnlySpan<byte> utf8, string fileName) => Read(utf8, fileName, CellFormat.Current, CellFormat.Steps);

    /// <summary>Reads a document from disk, with the mesh files it names; a file that can not be read is an error like any other.</summary>
    public static CellRead Load(string path)
    {
        try
        {
            var file = new FileInfo(path);
            if (!file.Exists)
            {
                return Directory.Exists(path)
                    ? Refused(path, "this is a folder", "name a cell file in it")
                    : Refused(path, "there is no such file", "check the name; \"trivet new\" makes a cell file");
            }

            if (file.Length > LargestSize) return Refused(path, TooLarge(file.Length), TooLargeRemedy);
            byte[] text = ReadBounded(path);
            if (text.Length > LargestSize) return Refused(path, $"the file has more than {LargestSize / (1024 * 1024)} MB", TooLargeRemedy);
            var read = Read(text, path);
            return read.Cell is { } cell ? MeshFiles.Fill(cell, file.DirectoryName ?? "", path, text) : read;
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException or ArgumentException or NotSupportedException)
        {
            return Refused(path, "the file can not be read", "check that it exists, that you may read it and that no other program holds it");
        }
    }

    /// <summary>The document as people read and edit it: indented, quantities with the unit usual for the field.</summary>
    public static string Write(Cell cell) => CellWriter.Readable(cell);

    /// <summary>
    /// The one canonical form: members sorted by ordinal, no white space, quantities in SI with the fewest digits that read back to
    /// the same double, empty objects and nulls left out. Two equal cells give equal text, and the text is itself a document.
    /// </summary>
    public static string Canonical(Cell cell) => CellWriter.Canonical(cell);

    /// <summary>SHA-256 of the canonical form as UTF-8, lower-case hexadecimal: the name of the revision.</summary>
    public static string Hash(Cell cell) => Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(Canonical(cell))));

    internal static CellRead Read(ReadOnlySpan<byte> utf8, string fileName, int newest, ImmutableArray<FormatStep> steps)
    {
        if (utf8.Length > LargestSize) return Refused(fileName, TooLarge(utf8.Length), TooLargeRemedy);
        if (utf8.StartsWith((ReadOnlySpan<byte>)[0xFF, 0xFE]) || utf8.StartsWith((ReadOnlySpan<byte>)[0xFE, 0xFF]))
        {
            return Refused(fileName, "the file is saved as UTF-16", "save it as UTF-8");
        }

        // Offsets count from behind a byte order mark, as columns do in an editor.
        if (utf8.StartsWith((ReadOnlySpan<byte>)[0xEF, 0xBB, 0xBF])) utf8 = utf8[3..];

        var errors = new ErrorList();
        if (SyntaxAdvice.FirstInvalidByte(utf8) is { } invalid)
        {
            errors.Add(invalid, "", "from here on the file is not UTF-8 text", "save it as UTF-8");
            return new CellRead(null, errors.Located(utf8, fileName));
        }

        Cell? cell = null;
        try
        {
            cell = CellReader.Read(utf8, errors, newest, steps);
        }
        catch (JsonException e)
        {
            var (at, problem, remedy) = SyntaxAdvice.For(utf8, e);
            errors.Add(at, "", problem, remedy);
        }

        return new CellRead(errors.Any ? null : cell, errors.Located(utf8, fileName));
    }

    /// <summary>A device or a pipe states no size beforehand: at most one byte too many is read of it, which tells that there is more.</summary>
    private static byte[] ReadBounded(string path)
    {
        using var file = new FileStream(path, FileMode.Open, FileAccess.Read, FileShare.ReadWrite | FileShare.Delete);
        using var whole = new MemoryStream();
        byte[] block = new byte[1 << 16];
        while (whole.Length <= LargestSize && file.Read(block) is > 0 and int read) whole.Write(block, 0, read);
        return whole.ToArray();
    }

    private const string TooLargeRemedy = "a cell file is a few dozen kilobytes: is this the right file?";

    private static string TooLarge(long size) => $"the file has {size / (1024 * 1024)} MB; more than {LargestSize / (1024 * 1024)} MB are not read";

    private static CellRead Refused(string fileName, string problem, string remedy) => new(null, [new FileError(fileName, 1, 1, "", problem, remedy)]);
}
