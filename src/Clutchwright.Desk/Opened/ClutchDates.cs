using Clutchwright.Stock.Animals;

namespace Clutchwright.Desk.Opened;

/// <summary>Tells clutchmates by when they hatched.</summary>
internal static class ClutchDates
{
    // A female lays once a year at most, so that young of one dam and one year are of one clutch.
    private const int MostDays = 366;

    /// <summary>When an animal hatched, as text that is equal for clutchmates entered alike; <c>null</c>: not known closely enough.</summary>
    public static string? ClutchDate(this Animal animal) =>
        animal.Hatched is { } hatched && hatched.Latest.DayNumber - hatched.Earliest.DayNumber < MostDays
            ? $"{hatched.Earliest:O} {hatched.Latest:O}"
            : null;
}
