using MetadataExtractor;
using MetadataExtractor.Formats.Exif;
using SkiaSharp;

namespace Clutchwright.Pictures;

/// <summary>Reads photos as cameras and phones write them, and makes of each what is kept.</summary>
public static class PictureReader
{
    /// <summary>The largest file that is read.</summary>
    public const int MostBytes = 30 * 1024 * 1024;

    /// <summary>The most pixels that a file may unpack to: what a small file may claim is told before any memory is taken.</summary>
    public const long MostPixels = 120_000_000;

    /// <summary>The longest side of a picture that is kept, in pixels; a smaller one stays as it is.</summary>
    public const int LongestSide = 1600;

    /// <summary>The longest side of the small one, in pixels.</summary>
    public const int LongestThumbnailSide = 320;

    private const int Quality = 85;

    /// <summary>Reads a JPEG, PNG, WebP, GIF or BMP file: turns it upright as its camera noted, makes it smaller, and leaves out everything else that was written in it, the place
    /// above all.</summary>
    /// <param name="file">The file.</param>
    /// <param name="problem">Why it cannot be read; <c>null</c>: it was.</param>
    /// <returns><c>null</c>: it cannot be read. The same file gives the same bytes each time.</returns>
    public static PreparedPicture? Prepare(ReadOnlyMemory<byte> file, out PictureProblem? problem)
    {
        if (file.Length > MostBytes)
        {
            problem = PictureProblem.TooManyBytes;
            return null;
        }

        using var bytes = SKData.CreateCopy(file.Span);
        using var codec = SKCodec.Create(bytes);
        if (codec is null || codec.Info.Width < 1 || codec.Info.Height < 1)
        {
            problem = PictureProblem.Unreadable;
            return null;
        }

        if ((long)codec.Info.Width * codec.Info.Height > MostPixels)
        {
            problem = PictureProblem.TooManyPixels;
            return null;
        }

        using var read = Read(codec);
        if (read is null)
        {
            problem = PictureProblem.Unreadable;
            return null;
        }

        problem = null;
        using var upright = Upright(read, codec.EncodedOrigin);
        var (picture, size) = Encode(upright, LongestSide);
        return new(picture, Encode(upright, LongestThumbnailSide).File, size.Width, size.Height, Taken(file));
    }

    /// <summary>Whether anything but the picture itself is written in a file: for tests of what is kept.</summary>
    public static bool HasPlace(ReadOnlyMemory<byte> file)
    {
        using var stream = new MemoryStream(file.ToArray(), writable: false);
        return ImageMetadataReader.ReadMetadata(stream).OfType<GpsDirectory>().Any(d => !d.IsEmpty);
    }

    // JPEG can be unpacked at a half, a quarter, an eighth of its size: a phone's picture then takes little memory.
    private static SKBitmap? Read(SKCodec codec)
    {
        var scale = (float)LongestSide / Math.Max(codec.Info.Width, codec.Info.Height);
        var size = scale < 1.0f ? codec.GetScaledDimensions(scale) : codec.Info.Size;
        var larger = Math.Max(size.Width, size.Height) >= Math.Min(LongestSide, Math.Max(codec.Info.Width, codec.Info.Height)) ? size : codec.Info.Size;
        var info = new SKImageInfo(larger.Width, larger.Height, SKColorType.Rgba8888, SKAlphaType.Premul, SKColorSpace.CreateSrgb());
        var bitmap = new SKBitmap(info);
        var result = codec.GetPixels(info, bitmap.GetPixels());
        if (result is SKCodecResult.Success)
        {
            return bitmap;
        }

        bitmap.Dispose();
        return null;
    }

    private static SKBitmap Upright(SKBitmap read, SKEncodedOrigin origin)
    {
        var turns = origin is SKEncodedOrigin.LeftTop or SKEncodedOrigin.RightTop or SKEncodedOrigin.RightBottom or SKEncodedOrigin.LeftBottom;
        var upright = new SKBitmap(new SKImageInfo(turns ? read.Height : read.Width, turns ? read.Width : read.Height, SKColorType.Rgba8888, SKAlphaType.Opaque, SKColorSpace.CreateSrgb()));
        using var canvas = new SKCanvas(upright);

        // Behind what is transparent lies white, as on paper.
        canvas.Clear(SKColors.White);
        var (w, h) = (read.Width, read.Height);
        var matrix = origin switch
        {
            SKEncodedOrigin.TopRight => new SKMatrix(-1, 0, w, 0, 1, 0, 0, 0, 1),
            SKEncodedOrigin.BottomRight => new SKMatrix(-1, 0, w, 0, -1, h, 0, 0, 1),
            SKEncodedOrigin.BottomLeft => new SKMatrix(1, 0, 0, 0, -1, h, 0, 0, 1),
            SKEncodedOrigin.LeftTop => new SKMatrix(0, 1, 0, 1, 0, 0, 0, 0, 1),
            SKEncodedOrigin.RightTop => new SKMatrix(0, -1, h, 1, 0, 0, 0, 0, 1),
            SKEncodedOrigin.RightBottom => new SKMatrix(0, -1, h, -1, 0, w, 0, 0, 1),
            SKEncodedOrigin.LeftBottom => new SKMatrix(0, 1, 0, -1, 0, w, 0, 0, 1),
            _ => SKMatrix.Identity,
        };
        canvas.SetMatrix(matrix);
        canvas.DrawBitmap(read, 0, 0, new SKSamplingOptions(SKFilterMode.Nearest));
        canvas.Flush();
        return upright;
    }

    private static (ReadOnlyMemory<byte> File, SKSizeI Size) Encode(SKBitmap picture, int longest)
    {
        var scale = Math.Min(1.0, (double)longest / Math.Max(picture.Width, picture.Height));
        var size = new SKSizeI(Math.Max(1, (int)Math.Round(picture.Width * scale)), Math.Max(1, (int)Math.Round(picture.Height * scale)));
        using var resized = scale < 1.0 ? picture.Resize(size, new SKSamplingOptions(SKFilterMode.Linear, SKMipmapMode.Linear)) : null;
        using var image = SKImage.FromBitmap(resized ?? picture);
        using var encoded = image.Encode(SKEncodedImageFormat.Jpeg, Quality);
        return (encoded.ToArray(), size);
    }

    private static DateOnly? Taken(ReadOnlyMemory<byte> file)
    {
        try
        {
            using var stream = new MemoryStream(file.ToArray(), writable: false);
            return ImageMetadataReader.ReadMetadata(stream).OfType<ExifSubIfdDirectory>()
                .Select(d => d.TryGetDateTime(ExifDirectoryBase.TagDateTimeOriginal, out var when) ? DateOnly.FromDateTime(when) : (DateOnly?)null)
                .FirstOrDefault(day => day is { Year: > 1990 });
        }
        catch (ImageProcessingException)
        {
            // The picture can be read and what is written beside it cannot: then the keeper says when.
            return null;
        }
        catch (IOException)
        {
            return null;
        }
    }
}
