using System.IO.Compression;
using Clutchwright.Genetics.Loci;
using Clutchwright.Stock.Animals;
using Clutchwright.Stock.Backups;
using Clutchwright.Stock.Books;
using Clutchwright.Stock.Clutches;
using Clutchwright.Stock.Export;
using Clutchwright.Stock.Incubators;
using Clutchwright.Stock.Photos;
using Clutchwright.Stock.Storage;
using Clutchwright.Stock.Tests.Testing;

namespace Clutchwright.Stock.Tests.Books;

/// <summary>Writes whole books to files and reads them back, in a folder of its own.</summary>
internal sealed class BookFiles : IDisposable
{
    /// <summary>Takes every file for a picture; the small one is its first byte, as the random deeds have it.</summary>
    public static readonly PhotoReader AnyPicture = new(_ => true, picture => picture[..1].ToArray());

    private readonly string _folder = TestBook.NewFolder();

    public string PathOf(string name) => Path.Combine(_folder, name);

    public async Task<string> ExportAsync(Book book, string name)
    {
        var file = PathOf(name);
        (await new ExportBook(book).RunAsync(file, _ => [new("README.txt", "A book.")], TestBook.Cancellation)).Expect();
        return file;
    }

    public static Task<Outcome<BookFile>> OpenAsync(string file, bool withoutPhotos = false) =>
        BookFile.OpenAsync(file, null, withoutPhotos, AnyPicture, TestBook.Cancellation);

    public async Task<Outcome<Restored>> TryComeBackAsync(Book book, string file, bool isReplacing = false, bool withoutPhotos = false)
    {
        var opened = await OpenAsync(file, withoutPhotos);
        if (!opened.IsDone)
        {
            return opened.Problem;
        }

        using var read = opened.Value;
        var last = (await new CountBook(book).RunAsync(TestBook.Cancellation)).Expect().LastDeed;
        return await new ComeBack(book, new FakeClock()).RunAsync(
            read, isReplacing, last, PathOf($"before-{Guid.CreateVersion7():N}.clutchwright"), _folder, AnyPicture, TestBook.Who, TestBook.Cancellation);
    }

    /// <summary>Does random things to a book, then something with incubators, which the random deeds leave out.</summary>
    public static async Task FillAsync(TestBook book, int seed, int deeds)
    {
        await new RandomDeeds(book.Book, seed).RunAsync(deeds);
        var name = $"Shelf {seed}";
        var incubator = (await new AddIncubator(book.Book).RunAsync(
            new IncubatorEntry { Name = name, LowestCelsius = 30.5, HighestCelsius = 32, Notes = "=1+1" }, TestBook.Who, TestBook.Cancellation)).Expect();
        await new RecordReading(book.Book).RunAsync(
            incubator.IncubatorId, new ReadingEntry { TakenAt = FakeClock.Start.AddDays(-1), Celsius = 31.25, HumidityPercent = 95 }, TestBook.Who, TestBook.Cancellation);
        var dam = await book.AddAsync($"Dam {seed}", Sex.Female);
        byte[] picture = [1, 2, 3, (byte)seed];
        (await new AddPhoto(book.Book).RunAsync(dam.AnimalId, new(picture, picture.AsMemory(0, 1), 4, 3, null, "Of the dam"), TestBook.Who, TestBook.Cancellation)).Expect();
        (await new RecordLaying(book.Book, TestBook.Check).RunAsync(
            new ClutchEntry { Tag = $"Warm {seed}", DamId = dam.AnimalId, Laid = DateRange.Read("2025-05-01").Expect(), IncubatorId = incubator.IncubatorId, Counted = [new("normal", Sex.Male, 2)] },
            TestBook.Who,
            TestBook.Cancellation)).Expect();
    }

    public static async Task<byte[]> EntryAsync(string zip, string name)
    {
        await using var archive = await ZipFile.OpenReadAsync(zip, TestBook.Cancellation);
        await using var stream = await archive.GetEntry(name)!.OpenAsync(TestBook.Cancellation);
        using var bytes = new MemoryStream();
        await stream.CopyToAsync(bytes, TestBook.Cancellation);
        return bytes.ToArray();
    }

    public void Dispose() => Directory.Delete(_folder, recursive: true);
}
