using Clutchwright.Pedigrees.Networks;

namespace Clutchwright.Pedigrees.Beliefs;

/// <summary>Answers for a part of the network that is too large to be solved in one piece.</summary>
/// <remarks>
/// Where holding a few variables makes the rest small enough and their combinations of states are few, the combinations are summed: still exact. Beyond
/// that a Markov chain: in every sweep some variables are held at their states and all others drawn together from their exact distribution given those; several sets of held
/// variables take turns, and every variable is free in most of them. Now and then an <see cref="Excursion"/> joins what the sweeps alone may keep apart, so that every possible state
/// can be reached from every other. Probabilities are averages of exact conditional ones; standard errors come
/// from the means of batches and of whole chains, whichever differ more. Source: docs/references.md [JensenKongKjaerulff1995], [SheehanThomas1993].
/// </remarks>
internal static class NetworkSampler
{
    private const int BlockSets = 6;
    private const int Chains = 4;
    private const int BatchesAChain = 5;
    private const int MostHeld = 2_000;
    // An excursion costs as much as eleven sweeps; where these cost next to nothing there can be many.
    private const int SweepsAnExcursion = 100;
    private const int SweepsAnExcursionIfSmall = 4;
    private const double SmallSweep = 3_000.0;

    /// <summary>Sums over the states of a few held variables.</summary>
    /// <returns><c>null</c> if that takes more than the budget.</returns>
    public static (double LogTotal, double[][] Marginals)? SumCases(
        int[] counts, IReadOnlyList<Factor> factors, BeliefSettings settings, CancellationToken cancel)
    {
        var random = settings.Seed;
        var cut = CutNetwork.Choose(counts, factors, settings.TableBudget, new int[counts.Length], ref random, 12, cancel);
        if (cut is null || cut.Cases * cut.Plan.Entries > settings.WorkBudget)
        {
            return null;
        }

        var states = new int[counts.Length];
        var logs = new List<double>();
        var answers = new List<double[][]>();
        do
        {
            var tree = cut.Given(states, cancel);
            if (!double.IsNegativeInfinity(tree.LogTotal))
            {
                logs.Add(tree.LogTotal);
                answers.Add(Marginals(counts, cut, tree, states));
            }
        }
        while (Next());

        if (logs.Count == 0)
        {
            return (double.NegativeInfinity, []);
        }

        var largest = logs.Max();
        var total = logs.Sum(l => Math.Exp(l - largest));
        var sum = Array.ConvertAll(counts, c => new double[c]);
        for (var k = 0; k < logs.Count; k++)
        {
            Add(sum, answers[k], Math.Exp(logs[k] - largest) / total);
        }

        return (largest + Math.Log(total), sum);

        bool Next()
        {
            foreach (var v in cut.Cut)
            {
                if (++states[v] < counts[v])
                {
                    return true;
                }

                states[v] = 0;
            }

            return false;
        }
    }

    /// <summary>Samples.</summary>
    /// <returns>The marginals and their standard errors.</returns>
    public static (double[][] Marginals, double[][] Errors) Run(
        int[] counts, IReadOnlyList<Factor> factors, EliminationPlan plan, BeliefSettings settings, CancellationToken cancel)
    {
        var fringe = Fringe.Of(counts, factors, plan);
        var coreCounts = Array.ConvertAll(fringe.Core, v => counts[v]);
        var random = settings.Seed;
        var sets = Sets(coreCounts, fringe.Factors, settings.SweepBudget, ref random, cancel);
        var excursion = new Excursion(coreCounts, fringe.Factors, sets);
        var seeds = Enumerable.Range(0, Chains).Select(_ => SplitMix64.Next(ref random)).ToArray();
        var batches = new double[Chains * BatchesAChain][][];
        Parallel.For(0, Chains, new ParallelOptions { CancellationToken = cancel }, chain =>
            RunChain(counts, fringe, coreCounts, sets, excursion, settings.Sweeps / Chains, seeds[chain], batches.AsSpan(chain * BatchesAChain, BatchesAChain), cancel));
        return Summarise(counts, batches, 2.0 / settings.Sweeps);
    }

    /// <summary>The sets of held variables that take turns; every variable is free in some of them.</summary>
    /// <param name="counts">How many states each variable has.</param>
    /// <param name="factors">The tables.</param>
    /// <param name="budget">How many table entries a sweep may need.</param>
    /// <param name="random">The state of the random numbers.</param>
    /// <param name="cancel">Stops the work.</param>
    public static List<CutNetwork> Sets(int[] counts, IReadOnlyList<Factor> factors, double budget, ref ulong random, CancellationToken cancel)
    {
        var worn = new int[counts.Length];
        var sets = new List<CutNetwork>();
        while (sets.Count < BlockSets)
        {
            sets.Add(CutNetwork.Choose(counts, factors, budget, worn, ref random, MostHeld, cancel)
                ?? throw new InvalidOperationException("The network cannot be cut into parts that fit the budget of a sweep."));
        }

        // A variable that all of these hold has a set of its own.
        for (var v = 0; v < counts.Length; v++)
        {
            if (worn[v] == BlockSets)
            {
                sets.Add(CutNetwork.FreeingOnly(counts, factors, v));
            }
        }

        return sets;
    }

