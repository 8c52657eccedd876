using System.Buffers.Binary;
using System.IO.Compression;
using System.Text;
using Clutchwright.Testing.Pedigrees;
using SkiaSharp;

namespace Clutchwright.Desk.Tests.Importing;

/// <summary>Makes sets of photos that are good, and then spoils most of them.</summary>
internal static class FuzzSet
{
    private const uint CentralSign = 0x02014b50;

    private static readonly byte[][] Pictures = [.. Enumerable.Range(0, 12).Select(Picture)];

    /// <summary>A small picture, each number another.</summary>
    public static byte[] Picture(int number)
    {
        using var bitmap = new SKBitmap(8 + number, 8);
        using (var canvas = new SKCanvas(bitmap))
        {
            canvas.Clear(new SKColor((byte)(number * 20), (byte)(255 - (number * 15)), 90));
        }

        using var image = SKImage.FromBitmap(bitmap);
        using var encoded = image.Encode(number % 3 == 0 ? SKEncodedImageFormat.Png : SKEncodedImageFormat.Jpeg, 80);
        return encoded.ToArray();
    }

    public static byte[] Zip(IEnumerable<(string Name, byte[] Bytes)> entries)
    {
        using var stream = new MemoryStream();
        using (var zip = new ZipArchive(stream, ZipArchiveMode.Create, leaveOpen: true))
        {
            foreach (var (name, bytes) in entries)
            {
                using var entry = zip.CreateEntry(name, CompressionLevel.Fastest).Open();
                entry.Write(bytes);
            }
        }

        return stream.ToArray();
    }

    public static (byte[] Bytes, string How) Make(SplitMix64 random)
    {
        var entries = new List<(string Name, byte[] Bytes)>();
        var first = random.Below(Pictures.Length);
        var count = 1 + random.Below(3);
        for (var i = 0; i < count; i++)
        {
            var folder = random.Below(4) == 0 ? "pictures/" : "";
            entries.Add(($"{folder}{(random.Below(2) == 0 ? "F" : "M")}{1 + random.Below(4)}_2025-0{1 + random.Below(9)}-1{i}.jpg", Pictures[(first + i) % Pictures.Length]));
        }

        if (random.Below(3) == 0)
        {
            var rows = entries.Select(e => new[] { e.Name, $"F{1 + random.Below(4)}", random.Below(2) == 0 ? "" : "about March 2025", random.Below(2) == 0 ? "=1+1" : "" }).ToList();
            var list = FuzzTable.Write(["file", "animal", "date", "note"], rows);
            entries.Add(("photos.csv", Encoding.UTF8.GetBytes(list)));
        }

        return Spoil(entries, random);
    }

    private static (byte[] Bytes, string How) Spoil(List<(string Name, byte[] Bytes)> entries, SplitMix64 random)
    {
        switch (random.Below(22))
        {
            case 0 or 1 or 2:
                return (Zip(entries), "good");
            case 3:
                var whole = Zip(entries);
                return (whole[..random.Below(whole.Length)], "truncated");
            case 4 or 5:
                var flipped = Zip(entries);
                for (var i = 0; i <= random.Below(6); i++)
                {
                    flipped[random.Below(flipped.Length)] ^= (byte)(1 << random.Below(8));
                }

                return (flipped, "bytes");
            case 6:
                string[] out1 = ["../F1_2025-01-01.jpg", "/etc/F1.jpg", "a/../../F1.jpg", "..\\F1.jpg", "C:\\F1.jpg", "a\0b.jpg", "./../F1.jpg"];
                entries.Add((out1[random.Below(out1.Length)], Pictures[0]));
                return (Zip(entries), "leads out");
            case 7:
                entries.Add(random.Below(2) == 0 ? entries[0] : (entries[0].Name.ToUpperInvariant(), entries[0].Bytes));
                return (Zip(entries), "name twice");
            case 8:
                entries.Add(("F1_2025-01-01.zip", Zip(entries)));
                return (Zip(entries), "nested");
            case 9:
                entries.Add(("F1_2025-01-01.jpg", new byte[random.Below(10) == 0 ? 40_000_000 : 2_000_000]));
                return (Zip(entries), "bomb");
            case 10:
                entries.Add(("F1_2025-01-02.jpg", [.. Enumerable.Range(0, 200).Select(_ => (byte)random.Below(256))]));
                return (Zip(entries), "no picture");
            case 11:
                var cut = Pictures[random.Below(Pictures.Length)];
                entries.Add(("F2_2025-01-02.jpg", cut[..random.Below(cut.Length)]));
                return (Zip(entries), "picture cut");
            case 12:
                var broken = Pictures[random.Below(Pictures.Length)].ToArray();
                for (var i = 0; i <= random.Below(5); i++)
                {
                    broken[random.Below(broken.Length)] = (byte)random.Below(256);
                }

                entries.Add(("F2_2025-01-03.jpg", broken));
                return (Zip(entries), "picture broken");
            case 13:
                return (Zip(Enumerable.Range(0, random.Below(20) == 0 ? 1_200 : 30).Select(i => ($"x{i}.jpg", Array.Empty<byte>()))), "many");
            case 14:
                return (Lie(Zip(entries), random), "sizes that lie");
            case 15:
                entries.Add(("photos.csv", FuzzTable.Make(Desk.Importing.ImportKind.Log, random).Bytes));
                return (Zip(entries), "list spoilt");
            case 16:
                entries.Add(("F1_2025-02-30.jpg", Pictures[1]));
                return (Zip(entries), "no such day");
            case 17:
                entries.Add(($"{new string('n', 300)}_2025-01-01.jpg", Pictures[2]));
                return (Zip(entries), "long name");
            case 18:
                return ([.. Enumerable.Range(0, random.Below(300)).Select(_ => (byte)random.Below(256))], "garbage");
            case 19:
                entries.Add(("__MACOSX/x", [1]));
                entries.Add(("folder/", []));
                entries.Add(("\u202E_2025-01-01.jpg", Pictures[3]));
                return (Zip(entries), "left behind and oddities");
            case 20:
                return ([.. Enumerable.Range(0, 50).Select(_ => (byte)random.Below(256)), .. Zip(entries)], "begins with garbage");
            default:
                return (Zip([]), "empty");
        }
    }

    // In the directory at the end, where sizes and flags are read.
    private static byte[] Lie(byte[] zip, SplitMix64 random)
    {
        for (var at = 0; at + 46 < zip.Length; at++)
        {
            if (BinaryPrimitives.ReadUInt32LittleEndian(zip.AsSpan(at)) == CentralSign)
            {
                var (place, value) = random.Below(4) switch
                {
                    0 => (24, (uint)random.Below(100_000_000)),
                    1 => (20, (uint)random.Below(100_000)),
                    2 => (42, (uint)random.Below(zip.Length * 2)),
                    _ => (8, 1u),
                };
                BinaryPrimitives.WriteUInt32LittleEndian(zip.AsSpan(at + place), value);
                break;
            }
        }

        return zip;
    }
}
