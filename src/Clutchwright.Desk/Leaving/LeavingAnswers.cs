using Clutchwright.Desk.Backups;

namespace Clutchwright.Desk.Leaving;

/// <summary>A book that was written to files.</summary>
/// <param name="Files">Their full paths.</param>
/// <param name="Bytes">How long they are together.</param>
/// <param name="Counts">How many records of each kind.</param>
/// <param name="Pictures">How many pictures.</param>
public sealed record BookLeft(IReadOnlyList<string> Files, long Bytes, IReadOnlyList<BookCount> Counts, int Pictures)
{
    /// <summary>Kinds of records by the key of the JSON, in words.</summary>
    internal static IReadOnlyList<BookCount> Named(IEnumerable<KeyValuePair<string, int>> counts) =>
        [.. counts.Select(c => new BookCount(c.Key == "log" ? "log entries" : c.Key, c.Value))];
}

/// <summary>What a file holds that is to come back, and what the book holds.</summary>
/// <param name="File">What the keeper calls the file.</param>
/// <param name="Counts">How many records of each kind it holds, what is in the bin or was taken back among them.</param>
/// <param name="PhotosLeftOut">Photos that do not come, since the file has no pictures and the keeper said so.</param>
/// <param name="Present">What the book holds.</param>
/// <param name="IsEmpty">Whether that is nothing at all; else it would be replaced.</param>
/// <param name="Mark">The book as it was looked at, to be given back when it is done.</param>
public sealed record ReturnAnswer(string File, IReadOnlyList<BookCount> Counts, int PhotosLeftOut, BookAnswer Present, bool IsEmpty, string Mark);

/// <summary>A book that came back.</summary>
/// <param name="Book">What it holds now.</param>
/// <param name="Before">The backup of what it held before; <c>null</c>: it held nothing.</param>
public sealed record ReturnDone(BookAnswer Book, BackupDone? Before);
