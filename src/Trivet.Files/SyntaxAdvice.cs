using System.Text;
using System.Text.Json;

namespace Trivet.Files;

/// <summary>Where and why a text stops being JSON, in words for someone who edits it by hand.</summary>
internal static class SyntaxAdvice
{
    private const int DeepestNesting = 32;

    public static (long At, string Problem, string Remedy) For(ReadOnlySpan<byte> utf8, JsonException e)
    {
        long at = Offset(utf8, e.LineNumber ?? 0, e.BytePositionInLine ?? 0);
        if (utf8.Trim(" \t\r\n"u8).IsEmpty) return (0, "the file is empty", "begin with { \"trivet\": 1 }");

        var (depth, deepest, insideText) = Nesting(utf8[..(int)Math.Min(at + 1, utf8.Length)]);
        if (deepest > DeepestNesting) return (at, $"objects are nested deeper than {DeepestNesting}", "a cell has far fewer levels: is this the right file?");
        if (at >= utf8.TrimEnd(" \t\r\n"u8).Length)
        {
            return insideText
                ? (at, "the file ends inside a text", "close the text with a double quote")
                : (at, depth > 0 ? $"the file ends too early: {depth} closing bracket{(depth == 1 ? " is" : "s are")} missing" : "the file ends too early",
                    "complete the file, or take the last good copy");
        }

        byte here = utf8[(int)at];
        return here switch
        {
            (byte)'"' => (at, "a name or text begins where a comma or colon was expected", "put a comma between members and a colon between name and value"),
            (byte)'\'' => (at, "a single quote stands here", "names and texts stand in double quotes"),
            (byte)'}' or (byte)']' => (at, "this closing bracket does not fit", "check that each { has its } and each name its value"),
            (byte)'{' or (byte)'[' => (at, "an object or list begins where none may", "put a comma between members and a name before each value"),
            (byte)',' => (at, "this comma has nothing before it", "take it away, or put the missing value before it"),
            (byte)'=' => (at, "an equals sign stands here", "put a colon between name and value"),
            < (byte)' ' => (at, "a text runs over the end of its line, or holds a control character", "close the text with a double quote on the same line; write \\n for a line break"),
            _ when char.IsAsciiLetter((char)here) => (at, "a bare word stands here", "names and texts stand in double quotes; NaN and infinity are no values; bare words are true, false and null"),
            _ when char.IsAsciiDigit((char)here) || here is (byte)'-' or (byte)'+' or (byte)'.' => (at, "this number is not written as JSON allows", "write digits with a point, like 0.5; quantities stand in quotes with their unit"),
            _ => (at, "the text is not JSON from here on", "check quotes, commas and brackets just before this place"),
        };
    }

    /// <summary>Offset of the first byte that is no UTF-8; null when all are.</summary>
    public static int? FirstInvalidByte(ReadOnlySpan<byte> utf8)
    {
        if (System.Text.Unicode.Utf8.IsValid(utf8)) return null;
        int at = 0;
        while (at < utf8.Length && Rune.DecodeFromUtf8(utf8[at..], out _, out int length) == System.Buffers.OperationStatus.Done) at += length;
        return at;
    }

    private static long Offset(ReadOnlySpan<byte> utf8, long line, long bytesInLine)
    {
        int start = 0;
        for (long i = 0; i < line; i++)
        {
            int end = utf8[start..].IndexOf((byte)'\n');
            if (end < 0) break;
            start += end + 1;
        }

        return Math.Min(start + bytesInLine, utf8.Length);
    }

    /// <summary>Open brackets at the end of a piece of text, the most there were, and whether it ends inside a text.</summary>
    private static (int Depth, int Deepest, bool InsideText) Nesting(ReadOnlySpan<byte> utf8)
    {
        int depth = 0, deepest = 0;
        bool insideText = false;
        for (int i = 0; i < utf8.Length; i++)
        {
            byte c = utf8[i];
            if (insideText)
            {
                if (c == (byte)'\\') i++;
                else if (c == (byte)'"') insideText = false;
                continue;
            }

            if (c == (byte)'"') insideText = true;
            else if (c is (byte)'{' or (byte)'[') deepest = Math.Max(deepest, ++depth);
            else if (c is (byte)'}' or (byte)']') depth--;
            else if (c == (byte)'/') i = AfterComment(utf8, i);
        }

        return (depth, deepest, insideText);
    }

    /// <summary>Index of the last byte of the comment that begins here; the place itself where none does.</summary>
    private static int AfterComment(ReadOnlySpan<byte> utf8, int at)
    {
        var rest = utf8[at..];
        int length = rest.StartsWith("//"u8) ? rest.IndexOf((byte)'\n') : rest.StartsWith("/*"u8) ? rest.IndexOf("*/"u8) + 1 : 0;
        return length < 0 || (length == 0 && rest.StartsWith("/*"u8)) ? utf8.Length : at + length;
    }
}
