using SkiaSharp;

namespace Clutchwright.Pictures;

/// <summary>Pictures as they are kept, looked at when they come back from elsewhere.</summary>
public static class KeptPicture
{
    private const int Quality = 85;

    // Start of image, then the marker of an application's segment (JFIF 1.02, recalled).
    private static readonly byte[] FirstSegment = [0xFF, 0xD8, 0xFF, 0xE0];

    private static readonly float[] Scales = [0.125f, 0.25f, 0.5f, 1.0f];

    /// <summary>Whether a file is a JPEG that begins as one and claims no more pixels than are read. Quick: nothing is unpacked.</summary>
    public static bool IsOne(ReadOnlyMemory<byte> file)
    {
        using var bytes = SKData.CreateCopy(file.Span);
        using var codec = SKCodec.Create(bytes);
        return codec is { EncodedFormat: SKEncodedImageFormat.Jpeg, Info: { Width: > 0, Height: > 0 } info } && (long)info.Width * info.Height <= PictureReader.MostPixels;
    }

    /// <summary>A kept picture as everything that prints takes it: the file itself where it begins with the segment that JFIF puts first, else packed anew.</summary>
    /// <param name="file">A picture; one that came from elsewhere may have other segments before that one.</param>
    /// <returns><c>null</c>: it cannot be unpacked.</returns>
    public static ReadOnlyMemory<byte>? Printable(ReadOnlyMemory<byte> file)
    {
        if (file.Length > 10 && file.Span[..4].SequenceEqual(FirstSegment) && file.Span.Slice(6, 4).SequenceEqual("JFIF"u8))
        {
            return file;
        }

        using var bytes = SKData.CreateCopy(file.Span);
        using var codec = IsOne(file) ? SKCodec.Create(bytes) : null;
        if (codec is null)
        {
            return null;
        }

        using var read = new SKBitmap(new SKImageInfo(codec.Info.Width, codec.Info.Height, SKColorType.Rgba8888, SKAlphaType.Opaque, SKColorSpace.CreateSrgb()));
        if (codec.GetPixels(read.Info, read.GetPixels()) is not SKCodecResult.Success)
        {
            return null;
        }

        using var image = SKImage.FromBitmap(read);
        using var encoded = image.Encode(SKEncodedImageFormat.Jpeg, Quality);
        return encoded.ToArray();
    }

    /// <summary>The same picture, small.</summary>
    /// <param name="file">A picture as <see cref="PictureReader.Prepare"/> gives it.</param>
    /// <returns>A JPEG file of at most <see cref="PictureReader.LongestThumbnailSide"/> pixels a side; <c>null</c>: it cannot be read.</returns>
    public static byte[]? Thumbnail(ReadOnlyMemory<byte> file)
    {
        if (!IsOne(file))
        {
            return null;
        }

        // JPEG unpacks to a half, a quarter or an eighth at little cost; the nearest above what is wanted.
        using var bytes = SKData.CreateCopy(file.Span);
        using var codec = SKCodec.Create(bytes);
        var longest = Math.Max(codec.Info.Width, codec.Info.Height);
        var scale = Math.Min(1.0, (double)PictureReader.LongestThumbnailSide / longest);
        var unpacked = Scales.Select(codec.GetScaledDimensions).First(s => Math.Max(s.Width, s.Height) >= longest * scale);
        using var read = new SKBitmap(new SKImageInfo(unpacked.Width, unpacked.Height, SKColorType.Rgba8888, SKAlphaType.Opaque, SKColorSpace.CreateSrgb()));
        if (codec.GetPixels(read.Info, read.GetPixels()) is not SKCodecResult.Success)
        {
            return null;
        }

        var size = new SKSizeI(Math.Max(1, (int)Math.Round(codec.Info.Width * scale)), Math.Max(1, (int)Math.Round(codec.Info.Height * scale)));
        using var small = read.Resize(size, new SKSamplingOptions(SKFilterMode.Linear, SKMipmapMode.Linear));
        using var image = SKImage.FromBitmap(small ?? read);
        using var encoded = image.Encode(SKEncodedImageFormat.Jpeg, Quality);
        return encoded.ToArray();
    }
}
