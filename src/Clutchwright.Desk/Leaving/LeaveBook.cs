using Clutchwright.Desk.Animals;
using Clutchwright.Desk.Opened;
using Clutchwright.Desk.Words;
using Clutchwright.Stock.Animals;
using Clutchwright.Stock.Export;

namespace Clutchwright.Desk.Leaving;

/// <summary>Everything in a file that other programs can read: for a keeper who leaves, or only wants to be able to.</summary>
public sealed class LeaveBook
{
    /// <summary>Where it is wrong if nobody asked wrongly: a file that cannot be written, a book that is held by another.</summary>
    public const string Disk = "disk";

    private const string Zip = ".zip";
    private const string Json = ".json";

    private readonly OpenBook _book;
    private readonly OpenCatalogue _catalogue;

    internal LeaveBook(OpenBook book, OpenCatalogue catalogue) => (_book, _catalogue) = (book, catalogue);

    /// <summary>Gets the endings of the files that can be written.</summary>
    public static IReadOnlyList<string> Endings { get; } = [Zip, Json, LinkagePedigree.Endings[0]];

    /// <summary>Writes it. Nothing is overwritten, and nothing half-written is left.</summary>
    /// <param name="file">Where; its ending says what: <c>.zip</c> all with photos, <c>.json</c> all but the pictures, <c>.ped</c> the pedigree in
    /// linkage format with three companions of the same name.</param>
    /// <param name="cancel">Stops it; no file is left then.</param>
    public async Task<Answer<BookLeft>> RunAsync(string file, CancellationToken cancel)
    {
        var path = Path.GetFullPath(file);
        var ending = Path.GetExtension(path).ToLowerInvariant();
        if (!Endings.Contains(ending, StringComparer.Ordinal))
        {
            return new AskedWrongly("file", $"'{Path.GetFileName(path)}' does not say what to write.", DidYouMean: [.. Endings.Select(e => Path.GetFileNameWithoutExtension(path) + e)]);
        }

        // A file's database answers at once, so that all of it would be done on the caller's thread.
        return await Task.Run(() => ending == Zip || ending == Json ? BookAsync(path, cancel) : PedigreeAsync(path, cancel), cancel);
    }

    private async Task<Answer<BookLeft>> BookAsync(string path, CancellationToken cancel)
    {
        var written = await new ExportBook(_book.Book).RunAsync(path, Beside, cancel);
        return written.IsDone
            ? new BookLeft([written.Value.File], written.Value.Bytes, BookLeft.Named(written.Value.Counts), written.Value.Pictures)
            : Refusals.Of(Disk, written.Problem);
    }

    private async Task<Answer<BookLeft>> PedigreeAsync(string path, CancellationToken cancel)
    {
        var animals = await new AllAnimals(_book.Book).RunAsync(cancel);
        if (!animals.IsDone)
        {
            return Refusals.Of(Disk, animals.Problem);
        }

        var texts = LinkagePedigree.Of(_catalogue, animals.Value).Texts;
        var written = await WriteTexts.RunAsync([.. LinkagePedigree.Endings.Zip(texts, (ending, text) => new BookText(Path.ChangeExtension(path, ending), text))], cancel);
        return written.IsDone
            ? new BookLeft(written.Value.Files, written.Value.Bytes, [new("animals", animals.Value.Count)], 0)
            : Refusals.Of(Disk, written.Problem);
    }

    private IReadOnlyList<BookText> Beside(IReadOnlyList<Animal> animals) =>
    [
        new("README.txt", BookReadme.Text),
        .. LinkagePedigree.Endings.Zip(LinkagePedigree.Of(_catalogue, animals).Texts, (ending, text) => new BookText($"pedigree{ending}", text)),
    ];
}
