using Clutchwright.Planning.Seasons;

namespace Clutchwright.Planning.Tests.Seasons;

public sealed class SeasonPlannerTests
{
    private const int Small = 600;

    private static readonly SeasonSettings Thorough = new() { MostWork = long.MaxValue, MostStalled = int.MaxValue };

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    /// <summary>Source: the definition; every plan of each season is written out (SeasonTwin).</summary>
    [Fact]
    public void Plan_OfSmallSeasons_EqualsExhaustiveSearch()
    {
        var (possible, impossible) = (0, 0);
        for (var seed = 0; seed < Small; seed++)
        {
            var problem = SeasonGen.Small(seed);
            var best = SeasonTwin.Plans(problem).Select(p => (double?)SeasonTwin.Worth(problem, p)).Max();

            var plan = SeasonPlanner.Plan(problem, Thorough, null, Cancel);

            if (best is not { } worth)
            {
                impossible++;
                Assert.True(plan.Status == SeasonStatus.Infeasible && plan.Clashes.Count > 0, $"seed {seed}");
                continue;
            }

            possible++;
            Assert.True(plan.Status == SeasonStatus.Optimal, $"seed {seed}: {plan.Status}, best {worth}, objective {plan.Objective}, bound {plan.Bound}");
            Assert.True(Math.Abs(plan.Objective - worth) < 3e-6 * Math.Max(1.0, Math.Abs(worth)), $"seed {seed}: {plan.Objective} for {worth}");
            Assert.True(plan.Bound >= worth - 3e-6 * Math.Max(1.0, Math.Abs(worth)), $"seed {seed}: bound {plan.Bound} below {worth}");
            Assert.True(SeasonTwin.IsAllowed(problem, plan.Chosen), $"seed {seed}");
            Assert.All(plan.Figures, (f, g) => Assert.Equal(SeasonTwin.Figure(problem, problem.Goals[g], plan.Chosen), f, 9));
        }

        Assert.InRange(possible, Small / 2, Small - 15);
        Assert.InRange(impossible, 15, Small / 2);
    }

    /// <summary>Source: docs/model/season.md, worked example. One male is het with 1/2; two females, five good eggs each. Whatever he is he is in both
    /// clutches: P(none) = 1/2 + 1/2 (3/4)^10, not (1/2 + 1/2 (3/4)^5)^2. [computed]</summary>
    [Fact]
    public void Plan_OfAMaleInDoubt_SharesTheDoubtBetweenHisClutches()
    {
        var clutch = new SeasonYield([Binomial(5, 0.25), [1.0]]);
        var problem = new SeasonProblem(
            [new("M", 2)],
            [new("A"), new("B")],
            [new(0, 0), new(0, 1)],
            [new SeasonGoal.AtLeast("visual", 1.0, 1, [[0.5, 0.5]], [clutch, clutch])]);

        var plan = SeasonPlanner.Plan(problem, null, null, Cancel);

        Assert.Equal([0, 1], plan.Chosen);
        Assert.Equal(0.5 - (0.5 * Math.Pow(0.75, 10)), plan.Figures[0], 12);
        Assert.Equal(0.471843, plan.Figures[0], 6);
        Assert.Equal(SeasonStatus.Optimal, plan.Status);
    }

    /// <summary>Source: methods.md, "Optimum contributions and mating": optima of the four instances found by two independent solvers.</summary>
    [Theory]
    [InlineData(5, 20, 12_420)]
    [InlineData(10, 100, 69_045)]
    [InlineData(20, 200, 143_740)]
    [InlineData(50, 1000, 737_752)]
    public void Plan_OfTheMatingInstances_IsAtTheirOptimum(int sires, int dams, double optimum)
    {
        var plan = SeasonPlanner.Plan(MatingInstance.Of(sires, dams), null, null, Cancel);

        Assert.Equal(SeasonStatus.Optimal, plan.Status);
        Assert.Equal(optimum, plan.Objective, 3);
        Assert.InRange(plan.Bound, optimum - 1e-3, optimum + 1.0);
    }

    /// <summary>Source: the greedy rule, written in SeasonGreedy. Margins are told in docs/model/season.md.</summary>
    [Fact]
    public void Plan_OfRandomStocks_IsNeverWorseThanGreedyAndOftenBetter()
    {
        var (better, ours, theirs) = (0, 0.0, 0.0);
        for (var seed = 1; seed <= 80; seed++)
        {
            var problem = SeasonGen.Large(seed, 12, 4, 3);
            var greedy = SeasonGreedy.Worth(problem);

            var plan = SeasonPlanner.Plan(problem, null, null, Cancel);

            Assert.True(plan.Objective >= greedy - 3e-6 * Math.Max(1.0, greedy), $"seed {seed}: {plan.Objective} after greedy's {greedy}");
            better += plan.Objective > greedy * (1.0 + 1e-5) ? 1 : 0;
            (ours, theirs) = (ours + plan.Objective, theirs + greedy);
        }

        var said = $"better than greedy in {better} of 80, by {(ours / theirs) - 1.0:0.0%} in all";
        TestContext.Current.SendDiagnosticMessage(said);
        Assert.True(better > 40, said);
    }

