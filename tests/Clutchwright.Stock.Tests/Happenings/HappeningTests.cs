using Clutchwright.Genetics.Loci;
using Clutchwright.Stock.Animals;
using Clutchwright.Stock.Happenings;
using Clutchwright.Stock.History;
using Clutchwright.Stock.Tests.Testing;
using Xunit;

namespace Clutchwright.Stock.Tests.Happenings;

public sealed class HappeningTests
{
    [Fact]
    public async Task RecordHappening_Weighing_IsTheMassAndUndoesBoth()
    {
        using var book = await TestBook.NewAsync();
        var animal = await book.AddAsync("A", Sex.Female, hatched: "2020");
        var before = await book.StateAsync();

        (await WriteAsync(book, animal, HappeningKind.Weighed, "2024-03-03", 1540)).Expect();

        Assert.Equal(1540, (await book.FindAsync("A")).Animal.MassGrams);
        Assert.Equal("Wrote of A: weighed 1540 g", (await book.DeedsAsync())[0].Words);
        await book.UndoLastAsync();
        Assert.Equal(before, await book.StateAsync());
    }

    [Fact]
    public async Task RecordHappening_WeighingOfLongAgo_LeavesTheMass()
    {
        using var book = await TestBook.NewAsync();
        var animal = await book.AddAsync("A", Sex.Female, hatched: "2020");
        (await WriteAsync(book, animal, HappeningKind.Weighed, "2024-03-03", 1540)).Expect();

        (await WriteAsync(book, animal, HappeningKind.Weighed, "about May 2022", 900)).Expect();

        Assert.Equal(1540, (await book.FindAsync("A")).Animal.MassGrams);
        var lines = await ListAsync(book, animal);
        Assert.Equal([1540.0, 900.0], lines.Select(l => l.Amount));
        Assert.Equal("about May 2022", lines[1].When.Words);
    }

    [Fact]
    public async Task ListHappenings_OfAPair_StandsInBothLogs()
    {
        using var book = await TestBook.NewAsync();
        var (male, female) = (await book.AddAsync("M", Sex.Male), await book.AddAsync("F", Sex.Female));

        (await WriteAsync(book, female, HappeningKind.Locked, "2024-11-03", mate: male)).Expect();

        Assert.Equal(("F", "M"), (Assert.Single(await ListAsync(book, male)).Tag, (await ListAsync(book, female))[0].Mate));
        Assert.Empty((await new ListHappenings(book.Book).RunAsync(null, [HappeningKind.Fed], 10, TestBook.Cancellation)).Expect());
    }

    [Fact]
    public async Task CorrectHappening_ThenTakenBack_KeepsHistory()
    {
        using var book = await TestBook.NewAsync();
        var animal = await book.AddAsync("A", Sex.Female);
        var written = (await WriteAsync(book, animal, HappeningKind.Shed, "2024-03-03")).Expect();

        var corrected = (await CorrectAsync(book, written, "2024-03-04")).Expect();

        Assert.Equal(new HappeningProblem.ChangedSince(written.HappeningId), (await CorrectAsync(book, written, "2024-03-05")).Problem);
        var changes = (await new ShowChanges(book.Book).RunAsync([new DeedId(3)], TestBook.Cancellation)).Expect();
        Assert.Equal(("when", "2024-03-03", "2024-03-04"), (Assert.Single(changes).Field, changes[0].Before, changes[0].After));
        (await new WithdrawHappening(book.Book).RunAsync(corrected.HappeningId, TestBook.Who, TestBook.Cancellation)).Expect();
        Assert.Empty(await ListAsync(book, animal));
        Assert.Equal(
            new HappeningProblem.AlreadyWithdrawn(corrected.HappeningId),
            (await new WithdrawHappening(book.Book).RunAsync(corrected.HappeningId, TestBook.Who, TestBook.Cancellation)).Problem);
    }

    public static TheoryData<string, HappeningKind, string, double?, string?, string, Type> Wrong() => new()
    {
        { "no amount", HappeningKind.Weighed, "2024", null, null, "", typeof(HappeningProblem.AmountNotFitting) },
        { "an amount of none", HappeningKind.Shed, "2024", 3.0, null, "", typeof(HappeningProblem.AmountNotFitting) },
        { "too much", HappeningKind.FolliclesMeasured, "2024", 300.0, null, "", typeof(HappeningProblem.AmountNotFitting) },
        { "below nothing", HappeningKind.Weighed, "2024", -1.0, null, "", typeof(HappeningProblem.AmountNotFitting) },
        { "yet to come", HappeningKind.Shed, "2199", null, null, "", typeof(HappeningProblem.InTheFuture) },
        { "before it hatched", HappeningKind.Shed, "2019", null, null, "", typeof(HappeningProblem.BeforeItHatched) },
        { "no mate", HappeningKind.Locked, "2024", null, null, "", typeof(HappeningProblem.MateNotFitting) },
        { "a mate of none", HappeningKind.Shed, "2024", null, "M", "", typeof(HappeningProblem.MateNotFitting) },
        { "two females", HappeningKind.Locked, "2024", null, "G", "", typeof(HappeningProblem.NoPair) },
        { "no text", HappeningKind.Health, "2024", null, null, " ", typeof(HappeningProblem.TextNotFitting) },
    };

