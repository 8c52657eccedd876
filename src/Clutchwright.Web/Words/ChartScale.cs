using System.Globalization;

namespace Clutchwright.Web.Words;

/// <summary>Lays figures along an axis of a drawing.</summary>
/// <param name="Least">The figure at <paramref name="From"/>.</param>
/// <param name="Most">The figure at <paramref name="To"/>.</param>
/// <param name="From">A place in the drawing.</param>
/// <param name="To">A place in the drawing.</param>
internal readonly record struct ChartScale(double Least, double Most, double From, double To)
{
    private static readonly double[] Steps = [1.0, 2.0, 5.0, 10.0];

    /// <summary>The place of a figure.</summary>
    public double At(double value) => From + ((value - Least) / (Most - Least) * (To - From));

    /// <summary>A number as a drawing holds it.</summary>
    public static string N(double number) => number.ToString("0.##", CultureInfo.InvariantCulture);

    /// <summary>Round figures over a range, about so many.</summary>
    public static IReadOnlyList<double> Round(double least, double most, int about)
    {
        var rough = Math.Max(1e-6, (most - least) / about);
        var power = Math.Pow(10.0, Math.Floor(Math.Log10(rough)));
        var step = power * Steps.First(s => s * power >= rough * 0.999);
        var first = Math.Floor(least / step) * step;
        return [.. Enumerable.Range(0, 100).Select(i => first + (i * step)).TakeWhile(v => v <= most + (step * 0.999))];
    }

    /// <summary>Instants for the ticks of an axis of time, each with its words; at most six.</summary>
    public static IReadOnlyList<(DateTime At, string Words)> Times(DateTime from, DateTime to)
    {
        var days = (to - from).TotalDays;
        if (days <= 2.5)
        {
            var every = days <= 0.5 ? 2 : days <= 1.3 ? 6 : 12;
            return Ticks(from.Date, to, t => t.AddHours(every), from, t => t.ToString(t.Hour == 0 ? "d MMM" : "HH:mm", CultureInfo.CurrentCulture));
        }

        if (days <= 75)
        {
            var every = days <= 5 ? 1 : days <= 10 ? 2 : days <= 20 ? 4 : days <= 38 ? 7 : 14;
            return Ticks(from.Date, to, t => t.AddDays(every), from, t => t.ToString("d MMM", CultureInfo.CurrentCulture));
        }

        var month = new DateTime(from.Year, from.Month, 1, 0, 0, 0, DateTimeKind.Unspecified);
        if (days <= 800)
        {
            var every = days <= 160 ? 1 : days <= 320 ? 2 : days <= 460 ? 3 : 6;
            return Ticks(month, to, t => t.AddMonths(every), from, t => t.ToString(t.Month == 1 || days > 366 ? "MMM yyyy" : "MMM", CultureInfo.CurrentCulture));
        }

        var years = Math.Max(1, (int)Math.Ceiling(days / 365.0 / 6.0));
        return Ticks(new DateTime(from.Year, 1, 1, 0, 0, 0, DateTimeKind.Unspecified), to, t => t.AddYears(years), from, t => t.ToString("yyyy", CultureInfo.CurrentCulture));
    }

    private static List<(DateTime At, string Words)> Ticks(DateTime first, DateTime to, Func<DateTime, DateTime> next, DateTime from, Func<DateTime, string> words)
    {
        var ticks = new List<(DateTime, string)>();
        for (var at = first; at <= to; at = next(at))
        {
            if (at >= from)
            {
                ticks.Add((at, words(at)));
            }
        }

        return ticks;
    }
}
