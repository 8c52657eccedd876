using System.Globalization;
using System.IO.Compression;
using System.Security.Cryptography;
using System.Text;
using System.Text.RegularExpressions;
using Clutchwright.Stock.Books;
using Clutchwright.Stock.Export;
using Clutchwright.Stock.Tests.Backups;
using Clutchwright.Stock.Tests.Testing;
using Xunit;

namespace Clutchwright.Stock.Tests.Books;

/// <summary>Files that were made bad at random: each is refused with its reason, or is a good book after all. Longer with CLUTCHWRIGHT_FUZZ=N.</summary>
[Trait(Once.Key, Once.Value)]
public sealed partial class BookFileFuzzTests(ITestOutputHelper output) : IDisposable
{
    private const int Cases = 400;

    private readonly BookFiles _files = new();

    public void Dispose() => _files.Dispose();

    [Fact]
    public async Task Open_BadFiles_AreRefusedWithAReasonOrAreGood()
    {
        using var book = await TestBook.NewAsync();
        await BookFiles.FillAsync(book, 21, 90);
        var good = await EntriesAsync(await _files.ExportAsync(book.Book, "good.zip"));
        var json = good.Single(e => e.Key == "book.json").Value;
        var cases = int.TryParse(Environment.GetEnvironmentVariable("CLUTCHWRIGHT_FUZZ"), CultureInfo.InvariantCulture, out var asked) ? asked : Cases;
        var (refused, same, other) = (0, 0, 0);
        for (var seed = 1; seed <= cases; seed++)
        {
            var mutation = new BookMutation(good, seed);
            var file = _files.PathOf("bad.zip");
            await File.WriteAllBytesAsync(file, mutation.Make(), TestBook.Cancellation);
            try
            {
                var opened = await BookFiles.OpenAsync(file);
                if (!opened.IsDone)
                {
                    AssertSays(opened.Problem);
                    refused++;
                    continue;
                }

                using var read = opened.Value;
                foreach (var photo in read.Records.Photos)
                {
                    var picture = await read.PictureAsync(photo, TestBook.Cancellation);
                    Assert.Equal(photo.Digest, Convert.ToHexStringLower(SHA256.HashData(picture!)));
                }

                using var bytes = new MemoryStream();
                await BookJson.WriteAsync(read.Records, bytes, TestBook.Cancellation);
                if (bytes.ToArray().AsSpan().SequenceEqual(json))
                {
                    same++;
                    continue;
                }

                // Another good book: the book takes it, and gives it back.
                other++;
                if (seed <= Cases || seed % 10 == 0)
                {
                    await AssertTakenAsync(read, bytes.ToArray());
                }
            }
            catch (Exception exception) when (exception is not OperationCanceledException)
            {
                throw new InvalidOperationException($"{mutation}", exception);
            }
        }

        output.WriteLine($"{cases} files: {refused} refused, {same} the same book, {other} another book");
        Assert.True(refused > cases / 2);
    }

    private static void AssertSays(Problem problem)
    {
        var faults = Assert.IsType<BookFileProblem.Refused>(problem).Faults;
        Assert.NotEmpty(faults);
        Assert.All(faults, fault =>
        {
            Assert.NotEqual("", fault.File);
            Assert.True(fault.Reason.Length > 10, fault.ToString());
            Assert.DoesNotContain("Clutchwright.", fault.ToString(), StringComparison.Ordinal);
            Assert.DoesNotContain("System.", fault.ToString(), StringComparison.Ordinal);
            Assert.DoesNotContain(fault.ToString(), char.IsControl);
        });
    }

    private async Task AssertTakenAsync(BookFile read, byte[] json)
    {
        using var taken = await TestBook.NewAsync();
        Assert.Null(await ComeBack.FillAsync(taken.Book, read, BookFiles.AnyPicture, TestBook.Who, TestBook.Cancellation));
        await BackupTests.AssertSoundAsync(taken.Book);
        var again = await _files.ExportAsync(taken.Book, "again.json");
        Assert.Equal(Settled(Encoding.UTF8.GetString(json)), Settled(await File.ReadAllTextAsync(again, TestBook.Cancellation)));
        File.Delete(again);
    }

    // Pictures are named anew by the tags and days of now, and lists of ids are sorted: nothing is said by either.
    private static string Settled(string json) => IdList().Replace(
        PictureName().Replace(json, ""), list => $"[{string.Join(',', list.Groups["ids"].Value.Split(',').Order(StringComparer.Ordinal))}]");

    [GeneratedRegex("\"file\":\"[^\"]*\"")]
    private static partial Regex PictureName();

    [GeneratedRegex(@"\[(?<ids>""[0-9a-f-]{36}""(,""[0-9a-f-]{36}"")+)\]")]
    private static partial Regex IdList();

    private static async Task<List<KeyValuePair<string, byte[]>>> EntriesAsync(string file)
    {
        await using var zip = await ZipFile.OpenReadAsync(file, TestBook.Cancellation);
        var entries = new List<KeyValuePair<string, byte[]>>();
        foreach (var entry in zip.Entries)
        {
            entries.Add(new(entry.FullName, await BookFiles.EntryAsync(file, entry.FullName)));
        }

        return entries;
    }
}
