using Clutchwright.Genetics.Genotypes;
using Clutchwright.Genetics.Loci;
using Clutchwright.Genetics.Numbers;

namespace Clutchwright.Pedigrees.Beliefs;

/// <summary>What every animal of a record may be, given everything recorded of it and of its kin.</summary>
/// <remarks>
/// The exact posterior of the Bayesian network of founders, Mendelian transmission and records (docs/model/beliefs.md). Cannot change and is
/// safe to read from many threads.
/// </remarks>
public sealed class PedigreeBeliefs
{
    private readonly IReadOnlyList<RecordedAnimal> _animals;
    private readonly BeliefRun _run;
    private readonly BeliefCache _cache;
    private readonly Dictionary<string, int> _nodes;
    private readonly AnimalBelief?[] _beliefs;
    private readonly CarriedBelief?[] _carried;

    private PedigreeBeliefs(
        Species species, IReadOnlyList<RecordedAnimal> animals, BeliefSettings settings, BeliefRun run, BeliefCache cache, PedigreeBeliefs? before)
    {
        Species = species;
        Settings = settings;
        _animals = animals;
        _run = run;
        _cache = cache;
        _beliefs = new AnimalBelief?[run.Frame.RecordedCount];
        _carried = new CarriedBelief?[run.Frame.RecordedCount];
        _nodes = new Dictionary<string, int>(animals.Count, StringComparer.Ordinal);
        for (var node = 0; node < run.Frame.RecordedCount; node++)
        {
            _nodes.TryAdd(run.Frame.Records[node]!.Key, node);
        }

        if (before is not null && run.InPlay.AsSpan().SequenceEqual(before._run.InPlay))
        {
            CarryOver(before);
        }
    }

    /// <summary>Gets the species.</summary>
    public Species Species { get; }

    /// <summary>Gets what was reckoned with.</summary>
    public BeliefSettings Settings { get; }

    /// <summary>Gets the animals as given.</summary>
    public IReadOnlyList<RecordedAnimal> Animals => _animals;

    /// <summary>Gets the natural logarithm of the probability of all records, sexes and parents being given.</summary>
    /// <remarks>What a record served as the start of is not counted in. Each allele that had to be let in counts 2⁻⁵⁰, each record that cannot be true
    /// beside the others 2⁻¹⁰¹ if it was told and 2⁻¹⁴⁵ otherwise. Minus infinity never occurs. Of sampled parts it is an estimate, or NaN where none can be given.</remarks>
    public double LogLikelihood => _run.Assembly.LogConstant + _run.Solutions.Sum(s => s.LogTotal);

    /// <summary>Gets whether every belief is exact; otherwise some were sampled, and say so.</summary>
    public bool IsExact => Array.TrueForAll(_run.Solutions, s => s.Errors is null);

    /// <summary>Gets the largest standard error of a sampled probability; 0 where all is exact.</summary>
    public double StandardError => _run.Solutions
        .Where(s => s.Errors is not null)
        .SelectMany(s => s.Errors!)
        .SelectMany(e => e)
        .DefaultIfEmpty(0.0)
        .Max();

    /// <summary>Gets the records that cannot all be true. Each was then taken as possibly wrong, so that there is a belief nonetheless.</summary>
    public IReadOnlyList<ClashingRecords> Clashes => _run.Clashes;

    /// <summary>Gets the loci at which there is anything to reckon, in the order of the species: a record speaks of an allele there, or an
    /// allele has a frequency. At all others every animal is wild.</summary>
    public IReadOnlyList<Locus> LociInPlay => field ??= [.. AllelesInPlay.LociOf(Species, _animals, Settings)];

    /// <summary>Gets the reckoning behind it.</summary>
    internal BeliefRun Run => _run;

    /// <summary>The belief of one animal.</summary>
    /// <exception cref="ArgumentException">There is no such animal.</exception>
    public AnimalBelief this[string key] => _nodes.TryGetValue(key, out var node)
        ? _beliefs[node] ??= Read(node)
        : throw new ArgumentException($"There is no animal {key}.", nameof(key));

