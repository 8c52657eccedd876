using Clutchwright.Genetics.Loci;
using Clutchwright.Stock.Animals;
using Clutchwright.Stock.History;
using Clutchwright.Stock.Seasons;
using Clutchwright.Stock.Tests.Testing;
using Xunit;

namespace Clutchwright.Stock.Tests.Seasons;

public sealed class KeepSeasonTests
{
    private const string Goals = """{ "goals": [ { "want": "Clown" } ], "pin": [ { "sire": "A", "dam": "B" } ] }""";

    [Fact]
    public async Task RunAsync_ThenAgain_KeepsTheLastAndUndoesToTheFirst()
    {
        using var book = await TestBook.NewAsync();
        var animal = await book.AddAsync("A", Sex.Male);
        var first = (await KeepAsync(book, 2027, null, Goals, new NamedAnimal("A", animal.AnimalId))).Expect();
        (await KeepAsync(book, 2027, first.Version, """{ "goals": [] }""")).Expect();

        await book.UndoLastAsync();

        var kept = Assert.Single(await SeasonsAsync(book));
        Assert.Equal(2027, kept.Year);
        Assert.Equal([new NamedAnimal("A", animal.AnimalId)], kept.Animals);
        Assert.Contains("Clown", kept.Goals, StringComparison.Ordinal);
        Assert.Equal("Undid 3: Kept the season of 2027", (await book.DeedsAsync())[0].Words);
    }

    [Fact]
    public async Task Undo_OfAnUndoingWhoseYearHasAnotherSeason_IsRefused()
    {
        using var book = await TestBook.NewAsync();
        (await KeepAsync(book, 2027, null, Goals)).Expect();
        await book.UndoLastAsync();
        (await KeepAsync(book, 2027, null, "{}")).Expect();

        Assert.Equal(
            new HistoryProblem.NoLongerAllowed(new DeedId(2), "The season of 2027", new SeasonProblem.ChangedSince(2027)),
            (await book.TryUndoAsync(new DeedId(2))).Problem);
    }

    [Fact]
    public async Task RunAsync_SameAgain_IsNoDeed()
    {
        using var book = await TestBook.NewAsync();
        var first = (await KeepAsync(book, 2027, null, Goals)).Expect();

        (await KeepAsync(book, 2027, first.Version, Goals)).Expect();

        Assert.Single(await book.DeedsAsync());
    }

    [Fact]
    public async Task RunAsync_ChangedMeanwhile_IsRefused()
    {
        using var book = await TestBook.NewAsync();
        (await KeepAsync(book, 2027, null, Goals)).Expect();

        Assert.Equal(new SeasonProblem.ChangedSince(2027), (await KeepAsync(book, 2027, null, "{}")).Problem);
        Assert.Equal(new SeasonProblem.ChangedSince(2026), (await KeepAsync(book, 2026, Guid.CreateVersion7(), "{}")).Problem);
    }

    [Theory]
    [InlineData(1899, "{}")]
    [InlineData(2201, "{}")]
    [InlineData(2027, "[]")]
    [InlineData(2027, "{")]
    public async Task RunAsync_WhatCannotBeKept_IsRefusedAndNothingIsWritten(int year, string goals)
    {
        using var book = await TestBook.NewAsync();

        Assert.IsAssignableFrom<SeasonProblem>((await KeepAsync(book, year, null, goals)).Problem);
        Assert.Empty(await book.DeedsAsync());
    }

    [Fact]
    public async Task RunAsync_AnimalOfTheBin_IsRefusedUnlessNamedBefore()
    {
        using var book = await TestBook.NewAsync();
        var animal = await book.AddAsync("A", Sex.Male);
        var named = new NamedAnimal("A", animal.AnimalId);
        var kept = (await KeepAsync(book, 2027, null, Goals, named)).Expect();
        await book.TryBinAsync(animal);

        Assert.Equal(new SeasonProblem.AnimalNotFound("A", animal.AnimalId), (await KeepAsync(book, 2028, null, Goals, named)).Problem);
        Assert.True((await KeepAsync(book, 2027, kept.Version, """{ "note": "still" }""", named)).IsDone);
    }

    [Fact]
    public async Task UndoDeed_AnimalNamedByASeason_IsRefused()
    {
        using var book = await TestBook.NewAsync();
        var animal = await book.AddAsync("A", Sex.Male);
        (await KeepAsync(book, 2027, null, Goals, new NamedAnimal("A", animal.AnimalId))).Expect();

        Assert.Equal(new HistoryProblem.StillUsed(new DeedId(1), "A", "the season of 2027"), (await book.TryUndoAsync(new DeedId(1))).Problem);
    }

    [Fact]
    public async Task LatestDeed_OfAnimals_CountsNoSeason()
    {
        using var book = await TestBook.NewAsync();
        await book.AddAsync("A");
        (await KeepAsync(book, 2027, null, Goals)).Expect();

        Assert.Equal(new DeedId(1), (await new LatestDeed(book.Book).OfAnimalsAsync(TestBook.Cancellation)).Expect().DeedId);
        Assert.Equal(["A"], (await new AnimalsAfter(book.Book).RunAsync(new DeedId(1), TestBook.Cancellation)).Expect().Select(a => a.Tag));
    }

    private static Task<Outcome<KeptSeason>> KeepAsync(TestBook book, int year, Guid? version, string goals, params NamedAnimal[] animals) =>
        new KeepSeason(book.Book).RunAsync(new(year, version, goals, animals), TestBook.Who, TestBook.Cancellation);

    private static async Task<IReadOnlyList<KeptSeason>> SeasonsAsync(TestBook book) => (await new ListSeasons(book.Book).RunAsync(TestBook.Cancellation)).Expect();
}
