using System.Data.Common;
using Clutchwright.Stock.Animals;
using Clutchwright.Stock.History;
using Clutchwright.Stock.Storage;
using Clutchwright.Stock.Tests.Testing;
using Microsoft.Data.Sqlite;
using Microsoft.EntityFrameworkCore;
using Npgsql;
using Xunit;

namespace Clutchwright.Stock.Tests.Storage;

public sealed class BookTests
{
    [Fact]
    public async Task OpenAsync_ExistingBook_KeepsWhatIsInIt()
    {
        using var first = await TestBook.NewAsync();
        await first.AddAsync("A");

        using var again = (await Book.OpenAsync(first.Place, TimeProvider.System, TestBook.Cancellation)).Expect();

        Assert.Equal(["A"], (await new AllAnimals(again).RunAsync(TestBook.Cancellation)).Expect().Select(a => a.Tag));
    }

    [Fact]
    public async Task Model_AgainstMigrations_HasNothingPending()
    {
        using var book = await TestBook.NewAsync();
        await using var db = book.Book.NewContext();

        Assert.False(db.Database.HasPendingModelChanges());
    }

    [Fact]
    public async Task OpenAsync_WrittenByANewerProgram_IsRefusedUntouched()
    {
        using var place = await TestPlace.NewAsync();
        await RunAsync(place, "INSERT INTO \"__EFMigrationsHistory\" VALUES ('99990101000000_FromTheFuture', '99.0.0')");

        var problem = Assert.IsType<StorageProblem.MadeByNewerProgram>((await OpenAsync(place)).Problem);

        Assert.Equal(["99990101000000_FromTheFuture"], problem.Unknown);
    }

    [Fact]
    public async Task OpenAsync_AnotherProgramsDatabase_IsRefused()
    {
        using var place = await TestPlace.BareAsync();
        await RunAsync(place, "CREATE TABLE shopping (item TEXT)");

        Assert.IsType<StorageProblem.NotABook>((await OpenAsync(place)).Problem);
    }

    [Fact]
    public async Task OpenAsync_SeveralAtOnce_MakeOneBook()
    {
        using var place = await TestPlace.BareAsync();

        var opened = await Task.WhenAll(Enumerable.Range(0, 4).Select(_ => Task.Run(() => OpenAsync(place))));

        foreach (var book in opened)
        {
            using var one = book.Expect();
            Assert.Empty((await new AllAnimals(one).RunAsync(TestBook.Cancellation)).Expect());
        }
    }

    /// <summary>The history tells whether a record is as a deed left it; times must come back as they were written down there.</summary>
    [Fact]
    public async Task Deed_ClockFinerThanTheDatabase_CanBeUndone()
    {
        using var place = await TestPlace.NewAsync();
        using var book = (await Book.OpenAsync(place.Place, new FineClock(), TestBook.Cancellation)).Expect();
        var animal = (await new AddAnimal(book, TestBook.Check).RunAsync(TestBook.Entry("A"), [], TestBook.Who, TestBook.Cancellation)).Expect();
        (await new BinAnimal(book).RunAsync(animal.AnimalId, TestBook.Who, TestBook.Cancellation)).Expect();

        (await new UndoDeed(book).RunAsync(new DeedId(2), TestBook.Who, TestBook.Cancellation)).Expect();

        Assert.Equal(["A"], (await new AllAnimals(book).RunAsync(TestBook.Cancellation)).Expect().Select(a => a.Tag));
    }

    [Theory]
    [InlineData("INSERT INTO \"Animals\" (\"AnimalId\", \"Tag\", \"Status\", \"Notes\", \"Version\", \"TagKey\", \"TagOrder\", \"SearchText\") SELECT '00000000-0000-0000-0000-000000000001', 'a', 'Kept', '', \"Version\", \"TagKey\", \"TagOrder\", '' FROM \"Animals\"")]
    [InlineData("UPDATE \"Animals\" SET \"Sex\" = 'Both'")]
    [InlineData("UPDATE \"Animals\" SET \"Status\" = 'Lost'")]
    [InlineData("UPDATE \"Animals\" SET \"MassGrams\" = -1")]
    [InlineData("UPDATE \"Animals\" SET \"SireId\" = \"AnimalId\"")]
    [InlineData("UPDATE \"Animals\" SET \"DamId\" = '00000000-0000-0000-0000-000000000009'")]
    [InlineData("UPDATE \"Animals\" SET \"Hatched_Earliest\" = '2024-01-01'")]
    [InlineData("UPDATE \"Animals\" SET \"Hatched_Earliest\" = '2024-01-02', \"Hatched_Latest\" = '2024-01-01', \"Hatched_Words\" = 'x'")]
    [InlineData("UPDATE \"Animals\" SET \"Tag\" = ''")]
    [InlineData("UPDATE \"Statements\" SET \"Confidence\" = 1.5")]
    [InlineData("UPDATE \"Statements\" SET \"Kind\" = 'DnaTest'")]
    [InlineData("UPDATE \"Statements\" SET \"Text\" = ''")]
    [InlineData("DELETE FROM \"Animals\"")]
    public async Task Database_AgainstARule_RefusesByItself(string sql)
    {
        using var book = await TestBook.NewAsync();
        await book.SayAsync(await book.AddAsync("A"), Stock.Statements.StatementKind.Told, "Clown");
        await using var db = book.Book.NewContext();

        var exception = await Assert.ThrowsAnyAsync<DbException>(() => db.Database.ExecuteSqlRawAsync(sql, TestBook.Cancellation));

        Assert.True(exception is SqliteException { SqliteErrorCode: SQLitePCL.raw.SQLITE_CONSTRAINT } || exception.SqlState?[..2] == "23", exception.Message);
    }

    private static Task<Outcome<Book>> OpenAsync(TestPlace place) => Book.OpenAsync(place.Place, TimeProvider.System, TestBook.Cancellation);

    /// <summary>Runs SQL as another program would.</summary>
    private static async Task RunAsync(TestPlace place, string sql)
    {
        await using DbConnection connection = TestServer.HoldsTheBooks
            ? new NpgsqlConnection(place.Text + ";Pooling=false")
            : new SqliteConnection($"Data Source={Path.Combine(place.Text, Book.FileName)};Pooling=False");
        await connection.OpenAsync(TestBook.Cancellation);
        await using var command = connection.CreateCommand();
        command.CommandText = sql;
        await command.ExecuteNonQueryAsync(TestBook.Cancellation);
    }

    /// <summary>A clock that tells parts of a microsecond.</summary>
    private sealed class FineClock : TimeProvider
    {
        public override DateTimeOffset GetUtcNow() => new(FakeClock.Start.AddTicks(1_234_567), TimeSpan.Zero);
    }
}