    private static void RunChain(
        int[] counts,
        Fringe fringe,
        int[] coreCounts,
        List<CutNetwork> sets,
        Excursion excursion,
        int sweeps,
        ulong random,
        Span<double[][]> batches,
        CancellationToken cancel)
    {
        var states = Start(coreCounts, fringe.Factors, sets, ref random, cancel);
        var all = new int[counts.Length];
        var burnIn = Math.Max(sets.Count, sweeps / 5);
        var aBatch = Math.Max(sets.Count, (sweeps - burnIn) / batches.Length);
        var (done, pause) = (0, sets.Average(s => s.Plan.Entries) <= SmallSweep ? SweepsAnExcursionIfSmall : SweepsAnExcursion);
        for (var sweep = 0; sweep < burnIn; sweep++)
        {
            Next(sets[sweep % sets.Count], ref random);
        }

        for (var b = 0; b < batches.Length; b++)
        {
            var sum = Array.ConvertAll(counts, c => new double[c]);
            var times = new int[counts.Length];
            for (var sweep = 0; sweep < aBatch; sweep++)
            {
                var set = sets[sweep % sets.Count];
                var tree = Next(set, ref random);
                for (var i = 0; i < set.Live.Length; i++)
                {
                    Count(fringe.Core[set.Live[i]], tree.Marginal(i));
                }

                for (var i = 0; i < states.Length; i++)
                {
                    all[fringe.Core[i]] = states[i];
                }

                fringe.Draw(all, ref random, Count);
            }

            for (var v = 0; v < sum.Length; v++)
            {
                for (var x = 0; x < sum[v].Length; x++)
                {
                    sum[v][x] /= times[v];
                }
            }

            batches[b] = sum;

            void Count(int v, double[] weights)
            {
                times[v]++;
                for (var x = 0; x < weights.Length; x++)
                {
                    sum[v][x] += weights[x];
                }
            }
        }

        BucketTree Next(CutNetwork set, ref ulong state)
        {
            if (++done % pause == 0 && set.Cut.Length > 0)
            {
                excursion.Try(states, ref state, cancel);
            }

            return set.Redraw(states, ref state, cancel);
        }
    }

    // From states that may be impossible to possible ones: what is impossible counts a little, and less and less.
    private static int[] Start(int[] counts, IReadOnlyList<Factor> factors, List<CutNetwork> sets, ref ulong random, CancellationToken cancel)
    {
        var states = new int[counts.Length];
        for (var v = 0; v < states.Length; v++)
        {
            states[v] = (int)(SplitMix64.Next(ref random) % (ulong)counts[v]);
        }

        for (var round = 0; round < 40; round++)
        {
            if (Excursion.IsPossible(counts, factors, states))
            {
                return states;
            }

            var little = Math.Pow(10.0, -2.0 - (round % 10));
            foreach (var set in sets)
            {
                var relaxed = set.With([.. factors.Select(f => new Factor(f.Variables, Excursion.Relaxed(f.Values, little)))]);
                relaxed.Redraw(states, ref random, cancel);
            }
        }

        throw new InvalidOperationException("No states were found that all records allow.");
    }

    private static double[][] Marginals(int[] counts, CutNetwork cut, BucketTree tree, int[] states)
    {
        var marginals = new double[counts.Length][];
        foreach (var v in cut.Cut)
        {
            marginals[v] = new double[counts[v]];
            marginals[v][states[v]] = 1.0;
        }

        for (var i = 0; i < cut.Live.Length; i++)
        {
            marginals[cut.Live[i]] = tree.Marginal(i);
        }

        return marginals;
    }

    private static void Add(double[][] sum, double[][] part, double weight)
    {
        for (var v = 0; v < sum.Length; v++)
        {
            for (var x = 0; x < sum[v].Length; x++)
            {
                sum[v][x] += weight * part[v][x];
            }
        }
    }

    private static (double[][] Marginals, double[][] Errors) Summarise(int[] counts, double[][][] batches, double leastError)
    {
        var means = Array.ConvertAll(counts, c => new double[c]);
        var errors = Array.ConvertAll(counts, c => new double[c]);
        foreach (var batch in batches)
        {
            Add(means, batch, 1.0 / batches.Length);
        }

        for (var v = 0; v < means.Length; v++)
        {
            for (var x = 0; x < means[v].Length; x++)
            {
                // Batches of one chain say nothing of chains that stay apart. What no sweep came upon can still be: an error of 0 would claim too much.
                double[] each = [.. batches.Select(b => b[v][x])];
                double[] chains = [.. each.Chunk(BatchesAChain).Select(c => c.Average())];
                errors[v][x] = Math.Max(leastError, Math.Max(ErrorOf(each, means[v][x]), ErrorOf(chains, means[v][x])));
            }
        }

        return (means, errors);
    }

    // The standard error of the mean of equally long stretches.
    private static double ErrorOf(double[] stretches, double mean) =>
        Math.Sqrt(stretches.Sum(s => (s - mean) * (s - mean)) / (stretches.Length - 1) / stretches.Length);
}
