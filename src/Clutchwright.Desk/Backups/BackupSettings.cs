using System.Globalization;

namespace Clutchwright.Desk.Backups;

/// <summary>Where backups are kept, when the web app makes one by itself, and how many of those stay.</summary>
/// <param name="Folder">The folder.</param>
/// <param name="Hour">The hour of the day, 0 to 23 on this machine's clock; <c>null</c>: none is made by itself.</param>
/// <param name="Daily">Of how many days the last backup is kept.</param>
/// <param name="Weekly">Of how many weeks.</param>
/// <param name="Monthly">Of how many months.</param>
public sealed record BackupSettings(string Folder, int? Hour, int Daily, int Weekly, int Monthly)
{
    /// <summary>The hour where none is asked for.</summary>
    public const int UsualHour = 3;

    /// <summary>How many stay where it is not said: days, weeks, months.</summary>
    public const string UsualKeep = "7,5,12";

    private const int MostKept = 1000;

    /// <summary>A folder in the data folder, and no backup by itself.</summary>
    public static BackupSettings In(string dataFolder) => new(Path.Combine(dataFolder, "backups"), null, 7, 5, 12);

    /// <summary>Reads an hour, or <c>off</c>.</summary>
    /// <param name="text">As given.</param>
    /// <param name="hour">The hour; <c>null</c>: off.</param>
    public static bool TryReadHour(string text, out int? hour)
    {
        var isHour = int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out var number) && number <= 23;
        hour = isHour ? number : null;
        return isHour || string.Equals(text, "off", StringComparison.OrdinalIgnoreCase);
    }

    /// <summary>Reads how many are kept: three whole numbers, of days, weeks and months.</summary>
    public BackupSettings? TryKeep(string text)
    {
        var parts = (text ?? string.Empty).Split(',', StringSplitOptions.TrimEntries);
        var counts = new int[parts.Length];
        for (var i = 0; i < parts.Length; i++)
        {
            if (!int.TryParse(parts[i], NumberStyles.None, CultureInfo.InvariantCulture, out counts[i]) || counts[i] > MostKept)
            {
                return null;
            }
        }

        return counts is [var days, var weeks, var months] && days + weeks + months > 0 ? this with { Daily = days, Weekly = weeks, Monthly = months } : null;
    }
}
