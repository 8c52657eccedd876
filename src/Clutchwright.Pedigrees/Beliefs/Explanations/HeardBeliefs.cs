using Clutchwright.Genetics.Loci;
using Clutchwright.Pedigrees.Networks;

namespace Clutchwright.Pedigrees.Beliefs.Explanations;

/// <summary>What one animal would be believed to be if only some records were heard, in the model that the whole record led to.</summary>
internal sealed class HeardBeliefs
{
    // Many sets of records are heard for one explanation; one that takes more than this is heard together with the next.
    private const double StepBudget = 2e6;

    // What a set costs is counted, not timed, so that an answer is the same everywhere. Weighed against one look at an animal that is left out: one that
    // takes part, and one whose place in an order was sought in vain.
    private const double WorkOfAnimal = 10.0;
    private const double WorkOfEntry = 0.1;
    private const double WorkOfVainSearch = 20.0;
    private static readonly HashSet<RecordPlace> None = [];
    private readonly BeliefRun _run;
    private readonly BeliefSettings _settings;
    private readonly CancellationToken _cancel;
    private readonly GenotypeClaim _claim;
    private readonly int _node;
    private readonly int _group;
    private readonly Sex _heterogametic;
    private readonly int[] _groups;
    private readonly GroupNetwork[] _silence;
    private readonly bool[] _isConcerned;
    private double _work;
    private bool _isMostTooMuch;

    /// <summary>Finds what could matter: the part the animal would be in without any record.</summary>
    public HeardBeliefs(PedigreeBeliefs beliefs, int node, GenotypeClaim claim, CancellationToken cancel)
    {
        _run = beliefs.Run;
        _settings = beliefs.Settings;
        _cancel = cancel;
        _claim = claim;
        _node = node;
        _group = claim.Group.Index;
        _heterogametic = beliefs.Species.SexSystem.Heterogametic();
        _isConcerned = new bool[Frame.Count];
        var isTied = _run.Choices.HasShared || Frame.ChoiceCount > 0;
        var candidates = isTied ? _run.InPlay : [_group];
        var assembly = Assemble(candidates, new RecordHearing(Frame, None, null), out var networks, out var starts);
        Starts = starts[Array.IndexOf(candidates, _group)];
        Silence = networks[Array.IndexOf(candidates, _group)];
        _groups = [_group];
        _silence = [Silence];
        if (assembly.Variables[_group][node] is not (>= 0 and var variable))
        {
            return;
        }

        // Where all records together took too much, all but a few do too.
        _isMostTooMuch = _run.Assembly.Variables[_group][node] is >= 0 and var solved
            && _run.Solutions[_run.Assembly.PartOf(solved)].Entries > Math.Min(_settings.TableBudget, StepBudget);
        var parts = assembly.Parts();
        var part = assembly.PartOf(variable);
        _groups = _run.Choices.HasShared ? candidates : [.. parts[part].Groups];
        _silence = [.. _groups.Select(g => networks[Array.IndexOf(candidates, g)])];
        for (var n = 0; n < Frame.Count; n++)
        {
            _isConcerned[n] = _run.Choices.HasShared || Array.Exists(_groups, g => assembly.Variables[g][n] is >= 0 and var v && assembly.PartOf(v) == part);
        }
    }

    /// <summary>Gets the animals as nodes.</summary>
    public PedigreeFrame Frame => _run.Frame;

    /// <summary>Gets the place of the record that each founder starts with, by node.</summary>
    public Dictionary<int, int> Starts { get; }

    /// <summary>Gets what each animal can be at the group if no record is heard but the starts.</summary>
    public GroupNetwork Silence { get; }

    private bool IsRatio => Array.TrueForAll(_groups, g => _run.Models[g]!.IsExact);

    /// <summary>Gets whether the work that one explanation may take is done: the rest is then heard in one go.</summary>
    public bool IsSpent => _work > _settings.ExplanationBudget;

    /// <summary>Whether a record could tell something: of an animal tied to the one asked about, and not the same whatever that is.</summary>
    public bool CouldTell(int node, int index)
    {
        if (!_isConcerned[node])
        {
            return false;
        }

        var observation = Frame.Records[node]!.Observations[index];
        for (var i = 0; i < _groups.Length; i++)
        {
            var model = _run.Models[_groups[i]]!;
            if (!model.Weights.Speaks(observation))
            {
                continue;
            }

            var weights = model.Weights.Of(observation);
            var states = _silence[i].States[node];
            if (Array.Exists(states, s => weights[s] != weights[states[0]]))
            {
                return true;
            }
        }

        return false;
    }

