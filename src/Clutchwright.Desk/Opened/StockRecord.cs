using Clutchwright.Pedigrees.Beliefs;
using Clutchwright.Stock.Animals;
using Clutchwright.Stock.Clutches;
using Clutchwright.Stock.Statements;

namespace Clutchwright.Desk.Opened;

/// <summary>All that is recorded of a stock, in the terms of genetics.</summary>
internal sealed class StockRecord
{
    private readonly Dictionary<AnimalId, RecordEntry> _byId;

    private readonly IReadOnlyDictionary<AnimalId, int>? _counts;

    private readonly SireChances _sireWeights;

    private StockRecord(
        OpenCatalogue catalogue,
        IReadOnlyList<RecordEntry> entries,
        IReadOnlyList<RecordEntry>? counted = null,
        IReadOnlyDictionary<AnimalId, int>? counts = null,
        SireChances? sireWeights = null)
    {
        IReadOnlyList<RecordEntry> all = counted is { Count: > 0 } ? [.. entries, .. counted] : entries;
        _counts = counts;
        _sireWeights = sireWeights ?? SireChances.None;
        Catalogue = catalogue;
        Entries = entries;
        _byId = all.ToDictionary(e => e.Animal.AnimalId);
        Animals = [.. all.Select(e => Recorded(e))];
    }

    /// <summary>Gets the catalogue the statements were read with.</summary>
    public OpenCatalogue Catalogue { get; }

    /// <summary>Gets the animals with their statements, in the order of the book.</summary>
    public IReadOnlyList<RecordEntry> Entries { get; }

    /// <summary>Gets the clutches of the book.</summary>
    public IReadOnlyList<Clutch> Clutches { get; private init; } = [];

    /// <summary>Gets the same in the terms of genetics, in the same order; behind them young of which only the number was kept.</summary>
    public IReadOnlyList<RecordedAnimal> Animals { get; }

    /// <summary>The key of an animal in a pedigree.</summary>
    public static string Key(AnimalId id) => id.Value.ToString("N");

    /// <summary>Reads all statements; those that were read before are not read again.</summary>
    public static StockRecord Of(OpenCatalogue catalogue, IReadOnlyList<Animal> animals, IReadOnlyList<Clutch> clutches, StockState? before)
    {
        var earlier = before is not null && ReferenceEquals(before.Record.Catalogue, catalogue) ? before.Record : null;
        var counted = ClutchAnimals.Counted(clutches);
        return new(catalogue, [.. animals.Select(Read)], [.. counted.Select(c => Read(c.Animal))], counted.ToDictionary(c => c.Animal.AnimalId, c => c.Count)) { Clutches = clutches };

        RecordEntry Read(Animal animal) => earlier?._byId.GetValueOrDefault(animal.AnimalId) is { } known && IsSame(known.Animal, animal)
            ? new(animal, known.Read)
            : new(animal, StatementReader.Read(catalogue, animal, animal.Statements));
    }

    /// <summary>The animals of a pedigree file.</summary>
    public static StockRecord Of(OpenCatalogue catalogue, PedigreeFile file) =>
        new(catalogue, [.. file.Animals.Select(a => new RecordEntry(a, StatementReader.Read(catalogue, a, a.Statements)))], null, file.Counts, file.SireWeights);

    /// <summary>One animal without its kin.</summary>
    public static StockRecord OfOne(OpenCatalogue catalogue, Animal animal, IReadOnlyList<Statement> statements) =>
        new(catalogue, [new RecordEntry(animal, StatementReader.Read(catalogue, animal, statements))]);

    /// <summary>How many young alike an animal stands for; 1: itself.</summary>
    public int CountOf(AnimalId id) => _counts?.GetValueOrDefault(id) is { } count and > 1 ? count : 1;

    /// <summary>The animal of a key.</summary>
    public RecordEntry this[string key] => _byId[new AnimalId(Guid.Parse(key))];

    private static bool IsSame(Animal before, Animal now) =>
        before.Sex == now.Sex && before.Statements.Select(s => (s.StatementId, s.Text)).SequenceEqual(now.Statements.Select(s => (s.StatementId, s.Text)));

    private RecordedAnimal Recorded(RecordEntry entry)
    {
        var animal = entry.Animal;
        AnimalId[] possible = [.. animal.PossibleSireIds.Where(_byId.ContainsKey)];
        return new(Key(animal.AnimalId), animal.Sex, entry.Read.Observations)
        {
            Sire = Known(animal.SireId),
            Dam = Known(animal.DamId),
            Count = CountOf(animal.AnimalId),
            PossibleSires = [.. possible.Select(Key)],
            SireWeights = _sireWeights.Of(animal.AnimalId, possible),
            Hatched = animal.Hatched is { } day && day.Latest.DayNumber - day.Earliest.DayNumber <= 31 ? day.Earliest : null,
            Clutch = animal.ClutchDate(),
        };
    }

    private string? Known(AnimalId? id) => id is { } known && _byId.ContainsKey(known) ? Key(known) : null;
}

/// <summary>One animal with its statements as read.</summary>
internal sealed record RecordEntry(Animal Animal, ReadStatements Read);
