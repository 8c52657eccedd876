using Clutchwright.Stock.Storage;

namespace Clutchwright.Stock.Backups;

/// <summary>Why a backup cannot be made or restored. The book is as it was.</summary>
public abstract record BackupProblem : Problem
{
    private BackupProblem()
    {
    }

    /// <summary>There is a file of that name already; a backup overwrites nothing.</summary>
    public sealed record FileThere(string File) : BackupProblem;

    /// <summary>The file cannot be written or read: no such folder, no right to it, the disk full.</summary>
    public sealed record FileUnusable(string File, string Reason) : BackupProblem;

    /// <summary>What was written, read back, is not what the book holds.</summary>
    public sealed record NotAsTheBook(string File, IReadOnlyList<string> Tables) : BackupProblem;

    /// <summary>The file is no backup of a book, or is damaged.</summary>
    public sealed record NotABackup(string File, string Reason) : BackupProblem;

    /// <summary>The backup was made by a newer program.</summary>
    public sealed record MadeByNewerProgram(string File) : BackupProblem;

    /// <summary>Something was done to the book since it was compared with the backup; that deed would be lost unseen.</summary>
    public sealed record BookChanged(DeedMark? Last) : BackupProblem;

    /// <summary>A problem of the copy of a backup, told of the file that it was copied from.</summary>
    internal static Problem OfCopy(string file, Problem problem) => problem switch
    {
        StorageProblem.MadeByNewerProgram => new MadeByNewerProgram(file),
        StorageProblem.NotABook no => new NotABackup(file, no.Reason),
        StorageProblem.DiskFailed no => new FileUnusable(file, no.Reason),
        StorageProblem.FolderUnusable no => new FileUnusable(file, no.Reason),
        _ => problem,
    };
}
