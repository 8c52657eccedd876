namespace Clutchwright.Planning.Expectations;

/// <summary>A day that is known to lie from one day to another, both included. Days are whole numbers on any one calendar, such as
/// <see cref="DateOnly.DayNumber"/>.</summary>
/// <param name="From">The first day on which it can have been.</param>
/// <param name="To">The last; not before <paramref name="From"/>.</param>
/// <remarks>Every day of the span counts alike. The default is day 0.</remarks>
public readonly record struct DaySpan(int From, int To)
{
    /// <summary>Gets the number of days it may be, 1 or more.</summary>
    public int Length => To - From + 1;

    /// <summary>A day that is known.</summary>
    /// <param name="day">The day.</param>
    public static DaySpan On(int day) => new(day, day);
}
