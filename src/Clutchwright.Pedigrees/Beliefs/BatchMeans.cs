namespace Clutchwright.Pedigrees.Beliefs;

/// <summary>What one chain of sampling has met, as means of equally long stretches, however long it goes on.</summary>
/// <remarks>A stretch is some rounds, in each of which every set of held variables has its turn once. When there are ten stretches every two are put together, so that there are
/// always from five to nine, and what they are means of grows with the chain.</remarks>
/// <param name="counts">How many states each variable has.</param>
internal sealed class BatchMeans(int[] counts)
{
    private const int Most = 10;
    private readonly List<double[][]> _batches = [];
    private double[][]? _open;
    private int _roundsABatch = 1;
    private int _roundsOpen;

    /// <summary>Gets how many stretches there are, the one that is going on left out.</summary>
    public int Count => _batches.Count;

    /// <summary>Gets where what is met in a round is added, by variable and state.</summary>
    public double[][] Sums => _open ??= Array.ConvertAll(counts, c => new double[c]);

    /// <summary>Ends a round.</summary>
    public void EndRound()
    {
        if (++_roundsOpen < _roundsABatch)
        {
            return;
        }

        _batches.Add(Sums);
        (_open, _roundsOpen) = (null, 0);
        if (_batches.Count < Most)
        {
            return;
        }

        for (var b = 0; b < Most / 2; b++)
        {
            _batches[b] = Joined(_batches[2 * b], _batches[(2 * b) + 1]);
        }

        _batches.RemoveRange(Most / 2, Most / 2);
        _roundsABatch *= 2;
    }

    /// <summary>The means of one state of a variable, by stretch.</summary>
    /// <param name="variable">The variable.</param>
    /// <param name="state">The state.</param>
    /// <param name="means">Filled with as many as there are stretches.</param>
    public void Read(int variable, int state, Span<double> means)
    {
        for (var b = 0; b < _batches.Count; b++)
        {
            // Weights of one variable sum to 1 each time, so that their sum says how often it was met.
            means[b] = _batches[b][variable][state] / _batches[b][variable].Sum();
        }
    }

    private static double[][] Joined(double[][] first, double[][] second)
    {
        for (var v = 0; v < first.Length; v++)
        {
            for (var x = 0; x < first[v].Length; x++)
            {
                first[v][x] += second[v][x];
            }
        }

        return first;
    }
}
