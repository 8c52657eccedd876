using Clutchwright.Planning.Simulation;

namespace Clutchwright.Planning.Tests.Simulation;

public class CountedRandomTests
{
    // Salmon et al. 2011, the known-answer vectors of philox4x32 with 10 rounds [recalled]: counter, key, result.
    [Theory]
    [InlineData(0x0000000000000000, 0x0000000000000000, 0x0000000000000000, 0xe169c58d6627e8d5, 0x9b00dbd8bc57ac4c)]
    [InlineData(0xffffffffffffffff, 0xffffffffffffffff, 0xffffffffffffffff, 0x41c83b0e408f276d, 0x6d5451fda20bc7c6)]
    [InlineData(0x85a308d3243f6a88, 0x0370734413198a2e, 0x299f31d0a4093822, 0x94fdccebd16cfe09, 0x24126ea15001e420)]
    public void Block_KnownCounters_IsThePublishedAnswer(ulong block, ulong stream, ulong seed, ulong first, ulong second) =>
        Assert.Equal((first, second), CountedRandom.Block(seed, stream, block));

    [Fact]
    public void Next_OfAStream_IsItsBlocksInOrder()
    {
        var random = new CountedRandom(5, 9);

        Assert.Equal(CountedRandom.Block(5, 9, 0), (random.Next(), random.Next()));
        Assert.Equal(CountedRandom.Block(5, 9, 1), (random.Next(), random.Next()));
    }

    [Fact]
    public void Restart_InTheMiddleOfABlock_BeginsTheOtherStream()
    {
        var random = new CountedRandom(5, 9);
        _ = random.Next();

        random.Restart(10);

        Assert.Equal(CountedRandom.Block(5, 10, 0), (random.Next(), random.Next()));
    }

    [Fact]
    public void Below_TenThousandDraws_AreEqualWithinSixErrors()
    {
        var random = new CountedRandom(3);
        var counts = new int[7];
        for (var i = 0; i < 70_000; i++)
        {
            counts[random.Below(7)]++;
        }

        Assert.All(counts, c => Assert.InRange(c, 10_000 - (6 * 93), 10_000 + (6 * 93)));
        Assert.Throws<ArgumentOutOfRangeException>(() => random.Below(0));
    }

    [Fact]
    public void NextShare_ManyDraws_LieInTheirRangeWithTheirMean()
    {
        var random = new CountedRandom(4);

        var shares = Enumerable.Range(0, 10_000).Select(_ => random.NextShare()).ToArray();

        Assert.All(shares, s => Assert.InRange(s, 0.0, 1.0 - 1e-16));
        Assert.InRange(shares.Average(), 0.5 - (6 * 0.0029), 0.5 + (6 * 0.0029));
    }
}
