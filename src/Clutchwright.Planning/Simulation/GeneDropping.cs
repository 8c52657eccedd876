using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;
using Clutchwright.Genetics.Loci;

namespace Clutchwright.Planning.Simulation;

/// <summary>A locus with two alleles, dropped down a pedigree.</summary>
/// <param name="Frequency">How common the marked allele is among founders, and among parents that are not known: in [0, 1].</param>
/// <param name="Recombination">With the locus before it in the list; <see cref="RecombinationFraction.Free"/> for the first, and where the two are not linked.</param>
public readonly record struct DroppedLocus(double Frequency, RecombinationFraction Recombination);

/// <summary>Gene dropping: founders get alleles at random, every animal one of each parent's two, and so down the pedigree, many thousand times
/// over.</summary>
/// <remarks>256 replicates are dropped at once, a bit each (docs/references.md [MacCluer1986] for the method). Autosomal loci; crossings-over without interference.
/// Immutable, and safe to use from many threads.</remarks>
public sealed class GeneDropping
{
    private readonly int[] _sires;
    private readonly int[] _dams;
    private readonly ulong[] _frequency;
    private readonly ulong[] _recombination;

    private GeneDropping(int[] sires, int[] dams, ulong[] frequency, ulong[] recombination) =>
        (_sires, _dams, _frequency, _recombination) = (sires, dams, frequency, recombination);

    /// <summary>How many animals there are.</summary>
    public int Animals => _sires.Length;

    /// <summary>How many loci there are.</summary>
    public int Loci => _frequency.Length;

    /// <summary>Prepares a pedigree and its loci.</summary>
    /// <param name="sires">The position of each animal's sire, below its own; -1: not known.</param>
    /// <param name="dams">The position of each animal's dam, in the same way.</param>
    /// <param name="loci">The loci, linked ones in map order.</param>
    /// <exception cref="ArgumentException">The lists are of different lengths, a parent does not come before its young, or a frequency is out of its range.</exception>
    public static GeneDropping Of(IReadOnlyList<int> sires, IReadOnlyList<int> dams, IReadOnlyList<DroppedLocus> loci)
    {
        if (sires.Count != dams.Count || sires.Select((s, i) => s < -1 || s >= i).Any(b => b) || dams.Select((d, i) => d < -1 || d >= i).Any(b => b))
        {
            throw new ArgumentException("Each animal needs a sire and a dam that come before it, or -1.", nameof(sires));
        }

        if (loci.Any(l => l.Frequency is not (>= 0.0 and <= 1.0)))
        {
            throw new ArgumentException("A frequency lies in [0, 1].", nameof(loci));
        }

        return new(
            [.. sires], [.. dams], [.. loci.Select(l => Share(l.Frequency))], [.. loci.Select((l, i) => i == 0 ? 1UL << 63 : Share(l.Recombination.Value))]);

        // In 2^64ths; certainty is off by one of them.
        static ulong Share(double p) => p >= 1.0 ? ulong.MaxValue : (ulong)(p * 18446744073709551616.0);
    }

    /// <summary>Drops the genes and adds up what is wanted of each block of 256 replicates.</summary>
    /// <param name="replicates">How many, at least 1; rounded up to whole blocks.</param>
    /// <param name="seed">Any number; the same seed gives the same result on any number of threads.</param>
    /// <param name="threads">How many threads at most, at least 1.</param>
    /// <param name="empty">Makes a sum of nothing.</param>
    /// <param name="add">Adds a block to a sum that no other thread sees; the block is used again afterwards.</param>
    /// <param name="join">Puts the second sum's content into the first; called in an order that does not depend on the threads.</param>
    /// <param name="cancel">Stops the work between blocks.</param>
    /// <remarks>Cost: about two random words for each animal, locus and 64 replicates; for linked loci about twelve. Memory: 64 bytes for each animal and locus a thread, and 64 sums.</remarks>
    /// <exception cref="OperationCanceledException"><paramref name="cancel"/> was set.</exception>
    public T Run<T>(
        int replicates, ulong seed, int threads, Func<T> empty, Action<T, GeneDropBlock> add, Action<T, T> join, CancellationToken cancel = default)
        where T : class
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(replicates, 1);
        ArgumentOutOfRangeException.ThrowIfLessThan(threads, 1);
        var blocks = (replicates + GeneDropBlock.Replicates - 1) / GeneDropBlock.Replicates;
        var parts = Math.Min(blocks, 64);
        var sums = new T[parts];
        Parallel.For(
            0,
            parts,
            new() { MaxDegreeOfParallelism = threads, CancellationToken = cancel },
            () => new GeneDropBlock(Animals, Loci),
            (part, _, block) =>
            {
                var sum = empty();
                var last = (int)((part + 1L) * blocks / parts);
                for (var number = (int)((long)part * blocks / parts); number < last; number++)
                {
                    cancel.ThrowIfCancellationRequested();
                    Drop(block, seed, number);
                    add(sum, block);
                }

                sums[part] = sum;
                return block;
            },
            _ => { });
        var total = empty();
        foreach (var sum in sums)
        {
            join(total, sum);
        }

