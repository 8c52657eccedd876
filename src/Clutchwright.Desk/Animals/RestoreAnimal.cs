using Clutchwright.Desk.Opened;
using Clutchwright.Desk.Words;


namespace Clutchwright.Desk.Animals;

/// <summary>Takes an animal out of the bin.</summary>
public sealed class RestoreAnimal
{
    private readonly OpenBook _book;
    private readonly ListDeeds _deeds;

    internal RestoreAnimal(OpenBook book, ListDeeds deeds)
    {
        _book = book;
        _deeds = deeds;
    }

    /// <summary>Restores the latest animal in the bin with this tag; the deed is given back for undoing.</summary>
    public async Task<Answer<DeedLine>> RunAsync(string tag, string who, CancellationToken cancel)
    {
        if (await Find.InBinAsync(_book, tag, cancel) is not { } id)
        {
            return new AskedWrongly("tag", $"No animal in the bin has the id {tag}.");
        }

        var done = await new Stock.Animals.RestoreAnimal(_book.Book).RunAsync(id, who, cancel);
        return done.IsDone ? (await _deeds.RunAsync(null, 1, cancel))[0] : Refusals.Of("tag", done.Problem);
    }
}