    [Fact]
    public void Plan_OfALargeStockWithFiveGoals_IsWithinOnePercent()
    {
        var plan = SeasonPlanner.Plan(SeasonGen.Large(1, 200, 40), null, null, Cancel);

        Assert.InRange(plan.Gap, 0.0, 0.01);
        Assert.True(SeasonTwin.IsAllowed(SeasonGen.Large(1, 200, 40, 0), plan.Chosen));
    }

    [Fact]
    public void Plan_AskedTwice_IsTheSame()
    {
        var problem = SeasonGen.Large(3, 40, 8, 5, 2);

        var (first, second) = (SeasonPlanner.Plan(problem, null, null, Cancel), SeasonPlanner.Plan(problem, null, null, Cancel));

        Assert.Equal(first.Chosen, second.Chosen);
        Assert.Equal((first.Objective, first.Bound), (second.Objective, second.Bound));
    }

    [Fact]
    public void Plan_FromAnEarlierPlan_IsAsGood()
    {
        for (var seed = 0; seed < 60; seed++)
        {
            var problem = SeasonGen.Small(seed);
            var plan = SeasonPlanner.Plan(problem, Thorough, null, Cancel);
            if (plan.Status == SeasonStatus.Infeasible)
            {
                continue;
            }

            var again = SeasonPlanner.Plan(problem, Thorough with { Hint = plan.Chosen }, null, Cancel);
            var unfit = SeasonPlanner.Plan(problem, Thorough with { Hint = [0, 0] }, null, Cancel);

            Assert.Equal(plan.Objective, again.Objective, 5);
            Assert.Equal(plan.Objective, unfit.Objective, 5);
        }
    }

    /// <summary>Source: the definition: the best plan without the pair, found by writing all out.</summary>
    [Fact]
    public void Plan_RunnerUp_CostsWhatExhaustiveSearchSays()
    {
        var looked = 0;
        for (var seed = 0; seed < 250; seed++)
        {
            var problem = SeasonGen.Small(seed);
            var plan = SeasonPlanner.Plan(problem, Thorough with { WithRunnersUp = true }, null, Cancel);
            foreach (var choice in plan.Choices)
            {
                var best = SeasonTwin.Plans(problem).Where(p => !p.Contains(choice.Pair)).Select(p => (double?)SeasonTwin.Worth(problem, p)).Max();

                Assert.Equal(best is not null, choice.RunnerUp!.IsPossible);
                if (best is { } worth)
                {
                    Assert.True(Math.Abs(plan.Objective - worth - choice.RunnerUp.Cost) < 6e-6 * Math.Max(1.0, plan.Objective), $"seed {seed}: {choice.RunnerUp.Cost} for {plan.Objective - worth}");
                    looked++;
                }
            }
        }

        Assert.True(looked > 50, $"{looked}");
    }

    [Fact]
    public void Plan_OnItsWay_TellsBoundsThatFallAndPlansThatRise()
    {
        var told = new List<SeasonProgress>();

        SeasonPlanner.Plan(SeasonGen.Large(3, 40, 8, 5, 2), null, new Told(told), Cancel);

        Assert.NotEmpty(told);
        Assert.Equal(told.Select(t => t.Bound).OrderDescending(), told.Select(t => t.Bound));
        Assert.Equal(told.Select(t => t.Objective ?? double.NegativeInfinity).Order(), told.Select(t => t.Objective ?? double.NegativeInfinity));
    }

    [Fact]
    public void Plan_Cancelled_Stops()
    {
        using var source = new CancellationTokenSource();
        var stop = new Stop(source);

        Assert.Throws<OperationCanceledException>(() => SeasonPlanner.Plan(SeasonGen.Large(3, 40, 8, 5, 2), null, stop, source.Token));
    }

    [Fact]
    public void New_WithListsThatDoNotFit_Throws()
    {
        Assert.Throws<ArgumentException>(() => new SeasonProblem([new("M", 1)], [new("F")], [new(0, 1)], []));
        Assert.Throws<ArgumentException>(() => new SeasonProblem([new("M", 1)], [new("F")], [new(0, 0), new(0, 0)], []));
        Assert.Throws<ArgumentException>(() => new SeasonProblem([new("M", -1)], [new("F")], [], []));
        Assert.Throws<ArgumentException>(() => new SeasonProblem([new("M", 1)], [new("F")], [new(0, 0)], [new SeasonGoal.Sum("s", 1.0, [])]));
        Assert.Throws<ArgumentException>(() => new SeasonProblem(
            [new("M", 1)], [new("F")], [new(0, 0)], [new SeasonGoal.AtLeast("a", 1.0, 1, [[0.5, 0.4]], [null])]));
    }

    private static double[] Binomial(int n, double p)
    {
        var result = new double[n + 1];
        result[0] = 1.0;
        for (var i = 0; i < n; i++)
        {
            for (var k = i + 1; k >= 0; k--)
            {
                result[k] = (result[k] * (1.0 - p)) + (k > 0 ? result[k - 1] * p : 0.0);
            }
        }

        return result;
    }

    private sealed class Told(List<SeasonProgress> told) : IProgress<SeasonProgress>
    {
        public void Report(SeasonProgress value) => told.Add(value);
    }

    private sealed class Stop(CancellationTokenSource source) : IProgress<SeasonProgress>
    {
        public void Report(SeasonProgress value) => source.Cancel();
    }
}
