using System.Reflection;
using Clutchwright.Stock.Animals;
using Clutchwright.Stock.History;
using Clutchwright.Stock.Storage;
using Clutchwright.Stock.Tests.Testing;
using Xunit;

namespace Clutchwright.Stock.Tests.Storage;

/// <summary>Books as earlier programs wrote them, in Books/, open with everything that was in them.</summary>
[Trait(Once.Key, Once.Value)]
public sealed class OldBookTests
{
    private static readonly string Books = Path.Combine(
        typeof(OldBookTests).Assembly.GetCustomAttributes<AssemblyMetadataAttribute>().Single(a => a.Key == "StockTests").Value!, "Storage", "Books");

    public static TheoryData<string> Files() => [.. Directory.GetFiles(Books, "*.db").Select(f => Path.GetFileName(f)!).Order(StringComparer.Ordinal)];

    [Theory]
    [MemberData(nameof(Files))]
    public async Task OpenAsync_OldBook_HasEverythingAndUndoes(string file)
    {
        var folder = TestBook.NewFolder();
        File.Copy(Path.Combine(Books, file), Path.Combine(folder, Book.FileName));
        using (var book = (await Book.OpenAsync(folder, new FakeClock(), TestBook.Cancellation)).Expect())
        {
            var animals = (await new AllAnimals(book).RunAsync(TestBook.Cancellation)).Expect();
            var deeds = (await new ListDeeds(book).RunAsync(10, null, TestBook.Cancellation)).Expect();

            Assert.Equal(["D", "H1", "R", "S"], animals.Select(a => a.Tag));
            Assert.Equal(2, animals[1].PossibleSires.Count);
            Assert.Equal(["looked at, shows nothing", "ruled out: Pied", "told: 66% het Clown"], animals[0].Statements.Select(s => s.ToString()).Order(StringComparer.Ordinal));
            Assert.Equal(3, deeds.Count);
            await using var db = book.NewContext();
            Assert.Empty(db.Seasons);
            Assert.Empty(db.Routes);

            // Each deed of the old program can be undone by this one.
            (await new UndoDeed(book).RunAsync(deeds[0].DeedId, TestBook.Who, TestBook.Cancellation)).Expect();
            Assert.Empty((await new AllAnimals(book).RunAsync(TestBook.Cancellation)).Expect());
        }

        Directory.Delete(folder, recursive: true);
    }

    [Fact]
    public async Task Books_EveryFormButTodays_IsThere()
    {
        using var book = await TestBook.NewAsync();
        await using var db = book.Book.NewContext();
        var earlier = Microsoft.EntityFrameworkCore.RelationalDatabaseFacadeExtensions.GetMigrations(db.Database).SkipLast(1);

        Assert.Equal(earlier.Select(m => $"{m}.db").Order(StringComparer.Ordinal), Files().Select(f => f.Data));
    }
}
