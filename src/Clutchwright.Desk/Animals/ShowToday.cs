using System.Globalization;
using Clutchwright.Desk.Opened;
using Clutchwright.Genetics.Loci;
using Clutchwright.Stock.Animals;
using Clutchwright.Stock.History;

namespace Clutchwright.Desk.Animals;

/// <summary>How does the stock stand?</summary>
public sealed class ShowToday
{
    private readonly OpenBook _book;
    private readonly StockBeliefs _beliefs;
    private readonly ListDeeds _deeds;

    internal ShowToday(OpenBook book, StockBeliefs beliefs, ListDeeds deeds) => (_book, _beliefs, _deeds) = (book, beliefs, deeds);

    /// <summary>A mark of the last deed that changed an animal or what is said of one. What was reckoned of the stock holds until it changes.</summary>
    public async Task<string> StockAsOfAsync(CancellationToken cancel)
    {
        var (deed, when) = (await new LatestDeed(_book.Book).OfAnimalsAsync(cancel)).Expect();
        return string.Create(CultureInfo.InvariantCulture, $"{deed.Number}-{when.Ticks}");
    }

    /// <summary>Counts the animals in the room, and lists the latest deeds.</summary>
    /// <param name="cancel">Stops the question.</param>
    public Task<TodayAnswer> RunAsync(CancellationToken cancel) => RunAsync(Task.CompletedTask, Task.Delay(Timeout.InfiniteTimeSpan, cancel), cancel);

    /// <summary>Counts the animals in the room, and lists the latest deeds, without waiting long for what is believed.</summary>
    /// <param name="first">What else is being reckoned, and comes first: the beliefs of a large stock take every processor there is.</param>
    /// <param name="enough">Ends the waiting for what is believed; it is reckoned on for whoever asks next.</param>
    /// <param name="cancel">Stops the question.</param>
    public async Task<TodayAnswer> RunAsync(Task first, Task enough, CancellationToken cancel)
    {
        ArgumentNullException.ThrowIfNull(first);
        ArgumentNullException.ThrowIfNull(enough);
        var counts = (await new CountAnimals(_book.Book).RunAsync(cancel)).Expect();
        var state = counts.Count == 0 ? null : await _beliefs.KnownAsync(cancel) ?? await BeliefsAsync(first, enough);
        var here = counts.Where(c => c.Status.IsHere()).ToArray();
        return new(
            here.Where(c => c.Sex == Sex.Male).Sum(c => c.Count),
            here.Where(c => c.Sex == Sex.Female).Sum(c => c.Count),
            here.Where(c => c.Sex is null).Sum(c => c.Count),
            counts.Sum(c => c.Count),
            counts.Count == 0 ? 0 : state?.Animals.Count(a => a.IsHere && a.IsPossibleHet),
            counts.Count == 0 ? 0 : state?.Animals.Count(a => a.Problems.Count > 0),
            await _deeds.RunAsync(null, 5, cancel),
            (await new FindAnimal(_book.Book).IdAsync(LoadDemo.FirstTag, cancel)).IsDone);
    }

    private async Task<StockState?> BeliefsAsync(Task first, Task enough)
    {
        // Whether the other reckoning came to an end or failed is for whoever asked for it.
        var asked = first.ContinueWith(_ => _beliefs.ReadAsync(CancellationToken.None), CancellationToken.None, TaskContinuationOptions.None, TaskScheduler.Default).Unwrap();
        return await Task.WhenAny(asked, enough) == asked ? await asked : null;
    }
}
