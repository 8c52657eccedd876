using Clutchwright.Genetics.Loci;
using Clutchwright.Genetics.Numbers;

namespace Clutchwright.Pedigrees.Beliefs.Contradictions;

/// <summary>Tells the story of the records in other ways, and compares how probable each makes them.</summary>
internal sealed class CauseSearch
{
    private const int MostSwaps = 8;
    private const int MostSires = 16;
    private const double Log10Lowest = -30.0;
    private readonly PedigreeBeliefs _beliefs;
    private readonly ClashingRecords _clash;
    private readonly CauseRates _rates;
    private readonly CancellationToken _cancel;
    private readonly FallibleModel _model;
    private readonly FallibleReckoning _asRecorded;
    private readonly IReadOnlyList<RecordedAnimal> _animals;
    private readonly Dictionary<string, RecordedAnimal> _byKey;
    private readonly ILookup<string, RecordedAnimal> _young;
    private readonly List<ClashCause> _found = [];
    private readonly List<UnweighedCause> _notWeighed = [];
    private readonly bool _isNearOnly;

    public CauseSearch(PedigreeBeliefs beliefs, ClashingRecords clash, CauseRates rates, CancellationToken cancel)
    {
        _beliefs = beliefs;
        _clash = clash;
        _rates = rates;
        _cancel = cancel;
        _animals = NearAnimals.Of(beliefs.Animals, clash.Animals, MostSires);
        _isNearOnly = _animals.Count < beliefs.Animals.Count;
        _byKey = _animals.ToDictionary(a => a.Key, StringComparer.Ordinal);
        _young = _animals
            .SelectMany(a => a.PossibleSires.Append(a.Sire).Append(a.Dam).OfType<string>().Distinct(StringComparer.Ordinal), (a, parent) => (Parent: parent, Young: a))
            .ToLookup(p => p.Parent, p => p.Young, StringComparer.Ordinal);
        _model = new FallibleModel(beliefs.Species, _animals, beliefs.Settings, rates, cancel);
        _asRecorded = new FallibleReckoning(_model, _animals);
    }

    /// <summary>The causes.</summary>
    public ClashCauses Find()
    {
        foreach (var place in _clash.Records)
        {
            AddWrongRecord(place);
        }

        // Between the animals whose records clash may stand one without a record, so the clutches of parents are looked at too.
        var near = _clash.Animals.Concat(_clash.Animals.SelectMany(k => new[] { _byKey[k].Sire, _byKey[k].Dam }).OfType<string>())
            .Distinct(StringComparer.Ordinal).Select(k => _byKey[k]).Where(a => a.Dam is not null || a.Sire is not null || a.PossibleSires.Count > 0).ToArray();
        foreach (var clutch in near.Select(ClutchOf).DistinctBy(c => c[0].Key, StringComparer.Ordinal))
        {
            AddOtherSires(clutch);
            AddVirginBirth(clutch);
        }

        foreach (var young in near.Where(a => a.Count == 1 && _clash.Animals.Contains(a.Key)))
        {
            AddSwaps(young);
            Add(CauseKind.UnknownOrigin, young, [], null, _rates.Swapped / 2.0, Without(young));
        }

        return new(Scaled(), _notWeighed, _asRecorded.IsExact, _isNearOnly);
    }

    private ClashCause[] Scaled()
    {
        if (_found.Count == 0)
        {
            return [];
        }

        var highest = _found.Max(Weight);
        var total = _found.Sum(c => Math.Pow(10.0, Weight(c) - highest));
        return [.. _found
            .Select(c => c with { Posterior = Probability.Rounded(Math.Min(1.0, Math.Pow(10.0, Weight(c) - highest) / total)) })
            .OrderByDescending(c => c.Posterior)
            .ThenBy(c => c.Kind)
            .ThenBy(c => c.Animal, StringComparer.Ordinal)
            .ThenBy(c => c.Other, StringComparer.Ordinal)];

        static double Weight(ClashCause cause) => Math.Log10(cause.PriorRate) + cause.Log10Factor;
    }

    private void AddWrongRecord(RecordPlace place)
    {
        var record = _byKey[place.Key];
        var observation = record.Observations[place.Index];
        var node = Enumerable.Range(0, _asRecorded.Frame.RecordedCount).First(n => _asRecorded.Frame.Records[n]!.Key == place.Key);
        var (right, priorRight) = (1.0, 1.0);
        for (var g = 0; g < _model.Groups.Length; g++)
        {
            var model = _model.Groups[g];
            if (!_clash.Groups.Contains(model.Space.Group) || !model.Weights.Speaks(observation))
            {
                continue;
            }

            var (of, prior) = RightAt(g, node, place.Index, observation);
            right *= of;
            priorRight = observation is Observation.Seen ? priorRight * prior : prior;
        }

        var kind = observation switch
        {
            Observation.Seen => CauseKind.Misread,
            Observation.DnaTest => CauseKind.Misread,
            _ => CauseKind.WrongWords,
        };
        if (priorRight < 1.0 && right < 1.0)
        {
            Put(new(kind, place.Key, place, [], null, 1.0 - priorRight, Math.Log10((1.0 - right) / (1.0 - priorRight)), default));
        }
    }

