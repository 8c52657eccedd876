using System.Reflection;
using System.Security.Cryptography;
using Clutchwright.Stock.Animals;
using Clutchwright.Stock.Backups;
using Clutchwright.Stock.Storage;
using Clutchwright.Stock.Tests.Testing;
using Xunit;

namespace Clutchwright.Stock.Tests.Backups;

public sealed class RestoreTests : IDisposable
{
    private static readonly string OldBooks = Path.Combine(
        typeof(RestoreTests).Assembly.GetCustomAttributes<AssemblyMetadataAttribute>().Single(a => a.Key == "StockTests").Value!, "Storage", "Books");

    private readonly string _folder = TestBook.NewFolder();

    public static TheoryData<string> Files() => [.. Directory.GetFiles(OldBooks, "*.db").Select(f => Path.GetFileName(f)!).Order(StringComparer.Ordinal)];

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Fact]
    public async Task Preview_BookWentOn_TellsTheDeedsThatWouldBeLost()
    {
        using var book = await TestBook.NewAsync();
        await book.AddAsync("A");
        var file = await BackUpAsync(book);
        await book.AddAsync("B");
        await book.AddAsync("C");
        using var staged = await StageAsync(file);

        var preview = (await new RestoreBook(book.Book).PreviewAsync(staged, TestBook.Cancellation)).Expect();

        Assert.Equal((1, 3), (preview.Backup.Animals, preview.Present.Animals));
        Assert.Equal(1, preview.Common!.Number);
        Assert.Equal((2, 0), (preview.Lost, preview.Gained));
        Assert.Equal([3L, 2L], preview.LastLost.Select(d => d.Number));
        Assert.False(preview.IsSame);
    }

    [Fact]
    public async Task Preview_AnotherBook_HasNoDeedInCommon()
    {
        using var book = await TestBook.NewAsync();
        await book.AddAsync("A");
        var file = await BackUpAsync(book);
        using var other = await TestBook.NewAsync();
        await other.AddAsync("B");
        await other.AddAsync("C");
        using var staged = await StageAsync(file);

        var preview = (await new RestoreBook(other.Book).PreviewAsync(staged, TestBook.Cancellation)).Expect();

        Assert.Null(preview.Common);
        Assert.Equal((2, 1), (preview.Lost, preview.Gained));
    }

    [Fact]
    public async Task Restore_BookWentOn_IsAsItWasAndCanBeTakenBack()
    {
        using var book = await TestBook.NewAsync();
        await new RandomDeeds(book.Book, 41).RunAsync(60);
        var then = (await book.Book.ContentsAsync(TestBook.Cancellation)).Expect();
        var file = await BackUpAsync(book);
        await new RandomDeeds(book.Book, 42).RunAsync(60);
        var late = (await book.Book.ContentsAsync(TestBook.Cancellation)).Expect();
        using var staged = await StageAsync(file);

        var restored = (await new RestoreBook(book.Book).RunAsync(staged, late.LastDeed, PathOf("before"), TestBook.Cancellation)).Expect();

        Assert.Equal(then.Digest, (await book.Book.ContentsAsync(TestBook.Cancellation)).Expect().Digest);
        await BackupTests.AssertSoundAsync(book.Book);

        // The book goes on from there.
        await new RandomDeeds(book.Book, 43).RunAsync(20);
        await BackupTests.AssertSoundAsync(book.Book);
        var gone = (await book.Book.ContentsAsync(TestBook.Cancellation)).Expect();
        using var back = await StageAsync(restored.Before!.File);
        (await new RestoreBook(book.Book).RunAsync(back, gone.LastDeed, PathOf("before2"), TestBook.Cancellation)).Expect();
        Assert.Equal(late.Digest, (await book.Book.ContentsAsync(TestBook.Cancellation)).Expect().Digest);
    }

    [Fact]
    public async Task Restore_ADeedSinceThePreview_IsRefusedAndChangesNothing()
    {
        using var book = await TestBook.NewAsync();
        await book.AddAsync("A");
        var file = await BackUpAsync(book);
        var seen = (await book.Book.ContentsAsync(TestBook.Cancellation)).Expect().LastDeed;
        await book.AddAsync("B");
        using var staged = await StageAsync(file);

        var outcome = await new RestoreBook(book.Book).RunAsync(staged, seen, PathOf("before"), TestBook.Cancellation);

        Assert.Equal(2, Assert.IsType<BackupProblem.BookChanged>(outcome.Problem).Last!.Number);
        Assert.Equal(["A", "B"], (await book.AllAsync()).Select(a => a.Tag));
        Assert.False(File.Exists(PathOf("before")));
    }

    [Fact]
    public async Task Restore_BackupBeforeCannotBeMade_ChangesNothing()
    {
        using var book = await TestBook.NewAsync();
        await book.AddAsync("A");
        var file = await BackUpAsync(book);
        await book.AddAsync("B");
        using var staged = await StageAsync(file);

        var outcome = await new RestoreBook(book.Book).RunAsync(staged, await LastAsync(book), file, TestBook.Cancellation);

        Assert.IsType<BackupProblem.FileThere>(outcome.Problem);
        Assert.Equal(["A", "B"], (await book.AllAsync()).Select(a => a.Tag));
    }

    [Fact]
    public async Task Restore_StoppedInTheMiddle_LeavesTheOldBookWhole()
    {
        using var book = await TestBook.NewAsync();
        await new RandomDeeds(book.Book, 51).RunAsync(30);
        var file = await BackUpAsync(book);
        await book.AddAsync("B");
        var before = (await book.Book.ContentsAsync(TestBook.Cancellation)).Expect();
        using var staged = await StageAsync(file);
        var outcome = await book.Book.ReplaceAsync<Restored>(
            async (replacement, tables) =>
            {
                await replacement.ClearAsync(tables, TestBook.Cancellation);

                // Others read the old book all the while.
                Assert.Equal(before.Digest, (await book.Book.ContentsAsync(TestBook.Cancellation)).Expect().Digest);
                return new BackupProblem.BookChanged(null);
            },
            TestBook.Cancellation);

        Assert.False(outcome.IsDone);
        Assert.Equal(before.Digest, (await book.Book.ContentsAsync(TestBook.Cancellation)).Expect().Digest);
        await book.AddAsync("C");
    }

    [Theory]
    [InlineData("")]
    [InlineData("This is a picture of a snake, and no book at all.")]
    public async Task Stage_NoDatabase_IsRefused(string text)
    {
        await File.WriteAllTextAsync(PathOf("no"), text, TestBook.Cancellation);

        Assert.Equal(PathOf("no"), Assert.IsType<BackupProblem.NotABackup>((await TryStageAsync(PathOf("no"))).Problem).File);
        Assert.Single(Directory.GetFileSystemEntries(_folder));
    }

    [Fact]
    public async Task Stage_NoFile_IsRefused() => Assert.IsType<BackupProblem.FileUnusable>((await TryStageAsync(PathOf("nowhere"))).Problem);

    [Theory]
    [InlineData("CREATE TABLE shopping (item TEXT)")]
    [InlineData("VACUUM")]
    public async Task Stage_AnotherProgramsDatabase_IsRefused(string sql)
    {
        await BackupTests.RunAsync(PathOf("other"), "PRAGMA user_version = 1");
        await BackupTests.RunAsync(PathOf("other"), sql);

        Assert.IsType<BackupProblem.NotABackup>((await TryStageAsync(PathOf("other"))).Problem);
    }

    [Fact]
    public async Task Stage_DamagedAnywhere_IsRefused()
    {
        using var book = await TestBook.NewAsync();
        await new RandomDeeds(book.Book, 61).RunAsync(60);
        var file = await BackUpAsync(book);
        var bytes = await File.ReadAllBytesAsync(file, TestBook.Cancellation);
        var digest = (await book.Book.ContentsAsync(TestBook.Cancellation)).Expect().Digest;
        var random = new Random(62);
        for (var i = 0; i < 40; i++)
        {
            var damaged = bytes.ToArray();
            var at = random.Next(damaged.Length - 64);
            random.NextBytes(damaged.AsSpan(at, 64));
            await File.WriteAllBytesAsync(PathOf("damaged"), damaged, TestBook.Cancellation);

            var outcome = await TryStageAsync(PathOf("damaged"));

            Assert.IsType<BackupProblem.NotABackup>(outcome.Problem);
        }

        await File.WriteAllBytesAsync(PathOf("half"), bytes[..(bytes.Length / 2)], TestBook.Cancellation);
        Assert.IsType<BackupProblem.NotABackup>((await TryStageAsync(PathOf("half"))).Problem);
        using var whole = await StageAsync(file);
        Assert.Equal(digest, whole.Contents.Digest);
    }

    [Fact]
    public async Task Stage_MadeByANewerProgram_IsRefused()
    {
        using var book = await TestBook.NewAsync();
        var file = await BackUpAsync(book);

        // As a program leaves it that has it open as its book: with a log, and so without a checksum that holds.
        await BackupTests.RunAsync(file, "PRAGMA journal_mode = WAL");
        await BackupTests.RunAsync(file, "INSERT INTO \"__EFMigrationsHistory\" VALUES ('99990101000000_FromTheFuture', '99.0.0')");

        Assert.Equal(new BackupProblem.MadeByNewerProgram(file), (await TryStageAsync(file)).Problem);
    }

    [Theory]
    [MemberData(nameof(Files))]
    public async Task Restore_OldBook_IsBroughtUpAndItsFileIsNotTouched(string name)
    {
        var file = PathOf(name);
        File.Copy(Path.Combine(OldBooks, name), file);
        var before = SHA256.HashData(await File.ReadAllBytesAsync(file, TestBook.Cancellation));
        using var book = await TestBook.NewAsync();
        using (var staged = await StageAsync(file))
        {
            (await new RestoreBook(book.Book).RunAsync(staged, null, PathOf("before"), TestBook.Cancellation)).Expect();
        }

        Assert.Equal(["D", "H1", "R", "S"], (await book.AllAsync()).Select(a => a.Tag));
        await BackupTests.AssertSoundAsync(book.Book);
        Assert.Equal(before, SHA256.HashData(await File.ReadAllBytesAsync(file, TestBook.Cancellation)));
        Assert.Equal([file], Directory.GetFileSystemEntries(_folder));
    }

    /// <summary>A book in use, whose last commits lie beside its file, will do as a backup too.</summary>
    [Fact]
    public async Task Stage_BookInUse_HasItsLastDeed()
    {
        var folder = PathOf("used");
        using var used = (await Book.OpenAsync(folder, new FakeClock(), TestBook.Cancellation)).Expect();
        (await new AddAnimal(used, TestBook.Check).RunAsync(TestBook.Entry("A"), [], TestBook.Who, TestBook.Cancellation)).Expect();

        using var staged = await StageAsync(used.File!);

        Assert.Equal(1, staged.Contents.Animals);
    }

    private string PathOf(string name) => Path.Combine(_folder, name);

    private static async Task<DeedMark?> LastAsync(TestBook book) => (await book.Book.ContentsAsync(TestBook.Cancellation)).Expect().LastDeed;

    private async Task<string> BackUpAsync(TestBook book) =>
        (await new BackupBook(book.Book).RunAsync(PathOf("backup" + BackupBook.Extension), TestBook.Cancellation)).Expect().File;

    private Task<Outcome<StagedBackup>> TryStageAsync(string file) => StagedBackup.OpenAsync(file, _folder, new FakeClock(), TestBook.Cancellation);

    private async Task<StagedBackup> StageAsync(string file) => (await TryStageAsync(file)).Expect();
}
