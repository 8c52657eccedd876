using Clutchwright.Genetics.Loci;
using Clutchwright.Pedigrees.Kinship;
using Clutchwright.Planning.Simulation;
using Clutchwright.Testing.Pedigrees;

namespace Clutchwright.Planning.Tests.Simulation;

public class GeneDroppingTests
{
    private const int Replicates = 65_536;

    // With founder alleles marked at 1/2, two alleles are alike with (1 + phi) / 2; exact kinship by Clutchwright.Pedigrees.
    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    public void Run_Kennel_GivesTheExactInbreedingAndKinship(ulong seed)
    {
        var stock = Kennels.Kennel(120, seed);
        var exact = KinshipReckoner.Of(Descent.OfParents(stock.Sires, stock.Dams));
        var dropping = GeneDropping.Of(stock.Sires, stock.Dams, [new(0.5, RecombinationFraction.Free)]);

        var (inbred, kin) = dropping.Run(
            Replicates, seed, 2, () => new Tally(new long[stock.Count], new long[stock.Count]), Add, Join, TestContext.Current.CancellationToken);

        for (var animal = 1; animal < stock.Count; animal++)
        {
            // Six standard errors of 2 p - 1 at p = 1/2 or above.
            Assert.InRange((2.0 * inbred[animal] / Replicates) - 1.0 - exact.Inbreeding[animal], -6.0 / 256.0, 6.0 / 256.0);
            Assert.InRange((2.0 * kin[animal] / (4.0 * Replicates)) - 1.0 - exact.Between(animal, animal - 1), -6.0 / 256.0, 6.0 / 256.0);
        }

        static void Add(Tally tally, GeneDropBlock block)
        {
            for (var animal = 1; animal < tally.Inbred.Length; animal++)
            {
                tally.Inbred[animal] += Alike(block.OfSire(animal, 0), block.OfDam(animal, 0));
                tally.Kin[animal] += Alike(block.OfSire(animal, 0), block.OfSire(animal - 1, 0)) + Alike(block.OfSire(animal, 0), block.OfDam(animal - 1, 0))
                    + Alike(block.OfDam(animal, 0), block.OfSire(animal - 1, 0)) + Alike(block.OfDam(animal, 0), block.OfDam(animal - 1, 0));
            }
        }
    }

    // Mendel 1866, het x het: founders marked with certainty on one side only come out of a first generation as hets, their young as 1 : 2 : 1.
    [Fact]
    public void Copies_OfYoungOfTwoHets_AreOneTwoOne()
    {
        var dropping = GeneDropping.Of([-1, -1, 0, 0, 2], [-1, -1, 1, 1, 3], [new(0.5, RecombinationFraction.Free)]);

        var counts = dropping.Run(
            Replicates,
            3,
            1,
            () => new long[3],
            (sum, block) =>
            {
                var (none, one, two) = block.Copies(4, 0);
                (sum[0], sum[1], sum[2]) = (sum[0] + none, sum[1] + one, sum[2] + two);
            },
            (sum, other) => (sum[0], sum[1], sum[2]) = (sum[0] + other[0], sum[1] + other[1], sum[2] + other[2]),
            TestContext.Current.CancellationToken);

        // Full sibs' young: F = 1/4, so homozygous in 1/4 + 3/4 x 1/2 = 5/8, half of them each.
        ChiSquare.Agrees([5.0 / 16.0, 6.0 / 16.0, 5.0 / 16.0], counts);
    }