    // The chance that a record was right here, after all records and before any.
    private (double Of, double Prior) RightAt(int g, int node, int index, Observation observation)
    {
        var model = _model.Groups[g];
        var frame = _asRecorded.Frame;
        var belief = _asRecorded.BeliefOf(g, node);
        if (observation is Observation.Seen seen)
        {
            var (weights, rightly) = (model.Weights.Of(seen), model.Weights.OfTrueLook(seen));
            var prior = Enumerable.Range(0, weights.Length).Where(s => rightly[s] > 0.0).Select(s => weights[s] / rightly[s]).DefaultIfEmpty(1.0).Min();
            return (Enumerable.Range(0, weights.Length).Where(s => belief[s] > 0.0).Sum(s => belief[s] * prior * rightly[s] / weights[s]), Math.Min(1.0, prior));
        }

        if (observation is Observation.DnaTest)
        {
            // Misread is what the test's own rates leave: the copies found are not those it has.
            var of = model.Weights.Of(observation);
            var best = of.Max();
            return (Enumerable.Range(0, of.Length).Where(s => of[s] == best).Sum(s => belief[s]), best);
        }

        var agrees = 1.0 - _rates.WrongWords;
        if (frame.IsFounder(node))
        {
            var spoken = _model.Spoken(g, frame, null)[node];
            var mixed = _model.Founder(g, frame, node, spoken, out var start);
            if (start == index)
            {
                var told = model.Prior.FromWords(((Observation.Said)observation).Reading, frame.Sexes[node]);
                var sure = agrees * observation.Confidence.Value;
                return (Enumerable.Range(0, told.Length).Where(s => belief[s] > 0.0).Sum(s => belief[s] * sure * told[s] / mixed[s]), sure);
            }
        }

        var words = _model.OfRecord(model, observation, frame.IsFounder(node));
        return words is null
            ? (1.0, 1.0)
            : (Enumerable.Range(0, words.Length).Where(s => belief[s] > 0.0).Sum(s => belief[s] * (words[s] - _rates.WrongWords) / words[s]), agrees);
    }

    private RecordedAnimal[] ClutchOf(RecordedAnimal young) => [.. _animals.Where(a =>
        a.Sire == young.Sire && a.Dam == young.Dam && a.Clutch == young.Clutch && a.PossibleSires.SequenceEqual(young.PossibleSires)
        && (young.Clutch is not null || a.Key == young.Key || a.Hatched == young.Hatched))];

    private void AddOtherSires(RecordedAnimal[] clutch)
    {
        var (keys, first) = (clutch.Select(c => c.Key).ToHashSet(StringComparer.Ordinal), clutch[0]);
        if (first.Dam is null)
        {
            return;
        }

        Add(CauseKind.UnknownSire, first, clutch, null, _rates.OtherSire / 2.0, By(null));
        var earlier = _young[first.Dam]
            .Where(y => !keys.Contains(y.Key) && y.Sire is not null && y.Sire != first.Sire && !first.PossibleSires.Contains(y.Sire) && IsBefore(y, first))
            .Select(y => y.Sire!)
            .Distinct(StringComparer.Ordinal)
            .ToArray();
        foreach (var sire in earlier)
        {
            Add(CauseKind.StoredSperm, first, clutch, sire, _rates.StoredSperm / earlier.Length, By(sire));
        }

        var descendants = DescendantsOf(keys);
        var males = _animals
            .Where(a => a.Sex == Sex.Male && a.Count == 1 && a.Key != first.Sire && !first.PossibleSires.Contains(a.Key)
                && !earlier.Contains(a.Key) && !descendants.Contains(a.Key) && CouldSire(a, first))
            .ToArray();
        var tried = _isNearOnly ? [.. males.OrderByDescending(m => _young[m.Key].Count()).ThenBy(m => m.Key, StringComparer.Ordinal).Take(MostSires)] : males;
        foreach (var male in tried)
        {
            Add(CauseKind.OtherSire, first, clutch, male.Key, _rates.OtherSire / 2.0 / males.Length, By(male.Key));
        }

        Func<FallibleReckoning> By(string? sire) => () => new(_model, [.. _animals.Select(a => keys.Contains(a.Key) ? a with { Sire = sire, PossibleSires = [], SireWeights = [] } : a)]);
    }

    private static bool IsBefore(RecordedAnimal earlier, RecordedAnimal later) =>
        earlier.Hatched is { } a && later.Hatched is { } b ? a < b : string.CompareOrdinal(earlier.Clutch, later.Clutch) < 0;

