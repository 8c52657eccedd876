using Clutchwright.Desk.Opened;
using Clutchwright.Desk.Words;


namespace Clutchwright.Desk.Animals;

/// <summary>Puts an animal in the bin.</summary>
public sealed class BinAnimal
{
    private readonly OpenBook _book;
    private readonly ListDeeds _deeds;

    internal BinAnimal(OpenBook book, ListDeeds deeds)
    {
        _book = book;
        _deeds = deeds;
    }

    /// <summary>Bins it; the deed is given back for undoing.</summary>
    public async Task<Answer<DeedLine>> RunAsync(string tag, string who, CancellationToken cancel)
    {
        var found = await Find.ByTagAsync(_book, tag, cancel);
        if (found.Value is not { } record)
        {
            return found.Problems.ToArray();
        }

        var done = await new Stock.Animals.BinAnimal(_book.Book).RunAsync(record.Animal.AnimalId, who, cancel);
        return done.IsDone ? (await _deeds.RunAsync(null, 1, cancel))[0] : Refusals.Of("tag", done.Problem);
    }
}
