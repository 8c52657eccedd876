using Clutchwright.Desk.Animals;
using Clutchwright.Desk.Opened;
using Clutchwright.Desk.Words;

namespace Clutchwright.Desk.Clutches;

/// <summary>Which clutches are in the book, and how far are they?</summary>
public sealed class ListClutches
{
    private readonly OpenBook _book;
    private readonly TimeProvider _clock;

    internal ListClutches(OpenBook book, TimeProvider clock) => (_book, _clock) = (book, clock);

    /// <summary>Those out of the bin, or those in it; the one laid last first.</summary>
    public async Task<IReadOnlyList<ClutchWords>> RunAsync(bool inBin, CancellationToken cancel) =>
        Words((await new Stock.Clutches.ListClutches(_book.Book).RunAsync(inBin, cancel)).Expect());

    /// <summary>Those that are not over; the one laid last first.</summary>
    public async Task<IReadOnlyList<ClutchWords>> OpenAsync(CancellationToken cancel) =>
        [.. Words((await new Stock.Clutches.ListClutches(_book.Book).OpenAsync(cancel)).Expect()).Where(c => c.Stage != ClutchStage.Over)];

    /// <summary>Those of one animal, as a dam or as a sire.</summary>
    public async Task<Answer<IReadOnlyList<ClutchWords>>> OfParentAsync(string tag, CancellationToken cancel)
    {
        var found = await Find.ByTagAsync(_book, tag, cancel);
        return found.Value is { } record
            ? Answer.Of(Words((await new Stock.Clutches.ListClutches(_book.Book).OfParentAsync(record.Animal.AnimalId, cancel)).Expect()))
            : found.Problems.ToArray();
    }

    private IReadOnlyList<ClutchWords> Words(IReadOnlyList<Stock.Clutches.ClutchLine> lines)
    {
        var today = DateOnly.FromDateTime(_clock.GetLocalNow().DateTime);
        return [.. lines.Select(l => ClutchWording.Words(l, today))];
    }
}
