using Clutchwright.Genetics.Loci;
using Clutchwright.Planning.Schemes;
using CsCheck;

namespace Clutchwright.Planning.Tests.Schemes;

public class LinkedLociTests
{
    // Canzar and El-Kebir 2011: the first selfing step of the pepper has a chance of 0.12375 with its backcross.
    [Fact]
    public void ChildChance_PepperBackcross_IsThePublished() => Assert.Equal(
        0.12375,
        PublishedSchemes.Pepper().Loci.ChildChance(HaplotypePair.Parse("0001/1110"), HaplotypePair.Parse("1110/1110"), HaplotypePair.Parse("1101/1110")),
        1e-15);

    [Fact]
    public void ChildChance_AnyCross_IsThatOfEveryWayToWalkAlongTheStrands() => SchemeCase.Of(4, 2, hasWeights: false).Sample(
        c =>
        {
            var (first, second) = (c.Problem.Parents[0], c.Problem.Parents[^1]);

            Assert.Equal(SchemeCheck.ChanceOf(first, second, c.Problem.Target, c.Neighbours), c.Problem.Loci.ChildChance(first, second, c.Problem.Target), 1e-12);
        },
        iter: 500);

    [Fact]
    public void ChildChance_AllChildren_SumToOne() => SchemeCase.Of(3, 2, hasWeights: false).Sample(
        c => Assert.Equal(
            1.0,
            Enumerable.Range(0, 36).Sum(i => c.Problem.Loci.ChildChance(c.Problem.Parents[0], c.Problem.Parents[^1], PairAt(i))),
            1e-12),
        iter: 200);

    [Fact]
    public void Neighbours_TooManyLoci_Throws() => Assert.Throws<ArgumentException>(
        () => LinkedLoci.Neighbours([.. Enumerable.Repeat(RecombinationFraction.Free, 10)]));

    [Fact]
    public void Parse_TextOfAPair_IsWrittenBackTheSame()
    {
        Assert.Equal("0001/1110", HaplotypePair.Parse("1110/0001").ToString(4));
        Assert.Equal(HaplotypePair.Parse("01/10"), HaplotypePair.Parse("10/01"));
    }

    [Theory]
    [InlineData("")]
    [InlineData("11")]
    [InlineData("11/1")]
    [InlineData("12/11")]
    [InlineData("1/1/1")]
    public void Parse_WrongText_Throws(string text) => Assert.Throws<FormatException>(() => HaplotypePair.Parse(text));

    [Theory]
    [InlineData(-1, 0)]
    [InlineData(0, 1024)]
    public void New_HaplotypeOutOfRange_Throws(int first, int second) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => new HaplotypePair(first, second));

    [Fact]
    public void Problem_WrongInput_Throws()
    {
        var loci = LinkedLoci.Neighbours([]);

        Assert.Throws<ArgumentException>(() => new SchemeProblem(loci, [], default, 0.5));
        Assert.Throws<ArgumentException>(() => new SchemeProblem(loci, [new(2, 0)], default, 0.5));
        Assert.Throws<ArgumentOutOfRangeException>(() => new SchemeProblem(loci, [default], default, 1.0));
    }

    // ceil(ln(1 - g) / ln(1 - p)), each small enough to count by hand.
    [Theory]
    [InlineData(0.5, 0.99, 7)]
    [InlineData(0.25, 0.95, 11)]
    [InlineData(0.5, 0.75, 2)]
    [InlineData(1.0, 0.99, 1)]
    public void OffspringFor_AChance_IsTheSmallestNumberThatDoes(double chance, double success, int offspring) =>
        Assert.Equal(offspring, new SchemeProblem(LinkedLoci.Neighbours([]), [default], default, success).OffspringFor(chance));

    [Fact]
    public void OffspringFor_ImpossibleChild_IsNone() =>
        Assert.Null(new SchemeProblem(LinkedLoci.Neighbours([]), [default], default, 0.9).OffspringFor(0.0));

    private static HaplotypePair PairAt(int index) => Enumerable.Range(0, 8)
        .SelectMany(high => Enumerable.Range(0, high + 1), (high, low) => new HaplotypePair(low, high))
        .ElementAt(index);
}
