using Clutchwright.Stock.Animals;

namespace Clutchwright.Desk.Opened;

/// <summary>Tells clutchmates by when they hatched.</summary>
internal static class ClutchDates
{
    // A female lays once a year at most, so that young of one dam and one year are of one clutch.
    private const int MostDays = 366;

    /// <summary>The clutch of an animal, as text that is equal for clutchmates: the one in the book, or else when it hatched; <c>null</c>: not known closely enough.</summary>
    public static string? ClutchDate(this Animal animal) => animal.ClutchId is { } clutch ? clutch.ToString()
        : animal.Hatched is { } hatched && hatched.Latest.DayNumber - hatched.Earliest.DayNumber < MostDays
            ? $"{hatched.Earliest:O} {hatched.Latest:O}"
            : null;
}
