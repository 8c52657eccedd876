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
    private const double MuchMore = 20.0;

    /// <summary>Sums over the states of a few held variables.</summary>
    /// <returns><c>null</c> if that takes more than the budget.</returns>
    public static (double LogTotal, double[][] Marginals)? SumCases(
        int[] counts, IReadOnlyList<Factor> factors, EliminationPlan plan, BeliefSettings settings, CancellationToken cancel)
    {
        // Case by case nothing is saved but room, but for orders that were not the best.
        if (plan.Entries > MuchMore * settings.WorkBudget)
        {
            return null;
        }

        var random = settings.Seed;
        var cut = CutNetwork.Choose(counts, factors, plan.Order, settings.TableBudget, new int[counts.Length], ref random, 12, cancel);
        if (cut is null || cut.Cases * cut.Plan.Entries > settings.WorkBudget)
        {
            return null;
        }

        var solver = new CutSolver(cut);
        var states = new int[counts.Length];
        var sum = Array.ConvertAll(counts, c => new double[c]);
        var (largest, total) = (double.NegativeInfinity, 0.0);
        do
        {
            var tree = solver.Given(factors, states, cancel);
            if (double.IsNegativeInfinity(tree.LogTotal))
            {
                continue;
            }

            // The weights of all cases so far are kept relative to the heaviest.
            if (tree.LogTotal > largest)
            {
                var less = Math.Exp(largest - tree.LogTotal);
                (largest, total) = (tree.LogTotal, total * less);
                Array.ForEach(sum, row => Scale(row, less));
            }

            var weight = Math.Exp(tree.LogTotal - largest);
            total += weight;
            foreach (var v in cut.Cut)
            {
                sum[v][states[v]] += weight;
            }

            for (var i = 0; i < cut.Live.Length; i++)
            {
                Add(sum[cut.Live[i]], tree.Marginal(i), weight);
            }
        }
        while (Next());

        if (total == 0.0)
        {
            return (double.NegativeInfinity, []);
        }

        Array.ForEach(sum, row => Scale(row, 1.0 / total));
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
        var order = EliminationPlan.For(counts, factors.Select(f => f.Variables)).Order;
        var worn = new int[counts.Length];
        var sets = new List<CutNetwork>();
        while (sets.Count < BlockSets)
        {
            sets.Add(CutNetwork.Choose(counts, factors, order, budget, worn, ref random, MostHeld, cancel)
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
        CutSolver[] solvers = [.. sets.Select(s => new CutSolver(s))];
        var states = Start(coreCounts, fringe.Factors, solvers, ref random, cancel);
        var all = new int[counts.Length];
        var burnIn = Math.Max(sets.Count, sweeps / 5);
        var aBatch = Math.Max(sets.Count, (sweeps - burnIn) / batches.Length);
        var (done, pause) = (0, sets.Average(s => s.Plan.Entries) <= SmallSweep ? SweepsAnExcursionIfSmall : SweepsAnExcursion);
        for (var sweep = 0; sweep < burnIn; sweep++)
        {
            Next(solvers[sweep % sets.Count], ref random);
        }

        for (var b = 0; b < batches.Length; b++)
        {
            var sum = Array.ConvertAll(counts, c => new double[c]);
            var times = new int[counts.Length];
            for (var sweep = 0; sweep < aBatch; sweep++)
            {
                var set = sets[sweep % sets.Count];
                var tree = Next(solvers[sweep % sets.Count], ref random);
                for (var i = 0; i < set.Live.Length; i++)
                {
                    var v = fringe.Core[set.Live[i]];
                    Add(sum[v], tree.Marginal(i), 1.0);
                    times[v]++;
                }

                for (var i = 0; i < states.Length; i++)
                {
                    all[fringe.Core[i]] = states[i];
                }

                fringe.Draw(all, ref random, sum);
            }

            foreach (var v in fringe.Outer)
            {
                times[v] = aBatch;
            }

            for (var v = 0; v < sum.Length; v++)
            {
                Scale(sum[v], 1.0 / times[v]);
            }

            batches[b] = sum;
        }

        BucketTree Next(CutSolver set, ref ulong state)
        {
            if (++done % pause == 0 && set.Network.Cut.Length > 0)
            {
                excursion.Try(states, solvers, ref state, cancel);
            }

            return set.Redraw(fringe.Factors, states, ref state, cancel);
        }
    }

    // From states that may be impossible to possible ones: what is impossible counts a little, and less and less.
    private static int[] Start(int[] counts, IReadOnlyList<Factor> factors, CutSolver[] sets, ref ulong random, CancellationToken cancel)
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
            Factor[] relaxed = [.. factors.Select(f => new Factor(f.Variables, Excursion.Relaxed(f.Values, little)))];
            foreach (var set in sets)
            {
                set.Redraw(relaxed, states, ref random, cancel);
            }
        }

        throw new InvalidOperationException("No states were found that all records allow.");
    }

    private static void Add(double[] sum, double[] part, double weight)
    {
        for (var x = 0; x < sum.Length; x++)
        {
            sum[x] += weight * part[x];
        }
    }

    private static void Scale(double[] row, double factor)
    {
        for (var x = 0; x < row.Length; x++)
        {
            row[x] *= factor;
        }
    }

    private static (double[][] Marginals, double[][] Errors) Summarise(int[] counts, double[][][] batches, double leastError)
    {
        var means = Array.ConvertAll(counts, c => new double[c]);
        var errors = Array.ConvertAll(counts, c => new double[c]);
        foreach (var batch in batches)
        {
            for (var v = 0; v < means.Length; v++)
            {
                Add(means[v], batch[v], 1.0 / batches.Length);
            }
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
