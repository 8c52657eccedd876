using System.IO.Compression;
using System.Security.Cryptography;
using Clutchwright.Stock.Export;

namespace Clutchwright.Stock.Books;

/// <summary>A file of the whole book, open and looked through: all that is in it keeps the rules, and every picture is the one that was written.
/// Nothing is in the book yet.</summary>
public sealed class BookFile : IDisposable
{
    private readonly FileStream _stream;
    private readonly ZipArchive? _archive;
    private readonly BookZip? _zip;

    private BookFile(string path, string name, FileStream stream, ZipArchive? archive, BookZip? zip, BookRecords records, int photosLeftOut)
    {
        (Path, Name, _stream, _archive, _zip, Records) = (path, name, stream, archive, zip, records);
        PhotosLeftOut = photosLeftOut;
    }

    /// <summary>The file, as a full path.</summary>
    public string Path { get; }

    /// <summary>What the keeper calls it.</summary>
    public string Name { get; }

    /// <summary>How many records of each kind, by the key of the JSON.</summary>
    public IReadOnlyList<KeyValuePair<string, int>> Counts => Records.Counts;

    /// <summary>Photos that the file names without a picture, and that do not come because the keeper said so.</summary>
    public int PhotosLeftOut { get; }

    internal BookRecords Records { get; }

    /// <summary>Opens a file and looks through all of it.</summary>
    /// <param name="file">A ZIP or JSON as <see cref="ExportBook"/> writes them; which of the two it is, its bytes say.</param>
    /// <param name="called">What the keeper calls it; null: the name it has here.</param>
    /// <param name="withoutPhotos">Whether photos may be left out if there is no picture of them: JSON alone has none.</param>
    /// <param name="photos">Looks at pictures.</param>
    /// <param name="cancellation">Stops it.</param>
    /// <returns>The file; a <see cref="BookFileProblem"/> if it cannot be taken.</returns>
    public static async Task<Outcome<BookFile>> OpenAsync(string file, string? called, bool withoutPhotos, PhotoReader photos, CancellationToken cancellation)
    {
        ArgumentException.ThrowIfNullOrWhiteSpace(file);
        ArgumentNullException.ThrowIfNull(photos);
        var path = System.IO.Path.GetFullPath(file);
        var name = BookZip.Plain(called ?? System.IO.Path.GetFileName(path));
        FileStream? stream = null;
        ZipArchive? archive = null;
        var isKept = false;
        var faults = new List<BookFileFault>();
        try
        {
            stream = new FileStream(path, FileMode.Open, FileAccess.Read, FileShare.Read, 1 << 16, FileOptions.Asynchronous);
            var first = new byte[2];
            var isZip = await stream.ReadAtLeastAsync(first, first.Length, throwOnEndOfStream: false, cancellation) == first.Length && first is [(byte)'P', (byte)'K'];
            stream.Position = 0;
            BookZip? zip = null;
            if (isZip)
            {
                archive = await ZipArchive.CreateAsync(stream, ZipArchiveMode.Read, leaveOpen: true, BookJson.Utf8, cancellation);
                zip = BookZip.Of(archive, name, faults);
            }

            var records = isZip
                ? zip is null ? null : await ReadJsonAsync(zip, faults, cancellation)
                : await ReadJsonAsync(stream, name, faults, cancellation);
            if (records is null || faults.Count > 0)
            {
                return new BookFileProblem.Refused(faults);
            }

            var leftOut = isZip ? 0 : records.Photos.Count;
            if (leftOut > 0 && !withoutPhotos)
            {
                return new BookFileProblem.PhotosMissing(leftOut);
            }

            records = leftOut > 0 ? records with { Photos = [] } : records;
            if (zip is not null)
            {
                await CheckPhotosAsync(zip, records, photos, faults, cancellation);
            }

            if (faults.Count > 0)
            {
                return new BookFileProblem.Refused(faults);
            }

            isKept = true;
            return new BookFile(path, name, stream, archive, zip, records, leftOut);
        }
        catch (InvalidDataException)
        {
            return new BookFileProblem.Refused([.. faults, new(name, null, "the ZIP is damaged or cut short.")]);
        }
        catch (Exception exception) when (exception is IOException or UnauthorizedAccessException)
        {
            return new BookFileProblem.FileUnusable(path, exception.Message);
        }
        finally
        {
            if (!isKept)
            {
                archive?.Dispose();
                stream?.Dispose();
            }
        }
    }

