using System.IO.Compression;
using Clutchwright.Stock.Animals;
using Clutchwright.Stock.Backups;
using Clutchwright.Stock.Storage;
using Microsoft.EntityFrameworkCore;

namespace Clutchwright.Stock.Export;

/// <summary>A text that goes into the ZIP beside the book.</summary>
public sealed record BookText(string Name, string Text);

/// <summary>A file that the whole book was written to.</summary>
/// <param name="File">Its full path.</param>
/// <param name="Bytes">Its length.</param>
/// <param name="Counts">How many records of each kind, by the key of the JSON.</param>
/// <param name="Pictures">How many pictures; 0 in a JSON file.</param>
public sealed record BookWritten(string File, long Bytes, IReadOnlyList<KeyValuePair<string, int>> Counts, int Pictures);

/// <summary>Writes everything that the book holds, but its history, to a file that other programs can read too: a ZIP with the photos and tables,
/// or the JSON alone. It is of one moment, and gets its name when it is whole and on the disk.</summary>
public sealed class ExportBook(Book book)
{
    /// <param name="file">Where; its folder is made, and a file that is there is not overwritten. Ends in <c>.zip</c> or <c>.json</c>.</param>
    /// <param name="texts">What else goes into the ZIP, made from the animals out of the bin, with their statements.</param>
    /// <param name="cancellation">Stops it; no file is left then.</param>
    public async Task<Outcome<BookWritten>> RunAsync(
        string file, Func<IReadOnlyList<Animal>, IReadOnlyList<BookText>> texts, CancellationToken cancellation)
    {
        ArgumentException.ThrowIfNullOrWhiteSpace(file);
        ArgumentNullException.ThrowIfNull(texts);
        var path = Path.GetFullPath(file);
        var unfinished = SafeFile.Unfinished(path);
        var isJson = string.Equals(Path.GetExtension(path), ".json", StringComparison.OrdinalIgnoreCase);
        try
        {
            if (Path.Exists(path))
            {
                return new BookFileProblem.FileThere(path);
            }

            Directory.CreateDirectory(Path.GetDirectoryName(path)!);
            var written = await book.ReadMomentAsync<BookWritten>(
                async moment =>
                {
                    var records = await BookRecords.LoadAsync(moment.Db, cancellation);
                    await using (var stream = new FileStream(unfinished, FileMode.CreateNew, FileAccess.ReadWrite, FileShare.None, 1 << 16))
                    {
                        if (isJson)
                        {
                            await BookJson.WriteAsync(records, stream, cancellation);
                        }
                        else
                        {
                            await WriteZipAsync(moment.Db, records, stream, texts, cancellation);
                        }
                    }

                    return new BookWritten(path, new FileInfo(unfinished).Length, records.Counts, isJson ? 0 : records.Photos.DistinctBy(p => p.Digest).Count());
                },
                cancellation);
            if (written.IsDone)
            {
                SafeFile.Finish(unfinished, path);
            }

            return written;
        }
        catch (Exception exception) when (exception is IOException or UnauthorizedAccessException)
        {
            return Path.Exists(path) ? new BookFileProblem.FileThere(path) : new BookFileProblem.FileUnusable(path, exception.Message);
        }
        finally
        {
            Sweep(unfinished);
        }
    }

    private static async Task WriteZipAsync(
        StockContext db, BookRecords records, Stream stream, Func<IReadOnlyList<Animal>, IReadOnlyList<BookText>> texts, CancellationToken cancellation)
    {
        await using var zip = await ZipArchive.CreateAsync(stream, ZipArchiveMode.Create, leaveOpen: true, BookJson.Utf8, cancellation);
        var animals = await AllAnimals.LoadAsync(db, cancellation);
        foreach (var text in texts(animals))
        {
            await WriteTextAsync(zip, text.Name, writer => writer.WriteAsync(text.Text.AsMemory(), cancellation), cancellation);
        }

        await using (var entry = await OpenAsync(zip, BookFormat.JsonEntry, CompressionLevel.Optimal, cancellation))
        {
            await BookJson.WriteAsync(records, entry, cancellation);
        }

        var tables = new BookTables(db, records, animals);
        foreach (var name in BookFormat.Tables)
        {
            await WriteTextAsync(zip, name, writer => tables.WriteAsync(name, writer, cancellation), cancellation);
        }

        // One picture in memory at a time; a JPEG packs no smaller.
        foreach (var photo in records.Photos.DistinctBy(p => p.Digest).OrderBy(p => p.File, StringComparer.Ordinal))
        {
            cancellation.ThrowIfCancellationRequested();
            var picture = await db.PhotoContents.AsNoTracking().Where(c => c.Digest == photo.Digest).Select(c => c.Picture).SingleAsync(cancellation);
            await using var entry = await OpenAsync(zip, photo.File, CompressionLevel.NoCompression, cancellation);
            await entry.WriteAsync(picture, cancellation);
        }
    }

    private static async Task WriteTextAsync(ZipArchive zip, string name, Func<StreamWriter, Task> write, CancellationToken cancellation)
    {
        await using var entry = await OpenAsync(zip, name, CompressionLevel.Optimal, cancellation);
        await using var writer = new StreamWriter(entry, BookJson.Utf8);
        await write(writer);
    }

    // The same book gives the same bytes: the moment of writing stands in the file system, not in the file.
    private static Task<Stream> OpenAsync(ZipArchive zip, string name, CompressionLevel level, CancellationToken cancellation)
    {
        var entry = zip.CreateEntry(name, level);
        entry.LastWriteTime = new DateTimeOffset(1980, 1, 1, 0, 0, 0, TimeSpan.Zero);
        return entry.OpenAsync(cancellation);
    }

    private static void Sweep(string unfinished)
    {
        try
        {
            SafeFile.Discard(unfinished);
        }
        catch (Exception exception) when (exception is IOException or UnauthorizedAccessException)
        {
            // It could not be written there, and so there is nothing to take away.
        }
    }
}
