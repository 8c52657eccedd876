using System.Buffers.Binary;
using Clutchwright.Genetics.Numbers;
using Clutchwright.Stock.Animals;
using Clutchwright.Stock.Statements;

namespace Clutchwright.Stock.Import;

/// <summary>A pedigree file as it was read: by itself, without a look at any stock.</summary>
public sealed class AnimalFile : TableFile<AnimalField>
{
    public const long MaxBytes = 50L * 1024 * 1024;

    internal AnimalFile(MappedTable<AnimalField> table, IReadOnlyList<AnimalRow> rows, IReadOnlyList<RowProblem> problems)
        : base(table, problems) => Rows = rows;

    /// <summary>The fields that a column may be given to.</summary>
    public static TableFields<AnimalField> Fields => Headers.Animals;

    /// <summary>The rows without a problem of their own, in the order of the file.</summary>
    public IReadOnlyList<AnimalRow> Rows { get; }

    /// <summary>Reads a file: UTF-8 with or without a byte order mark, or UTF-16 with one.</summary>
    /// <param name="stream">The file.</param>
    /// <param name="fields">What the keeper says that columns are, by their index from 0; the others go by their header.</param>
    /// <param name="cancellation">Stops the reading.</param>
    public static async Task<AnimalFile> ReadAsync(
        Stream stream, IReadOnlyDictionary<int, AnimalField>? fields, CancellationToken cancellation)
    {
        var (text, problem) = await CsvText.ReadAsync(stream, cancellation);
        return problem is null ? Read(text, fields) : new AnimalFile(MappedTable<AnimalField>.Unreadable(Fields, problem), [], [problem]);
    }

    /// <summary>Reads the text of a file.</summary>
    /// <param name="text">The text.</param>
    /// <param name="fields">What the keeper says that columns are, by their index from 0; the others go by their header.</param>
    public static AnimalFile Read(string text, IReadOnlyDictionary<int, AnimalField>? fields = null)
    {
        ArgumentNullException.ThrowIfNull(text);
        return AnimalFileReader.Read(text, fields ?? new Dictionary<int, AnimalField>());
    }

    /// <summary>Holds the file against the rules by itself, as an empty stock would: every parent must be a row of it.</summary>
    public ImportPreview CheckAlone(CheckTradeText check)
    {
        ArgumentNullException.ThrowIfNull(check);
        return ImportCheck.RunAlone(this, check, NumberOf).Preview;
    }

    /// <summary>Takes the file for a stock of its own: its animals with their statements, as <see cref="AllAnimals"/> gives those of the
    /// book, but in the order of the file.</summary>
    /// <param name="check">Reads trade text.</param>
    /// <returns>The animals, numbered by their rows, so that the same file gives the same every time; or
    /// <see cref="ImportProblem.Refused"/> with everything that is wrong.</returns>
    public Outcome<IReadOnlyList<Animal>> ToAnimals(CheckTradeText check)
    {
        ArgumentNullException.ThrowIfNull(check);
        var (run, preview) = ImportCheck.RunAlone(this, check, NumberOf);
        return preview.Problems.Count > 0
            ? new ImportProblem.Refused(preview.Problems)
            : Outcome.Of<IReadOnlyList<Animal>>([.. run.New.Select(added => Animal.Of(
                added.Id, added.Entry, added.Row.Statements.Select((entry, index) =>
                    new Statement(new StatementId(Number(added.Row.Row, index + 1)), added.Id, entry))))]);
    }

    /// <summary>How many young an animal of <see cref="ToAnimals"/> stands for, where that is more than one.</summary>
    public IReadOnlyDictionary<AnimalId, int> Counts() => Rows.Where(row => row.Count > 1).ToDictionary(NumberOf, row => row.Count);

    /// <summary>The chances of the possible sires of animals of <see cref="ToAnimals"/>, where the file gives them; in sum 1.</summary>
    public IReadOnlyDictionary<AnimalId, IReadOnlyDictionary<AnimalId, Fraction>> SireWeights()
    {
        var rows = Rows.ToDictionary(row => Tags.Key(row.Tag), NumberOf, StringComparer.Ordinal);
        return Rows
            .Where(row => row.SireWeights.Count > 0 && row.SireTags.All(tag => rows.ContainsKey(Tags.Key(tag))))
            .ToDictionary(NumberOf, IReadOnlyDictionary<AnimalId, Fraction> (row) => row.SireTags
                .Select((tag, i) => (Sire: rows[Tags.Key(tag)], Weight: row.SireWeights[i]))
                .ToDictionary(sire => sire.Sire, sire => sire.Weight));
    }

    /// <summary>The ids of rows that have a problem: other rows may name them as parents all the same.</summary>
    internal IReadOnlyList<string> UnreadTags { get; init; } = [];

    private static AnimalId NumberOf(AnimalRow row) => new(Number(row.Row, 0));

    /// <summary>An identity that sorts by row, then by place in the row.</summary>
    private static Guid Number(int row, int place)
    {
        Span<byte> bytes = stackalloc byte[16];
        BinaryPrimitives.WriteInt32BigEndian(bytes[8..], row);
        BinaryPrimitives.WriteInt32BigEndian(bytes[12..], place);
        return new Guid(bytes, bigEndian: true);
    }
}
