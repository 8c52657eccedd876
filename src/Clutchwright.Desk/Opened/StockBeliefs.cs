using Clutchwright.Genetics.Crosses;
using Clutchwright.Genetics.Genotypes;
using Clutchwright.Genetics.Loci;
using Clutchwright.Genetics.Looks;
using Clutchwright.Genetics.Numbers;
using Clutchwright.Pedigrees;
using Clutchwright.Pedigrees.Beliefs;
using Clutchwright.Stock.Animals;
using Clutchwright.Stock.History;
using Clutchwright.Stock.Statements;

namespace Clutchwright.Desk.Opened;

/// <summary>What is believed of every animal of the stock, kept until the book changes.</summary>
internal sealed class StockBeliefs(OpenBook book, OpenCatalogue catalogue) : IDisposable
{
    private readonly SemaphoreSlim _turn = new(1, 1);
    private StockState? _state;

    /// <summary>The stock as it is now.</summary>
    public async Task<StockState> ReadAsync(CancellationToken cancel)
    {
        var latest = await LatestAsync(cancel);
        if (_state is { } known && known.Latest == latest)
        {
            return known;
        }

        await _turn.WaitAsync(cancel);
        try
        {
            latest = await LatestAsync(cancel);
            if (_state is null || _state.Latest != latest)
            {
                _state = Reckon(catalogue, latest, (await new AllAnimals(book.Book).RunAsync(cancel)).Expect(), _state);
            }

            return _state;
        }
        finally
        {
            _turn.Release();
        }
    }

    /// <summary>The same stock as believed with another catalogue.</summary>
    public async Task<StockState> ReadAsync(OpenCatalogue other, CancellationToken cancel)
    {
        var state = await ReadAsync(cancel);
        return ReferenceEquals(other, catalogue) ? state : Reckon(other, state.Latest, state.Animals.Select(a => a.Animal).ToArray(), null);
    }

    public void Dispose() => _turn.Dispose();

    private async Task<DeedId> LatestAsync(CancellationToken cancel) =>
        (await new ListDeeds(book.Book).RunAsync(1, null, cancel)).Expect() is [{ } latest] ? latest.DeedId : default;

    // What rests on the same records and the same parents' beliefs as before is kept.
    private static StockState Reckon(OpenCatalogue catalogue, DeedId latest, IReadOnlyList<Animal> animals, StockState? before)
    {
        var byId = animals.ToDictionary(a => a.AnimalId);
        var believed = new Dictionary<AnimalId, StockAnimal>();
        var pedigree = Pedigree.Of(animals.Select(a => new PedigreeAnimal(
            Key(a.AnimalId), Known(a.SireId), Known(a.DamId), a.PossibleSireIds.Where(byId.ContainsKey).Select(Key).ToArray())));
        foreach (var entry in pedigree.Animals)
        {
            var animal = byId[new AnimalId(Guid.Parse(entry.Key))];
            believed.Add(
                animal.AnimalId,
                before?.Find(animal.AnimalId) is { } old && RestsOnTheSame(old, animal)
                    ? old with { Animal = animal }
                    : StatementReader.Believe(catalogue, animal, animal.Statements, Matings(animal), BothKnown(animal)));
        }

        return new(latest, [.. animals.Select(a => believed[a.AnimalId])]);

        bool RestsOnTheSame(StockAnimal old, Animal animal) =>
            old.Animal.Sex == animal.Sex
            && old.Animal.SireId == animal.SireId
            && old.Animal.DamId == animal.DamId
            && old.Animal.PossibleSireIds.SequenceEqual(animal.PossibleSireIds)
            && old.Animal.Statements.Select(s => s.StatementId).SequenceEqual(animal.Statements.Select(s => s.StatementId))
            && animal.PossibleSireIds.Append(animal.SireId ?? default).Append(animal.DamId ?? default).All(id =>
                ReferenceEquals(before!.Find(id)?.Belief, believed.GetValueOrDefault(id)?.Belief)
                && before.Find(id)?.Animal.Sex == believed.GetValueOrDefault(id)?.Animal.Sex);

        string? Known(AnimalId? id) => id is { } known && byId.ContainsKey(known) ? Key(known) : null;

        List<Weighted<Mating>> Matings(Animal animal)
        {
            var sires = animal.SireId is { } sire && byId.ContainsKey(sire) ? [sire] : animal.PossibleSireIds.Where(byId.ContainsKey).ToArray();
            var dam = animal.DamId is { } id && byId.ContainsKey(id) ? As(id, Sex.Female) : null;
            if (sires.Length == 0 && dam is null)
            {
                return [];
            }

            var wildSire = GenotypeBelief.Wild(catalogue.Species, Sex.Male);
            var mother = dam ?? GenotypeBelief.Wild(catalogue.Species, Sex.Female);
            return sires.Length == 0
                ? [new(Mating.Of(wildSire, mother), Probability.Certain)]
                : sires.Select(s => new Weighted<Mating>(Mating.Of(As(s, Sex.Male), mother), Probability.Ratio(1, sires.Length))).ToList();
        }

        bool BothKnown(Animal animal) =>
            animal.DamId is { } dam && byId.ContainsKey(dam)
            && ((animal.SireId is { } sire && byId.ContainsKey(sire)) || animal.PossibleSireIds.Any(byId.ContainsKey));

        GenotypeBelief As(AnimalId id, Sex sex) => believed[id].As(sex);
    }

