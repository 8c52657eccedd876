using System.Buffers.Binary;
using System.Text;
using Clutchwright.Genetics.Numbers;
using Clutchwright.Stock.Animals;
using Clutchwright.Stock.Statements;

namespace Clutchwright.Stock.Import;

/// <summary>A pedigree file as it was read: by itself, without a look at any stock.</summary>
public sealed class AnimalFile
{
    public const long MaxBytes = 50L * 1024 * 1024;

    internal AnimalFile(
        char delimiter, IReadOnlyList<ColumnMapping> columns, IReadOnlyList<AnimalRow> rows, IReadOnlyList<RowProblem> problems)
    {
        Delimiter = delimiter;
        Columns = columns;
        Rows = rows;
        Problems = problems;
    }

    /// <summary>What parts the cells: comma, semicolon or tab, as the header shows.</summary>
    public char Delimiter { get; }

    /// <summary>What each column is taken for, in the order of the file.</summary>
    public IReadOnlyList<ColumnMapping> Columns { get; }

    /// <summary>By the columns, the first cell under each that is not empty; null where all are.</summary>
    public IReadOnlyList<string?> Samples { get; internal init; } = [];

    /// <summary>The rows without a problem of their own, in the order of the file.</summary>
    public IReadOnlyList<AnimalRow> Rows { get; }

    /// <summary>What is wrong with the file or with a row taken by itself, in the order of the file.</summary>
    public IReadOnlyList<RowProblem> Problems { get; }

    /// <summary>Reads a file: UTF-8 with or without a byte order mark, or UTF-16 with one.</summary>
    /// <param name="stream">The file.</param>
    /// <param name="fields">What the keeper says that columns are, by their index from 0; the others go by their header.</param>
    /// <param name="cancellation">Stops the reading.</param>
    public static async Task<AnimalFile> ReadAsync(
        Stream stream, IReadOnlyDictionary<int, AnimalField>? fields, CancellationToken cancellation)
    {
        ArgumentNullException.ThrowIfNull(stream);
        using var bytes = new MemoryStream();
        var buffer = new byte[64 * 1024];
        int read;
        while ((read = await stream.ReadAsync(buffer, cancellation)) > 0)
        {
            if (bytes.Length + read > MaxBytes)
            {
                return Unreadable(0, new ImportProblem.TooLarge(MaxBytes));
            }

            bytes.Write(buffer, 0, read);
        }

        var content = bytes.GetBuffer().AsMemory(0, (int)bytes.Length);
        return Decode(content.Span, out var text, out var line)
            ? Read(text, fields)
            : Unreadable(line, new ImportProblem.NotUtf8());
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

    internal static AnimalFile Unreadable(int line, ImportProblem problem) =>
        new(',', [], [], [new RowProblem(0, line, null, null, problem)]);

    private static AnimalId NumberOf(AnimalRow row) => new(Number(row.Row, 0));

    /// <summary>An identity that sorts by row, then by place in the row.</summary>
    private static Guid Number(int row, int place)
    {
        Span<byte> bytes = stackalloc byte[16];
        BinaryPrimitives.WriteInt32BigEndian(bytes[8..], row);
        BinaryPrimitives.WriteInt32BigEndian(bytes[12..], place);
        return new Guid(bytes, bigEndian: true);
    }

    internal static bool Decode(ReadOnlySpan<byte> bytes, out string text, out int badLine)
    {
        var encoding = bytes switch
        {
            [0xFF, 0xFE, ..] => new UnicodeEncoding(bigEndian: false, byteOrderMark: true, throwOnInvalidBytes: true),
            [0xFE, 0xFF, ..] => new UnicodeEncoding(bigEndian: true, byteOrderMark: true, throwOnInvalidBytes: true),
            _ => (Encoding)new UTF8Encoding(encoderShouldEmitUTF8Identifier: true, throwOnInvalidBytes: true),
        };
        var body = bytes.StartsWith(encoding.Preamble) ? bytes[encoding.Preamble.Length..] : bytes;
        try
        {
            text = encoding.GetString(body);
            badLine = 0;
            return true;
        }
        catch (DecoderFallbackException exception)
        {
            var before = body[..Math.Clamp(exception.Index, 0, body.Length)];
            text = "";
            badLine = 1 + before.Count((byte)'\n');
            return false;
        }
    }
}
