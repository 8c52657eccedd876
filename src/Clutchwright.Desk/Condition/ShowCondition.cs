using Clutchwright.Desk.Animals;
using Clutchwright.Desk.Opened;
using Clutchwright.Desk.Words;

namespace Clutchwright.Desk.Condition;

/// <summary>How does this animal eat, grow and keep its mass?</summary>
public sealed class ShowCondition
{
    private static readonly DateOnly First = new(1900, 1, 1);

    private readonly OpenBook _book;
    private readonly OpenCatalogue _catalogue;
    private readonly TimeProvider _clock;

    internal ShowCondition(OpenBook book, OpenCatalogue catalogue, TimeProvider clock) => (_book, _catalogue, _clock) = (book, catalogue, clock);

    /// <summary>Shows it, of one animal.</summary>
    /// <param name="tag">Its tag, whatever the case.</param>
    /// <param name="cancel">Stops the question.</param>
    public async Task<Answer<ConditionAnswer>> RunAsync(string tag, CancellationToken cancel)
    {
        var found = await Find.ByTagAsync(_book, tag, cancel);
        if (found.Value is not { } record)
        {
            return found.Problems.ToArray();
        }

        var reckoning = new ConditionReckoning(_catalogue.Catalogue.Biology, ConditionReckoning.Today(_clock));
        var all = await ConditionReckoning.CareAsync(_book.Book, record.Animal.AnimalId, First, cancel);
        if (all.Count == 0)
        {
            return new AskedWrongly("tag", $"{record.Animal.Tag} lies in the bin.");
        }

        var animal = all[0];
        FeedingRhythm? stock = null;
        if (!reckoning.HasOwnRhythm(animal))
        {
            var (young, grown) = reckoning.Rhythms(await ConditionReckoning.CareAsync(_book.Book, null, reckoning.Since, cancel));
            stock = reckoning.IsYoung(animal) ? young : grown;
        }

        var lastOffer = (await new Stock.Happenings.ListCare(_book.Book).LastOfferAsync(cancel)).Expect();
        return reckoning.Of(animal, stock, ShowWatch.IsKept(lastOffer.Day, ConditionReckoning.Today(_clock)));
    }
}
