using System.Globalization;

namespace Clutchwright.Web.Backups;

/// <summary>Puts sizes of files and ages into words.</summary>
internal static class SizeWords
{
    private const double Step = 1024;

    /// <summary>For example <c>1.4 MB</c>, in the reader's culture.</summary>
    public static string Bytes(long bytes)
    {
        string[] units = ["bytes", "kB", "MB", "GB"];
        var (amount, unit) = ((double)bytes, 0);
        while (amount >= Step && unit < units.Length - 1)
        {
            (amount, unit) = (amount / Step, unit + 1);
        }

        return $"{amount.ToString(unit == 0 || amount >= 100 ? "N0" : "N1", CultureInfo.CurrentCulture)} {units[unit]}";
    }

    /// <summary>For example <c>3 hours ago</c>.</summary>
    public static string Ago(TimeSpan age) => age switch
    {
        { TotalMinutes: < 2 } => "just now",
        { TotalHours: < 2 } => $"{(int)age.TotalMinutes} minutes ago",
        { TotalDays: < 2 } => $"{(int)age.TotalHours} hours ago",
        _ => $"{(int)age.TotalDays} days ago",
    };
}
