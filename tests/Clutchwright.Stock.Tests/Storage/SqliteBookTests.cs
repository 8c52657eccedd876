using System.Globalization;
using Clutchwright.Stock.Animals;
using Clutchwright.Stock.Storage;
using Clutchwright.Stock.Tests.Testing;
using Microsoft.Data.Sqlite;
using Microsoft.EntityFrameworkCore;
using Xunit;

namespace Clutchwright.Stock.Tests.Storage;

/// <summary>What holds of a book in a file.</summary>
[Trait(Once.Key, Once.Value)]
public sealed class SqliteBookTests
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
    public async Task OpenAsync_AnyBook_IsDurable()
    {
        var folder = await ClosedBookAsync();
        using var book = (await OpenAsync(folder)).Expect();
        await using var db = book.NewContext();
        await db.Database.OpenConnectionAsync(TestBook.Cancellation);

        Assert.Equal("wal", Ask(db, "PRAGMA journal_mode"));
        Assert.Equal("2", Ask(db, "PRAGMA synchronous"));
        Assert.Equal("1", Ask(db, "PRAGMA foreign_keys"));
        book.Dispose();
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
        var folder = await ClosedBookAsync();
        using var book = (await Book.OpenAsync(BookPlace.InFolder(folder), TimeProvider.System, [], TestBook.Cancellation, waitSeconds: 1)).Expect();
        var add = new AddAnimal(book, TestBook.Check);
        await using (var other = new SqliteConnection($"Data Source={book.File};Pooling=False"))
        {
            await other.OpenAsync(TestBook.Cancellation);
            await using var held = other.BeginTransaction();

            var outcome = await add.RunAsync(TestBook.Entry("A"), [], TestBook.Who, TestBook.Cancellation);

            Assert.Equal(new StorageProblem.Locked(book.Place), outcome.Problem);
        }

        Assert.True((await add.RunAsync(TestBook.Entry("A"), [], TestBook.Who, TestBook.Cancellation)).IsDone);
        book.Dispose();
        Directory.Delete(folder, recursive: true);
    }

    private static Task<Outcome<Book>> OpenAsync(string folder) => Book.OpenAsync(folder, TimeProvider.System, TestBook.Cancellation);

    private static async Task<string> ClosedBookAsync()
    {
        var folder = TestBook.NewFolder();
        (await OpenAsync(folder)).Expect().Dispose();
        return folder;
    }

    private static string? Ask(StockContext db, string sql)
    {
        using var command = db.Database.GetDbConnection().CreateCommand();
        command.CommandText = sql;
        return Convert.ToString(command.ExecuteScalar(), CultureInfo.InvariantCulture);
    }
}
