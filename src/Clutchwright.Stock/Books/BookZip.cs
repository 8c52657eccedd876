using System.Globalization;
using System.IO.Compression;
using Clutchwright.Stock.Animals;
using Clutchwright.Stock.Export;

namespace Clutchwright.Stock.Books;

/// <summary>The ZIP of a whole book: which files it holds, and their bytes, never more of them than a book can have.</summary>
internal sealed class BookZip
{
    private const string Picture = ".jpg";

    private static readonly string[] Litter = [".DS_Store", "Thumbs.db", "desktop.ini"];

    private readonly Dictionary<string, ZipArchiveEntry> _entries = new(StringComparer.OrdinalIgnoreCase);

    private BookZip()
    {
    }

    /// <summary>Gets the names of the pictures.</summary>
    public IEnumerable<string> Photos => _entries.Keys.Where(IsPhotoName);

    /// <summary>Looks at the names and lengths of all files.</summary>
    /// <returns>Null if it cannot be the ZIP of a book; then faults were added.</returns>
    public static BookZip? Of(ZipArchive archive, string file, List<BookFileFault> faults)
    {
        if (archive.Entries.Count > BookFormat.MostEntries)
        {
            faults.Add(new(file, null, string.Create(CultureInfo.InvariantCulture, $"it holds {archive.Entries.Count:N0} files; a book has at most {BookFormat.MostEntries:N0}.")));
            return null;
        }

        var zip = new BookZip();
        var root = RootOf(archive);
        foreach (var entry in archive.Entries)
        {
            if (faults.Count >= BookFileProblem.Refused.MostTold)
            {
                break;
            }

            if (IsLitter(entry.FullName) || (entry.FullName.EndsWith('/') && entry.Length == 0 && IsSafe(entry.FullName[..^1])))
            {
                continue;
            }

            if (WhyNot(zip, entry, root) is { } reason)
            {
                faults.Add(new(Plain(entry.FullName), null, reason));
            }
        }

        if (faults.Count == 0 && !zip._entries.ContainsKey(BookFormat.JsonEntry))
        {
            faults.Add(new(file, null, $"it holds no {BookFormat.JsonEntry}."));
        }

        return faults.Count == 0 ? zip : null;
    }

    /// <summary>Whether a name is one that a picture has in the ZIP.</summary>
    public static bool IsPhotoName(string name) =>
        IsSafe(name) && name.StartsWith(BookFormat.PhotoFolder, StringComparison.Ordinal) && name.EndsWith(Picture, StringComparison.OrdinalIgnoreCase)
        && name.IndexOf('/', BookFormat.PhotoFolder.Length) < 0 && name.Length > BookFormat.PhotoFolder.Length + Picture.Length;

    public bool Has(string name) => _entries.ContainsKey(name);

    /// <summary>Reads a file whole.</summary>
    /// <param name="name">The file.</param>
    /// <param name="most">No more bytes than this are unpacked.</param>
    /// <param name="cancellation">Stops it.</param>
    /// <returns>Null if it is longer than that, or not as it was packed.</returns>
    public async Task<byte[]?> ReadAsync(string name, long most, CancellationToken cancellation)
    {
        var entry = _entries[name];
        if (entry.Length > most)
        {
            return null;
        }

        // What a file says of its length is not believed: no more is unpacked, and no less will do.
        var whole = new byte[entry.Length];
        await using var stream = await entry.OpenAsync(cancellation);
        var length = await stream.ReadAtLeastAsync(whole, whole.Length, throwOnEndOfStream: false, cancellation);
        return length == whole.Length && await stream.ReadAsync(new byte[1], cancellation) == 0 && Crc32.Of(whole) == entry.Crc32 ? whole : null;
    }

    public static string Plain(string name) => string.Concat(TextRules.Shorten(name, BookFormat.MaxEntryNameLength).Select(c => char.IsControl(c) || char.IsSurrogate(c) ? '?' : c));

    private static string? WhyNot(BookZip zip, ZipArchiveEntry entry, string root)
    {
        if (!IsSafe(entry.FullName))
        {
            return "its name is no name of a file in a book: it leads elsewhere, or has characters that it cannot have.";
        }

        var name = entry.FullName.StartsWith(root, StringComparison.Ordinal) ? entry.FullName[root.Length..] : entry.FullName;
        if (name != BookFormat.JsonEntry && !BookFormat.Tables.Contains(name, StringComparer.Ordinal) && !BookFormat.Others.Contains(name, StringComparer.Ordinal) && !IsPhotoName(name))
        {
            return "it is none of the files of a book; take it out of the ZIP.";
        }

        if (entry.Length > BookFormat.RatioMattersFrom && entry.Length / BookFormat.MostRatio > entry.CompressedLength)
        {
            return string.Create(CultureInfo.InvariantCulture, $"it would unpack to more than {BookFormat.MostRatio} times its size.");
        }

        var most = name == BookFormat.JsonEntry ? BookFormat.MostJsonBytes : IsPhotoName(name) ? BookFormat.MostPhotoBytes : long.MaxValue;
        return entry.Length > most ? string.Create(CultureInfo.InvariantCulture, $"it is larger than {most:N0} bytes.")
            : !zip._entries.TryAdd(name, entry) ? "it stands twice in the ZIP."
            : null;
    }

    private static bool IsSafe(string name) =>
        name.Length is > 0 and <= BookFormat.MaxEntryNameLength && TextRules.IsPlainLine(name) && !name.Contains('\\', StringComparison.Ordinal) && !name.Contains(':', StringComparison.Ordinal)
        && name.Split('/').All(part => part.Length > 0 && part is not "." and not "..");

    // Somebody unpacked it and packed the folder again.
    private static string RootOf(ZipArchive archive)
    {
        var books = archive.Entries.Select(e => e.FullName).Where(n => n == BookFormat.JsonEntry || n.EndsWith("/" + BookFormat.JsonEntry, StringComparison.Ordinal)).ToList();
        return books is [var one] && one.Count(c => c == '/') == 1 ? one[..^BookFormat.JsonEntry.Length] : "";
    }

    private static bool IsLitter(string name) =>
        name.StartsWith("__MACOSX/", StringComparison.Ordinal) || Litter.Contains(name[(name.LastIndexOf('/') + 1)..], StringComparer.OrdinalIgnoreCase);
}
