using System.Globalization;
using Clutchwright.Stock.Happenings;

namespace Clutchwright.Stock.Import;

/// <summary>The cells of something that happened in a file, in the order of <see cref="Headers.Log"/>, before they are protected.</summary>
internal static class LogCells
{
    public static IReadOnlyList<string> Of(LogRow row, LogEntry entry) =>
    [
        row.Animal,
        row.When.ToText(),
        HappeningRules.Words(entry.Kind),
        entry.Amount?.ToString(CultureInfo.InvariantCulture) ?? "",
        row.Mate ?? "",
        row.Clutch ?? "",
        entry.Text,
    ];
}
