using System.IO.Compression;
using System.Security.Cryptography;
using System.Text;
using Clutchwright.Stock.Export;
using Clutchwright.Stock.Import;
using Clutchwright.Stock.Tests.Backups;
using Clutchwright.Stock.Tests.Testing;
using Microsoft.EntityFrameworkCore;
using Xunit;

namespace Clutchwright.Stock.Tests.Books;

/// <summary>A book leaves as a file and comes back as it was.</summary>
public sealed class ComeBackTests : IDisposable
{
    private readonly BookFiles _files = new();

    public void Dispose() => _files.Dispose();

    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    [InlineData(4)]
    [InlineData(5)]
    [InlineData(6)]
    public async Task Export_AnyBook_ComesBackAsItWas(int seed)
    {
        using var book = await TestBook.NewAsync();
        await BookFiles.FillAsync(book, seed, 120);
        var zip = await _files.ExportAsync(book.Book, "out.zip");
        using var other = await TestBook.NewAsync();

        (await _files.TryComeBackAsync(other.Book, zip)).Expect();

        Assert.Equal(await Records.OfAsync(book.Book), await Records.OfAsync(other.Book));
        Assert.Equal(await PicturesAsync(book, isAll: false), await PicturesAsync(other, isAll: true));
        var again = await _files.ExportAsync(other.Book, "again.zip");
        Assert.Equal(await BookFiles.EntryAsync(zip, "book.json"), await BookFiles.EntryAsync(again, "book.json"));
        Assert.Equal(await File.ReadAllBytesAsync(zip, TestBook.Cancellation), await File.ReadAllBytesAsync(again, TestBook.Cancellation));
        await BackupTests.AssertSoundAsync(other.Book);

        // One deed, which can be undone; and the book goes on.
        var deeds = await other.DeedsAsync();
        Assert.Equal(["Came back with everything from out.zip"], deeds.Select(d => d.Words));
        await new RandomDeeds(other.Book, seed + 100).RunAsync(20);
        await BackupTests.AssertSoundAsync(other.Book);
    }

    [Fact]
    public async Task ComeBack_Undone_LeavesAnEmptyBook()
    {
        using var book = await TestBook.NewAsync();
        await BookFiles.FillAsync(book, 7, 80);
        using var other = await TestBook.NewAsync();
        (await _files.TryComeBackAsync(other.Book, await _files.ExportAsync(book.Book, "out.zip"))).Expect();

        await other.UndoLastAsync();

        Assert.Equal("", await other.StateAsync());
        await BackupTests.AssertSoundAsync(other.Book);
    }

    [Fact]
    public async Task Export_Json_ComesBackButForItsPhotos()
    {
        using var book = await TestBook.NewAsync();
        await BookFiles.FillAsync(book, 8, 120);
        var json = await _files.ExportAsync(book.Book, "out.json");
        using var other = await TestBook.NewAsync();

        var refused = await _files.TryComeBackAsync(other.Book, json);
        (await _files.TryComeBackAsync(other.Book, json, withoutPhotos: true)).Expect();

        Assert.IsType<BookFileProblem.PhotosMissing>(refused.Problem);
        var wanted = (await Records.OfAsync(book.Book)).Where(t => t.Name != "Photos");
        Assert.Equal(wanted, (await Records.OfAsync(other.Book)).Where(t => t.Name != "Photos"));
        Assert.Equal(0, await CountAsync(other, "Photos"));
    }

    [Fact]
    public async Task ComeBack_BookThatIsNotEmpty_IsRefusedUntilItMayBeReplaced()
    {
        using var book = await TestBook.NewAsync();
        await BookFiles.FillAsync(book, 9, 60);
        var zip = await _files.ExportAsync(book.Book, "out.zip");
        using var other = await TestBook.NewAsync();
        await other.AddAsync("Mine");
        var before = (await other.Book.ContentsAsync(TestBook.Cancellation)).Expect();

        var refused = await _files.TryComeBackAsync(other.Book, zip);
        var unchanged = (await other.Book.ContentsAsync(TestBook.Cancellation)).Expect();
        var replaced = (await _files.TryComeBackAsync(other.Book, zip, isReplacing: true)).Expect();

        Assert.Equal(new BookFileProblem.BookNotEmpty(1, 1), refused.Problem);
        Assert.Equal(before.Digest, unchanged.Digest);
        Assert.Equal(await Records.OfAsync(book.Book), await Records.OfAsync(other.Book));
        Assert.Equal(before.Digest, replaced.Before!.Contents.Digest);
    }

    [Fact]
    public async Task ComeBack_FileOfAnEmptyBook_LeavesTheBookEmpty()
    {
        using var book = await TestBook.NewAsync();
        using var other = await TestBook.NewAsync();

        (await _files.TryComeBackAsync(other.Book, await _files.ExportAsync(book.Book, "out.zip"))).Expect();

        Assert.Equal("", await other.StateAsync());
    }

    [Fact]
    public async Task ComeBack_FolderUnpackedAndPackedAgain_ComesBack()
    {
        using var book = await TestBook.NewAsync();
        await BookFiles.FillAsync(book, 10, 60);
        var zip = await _files.ExportAsync(book.Book, "out.zip");
        var folder = _files.PathOf("unpacked");
        await ZipFile.ExtractToDirectoryAsync(zip, Path.Combine(folder, "my book"), TestBook.Cancellation);
        await File.WriteAllTextAsync(Path.Combine(folder, "my book", ".DS_Store"), "x", TestBook.Cancellation);
        var packed = _files.PathOf("packed.zip");
        await ZipFile.CreateFromDirectoryAsync(folder, packed, TestBook.Cancellation);
        using var other = await TestBook.NewAsync();

        (await _files.TryComeBackAsync(other.Book, packed)).Expect();

        Assert.Equal(await Records.OfAsync(book.Book), await Records.OfAsync(other.Book));
    }

