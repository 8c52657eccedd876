using Clutchwright.Desk.Opened;
using Clutchwright.Desk.Words;
using Clutchwright.Stock.History;

namespace Clutchwright.Desk.Animals;

/// <summary>Takes a deed back. That is a deed itself, and can be undone in turn.</summary>
public sealed class UndoDeed
{
    private readonly OpenBook _book;
    private readonly ListDeeds _deeds;

    internal UndoDeed(OpenBook book, ListDeeds deeds)
    {
        _book = book;
        _deeds = deeds;
    }

    /// <summary>Undoes it; the undoing deed is given back.</summary>
    public async Task<Answer<DeedLine>> RunAsync(long deed, string who, CancellationToken cancel)
    {
        var done = await new Stock.History.UndoDeed(_book.Book).RunAsync(new DeedId(deed), who, cancel);
        return done.IsDone ? (await _deeds.RunAsync(null, 1, cancel))[0] : Refusals.Of("deed", done.Problem);
    }

    /// <summary>Undoes several, the latest first: all of them or none; the numbers of the undoing deeds are given back.</summary>
    public async Task<Answer<IReadOnlyList<long>>> RunAsync(IReadOnlyList<long> deeds, string who, CancellationToken cancel)
    {
        if (deeds.Count == 0)
        {
            return new AskedWrongly("deed", "No deed is named.");
        }

        var done = await new Stock.History.UndoDeed(_book.Book).RunAsync([.. deeds.Select(d => new DeedId(d))], who, cancel);
        return done.IsDone ? done.Value.Select(d => d.DeedId.Number).ToArray() : Refusals.Of("deed", done.Problem);
    }
}
