namespace Clutchwright.Pedigrees.Networks;

/// <summary>A step of a Markov chain that leads from every possible combination of states to every other, over impossible ones.</summary>
/// <remarks>
/// What is impossible gets a little weight, and the sets of held variables take their turns once there and once back, each drawing all others from their distribution under these
/// weights. Where that ends at something possible the chain stays there, otherwise it goes back to where it came from. There and back again makes the walk as probable in either direction
/// (in balance with the weights changed); possible combinations keep their weights, so that among them the step is in balance with the true weights. Every variable is free in some
/// set and no weight is 0, so any combination can be drawn: one such step joins any two possible combinations. Source: docs/references.md [SheehanThomas1993].
/// </remarks>
internal sealed class Excursion
{
    // Much leads far away, but in a large network seldom back to something possible; little the other way round.
    private static readonly double[] Littles = [0.3, 0.1, 0.03, 1e-2, 1e-3, 1e-4];
    private readonly int[] _counts;
    private readonly IReadOnlyList<Factor> _factors;
    private readonly Factor[][] _relaxed;

    /// <summary>Prepares the walks.</summary>
    /// <param name="counts">How many states each variable has.</param>
    /// <param name="factors">The tables.</param>
    /// <param name="sets">The sets of held variables; no variable may be held in all of them.</param>
    /// <exception cref="ArgumentException">A variable is held in every set.</exception>
    public Excursion(int[] counts, IReadOnlyList<Factor> factors, IReadOnlyList<CutNetwork> sets)
    {
        if (sets.SelectMany(s => s.Live).Distinct().Count() < counts.Length)
        {
            throw new ArgumentException("A variable is held in every set.", nameof(sets));
        }

        (_counts, _factors) = (counts, factors);
        _relaxed = Array.ConvertAll(Littles, little => factors.Select(f => f with { Values = Relaxed(f.Values, little) }).ToArray());
    }

    /// <summary>Tries one step.</summary>
    /// <param name="states">A possible combination; another one, or the same.</param>
    /// <param name="sets">The sets of held variables.</param>
    /// <param name="random">The state of the random numbers.</param>
    /// <param name="cancel">Stops the work.</param>
    /// <returns>Whether the walk ended at something possible.</returns>
    public bool Try(int[] states, IReadOnlyList<CutSolver> sets, ref ulong random, CancellationToken cancel)
    {
        var relaxed = _relaxed[(int)(SplitMix64.Next(ref random) % (ulong)_relaxed.Length)];
        var there = (int[])states.Clone();
        for (var turn = 0; turn < (2 * sets.Count) - 1; turn++)
        {
            sets[turn < sets.Count ? turn : (2 * sets.Count) - 2 - turn].Redraw(relaxed, there, ref random, cancel);
        }

        if (!IsPossible(_counts, _factors, there))
        {
            return false;
        }

        there.CopyTo(states, 0);
        return true;
    }

    /// <summary>Whether no table gives a combination the weight 0.</summary>
    public static bool IsPossible(int[] counts, IReadOnlyList<Factor> factors, int[] states)
    {
        foreach (var factor in factors)
        {
            var at = 0;
            foreach (var v in factor.Variables)
            {
                at = (at * counts[v]) + states[v];
            }

            if (factor.Values[at] == 0.0)
            {
                return false;
            }
        }

        return true;
    }

    /// <summary>The same weights, with a little in place of 0: a share of the largest.</summary>
    public static double[] Relaxed(double[] values, double little)
    {
        var floor = values.Max() * little;
        return Array.ConvertAll(values, v => v > 0.0 ? v : floor);
    }
}
