using System.Globalization;
using System.Text;
using QRCoder;

namespace Trivet.Papers;

/// <summary>A QR code for the screen: the data of one SVG path, in modules.</summary>
/// <param name="Data">Runs of dark modules as rectangles.</param>
/// <param name="Size">Modules along a side, with the quiet zone.</param>
public sealed record QrPath(string Data, int Size)
{
    public static QrPath Of(string text)
    {
        using var code = QRCodeGenerator.GenerateQrCode(text, QRCodeGenerator.ECCLevel.M);
        var rows = code.ModuleMatrix;
        var data = new StringBuilder();
        for (int y = 0; y < rows.Count; y++)
            for (int x = 0; x < rows.Count; x++)
            {
                if (!rows[y][x]) continue;
                int from = x;
                while (x < rows.Count && rows[y][x]) x++;
                data.Append(CultureInfo.InvariantCulture, $"M{from} {y}h{x - from}v1h-{x - from}z");
            }
        return new(data.ToString(), rows.Count);
    }
}
