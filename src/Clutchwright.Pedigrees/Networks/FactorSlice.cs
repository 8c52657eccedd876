namespace Clutchwright.Pedigrees.Networks;

/// <summary>How a table of a network is read of which some variables are held.</summary>
internal sealed class FactorSlice
{
    private readonly (int Variable, int Stride)[] _held;
    private readonly int[] _places;

    private FactorSlice(int[] scope, (int Variable, int Stride)[] held, int[] places)
    {
        Scope = scope;
        _held = held;
        _places = places;
    }

    /// <summary>Gets the variables that are not held, by their place among all that are not.</summary>
    public int[] Scope { get; }

    /// <summary>Gets whether no variable of the table is held.</summary>
    public bool IsWhole => _held.Length == 0;

    /// <summary>Gets how many entries are read.</summary>
    public int Size => _places.Length;

    /// <summary>Prepares the reading.</summary>
    /// <param name="factor">The table.</param>
    /// <param name="counts">How many states each variable has.</param>
    /// <param name="isCut">Whether each variable is held.</param>
    /// <param name="place">The place of each other variable among those that are not held.</param>
    public static FactorSlice Of(Factor factor, int[] counts, bool[] isCut, int[] place)
    {
        var variables = factor.Variables;
        var strides = new int[variables.Length];
        var (stride, live, size) = (1, 0, 1);
        for (var i = strides.Length - 1; i >= 0; i--)
        {
            strides[i] = stride;
            stride *= counts[variables[i]];
            live += isCut[variables[i]] ? 0 : 1;
            size *= isCut[variables[i]] ? 1 : counts[variables[i]];
        }

        var scope = new int[live];
        var held = new (int, int)[variables.Length - live];
        var places = new int[size];
        var (filled, atHeld) = (1, 0);
        for (var i = strides.Length - 1; i >= 0; i--)
        {
            var variable = variables[i];
            if (isCut[variable])
            {
                held[atHeld++] = (variable, strides[i]);
                continue;
            }

            scope[--live] = place[variable];
            for (var x = 1; x < counts[variable]; x++)
            {
                for (var k = 0; k < filled; k++)
                {
                    places[(x * filled) + k] = places[k] + (x * strides[i]);
                }
            }

            filled *= counts[variable];
        }

        return new(scope, held, places);
    }

    /// <summary>Reads the table at the states of those held.</summary>
    /// <param name="values">The table's weights.</param>
    /// <param name="states">A state for each variable.</param>
    /// <param name="read">Filled with <see cref="Size"/> weights.</param>
    public void Read(double[] values, int[] states, double[] read)
    {
        var start = 0;
        foreach (var (variable, stride) in _held)
        {
            start += states[variable] * stride;
        }

        for (var k = 0; k < read.Length; k++)
        {
            read[k] = values[start + _places[k]];
        }
    }
}
