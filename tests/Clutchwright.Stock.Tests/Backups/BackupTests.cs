using Clutchwright.Stock.Animals;
using Clutchwright.Stock.Backups;
using Clutchwright.Stock.Storage;
using Clutchwright.Stock.Tests.Testing;
using Microsoft.Data.Sqlite;
using Microsoft.EntityFrameworkCore;
using Xunit;

namespace Clutchwright.Stock.Tests.Backups;

public sealed class BackupTests : IDisposable
{
    private readonly string _folder = TestBook.NewFolder();

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Theory]
    [InlineData(11)]
    [InlineData(12)]
    [InlineData(13)]
    public async Task BackupThenRestore_AnyBookOnBothDatabases_HoldsTheSame(int seed)
    {
        using var book = await TestBook.NewAsync();
        await new RandomDeeds(book.Book, seed).RunAsync(120);

        var made = await BackUpAsync(book);

        Assert.Equal(new FileInfo(made.File).Length, made.Bytes);
        Assert.Equal([made.File], Directory.GetFileSystemEntries(_folder));
        var present = (await book.Book.ContentsAsync(TestBook.Cancellation)).Expect();
        Assert.Empty(present.Differences(made.Contents));
        Assert.Equal(present.Digest, made.Contents.Digest);
        Assert.Equal((await book.DeedsAsync())[0].DeedId.Number, made.Contents.LastDeed!.Number);
        foreach (var place in await PlacesAsync())
        {
            using (place)
            {
                using var other = (await Book.OpenAsync(place.Place, new FakeClock(), TestBook.Cancellation)).Expect();
                using var staged = await StageAsync(made.File);

                var restored = (await new RestoreBook(other).RunAsync(staged, null, PathOf("before"), TestBook.Cancellation)).Expect();

                Assert.Null(restored.Before);
                Assert.Equal(present.Digest, (await other.ContentsAsync(TestBook.Cancellation)).Expect().Digest);
                await AssertSoundAsync(other);
            }
        }
    }

    /// <summary>Taken from the bytes in the file the digest is that of the values, row by row.</summary>
    [Theory]
    [InlineData(31)]
    [InlineData(32)]
    public async Task SqliteDigest_AnyBook_IsThatOfItsRows(int seed)
    {
        using var book = await TestBook.NewAsync();
        await new RandomDeeds(book.Book, seed).RunAsync(120);
        var made = await BackUpAsync(book);
        await using var db = new StockContext(SqliteStore.OptionsForFile($"Data Source={made.File};Mode=ReadOnly;Pooling=False"));
        await db.Database.OpenConnectionAsync(TestBook.Cancellation);
        var connection = (SqliteConnection)db.Database.GetDbConnection();
        foreach (var table in BookTable.Of(db.Model))
        {
            var slow = await BookContents.ReadAsync(table, table.RowsAsync(connection, null, TestBook.Cancellation), TestBook.Cancellation);

            var quick = SqliteDigest.Of(table, connection, null, TestBook.Cancellation);

            Assert.Equal(slow, quick);
        }
    }

    /// <summary>From one database to the other and back again nothing is lost.</summary>
    [Fact]
    public async Task Backup_OfARestoredBook_HoldsTheSame()
    {
        using var book = await TestBook.NewAsync();
        await new RandomDeeds(book.Book, 21).RunAsync(80);
        var made = await BackUpAsync(book);
        foreach (var place in await PlacesAsync())
        {
            using (place)
            {
                using var other = (await Book.OpenAsync(place.Place, new FakeClock(), TestBook.Cancellation)).Expect();
                using var staged = await StageAsync(made.File);
                (await new RestoreBook(other).RunAsync(staged, null, PathOf("before"), TestBook.Cancellation)).Expect();

                var again = (await new BackupBook(other).RunAsync(PathOf($"again{Guid.CreateVersion7():N}"), TestBook.Cancellation)).Expect();

                Assert.Equal(made.Contents.Digest, again.Contents.Digest);
            }
        }
    }

    [Fact]
    public async Task Backup_WhileOthersWrite_IsOfOneMoment()
    {
        using var book = await TestBook.NewAsync();
        using var stop = CancellationTokenSource.CreateLinkedTokenSource(TestBook.Cancellation);
        var writers = Enumerable.Range(0, 3).Select(i => Task.Run(async () =>
        {
            var deeds = new RandomDeeds(book.Book, 31 + i);
            while (!stop.IsCancellationRequested)
            {
                await deeds.NextAsync();
            }
        })).ToArray();
        var made = new List<BackupMade>();
        for (var i = 0; i < 6; i++)
        {
            await Task.Delay(TimeSpan.FromMilliseconds(150), TestBook.Cancellation);
            made.Add(await BackUpAsync(book, $"b{i}"));
        }

        await stop.CancelAsync();
        await Task.WhenAll(writers);

        // Its history leads to its records: no deed is in it by half.
        Assert.True(made[^1].Contents.Deeds > made[0].Contents.Deeds);
        foreach (var one in made)
        {
            using var staged = await StageAsync(one.File);
            await AssertSoundAsync(staged.Book);
        }
    }

    [Fact]
    public async Task Backup_NameIsTaken_IsRefusedAndLeavesTheFile()
    {
        using var book = await TestBook.NewAsync();
        await File.WriteAllTextAsync(PathOf("taken"), "mine", TestBook.Cancellation);

        var outcome = await new BackupBook(book.Book).RunAsync(PathOf("taken"), TestBook.Cancellation);

        Assert.IsType<BackupProblem.FileThere>(outcome.Problem);
        Assert.Equal("mine", await File.ReadAllTextAsync(PathOf("taken"), TestBook.Cancellation));
        Assert.Single(Directory.GetFileSystemEntries(_folder));
    }

    [Fact]
    public async Task Backup_FolderIsAFile_IsRefused()
    {
        using var book = await TestBook.NewAsync();
        await File.WriteAllTextAsync(PathOf("file"), "mine", TestBook.Cancellation);

        var outcome = await new BackupBook(book.Book).RunAsync(Path.Combine(PathOf("file"), "b.clutchwright"), TestBook.Cancellation);

        Assert.IsType<BackupProblem.FileUnusable>(outcome.Problem);
    }

    /// <summary>A row changed behind the back of the copy is found when the copy is read.</summary>
    [Fact]
    public async Task Read_BackupChangedByAnotherProgram_HasAnotherDigest()
    {
        using var book = await TestBook.NewAsync();
        await book.AddAsync("A");
        var made = await BackUpAsync(book);
        await RunAsync(made.File, "UPDATE Animals SET Notes = 'x'");

        var read = (await BackupFile.ReadAsync(made.File, TestBook.Cancellation)).Expect();

        Assert.Equal(["Animals"], made.Contents.Differences(read.Contents));
    }

    [Fact]
    public async Task Backup_IsAnOrdinaryBook()
    {
        using var book = await TestBook.NewAsync();
        await book.AddAsync("A");
        var made = await BackUpAsync(book);
        var folder = Directory.CreateDirectory(PathOf("opened"));
        File.Copy(made.File, Path.Combine(folder.FullName, Book.FileName));

        using var opened = (await Book.OpenAsync(folder.FullName, new FakeClock(), TestBook.Cancellation)).Expect();

        Assert.Equal(["A"], (await new AllAnimals(opened).RunAsync(TestBook.Cancellation)).Expect().Select(a => a.Tag));
        Assert.Single((await new Stock.History.ListDeeds(opened).RunAsync(9, null, TestBook.Cancellation)).Expect());
    }

    internal static async Task AssertSoundAsync(Book book)
    {
        var check = (await new CheckBook(book).RunAsync(TestBook.Cancellation)).Expect();
        Assert.True(check.IsSound, string.Join("; ", [.. check.Damage, .. check.Orphans, .. check.History]));
    }

    internal static async Task RunAsync(string file, string sql)
    {
        await using var connection = new SqliteConnection($"Data Source={file};Pooling=False");
        await connection.OpenAsync(TestBook.Cancellation);
        await using var command = connection.CreateCommand();
        command.CommandText = sql;
        await command.ExecuteNonQueryAsync(TestBook.Cancellation);
    }

    // A folder, and a database where there is a server.
    private static async Task<List<TestPlace>> PlacesAsync()
    {
        var places = new List<TestPlace> { TestPlace.BareFolder() };
        if (TestServer.IsThere)
        {
            places.Add(await TestPlace.BareDatabaseAsync());
        }

        return places;
    }

    private string PathOf(string name) => Path.Combine(_folder, name);

    private async Task<BackupMade> BackUpAsync(TestBook book, string name = "backup") =>
        (await new BackupBook(book.Book).RunAsync(PathOf(name + BackupBook.Extension), TestBook.Cancellation)).Expect();

    private async Task<StagedBackup> StageAsync(string file) => (await StagedBackup.OpenAsync(file, _folder, new FakeClock(), TestBook.Cancellation)).Expect();
}
