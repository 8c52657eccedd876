using Clutchwright.Desk.Animals;
using Clutchwright.Desk.Opened;
using Clutchwright.Desk.Words;
using Clutchwright.Stock;
using Clutchwright.Stock.Import;

namespace Clutchwright.Desk.Importing;

/// <summary>What would taking in a set of photos do? And keeps all of them, or none.</summary>
public sealed class ImportPhotoSet
{
    /// <summary>The word under which mappings of lists are kept.</summary>
    internal const string Kind = "photos";

    private readonly OpenBook _book;
    private readonly ImportMappings _mappings;

    internal ImportPhotoSet(OpenBook book, ImportMappings mappings) => (_book, _mappings) = (book, mappings);

    /// <summary>Gets the most pictures that are taken at once.</summary>
    public static int MostPictures => PhotoArchive.MostPictures;

    /// <summary>Reads every picture and checks the set against the book. Writes nothing.</summary>
    public async Task<PhotoSetPreviewed> PreviewAsync(PhotoSet set, CancellationToken cancel)
    {
        ArgumentNullException.ThrowIfNull(set);
        var read = await new PhotoSetReader(_mappings).ReadAsync(set, null, cancel);
        var preview = (await new ImportPhotos(_book.Book).PreviewAsync(read.Photos, cancel)).Expect();
        return new(
            read.List is { File: var list } ? [.. list.Columns.Select(c => new ImportColumn(c.Header, ColumnChoice.Word(PhotoListFile.Fields, c.Field), list.Samples[c.Index]))] : [],
            [.. PhotoListFile.Fields.Words.Select(f => f.Word)],
            [.. read.Photos.Zip(preview.Fates).Where(p => p.Second != RowFate.Refused).Select(p => new SetPhotoWords(p.First.File, p.First.Animal, p.First.Taken?.ToText(), p.First.Caption, p.Second == RowFate.AlreadyThere))],
            [.. read.Problems, .. preview.Problems.Select(Say)],
            read.List?.MappedAsOn);
    }

    /// <summary>Keeps the set as the preview showed it, in one deed, and remembers how its list was read.</summary>
    public async Task<Answer<ImportDone>> RunAsync(PhotoSet set, string who, CancellationToken cancel)
    {
        ArgumentNullException.ThrowIfNull(set);
        using var spool = new PhotoSpool();
        var read = await new PhotoSetReader(_mappings).ReadAsync(set, spool, cancel);
        if (read.Problems.Count > 0)
        {
            return read.Problems.Select(p => new AskedWrongly(p.Where, p.Text)).ToArray();
        }

        var done = await new ImportPhotos(_book.Book).RunAsync(read.Photos, set.Name, who, cancel);
        if (!done.IsDone)
        {
            return done.Problem is Stock.Import.ImportProblem.PhotosRefused refused
                ? refused.Photos.Select(Say).Select(p => new AskedWrongly(p.Where, p.Text)).ToArray()
                : Refusals.Of("file", done.Problem);
        }

        if (read.List is { } list)
        {
            await _mappings.KeepAsync(Kind, list.Fields(PhotoListFile.Fields), list.IsByName, who, cancel);
        }

        return new ImportDone(done.Value.Added, done.Value.Skipped, done.Value.Deed.Number);
    }

    private static PhotoSetProblem Say(PhotoRefused refused) => new(refused.File, ProblemWords.Say(refused.Problem).ToString());
}
