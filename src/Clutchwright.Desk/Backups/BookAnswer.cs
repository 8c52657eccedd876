using Clutchwright.Stock.Backups;

namespace Clutchwright.Desk.Backups;

/// <summary>So many of something, in words.</summary>
public sealed record BookCount(string Words, long Count);

/// <summary>A deed by its number, when, and who did what.</summary>
public sealed record DeedStamp(long Number, DateTimeOffset When, string Who, string Words);

/// <summary>What a book holds.</summary>
/// <param name="Counts">What of it there is, most important first.</param>
/// <param name="LastDeed">The last thing that was done; <c>null</c>: nothing was.</param>
/// <param name="Digest">SHA-256 over everything, the same for the same content on every database; <c>null</c>: not reckoned.</param>
public sealed record BookAnswer(IReadOnlyList<BookCount> Counts, DeedStamp? LastDeed, string? Digest)
{
    /// <summary>The number of a count; 0 if there is none.</summary>
    public long this[string words] => Counts.FirstOrDefault(c => c.Words == words)?.Count ?? 0;

    internal static BookAnswer Of(BookContents contents)
    {
        var named = new[] { "Animals", "Statements", "Happenings", "Deeds", "Changes", "PossibleSires", "PhotoContents" };
        return new(
            [
                new("animals", contents.Animals),
                new("animals in the bin", contents.AnimalsInBin),
                new("statements", contents.RowsOf("Statements")),
                new("log entries", contents.LogEntries),
                .. contents.Tables.Where(t => !named.Contains(t.Name, StringComparer.Ordinal)).Select(t => new BookCount(t.Words, t.Rows)),
                new("deeds in the history", contents.Deeds),
            ],
            StampOf(contents.LastDeed),
            contents.Digest);
    }

    internal static DeedStamp? StampOf(DeedMark? deed) =>
        deed is null ? null : new(deed.Number, new DateTimeOffset(deed.When, TimeSpan.Zero), deed.Who, deed.Words);
}

/// <summary>A backup that lies in the folder of backups.</summary>
/// <param name="Name">The file's name.</param>
/// <param name="File">Its path.</param>
/// <param name="Bytes">How large it is.</param>
/// <param name="MadeAt">When.</param>
/// <param name="Reason">Why; <c>null</c>: it has a name of somebody's own.</param>
public sealed record KeptBackup(string Name, string File, long Bytes, DateTimeOffset MadeAt, BackupReason? Reason);

/// <summary>A backup that was just made, read back and found the same as the book.</summary>
public sealed record BackupDone(string File, long Bytes, TimeSpan Took, DateTimeOffset MadeAt, BookAnswer Book);

/// <summary>How the book and its backups stand.</summary>
/// <param name="Place">Where the book lies.</param>
/// <param name="Book">What it holds.</param>
/// <param name="Settings">Where backups go, and when.</param>
/// <param name="Backups">Those in that folder, the latest first.</param>
/// <param name="IsChangedSince">Whether anything was done since the latest of them; <c>null</c>: there is none.</param>
/// <param name="Failure">Why the last one that was to be made by itself was not; <c>null</c>: it was.</param>
public sealed record BookStanding(
    string Place, BookAnswer Book, BackupSettings Settings, IReadOnlyList<KeptBackup> Backups, bool? IsChangedSince, BackupFailure? Failure);

/// <summary>A backup that was to be made by itself and was not.</summary>
public sealed record BackupFailure(DateTimeOffset At, string Why);

/// <summary>What restoring a backup would do.</summary>
/// <param name="File">The backup.</param>
/// <param name="Backup">What it holds.</param>
/// <param name="Present">What the book holds.</param>
/// <param name="Common">The last deed that both have, with all before it; <c>null</c>: none.</param>
/// <param name="Lost">Deeds of the book after that, which would go.</param>
/// <param name="Gained">Deeds of the backup after that, which would come.</param>
/// <param name="LastLost">The last of those that would go, the latest first.</param>
/// <param name="IsSame">Whether the book holds just what the backup holds.</param>
/// <param name="Mark">The last deed of the book as it was compared, to be given back when it is restored.</param>
public sealed record RestoreAnswer(
    string File, BookAnswer Backup, BookAnswer Present, DeedStamp? Common, long Lost, long Gained, IReadOnlyList<DeedStamp> LastLost, bool IsSame, string Mark);

/// <summary>A book that was restored.</summary>
/// <param name="Book">What it holds now.</param>
/// <param name="Before">The backup of what it held before; <c>null</c>: it held nothing.</param>
public sealed record RestoreDone(BookAnswer Book, BackupDone? Before);

/// <summary>What was found in looking through the book; nothing in a sound one.</summary>
/// <param name="Book">What it holds.</param>
/// <param name="Checks">By what was looked at: what is wrong, in sentences.</param>
public sealed record CheckAnswer(BookAnswer Book, IReadOnlyList<(string Looked, IReadOnlyList<string> Wrong)> Checks)
{
    /// <summary>Whether nothing is wrong.</summary>
    public bool IsSound => Checks.All(c => c.Wrong.Count == 0);
}
