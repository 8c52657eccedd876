using Clutchwright.Pedigrees.Networks;

namespace Clutchwright.Pedigrees.Beliefs;

/// <summary>A part of the network, solved.</summary>
internal sealed class PartSolution
{
    private const int KeptConditions = 512;

    // A part as large as this is not solved again for every two animals; they are then taken as independent given everything.
    private const double JointBudget = 2e7;
    private readonly Lock _turn = new();
    private readonly Dictionary<int, double[]?[]> _given = [];
    private readonly int[] _counts;
    private readonly int[] _starts;
    private readonly Factor[] _factors;
    private readonly EliminationPlan _plan;

    private PartSolution(NetworkPart part, EliminationPlan plan, double logTotal, double[][] marginals, double[][]? errors)
    {
        _counts = [.. part.Counts];
        _factors = [.. part.Factors];
        _starts = new int[_counts.Length];
        for (var v = 1; v < _starts.Length; v++)
        {
            _starts[v] = _starts[v - 1] + _counts[v - 1];
        }

        _plan = plan;
        LogTotal = logTotal;
        Marginals = marginals;
        Errors = errors;
    }

    /// <summary>Gets the logarithm of the total weight; minus infinity if nothing is possible.</summary>
    public double LogTotal { get; }

    /// <summary>Gets the weights of every variable's states.</summary>
    public double[][] Marginals { get; }

    /// <summary>Gets the standard errors of <see cref="Marginals"/>; <c>null</c>: the answer is exact.</summary>
    public double[][]? Errors { get; }

    /// <summary>Gets how many entries the tables of an exact answer take, whether it was given or not.</summary>
    public double Entries => _plan.Entries;

    /// <summary>Gets whether something is possible.</summary>
    public bool IsPossible => !double.IsNegativeInfinity(LogTotal);

    /// <summary>Solves a part.</summary>
    /// <param name="part">The part.</param>
    /// <param name="settings">The budgets.</param>
    /// <param name="cancel">Stops the work.</param>
    /// <param name="clock">When the reckoning began that this is a step of; <c>null</c>: now.</param>
    public static PartSolution Of(NetworkPart part, BeliefSettings settings, CancellationToken cancel, WorkClock? clock = null)
    {
        int[] counts = [.. part.Counts];
        var plan = EliminationPlan.For(counts, part.Factors.Select(f => f.Variables));
        if (plan.Entries > settings.TableBudget)
        {
            if (NetworkSampler.SumCases(counts, part.Factors, plan, settings, cancel) is { } summed)
            {
                return new(part, plan, summed.LogTotal, summed.Marginals, null);
            }

            // Where nothing possible came up something has to be let in, as where a sum is 0.
            return NetworkSampler.Run(counts, part.Factors, plan, settings, cancel, clock) is var (means, errors)
                ? new(part, plan, double.NaN, means, errors)
                : new(part, plan, double.NegativeInfinity, [], null);
        }

        var tree = BucketTree.Of(counts, part.Factors, plan, cancel);
        return double.IsNegativeInfinity(tree.LogTotal)
            ? new(part, plan, tree.LogTotal, [], null)
            : new(part, plan, tree.LogTotal, [.. Enumerable.Range(0, counts.Length).Select(tree.Marginal)], null);
    }

    /// <summary>The logarithm of the total weight of a part, and nothing else; <c>null</c> if that takes more than the budget.</summary>
    public static double? LogTotalWithin(NetworkPart part, BeliefSettings settings, CancellationToken cancel)
    {
        int[] counts = [.. part.Counts];
        var plan = EliminationPlan.For(counts, part.Factors.Select(f => f.Variables));
        return plan.Entries > settings.TableBudget ? null : BucketTree.Of(counts, part.Factors, plan, cancel).LogTotal;
    }

    /// <summary>Gets whether two variables can be read together: not in a sampled or very large part.</summary>
    public bool HasJoint => Errors is null && _plan.Entries <= JointBudget;

    /// <summary>The weights of two variables together; they sum to 1.</summary>
    /// <remarks>Solves the part once for each state of the first; that is kept, so that the first with any other is read off. Without <see cref="HasJoint"/> the two are
    /// taken as independent.</remarks>
    public double[,] Joint(int first, int second, CancellationToken cancel)
    {
        var joint = new double[_counts[first], _counts[second]];
        var given = HasJoint ? Given(first, cancel) : null;
        for (var x = 0; x < _counts[first]; x++)
        {
            ReadOnlySpan<double> weights = given is null ? Marginals[second]
                : given[x] is { } all ? all.AsSpan(_starts[second], _counts[second])
                : [];
            for (var y = 0; y < weights.Length; y++)
            {
                joint[x, y] = Marginals[first][x] * weights[y];
            }
        }

        return joint;
    }

    // By state of the variable the weights of all variables' states, one after the other; null where it cannot be.
    private double[]?[] Given(int variable, CancellationToken cancel)
    {
        lock (_turn)
        {
            if (_given.TryGetValue(variable, out var known))
            {
                return known;
            }
        }

        var given = new double[]?[_counts[variable]];
        for (var x = 0; x < given.Length; x++)
        {
            var only = new double[_counts[variable]];
            only[x] = 1.0;
            var tree = BucketTree.Of(_counts, _factors.Append(new Factor([variable], only)), _plan, cancel);
            if (double.IsNegativeInfinity(tree.LogTotal))
            {
                continue;
            }

            var all = given[x] = new double[_starts[^1] + _counts[^1]];
            for (var v = 0; v < _counts.Length; v++)
            {
                tree.Marginal(v).CopyTo(all.AsSpan(_starts[v]));
            }
        }

        lock (_turn)
        {
            if (_given.Count >= KeptConditions)
            {
                _given.Clear();
            }

            _given[variable] = given;
        }

        return given;
    }
}
