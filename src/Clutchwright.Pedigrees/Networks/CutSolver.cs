namespace Clutchwright.Pedigrees.Networks;

/// <summary>Solves what is left of a network whose variables are partly held, again and again, at other states and with other weights.</summary>
/// <remarks>Not to be used by two threads at once.</remarks>
internal sealed class CutSolver
{
    private readonly CutNetwork _network;
    private readonly BucketTree _tree;
    private readonly double[][] _weights;
    private readonly int[] _drawn;

    /// <summary>Prepares the tables.</summary>
    public CutSolver(CutNetwork network)
    {
        _network = network;
        _tree = new(network.Shape);
        _weights = Array.ConvertAll(network.Slices, s => s.IsWhole ? [] : new double[s.Size]);
        _drawn = new int[network.Live.Length];
    }

    /// <summary>Gets what is solved.</summary>
    public CutNetwork Network => _network;

    /// <summary>Solves the rest, given the states of those held.</summary>
    /// <param name="factors">The tables of the whole network.</param>
    /// <param name="states">A state for each variable; those of variables that are not held do not matter.</param>
    /// <param name="cancel">Stops the work.</param>
    /// <returns>The answer; it holds until the next is asked for.</returns>
    public BucketTree Given(IReadOnlyList<Factor> factors, int[] states, CancellationToken cancel)
    {
        for (var f = 0; f < _weights.Length; f++)
        {
            var slice = _network.Slices[f];
            if (slice.IsWhole)
            {
                _weights[f] = factors[f].Values;
            }
            else
            {
                slice.Read(factors[f].Values, states, _weights[f]);
            }
        }

        _tree.Fill(_weights, cancel);
        return _tree;
    }

    /// <summary>Draws the states of all that is not held from their exact distribution given those held.</summary>
    /// <param name="factors">The tables of the whole network.</param>
    /// <param name="states">A state for each variable; those that are not held are drawn anew.</param>
    /// <param name="random">The state of the random numbers.</param>
    /// <param name="cancel">Stops the work.</param>
    /// <returns>What it was drawn from; it holds until the next is asked for.</returns>
    public BucketTree Redraw(IReadOnlyList<Factor> factors, int[] states, ref ulong random, CancellationToken cancel)
    {
        var tree = Given(factors, states, cancel);
        tree.Draw(_drawn, ref random);
        for (var i = 0; i < _drawn.Length; i++)
        {
            states[_network.Live[i]] = _drawn[i];
        }

        return tree;
    }
}
