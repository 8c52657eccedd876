using Clutchwright.Pedigrees.Networks;

namespace Clutchwright.Pedigrees.Beliefs;

/// <summary>Answers for a part of the network that is too large to be solved in one piece.</summary>
/// <remarks>
/// Where holding a few variables makes the rest small enough and their combinations of states are few, the combinations are summed: still exact. Beyond
/// that a Markov chain: in every sweep some variables are held at their states and all others drawn together from their exact distribution given those; several sets of held
/// variables take turns, and every variable is free in most of them. Now and then an <see cref="Excursion"/> joins what the sweeps alone may keep apart, so that every possible state
/// can be reached from every other. Probabilities are averages of exact conditional ones; standard errors come
/// from the means of batches and of whole chains, whichever differ more. Where a clock says that time is up, the chains end with the sweeps they have. Source: docs/references.md [JensenKongKjaerulff1995], [SheehanThomas1993].
/// </remarks>
internal static class NetworkSampler
{
    private const int BlockSets = 6;
    private const int Chains = 4;
    private const int LeastBatches = 5;
    private const int LeastRounds = 20;
    private const int BurnIn = 5;
    private const int MostHeld = 2_000;
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
    /// <param name="counts">How many states each variable has.</param>
    /// <param name="factors">The tables.</param>
    /// <param name="plan">The plan of the whole.</param>
    /// <param name="settings">The budgets.</param>
    /// <param name="cancel">Stops the work.</param>
    /// <param name="clock">When the reckoning began; <c>null</c>: now.</param>
    /// <returns>The marginals and their standard errors; <c>null</c>: no chain came upon states that all tables allow, and most likely there are none.</returns>
    public static (double[][] Marginals, double[][] Errors)? Run(
        int[] counts, IReadOnlyList<Factor> factors, EliminationPlan plan, BeliefSettings settings, CancellationToken cancel, WorkClock? clock = null)
    {
        clock ??= new(settings);
        var fringe = Fringe.Of(counts, factors, plan);
        var coreCounts = Array.ConvertAll(fringe.Core, v => counts[v]);
        var random = settings.Seed;
        var sets = Sets(coreCounts, fringe.Factors, settings.SweepBudget, ref random, cancel);
        var excursion = new Excursion(coreCounts, fringe.Factors, sets);
        var seeds = Enumerable.Range(0, Chains).Select(_ => SplitMix64.Next(ref random)).ToArray();
        var chains = new SamplingChain[Chains];
        Each(chain => chains[chain] = new(counts, fringe, sets, excursion, seeds[chain], cancel));

        if (Array.Find(chains, c => c.HasStart) is not { } started)
        {
            return null;
        }

        foreach (var chain in chains.Where(c => !c.HasStart))
        {
            chain.StartFrom(started);
        }

        // Round by round all chains together, so that they are of one length whenever the time is up, and however many run at once.
        var (rounds, begun) = ((settings.Sweeps / Chains / sets.Count) + 1, clock.Share);
        for (var round = 0; round <= rounds / BurnIn && (round < LeastRounds / BurnIn || clock.Share < begun + ((1.0 - begun) / BurnIn)); round++)
        {
            Each(chain => chains[chain].GoRound(isCounted: false, cancel));
        }

        for (var round = 0; round < LeastBatches || (round < rounds - (rounds / BurnIn) && (round < LeastRounds || clock.Share < 1.0)); round++)
        {
            Each(chain => chains[chain].GoRound(isCounted: true, cancel));
        }

        return Summarise(counts, Array.ConvertAll(chains, c => c.Met), 2.0 / settings.Sweeps);

        void Each(Action<int> step) => Parallel.For(0, Chains, new ParallelOptions { CancellationToken = cancel }, step);
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

    private static (double[][] Marginals, double[][] Errors) Summarise(int[] counts, BatchMeans[] met, double leastError)
    {
        var means = Array.ConvertAll(counts, c => new double[c]);
        var errors = Array.ConvertAll(counts, c => new double[c]);
        var each = Array.ConvertAll(met, m => new double[m.Count]);
        var chains = new double[met.Length];
        for (var v = 0; v < means.Length; v++)
        {
            for (var x = 0; x < means[v].Length; x++)
            {
                var squares = 0.0;
                for (var c = 0; c < met.Length; c++)
                {
                    met[c].Read(v, x, each[c]);
                    chains[c] = each[c].Average();
                    var own = ErrorOf(each[c], chains[c]);
                    squares += own * own;
                }

                // Batches of one chain say nothing of chains that stay apart. What no sweep came upon can still be: an error of 0 would claim too much.
                means[v][x] = chains.Average();
                errors[v][x] = Math.Max(leastError, Math.Max(Math.Sqrt(squares) / met.Length, ErrorOf(chains, means[v][x])));
            }
        }

        return (means, errors);
    }

    // The standard error of the mean of equally long stretches.
    private static double ErrorOf(double[] stretches, double mean) =>
        Math.Sqrt(stretches.Sum(s => (s - mean) * (s - mean)) / (stretches.Length - 1) / stretches.Length);
}
