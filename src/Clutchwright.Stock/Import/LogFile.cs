using Clutchwright.Stock.Animals;
using Clutchwright.Stock.Happenings;

namespace Clutchwright.Stock.Import;

/// <summary>A file of the log as it was read: by itself, without a look at any book.</summary>
public sealed class LogFile : TableFile<LogField>
{
    private LogFile(MappedTable<LogField> table, IReadOnlyList<LogRow> rows, IReadOnlyList<RowProblem> problems)
        : base(table, problems) => Rows = rows;

    /// <summary>The fields that a column may be given to.</summary>
    public static TableFields<LogField> Fields => Headers.Log;

    /// <summary>The rows without a problem of their own, in the order of the file.</summary>
    public IReadOnlyList<LogRow> Rows { get; }

    /// <summary>Reads a file: UTF-8 with or without a byte order mark, or UTF-16 with one.</summary>
    /// <param name="stream">The file.</param>
    /// <param name="fields">What the keeper says that columns are, by their index from 0; the others go by their header.</param>
    /// <param name="cancellation">Stops the reading.</param>
    public static async Task<LogFile> ReadAsync(Stream stream, IReadOnlyDictionary<int, LogField>? fields, CancellationToken cancellation)
    {
        var (text, problem) = await CsvText.ReadAsync(stream, cancellation);
        return problem is null ? Read(text, fields) : new(MappedTable<LogField>.Unreadable(Fields, problem), [], [problem]);
    }

    /// <summary>Reads the text of a file.</summary>
    public static LogFile Read(string text, IReadOnlyDictionary<int, LogField>? fields = null)
    {
        var table = MappedTable<LogField>.Read(text, Fields, fields ?? new Dictionary<int, LogField>());
        var (rows, problems) = (new List<LogRow>(), table.Problems.ToList());
        foreach (var record in table.Records)
        {
            var cells = new RowCells<LogField>(record, table);
            var row = cells.IsWhole() ? Read(cells) : null;
            problems.AddRange(cells.Problems);
            if (row is not null && cells.Problems.Count == 0)
            {
                rows.Add(row);
            }
        }

        return new(table, rows, problems);
    }

    private static LogRow? Read(RowCells<LogField> cells)
    {
        var (animal, date) = (cells.Needed(LogField.Animal), cells.Needed(LogField.Date));
        var day = date.Length == 0 ? null : cells.Date(LogField.Date);
        var entries = Entries(cells);
        return day is null ? null : new()
        {
            Row = cells.Row,
            Line = cells.Line,
            Animal = animal,
            When = day,
            Mate = TextRules.TrimToNull(cells.Cell(LogField.Mate)),
            Clutch = TextRules.TrimToNull(cells.Cell(LogField.Clutch)),
            Entries = entries,
        };
    }

    private static List<LogEntry> Entries(RowCells<LogField> cells)
    {
        var (mass, amount) = (cells.Number(LogField.MassGrams), cells.Number(LogField.Amount));
        var (food, note) = (cells.Cell(LogField.Food), cells.Notes(LogField.Note, "; "));
        var kind = Kind(cells, cells.Cell(LogField.MassGrams).Length > 0, food.Length > 0);
        var entries = new List<LogEntry>();
        if (kind is { } what)
        {
            var isMeal = what is HappeningKind.Fed or HappeningKind.FoodRefused;
            if (food.Length > 0 && !isMeal)
            {
                cells.Add(LogField.Food, new ImportProblem.FoodNotFitting(HappeningRules.Words(what)));
            }

            var text = string.Join("; ", new[] { isMeal ? food : "", note }.Where(t => t.Length > 0));
            entries.Add(new(what, what == HappeningKind.Weighed && amount is null ? mass : amount, text));
        }

        if (mass is not null && kind != HappeningKind.Weighed)
        {
            entries.Add(new(HappeningKind.Weighed, mass, kind is null ? note : ""));
        }

        return entries;
    }

    // A mass or a food says by itself what happened.
    private static HappeningKind? Kind(RowCells<LogField> cells, bool isWeighed, bool isFed)
    {
        var text = cells.Cell(LogField.Kind);
        if (text.Length == 0)
        {
            if (!isWeighed && !isFed)
            {
                cells.Add(LogField.Kind, new ImportProblem.CellMissing(Fields.NameOf(LogField.Kind)));
            }

            return isFed ? HappeningKind.Fed : null;
        }

        var kind = KindText.Read(text);
        if (kind is null)
        {
            cells.Add(LogField.Kind, new HappeningProblem.KindUnknown(TextRules.Shorten(text, 60)));
        }

        return kind;
    }
}
