namespace Clutchwright.Pedigrees.Kinship;

/// <summary>The kinship of every pair of some animals: symmetric, values in [0, 1], no unit. The diagonal is self-kinship, (1 + F) / 2, not F.</summary>
public sealed class KinshipMatrix
{
    private readonly double[][] _values;

    internal KinshipMatrix(int[] animals, double[][] values)
    {
        Animals = animals.AsReadOnly();
        _values = values;
    }

    /// <summary>The positions of the animals, in the order of rows and columns.</summary>
    public IReadOnlyList<int> Animals { get; }

    /// <summary>The mean of the whole matrix, the diagonal included: the chance that two alleles drawn with replacement from the group are identical by
    /// descent, the mean kinship. 0 for no animals.</summary>
    public double Mean => Animals.Count == 0
        ? 0.0
        : _values.Sum(row => (2.0 * row.Sum()) - row[^1]) / Animals.Count / Animals.Count;

    /// <summary>The kinship of two of the animals.</summary>
    /// <param name="first">The index of one in <see cref="Animals"/>.</param>
    /// <param name="second">The index of the other.</param>
    public double this[int first, int second] => first >= second ? _values[first][second] : _values[second][first];
}
