using System.Globalization;
using Clutchwright.Desk.Calendar;

namespace Clutchwright.Web.Calendar;

/// <summary>Where the ranges of a step lie on a sheet of days, in the units of its drawing.</summary>
/// <param name="First">The first day of the sheet.</param>
/// <param name="Days">How many days it has.</param>
internal sealed record CalendarBand(DateOnly First, int Days)
{
    /// <summary>The width of a day.</summary>
    public const int DayWidth = 10;

    public const int Height = 26;

    public int Width => Days * DayWidth;

    /// <summary>Whether a day lies on the sheet.</summary>
    public bool Has(DateOnly day) => day >= First && day.DayNumber - First.DayNumber < Days;

    /// <summary>The left edge of a day.</summary>
    public int Left(DateOnly day) => Math.Clamp(day.DayNumber - First.DayNumber, 0, Days) * DayWidth;

    /// <summary>The width of a range, cut off at the sheet's edges; 0: none of it lies there.</summary>
    public int Span(CalendarDays days) => Left(days.To.AddDays(1)) - Left(days.From);

    /// <summary>The days that begin a week.</summary>
    public IEnumerable<DateOnly> Weeks => Enumerable.Range(0, Days).Select(i => First.AddDays(i)).Where(d => d.DayOfWeek == DayOfWeek.Monday);

    public static string Text(int number) => number.ToString(CultureInfo.InvariantCulture);
}
