using Clutchwright.Genetics.Loci;
using Clutchwright.Stock.Animals;
using Clutchwright.Stock.Happenings;
using Clutchwright.Stock.Tests.Testing;
using Xunit;

namespace Clutchwright.Stock.Tests.Happenings;

public sealed class CareTests
{
    [Fact]
    public async Task RecordRound_OfSeveralAnimals_IsOneDeedAndUndone()
    {
        using var book = await TestBook.NewAsync();
        var (a, b) = (await book.AddAsync("A", Sex.Female), await book.AddAsync("B", Sex.Male));
        var before = await book.StateAsync();

        var deed = (await RoundAsync(book, Line(a, HappeningKind.Fed, "2026-04-01"), Line(b, HappeningKind.FoodRefused, "2026-04-01"), Line(b, HappeningKind.Weighed, "2026-04-01", 900))).Expect();

        Assert.Equal("Wrote of a round: 1 weighed, 1 fed, 1 refused food", deed.Words);
        Assert.Equal(900, (await book.FindAsync("B")).Animal.MassGrams);
        await book.UndoLastAsync();
        Assert.Equal(before, await book.StateAsync());
    }

    [Fact]
    public async Task RecordRound_OneWrong_NamesItAndWritesNothing()
    {
        using var book = await TestBook.NewAsync();
        var (a, b) = (await book.AddAsync("A", hatched: "2026-03-01"), await book.AddAsync("B"));
        var before = await book.StateAsync();

        var refused = Assert.IsType<HappeningProblem.RoundRefused>(
            (await RoundAsync(book, Line(b, HappeningKind.Fed, "2026-02-01"), Line(a, HappeningKind.Fed, "2026-02-01"))).Problem);

        Assert.Equal((1, "A"), (Assert.Single(refused.Lines).Index, refused.Lines[0].Tag));
        Assert.Equal(before, await book.StateAsync());
    }

    [Fact]
    public async Task ListCare_OfTheRoom_HasLastDaysAndEntriesSince()
    {
        using var book = await TestBook.NewAsync();
        var a = await book.AddAsync("A", Sex.Female);
        (await book.TryAddAsync(TestBook.Entry("S", status: AnimalStatus.Sold))).Expect();
        foreach (var (kind, day, amount) in new (HappeningKind, string, double?)[]
        {
            (HappeningKind.Fed, "2024-01-01", null), (HappeningKind.Shed, "2024-02-01", null), (HappeningKind.Fed, "2026-02-01", 40.0), (HappeningKind.FoodRefused, "2026-02-08", null), (HappeningKind.Weighed, "2026-03-01", 1500),
        })
        {
            (await WriteAsync(book, a, kind, day, amount)).Expect();
        }

        var taken = (await WriteAsync(book, a, HappeningKind.Fed, "2026-04-01", null)).Expect();
        (await new WithdrawHappening(book.Book).RunAsync(taken.HappeningId, TestBook.Who, TestBook.Cancellation)).Expect();

        var care = Assert.Single((await new ListCare(book.Book).RunAsync(null, new DateOnly(2025, 1, 1), TestBook.Cancellation)).Expect());

        Assert.Equal("A", care.Tag);
        Assert.Equal(
            [new(HappeningKind.Fed, new(2026, 2, 1), 40), new(HappeningKind.FoodRefused, new(2026, 2, 8), null), new(HappeningKind.Weighed, new(2026, 3, 1), 1500)],
            care.Events);
        Assert.Equal(
            [(HappeningKind.Weighed, new DateOnly(2026, 3, 1)), (HappeningKind.Fed, new DateOnly(2026, 2, 1)), (HappeningKind.FoodRefused, new DateOnly(2026, 2, 8)), (HappeningKind.Shed, new DateOnly(2024, 2, 1))],
            care.Last.OrderBy(l => l.Key).Select(l => (l.Key, l.Value)));
        Assert.Equal(new DateOnly(2026, 2, 8), (await new ListCare(book.Book).LastOfferAsync(TestBook.Cancellation)).Expect().Day);
    }

    private static RoundLine Line(Animal animal, HappeningKind kind, string when, double? amount = null) =>
        new(animal.AnimalId, new() { Kind = kind, When = DateRange.Read(when).Expect(), Amount = amount });

    private static Task<Outcome<Stock.History.DeedLine>> RoundAsync(TestBook book, params RoundLine[] lines) =>
        new RecordRound(book.Book).RunAsync(lines, TestBook.Who, TestBook.Cancellation);

    private static Task<Outcome<Happening>> WriteAsync(TestBook book, Animal animal, HappeningKind kind, string when, double? amount) =>
        new RecordHappening(book.Book).RunAsync(animal.AnimalId, new() { Kind = kind, When = DateRange.Read(when).Expect(), Amount = amount }, TestBook.Who, TestBook.Cancellation);
}
