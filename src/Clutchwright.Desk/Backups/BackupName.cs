using System.Globalization;
using Clutchwright.Stock.Backups;

namespace Clutchwright.Desk.Backups;

/// <summary>What a backup is for, which its name says.</summary>
public enum BackupReason
{
    /// <summary>Made by the web app by itself; the oldest of these go in time.</summary>
    Scheduled = 1,

    /// <summary>Asked for.</summary>
    ByHand,

    /// <summary>Made before another backup was restored.</summary>
    BeforeRestoring,
}

/// <summary>The name of a backup that the program gave: when it was made, by this machine's clock, and why.</summary>
internal static class BackupName
{
    private const string Beginning = "clutchwright-";
    private const string Time = "yyyy-MM-dd-HHmmss";

    public static string Of(DateTime local, BackupReason reason) =>
        $"{Beginning}{local.ToString(Time, CultureInfo.InvariantCulture)}{Ending(reason)}{BackupBook.Extension}";

    /// <summary>Reads a name; <c>null</c> if it is none that the program gave.</summary>
    public static (DateTime Local, BackupReason Reason)? Read(string name)
    {
        foreach (var reason in Enum.GetValues<BackupReason>())
        {
            var ending = Ending(reason) + BackupBook.Extension;
            if (name.StartsWith(Beginning, StringComparison.Ordinal)
                && name.EndsWith(ending, StringComparison.Ordinal)
                && DateTime.TryParseExact(name[Beginning.Length..^ending.Length], Time, CultureInfo.InvariantCulture, DateTimeStyles.None, out var local))
            {
                return (local, reason);
            }
        }

        return null;
    }

    private static string Ending(BackupReason reason) => reason switch
    {
        BackupReason.Scheduled => string.Empty,
        BackupReason.ByHand => "-by-hand",
        BackupReason.BeforeRestoring => "-before-restoring",
    };
}
