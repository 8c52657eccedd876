namespace Clutchwright.Stock.Import;

/// <summary>A file of records as it was read: by itself, without a look at any book.</summary>
/// <typeparam name="TField">The fields of the kind of record.</typeparam>
public abstract class TableFile<TField>
    where TField : struct, Enum
{
    private protected TableFile(MappedTable<TField> table, IReadOnlyList<RowProblem> problems) =>
        (Delimiter, Columns, Samples, Problems) = (table.Delimiter, table.Columns, table.Samples, problems);

    /// <summary>What parts the cells: comma, semicolon or tab, as the header shows.</summary>
    public char Delimiter { get; }

    /// <summary>What each column is taken for, in the order of the file.</summary>
    public IReadOnlyList<ColumnMapping<TField>> Columns { get; }

    /// <summary>By the columns, the first cell under each that is not empty; null where all are.</summary>
    public IReadOnlyList<string?> Samples { get; }

    /// <summary>What is wrong with the file or with a row taken by itself, in the order of the file.</summary>
    public IReadOnlyList<RowProblem> Problems { get; }

    /// <summary>Whether a column is taken for a field.</summary>
    internal bool Has(TField field) => Columns.Any(column => EqualityComparer<TField>.Default.Equals(column.Field, field));

    /// <summary>A problem in a row, under the header of its field.</summary>
    internal RowProblem At(int row, int line, TField? field, Problem problem, string? found)
    {
        var column = field is { } own ? Columns.FirstOrDefault(c => EqualityComparer<TField>.Default.Equals(c.Field, own)) : null;
        return new RowProblem(row, line, column?.Header, column is null ? null : found, problem);
    }
}
