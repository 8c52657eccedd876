using Clutchwright.Planning.Schemes;
using CsCheck;

namespace Clutchwright.Planning.Tests.Schemes;

public class SharedSchemesTests
{
    private const double R20 = 0.16483997698218035; // Haldane 1919, 20 cM

    // Best published, by a mixed-integer programme in 10 h or a heuristic (Canzar and El-Kebir 2011): 350, 482, 624; ours are lower. For 7 and 8
    // loci (890 and 1147 published) see the benchmarks.
    [Theory]
    [InlineData(4, 350, 343)]
    [InlineData(5, 482, 476)]
    [InlineData(6, 624, 618)]
    public void Best_ServinsInstances_IsAtMostThePublished(int loci, int published, int ours)
    {
        var problem = PublishedSchemes.Servin(loci);

        var answer = SharedSchemes.Best(
            problem, new(Starts: 8, Steps: 150_000, ProofSteps: 0), threads: 2, TestContext.Current.CancellationToken);

        Assert.InRange(answer.Scheme!.Cost, 1, published);
        Assert.Equal(ours, answer.Scheme.Cost);
        Assert.InRange(answer.LowerBound, 1, ours);
        SchemeCheck.Holds(problem, [.. Enumerable.Repeat(R20, loci - 1)], answer.Scheme, isTree: false);
    }

    // Canzar and El-Kebir 2011: optimal with 633 plants, 4 crossings and 4 generations, proven.
    [Fact]
    public void Best_Pepper_IsThePublishedSchemeAndProven()
    {
        var problem = PublishedSchemes.Pepper();

        var answer = SharedSchemes.Best(problem, new(Starts: 1, Steps: 10_000), cancel: TestContext.Current.CancellationToken);

        Assert.True(answer.IsProven);
        Assert.Equal((633, 4, 4, 1433), (answer.Scheme!.Plants, answer.Scheme.Crossings.Count, answer.Scheme.Generations, answer.LowerBound));
        SchemeCheck.Holds(problem, [0.5, 0.5, 0.01], answer.Scheme, isTree: false);
    }

    // Canzar and El-Kebir 2011: three crossings in three generations need 2408 plants, so crossings and generations must be dear for it.
    [Fact]
    public void Best_PepperWithDearGenerations_TakesThree()
    {
        var pepper = PublishedSchemes.Pepper();
        var problem = new SchemeProblem(pepper.Loci, pepper.Parents, pepper.Target, pepper.Success)
        {
            PerCrossing = 1000, PerGeneration = 1000, MostPlants = 5000,
        };

        var answer = SharedSchemes.Best(problem, new(Starts: 1, Steps: 10_000), cancel: TestContext.Current.CancellationToken);

        Assert.True(answer.IsProven);
        Assert.Equal((2408, 3, 3), (answer.Scheme!.Plants, answer.Scheme.Crossings.Count, answer.Scheme.Generations));
    }

    [Fact]
    public void Best_AnyTwoLoci_IsProvenAndAsCheapAsTheSlowTwin() => SchemeCase.Of(2, 3, hasWeights: true).Sample(
        c =>
        {
            var answer = SharedSchemes.Best(c.Problem, new(Starts: 1, Steps: 0, ProofSteps: 100_000));

            Assert.True(answer.IsProven);
            Assert.Equal(SchemeTwin.CheapestShared(c.Problem), answer.Scheme?.Cost ?? SchemeTwin.Never);
            if (answer.Scheme is { Crossings.Count: > 0 })
            {
                SchemeCheck.Holds(c.Problem, c.Neighbours, answer.Scheme, isTree: false);
            }
        },
        iter: 100);

    [Fact]
    public void Best_AnyThreeLoci_LiesBetweenItsBoundAndTheTree() => SchemeCase.Of(3, 4, hasWeights: true).Sample(
        c =>
        {
            var answer = SharedSchemes.Best(c.Problem, new(Starts: 1, Steps: 2_000, ProofSteps: 2_000));
            var tree = TreeSchemes.ParentsAtWill(c.Problem);

            Assert.Equal(tree is null, answer.Scheme is null);
            if (answer.Scheme is { } scheme)
            {
                Assert.InRange(scheme.Cost, answer.LowerBound, tree!.Cost);
                Assert.True(!answer.IsProven || answer.LowerBound == scheme.Cost);
            }

            if (answer.Scheme is { Crossings.Count: > 0 })
            {
                SchemeCheck.Holds(c.Problem, c.Neighbours, answer.Scheme, isTree: false);
            }
        },
        iter: 60);

    [Fact]
    public void Best_AnyNumberOfThreads_IsTheSame()
    {
        var problem = PublishedSchemes.Servin(5);
        var effort = new SchemeEffort(Seed: 7, Starts: 3, Steps: 20_000, ProofSteps: 0);

        var one = SharedSchemes.Best(problem, effort, threads: 1, TestContext.Current.CancellationToken);
        var three = SharedSchemes.Best(problem, effort, threads: 3, TestContext.Current.CancellationToken);

        Assert.Equal(one.Scheme!.Crossings, three.Scheme!.Crossings);
    }

    [Fact]
    public void Best_Cancelled_Throws() => Assert.Throws<OperationCanceledException>(
        () => SharedSchemes.Best(PublishedSchemes.Servin(5), new(), cancel: new(canceled: true)));
}
