using System.Collections;
using System.Collections.Immutable;
using QRCoder;
using Trivet.Numerics;
using Trivet.Views.Papers;

namespace Trivet.Papers;

/// <summary>QR codes as filled areas of a paper.</summary>
public static class QrMarks
{
    /// <summary>Light modules about the code that every reader needs (ISO/IEC 18004, from memory); they are part of the library's matrix.</summary>
    private const int Quiet = 4;

    /// <param name="size">Side of the code with its quiet zone, millimetres.</param>
    /// <param name="corner">Its lower left corner.</param>
    public static ImmutableArray<Mark> Of(string text, Vec2 corner, double size)
    {
        using var data = QRCodeGenerator.GenerateQrCode(text, QRCodeGenerator.ECCLevel.M);
        List<BitArray> rows = data.ModuleMatrix;
        double module = size / rows.Count;
        var marks = ImmutableArray.CreateBuilder<Mark>();
        for (int y = Quiet; y < rows.Count - Quiet; y++)
            for (int x = Quiet; x < rows.Count - Quiet; x++)
            {
                if (!rows[y][x]) continue;
                // A run of dark modules is one area: no hair lines between them.
                int end = x;
                while (end < rows.Count && rows[y][end]) end++;
                double left = corner.X + x * module, right = corner.X + end * module, top = corner.Y + size - y * module, bottom = top - module;
                marks.Add(new FillMark([new(left, bottom), new(right, bottom), new(right, top), new(left, top)]));
                x = end;
            }
        return marks.ToImmutable();
    }
}
