namespace Clutchwright.Pedigrees.Networks;

/// <summary>The way through a large table in blocks, together with tables over some of its variables.</summary>
/// <remarks>A table's variables are listed slowest first. Within a block of the large table the places in a small one are read from a
/// list made once (<see cref="Lane"/>); from block to block they are counted on.</remarks>
internal sealed class TableWalk
{
    /// <summary>The most entries of a block, unless the last variable alone has more.</summary>
    public const int BlockLimit = 512;

    private readonly int[] _outerCounts;

    /// <summary>Prepares a walk over a table.</summary>
    /// <param name="scope">Its variables.</param>
    /// <param name="countOf">How many states each variable has.</param>
    public TableWalk(int[] scope, int[] countOf)
    {
        var counts = new int[scope.Length];
        var size = 1;
        for (var i = 0; i < counts.Length; i++)
        {
            counts[i] = countOf[scope[i]];
            size = checked(size * counts[i]);
        }

        var block = 1;
        var inner = scope.Length;
        while (inner > 0 && (inner == scope.Length || (long)block * counts[inner - 1] <= BlockLimit))
        {
            block *= counts[--inner];
        }

        (Scope, Counts, Size, Inner, Block) = (scope, counts, size, inner, block);
        _outerCounts = counts[..inner];
    }

    /// <summary>Gets the variables of the large table.</summary>
    public int[] Scope { get; }

    /// <summary>Gets their numbers of states.</summary>
    public int[] Counts { get; }

    /// <summary>Gets how many entries the table has.</summary>
    public int Size { get; }

    /// <summary>Gets how many variables count blocks; the others count inside a block.</summary>
    public int Inner { get; }

    /// <summary>Gets the entries of a block.</summary>
    public int Block { get; }

    /// <summary>Goes on to the next block.</summary>
    /// <param name="digits">The states of the variables that count blocks.</param>
    /// <param name="lanes">The small tables.</param>
    /// <param name="starts">Where the block begins in each of them.</param>
    public void Advance(Span<int> digits, Lane[] lanes, Span<int> starts)
    {
        unchecked
        {
            for (var d = Inner - 1; d >= 0; d--)
            {
                if (++digits[d] < _outerCounts[d])
                {
                    for (var s = 0; s < lanes.Length; s++)
                    {
                        starts[s] += lanes[s].Strides[d];
                    }

                    return;
                }

                digits[d] = 0;
                for (var s = 0; s < lanes.Length; s++)
                {
                    starts[s] -= lanes[s].Strides[d] * (_outerCounts[d] - 1);
                }
            }
        }
    }

    /// <summary>Multiplies a small table into the large one.</summary>
    public void Multiply(double[] target, Lane lane, double[] source)
    {
        Lane[] lanes = [lane];
        Span<int> starts = [0];
        Span<int> digits = stackalloc int[Inner];
        digits.Clear();
        for (var at = 0; at < Size; at += Block)
        {
            lane.Multiply(target.AsSpan(at, Block), source, starts[0]);
            Advance(digits, lanes, starts);
        }
    }

    /// <summary>Sums the large table into a small one.</summary>
    public void Sum(double[] table, Lane lane, double[] target)
    {
        Array.Clear(target);
        Lane[] lanes = [lane];
        Span<int> starts = [0];
        Span<int> digits = stackalloc int[Inner];
        digits.Clear();
        for (var at = 0; at < Size; at += Block)
        {
            lane.AddTo(target, starts[0], table.AsSpan(at, Block));
            Advance(digits, lanes, starts);
        }
    }
}
