namespace Clutchwright.Stock.Export;

/// <summary>Something wrong in a file of the whole book.</summary>
/// <param name="File">The file, or which one of those in the ZIP.</param>
/// <param name="Place">Where in it: <c>line 5, animals[3].sex</c>; null: the file as a whole.</param>
/// <param name="Reason">What is wrong, and what would be right.</param>
public sealed record BookFileFault(string File, string? Place, string Reason)
{
    public override string ToString() => Place is null ? $"{File}: {Reason}" : $"{File}, {Place}: {Reason}";
}

/// <summary>Why the whole book cannot be written to a file or read from one. Nothing was written.</summary>
public abstract record BookFileProblem : Problem
{
    private BookFileProblem()
    {
    }

    /// <summary>There is a file of that name already; nothing is overwritten.</summary>
    public sealed record FileThere(string File) : BookFileProblem;

    /// <summary>The file cannot be written or read: no such folder, no right to it, the disk full.</summary>
    public sealed record FileUnusable(string File, string Reason) : BookFileProblem;

    /// <summary>The file cannot be taken; the first faults that were found, at most <see cref="MostTold"/>.</summary>
    public sealed record Refused(IReadOnlyList<BookFileFault> Faults) : BookFileProblem
    {
        /// <summary>At most so many faults are told.</summary>
        public const int MostTold = 20;

        public override string ToString() => $"Refused: {string.Join("; ", Faults)}";
    }

    /// <summary>The JSON names photos, and their pictures are in a ZIP only.</summary>
    public sealed record PhotosMissing(int Photos) : BookFileProblem;

    /// <summary>The book holds something already.</summary>
    public sealed record BookNotEmpty(long Animals, long Deeds) : BookFileProblem;
}
