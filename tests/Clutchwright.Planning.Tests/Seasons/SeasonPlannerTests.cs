using Clutchwright.Planning.Seasons;

namespace Clutchwright.Planning.Tests.Seasons;

public sealed class SeasonPlannerTests
{
    private const int Small = 2000;

    private static readonly SeasonSettings Thorough = new() { MostWork = long.MaxValue };

    [Fact]
    public void Plan_OfSmallSeasons_EqualsExhaustiveSearch()
    {
        var (possible, impossible) = (0, 0);
        for (var seed = 0; seed < Small; seed++)
        {
            var problem = SeasonGen.Small(seed);
            var best = SeasonTwin.Plans(problem).Select(p => (double?)SeasonTwin.Worth(problem, p)).Max();

            var plan = SeasonPlanner.Plan(problem, Thorough, cancel: TestContext.Current.CancellationToken);

            if (best is not { } worth)
            {
                impossible++;
                Assert.True(plan.Status == SeasonStatus.Infeasible && plan.Clashes.Count > 0, $"seed {seed}");
                continue;
            }

            possible++;
            Assert.True(plan.Status == SeasonStatus.Optimal, $"seed {seed}: {plan.Status}, best {worth}, objective {plan.Objective}, bound {plan.Bound}");
            Assert.True(Math.Abs(plan.Objective - worth) < 3e-6 * Math.Max(1.0, Math.Abs(worth)), $"seed {seed}: {plan.Objective} for {worth}");
            Assert.True(SeasonTwin.IsAllowed(problem, plan.Chosen), $"seed {seed}");
            Assert.All(plan.Figures, (f, g) => Assert.Equal(SeasonTwin.Figure(problem, problem.Goals[g], plan.Chosen), f, 9));
        }

        Assert.InRange(possible, Small / 2, Small - 50);
        Assert.InRange(impossible, 50, Small / 2);
    }
}
