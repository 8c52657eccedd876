using Clutchwright.Proofs.Distributions;
using Clutchwright.Proofs.Linkages;
using Clutchwright.Proofs.Segregations;
using CsCheck;

namespace Clutchwright.Proofs.Tests.Linkages;

public class LinkageTestTests
{
    private static readonly Gen<LinkageFamily> Families = Gen.Select(Gen.Int[1, 40], Gen.Int[0, 40], Gen.Bool).Select((n, k, known) =>
        new LinkageFamily(Math.Min(k, n), n, known ? LinkagePhase.Known : LinkagePhase.Unknown));

    /// <summary>LOD tables [computed; the rows of six with one recombinant equal a textbook's worked example, recalled].</summary>
    [Theory]
    [InlineData(6, 1, LinkagePhase.Known, new[] { double.NegativeInfinity, -0.216, 0.394, 0.577, 0.623, 0.509, 0.299, 0.0 })]
    [InlineData(6, 1, LinkagePhase.Unknown, new[] { double.NegativeInfinity, -0.517, 0.093, 0.276, 0.323, 0.222, 0.076, 0.0 })]
    [InlineData(10, 0, LinkagePhase.Known, new[] { 3.010, 2.967, 2.788, 2.553, 2.041, 1.461, 0.792, 0.0 })]
    [InlineData(10, 0, LinkagePhase.Unknown, new[] { 2.709, 2.666, 2.487, 2.252, 1.740, 1.160, 0.498, 0.0 })]
    public void Lod_OfTheTextbooksFamilies_IsTheKnownTable(int meioses, int recombinants, LinkagePhase phase, double[] lods)
    {
        var family = new LinkageFamily(recombinants, meioses, phase);
        double[] at = [0.0, 0.01, 0.05, 0.1, 0.2, 0.3, 0.4, 0.5];

        Assert.All(at.Zip(lods), p => Assert.Equal(p.Second, family.Lod(p.First), 5.1e-4));
    }

    [Fact]
    public void Best_OfOneInSix_IsOneSixthWithTheKnownLod()
    {
        var test = LinkageTest.Of([new(1, 6, LinkagePhase.Known)]);

        Assert.Equal(1.0 / 6.0, test.Curve.Best, 1e-15);
        Assert.Equal(0.63212, test.Curve.Most, 5e-6);
    }

    /// <summary>Drosophila, black and vestigial: 391 of 2300 [recalled]; Sturtevant's crossovers [Sturtevant1913, table recalled].</summary>
    [Theory]
    [InlineData(391, 2300, 0.17000)]
    [InlineData(214, 21736, 0.00985)]
    [InlineData(1464, 4551, 0.32169)]
    [InlineData(115, 324, 0.35494)]
    [InlineData(260, 693, 0.37518)]
    [InlineData(471, 1584, 0.29735)]
    [InlineData(2062, 6116, 0.33715)]
    [InlineData(406, 898, 0.45212)]
    [InlineData(17, 573, 0.02967)]
    [InlineData(109, 405, 0.26914)]
    public void Best_OfPublishedCrossovers_IsTheirShare(int recombinants, int meioses, double r)
    {
        var test = LinkageTest.Of([new(recombinants, meioses, LinkagePhase.Known)]);

        Assert.Equal(r, test.Curve.Best, 5e-6);
        Assert.InRange(test.Curve.Best, test.Curve.Support.Low, test.Curve.Support.High);
        Assert.InRange(test.Curve.Best, test.Interval!.Value.Low, test.Interval.Value.High);
        Assert.InRange(test.Curve.Best, test.Credible.Low, test.Credible.High);
    }

    /// <summary>The LOD from its definition: the chance of the counts there over that at 1/2.</summary>
    [Fact]
    public void Lod_OnAnyFamily_EqualsTheDefinition() => Gen.Select(Families, Gen.Double[0.001, 0.5]).Sample((family, r) =>
    {
        var (n, k) = (family.Meioses, family.Recombinants);
        var here = Math.Pow(r, k) * Math.Pow(1.0 - r, n - k);
        var other = Math.Pow(r, n - k) * Math.Pow(1.0 - r, k);
        var chance = family.Phase == LinkagePhase.Known ? here : (here + other) / 2.0;

        Assert.Equal(Math.Log10(chance * Math.Pow(2.0, n)), family.Lod(r), 1e-9);
    });

    [Fact]
    public void Best_OnAnyFamilies_IsNoLowerThanAnyPlaceOfAFineGrid() => Families.Array[1, 4].Sample(families =>
    {
        var test = LinkageTest.Of(families);

        for (var i = 0; i <= 2000; i++)
        {
            Assert.True(test.Lod(i / 4000.0) <= test.Curve.Most + 1e-9, $"{i / 4000.0}: {test.Lod(i / 4000.0)} above {test.Curve.Most} at {test.Curve.Best}");
        }

        Assert.True(test.Curve.Most >= 0.0);
    }, iter: 200);

