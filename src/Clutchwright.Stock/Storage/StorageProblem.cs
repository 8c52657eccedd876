namespace Clutchwright.Stock.Storage;

/// <summary>Why the book cannot be opened or written.</summary>
public abstract record StorageProblem : Problem
{
    private StorageProblem()
    {
    }

    /// <summary>The data folder cannot be made, read or written.</summary>
    public sealed record FolderUnusable(string Folder, string Reason) : StorageProblem;

    /// <summary>Another program holds the file and did not let go in time.</summary>
    public sealed record Locked(string File) : StorageProblem;

    /// <summary>A newer program has changed the form of the book; this one must not touch it.</summary>
    public sealed record MadeByNewerProgram(string File) : StorageProblem
    {
        /// <summary>The changes of form that this program does not know.</summary>
        public required IReadOnlyList<string> Unknown { get; init; }
    }

    /// <summary>The file is not a book, or is damaged.</summary>
    public sealed record NotABook(string File, string Reason) : StorageProblem;

    /// <summary>The disk is full or failed.</summary>
    public sealed record DiskFailed(string File, string Reason) : StorageProblem;

    /// <summary>The place of the file cannot promise that what was acknowledged survives a power cut (a network share, say).</summary>
    public sealed record NotDurable(string File, string JournalMode, string Synchronous) : StorageProblem;

    /// <summary>The connection string cannot be read, or names no server or no database. It is not repeated: it may hold a password.</summary>
    public sealed record ConnectionUnreadable : StorageProblem;

    /// <summary>The server is not there, does not let us in, or the database is not fit for a book.</summary>
    public sealed record ServerUnusable(string Place, string Reason) : StorageProblem;

    /// <summary>The server is set so that what was acknowledged could be lost in a power cut; <c>Settings</c> are those that are off.</summary>
    public sealed record ServerNotDurable(string Place, IReadOnlyList<string> Settings) : StorageProblem;
}