    /// <summary>Reckons the beliefs.</summary>
    /// <param name="species">The species.</param>
    /// <param name="animals">All animals, in any order; every parent named must be among them.</param>
    /// <param name="settings">What to reckon with; <c>null</c>: <see cref="BeliefSettings.Default"/>.</param>
    /// <param name="before">An earlier answer, from which what has not changed is taken over: solved parts, and of animals with the same list of records the
    /// beliefs that were read there.</param>
    /// <param name="cancel">Stops the work.</param>
    /// <exception cref="ArgumentException">A sire is female, a dam male, or a count of young has young of its own.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A setting is out of range.</exception>
    /// <exception cref="PedigreeKeyException">A key is listed twice or a named parent is missing.</exception>
    /// <exception cref="PedigreeLoopException">An animal is its own ancestor.</exception>
    /// <remarks>Cost: grows with the sum of the tables of a good elimination order, which depends on how the pedigree is looped; predicted before
    /// starting, and over <see cref="BeliefSettings.TableBudget"/> the part concerned is sampled.</remarks>
    public static PedigreeBeliefs Of(
        Species species,
        IReadOnlyList<RecordedAnimal> animals,
        BeliefSettings? settings = null,
        PedigreeBeliefs? before = null,
        CancellationToken cancel = default)
    {
        ArgumentNullException.ThrowIfNull(species);
        ArgumentNullException.ThrowIfNull(animals);
        settings ??= BeliefSettings.Default;
        settings.Check();
        var cache = new BeliefCache(species, settings, before?._cache);
        var run = new BeliefRun(species, animals, settings, cache, null, cancel);
        run.Run();
        var fits = before is not null && before.Species == species && before.Settings == settings;
        return new(species, animals, settings, run, cache.Alone(), fits ? before : null);
    }

    /// <summary>The number of an animal among the nodes of the reckoning; of several young kept as a count the first.</summary>
    /// <exception cref="ArgumentException">There is no such animal.</exception>
    internal int NodeOf(string key) => _nodes.TryGetValue(key, out var node)
        ? node
        : throw new ArgumentException($"There is no animal {key}.", nameof(key));

    /// <summary>Whether there is an animal of this key.</summary>
    public bool Contains(string key) => _nodes.ContainsKey(key);

    /// <summary>Whether the beliefs of two animals are tied to each other at some group, so that they must be read together.</summary>
    /// <param name="first">One animal.</param>
    /// <param name="second">Another animal.</param>
    /// <param name="among">The groups to look at; <c>null</c>: all.</param>
    public bool AreTied(string first, string second, IReadOnlyList<LinkageGroup>? among = null) =>
        TiedGroups(_nodes[first], _nodes[second]).Any(g => among is null || among.Any(a => a.Index == g));

    /// <summary>A number that animals have in common whose beliefs at one group are tied to each other, so that they must be read together.</summary>
    /// <param name="group">A group of the species.</param>
    /// <param name="key">An animal.</param>
    /// <returns>A number from 0; <c>null</c>: the animal can be one thing only there, which no other changes.</returns>
    /// <exception cref="KeyNotFoundException">There is no such animal.</exception>
    public int? TieOf(LinkageGroup group, string key) => VariableOf(group, key) is >= 0 and var variable ? _run.Assembly.PartOf(variable) : null;

    /// <summary>Whether <see cref="Together"/> can say how an animal and those it is tied to hang together at a group; where the part was sampled or is very large
    /// it takes the two as independent.</summary>
    /// <param name="group">A group of the species.</param>
    /// <param name="key">An animal.</param>
    /// <exception cref="KeyNotFoundException">There is no such animal.</exception>
    public bool CanReadTogether(LinkageGroup group, string key) =>
        VariableOf(group, key) is not (>= 0 and var variable) || _run.Solutions[_run.Assembly.PartOf(variable)].HasJoint;

    /// <summary>What two animals may be at one group, together.</summary>
    /// <param name="group">A group of the species.</param>
    /// <param name="first">One animal: the kin are reckoned once for each thing that it may be, and that is kept for its pairs with others.</param>
    /// <param name="second">Another animal.</param>
    /// <param name="cancel">Stops the work.</param>
    /// <returns>Distinct pairs with weights that sum to 1. Where the group is the sex chromosomes and a sex is not known, the diplotype is unordered.</returns>
    public IReadOnlyList<Weighted<(Diplotype First, Diplotype Second)>> Together(
        LinkageGroup group, string first, string second, CancellationToken cancel = default)
    {
        var (a, b) = (_nodes[first], _nodes[second]);
        if (!TiedGroups(a, b).Contains(group.Index))
        {
            return [.. this[first].Genotype[group].SelectMany(_ => this[second].Genotype[group], (x, y) =>
                new Weighted<(Diplotype, Diplotype)>((x.Value, y.Value), x.Weight * y.Weight))];
        }

        var network = _run.Networks[group.Index]!;
        var (u, v) = (_run.Assembly.Variables[group.Index][a], _run.Assembly.Variables[group.Index][b]);
        var solution = _run.Solutions[_run.Assembly.PartOf(u)];
        var joint = solution.Joint(_run.Assembly.Local[u], _run.Assembly.Local[v], cancel);
        var places = new Dictionary<(Diplotype, Diplotype), int>();
        var pairs = new List<(Diplotype, Diplotype)>();
        var weights = new List<double>();
        for (var x = 0; x < joint.GetLength(0); x++)
        {
            for (var y = 0; y < joint.GetLength(1); y++)
            {
                var key = (DiplotypeOf(network, a, network.States[a][x]), DiplotypeOf(network, b, network.States[b][y]));
                if (!places.TryGetValue(key, out var at))
                {
                    places.Add(key, at = pairs.Count);
                    pairs.Add(key);
                    weights.Add(0.0);
                }

                weights[at] += joint[x, y];
            }
        }

        return ExactRatio.Weigh(pairs, weights, IsRatio(solution, [group.Index]));
    }