    /// <summary>The weights for and against the claim if some records are heard.</summary>
    /// <returns><c>null</c> where that takes more than the budget.</returns>
    public ClaimOdds? Odds(IReadOnlySet<RecordPlace> heard) => Reckon(heard, canSample: false);

    /// <summary>The weights for and against the claim if all records but some are heard.</summary>
    /// <returns><c>null</c> where that takes more than the budget; it is then not tried again, since what is left out is little beside what is left.</returns>
    public ClaimOdds? OddsOfMost(IEnumerable<RecordPlace> heard)
    {
        if (IsSpent || _isMostTooMuch)
        {
            return null;
        }

        var odds = Odds(heard.ToHashSet());
        _isMostTooMuch = odds is null;
        return odds;
    }

    /// <summary>The weights for and against the claim before any record but the starts.</summary>
    public ClaimOdds Prior() => Reckon(None, canSample: true)!.Value;

    /// <summary>The weights for and against the claim by all records.</summary>
    public ClaimOdds Posterior() => Sum(
        _run.Networks[_group]!,
        _run.WeightsOf(_node, _group),
        _run.Assembly.Variables[_group][_node] is >= 0 and var variable && _run.Solutions[_run.Assembly.PartOf(variable)].Errors is not null);

    /// <summary>The weights for and against the claim of an animal of which nothing is recorded.</summary>
    public ClaimOdds AtRandom()
    {
        var model = _run.Models[_group]!;
        var weights = _run.Choices.IsRaised(_group, Frame.Kin[_node])
            ? model.Prior.AtRandom(Frame.Sexes[_node], (_, _) => true, FounderPrior.Tiny)
            : model.Prior.AtRandom(Frame.Sexes[_node], null);
        var (yes, no) = (0.0, 0.0);
        for (var s = 0; s < weights.Length; s++)
        {
            (yes, no) = Holds(model.Space, s) ? (yes + weights[s], no) : (yes, no + weights[s]);
        }

        return new(yes, no, IsRatio);
    }

    private ClaimOdds? Reckon(IReadOnlySet<RecordPlace> heard, bool canSample)
    {
        _cancel.ThrowIfCancellationRequested();
        var assembly = Assemble(_groups, new RecordHearing(Frame, heard, _node), out var networks, out _);
        var network = networks[Array.IndexOf(_groups, _group)];
        if (assembly.Variables[_group][_node] is not (>= 0 and var variable))
        {
            _work += Frame.Count;
            return Sum(network, [1.0], isSampled: false);
        }

        var part = assembly.Parts()[assembly.PartOf(variable)];
        var local = assembly.Local[variable];
        int[] counts = [.. part.Counts];
        var plan = EliminationPlan.For(counts, part.Factors.Select(f => f.Variables));
        var isTooMuch = plan.Entries > Math.Min(_settings.TableBudget, StepBudget);
        _work += Frame.Count + (counts.Length * (isTooMuch ? WorkOfVainSearch : WorkOfAnimal)) + (isTooMuch ? 0.0 : plan.Entries * WorkOfEntry);
        if (isTooMuch)
        {
            return canSample && PartSolution.Of(part, _settings, _cancel) is var solution ? Sum(network, solution.Marginals[local], solution.Errors is not null) : null;
        }

        return Sum(network, BucketTree.Of(counts, part.Factors, plan, _cancel).Marginal(local), isSampled: false);
    }

    private NetworkAssembly Assemble(int[] groups, RecordHearing hearing, out GroupNetwork[] networks, out Dictionary<int, int>[] starts)
    {
        networks = new GroupNetwork[groups.Length];
        starts = new Dictionary<int, int>[groups.Length];
        var assembly = new NetworkAssembly(Frame, _run.Models.Length);
        for (var i = 0; i < groups.Length; i++)
        {
            var model = _run.Models[groups[i]]!;
            var builder = new GroupBuilder(Frame, model, _run.Choices, hearing);
            networks[i] = builder.Build();
            starts[i] = builder.Starts;
            if (!networks[i].Reduce() || !assembly.Add(networks[i], model, builder.Doubted))
            {
                throw new InvalidOperationException("Records that can all be true cannot be so without some of them.");
            }
        }

        return assembly;
    }

    private ClaimOdds Sum(GroupNetwork network, double[] weights, bool isSampled)
    {
        var (yes, no) = (0.0, 0.0);
        for (var i = 0; i < weights.Length; i++)
        {
            (yes, no) = Holds(network.Space, network.States[_node][i]) ? (yes + weights[i], no) : (yes, no + weights[i]);
        }

        return new(yes, no, IsRatio && !isSampled);
    }

    private bool Holds(StateSpace space, int state) => _claim.Holds(space.Diplotypes[state], space.Sexes[state] == _heterogametic);
}
