using Clutchwright.Pictures;
using SkiaSharp;

namespace Clutchwright.Years;

/// <summary>Takes photos: one picture of grain, which unpacks and packs as a photo does, each time with other bytes in a comment, so that no two are the same file.</summary>
internal static class Camera
{
    public const int Width = 1_600;
    public const int Height = 1_200;
    private const int Quality = 60;
    private const int MostComment = 65_533;
    private static readonly byte[] Picture = Grain();

    /// <summary>The small one, the same of all.</summary>
    public static byte[] Thumbnail { get; } = KeptPicture.Thumbnail(Picture)!;

    /// <summary>A photo.</summary>
    public static byte[] Take(Random random)
    {
        var comment = new byte[1_000 + random.Next(MostComment - 1_000)];
        random.NextBytes(comment);
        var length = comment.Length + 2;

        // After the first segment, which tells readers what kind of file it is.
        var head = 4 + (Picture[4] << 8) + Picture[5];
        return [.. Picture.AsSpan(0, head), 0xFF, 0xFE, (byte)(length >> 8), (byte)(length & 0xFF), .. comment, .. Picture.AsSpan(head)];
    }

    private static byte[] Grain()
    {
        var random = new Random(7);
        using var bitmap = new SKBitmap(new SKImageInfo(Width, Height, SKColorType.Rgba8888, SKAlphaType.Opaque));
        for (var y = 0; y < Height; y++)
        {
            for (var x = 0; x < Width; x++)
            {
                var light = (byte)(120 + (int)(70.0 * Math.Sin(x / 90.0) * Math.Cos(y / 70.0)) + random.Next(24));
                bitmap.SetPixel(x, y, new SKColor(light, (byte)(light - 20), (byte)(light - 40)));
            }
        }

        using var image = SKImage.FromBitmap(bitmap);
        using var encoded = image.Encode(SKEncodedImageFormat.Jpeg, Quality);
        return encoded.ToArray();
    }
}
