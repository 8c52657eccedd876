namespace Clutchwright.Pedigrees.Networks;

/// <summary>Arrays for messages, given back when they have been read and taken again for others of the same size.</summary>
/// <param name="sizes">The sizes there are; a pool is named by its place among them.</param>
internal sealed class TablePool(int[] sizes)
{
    private readonly Stack<double[]>[] _free = Array.ConvertAll(sizes, _ => new Stack<double[]>());

    /// <summary>Takes an array; it may hold anything.</summary>
    public double[] Take(int pool) => _free[pool].TryPop(out var known) ? known : GC.AllocateUninitializedArray<double>(sizes[pool]);

    /// <summary>Gives an array back.</summary>
    public void Give(int pool, ref double[]? array)
    {
        _free[pool].Push(array!);
        array = null;
    }
}
