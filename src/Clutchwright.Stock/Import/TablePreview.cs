namespace Clutchwright.Stock.Import;

/// <summary>What would become of a row.</summary>
public enum RowFate
{
    /// <summary>It becomes a new record.</summary>
    New = 1,

    /// <summary>The book has the record with everything the row says, so it is passed over.</summary>
    AlreadyThere = 2,

    /// <summary>It cannot be taken; the problems of its row say why.</summary>
    Refused = 3,
}

/// <summary>What an import would do, before anything is written.</summary>
/// <typeparam name="TRow">A row as it was read.</typeparam>
public class TablePreview<TRow>
    where TRow : class
{
    internal TablePreview(IReadOnlyList<(TRow Row, RowFate Fate)> rows, IReadOnlyList<RowProblem> problems) => (Rows, Problems) = (rows, problems);

    /// <summary>Each row that could be read, in the order of the file.</summary>
    public IReadOnlyList<(TRow Row, RowFate Fate)> Rows { get; }

    /// <summary>Everything that is wrong, by row. Nothing is imported while there is any.</summary>
    public IReadOnlyList<RowProblem> Problems { get; }

    public int NewCount => Rows.Count(row => row.Fate == RowFate.New);

    public int AlreadyThereCount => Rows.Count(row => row.Fate == RowFate.AlreadyThere);

    public bool CanImport => Problems.Count == 0 && NewCount > 0;
}
