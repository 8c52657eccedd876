namespace Clutchwright.Stock.Import;

/// <summary>What would become of a row.</summary>
public enum RowFate
{
    /// <summary>It becomes a new animal.</summary>
    New = 1,

    /// <summary>The stock has this animal with everything the row says, so it is passed over.</summary>
    AlreadyThere = 2,

    /// <summary>It cannot be taken; the problems of its row say why.</summary>
    Refused = 3,
}

/// <summary>What an import would do, before anything is written.</summary>
public sealed class ImportPreview
{
    internal ImportPreview(AnimalFile file, IReadOnlyDictionary<int, RowFate> fates, IReadOnlyList<RowProblem> problems)
    {
        File = file;
        Rows = [.. file.Rows.Select(row => (row, fates[row.Row]))];
        Problems = problems;
    }

    /// <summary>The file as it was read, with the mapping of its columns.</summary>
    public AnimalFile File { get; }

    /// <summary>Each row that could be read, in the order of the file.</summary>
    public IReadOnlyList<(AnimalRow Row, RowFate Fate)> Rows { get; }

    /// <summary>Everything that is wrong, by row. Nothing is imported while there is any.</summary>
    public IReadOnlyList<RowProblem> Problems { get; }

    public int NewCount => Rows.Count(row => row.Fate == RowFate.New);

    public int AlreadyThereCount => Rows.Count(row => row.Fate == RowFate.AlreadyThere);

    public bool CanImport => Problems.Count == 0 && NewCount > 0;
}
