using System.Collections.Concurrent;
using Clutchwright.Desk.Carry;
using Clutchwright.Desk.Kin;
using Clutchwright.Genetics.Genotypes;
using Clutchwright.Genetics.Loci;
using Clutchwright.Genetics.Looks;
using Clutchwright.Genetics.Numbers;
using Clutchwright.Pedigrees.Beliefs;
using Clutchwright.Stock.Animals;
using Clutchwright.Stock.Clutches;
using Clutchwright.Stock.History;
using Clutchwright.Stock.Statements;

namespace Clutchwright.Desk.Opened;

/// <summary>What is believed of every animal of the stock, kept until what is recorded of the animals changes.</summary>
internal sealed class StockBeliefs(OpenBook book, OpenCatalogue catalogue, TimeProvider clock) : IDisposable
{
    private readonly SemaphoreSlim _turn = new(1, 1);
    private StockState? _state;

    /// <summary>The stock as it is now, if that has been reckoned.</summary>
    public async Task<StockState?> KnownAsync(CancellationToken cancel)
    {
        var latest = await LatestAsync(cancel);
        return _state is { } known && known.Mark == latest ? known : null;
    }

    /// <summary>The stock as it is now.</summary>
    public async Task<StockState> ReadAsync(CancellationToken cancel)
    {
        if (await KnownAsync(cancel) is { } known)
        {
            return known;
        }

        await _turn.WaitAsync(cancel);
        try
        {
            var latest = await LatestAsync(cancel);
            if (_state is null || _state.Mark != latest)
            {
                _state = Reckon(
                    catalogue, latest, (await new AllAnimals(book.Book).RunAsync(cancel)).Expect(), (await new AllClutches(book.Book).RunAsync(cancel)).Expect(), _state, cancel);
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
        return ReferenceEquals(other, catalogue) ? state : Reckon(other, state.Mark, state.Animals.Select(a => a.Animal).ToArray(), state.Record.Clutches, null, cancel);
    }

    /// <summary>The same stock as believed with other settings.</summary>
    public async Task<StockState> ReadAsync(BeliefSettings settings, CancellationToken cancel)
    {
        var state = await ReadAsync(cancel);
        return ReferenceEquals(settings, catalogue.BeliefSettings) ? state : new(state.Latest, state.Record, settings with { Clock = clock }, null, cancel) { Mark = state.Mark };
    }

    public void Dispose() => _turn.Dispose();

    private async Task<(DeedId DeedId, DateTime When)> LatestAsync(CancellationToken cancel) =>
        (await new LatestDeed(book.Book).OfAnimalsAsync(cancel)).Expect();

    private StockState Reckon(
        OpenCatalogue other, (DeedId DeedId, DateTime When) mark, IReadOnlyList<Animal> animals, IReadOnlyList<Clutch> clutches, StockState? before, CancellationToken cancel) =>
        new(mark.DeedId, StockRecord.Of(other, animals, clutches, before), other.BeliefSettings with { Clock = clock }, before, cancel) { Mark = mark };
}

/// <summary>The stock at one moment.</summary>
internal sealed class StockState
{
    private readonly Dictionary<string, StockAnimal> _byTag;
    private readonly Dictionary<AnimalId, StockAnimal> _byId;
    private readonly Lazy<KinStock> _kin;
    private readonly ConcurrentDictionary<ClashingRecords, Contradiction> _contradictions = new(ReferenceEqualityComparer.Instance);

    /// <summary>Reckons what is believed.</summary>
    /// <param name="latest">The last deed of the book that changed an animal or what is said of one.</param>
    /// <param name="record">What is recorded.</param>
    /// <param name="settings">What to reckon with; <c>null</c>: as the species data say, and by the clock of the state before.</param>
    /// <param name="before">An earlier state, from which what has not changed is taken over.</param>
    /// <param name="cancel">Stops the work.</param>
    public StockState(DeedId latest, StockRecord record, BeliefSettings? settings, StockState? before, CancellationToken cancel)
    {
        Latest = latest;
        Record = record;
        Beliefs = PedigreeBeliefs.Of(
            record.Catalogue.Species,
            record.Animals,
            settings ?? record.Catalogue.BeliefSettings with { Clock = before?.Beliefs.Settings.Clock },
            before?.Beliefs,
            cancel);
        var clashes = Beliefs.Clashes.SelectMany(c => c.Animals, (c, key) => (Key: key, Clash: c)).ToLookup(c => c.Key, c => c.Clash, StringComparer.Ordinal);
        Animals = [.. record.Entries.Select(e => new StockAnimal(
            e.Animal, Beliefs, e.Read.Statements, [.. e.Read.Problems, .. clashes[StockRecord.Key(e.Animal.AnimalId)].Select(c => ClashWords.Of(record, c))]))];
        _byTag = Animals.ToDictionary(a => a.Animal.Tag.Trim(), StringComparer.OrdinalIgnoreCase);
        _byId = Animals.ToDictionary(a => a.Animal.AnimalId);
        _kin = new(() => new KinStock([.. Animals.Select(a => a.Animal)]));
    }

    public DeedId Latest { get; }

    /// <summary>That deed with its time: a book that was restored may go on under the same numbers with other deeds.</summary>
    public (DeedId DeedId, DateTime When) Mark { get; init; }

    /// <summary>What is recorded, in the terms of genetics.</summary>
    public StockRecord Record { get; }

    /// <summary>What is believed of all animals together.</summary>
    public PedigreeBeliefs Beliefs { get; }

    public IReadOnlyList<StockAnimal> Animals { get; }

    /// <summary>How related its animals are: reckoned when first asked.</summary>
    public KinStock Kin => _kin.Value;

    /// <summary>What probably went wrong where records cannot all be true: reckoned when first asked.</summary>
    public Contradiction Contradiction(ClashingRecords clash, CancellationToken cancel) =>
        _contradictions.GetOrAdd(clash, c => ListContradictions.Of(Record.Catalogue, Record, Beliefs, c, cancel));

    public StockAnimal? Find(string tag) => _byTag.GetValueOrDefault(tag.Trim());

    public StockAnimal? Find(AnimalId id) => _byId.GetValueOrDefault(id);
}

/// <summary>An animal of the stock with what is believed of it.</summary>
/// <param name="Animal">As recorded.</param>
/// <param name="Beliefs">What is believed of the whole stock.</param>
/// <param name="Statements">The statements that could be read, one for each observation that the belief was made from.</param>
/// <param name="Problems">Statements that cannot be read, and conflicts, in sentences.</param>
internal sealed record StockAnimal(
    Animal Animal,
    PedigreeBeliefs Beliefs,
    IReadOnlyList<Statement> Statements,
    IReadOnlyList<string> Problems)
{
    /// <summary>Gets its key among <see cref="Beliefs"/>.</summary>
    public string Key { get; } = StockRecord.Key(Animal.AnimalId);

    /// <summary>Gets what is believed of it.</summary>
    public AnimalBelief Belief => Beliefs[Key];

    /// <summary>Gets whether it is in the keeper's room.</summary>
    public bool IsHere => Animal.Status.IsHere();

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
