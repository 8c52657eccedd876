namespace Clutchwright.Stock.Import;

/// <summary>What an import of animals would do, before anything is written.</summary>
public sealed class ImportPreview : TablePreview<AnimalRow>
{
    internal ImportPreview(AnimalFile file, IReadOnlyDictionary<int, RowFate> fates, IReadOnlyList<RowProblem> problems)
        : base([.. file.Rows.Select(row => (row, fates[row.Row]))], problems) => File = file;

    /// <summary>The file as it was read, with the mapping of its columns.</summary>
    public AnimalFile File { get; }
}
