namespace Clutchwright.Genetics.Crosses;

/// <summary>Lists the products of one entry from each of several factors, largest first, without multiplying them all out.</summary>
internal static class BestFirst
{
    /// <summary>Lists choices of one entry a factor in falling order of the product of their weights, lazily.</summary>
    /// <param name="logWeights">For each factor the logarithms of its entries' weights, in falling order, none infinite.</param>
    /// <returns>For each choice the index into every factor (an array not to be changed) and the logarithm of the product.</returns>
    /// <remarks>
    /// Factors are ranked by how little is lost in going from their first entry to their second. Every choice but the first has one
    /// predecessor: either the last touched factor went one entry down, or the next factor was touched, or the touch moved to it; the move loses no less, by the
    /// ranking. So each choice enters the queue once. Cost of the first k choices: O(k log k) comparisons and k copies of one index array.
    /// </remarks>
    public static IEnumerable<(int[] Choice, double LogProduct)> Products(IReadOnlyList<double[]> logWeights)
    {
        var ranked = Enumerable.Range(0, logWeights.Count)
            .Where(f => logWeights[f].Length > 1)
            .OrderBy(f => logWeights[f][0] - logWeights[f][1])
            .ToArray();
        var first = logWeights.Sum(f => f[0]);
        yield return (new int[logWeights.Count], first);
        if (ranked.Length == 0)
        {
            yield break;
        }

        var queue = new PriorityQueue<State, (double Loss, int Order)>();
        var order = 0;
        Push(Touch(new int[logWeights.Count], 0, 1), 0);
        while (queue.TryDequeue(out var state, out _))
        {
            yield return (state.Choice, state.Log);
            var (factor, entry) = (ranked[state.Last], state.Choice[ranked[state.Last]]);
            if (entry + 1 < logWeights[factor].Length)
            {
                Push(Touch(state.Choice, state.Last, entry + 1), state.Last);
            }

            if (state.Last + 1 < ranked.Length)
            {
                Push(Touch(state.Choice, state.Last + 1, 1), state.Last + 1);
                if (entry == 1)
                {
                    var moved = Touch(state.Choice, state.Last, 0);
                    moved[ranked[state.Last + 1]] = 1;
                    Push(moved, state.Last + 1);
                }
            }
        }

        int[] Touch(int[] choice, int last, int entry)
        {
            var copy = (int[])choice.Clone();
            copy[ranked[last]] = entry;
            return copy;
        }

        // Summed afresh in one order: equal products get equal sums, whatever way led to them.
        void Push(int[] choice, int last)
        {
            var log = 0.0;
            for (var f = 0; f < choice.Length; f++)
            {
                log += logWeights[f][choice[f]];
            }

            queue.Enqueue(new(choice, last, log), (-log, order++));
        }
    }

    private sealed record State(int[] Choice, int Last, double Log);
}
