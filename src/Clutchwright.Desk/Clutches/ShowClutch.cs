using Clutchwright.Desk.Animals;
using Clutchwright.Desk.Opened;
using Clutchwright.Desk.Words;
using Clutchwright.Stock.Clutches;

namespace Clutchwright.Desk.Clutches;

/// <summary>What is known of this clutch, and what can hatch from it?</summary>
public sealed class ShowClutch
{
    private const int MostLooks = 60;
    private const int MostHappenings = 200;

    private readonly OpenBook _book;
    private readonly StockBeliefs _stock;
    private readonly HoldbackAdvice _advice;
    private readonly TimeProvider _clock;

    internal ShowClutch(OpenBook book, StockBeliefs stock, HoldbackAdvice advice, TimeProvider clock) => (_book, _stock, _advice, _clock) = (book, stock, advice, clock);

    /// <summary>Finds it by its tag, whatever the case.</summary>
    public async Task<Answer<ClutchAnswer>> RunAsync(string tag, CancellationToken cancel)
    {
        var found = await new Stock.Clutches.ListClutches(_book.Book).FindAsync(null, tag, cancel);
        return found.IsDone ? await OfAsync(found.Value, cancel) : Refusals.Of("clutch", found.Problem);
    }

    /// <summary>Finds it by its id, in the bin too.</summary>
    public async Task<Answer<ClutchAnswer>> RunAsync(Guid id, CancellationToken cancel)
    {
        var found = await new Stock.Clutches.ListClutches(_book.Book).FindAsync(new(id), string.Empty, cancel);
        return found.IsDone ? await OfAsync(found.Value, cancel) : Refusals.Of("clutch", found.Problem);
    }

    private async Task<ClutchAnswer> OfAsync(ClutchLine line, CancellationToken cancel)
    {
        var state = await _stock.ReadAsync(cancel);
        var looks = ClutchLooks.Of(state, line.Clutch, MostLooks, out var unknown, cancel);
        var log = (await new Stock.Happenings.ListHappenings(_book.Book).RunAsync(line.Clutch.DamId, [], MostHappenings, cancel)).Expect();
        var young = new List<YoungWords>();
        foreach (var animal in line.Young.Select(y => state.Find(y.AnimalId)).OfType<StockAnimal>())
        {
            young.Add(new(AnimalWording.Line(state.Record.Catalogue, animal), animal.Animal.MassGrams, await _advice.OfAsync(animal, line.Dam, line.Sires, cancel)));
        }

        return new(
            ClutchWording.Words(line, DateOnly.FromDateTime(_clock.GetLocalNow().DateTime)),
            young,
            [.. line.Clutch.Counted.Select(CountedText.Words)],
            [.. log.Where(l => string.Equals(l.Clutch, line.Clutch.Tag, StringComparison.Ordinal)).Select(Happenings.ListHappenings.Words)],
            looks,
            unknown);
    }
}
