using Clutchwright.Stock.Animals;

namespace Clutchwright.Stock.Import;

/// <summary>The list in a set of photos, which says of whom each picture is and when it was taken.</summary>
public sealed class PhotoListFile : TableFile<PhotoField>
{
    private PhotoListFile(MappedTable<PhotoField> table, IReadOnlyList<PhotoRow> rows, IReadOnlyList<RowProblem> problems)
        : base(table, problems) => Rows = rows;

    /// <summary>The fields that a column may be given to.</summary>
    public static TableFields<PhotoField> Fields => Headers.Photos;

    /// <summary>The rows without a problem of their own, in the order of the file.</summary>
    public IReadOnlyList<PhotoRow> Rows { get; }

    /// <summary>Reads a file: UTF-8 with or without a byte order mark, or UTF-16 with one.</summary>
    /// <param name="stream">The file.</param>
    /// <param name="fields">What the keeper says that columns are, by their index from 0; the others go by their header.</param>
    /// <param name="cancellation">Stops the reading.</param>
    public static async Task<PhotoListFile> ReadAsync(Stream stream, IReadOnlyDictionary<int, PhotoField>? fields, CancellationToken cancellation)
    {
        var (text, problem) = await CsvText.ReadAsync(stream, cancellation);
        return problem is null ? Read(text, fields) : new(MappedTable<PhotoField>.Unreadable(Fields, problem), [], [problem]);
    }

    /// <summary>Reads the text of a file.</summary>
    public static PhotoListFile Read(string text, IReadOnlyDictionary<int, PhotoField>? fields = null)
    {
        var table = MappedTable<PhotoField>.Read(text, Fields, fields ?? new Dictionary<int, PhotoField>());
        var (rows, problems) = (new List<PhotoRow>(), table.Problems.ToList());
        var firstRowOf = new Dictionary<string, int>(StringComparer.OrdinalIgnoreCase);
        foreach (var record in table.Records)
        {
            var cells = new RowCells<PhotoField>(record, table);
            if (cells.IsWhole())
            {
                var row = new PhotoRow(cells.Row, cells.Line, cells.Needed(PhotoField.File), cells.Needed(PhotoField.Animal), cells.Date(PhotoField.Date), cells.Notes(PhotoField.Note, "; "));
                if (row.File.Length > 0 && !firstRowOf.TryAdd(row.File, row.Row))
                {
                    cells.Add(PhotoField.File, new ImportProblem.RowTwice(firstRowOf[row.File]));
                }

                if (cells.Problems.Count == 0)
                {
                    rows.Add(row);
                }
            }

            problems.AddRange(cells.Problems);
        }

        return new(table, rows, problems);
    }
}

/// <summary>What the list says of a picture.</summary>
/// <param name="Row">As a spreadsheet counts: the header is row 1.</param>
/// <param name="Line">As a text editor counts, from 1.</param>
/// <param name="File">The picture's name in the set.</param>
/// <param name="Animal">The animal's id.</param>
/// <param name="Taken">When it was taken; null: not said.</param>
/// <param name="Note">What is said of it.</param>
public sealed record PhotoRow(int Row, int Line, string File, string Animal, DateRange? Taken, string Note);