    private bool CouldSire(RecordedAnimal male, RecordedAnimal young) =>
        male.Hatched is not { } a || young.Hatched is not { } b || b.DayNumber - a.DayNumber >= _rates.LeastSireDays;

    private HashSet<string> DescendantsOf(IEnumerable<string> keys)
    {
        var found = keys.ToHashSet(StringComparer.Ordinal);
        var open = new Stack<string>(found);
        while (open.TryPop(out var key))
        {
            foreach (var young in _young[key].Where(y => found.Add(y.Key)))
            {
                open.Push(young.Key);
            }
        }

        return found;
    }

    private void AddVirginBirth(RecordedAnimal[] clutch)
    {
        var sex = _beliefs.Species.SexSystem.Heterogametic().Opposite();
        if (clutch[0].Dam is not { } dam || clutch.Any(c => _young.Contains(c.Key) || (c.Sex is { } own && own != sex)))
        {
            return;
        }

        var keys = clutch.Select(c => c.Key).ToHashSet(StringComparer.Ordinal);
        Add(CauseKind.Parthenogenesis, clutch[0], clutch, null, _rates.Parthenogenesis, () =>
            new(_model, [.. _animals.Where(a => !keys.Contains(a.Key))], new VirginBirth(dam, clutch)));
    }

    private void AddSwaps(RecordedAnimal young)
    {
        var candidates = _animals
            .Where(a => a.Count == 1 && a.Dam is not null && (a.Dam != young.Dam || a.Sire != young.Sire) && IsNearInTime(a, young) && (a.Sex is null || young.Sex is null || a.Sex == young.Sex))
            .ToArray();
        if (candidates.Length == 0)
        {
            return;
        }

        // A rough order first: how well each look fits in the other's place. The likeliest are then reckoned.
        var ranking = new SuspectRanking(_model, _asRecorded);
        var nodes = new Dictionary<string, int>(StringComparer.Ordinal);
        for (var node = 0; node < _asRecorded.Frame.RecordedCount; node++)
        {
            nodes.TryAdd(_asRecorded.Frame.Records[node]!.Key, node);
        }

        var own = nodes[young.Key];
        foreach (var other in candidates
            .OrderByDescending(c => (ranking.Log10(nodes[c.Key], own) ?? 0.0) + (ranking.Log10(own, nodes[c.Key]) ?? 0.0) - (ranking.Log10(nodes[c.Key], nodes[c.Key]) ?? 0.0))
            .ThenBy(c => c.Key, StringComparer.Ordinal)
            .Take(MostSwaps))
        {
            Add(CauseKind.Swapped, young, [], other.Key, _rates.Swapped / 2.0 / candidates.Length, () => new(_model, Exchanged(young, other)));
        }
    }

    // The animals stay as they are and with their young; their parents are exchanged.
    private RecordedAnimal[] Exchanged(RecordedAnimal young, RecordedAnimal other) => [.. _animals.Select(a => a.Key == young.Key ? As(a, other) : a.Key == other.Key ? As(a, young) : a)];

    private static RecordedAnimal As(RecordedAnimal animal, RecordedAnimal place) =>
        animal with { Sire = place.Sire, Dam = place.Dam, PossibleSires = place.PossibleSires, SireWeights = place.SireWeights, Clutch = place.Clutch };

    private bool IsNearInTime(RecordedAnimal a, RecordedAnimal b) => a.Hatched is { } x && b.Hatched is { } y
        ? Math.Abs(x.DayNumber - y.DayNumber) <= _rates.SwapDays
        : a.Hatched is null && b.Hatched is null;

    private Func<FallibleReckoning> Without(RecordedAnimal young) => () =>
        new(_model, [.. _animals.Select(a => a.Key == young.Key ? a with { Sire = null, Dam = null, PossibleSires = [], SireWeights = [], Clutch = null } : a)]);

    private void Add(CauseKind kind, RecordedAnimal animal, RecordedAnimal[] clutch, string? other, double prior, Func<FallibleReckoning> tell)
    {
        _cancel.ThrowIfCancellationRequested();
        double? log;
        try
        {
            log = tell().LogRatioTo(_asRecorded);
        }
        catch (PedigreeLoopException)
        {
            // Of its own descendants nobody can be the young.
            return;
        }

        if (log is null)
        {
            _notWeighed.Add(new(kind, animal.Key, [.. clutch.Select(c => c.Key)], other, prior));
            return;
        }

        Put(new(kind, animal.Key, null, [.. clutch.Select(c => c.Key)], other, prior, log.Value / Math.Log(10.0), default));
    }

    private void Put(ClashCause cause)
    {
        if (cause.Log10Factor > Log10Lowest)
        {
            _found.Add(cause);
        }
    }
}
