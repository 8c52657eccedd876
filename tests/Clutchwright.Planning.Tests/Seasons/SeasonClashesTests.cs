using Clutchwright.Planning.Seasons;

namespace Clutchwright.Planning.Tests.Seasons;

public sealed class SeasonClashesTests
{
    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public void Plan_MorePinnedThanAMaleHasMatings_NamesBothAndTheNumberThatHelps()
    {
        var problem = new SeasonProblem(
            [new("M", 1), new("N", 3)],
            [new("A"), new("B")],
            [new(0, 0) { IsPinned = true }, new(0, 1) { IsPinned = true }, new(1, 0)],
            []);

        var plan = SeasonPlanner.Plan(problem, null, null, Cancel);

        Assert.Equal(SeasonStatus.Infeasible, plan.Status);
        Assert.Equal(
            [new SeasonClash(SeasonDemand.Matings, 0, 1.0, 2.0), new(SeasonDemand.PinnedPair, 0, null, null), new(SeasonDemand.PinnedPair, 1, null, null)],
            plan.Clashes);
    }

    [Fact]
    public void Plan_PinnedPairThatIsBarred_NamesTheBar()
    {
        var problem = new SeasonProblem([new("M", 1)], [new("A")], [new(0, 0) { IsPinned = true, Inbreeding = 0.25 }], [], new() { Inbreeding = 0.125 });

        var plan = SeasonPlanner.Plan(problem, null, null, Cancel);

        Assert.Equal([new SeasonClash(SeasonDemand.PinnedPair, 0, null, null), new(SeasonDemand.Barred, 0, 0.125, 0.25)], plan.Clashes);
    }

    [Fact]
    public void Plan_LeastThatCannotBe_SaysWhatCan()
    {
        var yield = new SeasonYield([[0.5, 0.5]]);
        var problem = new SeasonProblem(
            [new("M", 2)], [new("A"), new("B")], [new(0, 0), new(0, 1)],
            [new SeasonGoal.AtLeast("want", 1.0, 1, [[1.0]], [yield, yield]) { Least = 0.9 }]);

        var clash = Assert.Single(SeasonPlanner.Plan(problem, null, null, Cancel).Clashes);

        Assert.Equal((SeasonDemand.Least, 0, 0.9), (clash.Kind, clash.Place, clash.Asked));
        Assert.Equal(0.75, clash.Enough!.Value, 9);
    }

    [Fact]
    public void Plan_MeanInbreedingBelowThatOfAPin_SaysTheLeastMean()
    {
        var problem = new SeasonProblem(
            [new("M", 3)], [new("A"), new("B")], [new(0, 0) { IsPinned = true, Inbreeding = 0.1 }, new(0, 1) { Inbreeding = 0.04 }], [],
            new() { MeanInbreeding = 0.05 });

        var plan = SeasonPlanner.Plan(problem, null, null, Cancel);

        Assert.Equal([SeasonDemand.MeanInbreeding, SeasonDemand.PinnedPair], plan.Clashes.Select(c => c.Kind));
        Assert.Equal(0.07, plan.Clashes[0].Enough!.Value, 9);
    }

    /// <summary>Source: the definition of a smallest clash: with one of it taken away, and nothing asked but it, there is a plan.</summary>
    [Fact]
    public void Plan_WhereThereIsNone_GivesChangesThatHelp()
    {
        var changed = 0;
        for (var seed = 0; seed < 250; seed++)
        {
            var problem = SeasonGen.Small(seed);
            var plan = SeasonPlanner.Plan(problem, null, null, Cancel);
            foreach (var clash in plan.Clashes.Where(c => c.Enough is not null && c.Kind is SeasonDemand.Clutches or SeasonDemand.Eggs or SeasonDemand.Hatchlings or SeasonDemand.MeanInbreeding))
            {
                var enough = clash.Enough!.Value + 1e-9;
                var limits = clash.Kind switch
                {
                    SeasonDemand.Clutches => problem.Limits with { Clutches = (int)Math.Round(enough) },
                    SeasonDemand.Eggs => problem.Limits with { Eggs = enough },
                    SeasonDemand.Hatchlings => problem.Limits with { Hatchlings = enough },
                    _ => problem.Limits with { MeanInbreeding = enough },
                };
                var mended = new SeasonProblem(problem.Sires, problem.Dams, problem.Pairs, problem.Goals, limits);

                Assert.True(SeasonTwin.Plans(mended).Any(), $"seed {seed}: {clash}");
                changed++;
            }
        }

        Assert.True(changed >= 3, $"{changed}");
    }
}
