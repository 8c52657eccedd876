namespace Clutchwright.Pedigrees.Kinship;

/// <summary>The kinship of each of some animals with each of others: shape (rows, columns), values in [0, 1], no unit.</summary>
public sealed class KinshipTable
{
    private readonly double[][] _values;

    internal KinshipTable(int[] rows, int[] columns, double[][] values)
    {
        Rows = rows.AsReadOnly();
        Columns = columns.AsReadOnly();
        _values = values;
    }

    /// <summary>The positions of the animals of the rows.</summary>
    public IReadOnlyList<int> Rows { get; }

    /// <summary>The positions of the animals of the columns.</summary>
    public IReadOnlyList<int> Columns { get; }

    /// <summary>The kinship of the animal of a row with that of a column; where both are one animal, its self-kinship (1 + F) / 2.</summary>
    /// <param name="row">The row, from 0.</param>
    /// <param name="column">The column, from 0.</param>
    public double this[int row, int column] => _values[row][column];
}
