using System.Globalization;
using Clutchwright.Desk.Opened;
using Clutchwright.Genetics.Loci;

namespace Clutchwright.Desk.Animals;

/// <summary>How does the stock stand?</summary>
public sealed class ShowToday
{
    private readonly StockBeliefs _beliefs;
    private readonly ListDeeds _deeds;

    internal ShowToday(StockBeliefs beliefs, ListDeeds deeds)
    {
        _beliefs = beliefs;
        _deeds = deeds;
    }

    /// <summary>A mark of the last deed that changed an animal or what is said of one. What was reckoned of the stock holds until it changes.</summary>
    public async Task<string> StockAsOfAsync(CancellationToken cancel)
    {
        var (deed, when) = (await _beliefs.ReadAsync(cancel)).Mark;
        return string.Create(CultureInfo.InvariantCulture, $"{deed.Number}-{when.Ticks}");
    }

    /// <summary>Counts the animals in the room, and lists the latest deeds.</summary>
    public async Task<TodayAnswer> RunAsync(CancellationToken cancel)
    {
        var state = await _beliefs.ReadAsync(cancel);
        var here = state.Animals.Where(a => a.IsHere).ToArray();
        return new(
            here.Count(a => a.Animal.Sex == Sex.Male),
            here.Count(a => a.Animal.Sex == Sex.Female),
            here.Count(a => a.Animal.Sex is null),
            here.Count(a => a.IsPossibleHet),
            state.Animals.Count(a => a.Problems.Count > 0),
            await _deeds.RunAsync(null, 5, cancel),
            state.Animals.Count > 0 && state.Animals.Any(a => string.Equals(a.Animal.Tag, LoadDemo.FirstTag, StringComparison.OrdinalIgnoreCase)));
    }
}