    public void Dispose()
    {
        _archive?.Dispose();
        _stream.Dispose();
    }

    /// <summary>The picture of a photo.</summary>
    /// <returns>Null if it is not the one that was looked at: the file was changed since.</returns>
    internal async Task<byte[]?> PictureAsync(PhotoRecord photo, CancellationToken cancellation) =>
        await _zip!.ReadAsync(photo.File, photo.Bytes, cancellation) is { } picture && IsOf(photo, picture) ? picture : null;

    private static async Task<BookRecords?> ReadJsonAsync(BookZip zip, List<BookFileFault> faults, CancellationToken cancellation)
    {
        if (await zip.ReadAsync(BookFormat.JsonEntry, BookFormat.MostJsonBytes, cancellation) is not { } json)
        {
            faults.Add(new(BookFormat.JsonEntry, null, "it is not as it was packed: the ZIP is damaged."));
            return null;
        }

        return Checked(json, BookFormat.JsonEntry, faults);
    }

    private static async Task<BookRecords?> ReadJsonAsync(FileStream stream, string name, List<BookFileFault> faults, CancellationToken cancellation)
    {
        if (stream.Length > BookFormat.MostJsonBytes)
        {
            faults.Add(new(name, null, $"it is larger than {BookFormat.MostJsonBytes} bytes."));
            return null;
        }

        var json = new byte[stream.Length];
        await stream.ReadExactlyAsync(json, cancellation);
        return Checked(json, name, faults);
    }

    private static BookRecords? Checked(ReadOnlySpan<byte> json, string name, List<BookFileFault> faults)
    {
        var records = new BookJsonReader(name, faults).Read(json);
        if (records is not null)
        {
            BookRules.Check(records, name, faults);
        }

        return records;
    }

    private static async Task CheckPhotosAsync(BookZip zip, BookRecords records, PhotoReader photos, List<BookFileFault> faults, CancellationToken cancellation)
    {
        var named = records.Photos.DistinctBy(p => p.Digest).ToList();
        var files = named.Select(p => p.File).ToHashSet(StringComparer.OrdinalIgnoreCase);
        foreach (var stray in zip.Photos.Where(p => !files.Contains(p)).Take(BookFileProblem.Refused.MostTold))
        {
            faults.Add(new(BookZip.Plain(stray), null, "no photo of the book names it; take it out of the ZIP."));
        }

        foreach (var photo in named)
        {
            if (faults.Count >= BookFileProblem.Refused.MostTold)
            {
                return;
            }

            if (!zip.Has(photo.File))
            {
                faults.Add(new(BookZip.Plain(photo.File), null, "the book names it, and it is not in the ZIP."));
            }
            else if (await ReadPictureAsync(zip, photo, cancellation) is not { } picture)
            {
                faults.Add(new(BookZip.Plain(photo.File), null, "it is not the picture that was written: its length or digest is another."));
            }
            else if (!photos.IsPicture(picture))
            {
                faults.Add(new(BookZip.Plain(photo.File), null, "it is no picture that can be shown."));
            }
        }
    }

    private static async Task<byte[]?> ReadPictureAsync(BookZip zip, PhotoRecord photo, CancellationToken cancellation)
    {
        try
        {
            return await zip.ReadAsync(photo.File, photo.Bytes, cancellation) is { } picture && IsOf(photo, picture) ? picture : null;
        }
        catch (InvalidDataException)
        {
            return null;
        }
    }

    private static bool IsOf(PhotoRecord photo, ReadOnlySpan<byte> picture) =>
        picture.Length == photo.Bytes && Convert.ToHexStringLower(SHA256.HashData(picture)) == photo.Digest;
}
