using System.Text;
using Clutchwright.Genetics.Loci;
using Clutchwright.Stock.Animals;
using Clutchwright.Stock.Export;
using Clutchwright.Stock.History;
using Clutchwright.Stock.Import;
using Clutchwright.Stock.Statements;
using Clutchwright.Stock.Storage;
using Xunit;

namespace Clutchwright.Stock.Tests.Testing;

/// <summary>A book in a place of its own that goes when the test ends. The trade text "?" cannot be read, all other can.</summary>
internal sealed class TestBook : IDisposable
{
    public const string Who = "Keeper";

    private const string Memory = "/dev/shm";

    private readonly TestPlace _place;

    private TestBook(TestPlace place, Book book, SqlLog log)
    {
        _place = place;
        Book = book;
        Log = log;
    }

    public BookPlace Place => _place.Place;

    public Book Book { get; }

    public SqlLog Log { get; }

    public static CancellationToken Cancellation => Xunit.TestContext.Current.CancellationToken;

    /// <summary>A folder for one test: in memory where the system has a place for that, since every deed waits for the disk.</summary>
    public static string NewFolder() => Directory.Exists(Memory)
        ? Directory.CreateDirectory(Path.Combine(Memory, $"clutchwright-test-{Guid.CreateVersion7():N}")).FullName
        : Directory.CreateTempSubdirectory("clutchwright-test-").FullName;

    public static TradeTextProblem? Check(string column, string text) =>
        text == "?" ? new TradeTextProblem($"no such gene in {column}", "Pastel", 0) : null;

    public static async Task<TestBook> NewAsync()
    {
        var place = await TestPlace.NewAsync();
        var log = new SqlLog();
        var book = await Book.OpenAsync(place.Place, new FakeClock(), [log], Cancellation);
        return new TestBook(place, book.Expect(), log);
    }

    public static AnimalEntry Entry(
        string tag,
        Sex? sex = null,
        Animal? sire = null,
        Animal? dam = null,
        string? hatched = null,
        AnimalStatus status = AnimalStatus.Kept,
        params Animal[] possibleSires) => new()
        {
            Tag = tag,
            Sex = sex,
            SireId = sire?.AnimalId,
            DamId = dam?.AnimalId,
            Hatched = hatched is null ? null : DateRange.Read(hatched).Expect(),
            Status = status,
            PossibleSires = [.. possibleSires.Select(p => p.AnimalId)],
        };

    public Task<Outcome<Animal>> TryAddAsync(AnimalEntry entry, params StatementEntry[] statements) =>
        new AddAnimal(Book, Check).RunAsync(entry, statements, Who, Cancellation);

    public async Task<Animal> AddAsync(
        string tag, Sex? sex = null, Animal? sire = null, Animal? dam = null, string? hatched = null, params Animal[] possibleSires) =>
        (await TryAddAsync(Entry(tag, sex, sire, dam, hatched, possibleSires: possibleSires))).Expect();

    public Task<Outcome<Animal>> TryEditAsync(Animal animal, AnimalEntry entry) =>
        new EditAnimal(Book).RunAsync(animal.AnimalId, animal.Version, entry, Who, Cancellation);

    public Task<Outcome<Animal>> TryBinAsync(Animal animal) => new BinAnimal(Book).RunAsync(animal.AnimalId, Who, Cancellation);

    public Task<Outcome<Animal>> TryRestoreAsync(Animal animal) => new RestoreAnimal(Book).RunAsync(animal.AnimalId, Who, Cancellation);

    public Task<Outcome<Statement>> TrySayAsync(Animal animal, StatementEntry entry) =>
        new AddStatement(Book, Check).RunAsync(animal.AnimalId, entry, Who, Cancellation);

    public async Task<Statement> SayAsync(Animal animal, StatementKind kind, string text) =>
        (await TrySayAsync(animal, new StatementEntry { Kind = kind, Text = text })).Expect();

    public Task<Outcome<Statement>> TryWithdrawAsync(Statement statement) =>
        new WithdrawStatement(Book).RunAsync(statement.StatementId, Who, Cancellation);

    public Task<Outcome<DeedLine>> TryUndoAsync(DeedId deed) => new UndoDeed(Book).RunAsync(deed, Who, Cancellation);

    /// <summary>Undoes the latest deed.</summary>
    public async Task<DeedLine> UndoLastAsync() => (await TryUndoAsync((await DeedsAsync())[0].DeedId)).Expect();

    public async Task<IReadOnlyList<DeedLine>> DeedsAsync() => (await new ListDeeds(Book).RunAsync(1000, null, Cancellation)).Expect();

    public async Task<AnimalRecord> FindAsync(Animal animal) => (await new FindAnimal(Book).RunAsync(animal.AnimalId, Cancellation)).Expect();

    public async Task<AnimalRecord> FindAsync(string tag) => (await new FindAnimal(Book).RunAsync(tag, Cancellation)).Expect();

    public async Task<AnimalPage> ListAsync(AnimalFilter? filter = null) =>
        (await new ListAnimals(Book).RunAsync(filter ?? new AnimalFilter(), Cancellation)).Expect();

    public async Task<IReadOnlyList<Animal>> AllAsync() => (await new AllAnimals(Book).RunAsync(Cancellation)).Expect();

    public Task<Outcome<ImportPreview>> PreviewAsync(string text, IReadOnlyDictionary<int, AnimalField>? fields = null) =>
        PreviewAsync(Encoding.UTF8.GetBytes(text), fields);

    public async Task<Outcome<ImportPreview>> PreviewAsync(byte[] bytes, IReadOnlyDictionary<int, AnimalField>? fields = null)
    {
        using var stream = new MemoryStream(bytes);
        return await new ReadAnimalFile(Book, Check).RunAsync(stream, fields, Cancellation);
    }

    public Task<Outcome<ImportResult>> TryImportAsync(string text) =>
        new ImportAnimals(Book, Check).RunAsync(AnimalFile.Read(text), "test.csv", Who, Cancellation);

    public async Task<string> ExportAsync()
    {
        await using var writer = new StringWriter();
        (await new ExportAnimals(Book).RunAsync(writer, Cancellation)).Expect();
        return writer.ToString();
    }

    /// <summary>Everything in the book but its history, as text.</summary>
    public async Task<string> StateAsync()
    {
        await using var db = Book.NewContext();
        var records = new object[][]
        {
            [.. db.Animals], [.. db.Statements], [.. db.Seasons], [.. db.Routes], [.. db.Happenings], [.. db.Clutches], [.. db.Incubators], [.. db.Readings], [.. db.Photos], [.. db.Settings],
        };
        Assert.Equal(Enum.GetValues<RecordKind>().Length, records.Length);
        return string.Join('\n', records.Zip(
                [RecordKind.Animal, RecordKind.Statement, RecordKind.Season, RecordKind.Route, .. Enum.GetValues<RecordKind>()[4..]],
                (of, kind) => of.Select(RecordForms.Of(kind).Write))
            .SelectMany(texts => texts)
            .Order(StringComparer.Ordinal));
    }

    public void Dispose()
    {
        Book.Dispose();
        _place.Dispose();
    }
}
