using Clutchwright.Stock.History;
using Clutchwright.Stock.Routes;
using Clutchwright.Stock.Seasons;
using Clutchwright.Stock.Tests.Testing;
using Xunit;

namespace Clutchwright.Stock.Tests.Routes;

public sealed class AdoptRouteTests
{
    private static readonly AdoptedRouteEntry Entry = new("Pastel Clown", 2027, 2032, """{ "Rearing": 0.95 }""", """{ "Steps": [] }""");

    [Fact]
    public async Task RunAsync_WithASeason_IsOneDeedThatUndoesBoth()
    {
        using var book = await TestBook.NewAsync();
        var before = await book.StateAsync();

        var route = (await AdoptAsync(book, Entry, new(2027, null, """{ "goals": [] }""", []))).Expect();

        Assert.Equal(("Pastel Clown", 2027, 2032, null), (route.Want, route.FirstYear, route.LastYear, route.Ending));
        Assert.Equal(("Adopted a route to Pastel Clown", 2), ((await book.DeedsAsync())[0].Words, (await book.DeedsAsync())[0].Changes));
        await book.UndoLastAsync();
        Assert.Equal(before, await book.StateAsync());
    }

    [Fact]
    public async Task RunAsync_SeasonRefused_WritesNothing()
    {
        using var book = await TestBook.NewAsync();

        Assert.Equal(new SeasonProblem.ChangedSince(2027), (await AdoptAsync(book, Entry, new(2027, Guid.CreateVersion7(), "{}", []))).Problem);

        Assert.Empty((await new ListRoutes(book.Book).RunAsync(TestBook.Cancellation)).Expect());
    }

    [Theory]
    [InlineData("", 2027, 2032)]
    [InlineData("a\nb", 2027, 2032)]
    [InlineData("Clown", 2027, 2026)]
    [InlineData("Clown", 1800, 2026)]
    public async Task RunAsync_WhatCannotBeKept_IsRefused(string want, int first, int last)
    {
        using var book = await TestBook.NewAsync();

        Assert.IsAssignableFrom<RouteProblem>((await AdoptAsync(book, Entry with { Want = want, FirstYear = first, LastYear = last }, null)).Problem);
        Assert.Empty(await book.DeedsAsync());
    }

    [Fact]
    public async Task EndRoute_Once_IsKeptAndNotTwice()
    {
        using var book = await TestBook.NewAsync();
        var route = (await AdoptAsync(book, Entry, null)).Expect();

        (await EndAsync(book, route.AdoptedRouteId)).Expect();

        Assert.Equal(new RouteProblem.AlreadyEnded("Pastel Clown"), (await EndAsync(book, route.AdoptedRouteId)).Problem);
        Assert.Equal(new RouteProblem.NotFound(default), (await EndAsync(book, default)).Problem);
        var changes = (await new ShowChanges(book.Book).RunAsync([new DeedId(2)], TestBook.Cancellation)).Expect();
        Assert.Equal(("ending", null, "reached"), (changes[0].Field, changes[0].Before, changes[0].After));
    }

    private static Task<Outcome<AdoptedRoute>> AdoptAsync(TestBook book, AdoptedRouteEntry entry, SeasonEntry? season) =>
        new AdoptRoute(book.Book).RunAsync(AdoptedRouteId.New(), entry, season, TestBook.Who, TestBook.Cancellation);

    private static Task<Outcome<AdoptedRoute>> EndAsync(TestBook book, AdoptedRouteId route) =>
        new EndRoute(book.Book).RunAsync(route, RouteEnding.Reached, null, TestBook.Who, TestBook.Cancellation);
}
