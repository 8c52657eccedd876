using Clutchwright.Pedigrees.Networks;

namespace Clutchwright.Pedigrees.Beliefs;

/// <summary>One chain of <see cref="NetworkSampler"/>.</summary>
internal sealed class SamplingChain
{
    // An excursion costs as much as eleven sweeps; where these cost next to nothing there can be many.
    private const int SweepsAnExcursion = 100;
    private const int SweepsAnExcursionIfSmall = 4;
    private const double SmallSweep = 3_000.0;
    private const int MostRounds = 48;
    private readonly Fringe _fringe;
    private readonly Excursion _excursion;
    private readonly CutSolver[] _solvers;
    private int[]? _states;
    private readonly int[] _all;
    private readonly int _pause;
    private ulong _random;
    private int _done;

    /// <summary>Starts a chain at some possible states, if it comes upon any.</summary>
    /// <param name="counts">How many states each variable has.</param>
    /// <param name="fringe">The outer part, summed out.</param>
    /// <param name="sets">The sets of held variables of the inner part.</param>
    /// <param name="excursion">What leads from every possible state to every other.</param>
    /// <param name="random">The seed.</param>
    /// <param name="cancel">Stops the work.</param>
    public SamplingChain(int[] counts, Fringe fringe, List<CutNetwork> sets, Excursion excursion, ulong random, CancellationToken cancel)
    {
        (_fringe, _excursion, _random) = (fringe, excursion, random);
        _solvers = [.. sets.Select(s => new CutSolver(s))];
        _states = Start(Array.ConvertAll(fringe.Core, v => counts[v]), fringe.Factors, _solvers, ref _random, cancel);
        _all = new int[counts.Length];
        _pause = sets.Average(s => s.Plan.Entries) <= SmallSweep ? SweepsAnExcursionIfSmall : SweepsAnExcursion;
        Met = new(counts);
    }

    /// <summary>Gets whether it has states to go on from.</summary>
    public bool HasStart => _states is not null;

    /// <summary>Gets what the chain has met.</summary>
    public BatchMeans Met { get; }

    /// <summary>Takes over the states of a chain that has some.</summary>
    public void StartFrom(SamplingChain other) => _states = (int[])other._states!.Clone();

    /// <summary>Makes a sweep with every set.</summary>
    /// <param name="isCounted">Whether what is met counts.</param>
    /// <param name="cancel">Stops the work.</param>
    /// <exception cref="InvalidOperationException">It has no start.</exception>
    public void GoRound(bool isCounted, CancellationToken cancel)
    {
        var states = _states ?? throw new InvalidOperationException("The chain has no start.");
        foreach (var solver in _solvers)
        {
            if (++_done % _pause == 0 && solver.Network.Cut.Length > 0)
            {
                _excursion.Try(states, _solvers, ref _random, cancel);
            }

            var tree = solver.Redraw(_fringe.Factors, states, ref _random, cancel);
            if (isCounted)
            {
                Count(solver.Network, tree, states);
            }
        }

        if (isCounted)
        {
            Met.EndRound();
        }
    }

    private void Count(CutNetwork set, BucketTree tree, int[] states)
    {
        for (var i = 0; i < set.Live.Length; i++)
        {
            var sum = Met.Sums[_fringe.Core[set.Live[i]]];
            var weights = tree.Marginal(i);
            for (var x = 0; x < sum.Length; x++)
            {
                sum[x] += weights[x];
            }
        }

        for (var i = 0; i < states.Length; i++)
        {
            _all[_fringe.Core[i]] = states[i];
        }

        _fringe.Draw(_all, ref _random, Met.Sums);
    }

    // From states that may be impossible to possible ones: what is impossible counts a little, and less and less. Null: none came up.
    private static int[]? Start(int[] counts, IReadOnlyList<Factor> factors, CutSolver[] sets, ref ulong random, CancellationToken cancel)
    {
        var states = new int[counts.Length];
        for (var v = 0; v < states.Length; v++)
        {
            states[v] = (int)(SplitMix64.Next(ref random) % (ulong)counts[v]);
        }

        for (var round = 0; round < MostRounds; round++)
        {
            if (Excursion.IsPossible(counts, factors, states))
            {
                return states;
            }

            // In the end it has to count less than several alleles that were let in (FounderPrior.Tiny), or it would be taken before those.
            var little = Math.Pow(10.0, -2.0 - (4 * (round % 12)));
            Factor[] relaxed = [.. factors.Select(f => new Factor(f.Variables, Excursion.Relaxed(f.Values, little)))];
            foreach (var set in sets)
            {
                set.Redraw(relaxed, states, ref random, cancel);
            }
        }

        return null;
    }
}
