using System.Globalization;
using Clutchwright.Stock.Animals;
using Clutchwright.Stock.Clutches;

namespace Clutchwright.Stock.Import;

/// <summary>The cells of a clutch in a file, in the order of <see cref="Headers.Clutches"/>, before they are protected.</summary>
internal static class ClutchCells
{
    public static IReadOnlyList<string> Of(ClutchRow row) =>
    [
        row.Tag ?? "",
        row.Dam,
        List(row.Sires),
        row.Laid.ToText(),
        Number(row.GoodEggs),
        Number(row.Slugs),
        row.Lost is > 0 ? Number(row.Lost) : "",
        row.MassGrams?.ToString(CultureInfo.InvariantCulture) ?? "",
        row.Incubator ?? "",
        row.Hatched?.ToText() ?? "",
        CountedText.Write(row.Counted),
        List(row.Young),
        row.Notes,
    ];

    private static string List(IReadOnlyList<string> tags) => string.Join(Tags.Separator, tags.OrderBy(Tags.Order, StringComparer.Ordinal));

    private static string Number(int? number) => number?.ToString(CultureInfo.InvariantCulture) ?? "";
}
