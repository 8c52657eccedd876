using System.Buffers.Binary;
using System.IO.Compression;
using Clutchwright.Pictures;

namespace Clutchwright.Desk.Importing;

/// <summary>A ZIP file as a set of photos: what it claims is checked before anything is unpacked, and what is unpacked is counted.</summary>
internal sealed class PhotoArchive : IDisposable
{
    /// <summary>The most pictures that are taken at once.</summary>
    public const int MostPictures = 1_000;

    /// <summary>The name of the list.</summary>
    public const string ListName = "photos.csv";

    private const int EndLength = 22;
    private const int MostComment = ushort.MaxValue;
    private const uint EndSign = 0x06054b50;
    private const int MostDirectoryBytes = 4 * 1024 * 1024;
    private const int MostRatio = 100;
    private const long MostBytes = 8L * 1024 * 1024 * 1024;

    private readonly ZipArchive _zip;

    private PhotoArchive(ZipArchive zip, IReadOnlyList<ZipArchiveEntry> entries) => (_zip, Entries) = (zip, entries);

    /// <summary>Gets the files of the set, without folders and what operating systems leave behind.</summary>
    public IReadOnlyList<ZipArchiveEntry> Entries { get; }

    /// <summary>Opens a set.</summary>
    /// <param name="content">The file.</param>
    /// <param name="problem">Why it cannot be read as a whole; <c>null</c>: it can.</param>
    public static PhotoArchive? Open(Stream content, out string? problem)
    {
        const string NoZip = "This is no ZIP file, or it is broken. Pack the pictures into a ZIP file again.";
        try
        {
            problem = WhyNot(content);
            if (problem is not null)
            {
                return null;
            }

            var zip = new ZipArchive(content, ZipArchiveMode.Read, leaveOpen: true);
            ZipArchiveEntry[] files = [.. zip.Entries.Where(e => !e.FullName.EndsWith('/') && !IsLeftBehind(e.FullName))];
            problem = files.Length > MostPictures + 1 ? $"There are {files.Length:N0} files in it. At most {MostPictures:N0} pictures at once; split it."
                : files.Sum(e => Math.Max(0, e.Length)) > MostBytes ? $"It would unpack to more than {MostBytes / (1024 * 1024 * 1024)} GiB. Split it."
                : null;
            if (problem is null)
            {
                return new(zip, files);
            }

            zip.Dispose();
        }
        catch (Exception exception) when (exception is InvalidDataException or NotSupportedException or EndOfStreamException or ArgumentException or OverflowException)
        {
            problem = NoZip;
        }

        return null;
    }

    /// <summary>Reads one file of the set.</summary>
    /// <param name="entry">The file.</param>
    /// <param name="problem">Why it cannot be; <c>null</c>: it was.</param>
    public static byte[] Read(ZipArchiveEntry entry, out string? problem)
    {
        problem = WhyNot(entry);
        if (problem is not null)
        {
            return [];
        }

        try
        {
            using var stream = entry.Open();
            using var bytes = new MemoryStream();
            var buffer = new byte[64 * 1024];
            int read;
            while ((read = stream.Read(buffer)) > 0)
            {
                // What an entry claims to unpack to may be a lie.
                if (bytes.Length + read > Math.Min(entry.Length, PictureReader.MostBytes))
                {
                    problem = "It unpacks to more than it says. Pack it again.";
                    return [];
                }

                bytes.Write(buffer, 0, read);
            }

            var content = bytes.ToArray();
            problem = content.Length == entry.Length && Crc32.Of(content) == entry.Crc32 ? null : "It is broken in the ZIP file. Pack it again.";
            return content;
        }
        catch (Exception exception) when (exception is InvalidDataException or NotSupportedException or EndOfStreamException or IOException or OverflowException or ArgumentException)
        {
            problem = "It is broken in the ZIP file. Pack it again.";
            return [];
        }
    }

    /// <inheritdoc />
    public void Dispose() => _zip.Dispose();

    /// <summary>The name without the folders before it.</summary>
    public static string NameOf(string entry) => entry[(entry.LastIndexOf('/') + 1)..];

    private static string? WhyNot(ZipArchiveEntry entry)
    {
        var name = entry.FullName;
        return name.StartsWith('/') || name.Contains('\\', StringComparison.Ordinal) || name.Contains(':', StringComparison.Ordinal) || name.Split('/').Contains("..") || name.Any(char.IsControl)
            ? "Its name leads out of the ZIP file. Pictures lie in it, or in folders in it."
            : entry.IsEncrypted ? "It is locked with a password. Pack it without one."
            : entry.Length > PictureReader.MostBytes ? $"It is too large. At most {PictureReader.MostBytes / (1024 * 1024)} MiB."
            : entry.Length > 1024 * 1024 && entry.Length / Math.Max(1, entry.CompressedLength) > MostRatio ? $"It unpacks to more than {MostRatio} times its size, which no picture does."
            : null;
    }

    // How many entries there are, the end of the file alone tells; their list is read into memory as a whole, so it must be short.
    private static string? WhyNot(Stream content)
    {
        var length = content.Length;
        var tail = new byte[Math.Min(length, EndLength + MostComment)];
        content.Seek(-tail.Length, SeekOrigin.End);
        content.ReadExactly(tail);
        content.Seek(0, SeekOrigin.Begin);
        for (var at = tail.Length - EndLength; at >= 0; at--)
        {
            if (BinaryPrimitives.ReadUInt32LittleEndian(tail.AsSpan(at)) == EndSign)
            {
                var begins = BinaryPrimitives.ReadUInt32LittleEndian(tail.AsSpan(at + 16));
                return begins == uint.MaxValue || length - begins > MostDirectoryBytes ? $"It holds too many files, or is larger than 4 GiB. At most {MostPictures:N0} pictures at once; split it." : null;
            }
        }

        return "This is no ZIP file, or it is broken. Pack the pictures into a ZIP file again.";
    }

    private static bool IsLeftBehind(string name) =>
        name.StartsWith("__MACOSX/", StringComparison.Ordinal) || NameOf(name) is ".DS_Store" or "Thumbs.db" or "desktop.ini";
}
