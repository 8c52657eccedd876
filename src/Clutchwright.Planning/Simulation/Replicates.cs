namespace Clutchwright.Planning.Simulation;

/// <summary>Runs a simulation many times over, each time on its own stream of random numbers, so that the results are the same on any number of
/// threads.</summary>
public static class Replicates
{
    private const int PerBlock = 64;

    /// <summary>Runs every replicate and keeps each result.</summary>
    /// <param name="count">How many replicates, at least 0.</param>
    /// <param name="seed">Any number; the same seed gives the same results.</param>
    /// <param name="threads">How many threads at most, at least 1.</param>
    /// <param name="run">One replicate: gets the replicate's own stream and its number, from 0. It must not depend on anything that other replicates change.</param>
    /// <param name="cancel">Stops the work between blocks of 64 replicates.</param>
    /// <returns>The results by number.</returns>
    /// <exception cref="OperationCanceledException"><paramref name="cancel"/> was set.</exception>
    public static T[] Run<T>(int count, ulong seed, int threads, Func<CountedRandom, int, T> run, CancellationToken cancel = default)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(count);
        ArgumentOutOfRangeException.ThrowIfLessThan(threads, 1);
        var results = new T[count];
        var blocks = (count + PerBlock - 1) / PerBlock;
        Parallel.For(0, blocks, new() { MaxDegreeOfParallelism = threads, CancellationToken = cancel }, block =>
        {
            var random = new CountedRandom(seed);
            var first = block * PerBlock;
            var last = Math.Min(PerBlock, count - first) + first;
            for (var i = first; i < last; i++)
            {
                random.Restart((ulong)i);
                results[i] = run(random, i);
            }
        });
        return results;
    }

    /// <summary>Runs every replicate, adding up in blocks, and puts the sums together in order.</summary>
    /// <param name="count">How many replicates, at least 0.</param>
    /// <param name="seed">Any number; the same seed gives the same result.</param>
    /// <param name="threads">How many threads at most, at least 1.</param>
    /// <param name="empty">Makes a sum of nothing.</param>
    /// <param name="add">Runs one replicate on its own stream and adds it to a sum that no other thread sees.</param>
    /// <param name="join">Puts the second sum's content into the first.</param>
    /// <param name="cancel">Stops the work between blocks of 64 replicates.</param>
    /// <returns>The sum of all, the blocks joined in order of their numbers, so that even rounding is the same on any number of threads.</returns>
    /// <exception cref="OperationCanceledException"><paramref name="cancel"/> was set.</exception>
    public static T Sum<T>(
        int count, ulong seed, int threads, Func<T> empty, Action<T, CountedRandom, int> add, Action<T, T> join, CancellationToken cancel = default)
        where T : class
    {
        ArgumentOutOfRangeException.ThrowIfNegative(count);
        ArgumentOutOfRangeException.ThrowIfLessThan(threads, 1);

        // Few large blocks: as many sums are held as there are blocks, and the blocks must not depend on the threads.
        var perBlock = Math.Max(PerBlock, (count + 255) / 256);
        var blocks = (count + perBlock - 1) / perBlock;
        var sums = new T[blocks];
        Parallel.For(0, blocks, new() { MaxDegreeOfParallelism = threads, CancellationToken = cancel }, block =>
        {
            var random = new CountedRandom(seed);
            var sum = empty();
            var first = block * perBlock;
            var last = Math.Min(perBlock, count - first) + first;
            for (var i = first; i < last; i++)
            {
                random.Restart((ulong)i);
                add(sum, random, i);
            }

            sums[block] = sum;
        });
        var total = empty();
        foreach (var sum in sums)
        {
            join(total, sum);
        }

        return total;
    }
}