        return total;
    }

    private void Drop(GeneDropBlock block, ulong seed, int number)
    {
        block.Number = number;
        var random = new LaneRandom(seed, (ulong)number);
        var isLinked = _recombination.Any(r => r != 1UL << 63);
        for (var locus = 0; locus < Loci; locus++)
        {
            if (isLinked)
            {
                random = DropLinked(block, random, locus);
            }
            else
            {
                random = DropFree(block, random, locus);
            }
        }
    }

    // The generator is handed in and back by value, so that it stays in registers throughout the loop.
    private LaneRandom DropFree(GeneDropBlock block, LaneRandom random, int locus)
    {
        unchecked
        {
            var frequency = _frequency[locus];
            var (sires, dams) = (_sires, _dams);
            ref var alleles = ref MemoryMarshal.GetReference(block.AllelesOf(locus));
            for (var animal = 0; animal < sires.Length; animal++)
            {
                var (sire, dam) = (sires[animal], dams[animal]);
                Vector256<ulong> ofSire, ofDam;
                if (sire >= 0)
                {
                    var first = Vector256.LoadUnsafe(ref alleles, (nuint)(8 * sire));
                    ofSire = first ^ (random.Next() & (first ^ Vector256.LoadUnsafe(ref alleles, (nuint)((8 * sire) + 4))));
                }
                else
                {
                    (ofSire, random) = Founder(random, frequency);
                }

                if (dam >= 0)
                {
                    var first = Vector256.LoadUnsafe(ref alleles, (nuint)(8 * dam));
                    ofDam = first ^ (random.Next() & (first ^ Vector256.LoadUnsafe(ref alleles, (nuint)((8 * dam) + 4))));
                }
                else
                {
                    (ofDam, random) = Founder(random, frequency);
                }

                ofSire.StoreUnsafe(ref alleles, (nuint)(8 * animal));
                ofDam.StoreUnsafe(ref alleles, (nuint)((8 * animal) + 4));
            }

            return random;
        }
    }

    private static (Vector256<ulong> Bits, LaneRandom Random) Founder(LaneRandom random, ulong frequency)
    {
        var bits = random.Bits(frequency);
        return (bits, random);
    }

    // Which of a parent's strands is passed on is kept from locus to locus, and changes where the two recombine.
    private LaneRandom DropLinked(GeneDropBlock block, LaneRandom random, int locus)
    {
        ref var alleles = ref MemoryMarshal.GetReference(block.AllelesOf(locus));
        ref var strands = ref MemoryMarshal.GetReference(block.Strands);
        for (var animal = 0; animal < _sires.Length; animal++)
        {
            for (var side = 0; side < 2; side++)
            {
                var parent = side == 0 ? _sires[animal] : _dams[animal];
                var place = (nuint)((8 * animal) + (4 * side));
                if (parent < 0)
                {
                    random.Bits(_frequency[locus]).StoreUnsafe(ref alleles, place);
                    continue;
                }

                // One draw is as good as a change where the two are free.
                var strand = random.Bits(_recombination[locus]) ^ (locus == 0 ? Vector256<ulong>.Zero : Vector256.LoadUnsafe(ref strands, place));
                strand.StoreUnsafe(ref strands, place);
                var first = Vector256.LoadUnsafe(ref alleles, (nuint)(8 * parent));
                (first ^ (strand & (first ^ Vector256.LoadUnsafe(ref alleles, (nuint)((8 * parent) + 4))))).StoreUnsafe(ref alleles, place);
            }
        }

        return random;
    }
}
