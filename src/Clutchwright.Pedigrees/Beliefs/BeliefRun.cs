using Clutchwright.Genetics.Loci;

namespace Clutchwright.Pedigrees.Beliefs;

/// <summary>One reckoning of a whole record, from the records to the solved parts.</summary>
internal sealed class BeliefRun
{
    /// <summary>Below this an animal counts as not carrying: what is left comes from alleles let in.</summary>
    public const double Negligible = 1e-9;

    private const int MostSharedDoubts = 12;
    private const int MostRounds = 200;
    private readonly Species _species;
    private readonly IReadOnlyList<RecordedAnimal> _animals;
    private readonly BeliefSettings _settings;
    private readonly BeliefCache _cache;
    private readonly CancellationToken _cancel;
    private readonly List<DoubtedRecord>[] _doubted;
    private readonly List<ClashingRecords> _clashes = [];

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
    {
        _species = species;
        _animals = animals;
        _settings = settings;
        _cache = cache;
        _cancel = cancel;
        Frame = PedigreeFrame.Of(animals);
        Models = AllelesInPlay.Of(species, animals, settings)
            .Select((alleles, g) => alleles is null || (only is not null && !only.Contains(g)) ? null : cache.Model(species.Groups[g], alleles))
            .ToArray();
        InPlay = [.. Enumerable.Range(0, Models.Length).Where(g => Models[g] is not null)];
        Choices = new RecordChoices(species.Groups.Count);
        Networks = new GroupNetwork?[Models.Length];
        _doubted = new List<DoubtedRecord>[Models.Length];
        Assembly = new NetworkAssembly(Frame, Models.Length);
        ShareDoubts();
        CutHalfKnown();
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
        var dirty = new HashSet<int>(InPlay);
        for (var round = 0; round < MostRounds; round++)
        {
            _cancel.ThrowIfCancellationRequested();
            foreach (var g in dirty)
            {
                while (!Build(g))
                {
                    Escalate([g], Networks[g]!.ClashAt);
                }
            }

            dirty = Solve();
            if (dirty.Count == 0)
            {
                dirty = CutUnimplied();
            }

            if (dirty.Count == 0)
            {
                return;
            }
        }

        throw new InvalidOperationException("The records could not be brought together.");
    }

    /// <summary>Whether the records can all be true, founders carrying whatever it takes.</summary>
    public bool IsPossible()
    {
        foreach (var g in InPlay)
        {
            Choices.Raise(g);
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

    private HashSet<int> Solve()
    {
        if (!Assemble(out var failed))
        {
            Escalate([failed], 0);
            return [failed];
        }

        var parts = Assembly.Parts();
        Solutions = new PartSolution[parts.Count];
        for (var p = 0; p < parts.Count; p++)
        {
            Solutions[p] = _cache.Solve(parts[p], _cancel);
            if (!Solutions[p].IsPossible)
            {
                var node = Enumerable.Range(0, Frame.Count).FirstOrDefault(n => parts[p].Groups.Any(g =>
                    Assembly.Variables[g][n] >= 0 && Assembly.PartOf(Assembly.Variables[g][n]) == p));
                Escalate(parts[p].Groups, node);
                return [.. parts[p].Groups];
            }
        }

        return [];
    }

    // First founders may carry what nobody spoke of; where even that is not enough, some record is wrong.
    private void Escalate(IReadOnlyCollection<int> groups, int node)
    {
        var raised = false;
        foreach (var g in groups)
        {
            raised |= Choices.Level(g) == 0;
            Choices.Raise(g);
        }

        if (raised)
        {
            return;
        }

        var clash = new ClashSearch(_species, _animals, _settings, groups, Choices.Soft).Find(Frame, node, _cancel);
        _clashes.Add(clash);
        if (!clash.Records.Aggregate(false, (isNew, r) => Choices.Soften(r.Key, r.Index) | isNew))
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

    // With one parent not recorded, a possible het told of the animal says what is known of that parent: it is the start.
    private void CutHalfKnown()
    {
        for (var node = 0; node < Frame.RecordedCount; node++)
        {
            if (!Frame.IsFounder(node) && IsHalfKnown(node))
            {
                foreach (var (_, g) in ChancesTold(node))
                {
                    Choices.Cut(node, g);
                }
            }
        }
    }

    private bool IsHalfKnown(int node) => Frame.Sires[node] >= Frame.RecordedCount || Frame.Dams[node] >= Frame.RecordedCount;

    // A possible het told where nothing recorded implies it is the start; where something does it is not counted a second time.
    private HashSet<int> CutUnimplied()
    {
        var changed = new HashSet<int>();
        for (var node = 0; node < Frame.RecordedCount; node++)
        {
            if (Frame.IsFounder(node))
            {
                continue;
            }

            foreach (var (said, g) in ChancesTold(node))
            {
                if (!Choices.IsCut(node, g) && !IsImplied(node, g, said))
                {
                    Choices.Cut(node, g);
                    changed.Add(g);
                }
            }
        }

        return changed;
    }

    /// <summary>The possible hets told of an animal, with the group each speaks of, where nothing is said for certain.</summary>
    public IEnumerable<(Observation.Said Said, int Group)> ChancesTold(int node)
    {
        var observations = Frame.Records[node]!.Observations;
        if (!observations.Any(IsTold))
        {
            yield break;
        }

        foreach (var g in InPlay)
        {
            var model = Models[g]!;
            var said = observations.OfType<Observation.Said>().Where(model.Weights.Speaks).ToArray();
            if (said.Length > 0 && Array.TrueForAll(said, s => IsTold(s) && model.IsChance(s)))
            {
                yield return (said[0], g);
            }
        }
    }

    private bool IsImplied(int node, int group, Observation.Said said)
    {
        var model = Models[group]!;
        var spoken = model.Prior.Spoken(said.Reading);
        var weights = WeightsOf(node, group);
        var states = Networks[group]!.States[node];
        var carries = 0.0;
        for (var i = 0; i < states.Length; i++)
        {
            if (model.Space.Has(states[i], spoken))
            {
                carries += weights[i];
            }
        }

        return carries > Negligible;
    }
}
