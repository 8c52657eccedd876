using Clutchwright.Genetics.Loci;

namespace Clutchwright.Pedigrees.Beliefs;

/// <summary>One reckoning of a whole record, from the records to the solved parts.</summary>
internal sealed class BeliefRun
{
    /// <summary>Below this an animal counts as not carrying: what is left comes from alleles let in.</summary>
    public const double Negligible = 1e-9;

    private const int MostSharedDoubts = 12;
    private readonly Species _species;
    private readonly IReadOnlyList<RecordedAnimal> _animals;
    private readonly BeliefSettings _settings;
    private readonly BeliefCache _cache;
    private readonly CancellationToken _cancel;
    private readonly List<DoubtedRecord>[] _doubted;
    private readonly List<ClashingRecords> _clashes = [];
    private readonly SortedSet<int> _stale = [];

    /// <summary>Reads the records.</summary>
    /// <param name="species">The species.</param>
    /// <param name="animals">The animals.</param>
    /// <param name="settings">The settings.</param>
    /// <param name="cache">What is known of groups and parts.</param>
    /// <param name="only">The groups to look at; <c>null</c>: all in play.</param>
    /// <param name="cancel">Stops the work.</param>
    public BeliefRun(
        Species species,
        IReadOnlyList<RecordedAnimal> animals,
        BeliefSettings settings,
        BeliefCache cache,
        IReadOnlySet<int>? only,
        CancellationToken cancel)
        : this(species, animals, AllelesInPlay.Of(species, animals, settings), settings, cache, only, cancel)
    {
    }

    /// <summary>Reads some of the records of a book.</summary>
    /// <param name="species">The species.</param>
    /// <param name="animals">The animals.</param>
    /// <param name="alleles">The alleles in play in the whole book.</param>
    /// <param name="settings">The settings.</param>
    /// <param name="cache">What is known of groups and parts.</param>
    /// <param name="only">The groups to look at; <c>null</c>: all in play.</param>
    /// <param name="cancel">Stops the work.</param>
    public BeliefRun(
        Species species,
        IReadOnlyList<RecordedAnimal> animals,
        IReadOnlyList<IReadOnlyList<int[]>?> alleles,
        BeliefSettings settings,
        BeliefCache cache,
        IReadOnlySet<int>? only,
        CancellationToken cancel)
    {
        _species = species;
        _animals = animals;
        _settings = settings;
        _cache = cache;
        _cancel = cancel;
        Frame = PedigreeFrame.Of(animals);
        Models = alleles
            .Select((own, g) => own is null || (only is not null && !only.Contains(g)) ? null : cache.Model(species.Groups[g], own))
            .ToArray();
        InPlay = [.. Enumerable.Range(0, Models.Length).Where(g => Models[g] is not null)];
        Choices = new RecordChoices();
        Networks = new GroupNetwork?[Models.Length];
        _doubted = new List<DoubtedRecord>[Models.Length];
        Assembly = new NetworkAssembly(Frame, Models.Length);
        ShareDoubts();
    }

    /// <summary>Gets the animals as nodes.</summary>
    public PedigreeFrame Frame { get; }

    /// <summary>Gets the models by group; <c>null</c> where no mutant allele is in play.</summary>
    public GroupModel?[] Models { get; }

    /// <summary>Gets the indices of the groups in play.</summary>
    public int[] InPlay { get; }

    /// <summary>Gets the networks by group.</summary>
    public GroupNetwork?[] Networks { get; }

    /// <summary>Gets what was decided about the records.</summary>
    public RecordChoices Choices { get; }

    /// <summary>Gets the whole network.</summary>
    public NetworkAssembly Assembly { get; private set; }

    /// <summary>Gets the solved parts.</summary>
    public PartSolution[] Solutions { get; private set; } = [];

    /// <summary>Gets the records that cannot all be true.</summary>
    public IReadOnlyList<ClashingRecords> Clashes => _clashes;

    /// <summary>Solves the record, letting in what it cannot do without.</summary>
    public void Run()
    {
        _stale.UnionWith(InPlay);
        while (true)
        {
            // Every round but the last decides something for good, so that there is a last one.
            _cancel.ThrowIfCancellationRequested();
            while (_stale.Count > 0)
            {
                var g = _stale.Min;
                _stale.Remove(g);
                if (!Build(g))
                {
                    Escalate([g], Networks[g]!.ClashAt);
                }
            }

            if (Solve())
            {
                CutToLabels();
                if (_stale.Count == 0)
                {
                    return;
                }
            }
        }
    }

    /// <summary>Whether the records can all be true, founders carrying whatever it takes.</summary>
    public bool IsPossible()
    {
        foreach (var g in InPlay)
        {
            for (var kin = 0; kin < Frame.KinCount; kin++)
            {
                Choices.Raise(g, kin);
            }

            if (!Build(g))
            {
                return false;
            }
        }

        if (!Assemble(out _))
        {
            return false;
        }

        return Assembly.Parts().TrueForAll(p => !double.IsNegativeInfinity(PartSolution.LogTotalWithin(p, _settings, _cancel) ?? 0.0));
    }

    /// <summary>The weights of a node's states at a group, in the order of its states there.</summary>
    public double[] WeightsOf(int node, int group) => Assembly.Variables[group][node] is var variable and >= 0
        ? Solutions[Assembly.PartOf(variable)].Marginals[Assembly.Local[variable]]
        : [1.0];

