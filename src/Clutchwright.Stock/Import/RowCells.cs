using System.Globalization;
using Clutchwright.Stock.Animals;
using Clutchwright.Stock.Export;

namespace Clutchwright.Stock.Import;

/// <summary>The cells of one row by their fields, and everything that is found wrong with them.</summary>
/// <typeparam name="TField">The fields of the kind of record.</typeparam>
internal sealed class RowCells<TField>(CsvRecord record, MappedTable<TField> table)
    where TField : struct, Enum
{
    private readonly List<RowProblem> _problems = [];

    public int Row => record.Row;

    public int Line => record.Line;

    public IReadOnlyList<RowProblem> Problems => _problems;

    /// <summary>Whether the row can be read at all; if not, that is its one problem.</summary>
    public bool IsWhole()
    {
        var problem = record.Problem ?? (record.Cells.Count == table.Columns.Count ? null : new ImportProblem.CellCount(record.Cells.Count, table.Columns.Count));
        if (problem is not null)
        {
            _problems.Add(new RowProblem(record.Row, record.Line, null, null, problem));
        }

        return problem is null;
    }

    /// <summary>The cell of a field, without what protects it in a spreadsheet; empty where there is none.</summary>
    public string Cell(TField field) => table.IndexOf(field) is { } index && index < record.Cells.Count ? CellAt(index) : "";

    /// <summary>The cell of a field that every row must have.</summary>
    public string Needed(TField field)
    {
        var text = Cell(field);
        if (text.Length == 0)
        {
            Add(field, new ImportProblem.CellMissing(table.Fields.NameOf(field)));
        }

        return text;
    }

    /// <summary>The cell of a field, and the cells of the columns that are kept as notes under their headers.</summary>
    public string Notes(TField field, string between) => string.Join(between, new[] { Cell(field) }
        .Concat(table.Kept.Select(column => CellAt(column.Index) is { Length: > 0 } text ? $"{column.Header}: {text}" : ""))
        .Where(text => text.Length > 0));

    /// <summary>A date as exactly as it is known; null: the cell is empty, or is none and the problem is noted.</summary>
    public DateRange? Date(TField field)
    {
        var text = Cell(field);
        if (text.Length == 0)
        {
            return null;
        }

        var read = DateRange.Read(text);
        if (!read.IsDone)
        {
            Add(field, read.Problem);
        }

        return read.Value;
    }

    /// <summary>A mass, or another number that may have decimals; null: the cell is empty, or is none and the problem is noted.</summary>
    public double? Number(TField field)
    {
        var text = Cell(field);
        if (text.Length == 0)
        {
            return null;
        }

        // What the program itself wrote may have an exponent.
        if (NumberText.Read(text) is not { } number && !double.TryParse(text, NumberStyles.AllowDecimalPoint | NumberStyles.AllowExponent, CultureInfo.InvariantCulture, out number))
        {
            Add(field, new AnimalProblem.MassUnreadable(text));
            return null;
        }

        return number;
    }

    /// <summary>A number of eggs; null: the cell is empty, or is none and the problem is noted.</summary>
    public int? Eggs(TField field)
    {
        var text = Cell(field);
        if (text.Length == 0)
        {
            return null;
        }

        if (int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out var number))
        {
            return number;
        }

        Add(field, new ImportProblem.EggsUnreadable(text));
        return null;
    }

    public void Add(TField field, Problem problem) => _problems.Add(At(field, problem));

    public RowProblem At(TField field, Problem problem) =>
        new(record.Row, record.Line, table.IndexOf(field) is { } index ? table.Columns[index].Header : null, table.IndexOf(field) is null ? null : Cell(field), problem);

    private string CellAt(int index) => SpreadsheetCell.Unprotect(record.Cells[index].Trim()).Trim();
}
