using System.Globalization;
using Clutchwright.Genetics.Loci;
using Clutchwright.Stock.Animals;
using Clutchwright.Stock.Tests.Testing;
using Microsoft.EntityFrameworkCore;
using Xunit;

namespace Clutchwright.Stock.Tests.History;

public sealed class ConcurrencyTests
{
    [Fact]
    public async Task EditAnimal_OnAnOldVersion_IsRefused()
    {
        using var book = await TestBook.NewAsync();
        var seen = await book.AddAsync("A");
        (await book.TryEditAsync(seen, TestBook.Entry("A", Sex.Male))).Expect();

        var outcome = await book.TryEditAsync(seen, TestBook.Entry("A", Sex.Female));

        Assert.Equal(new AnimalProblem.ChangedSince("A"), outcome.Problem);
        Assert.Equal(Sex.Male, (await book.FindAsync("A")).Animal.Sex);
    }

    [Fact]
    public async Task EditAnimal_ManyAtOnceOnOneVersion_OneIsDone()
    {
        using var book = await TestBook.NewAsync();
        var seen = await book.AddAsync("A");

        var outcomes = await Task.WhenAll(Enumerable.Range(0, 8).Select(i =>
            Task.Run(() => book.TryEditAsync(seen, TestBook.Entry($"A{i}")))));

        Assert.Single(outcomes, o => o.IsDone);
        Assert.Equal(7, outcomes.Count(o => o.Problem is AnimalProblem.ChangedSince));
        Assert.Equal(2, (await book.DeedsAsync()).Count);
    }

    [Fact]
    public async Task AddAnimal_ManyAtOnceWithOneTag_OneIsDone()
    {
        using var book = await TestBook.NewAsync();

        var outcomes = await Task.WhenAll(Enumerable.Range(0, 8).Select(_ => Task.Run(() => book.TryAddAsync(TestBook.Entry("A")))));

        Assert.Single(outcomes, o => o.IsDone);
        Assert.Equal(7, outcomes.Count(o => o.Problem is AnimalProblem.Refused));
    }

    [Fact]
    public async Task AddAnimal_ManyAtOnce_NumbersDeedsWithoutGaps()
    {
        using var book = await TestBook.NewAsync();

        await Task.WhenAll(Enumerable.Range(0, 20).Select(i => Task.Run(() => book.AddAsync(string.Create(CultureInfo.InvariantCulture, $"A{i}")))));

        Assert.Equal(Enumerable.Range(1, 20).Select(i => (long)i), (await book.DeedsAsync()).Select(d => d.DeedId.Number).Order());
    }

    /// <summary>Should the check in the deed ever be missed, the database still refuses.</summary>
    [Fact]
    public async Task RecordAsync_VersionChangedUnderneath_Throws()
    {
        using var book = await TestBook.NewAsync();
        var seen = await book.AddAsync("A");
        await using var db = book.Book.NewContext();
        var stale = await db.Animals.SingleAsync(TestBook.Cancellation);
        (await book.TryEditAsync(seen, TestBook.Entry("A", Sex.Male))).Expect();

        stale.Take(TestBook.Entry("A", Sex.Female));
        await using var transaction = await db.Database.BeginTransactionAsync(TestBook.Cancellation);

        await Assert.ThrowsAsync<DbUpdateConcurrencyException>(() => db.RecordAsync("x", "y", FakeClock.Start, TestBook.Cancellation));
    }
}
