using System.Globalization;
using System.Text;
using Clutchwright.Genetics.Loci;
using Clutchwright.Stock.Animals;
using Clutchwright.Stock.Statements;
using Clutchwright.Stock.Tests.Testing;
using Xunit;

namespace Clutchwright.Stock.Tests.Animals;

public sealed class ListAnimalsTests
{
    [Fact]
    public async Task RunAsync_TwoThousandAnimals_CutsPagesInTwoQueries()
    {
        using var book = await TestBook.NewAsync();
        var text = new StringBuilder("id,sex,sire,dam,hatched,seen,told,status\nB0,m,,,2009,,,reference\n");
        for (var i = 0; i < 1999; i++)
        {
            var parents = i < 2 ? "," : i % 3 == 0 ? "A0,A1" : "A0|B0,A1";
            text.Append(CultureInfo.InvariantCulture, $"A{i},{(i % 2 == 0 ? 'm' : 'f')},{parents},{(i < 2 ? 2010 : 2020)},Pastel,66% het Clown,kept\n");
        }

        (await book.TryImportAsync(text.ToString())).Expect();
        book.Log.Commands.Clear();

        var page = await book.ListAsync(new AnimalFilter { Page = 3, PageSize = 50 });

        Assert.InRange(book.Log.Commands.Count, 1, 2);
        Assert.All(book.Log.Commands, sql => Assert.DoesNotContain("\"Changes\"", sql, StringComparison.Ordinal));
        Assert.Equal((2000, 40), (page.Total, page.Pages));
        Assert.Equal(Enumerable.Range(100, 50).Select(i => $"A{i}"), page.Animals.Select(a => a.Tag));
        Assert.All(page.Animals, a => Assert.Equal("A1", a.DamTag));
        Assert.All(page.Animals, a => Assert.Equal([new StatementLine(StatementKind.Seen, "Pastel", 1), new(StatementKind.Told, "66% het Clown", 1)], a.Statements));
        Assert.All(page.Animals, a => Assert.Equal(a.SireTag is null ? ["A0", "B0"] : [], a.PossibleSireTags));
        Assert.Equal(["B0"], (await book.ListAsync(new AnimalFilter { Page = 40 })).Animals.TakeLast(1).Select(a => a.Tag));
        Assert.Empty((await book.ListAsync(new AnimalFilter { Page = 41 })).Animals);
        Assert.Equal(2000, (await book.AllAsync()).Count);
    }

    [Theory]
    [InlineData("hazel", new[] { "A1" })]
    [InlineData("HÄZEL", new[] { "A3" })]
    [InlineData("clown", new[] { "A1", "A2" })]
    [InlineData("clown a1", new[] { "A1" })]
    [InlineData("a", new[] { "A1", "A2", "A3", "A10" })]
    [InlineData("50%", new[] { "A2" })]
    [InlineData("nothing", new string[0])]
    public async Task RunAsync_Text_FindsInTagNameNotesAndStatements(string text, string[] tags)
    {
        using var book = await SmallBookAsync();

        Assert.Equal(tags, (await book.ListAsync(new AnimalFilter { Text = text })).Animals.Select(a => a.Tag));
    }

    [Theory]
    [InlineData(SexFilter.Male, new[] { "A1" })]
    [InlineData(SexFilter.Female, new[] { "A2", "A10" })]
    [InlineData(SexFilter.Unsexed, new[] { "A3" })]
    public async Task RunAsync_Sex_FindsThose(SexFilter sex, string[] tags)
    {
        using var book = await SmallBookAsync();

        Assert.Equal(tags, (await book.ListAsync(new AnimalFilter { Sex = sex })).Animals.Select(a => a.Tag));
    }

    [Fact]
    public async Task RunAsync_Statuses_FindsThose()
    {
        using var book = await SmallBookAsync();

        var page = await book.ListAsync(new AnimalFilter { Statuses = [AnimalStatus.Sold, AnimalStatus.Died] });

        Assert.Equal(["A3"], page.Animals.Select(a => a.Tag));
    }

    [Theory]
    [InlineData(AnimalOrder.Tag, false, "A1 A2 A3 A10")]
    [InlineData(AnimalOrder.Tag, true, "A10 A3 A2 A1")]
    [InlineData(AnimalOrder.Name, false, "A1 A3 A2 A10")]
    [InlineData(AnimalOrder.Hatched, false, "A2 A1 A3 A10")]
    [InlineData(AnimalOrder.Hatched, true, "A1 A2 A3 A10")]
    [InlineData(AnimalOrder.Mass, true, "A10 A1 A2 A3")]
    [InlineData(AnimalOrder.Sex, false, "A2 A10 A1 A3")]
    [InlineData(AnimalOrder.Status, true, "A3 A1 A2 A10")]
    [InlineData(AnimalOrder.Added, false, "A10 A3 A2 A1")]
    public async Task RunAsync_Order_PutsWhatIsNotKnownLast(AnimalOrder order, bool descending, string tags)
    {
        using var book = await SmallBookAsync();

        var page = await book.ListAsync(new AnimalFilter { Order = order, IsDescending = descending });

        Assert.Equal(tags, string.Join(' ', page.Animals.Select(a => a.Tag)));
    }

    [Fact]
    public async Task RunAsync_WithdrawnStatement_IsNeitherShownNorSearched()
    {
        using var book = await TestBook.NewAsync();
        var animal = await book.AddAsync("A");
        await book.TryWithdrawAsync(await book.SayAsync(animal, StatementKind.Told, "het Clown"));

        Assert.Empty((await book.ListAsync()).Animals.Single().Statements);
        Assert.Empty((await book.ListAsync(new AnimalFilter { Text = "clown" })).Animals);
        Assert.Empty((await book.AllAsync()).Single().Statements);
    }

    private static async Task<TestBook> SmallBookAsync()
    {
        var book = await TestBook.NewAsync();
        foreach (var entry in new AnimalEntry[]
        {
            new() { Tag = "A10", Sex = Sex.Female, MassGrams = 2000 },
            new() { Tag = "A3", Name = "Häzel", Status = AnimalStatus.Sold },
            new() { Tag = "A2", Sex = Sex.Female, Hatched = DateRange.Read("2019").Expect(), MassGrams = 900 },
            new() { Tag = "A1", Sex = Sex.Male, Name = "Hazel", Hatched = DateRange.Read("2021").Expect(), MassGrams = 1000, Notes = "Clown-like" },
        })
        {
            (await book.TryAddAsync(entry)).Expect();

            // Ids are ordered by the millisecond.
            await Task.Delay(2, TestBook.Cancellation);
        }

        var second = (await book.FindAsync("A2")).Animal;
        await book.SayAsync(second, StatementKind.Told, "50% het Clown");
        return book;
    }
}
