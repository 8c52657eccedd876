using Clutchwright.Desk.Opened;
using Clutchwright.Planning.Expectations;
using Clutchwright.Stock.History;
using Clutchwright.Stock.Incubators;

namespace Clutchwright.Desk.Calendar;

/// <summary>How warm the eggs were kept, by what was read of their incubators. What was read is kept until another reading is written.</summary>
/// <remarks>Asked by one at a time.</remarks>
internal sealed class EggWarmth(OpenBook book)
{
    private readonly Dictionary<IncubatorId, IReadOnlyDictionary<DateOnly, double>> _days = [];
    private (DeedId Deed, DateTime When) _mark;

    /// <summary>Gives each season the mean of its eggs' days in the incubator; seasons without readings stay as they are.</summary>
    /// <param name="seasons">The seasons.</param>
    /// <param name="on">The day it is asked on: what was read later is left out.</param>
    /// <param name="mostDays">Eggs that have not hatched are not kept longer.</param>
    /// <param name="cancel">Stops the question.</param>
    public async Task AddAsync(IReadOnlyList<FemaleSeason> seasons, DateOnly on, int mostDays, CancellationToken cancel)
    {
        var mark = (await new LatestDeed(book.Book).OfReadingsAsync(cancel)).Expect();
        if (mark != _mark)
        {
            _days.Clear();
            _mark = mark;
        }

        foreach (var season in seasons.Where(s => s.Incubator is not null && s.Of(YearStep.Eggs) is not null))
        {
            if (!_days.TryGetValue(season.Incubator!.Value, out var days))
            {
                _days.Add(season.Incubator.Value, days = (await new DailyWarmth(book.Book).RunAsync(season.Incubator.Value, cancel)).Expect());
            }

            // Where the day of laying or hatching is in doubt, the days on which the eggs were there for certain.
            var from = season.Of(YearStep.Eggs)!.Latest;
            var to = season.Of(YearStep.Hatch) is { } hatched ? hatched.Earliest : from.AddDays(mostDays);
            season.Celsius = Mean(days, from, to < on ? to : on);
        }
    }

    /// <summary>The mean of the daily means: a day counts as one however often it was read, a day on which nothing was read not at all.</summary>
    /// <returns>Degrees Celsius; null: nothing was read.</returns>
    internal static double? Mean(IReadOnlyDictionary<DateOnly, double> days, DateOnly from, DateOnly to)
    {
        var (sum, count) = (0.0, 0);
        for (var day = from; day <= to; day = day.AddDays(1))
        {
            if (days.TryGetValue(day, out var mean))
            {
                (sum, count) = (sum + mean, count + 1);
            }
        }

        return count == 0 ? null : sum / count;
    }
}