    private static string Key(AnimalId id) => id.Value.ToString("N");
}

/// <summary>The stock at one moment.</summary>
internal sealed class StockState
{
    private readonly Dictionary<string, StockAnimal> _byTag;
    private readonly Dictionary<AnimalId, StockAnimal> _byId;

    public StockState(DeedId latest, IReadOnlyList<StockAnimal> animals)
    {
        Latest = latest;
        Animals = animals;
        _byTag = animals.ToDictionary(a => a.Animal.Tag.Trim(), StringComparer.OrdinalIgnoreCase);
        _byId = animals.ToDictionary(a => a.Animal.AnimalId);
    }

    public DeedId Latest { get; }

    public IReadOnlyList<StockAnimal> Animals { get; }

    public StockAnimal? Find(string tag) => _byTag.GetValueOrDefault(tag.Trim());

    public StockAnimal? Find(AnimalId id) => _byId.GetValueOrDefault(id);
}

/// <summary>An animal of the stock with what is believed of it.</summary>
/// <param name="Animal">As recorded.</param>
/// <param name="Belief">As believed.</param>
/// <param name="Statements">The statements that could be read, one for each observation that the belief was made from.</param>
/// <param name="Problems">Statements that cannot be read, and conflicts, in sentences.</param>
internal sealed record StockAnimal(
    Animal Animal,
    AnimalBelief Belief,
    IReadOnlyList<Statement> Statements,
    IReadOnlyList<string> Problems)
{
    /// <summary>Gets whether it is in the keeper's room.</summary>
    public bool IsHere => Animal.Status is AnimalStatus.Kept or AnimalStatus.HeldBack or AnimalStatus.ForSale;

    /// <summary>Gets whether it is in doubt that it carries some recessive allele.</summary>
    public bool IsPossibleHet => Belief.Genotype.Species.Groups
        .Where(g => Belief.Genotype[g].Count > 1)
        .SelectMany(g => g.Loci)
        .SelectMany(l => l.Alleles)
        .Where(a => a.Mode == InheritanceMode.Recessive)
        .Select(Belief.Genotype.ChanceOfCarrying)
        .Any(c => !c.IsImpossible && !c.IsCloseTo(Probability.Certain));

    /// <summary>Gets the forms it most likely shows, hidden ones left out.</summary>
    public IReadOnlyList<Expression> Shown
    {
        get
        {
            var genotype = Belief.Genotype.MostLikely();
            var forms = genotype.Species.Loci
                .Select(l => l.ExpressionOf(genotype.AllelesAt(l).First, genotype.AllelesAt(l).Second))
                .Where(e => e.IsVisible)
                .ToArray();
            return genotype.Species.SeenOf(forms);
        }
    }

    /// <summary>The belief with the sex that a part in a pair asks for: an unsexed animal is taken to be of it.</summary>
    public GenotypeBelief As(Sex sex)
    {
        var belief = Belief.Genotype;
        if (belief.Sex == sex)
        {
            return belief;
        }

        // Of another sex than reckoned with: the strands of the sex chromosomes are not known.
        var changed = GenotypeBelief.Wild(belief.Species, sex);
        foreach (var group in belief.Species.Groups)
        {
            changed = changed.With(group, group.IsSex && changed.IsHeterogametic
                ? belief[group].SelectMany(w => new[]
                {
                    new Weighted<Diplotype>(w.Value, w.Weight * Probability.Half),
                    new Weighted<Diplotype>(new(w.Value.Second, w.Value.First), w.Weight * Probability.Half),
                })
                : belief[group]);
        }

        return changed;
    }
}
