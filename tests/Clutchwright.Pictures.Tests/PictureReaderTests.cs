using CsCheck;
using SkiaSharp;
using Xunit;

namespace Clutchwright.Pictures.Tests;

public sealed class PictureReaderTests
{
    /// <summary>The eight ways a camera can be held (Exif, tag 0x0112), and wide and high pictures.</summary>
    [Theory]
    [InlineData(1, 80, 48)]
    [InlineData(2, 80, 48)]
    [InlineData(3, 80, 48)]
    [InlineData(4, 80, 48)]
    [InlineData(5, 80, 48)]
    [InlineData(6, 80, 48)]
    [InlineData(7, 80, 48)]
    [InlineData(8, 80, 48)]
    [InlineData(6, 2400, 1200)]
    [InlineData(8, 900, 3000)]
    public void Prepare_EveryOrientation_IsUprightAndNotLargerThanAsked(int orientation, int width, int height)
    {
        var picture = PictureReader.Prepare(CameraFile.Jpeg(orientation, width, height), out var problem)!;

        Assert.Null(problem);
        var scale = Math.Min(1.0, (double)PictureReader.LongestSide / Math.Max(width, height));
        Assert.Equal((Math.Round(width * scale), Math.Round(height * scale)), (picture.Width, picture.Height));
        foreach (var (file, longest) in new[] { (picture.Picture, PictureReader.LongestSide), (picture.Thumbnail, PictureReader.LongestThumbnailSide) })
        {
            using var read = SKBitmap.Decode(file.Span);
            Assert.True(Math.Max(read.Width, read.Height) <= longest);
            Assert.Equal(width > height, read.Width > read.Height);
            for (var corner = 0; corner < 4; corner++)
            {
                var pixel = read.GetPixel(((corner % 2 * 2) + 1) * read.Width / 4, ((corner / 2 * 2) + 1) * read.Height / 4);
                Assert.True(Near(CameraFile.Corners[corner], pixel), $"corner {corner} is {pixel}");
            }
        }
    }

    [Fact]
    public void Prepare_PlaceAndTimeBesideThePicture_KeepsTheDayAndLeavesOutThePlace()
    {
        var file = CameraFile.Jpeg(6, 80, 48, "2024:05:31 23:58:01", hasPlace: true);
        Assert.True(PictureReader.HasPlace(file));

        var picture = PictureReader.Prepare(file, out _)!;

        Assert.Equal(new DateOnly(2024, 5, 31), picture.Taken);
        Assert.False(PictureReader.HasPlace(picture.Picture));
        Assert.False(PictureReader.HasPlace(picture.Thumbnail));
        Assert.False(picture.Picture.Span.IndexOf("Exif"u8) >= 0);
    }

    [Fact]
    public void Prepare_SameFileTwice_GivesTheSameBytes()
    {
        var file = CameraFile.Jpeg(3, 300, 200);

        Assert.Equal(PictureReader.Prepare(file, out _)!.Picture.ToArray(), PictureReader.Prepare(file, out _)!.Picture.ToArray());
    }

    /// <summary>A few bytes that claim a picture of 2.5 thousand million pixels (PNG, ISO/IEC 15948, the IHDR chunk).</summary>
    [Fact]
    public void Prepare_ClaimsMorePixelsThanAllowed_IsRefusedBeforeItIsUnpacked()
    {
        using var small = new SKBitmap(4, 4);
        using var image = SKImage.FromBitmap(small);
        using var encoded = image.Encode(SKEncodedImageFormat.Png, 100);
        var png = encoded.ToArray();
        foreach (var at in new[] { 16, 20 })
        {
            (png[at], png[at + 1], png[at + 2], png[at + 3]) = (0, 0, 0xC3, 0x50);
        }

        var crc = Crc(png.AsSpan(12, 17));
        (png[29], png[30], png[31], png[32]) = ((byte)(crc >> 24), (byte)(crc >> 16 & 0xFF), (byte)(crc >> 8 & 0xFF), (byte)(crc & 0xFF));

        Assert.Null(PictureReader.Prepare(png, out var problem));
        Assert.Equal(PictureProblem.TooManyPixels, problem);
    }

    [Theory]
    [InlineData("")]
    [InlineData("not a picture at all")]
    [InlineData("GIF89a")]
    [InlineData("<svg xmlns=\"http://www.w3.org/2000/svg\"/>")]
    public void Prepare_NoPicture_IsRefused(string text)
    {
        Assert.Null(PictureReader.Prepare(System.Text.Encoding.ASCII.GetBytes(text), out var problem));
        Assert.Equal(PictureProblem.Unreadable, problem);
    }

    [Fact]
    public void Prepare_TooManyBytes_IsRefused()
    {
        Assert.Null(PictureReader.Prepare(new byte[PictureReader.MostBytes + 1], out var problem));
        Assert.Equal(PictureProblem.TooManyBytes, problem);
    }

    /// <summary>Cut off anywhere and changed anywhere, a file gives a picture or a problem, never a crash.</summary>
    [Fact]
    public void Prepare_DamagedFile_GivesAPictureOrAProblem()
    {
        var whole = CameraFile.Jpeg(6, 64, 40, "2024:05:31 10:00:00", hasPlace: true);
        Gen.Select(Gen.Int[0, whole.Length], Gen.Select(Gen.Int[0, whole.Length - 1], Gen.Byte).Array[0, 30]).Sample(
            damage =>
            {
                var file = whole.ToArray();
                foreach (var (at, value) in damage.Item2)
                {
                    file[at] = value;
                }

                var picture = PictureReader.Prepare(file.AsMemory(0, damage.Item1), out var problem);
                return picture is null == problem is not null;
            },
            iter: 2000);
    }

    private static bool Near(SKColor one, SKColor other) =>
        Math.Abs(one.Red - other.Red) + Math.Abs(one.Green - other.Green) + Math.Abs(one.Blue - other.Blue) < 40;

    // The check of a PNG chunk, written from ISO/IEC 15948, annex D.
    private static uint Crc(ReadOnlySpan<byte> bytes)
    {
        var crc = 0xFFFFFFFFu;
        foreach (var b in bytes)
        {
            crc ^= b;
            for (var bit = 0; bit < 8; bit++)
            {
                crc = (crc & 1) != 0 ? (crc >> 1) ^ 0xEDB88320u : crc >> 1;
            }
        }

        return ~crc;
    }
}
