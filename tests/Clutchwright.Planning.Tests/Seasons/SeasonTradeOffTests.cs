using Clutchwright.Planning.Seasons;

namespace Clutchwright.Planning.Tests.Seasons;

public sealed class SeasonTradeOffTests
{
    /// <summary>Source: the definition: no plan written out is better in one of the two goals and no worse in the other.</summary>
    [Fact]
    public void Of_SmallSeasons_GivesPlansThatNoneDominates()
    {
        var found = 0;
        for (var seed = 0; seed < 150; seed++)
        {
            var problem = SeasonGen.Small(seed);
            if (problem.Goals.Count < 2 || problem.Goals.Any(g => g.Weight < 0.0))
            {
                continue;
            }

            var curve = SeasonTradeOff.Of(problem, 0, 1, 4, new() { MostWork = long.MaxValue, MostStalled = int.MaxValue }, TestContext.Current.CancellationToken);

            var all = SeasonTwin.Plans(problem).Select(p => (First: SeasonTwin.Figure(problem, problem.Goals[0], p), Second: SeasonTwin.Figure(problem, problem.Goals[1], p))).ToArray();
            Assert.Equal(all.Length > 0, curve.Count > 0);
            Assert.Equal(curve.Select(p => p.Figures[1]).Order(), curve.Select(p => p.Figures[1]));
            foreach (var plan in curve)
            {
                Assert.DoesNotContain(all, a => a.First > plan.Figures[0] + 1e-4 && a.Second >= plan.Figures[1] + 1e-4);
                found++;
            }
        }

        Assert.True(found > 60);
    }
}
