using Clutchwright.Stock.Backups;
using Clutchwright.Stock.History;
using Clutchwright.Stock.Tests.Testing;
using Xunit;

namespace Clutchwright.Stock.Tests.History;

/// <summary>Undo after any deed gives the state before it exactly, whatever was done before.</summary>
public sealed class UndoPropertyTests(ITestOutputHelper output)
{
    private const int Before = 90;
    private const int Steps = 50;
    private const int Turns = 8;

    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    [InlineData(4)]
    public async Task UndoDeed_AfterAnyDeed_GivesTheStateBeforeIt(int seed)
    {
        using var book = await TestBook.NewAsync();
        var deeds = new RandomDeeds(book.Book, seed);
        var random = new Random(seed);

        // Something to change, withdraw and bring back.
        await deeds.RunAsync(Before);
        for (var step = 0; step < Steps; step++)
        {
            var before = await Records.OfAsync(book.Book);
            var last = await LastAsync(book);
            var refused = await deeds.NextAsync();
            var after = await Records.OfAsync(book.Book);
            var done = await LastAsync(book);
            if (refused is not null || done == last)
            {
                // What is refused leaves no trace; nor does what changed nothing.
                Assert.Equal(before, after);
                Assert.Equal(last, done);
                continue;
            }

            Assert.Equal(last + 1, done);
            await UndoAsync(book, done, deeds);
            Assert.Equal(before, await Records.OfAsync(book.Book));
            if (random.Next(4) > 0)
            {
                await UndoAsync(book, done + 1, deeds);
                Assert.Equal(after, await Records.OfAsync(book.Book));
            }
        }

        var check = (await new CheckBook(book.Book).RunAsync(TestBook.Cancellation)).Expect();
        Assert.True(check.IsSound, string.Join("; ", [.. check.Damage, .. check.Orphans, .. check.History]));
        output.WriteLine(string.Join(", ", deeds.Done.OrderBy(d => d.Key).Select(d => $"{d.Key} {d.Value}")));
    }

    [Theory]
    [InlineData(11)]
    [InlineData(12)]
    public async Task UndoDeeds_TheLastFewAtOnce_GivesTheStateBeforeThem(int seed)
    {
        using var book = await TestBook.NewAsync();
        var deeds = new RandomDeeds(book.Book, seed);
        var random = new Random(seed);
        await deeds.RunAsync(Before);
        for (var turn = 0; turn < Turns; turn++)
        {
            var (before, last) = (await Records.OfAsync(book.Book), await LastAsync(book));
            await deeds.RunAsync(1 + random.Next(6));
            var done = await LastAsync(book);
            var after = await Records.OfAsync(book.Book);
            var some = Enumerable.Range(1, (int)(done - last)).Select(i => new DeedId(last + i)).ToArray();
            random.Shuffle(some);

            var undone = (await new UndoDeed(book.Book).RunAsync(some, "Keeper", TestBook.Cancellation)).Expect();

            Assert.Equal(some.Length, undone.Count);
            Assert.Equal(before, await Records.OfAsync(book.Book));

            // A deed that is not there, and comes last, spoils the others too.
            var spoilt = await new UndoDeed(book.Book).RunAsync([.. undone.Select(u => u.DeedId), new(0)], "Keeper", TestBook.Cancellation);
            Assert.IsType<HistoryProblem.NoSuchDeed>(spoilt.Problem);
            Assert.Equal(before, await Records.OfAsync(book.Book));

            _ = (await new UndoDeed(book.Book).RunAsync([.. undone.Select(u => u.DeedId)], "Keeper", TestBook.Cancellation)).Expect();
            Assert.Equal(after, await Records.OfAsync(book.Book));
        }
    }

    private static async Task UndoAsync(TestBook book, long deed, RandomDeeds deeds)
    {
        var undone = await book.TryUndoAsync(new(deed));
        Assert.True(undone.IsDone, $"{deeds.Tried} could not be undone: {undone}");
    }

    private static async Task<long> LastAsync(TestBook book) => (await book.DeedsAsync()) is [var last, ..] ? last.DeedId.Number : 0;
}