    // Haldane 1919: alleles of one parent come apart with r; over two intervals r12 + r23 - 2 r12 r23 [Trow 1913].
    [Fact]
    public void Run_LinkedLoci_ComeApartAsOftenAsTheirFractionSays()
    {
        var (near, far) = (RecombinationFraction.From(0.1), RecombinationFraction.From(0.25));
        var dropping = GeneDropping.Of([-1, -1, 0], [-1, -1, 1], [new(0.5, RecombinationFraction.Free), new(0.5, near), new(0.5, far), new(0.5, RecombinationFraction.Free)]);

        var counts = dropping.Run(
            Replicates,
            4,
            2,
            () => new long[6],
            (sum, block) =>
            {
                Count(sum, block, 0, 0, 1);
                Count(sum, block, 2, 0, 2);
                Count(sum, block, 4, 2, 3);
            },
            (sum, other) =>
            {
                for (var i = 0; i < sum.Length; i++)
                {
                    sum[i] += other[i];
                }
            },
            TestContext.Current.CancellationToken);

        ChiSquare.Agrees([0.9, 0.1], [counts[0], counts[1]]);
        ChiSquare.Agrees([0.7, 0.3], [counts[2], counts[3]]);
        ChiSquare.Agrees([0.5, 0.5], [counts[4], counts[5]]);

        // Where the sire is double het, tell whether the child got both alleles of one strand.
        static void Count(long[] sum, GeneDropBlock block, int at, int first, int second)
        {
            for (var word = 0; word < 4; word++)
            {
                var (a, b) = (block.OfSire(0, first)[word], block.OfSire(0, second)[word]);
                var isDouble = (a ^ block.OfDam(0, first)[word]) & (b ^ block.OfDam(0, second)[word]);
                var apart = (a ^ b ^ block.OfSire(2, first)[word] ^ block.OfSire(2, second)[word]) & isDouble;
                sum[at + 1] += (long)ulong.PopCount(apart);
                sum[at] += (long)ulong.PopCount(isDouble & ~apart);
            }
        }
    }

    [Fact]
    public void Run_FounderFrequency_IsKept()
    {
        var dropping = GeneDropping.Of([-1], [-1], [new(0.3, RecombinationFraction.Free), new(0.0, RecombinationFraction.Free), new(1.0, RecombinationFraction.Free)]);

        var copies = dropping.Run(
            Replicates,
            5,
            1,
            () => new long[6],
            (sum, block) =>
            {
                for (var locus = 0; locus < 3; locus++)
                {
                    var (none, one, two) = block.Copies(0, locus);
                    sum[2 * locus] += (2 * none) + one;
                    sum[(2 * locus) + 1] += one + (2 * two);
                }
            },
            (sum, other) =>
            {
                for (var i = 0; i < sum.Length; i++)
                {
                    sum[i] += other[i];
                }
            },
            TestContext.Current.CancellationToken);

        ChiSquare.Agrees([0.7, 0.3], copies[..2]);
        Assert.Equal([2 * Replicates, 0, 0, 2 * Replicates], copies[2..]);
    }

    [Theory]
    [InlineData(2)]
    [InlineData(3)]
    public void Run_AnyNumberOfThreads_IsTheSame(int threads)
    {
        var stock = Kennels.Kennel(60);
        var dropping = GeneDropping.Of(
            stock.Sires, stock.Dams, [new(0.2, RecombinationFraction.Free), new(0.2, RecombinationFraction.From(0.05))]);

        Assert.Equal(Words(1), Words(threads));

        ulong[] Words(int n) => dropping.Run(
            10_000,
            6,
            n,
            () => new ulong[1],
            (sum, block) =>
            {
                for (var animal = 0; animal < stock.Count; animal++)
                {
                    sum[0] = unchecked((sum[0] * 31) + block.OfSire(animal, 1)[2] + block.OfDam(animal, 0)[3]);
                }
            },
            (sum, other) => sum[0] = unchecked((sum[0] * 37) + other[0]),
            TestContext.Current.CancellationToken);
    }

    [Fact]
    public void Of_WrongInput_Throws()
    {
        var locus = new DroppedLocus(0.5, RecombinationFraction.Free);

        Assert.Throws<ArgumentException>(() => GeneDropping.Of([0], [-1], [locus]));
        Assert.Throws<ArgumentException>(() => GeneDropping.Of([-1], [], [locus]));
        Assert.Throws<ArgumentException>(() => GeneDropping.Of([-1], [-1], [locus with { Frequency = 1.1 }]));
    }

    private static int Alike(ReadOnlySpan<ulong> one, ReadOnlySpan<ulong> other)
    {
        var alike = GeneDropBlock.Replicates;
        for (var word = 0; word < one.Length; word++)
        {
            alike -= (int)ulong.PopCount(one[word] ^ other[word]);
        }

        return alike;
    }

    private static void Join(Tally tally, Tally other)
    {
        for (var i = 0; i < tally.Inbred.Length; i++)
        {
            tally.Inbred[i] += other.Inbred[i];
            tally.Kin[i] += other.Kin[i];
        }
    }

    private sealed record Tally(long[] Inbred, long[] Kin);
}
