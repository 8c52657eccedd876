using Clutchwright.Desk.Opened;
using Clutchwright.Stock.History;

namespace Clutchwright.Desk.Animals;

/// <summary>What was done to the book lately?</summary>
public sealed class ListDeeds
{
    private readonly OpenBook _book;

    internal ListDeeds(OpenBook book) => _book = book;

    /// <summary>Lists deeds, the latest first.</summary>
    /// <param name="before">Only deeds before this one; <c>null</c>: from the latest.</param>
    /// <param name="take">How many at most.</param>
    /// <param name="cancel">Stops the question.</param>
    public async Task<IReadOnlyList<DeedLine>> RunAsync(long? before, int take, CancellationToken cancel)
    {
        var deeds = (await new Stock.History.ListDeeds(_book.Book).RunAsync(
            Math.Max(1, take), before is { } limit ? new DeedId(limit) : null, cancel)).Expect();
        return await LinesAsync(deeds, cancel);
    }

    internal async Task<IReadOnlyList<DeedLine>> LinesAsync(IReadOnlyList<Stock.History.DeedLine> deeds, CancellationToken cancel)
    {
        if (deeds.Count == 0)
        {
            return [];
        }

        var changes = (await new ShowChanges(_book.Book).RunAsync([.. deeds.Select(d => d.DeedId)], cancel)).Expect().ToLookup(c => c.DeedId);
        return deeds
            .Select(d => new DeedLine(
                d.DeedId.Number,
                new DateTimeOffset(DateTime.SpecifyKind(d.When, DateTimeKind.Utc)),
                d.Who,
                d.Words,
                IsUndone(d),
                changes[d.DeedId].Select(c => new ChangeLine(c.Label, c.Field, c.Before, c.After)).ToArray()))
            .ToArray();

        // A deed is undone while the last deed that undid it stands.
        bool IsUndone(Stock.History.DeedLine deed) =>
            deed.UndoneBy is { } by && (deeds.FirstOrDefault(d => d.DeedId == by) is not { } undoing || !IsUndone(undoing));
    }
}