    /// <summary>Of an unknown phase a fraction below 1/2 is best exactly where (n - 2k)² is larger than n.</summary>
    [Theory]
    [InlineData(1, 4, true)]
    [InlineData(1, 3, true)]
    [InlineData(0, 2, false)]
    [InlineData(3, 9, true)]
    [InlineData(6, 16, true)]
    public void Best_OfUnknownPhase_LeavesOneHalfWhereTheRuleSays(int k, int n, bool isAtHalf)
    {
        var rule = (n - (2 * k)) * (n - (2 * k)) <= n;

        Assert.Equal(isAtHalf, rule);
        Assert.Equal(isAtHalf, LinkageTest.Of([new(k, n, LinkagePhase.Unknown)]).Curve.Best == 0.5);
    }

    [Fact]
    public void Support_OnAnyFamily_EndsOneBelowTheTop() => Families.Sample(family =>
    {
        var curve = LinkageTest.Of([family]).Curve;

        foreach (var end in new[] { curve.Support.Low, curve.Support.High })
        {
            Assert.True(end is 0.0 or 0.5 || Math.Abs(family.Lod(end) - curve.Most + 1.0) < 1e-6, $"{end}: {family.Lod(end)}, top {curve.Most}");
        }
    });

    /// <summary>The exact interval of an unknown phase covers any true fraction in 95 of 100 cases or more, the kinds not told apart.</summary>
    [Fact]
    public void Interval_OfUnknownPhase_CoversTheTruthAtLeastAsOftenAsStated() => Gen.Select(Gen.Int[1, 30], Gen.Double[0.0, 0.5]).Sample((n, truth) =>
    {
        var covered = Enumerable.Range(0, n + 1)
            .Where(k => LinkageTest.Of([new(k, n, LinkagePhase.Unknown)]).Interval is { } i && i.Low - 1e-9 <= truth && truth <= i.High + 1e-9)
            .Sum(k => BinomialDistribution.Exactly(k, n, truth));

        Assert.True(covered >= 0.95 - 1e-9, $"{covered}");
    }, iter: 60);

    /// <summary>The Bayesian interval, its posterior integrated by hand on a fine grid.</summary>
    [Fact]
    public void Credible_OnAnyFamilies_LeavesHalfTheDoubtOnEachSide() => Families.Array[1, 3].Sample(families =>
    {
        const int Steps = 40_000;
        var test = LinkageTest.Of(families);
        var density = Enumerable.Range(0, Steps).Select(i => Math.Pow(10.0, test.Lod((i + 0.5) * 0.5 / Steps) - test.Curve.Most)).ToArray();
        var total = density.Sum();

        Assert.Equal(0.025, density.Take((int)(test.Credible.Low * 2 * Steps)).Sum() / total, 2e-3);
        Assert.Equal(0.975, density.Take((int)(test.Credible.High * 2 * Steps)).Sum() / total, 2e-3);
    }, iter: 30);

    [Fact]
    public void Heterogeneity_OfFamiliesAlike_IsNoneAndOfFamiliesApartIsSeen()
    {
        var alike = LinkageTest.Of([new(2, 20, LinkagePhase.Known), new(4, 40, LinkagePhase.Known)]).Heterogeneity!;
        var apart = LinkageTest.Of([new(0, 30, LinkagePhase.Known), new(15, 30, LinkagePhase.Known)]).Heterogeneity!;

        Assert.Equal(0.0, alike.ChiSquare, 1e-9);
        // 2 ln 10 (LOD 9.031 + 0 - LOD of 15 in 60): 30 log10 2 + 0 - [60 log10 2 + 15 log10 1/4 + 45 log10 3/4] [computed].
        Assert.Equal(2.0 * ((30.0 * Math.Log(2.0)) - ((60.0 * Math.Log(2.0)) + (15.0 * Math.Log(0.25)) + (45.0 * Math.Log(0.75)))), apart.ChiSquare, 1e-9);
        Assert.Equal(1, apart.DegreesOfFreedom);
        Assert.True(apart.PValue < 1e-5);
        Assert.Null(LinkageTest.Of([new(0, 30, LinkagePhase.Known)]).Heterogeneity);
    }

    [Fact]
    public void Of_TwoFamiliesOfKnownPhase_IsTheirSum()
    {
        var apart = LinkageTest.Of([new(2, 20, LinkagePhase.Known), new(5, 17, LinkagePhase.Known)]);
        var together = LinkageTest.Of([new(7, 37, LinkagePhase.Known)]);

        Assert.Equal(together.Curve.Best, apart.Curve.Best, 1e-7);
        Assert.Equal(together.Curve.Most, apart.Curve.Most, 1e-9);
        Assert.Equal(together.Interval, apart.Interval);
        Assert.Equal(together.Credible.Low, apart.Credible.Low, 1e-9);
    }

    [Fact]
    public void Of_NoMeioses_KnowsNothing()
    {
        var test = LinkageTest.Of([new(0, 0, LinkagePhase.Unknown)]);

        Assert.Equal(0.0, test.Curve.Most);
        Assert.Equal(new ShareInterval(0.0, 0.5), test.Interval);
        Assert.Equal(0.0125, test.Credible.Low, 1e-9);
    }

    [Fact]
    public void ExcludedBelow_OfManyRecombinants_IsWhereTheLodPassesMinusTwo()
    {
        var curve = LinkageTest.Of([new(10, 20, LinkagePhase.Known)]).Curve;

        Assert.Equal(-2.0, curve.At(curve.ExcludedBelow!.Value), 1e-9);
        Assert.Null(LinkageTest.Of([new(0, 20, LinkagePhase.Known)]).Curve.ExcludedBelow);
    }
}