    [Theory]
    [MemberData(nameof(Wrong))]
    public async Task RecordHappening_WhatCannotBe_IsRefusedAndNothingIsWritten(
        string why, HappeningKind kind, string when, double? amount, string? mate, string text, Type problem)
    {
        using var book = await TestBook.NewAsync();
        var animals = new Dictionary<string, Animal>
        {
            ["F"] = await book.AddAsync("F", Sex.Female, hatched: "2020"), ["M"] = await book.AddAsync("M", Sex.Male), ["G"] = await book.AddAsync("G", Sex.Female),
        };

        var refused = Assert.IsType<HappeningProblem.Refused>((await WriteAsync(book, animals["F"], kind, when, amount, mate is null ? null : animals[mate], text)).Problem);

        Assert.True(problem == Assert.Single(refused.Problems).GetType(), why);
        Assert.DoesNotContain("Happening", ProblemWords.Say(refused).ToString(), StringComparison.Ordinal);
        Assert.Equal(3, (await book.DeedsAsync()).Count);
    }

    [Fact]
    public async Task RecordHappening_FolliclesOfAMale_IsRefused()
    {
        using var book = await TestBook.NewAsync();

        var refused = Assert.IsType<HappeningProblem.Refused>((await WriteAsync(book, await book.AddAsync("M", Sex.Male), HappeningKind.FolliclesMeasured, "2024", 6)).Problem);

        Assert.Equal(new HappeningProblem.NotOfAMale("M", HappeningKind.FolliclesMeasured), Assert.Single(refused.Problems));
    }

    [Fact]
    public async Task WithdrawHappening_WrongWeighing_IsTheMassBeforeAgain()
    {
        using var book = await TestBook.NewAsync();
        var animal = (await book.TryAddAsync(new() { Tag = "A", MassGrams = 1480 })).Expect();
        var first = (await WriteAsync(book, animal, HappeningKind.Weighed, "2024-03-03", 1540)).Expect();
        var second = (await WriteAsync(book, animal, HappeningKind.Weighed, "2024-04-03", 15_600)).Expect();

        (await new WithdrawHappening(book.Book).RunAsync(second.HappeningId, TestBook.Who, TestBook.Cancellation)).Expect();
        Assert.Equal(1540, (await book.FindAsync("A")).Animal.MassGrams);

        (await new WithdrawHappening(book.Book).RunAsync(first.HappeningId, TestBook.Who, TestBook.Cancellation)).Expect();
        Assert.Equal(1480, (await book.FindAsync("A")).Animal.MassGrams);
    }

    [Fact]
    public async Task CorrectHappening_WeighingOfAnEarlierDay_IsTheMassOfTheLatest()
    {
        using var book = await TestBook.NewAsync();
        var animal = await book.AddAsync("A");
        (await WriteAsync(book, animal, HappeningKind.Weighed, "2024-03-03", 1540)).Expect();
        var wrong = (await WriteAsync(book, animal, HappeningKind.Weighed, "2024-04-03", 1400)).Expect();

        (await new CorrectHappening(book.Book).RunAsync(
            wrong.HappeningId, wrong.Version, new() { Kind = HappeningKind.Weighed, When = DateRange.Read("2024-02-03").Expect(), Amount = 1400 }, TestBook.Who, TestBook.Cancellation)).Expect();

        Assert.Equal(1540, (await book.FindAsync("A")).Animal.MassGrams);
    }

    [Theory]
    [InlineData(HappeningKind.Sold, AnimalStatus.Sold)]
    [InlineData(HappeningKind.GivenAway, AnimalStatus.Given)]
    [InlineData(HappeningKind.Died, AnimalStatus.Died)]
    public async Task RecordHappening_ItLeft_IsItsStatusUntilTakenBack(HappeningKind kind, AnimalStatus status)
    {
        using var book = await TestBook.NewAsync();
        var animal = (await book.TryAddAsync(new() { Tag = "A", Status = AnimalStatus.ForSale })).Expect();

        var left = (await WriteAsync(book, animal, kind, "2024-03-03", text: "to a friend")).Expect();
        Assert.Equal(status, (await book.FindAsync("A")).Animal.Status);

        (await new WithdrawHappening(book.Book).RunAsync(left.HappeningId, TestBook.Who, TestBook.Cancellation)).Expect();
        Assert.Equal(AnimalStatus.ForSale, (await book.FindAsync("A")).Animal.Status);
    }

    [Fact]
    public async Task RecordHappening_Laid_IsWrittenAsClutch()
    {
        using var book = await TestBook.NewAsync();

        Assert.IsType<HappeningProblem.WrittenAsClutch>((await WriteAsync(book, await book.AddAsync("F", Sex.Female), HappeningKind.Laid, "2024", 6)).Problem);
    }

    [Fact]
    public async Task UndoDeed_AnimalWithALog_IsRefused()
    {
        using var book = await TestBook.NewAsync();
        (await WriteAsync(book, await book.AddAsync("A", Sex.Female), HappeningKind.Shed, "2024")).Expect();

        Assert.Equal(new HistoryProblem.StillUsed(new DeedId(1), "A", "shed"), (await book.TryUndoAsync(new DeedId(1))).Problem);
    }

    internal static Task<Outcome<Happening>> WriteAsync(
        TestBook book, Animal animal, HappeningKind kind, string when, double? amount = null, Animal? mate = null, string text = "") =>
        new RecordHappening(book.Book).RunAsync(
            animal.AnimalId,
            new() { Kind = kind, When = DateRange.Read(when).Expect(), Amount = amount, MateId = mate?.AnimalId, Text = text },
            TestBook.Who,
            TestBook.Cancellation);

    private static Task<Outcome<Happening>> CorrectAsync(TestBook book, Happening written, string when) =>
        new CorrectHappening(book.Book).RunAsync(
            written.HappeningId, written.Version, new() { Kind = written.Kind, When = DateRange.Read(when).Expect() }, TestBook.Who, TestBook.Cancellation);

    private static async Task<IReadOnlyList<HappeningLine>> ListAsync(TestBook book, Animal animal) =>
        (await new ListHappenings(book.Book).RunAsync(animal.AnimalId, [], 10, TestBook.Cancellation)).Expect();
}