    private int VariableOf(LinkageGroup group, string key) => _run.InPlay.Contains(group.Index) ? _run.Assembly.Variables[group.Index][_nodes[key]] : -1;

    private IEnumerable<int> TiedGroups(int first, int second)
    {
        foreach (var g in _run.InPlay)
        {
            var (u, v) = (_run.Assembly.Variables[g][first], _run.Assembly.Variables[g][second]);
            if (u >= 0 && v >= 0 && u != v && _run.Assembly.PartOf(u) == _run.Assembly.PartOf(v))
            {
                yield return g;
            }
        }
    }

    private bool IsRatio(PartSolution? solution, IEnumerable<int> groups) =>
        solution?.Errors is null && groups.All(g => _run.Models[g]!.IsExact);

    private Diplotype DiplotypeOf(GroupNetwork network, int node, int state)
    {
        var diplotype = network.Space.Diplotypes[state];
        return network.Space.Group.IsSex && _run.Frame.Sexes[node] is null ? Diplotype.Unordered(diplotype.First, diplotype.Second) : diplotype;
    }

    // Nothing of the earlier answer is held on to but the beliefs themselves.
    private void CarryOver(PedigreeBeliefs before)
    {
        foreach (var (key, node) in _nodes)
        {
            if (before._nodes.TryGetValue(key, out var old) && Volatile.Read(ref before._beliefs[old]) is { } belief)
            {
                var carried = CarriedBelief.Find(belief, before._run, old, _run, node);
                _carried[node] = carried;
                _beliefs[node] = carried?.Changed.Count == 0 ? belief : null;
            }
        }
    }

    private AnimalBelief Read(int node)
    {
        var record = _run.Frame.Records[node]!;
        var carried = _carried[node];
        var genotype = carried?.Belief.Genotype ?? GenotypeBelief.Wild(Species, _run.Frame.Sexes[node] ?? Species.SexSystem.Heterogametic().Opposite());
        var spoken = new List<LinkageGroup>();
        var errors = new Dictionary<LinkageGroup, double>();
        foreach (var g in _run.InPlay)
        {
            var group = Species.Groups[g];
            if (carried is null || carried.Changed.Contains(g))
            {
                genotype = With(genotype, node, group, errors);
            }
            else if (carried.Belief.StandardErrors.TryGetValue(group, out var error))
            {
                errors.Add(group, error);
            }

            if (genotype[group] is not [{ Value.IsWild: true }] || record.Observations.Any(o => SpeaksOfAllele(o, group)))
            {
                spoken.Add(group);
            }
        }

        return new(genotype, spoken, [.. NotCounted(node, record)], errors);
    }

    // The belief with what the group's part says; where that was sampled, its error is noted.
    private GenotypeBelief With(GenotypeBelief genotype, int node, LinkageGroup group, Dictionary<LinkageGroup, double> errors)
    {
        var network = _run.Networks[group.Index]!;
        var variable = _run.Assembly.Variables[group.Index][node];
        var solution = variable < 0 ? null : _run.Solutions[_run.Assembly.PartOf(variable)];
        var states = network.States[node];
        if (solution is null && network.Space.Diplotypes[states[0]].IsWild && genotype[group] is [{ Value.IsWild: true }])
        {
            return genotype;
        }

        if (solution?.Errors is { } sampled)
        {
            errors[group] = sampled[_run.Assembly.Local[variable]].Max();
        }

        return genotype.With(group, ExactRatio.Weigh(
            [.. states.Select(s => DiplotypeOf(network, node, s))], _run.WeightsOf(node, group.Index), IsRatio(solution, [group.Index])));
    }

    private static bool SpeaksOfAllele(Observation observation, LinkageGroup group) => observation switch
    {
        Observation.Seen seen => seen.Reading[group] is not [{ Value.IsWild: true }],
        Observation.Said said => said.Reading[group] is not [{ Value.IsWild: true }],
        Observation.RuledOut ruledOut => ruledOut.Alleles.Any(a => a.Locus.Group == group),
        Observation.DnaTest test => test.Allele.Locus.Group == group,
        _ => false,
    };

    private IEnumerable<int> NotCounted(int node, RecordedAnimal record)
    {
        for (var i = 0; i < record.Observations.Count && !_run.Frame.IsFounder(node); i++)
        {
            if (record.Observations[i] is Observation.Said { Basis: StatementBasis.Told } said
                && _run.InPlay.Where(g => _run.Models[g]!.IsChance(said)).ToArray() is { Length: > 0 } groups
                && !Array.Exists(groups, g => _run.Choices.IsCut(node, g)))
            {
                yield return i;
            }
        }
    }
}
