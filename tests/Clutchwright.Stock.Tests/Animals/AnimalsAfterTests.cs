using Clutchwright.Genetics.Loci;
using Clutchwright.Stock.Animals;
using Clutchwright.Stock.History;
using Clutchwright.Stock.Statements;
using Clutchwright.Stock.Tests.History;
using Clutchwright.Stock.Tests.Testing;
using CsCheck;
using Xunit;

namespace Clutchwright.Stock.Tests.Animals;

public sealed class AnimalsAfterTests
{
    [Fact]
    public async Task RunAsync_EarlierDeed_GivesWhatTheBookHeld()
    {
        using var book = await TestBook.NewAsync();
        var sire = await book.AddAsync("S", Sex.Male);
        var young = await book.AddAsync("Y", sire: sire);
        var statement = await book.SayAsync(young, StatementKind.Told, "het Clown");
        await book.TryWithdrawAsync(statement);
        await book.TryBinAsync(young);

        Assert.Equal([""], await TextsAsync(book, 0));
        Assert.Equal(["S ()"], await TextsAsync(book, 1));
        Assert.Equal(["S ()", "Y () of S"], await TextsAsync(book, 2));
        Assert.Equal(["S ()", "Y (het Clown) of S"], await TextsAsync(book, 3));
        Assert.Equal(["S ()", "Y () of S"], await TextsAsync(book, 4));
        Assert.Equal(["S ()"], await TextsAsync(book, 5));
    }

    /// <summary>Whatever was done, the book of any earlier time comes back as it was then.</summary>
    [Fact]
    public async Task RunAsync_AnyDeeds_GivesEveryStateAsItWas() =>
        await Gen.Int[0, 9].Array[1, 14].SampleAsync(
            async choices =>
            {
                using var book = await TestBook.NewAsync();
                var states = new List<string> { Text(await book.AllAsync()) };
                for (var step = 0; step < choices.Length; step++)
                {
                    await UndoTests.DoSomethingAsync(book, choices[step], step);
                    if ((await book.DeedsAsync()).Count == states.Count)
                    {
                        states.Add(Text(await book.AllAsync()));
                    }
                }

                for (var deed = 0; deed < states.Count; deed++)
                {
                    Assert.Equal(states[deed], Text((await new AnimalsAfter(book.Book).RunAsync(new DeedId(deed), TestBook.Cancellation)).Expect()));
                }
            },
            iter: 40,
            threads: 1);

    private static async Task<string[]> TextsAsync(TestBook book, long deed)
    {
        var animals = (await new AnimalsAfter(book.Book).RunAsync(new DeedId(deed), TestBook.Cancellation)).Expect();
        return animals.Count == 0
            ? [""]
            : [.. animals.Select(a => $"{a.Tag} ({string.Join(", ", a.Statements.Select(s => s.Text))})"
                + (a.SireId is { } sire ? $" of {animals.Single(s => s.AnimalId == sire).Tag}" : string.Empty))];
    }

    private static string Text(IReadOnlyList<Animal> animals) => string.Join('\n', animals.Select(a =>
        Snapshots.Write(AnimalSnapshot.Of(a, a.PossibleSireIds)) + string.Join(',', a.Statements.Select(s => Snapshots.Write(StatementSnapshot.Of(s))).Order(StringComparer.Ordinal))));
}
