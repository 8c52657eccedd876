using Clutchwright.Planning.Schemes;
using CsCheck;

namespace Clutchwright.Planning.Tests.Schemes;

public class TreeSchemesTests
{
    private const double R20 = 0.16483997698218035; // Haldane 1919, 20 cM

    // Servin et al. 2004, Genetics 168: 513, as tabled by Canzar and El-Kebir 2011: plants, crossings, generations.
    [Theory]
    [InlineData(4, 374, 5, 5)]
    [InlineData(5, 551, 6, 6)]
    [InlineData(6, 770, 7, 7)]
    [InlineData(7, 1046, 8, 8)]
    [InlineData(8, 1394, 9, 9)]
    public void ParentsOnce_ServinsInstances_AreThePublishedTrees(int loci, int plants, int crossings, int generations)
    {
        var problem = PublishedSchemes.Servin(loci);

        var scheme = TreeSchemes.ParentsOnce(problem, Selfing.LastStep)!;

        Assert.Equal((plants, crossings, generations), (scheme.Cost, scheme.Crossings.Count, scheme.Generations));
        SchemeCheck.Holds(problem, [.. Enumerable.Repeat(R20, loci - 1)], scheme, isTree: true);
    }

    // With selfings anywhere, and with parents used again, trees are cheaper than the published ones, and for 7 and 8 loci than the
    // published schemes with plants used again (890, 1147); our own figures, each checked step by step.
    [Theory]
    [InlineData(4, 374, 350)]
    [InlineData(5, 551, 505)]
    [InlineData(6, 752, 678)]
    [InlineData(7, 984, 879)]
    [InlineData(8, 1270, 1103)]
    public void Trees_MoreFreedom_AreCheaper(int loci, int once, int atWill)
    {
        var problem = PublishedSchemes.Servin(loci);
        double[] neighbours = [.. Enumerable.Repeat(R20, loci - 1)];

        var (first, second) = (TreeSchemes.ParentsOnce(problem, Selfing.AnyStep)!, TreeSchemes.ParentsAtWill(problem)!);

        Assert.Equal((once, atWill), (first.Cost, second.Cost));
        SchemeCheck.Holds(problem, neighbours, first, isTree: true);
        SchemeCheck.Holds(problem, neighbours, second, isTree: true);
    }

    // Canzar and El-Kebir 2011: the four steps raise 1, 81, 97, 117 and 78 plants.
    [Fact]
    public void ParentsOnce_FourLoci_HasTheStepsWorkedOutByHand() => Assert.Equal(
        [1, 81, 97, 117, 78],
        TreeSchemes.ParentsOnce(PublishedSchemes.Servin(4), Selfing.LastStep)!.Crossings.Select(c => c.Offspring));

    // Canzar and El-Kebir 2011, the pepper: 633 plants in 4 crossings and 4 generations, 1 + 23 + 598 + 11.
    [Fact]
    public void ParentsAtWill_Pepper_IsThePublishedScheme()
    {
        var problem = PublishedSchemes.Pepper();

        var scheme = TreeSchemes.ParentsAtWill(problem)!;

        Assert.Equal((633, 4, 4, 1433), (scheme.Plants, scheme.Crossings.Count, scheme.Generations, scheme.Cost));
        Assert.Equal([1, 23, 598, 11], scheme.Crossings.Select(c => c.Offspring));
        SchemeCheck.Holds(problem, [0.5, 0.5, 0.01], scheme, isTree: true);
    }

    [Theory]
    [InlineData(2, 3, 80)]
    [InlineData(3, 2, 25)]
    public void Trees_AnyProblem_AreAsCheapAsTheSlowTwins(int loci, int parents, int iterations) => SchemeCase.Of(loci, parents, hasWeights: true).Sample(
        c =>
        {
            foreach (var selfing in Enum.GetValues<Selfing>())
            {
                Check(TreeSchemes.ParentsOnce(c.Problem, selfing), SchemeTwin.CheapestTree(c.Problem, isOnce: true, selfing));
            }

            Check(TreeSchemes.ParentsAtWill(c.Problem), SchemeTwin.CheapestTree(c.Problem, isOnce: false, Selfing.AnyStep));

            void Check(CrossingScheme? scheme, int expected)
            {
                Assert.Equal(expected, scheme?.Cost ?? SchemeTwin.Never);
                if (scheme is { Crossings.Count: > 0 })
                {
                    SchemeCheck.Holds(c.Problem, c.Neighbours, scheme, isTree: true);
                }
            }
        },
        iter: iterations);

    [Fact]
    public void Trees_TargetThatIsAParent_IsForNothing()
    {
        var problem = new SchemeProblem(LinkedLoci.Neighbours([]), [new(1, 1)], new(1, 1), 0.9);

        Assert.Equal(0, TreeSchemes.ParentsOnce(problem, Selfing.AnyStep)!.Cost);
    }

    [Fact]
    public void Trees_AlleleThatNobodyHas_IsNone() =>
        Assert.Null(TreeSchemes.ParentsAtWill(new(LinkedLoci.Neighbours([]), [default], new(1, 1), 0.9)));

    [Fact]
    public void ParentsOnce_TooManyParents_Throws()
    {
        var problem = new SchemeProblem(PublishedSchemes.Servin(4).Loci, [.. Enumerable.Range(0, 12).Select(i => new HaplotypePair(i, i))], new(15, 15), 0.9);

        Assert.Throws<ArgumentException>(() => TreeSchemes.ParentsOnce(problem, Selfing.AnyStep));
    }
}
