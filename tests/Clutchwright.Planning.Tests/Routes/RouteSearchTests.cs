using Clutchwright.Planning.Routes;
using Clutchwright.Testing;

namespace Clutchwright.Planning.Tests.Routes;

public class RouteSearchTests
{
    [Theory]
    [InlineData(2, 8, 8, 12)]
    [InlineData(3, 9, 7, 8)]
    [InlineData(4, 12, 6, 4)]
    public void Run_WithBounds_FindsWhatASearchWithoutFinds(int loci, int animals, int seasons, int rooms)
    {
        for (var seed = 1UL; seed <= (ulong)rooms; seed++)
        {
            var problem = RouteRooms.Of(loci, animals, seed, doubtful: 3);
            problem = problem with
            {
                Settings = problem.Settings with { Seasons = seasons, MostDams = 1 + (int)(seed % 3) },
                Animals = [.. problem.Animals.Select((a, i) => i % 4 == 3 ? a with { Price = 1.5 } : a)],
            };

            var all = Run(problem, int.MaxValue);
            var bounded = Run(problem, 1);

            Assert.False(all.IsCut);
            Assert.False(bounded.IsCut);
            AssertCovered(all.Finishes, bounded.Finishes, seed);
            AssertCovered(bounded.Finishes, all.Finishes, seed);
        }
    }

    [Fact]
    public void Run_SmallRooms_FindsTheSameAmongFewClassesFirst() => Room.Gen(2, 3).SampleCounted(40, room =>
    {
        var all = Run(room.Problem(), int.MaxValue);
        var bounded = Run(room.Problem(), 1);

        Assert.False(bounded.IsCut);
        AssertCovered(all.Finishes, bounded.Finishes, 0);
        AssertCovered(bounded.Finishes, all.Finishes, 0);
    });

    private static RouteSearch Run(RouteProblem problem, int mostClasses)
    {
        var search = new RouteSearch(RouteWorld.Of(problem), 100_000_000);
        search.Run(null, TestContext.Current.CancellationToken, mostClasses);
        return search;
    }

    // By each season of each way there is another as good on every count.
    private static void AssertCovered(IReadOnlyList<RouteFinish> ways, IReadOnlyList<RouteFinish> others, ulong seed)
    {
        foreach (var way in ways)
        {
            for (var t = 1; t < way.Chance.Length; t++)
            {
                Assert.True(
                    way.Chance[t] < 1e-9 || others.Any(o => o.Raised <= way.Raised && o.Cost <= way.Cost + 1e-6 && o.Chance[t] >= way.Chance[t] - 1e-9),
                    $"seed {seed}: by season {t} no way is as good as {way.Chance[t]:R}, {way.Raised} raised, cost {way.Cost:R}");
            }
        }
    }
}
