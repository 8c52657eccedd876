using System.Buffers.Binary;
using System.Text;
using SkiaSharp;

namespace Clutchwright.Pictures.Tests;

/// <summary>JPEG files as a camera writes them: a picture stored turned, with its orientation, the time and the place beside it in Exif.</summary>
/// <remarks>Tags and types by the Exif standard (CIPA DC-008, section 4.6) and TIFF 6.0, recalled.</remarks>
internal static class CameraFile
{
    /// <summary>The four corners of the upright picture, row by row: red, green, blue, yellow.</summary>
    public static readonly SKColor[] Corners = [new(220, 30, 30), new(30, 180, 30), new(30, 30, 220), new(220, 210, 30)];

    /// <summary>An upright picture of four coloured corners, stored as a camera held in the way of an orientation would.</summary>
    public static byte[] Jpeg(int orientation, int width, int height, string? when = null, bool hasPlace = false)
    {
        var turns = orientation >= 5;
        using var stored = new SKBitmap(turns ? height : width, turns ? width : height);
        for (var row = 0; row < stored.Height; row++)
        {
            for (var column = 0; column < stored.Width; column++)
            {
                var (x, y) = Upright(orientation, column, row, width, height);
                stored.SetPixel(column, row, Corners[(y * 2 / height * 2) + (x * 2 / width)]);
            }
        }

        using var image = SKImage.FromBitmap(stored);
        using var encoded = image.Encode(SKEncodedImageFormat.Jpeg, 95);
        var jpeg = encoded.ToArray();
        byte[] exif = [.. "Exif\0\0"u8, .. Tiff(orientation, when, hasPlace)];
        var length = new byte[2];
        BinaryPrimitives.WriteUInt16BigEndian(length, (ushort)(exif.Length + 2));
        return [.. jpeg[..2], 0xFF, 0xE1, .. length, .. exif, .. jpeg[2..]];
    }

    // Which upright pixel a stored one is: the standard names the sides on which the stored row 0 and column 0 lie.
    private static (int X, int Y) Upright(int orientation, int column, int row, int width, int height) => orientation switch
    {
        1 => (column, row),
        2 => (width - 1 - column, row),
        3 => (width - 1 - column, height - 1 - row),
        4 => (column, height - 1 - row),
        5 => (row, column),
        6 => (width - 1 - row, column),
        7 => (width - 1 - row, height - 1 - column),
        _ => (row, height - 1 - column),
    };

    private static byte[] Tiff(int orientation, string? when, bool hasPlace)
    {
        // Little-endian; the first directory at 8, what is longer than four bytes behind the directories.
        var first = new List<(ushort Tag, ushort Type, uint Count, uint Value)> { (0x0112, 3, 1, (uint)orientation) };
        var bytes = new MemoryStream();
        bytes.Write("II*\0"u8);
        bytes.Write([8, 0, 0, 0]);
        var entries = 1 + (when is null ? 0 : 1) + (hasPlace ? 1 : 0);
        var next = (uint)(8 + 2 + (entries * 12) + 4);
        var behind = new MemoryStream();
        if (when is not null)
        {
            first.Add((0x8769, 4, 1, next));
            WriteDirectory(behind, [(0x9003, 2, (uint)when.Length + 1, next + 2 + 12 + 4)]);
            behind.Write(Encoding.ASCII.GetBytes(when + "\0"));
            if (behind.Length % 2 == 1)
            {
                behind.WriteByte(0);
            }
        }

        if (hasPlace)
        {
            first.Add((0x8825, 4, 1, next + (uint)behind.Length));
            WriteDirectory(behind, [(0x0001, 2, 2, 'N')]);
        }

        WriteDirectory(bytes, first);
        bytes.Write(behind.ToArray());
        return bytes.ToArray();
    }

    private static void WriteDirectory(MemoryStream to, List<(ushort Tag, ushort Type, uint Count, uint Value)> entries)
    {
        using var writer = new BinaryWriter(to, Encoding.ASCII, leaveOpen: true);
        writer.Write((ushort)entries.Count);
        foreach (var (tag, type, count, value) in entries)
        {
            writer.Write(tag);
            writer.Write(type);
            writer.Write(count);
            writer.Write(value);
        }

        writer.Write(0u);
    }
}
