using Clutchwright.Planning.Expectations;
using Clutchwright.Stock.Animals;
using Clutchwright.Stock.Incubators;

namespace Clutchwright.Desk.Calendar;

/// <summary>What the book tells of one season of one female.</summary>
internal sealed class FemaleSeason(AnimalId female, string tag, bool isHere)
{
    public AnimalId Female { get; } = female;

    public string Tag { get; } = tag;

    /// <summary>Whether she is in the keeper's room.</summary>
    public bool IsHere { get; } = isHere;

    /// <summary>The steps seen, by the first record of each.</summary>
    public Dictionary<YearStep, DateRange> Seen { get; } = [];

    public List<string> Mates { get; } = [];

    public DateRange? LastLock { get; set; }

    /// <summary>The last day of any record.</summary>
    public DateOnly LastDay { get; set; }

    /// <summary>The first day of any record.</summary>
    public DateOnly FirstDay { get; set; } = DateOnly.MaxValue;

    /// <summary>Whether no good egg of its clutch is left.</summary>
    public bool IsLost { get; set; }

    /// <summary>The tag of its clutch; null: none is in the book.</summary>
    public string? Clutch { get; set; }

    /// <summary>Where the eggs are; null: not recorded.</summary>
    public IncubatorId? Incubator { get; set; }

    /// <summary>How warm the eggs are kept on the mean, in degrees Celsius; null: not recorded.</summary>
    public double? Celsius { get; set; }

    public DateRange? Of(YearStep step) => Seen.GetValueOrDefault(step);

    /// <summary>The days of a step up to a day.</summary>
    public DaySpan? Span(YearStep step, DateOnly on) => Of(step) is { } range ? Span(range, on) : null;

    public static DaySpan Span(DateRange range, DateOnly on) =>
        new(range.Earliest.DayNumber, Math.Max(range.Earliest.DayNumber, Math.Min(range.Latest.DayNumber, on.DayNumber)));

    public void See(YearStep step, DateRange when)
    {
        if (!Seen.TryGetValue(step, out var known) || when.Latest < known.Latest)
        {
            Seen[step] = when;
        }

        Touch(when);
    }

    public void Touch(DateRange when)
    {
        LastDay = when.Latest > LastDay ? when.Latest : LastDay;
        FirstDay = when.Earliest < FirstDay ? when.Earliest : FirstDay;
    }
}
