using System.Globalization;
using System.Text.Json;
using Clutchwright.Genetics.Loci;
using Clutchwright.Stock.Animals;
using Clutchwright.Stock.Export;
using Clutchwright.Stock.Statements;

namespace Clutchwright.Stock.Import;

/// <summary>Reads one row of a pedigree file and collects everything that is wrong with it.</summary>
internal sealed class AnimalRowReader(
    CsvRecord record, IReadOnlyList<ColumnMapping> columns, IReadOnlyDictionary<string, string> spelling)
{
    private readonly List<RowProblem> _problems = [];

    public IReadOnlyList<RowProblem> Problems => _problems;

    /// <summary>The id of the row, once it is read; null if there is none.</summary>
    public string? Tag { get; private set; }

    /// <returns>The animal; null if anything is wrong.</returns>
    public AnimalRow? Read()
    {
        if (record.Problem is not null)
        {
            _problems.Add(new RowProblem(record.Row, record.Line, null, null, record.Problem));
            return null;
        }

        if (record.Cells.Count != columns.Count)
        {
            _problems.Add(new RowProblem(
                record.Row, record.Line, null, null, new ImportProblem.CellCount(record.Cells.Count, columns.Count)));
            return null;
        }

        var tag = Cell(AnimalField.Tag);
        if (tag.Length == 0)
        {
            Add(AnimalField.Tag, new ImportProblem.IdMissing());
        }
        else if (!Tags.IsValid(tag))
        {
            Add(AnimalField.Tag, new AnimalProblem.TagInvalid(tag));
        }
        else
        {
            Tag = tag;
        }

        var sires = ReadSires();
        var row = new AnimalRow
        {
            Row = record.Row,
            Line = record.Line,
            Tag = tag,
            Name = TextRules.TrimToNull(Cell(AnimalField.Name)),
            Sex = ReadSex(),
            SireTags = sires.Tags,
            SireWeights = sires.Weights,
            Dam = ReadDam(),
            Hatched = ReadHatched(),
            Status = ReadStatus(),
            MassGrams = ReadMass(),
            Count = ReadCount(),
            Notes = ReadNotes(),
            Statements = ReadStatements(),
        };
        return _problems.Count == 0 ? row : null;
    }

    public RowProblem At(AnimalField field, Problem problem) => At(record.Row, record.Line, field, problem, columns, Cell(field));

    public static RowProblem At(
        int row, int line, AnimalField? field, Problem problem, IReadOnlyList<ColumnMapping> columns, string? found)
    {
        var column = field is null ? null : columns.FirstOrDefault(c => c.Field == field);
        return new RowProblem(row, line, column?.Header, column is null ? null : found, problem);
    }

    private void Add(AnimalField field, Problem problem) => _problems.Add(At(field, problem));

    public string Cell(AnimalField field) =>
        columns.FirstOrDefault(column => column.Field == field) is { } mapping && mapping.Index < record.Cells.Count
            ? CellAt(mapping.Index)
            : "";

    private string CellAt(int index) => SpreadsheetCell.Unprotect(record.Cells[index].Trim()).Trim();

    private Sex? ReadSex()
    {
        var text = Cell(AnimalField.Sex);
        switch (text.ToUpperInvariant())
        {
            case "M" or "MALE" or "1.0":
                return Sex.Male;
            case "F" or "FEMALE" or "0.1":
                return Sex.Female;
            case "" or "U" or "UNSEXED" or "UNKNOWN" or "?" or "0.0.1":
                return null;
            default:
                Add(AnimalField.Sex, new AnimalProblem.SexUnknown(text));
                return null;
        }
    }

    private SireCell ReadSires()
    {
        var read = SireCell.Read(Cell(AnimalField.Sire), Spelt);
        if (!read.IsDone)
        {
            Add(AnimalField.Sire, read.Problem);
            return new([], []);
        }

        return read.Value;
    }

    private string? ReadDam()
    {
        var text = Cell(AnimalField.Dam);
        if (text.Contains(Tags.Separator, StringComparison.Ordinal))
        {
            Add(AnimalField.Dam, new ImportProblem.SeveralDams(text));
            return null;
        }

        return text.Length == 0 ? null : Spelt(text);
    }

    private string Spelt(string tag) => spelling.GetValueOrDefault(Tags.Key(tag), tag);

    private DateRange? ReadHatched()
    {
        var text = Cell(AnimalField.Hatched);
        if (text.Length == 0)
        {
            return null;
        }

        var read = DateRange.Read(text);
        if (!read.IsDone)
        {
            Add(AnimalField.Hatched, read.Problem);
        }

        return read.Value;
    }

    private AnimalStatus ReadStatus()
    {
        var text = Cell(AnimalField.Status);
        if (text.Length == 0)
        {
            return AnimalStatus.Kept;
        }

        if (StatusWords.Read(text) is { } status)
        {
            return status;
        }

        Add(AnimalField.Status, new AnimalProblem.StatusUnknown(text));
        return AnimalStatus.Kept;
    }

    private double? ReadMass()
    {
        var text = Cell(AnimalField.MassGrams);
        if (text.Length == 0)
        {
            return null;
        }

        // A file is written the same everywhere: a point before decimals, nothing between thousands.
        if (!double.TryParse(text, NumberStyles.AllowDecimalPoint | NumberStyles.AllowExponent, CultureInfo.InvariantCulture, out var mass))
        {
            Add(AnimalField.MassGrams, new AnimalProblem.MassUnreadable(text));
            return null;
        }

        return mass;
    }

    private int ReadCount()
    {
        var text = Cell(AnimalField.Count);
        if (text.Length == 0)
        {
            return 1;
        }

        if (int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out var count) && count is >= 1 and <= AnimalRow.MaxCount)
        {
            return count;
        }

        Add(AnimalField.Count, new ImportProblem.CountUnreadable(text, AnimalRow.MaxCount));
        return 1;
    }

    private string ReadNotes()
    {
        var notes = new List<string>();
        if (Cell(AnimalField.Notes) is { Length: > 0 } own)
        {
            notes.Add(own);
        }

        notes.AddRange(columns
            .Where(column => column.Field == AnimalField.KeptAsNote && CellAt(column.Index).Length > 0)
            .Select(column => column.Header.Length == 0 ? CellAt(column.Index) : $"{column.Header}: {CellAt(column.Index)}"));
        return string.Join('\n', notes);
    }

    private List<StatementEntry> ReadStatements()
    {
        var statements = new List<StatementEntry>();
        foreach (var (field, kind) in new[]
        {
            (AnimalField.Seen, StatementKind.Seen), (AnimalField.Told, StatementKind.Told), (AnimalField.RuledOut, StatementKind.RuledOut),
        })
        {
            if (Cell(field) is { Length: > 0 } text)
            {
                statements.Add(new StatementEntry { Kind = kind, Text = text }.Tidy());
            }
        }

        if (Cell(AnimalField.Statements) is { Length: > 0 } others)
        {
            try
            {
                statements.AddRange(StatementCells.ReadOthers(others).Select(statement => statement.Tidy()));
            }
            catch (JsonException exception)
            {
                Add(AnimalField.Statements, new ImportProblem.StatementsUnreadable(exception.Message));
            }
        }

        return statements;
    }
}
