using System.Globalization;
using Clutchwright.Stock.Animals;
using Clutchwright.Stock.Storage;
using Clutchwright.Stock.Tests.Testing;
using Microsoft.Data.Sqlite;
using Microsoft.EntityFrameworkCore;
using Xunit;

namespace Clutchwright.Stock.Tests.Storage;

public sealed class BookTests
{
    [Fact]
    public async Task OpenAsync_NoFolder_MakesFolderAndBook()
    {
        var root = TestBook.NewFolder();
        var folder = Path.Combine(root, "a", "b");

        using (var book = (await Book.OpenAsync(folder, TimeProvider.System, TestBook.Cancellation)).Expect())
        {
            Assert.Equal(Path.Combine(folder, Book.FileName), book.File);
            Assert.True(File.Exists(book.File));
        }

        Directory.Delete(root, recursive: true);
    }

    [Fact]
    public async Task OpenAsync_ExistingBook_KeepsWhatIsInIt()
    {
        using var first = await TestBook.NewAsync();
        await first.AddAsync("A");

        using var again = (await Book.OpenAsync(first.Folder, TimeProvider.System, TestBook.Cancellation)).Expect();

        Assert.Equal(["A"], (await new AllAnimals(again).RunAsync(TestBook.Cancellation)).Expect().Select(a => a.Tag));
    }

    [Fact]
    public async Task OpenAsync_AnyBook_IsDurable()
    {
        using var book = await TestBook.NewAsync();
        await using var db = book.Book.NewContext();
        await db.Database.OpenConnectionAsync(TestBook.Cancellation);

        Assert.Equal("wal", Ask(db, "PRAGMA journal_mode"));
        Assert.Equal("2", Ask(db, "PRAGMA synchronous"));
        Assert.Equal("1", Ask(db, "PRAGMA foreign_keys"));
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
        var folder = await ClosedBookAsync(db => db.Database.ExecuteSqlRawAsync(
            "INSERT INTO \"__EFMigrationsHistory\" VALUES ('99990101000000_FromTheFuture', '99.0.0')"));

        var problem = Assert.IsType<StorageProblem.MadeByNewerProgram>((await OpenAsync(folder)).Problem);

        Assert.Equal(["99990101000000_FromTheFuture"], problem.Unknown);
        Directory.Delete(folder, recursive: true);
    }

    [Fact]
    public async Task OpenAsync_NotADatabase_IsRefused()
    {
        var folder = TestBook.NewFolder();
        await File.WriteAllTextAsync(Path.Combine(folder, Book.FileName), new string('x', 5000), TestBook.Cancellation);

        Assert.IsType<StorageProblem.NotABook>((await OpenAsync(folder)).Problem);
        Directory.Delete(folder, recursive: true);
    }

    [Fact]
    public async Task OpenAsync_AnotherProgramsDatabase_IsRefused()
    {
        var folder = TestBook.NewFolder();
        await using (var connection = new SqliteConnection($"Data Source={Path.Combine(folder, Book.FileName)};Pooling=False"))
        {
            await connection.OpenAsync(TestBook.Cancellation);
            await using var command = connection.CreateCommand();
            command.CommandText = "CREATE TABLE shopping (item TEXT)";
            await command.ExecuteNonQueryAsync(TestBook.Cancellation);
        }

        Assert.IsType<StorageProblem.NotABook>((await OpenAsync(folder)).Problem);
        Directory.Delete(folder, recursive: true);
    }

    [Fact]
    public async Task OpenAsync_FolderIsAFile_IsRefused()
    {
        var folder = TestBook.NewFolder();
        var file = Path.Combine(folder, "file");
        await File.WriteAllTextAsync(file, "", TestBook.Cancellation);

        Assert.IsType<StorageProblem.FolderUnusable>((await OpenAsync(file)).Problem);
        Directory.Delete(folder, recursive: true);
    }

    /// <summary>A migration of EF Core that was killed leaves a lock in the file, for which the next would wait for ever.</summary>
    [Fact]
    public async Task OpenAsync_MigrationWasKilled_TakesItUpAgain()
    {
        var folder = TestBook.NewFolder();
        await using (var connection = new SqliteConnection($"Data Source={Path.Combine(folder, Book.FileName)};Pooling=False"))
        {
            await connection.OpenAsync(TestBook.Cancellation);
            await using var command = connection.CreateCommand();
            command.CommandText = """
                CREATE TABLE "__EFMigrationsLock" ("Id" INTEGER NOT NULL CONSTRAINT "PK___EFMigrationsLock" PRIMARY KEY, "Timestamp" TEXT NOT NULL);
                INSERT INTO "__EFMigrationsLock" VALUES (1, '2026-01-01 00:00:00+00:00');
                """;
            await command.ExecuteNonQueryAsync(TestBook.Cancellation);
        }

        var opening = OpenAsync(folder);
        Assert.Same(opening, await Task.WhenAny(opening, Task.Delay(TimeSpan.FromSeconds(30), TestBook.Cancellation)));

        (await opening).Expect().Dispose();
        Directory.Delete(folder, recursive: true);
    }

    [Fact]
    public async Task Deed_FileLockedByAnotherProgram_IsAProblemAndChangesNothing()
    {
        var folder = await ClosedBookAsync(_ => Task.CompletedTask);
        using var book = (await Book.OpenAsync(folder, TimeProvider.System, [], TestBook.Cancellation, waitSeconds: 1)).Expect();
        var add = new AddAnimal(book, TestBook.Check);
        await using (var other = new SqliteConnection($"Data Source={book.File};Pooling=False"))
        {
            await other.OpenAsync(TestBook.Cancellation);
            await using var held = other.BeginTransaction();

            var outcome = await add.RunAsync(TestBook.Entry("A"), [], TestBook.Who, TestBook.Cancellation);

            Assert.Equal(new StorageProblem.Locked(book.File), outcome.Problem);
        }

        Assert.True((await add.RunAsync(TestBook.Entry("A"), [], TestBook.Who, TestBook.Cancellation)).IsDone);
        book.Dispose();
        Directory.Delete(folder, recursive: true);
    }

    [Theory]
    [InlineData("INSERT INTO \"Animals\" SELECT '00000000-0000-0000-0000-000000000001', 'a', NULL, NULL, NULL, NULL, 'Kept', NULL, '', NULL, \"Version\", \"TagKey\", \"TagOrder\", '', NULL, NULL, NULL FROM \"Animals\"")]
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

        var exception = await Assert.ThrowsAsync<SqliteException>(() => db.Database.ExecuteSqlRawAsync(sql, TestBook.Cancellation));

        Assert.Equal(SQLitePCL.raw.SQLITE_CONSTRAINT, exception.SqliteErrorCode);
    }

    private static Task<Outcome<Book>> OpenAsync(string folder) => Book.OpenAsync(folder, TimeProvider.System, TestBook.Cancellation);

    private static async Task<string> ClosedBookAsync(Func<StockContext, Task> change)
    {
        var folder = TestBook.NewFolder();
        using var book = (await OpenAsync(folder)).Expect();
        await using var db = book.NewContext();
        await change(db);
        return folder;
    }

    private static string? Ask(StockContext db, string sql)
    {
        using var command = db.Database.GetDbConnection().CreateCommand();
        command.CommandText = sql;
        return Convert.ToString(command.ExecuteScalar(), CultureInfo.InvariantCulture);
    }
}