    [Fact]
    public async Task Export_FileIsThere_IsNotOverwritten()
    {
        using var book = await TestBook.NewAsync();
        var file = _files.PathOf("taken.zip");
        await File.WriteAllTextAsync(file, "mine", TestBook.Cancellation);

        var outcome = await new ExportBook(book.Book).RunAsync(file, _ => [], TestBook.Cancellation);

        Assert.Equal(new BookFileProblem.FileThere(file), outcome.Problem);
        Assert.Equal("mine", await File.ReadAllTextAsync(file, TestBook.Cancellation));
        Assert.Equal(["taken.zip"], Directory.GetFileSystemEntries(Path.GetDirectoryName(file)!).Select(Path.GetFileName));
    }

    [Fact]
    public async Task Export_Stopped_LeavesNoFile()
    {
        using var book = await TestBook.NewAsync();
        await BookFiles.FillAsync(book, 11, 40);
        using var stop = new CancellationTokenSource();

        await Assert.ThrowsAnyAsync<OperationCanceledException>(() => new ExportBook(book.Book).RunAsync(
            _files.PathOf("out.zip"),
            _ =>
            {
                stop.Cancel();
                return [];
            },
            stop.Token));

        Assert.Empty(Directory.GetFileSystemEntries(Path.GetDirectoryName(_files.PathOf("x"))!));
    }

    [Fact]
    public async Task Export_Tables_HoldWhatStandsByTags()
    {
        using var book = await TestBook.NewAsync();
        await BookFiles.FillAsync(book, 12, 0);

        var zip = await _files.ExportAsync(book.Book, "out.zip");

        Assert.Equal("name,lowest_c,highest_c,lowest_humidity_percent,highest_humidity_percent,in_use,notes\r\nShelf 12,30.5,32,,,yes,'=1+1\r\n", await TextAsync(zip, "incubators.csv"));
        Assert.Equal("incubator,taken_utc,temperature_c,humidity_percent,text\r\nShelf 12,2026-04-30T12:00:00Z,31.25,95,\r\n", await TextAsync(zip, "readings.csv"));
        Assert.Contains("Warm 12,Dam 12,,2025-05-01", await TextAsync(zip, "clutches.csv"), StringComparison.Ordinal);
        Assert.StartsWith("id,sex,sire,dam,hatched,seen,told,ruled_out,name,status,mass_g,notes,statements\r\nDam 12,f,", await TextAsync(zip, "animals.csv"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Export_Tables_AreThoseThatAreImported()
    {
        using var book = await TestBook.NewAsync();
        await BookFiles.FillAsync(book, 14, 120);
        await using var clutches = new StringWriter();
        await using var log = new StringWriter();
        (await new ExportClutches(book.Book).RunAsync(clutches, TestBook.Cancellation)).Expect();
        (await new ExportLog(book.Book).RunAsync(log, TestBook.Cancellation)).Expect();

        var zip = await _files.ExportAsync(book.Book, "out.zip");

        Assert.Equal(await book.ExportAsync(), await TextAsync(zip, "animals.csv"));
        Assert.Equal($"{clutches}", await TextAsync(zip, "clutches.csv"));
        Assert.Equal($"{log}", await TextAsync(zip, "log.csv"));
    }

    [Fact]
    public async Task Export_Photos_AreNamedByTagAndDayAndHaveTheirDigest()
    {
        using var book = await TestBook.NewAsync();
        await BookFiles.FillAsync(book, 13, 200);
        var zip = await _files.ExportAsync(book.Book, "out.zip");

        await using var archive = await ZipFile.OpenReadAsync(zip, TestBook.Cancellation);
        var names = archive.Entries.Select(e => e.FullName).Where(n => n.StartsWith("photos/", StringComparison.Ordinal)).ToList();
        var digests = new List<string>();
        foreach (var name in names)
        {
            digests.Add(Convert.ToHexStringLower(SHA256.HashData(await BookFiles.EntryAsync(zip, name))));
        }

        Assert.NotEmpty(names);
        Assert.All(names, name => Assert.Matches(@"^photos/[\p{L}\p{Nd}-]+_(no-date|\d{4}-\d\d-\d\d(_to_\d{4}-\d\d-\d\d)?)(_\d+)?\.jpg$", name));
        await using var db = book.Book.NewContext();
        Assert.Equal((await db.Photos.Select(p => p.Digest).Distinct().ToListAsync(TestBook.Cancellation)).Order(StringComparer.Ordinal), digests.Order(StringComparer.Ordinal));
    }

    private static async Task<string> TextAsync(string zip, string name) => Encoding.UTF8.GetString(await BookFiles.EntryAsync(zip, name));

    private static async Task<long> CountAsync(TestBook book, string table) => (await book.Book.ContentsAsync(TestBook.Cancellation)).Expect().RowsOf(table);

    // A picture whose photos were all undone stays in a book, and does not leave with it.
    private static async Task<IReadOnlyList<string>> PicturesAsync(TestBook book, bool isAll)
    {
        await using var db = book.Book.NewContext();
        var named = await db.Photos.Select(p => p.Digest).Distinct().ToListAsync(TestBook.Cancellation);
        var contents = await db.PhotoContents.AsNoTracking().ToListAsync(TestBook.Cancellation);
        return [.. contents.Where(c => isAll || named.Contains(c.Digest)).Select(c => $"{Convert.ToHexStringLower(SHA256.HashData(c.Picture))} {c.Digest} {c.Thumbnail.Length}").Order(StringComparer.Ordinal)];
    }
}
