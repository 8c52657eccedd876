using System.Globalization;
using Clutchwright.Desk.Calendar;

namespace Clutchwright.Web.Calendar;

/// <summary>Days and ranges in the reader's words.</summary>
internal static class CalendarText
{
    /// <summary>The steps a sheet can be narrowed to.</summary>
    public static IReadOnlyList<(string Step, string Words)> Steps { get; } =
    [
        ("Ovulation", "Ovulation"),
        ("PreLayShed", "Pre-lay shed"),
        ("Eggs", "Eggs"),
        ("Pip", "Pip"),
        ("Hatch", "Out of the egg"),
        ("FirstShed", "First shed"),
        ("FirstMeal", "First meal"),
        ("NextEggs", "Next season"),
    ];

    public static string Day(DateOnly day) => day.ToString("d MMM", CultureInfo.CurrentCulture);

    public static string WeekDay(DateOnly day) => day.ToString("ddd", CultureInfo.CurrentCulture);

    public static string LongDay(DateOnly day) => day.ToString("d MMMM yyyy", CultureInfo.CurrentCulture);

    public static string Iso(DateOnly day) => day.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);

    public static string Range(CalendarDays days) => days.From == days.To ? Day(days.From) : $"{Day(days.From)} to {Day(days.To)}";

    /// <summary>A chance that is not quite one, in words.</summary>
    public static string Percent(double chance) => chance.ToString("P0", CultureInfo.CurrentCulture);

    /// <summary>Where a step that has happened is written down; <c>null</c>: nowhere by itself.</summary>
    public static string? WriteDown(CalendarDue due) => due.Step switch
    {
        "Eggs" or "NextEggs" => Links.With("/clutches/new", ("dam", due.Tag)),
        "Pip" when due.Clutch is { } clutch => Links.Clutch(clutch),
        "Hatch" when due.Clutch is { } clutch => Links.Hatch(clutch),
        "Ovulation" => Links.With("/log", ("animal", due.Tag), ("kind", "Ovulated")),
        "PreLayShed" => Links.With("/log", ("animal", due.Tag), ("kind", "PreLayShed")),
        "FirstShed" => Links.With("/log", ("animal", due.Animals.Count == 1 ? due.Animals[0] : null), ("kind", "Shed")),
        "FirstMeal" => Links.With("/log", ("animal", due.Animals.Count == 1 ? due.Animals[0] : null), ("kind", "Fed")),
        _ => null,
    };
}
