using SkiaSharp;

namespace Trivet.Papers;

/// <summary>A photograph as it is kept, or why it is not.</summary>
/// <param name="Jpeg">Pixels and nothing else; null where it was refused.</param>
public sealed record PhotographMade(byte[]? Jpeg, int Width, int Height, string Problem, string Remedy);

/// <summary>
/// Makes of a file that came from anywhere a photograph that may be kept: decoded and encoded again, so that no place, camera, person or
/// anything else beside the pixels goes with it, turned upright, of bounded size, with a line burnt in that says what it shows.
/// </summary>
public static class PhotographFile
{
    /// <summary>Largest file read, bytes: a good camera's full picture.</summary>
    public const int LargestFile = 24 * 1024 * 1024;

    /// <summary>Most pixels decoded. A small file may claim any size; it is asked for its size before it is decoded.</summary>
    public const long MostPixels = 50_000_000;

    /// <summary>Longer side of what is kept, pixels: a label of 2 mm reads at an arm's length of cabinet.</summary>
    public const int LongerSide = 2048;

    private const int Quality = 85;

    private static readonly SKSamplingOptions Smooth = new(SKFilterMode.Linear, SKMipmapMode.Linear);

    /// <param name="file">A JPEG or PNG, told by its content and not by its name.</param>
    /// <param name="line">What is burnt in below: step, time.</param>
    public static PhotographMade Make(byte[] file, string line)
    {
        if (file.Length > LargestFile) return Refuse($"The file has {file.Length / 1048576} MB; read are at most {LargestFile / 1048576} MB.", "Send it with fewer pixels.");
        if (!IsJpeg(file) && !IsPng(file)) return Refuse("The file is neither a JPEG nor a PNG.", "Take the photograph as JPEG, or save it as one.");
        using var data = SKData.CreateCopy(file);
        using var codec = SKCodec.Create(data);
        if (codec is null || codec.EncodedFormat is not (SKEncodedImageFormat.Jpeg or SKEncodedImageFormat.Png)) return Refuse(Broken, Again);
        var size = codec.Info.Size;
        if (size.Width < 1 || size.Height < 1 || (long)size.Width * size.Height > MostPixels)
            return Refuse($"The picture claims {size.Width} × {size.Height} pixels; decoded are at most {MostPixels / 1_000_000} million.", "Send it with fewer pixels.");

        // A JPEG is decoded at once to about the size that is kept; others are decoded whole.
        var decoded = codec.GetScaledDimensions(Math.Min(1f, (float)LongerSide / Math.Max(size.Width, size.Height)));
        using var bitmap = new SKBitmap(new SKImageInfo(decoded.Width, decoded.Height, SKColorType.Rgba8888, SKAlphaType.Premul));
        if (codec.GetPixels(bitmap.Info, bitmap.GetPixels()) != SKCodecResult.Success) return Refuse(Broken, Again);
        return Draw(bitmap, codec.EncodedOrigin, line);
    }

    private const string Broken = "The picture is broken or cut off.", Again = "Send it again, or take another one.";

    private static PhotographMade Draw(SKBitmap bitmap, SKEncodedOrigin origin, string line)
    {
        bool lying = origin is SKEncodedOrigin.LeftTop or SKEncodedOrigin.RightTop or SKEncodedOrigin.RightBottom or SKEncodedOrigin.LeftBottom;
        var (wide, high) = lying ? (bitmap.Height, bitmap.Width) : (bitmap.Width, bitmap.Height);
        float scale = Math.Min(1f, (float)LongerSide / Math.Max(wide, high));
        int width = Math.Max(1, (int)Math.Round(wide * scale)), height = Math.Max(1, (int)Math.Round(high * scale));
        float band = Math.Max(18, height / 28f);

        // Without a colour space, so that no profile is written behind the pixels.
        using var surface = SKSurface.Create(new SKImageInfo(width, height + (int)band, SKColorType.Rgba8888, SKAlphaType.Opaque));
        var canvas = surface.Canvas;
        canvas.Clear(SKColors.White);
        canvas.Save();
        canvas.ClipRect(new SKRect(0, 0, width, height));
        canvas.Scale(scale);
        canvas.Concat(Upright(origin, bitmap.Width, bitmap.Height));
        using (var image = SKImage.FromBitmap(bitmap)) canvas.DrawImage(image, 0, 0, Smooth);
        canvas.Restore();
        BurnIn(canvas, line, new SKRect(0, height, width, height + (int)band));

        using var made = surface.Snapshot();
        using var jpeg = made.Encode(SKEncodedImageFormat.Jpeg, Quality);
        return new(jpeg.ToArray(), width, height + (int)band, "", "");
    }

    /// <summary>A line that is too long is set smaller until it fits.</summary>
    private static void BurnIn(SKCanvas canvas, string line, SKRect band)
    {
        using var black = new SKPaint { Color = SKColors.Black };
        using var white = new SKPaint { Color = SKColors.White, IsAntialias = true };
        canvas.DrawRect(band, black);
        using var stream = typeof(PhotographFile).Assembly.GetManifestResourceStream("BarlowSemiCondensed-SemiBold.ttf")!;
        using var face = SKTypeface.FromStream(stream);
        using var font = new SKFont(face, band.Height * 0.7f);
        float room = band.Width - band.Height, needed = font.MeasureText(line);
        if (needed > room && room > 0) font.Size *= room / needed;
        canvas.DrawText(line, band.Height / 2, band.MidY + font.Size * 0.35f, SKTextAlign.Left, font, white);
    }

    /// <summary>From the pixels as stored to the picture as it was taken (Exif 2.3, tag 274 Orientation, from memory).</summary>
    private static SKMatrix Upright(SKEncodedOrigin origin, int width, int height) => origin switch
    {
        SKEncodedOrigin.TopRight => new SKMatrix(-1, 0, width, 0, 1, 0, 0, 0, 1),
        SKEncodedOrigin.BottomRight => new SKMatrix(-1, 0, width, 0, -1, height, 0, 0, 1),
        SKEncodedOrigin.BottomLeft => new SKMatrix(1, 0, 0, 0, -1, height, 0, 0, 1),
        SKEncodedOrigin.LeftTop => new SKMatrix(0, 1, 0, 1, 0, 0, 0, 0, 1),
        SKEncodedOrigin.RightTop => new SKMatrix(0, -1, height, 1, 0, 0, 0, 0, 1),
        SKEncodedOrigin.RightBottom => new SKMatrix(0, -1, height, -1, 0, width, 0, 0, 1),
        SKEncodedOrigin.LeftBottom => new SKMatrix(0, 1, 0, -1, 0, width, 0, 0, 1),
        _ => SKMatrix.Identity,
    };

    private static bool IsJpeg(byte[] file) => file.AsSpan().StartsWith((ReadOnlySpan<byte>)[0xFF, 0xD8, 0xFF]);

    private static bool IsPng(byte[] file) => file.AsSpan().StartsWith((ReadOnlySpan<byte>)[0x89, (byte)'P', (byte)'N', (byte)'G', 0x0D, 0x0A, 0x1A, 0x0A]);

    private static PhotographMade Refuse(string problem, string remedy) => new(null, 0, 0, problem, remedy);
}
