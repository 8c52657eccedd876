using System.Globalization;

namespace Clutchwright.Web.Words;

/// <summary>Puts instants into words: in this machine's time zone and the reader's culture.</summary>
internal sealed class DateWords(TimeProvider time)
{
    /// <summary>For example <c>today 14:05</c> or <c>3 Mar 2025, 14:05</c>.</summary>
    public string Instant(DateTimeOffset when)
    {
        var local = TimeZoneInfo.ConvertTime(when, time.LocalTimeZone);
        var today = time.GetLocalNow().Date;
        var clock = local.ToString("t", CultureInfo.CurrentCulture);
        return (today - local.Date).Days switch
        {
            0 => $"today {clock}",
            1 => $"yesterday {clock}",
            _ => $"{local.ToString("d MMM yyyy", CultureInfo.CurrentCulture)}, {clock}",
        };
    }

    /// <summary>For machines: ISO 8601, UTC.</summary>
    public static string Machine(DateTimeOffset when) =>
        when.UtcDateTime.ToString("yyyy-MM-dd'T'HH:mm:ss'Z'", CultureInfo.InvariantCulture);
}