    private static bool IsTold(Observation observation) => observation is Observation.Said { Basis: StatementBasis.Told };

    private bool Build(int group)
    {
        var builder = new GroupBuilder(Frame, Models[group]!, Choices);
        var network = builder.Build();
        _doubted[group] = builder.Doubted;
        Networks[group] = network;
        return network.Reduce();
    }

    private bool Assemble(out int failed)
    {
        Assembly = new NetworkAssembly(Frame, Models.Length);
        foreach (var g in InPlay)
        {
            if (!Assembly.Add(Networks[g]!, Models[g]!, _doubted[g]))
            {
                failed = g;
                return false;
            }
        }

        failed = -1;
        return true;
    }

    private bool Solve()
    {
        if (!Assemble(out var failed))
        {
            Escalate([failed], Assembly.FailedAt);
            return false;
        }

        var parts = Assembly.Parts();
        Solutions = new PartSolution[parts.Count];
        for (var p = 0; p < parts.Count; p++)
        {
            Solutions[p] = _cache.Solve(parts[p], _cancel);
            if (!Solutions[p].IsPossible)
            {
                Escalate(parts[p].Groups, Assembly.NodeOf(parts[p].Variables[0]));
                return false;
            }
        }

        return true;
    }

    // First founders may carry what nobody spoke of; where even that is not enough, labels are not taken as a start; then some record is wrong.
    private void Escalate(IReadOnlyCollection<int> groups, int node)
    {
        var kin = Frame.Kin[node];
        if (groups.Aggregate(false, (isNew, g) => Choices.Raise(g, kin) | isNew)
            || groups.Aggregate(false, (isNew, g) => Choices.Uncut(g, kin, Frame.Kin) | isNew))
        {
            _stale.UnionWith(groups);
            return;
        }

        if (new ClashSearch(_species, _animals, _settings, groups, Choices.Soft).Find(Frame, node, _cancel) is { } clash)
        {
            _clashes.Add(clash);
            foreach (var (key, index) in clash.Records)
            {
                Choices.Soften(key, index);
                var observation = _animals.First(a => a.Key == key).Observations[index];
                _stale.UnionWith(InPlay.Where(g => Models[g]!.Weights.Speaks(observation)));
            }
        }
        else if (Choices.Ease())
        {
            // So many records gave way that the weights of what is left fell below the smallest number.
            _stale.UnionWith(InPlay);
        }
        else
        {
            throw new InvalidOperationException("The records could not be brought together.");
        }
    }

    private void ShareDoubts()
    {
        var shared = 0;
        for (var node = 0; node < Frame.RecordedCount; node++)
        {
            var observations = Frame.Records[node]!.Observations;
            for (var i = 0; i < observations.Count; i++)
            {
                if (observations[i].Confidence.Value is > 0.5 and < 1.0
                    && shared < MostSharedDoubts
                    && InPlay.Count(g => Models[g]!.Weights.Speaks(observations[i])) > 1)
                {
                    Choices.Share(node, i);
                    shared++;
                }
            }
        }
    }

    // A possible het told where nothing recorded implies it is the start; where something does it is not counted a second time. With one
    // parent not recorded the kin cannot say all: there the label is the start unless the kin leaves no doubt.
    private void CutToLabels()
    {
        foreach (var g in InPlay)
        {
            // What a label makes known of an animal may imply the labels of its young, so these wait for the next round.
            var isBelow = new bool[Frame.Count];
            for (var node = 0; node < Frame.RecordedCount; node++)
            {
                isBelow[node] = Frame.PossibleSires[node].Append(Frame.Sires[node]).Append(Frame.Dams[node]).Any(p => p >= 0 && isBelow[p]);
                if (Frame.IsFounder(node) || Choices.IsCut(node, g) || Choices.IsUncut(node, g) || isBelow[node]
                    || ChanceToldAt(node, g) is not { } said || !IsStart(node, g, said))
                {
                    continue;
                }

                Choices.Cut(node, g);
                isBelow[node] = true;
                _stale.Add(g);
            }
        }
    }

    // The possible het told of an animal at a group, where nothing is said for certain.
    private Observation.Said? ChanceToldAt(int node, int group)
    {
        var model = Models[group]!;
        Observation.Said? first = null;
        foreach (var observation in Frame.Records[node]!.Observations)
        {
            if (observation is Observation.Said said && model.Weights.Speaks(said))
            {
                if (!IsTold(said) || !model.IsChance(said))
                {
                    return null;
                }

                first ??= said;
            }
        }

        return first;
    }

    // Whether a possible het is the start: the kin knows nothing of it, or one parent is not recorded and there is doubt left; and it can be true.
    private bool IsStart(int node, int group, Observation.Said said)
    {
        var model = Models[group]!;
        var spoken = model.Prior.Spoken(said.Reading);
        var label = model.Weights.Of(said);
        var weights = WeightsOf(node, group);
        var states = Networks[group]!.States[node];
        var (carries, agrees) = (0.0, 0.0);
        for (var i = 0; i < states.Length; i++)
        {
            carries += model.Space.Has(states[i], spoken) ? weights[i] : 0.0;
            agrees += label[states[i]] > 0.0 ? weights[i] : 0.0;
        }

        var isHalfKnown = Frame.Sires[node] >= Frame.RecordedCount || Frame.Dams[node] >= Frame.RecordedCount;
        return agrees > Negligible && (isHalfKnown ? carries < 1.0 - Negligible : carries <= Negligible);
    }
}
