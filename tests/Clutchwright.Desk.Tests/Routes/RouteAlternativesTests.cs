using Clutchwright.Desk.Routes;
using Clutchwright.Desk.Tests.Testing;

namespace Clutchwright.Desk.Tests.Routes;

/// <summary>A want of alternatives: each route tells which it reaches.</summary>
public sealed class RouteAlternativesTests
{
    // Pastel Clown takes two generations, Pastel Enchi one.
    private const string Room = """
        id,sex,hatched,seen,told
        C,m,2020,Clown,
        E,m,2020,Enchi,
        P,f,2020,Pastel,
        """;

    [Fact]
    public async Task RunAsync_TwoAlternatives_TellsWhichIsReached()
    {
        using var desk = await TestDesk.WithAsync(Room);

        var routes = (await desk.Get<PlanRoute>().RunAsync(new("Pastel Clown or Pastel Enchi") { Tries = 0 }, cancel: TestDesk.Cancel)).Value!.Routes;

        Assert.Equal("Pastel Enchi", routes[0].Reaches);
        Assert.Equal(1, routes[0].FirstSeason);
    }

    [Fact]
    public async Task RunAsync_OneWant_TellsNone()
    {
        using var desk = await TestDesk.WithAsync(Room);

        var routes = (await desk.Get<PlanRoute>().RunAsync(new("Pastel Enchi") { Tries = 0 }, cancel: TestDesk.Cancel)).Value!.Routes;

        Assert.All(routes, r => Assert.Null(r.Reaches));
    }
}
