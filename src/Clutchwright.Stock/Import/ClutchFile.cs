using Clutchwright.Stock.Animals;
using Clutchwright.Stock.Clutches;

namespace Clutchwright.Stock.Import;

/// <summary>A file of clutches as it was read: by itself, without a look at any book.</summary>
public sealed class ClutchFile : TableFile<ClutchField>
{
    private ClutchFile(MappedTable<ClutchField> table, IReadOnlyList<ClutchRow> rows, IReadOnlyList<RowProblem> problems)
        : base(table, problems) => Rows = rows;

    /// <summary>The fields that a column may be given to.</summary>
    public static TableFields<ClutchField> Fields => Headers.Clutches;

    /// <summary>The rows without a problem of their own, in the order of the file.</summary>
    public IReadOnlyList<ClutchRow> Rows { get; }

    /// <summary>Reads a file: UTF-8 with or without a byte order mark, or UTF-16 with one.</summary>
    /// <param name="stream">The file.</param>
    /// <param name="fields">What the keeper says that columns are, by their index from 0; the others go by their header.</param>
    /// <param name="cancellation">Stops the reading.</param>
    public static async Task<ClutchFile> ReadAsync(Stream stream, IReadOnlyDictionary<int, ClutchField>? fields, CancellationToken cancellation)
    {
        var (text, problem) = await CsvText.ReadAsync(stream, cancellation);
        return problem is null ? Read(text, fields) : new(MappedTable<ClutchField>.Unreadable(Fields, problem), [], [problem]);
    }

    /// <summary>Reads the text of a file.</summary>
    public static ClutchFile Read(string text, IReadOnlyDictionary<int, ClutchField>? fields = null)
    {
        var table = MappedTable<ClutchField>.Read(text, Fields, fields ?? new Dictionary<int, ClutchField>());
        var (rows, problems) = (new List<ClutchRow>(), table.Problems.ToList());
        var firstRowOf = new Dictionary<string, int>(StringComparer.Ordinal);
        foreach (var record in table.Records)
        {
            var cells = new RowCells<ClutchField>(record, table);
            var row = cells.IsWhole() ? Read(cells) : null;
            if (row?.Tag is { } tag && !firstRowOf.TryAdd(Tags.Key(tag), row.Row))
            {
                cells.Add(ClutchField.Tag, new ImportProblem.IdTwice(tag, firstRowOf[Tags.Key(tag)]));
            }

            problems.AddRange(cells.Problems);
            if (row is not null && cells.Problems.Count == 0)
            {
                rows.Add(row);
            }
        }

        return new(table, rows, problems);
    }

    private static ClutchRow? Read(RowCells<ClutchField> cells)
    {
        var (tag, dam, laid) = (cells.Cell(ClutchField.Tag), cells.Needed(ClutchField.Dam), cells.Needed(ClutchField.Laid));
        if (tag.Length > 0 && !Tags.IsValid(tag))
        {
            cells.Add(ClutchField.Tag, new ClutchProblem.TagInvalid(tag));
        }

        if (dam.Contains(Tags.Separator, StringComparison.Ordinal))
        {
            cells.Add(ClutchField.Dam, new ImportProblem.SeveralDams(dam));
        }

        var counted = CountedText.Read(cells.Cell(ClutchField.Counted), out var unread);
        foreach (var line in unread)
        {
            cells.Add(ClutchField.Counted, new ImportProblem.CountedUnreadable(line));
        }

        var day = laid.Length == 0 ? null : cells.Date(ClutchField.Laid);
        return day is null ? null : new()
        {
            Row = cells.Row,
            Line = cells.Line,
            Tag = tag.Length == 0 ? null : tag,
            Dam = dam,
            Sires = TagsOf(cells.Cell(ClutchField.Sire)),
            Laid = day,
            GoodEggs = cells.Eggs(ClutchField.Eggs),
            Slugs = cells.Eggs(ClutchField.Slugs),
            Lost = cells.Eggs(ClutchField.Lost),
            MassGrams = cells.Number(ClutchField.MassGrams),
            Incubator = TextRules.TrimToNull(cells.Cell(ClutchField.Incubator)),
            Hatched = cells.Date(ClutchField.Hatched),
            Counted = counted,
            Young = TagsOf(cells.Cell(ClutchField.Young)),
            Notes = cells.Notes(ClutchField.Notes, "\n"),
        };
    }

    private static string[] TagsOf(string text) =>
        [.. text.Split(Tags.Separator, StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries).DistinctBy(Tags.Key)];
}
