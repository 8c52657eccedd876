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
    /// <param name="patience">How long to wait for what is believed; it is reckoned on for whoever asks next. <c>null</c>: as long as it takes.</param>
    /// <param name="cancel">Stops the question.</param>
    public async Task<TodayAnswer> RunAsync(TimeSpan? patience, CancellationToken cancel)
    {
        var counts = (await new CountAnimals(_book.Book).RunAsync(cancel)).Expect();
        var state = counts.Count == 0 ? null : await BeliefsAsync(patience, cancel);
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

    private async Task<StockState?> BeliefsAsync(TimeSpan? patience, CancellationToken cancel)
    {
        if (patience is not { } longest)
        {
            return await _beliefs.ReadAsync(cancel);
        }

        var asked = Task.Run(() => _beliefs.ReadAsync(CancellationToken.None), CancellationToken.None);
        return await Task.WhenAny(asked, Task.Delay(longest, cancel)) == asked ? await asked : null;
    }
}
