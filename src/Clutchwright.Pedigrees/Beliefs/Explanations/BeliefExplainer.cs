using Clutchwright.Genetics.Numbers;

namespace Clutchwright.Pedigrees.Beliefs.Explanations;

/// <summary>Hears the records step by step.</summary>
internal sealed class BeliefExplainer
{
    private const double Nothing = 1e-9;
    private readonly PedigreeBeliefs _beliefs;
    private readonly string _key;
    private readonly GenotypeClaim _claim;
    private readonly CancellationToken _cancel;
    private readonly int _node;

    public BeliefExplainer(PedigreeBeliefs beliefs, string key, GenotypeClaim claim, CancellationToken cancel)
    {
        _beliefs = beliefs;
        _key = key;
        _claim = claim;
        _cancel = cancel;
        _node = beliefs.NodeOf(key);
    }

    private PedigreeFrame Frame => _beliefs.Run.Frame;

    public BeliefExplanation Explain()
    {
        RecordPlace[] notCounted = [.. _beliefs[_key].NotCounted.Where(i => Speaks(_node, i)).Select(i => new RecordPlace(_key, i))];
        if (_beliefs.Run.Models[_claim.Group.Index] is null)
        {
            // No record speaks of any allele here: every animal is wild.
            var odds = _claim.Holds(default, isOrdered: false) ? new ClaimOdds(1.0, 0.0, IsRatio: true) : new ClaimOdds(0.0, 1.0, IsRatio: true);
            return Report(odds, odds, null, [], [], null, [], notCounted);
        }

        var heard = new HeardBeliefs(_beliefs, _node, _claim, _cancel);
        var ownStart = heard.Starts.TryGetValue(_node, out var own) ? new RecordPlace(_key, own) : (RecordPlace?)null;
        var silent = new List<RecordPlace>();
        var groups = new KinOrder(Frame, _node).Group(Telling(heard, silent));
        var prior = heard.Prior();
        var posterior = heard.Posterior();
        var steps = Hear(heard, groups, prior, posterior, silent);
        return Report(
            prior, posterior, ownStart, ParentStarts(heard), steps, ownStart is null ? null : heard.AtRandom().Chance(), silent, notCounted);
    }

    private BeliefExplanation Report(
        ClaimOdds prior,
        ClaimOdds posterior,
        RecordPlace? start,
        IReadOnlyList<RecordPlace> parentStarts,
        IReadOnlyList<ExplanationStep> steps,
        Probability? beforeStart,
        IReadOnlyList<RecordPlace> silent,
        IReadOnlyList<RecordPlace> notCounted) => new(
            _key,
            _claim,
            beforeStart,
            start,
            parentStarts,
            prior.Chance(),
            prior.Odds,
            steps,
            silent,
            notCounted,
            posterior.Chance(),
            posterior.Odds,
            _beliefs.Run.Models[_claim.Group.Index] is not null && _beliefs.Run.Choices.IsRaised(_claim.Group.Index, Frame.Kin[_node]));

    // Records that could tell something; own ones that cannot are noted as silent.
    private List<RecordPlace> Telling(HeardBeliefs heard, List<RecordPlace> silent)
    {
        var telling = new List<RecordPlace>();
        var seen = new HashSet<string>(StringComparer.Ordinal);
        for (var node = 0; node < Frame.RecordedCount; node++)
        {
            var record = Frame.Records[node]!;
            if (!seen.Add(record.Key))
            {
                continue;
            }

            for (var i = 0; i < record.Observations.Count; i++)
            {
                var isStart = heard.Starts.TryGetValue(node, out var start) && start == i;
                if (isStart || IsNotCounted(node, i))
                {
                    continue;
                }

                if (heard.CouldTell(node, i))
                {
                    telling.Add(new(record.Key, i));
                }
                else if (node == _node && Speaks(node, i))
                {
                    silent.Add(new(record.Key, i));
                }
            }
        }

        return telling;
    }

    private bool IsNotCounted(int node, int index) =>
        !Frame.IsFounder(node)
        && Frame.Records[node]!.Observations[index] is Observation.Said { Basis: StatementBasis.Told } told
        && Array.TrueForAll(_beliefs.Run.InPlay, g => !_beliefs.Run.Models[g]!.Weights.Speaks(told)
            || (_beliefs.Run.Models[g]!.IsChance(told) && !_beliefs.Run.Choices.IsCut(node, g)));

    private bool Speaks(int node, int index) =>
        _beliefs.Run.Models[_claim.Group.Index] is { } model && model.Weights.Speaks(Frame.Records[node]!.Observations[index]);

    private List<RecordPlace> ParentStarts(HeardBeliefs heard)
    {
        var found = new SortedSet<int>();
        var done = new HashSet<int>();
        var open = new Stack<int>([_node]);
        while (open.TryPop(out var node))
        {
            if (node < 0 || !done.Add(node))
            {
                continue;
            }

            var states = heard.Silence.States[node];
            if (node != _node && heard.Starts.ContainsKey(node) && !(states.Length == 1 && heard.Silence.Space.Diplotypes[states[0]].IsWild))
            {
                found.Add(node);
            }

            open.Push(heard.Silence.Sires[node]);
            open.Push(heard.Silence.Dams[node]);
            foreach (var male in heard.Silence.PossibleSires[node])
            {
                open.Push(male);
            }
        }

        return [.. found.Select(n => new RecordPlace(Frame.Records[n]!.Key, heard.Starts[n]))];
    }

    private static List<ExplanationStep> Hear(
        HeardBeliefs heard, IReadOnlyList<(StepKind Kind, RecordPlace[] Records)> groups, ClaimOdds prior, ClaimOdds posterior, List<RecordPlace> silent)
    {
        var steps = new List<ExplanationStep>();
        var all = groups.SelectMany(g => g.Records).ToHashSet();
        var soFar = new HashSet<RecordPlace>();
        var waiting = new List<(StepKind Kind, RecordPlace[] Records)>();
        var untold = new List<RecordPlace>();
        var last = prior;
        foreach (var group in groups)
        {
            soFar.UnionWith(group.Records);
            waiting.Add(group);
            if (heard.IsSpent || heard.Odds(soFar) is not { } now)
            {
                continue;
            }

            RecordPlace[] records = [.. waiting.SelectMany(w => w.Records)];
            var kind = waiting.Count == 1 ? waiting[0].Kind : StepKind.Several;
            waiting.Clear();
            var factor = now.Since(last);
            var restsOn = heard.OddsOfMost(all.Except(records)) is { } without ? posterior.Since(without) : double.NaN;
            if (IsOne(factor) && (double.IsNaN(restsOn) || IsOne(restsOn)))
            {
                // What tells nothing is not heard later either, so that each step tells of what stands in it.
                untold.AddRange(records);
                soFar.ExceptWith(records);
                continue;
            }

            steps.Add(new(kind, records, factor, now.Chance(), restsOn));
            last = now;
        }

        // Records of which none tells anything may yet tell something together, and so may what was too much to be heard step by step. Without them the
        // belief is what it was after the last step, so that what rests on them is their factor.
        RecordPlace[] rest = [.. untold, .. waiting.SelectMany(w => w.Records)];
        var left = posterior.Since(last);
        if (rest.Length == 0 || IsOne(left))
        {
            silent.AddRange(rest);
        }
        else
        {
            var kind = untold.Count == 0 && waiting.Count == 1 ? waiting[0].Kind : StepKind.Several;
            steps.Add(new(kind, rest, left, posterior.Chance(), left));
        }

        return steps;
    }

    private static bool IsOne(double factor) => Math.Abs(factor - 1.0) <= Nothing;
}
