namespace Clutchwright.Stock.Backups;

/// <summary>What would become of the book if a backup were restored.</summary>
/// <param name="Backup">What the backup holds.</param>
/// <param name="Present">What the book holds.</param>
/// <param name="Common">The last deed that both have, with all before it; null: they have none in common.</param>
/// <param name="Lost">How many deeds of the book come after that; they would go.</param>
/// <param name="Gained">How many deeds of the backup come after that; they would come.</param>
/// <param name="LastLost">The last of the deeds that would go, the latest first.</param>
public sealed record RestorePreview(
    BookContents Backup, BookContents Present, DeedMark? Common, long Lost, long Gained, IReadOnlyList<DeedMark> LastLost)
{
    /// <summary>At most so many deeds are named.</summary>
    public const int MostNamed = 20;

    /// <summary>Whether the book holds just what the backup holds.</summary>
    public bool IsSame => Backup.Digest == Present.Digest;
}

/// <summary>A book that was restored: what it holds now, and the backup of what it held before; null if it held nothing.</summary>
public sealed record Restored(BookContents Contents, BackupMade? Before);
