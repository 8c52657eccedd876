using System.Globalization;
using System.Text.Json.Nodes;
using Clutchwright.Cli.Words;
using Clutchwright.Desk.Backups;

namespace Clutchwright.Cli.Backups;

/// <summary>Puts what a book holds into rows and JSON.</summary>
internal static class BookWords
{
    private const double Step = 1024;

    /// <summary>For example <c>1.4 MB</c>.</summary>
    public static string Size(long bytes)
    {
        string[] units = ["bytes", "kB", "MB", "GB"];
        var (amount, unit) = ((double)bytes, 0);
        while (amount >= Step && unit < units.Length - 1)
        {
            (amount, unit) = (amount / Step, unit + 1);
        }

        return string.Create(CultureInfo.InvariantCulture, $"{amount.ToString(unit == 0 || amount >= 100 ? "0" : "0.0", CultureInfo.InvariantCulture)} {units[unit]}");
    }

    public static string Of(BackupReason reason) => reason switch
    {
        BackupReason.Scheduled => "by itself",
        BackupReason.ByHand => "asked for",
        BackupReason.BeforeRestoring => "before restoring",
    };

    public static string Instant(DateTimeOffset when) => when.UtcDateTime.ToString("yyyy-MM-dd'T'HH:mm:ss'Z'", CultureInfo.InvariantCulture);

    public static string Deed(DeedStamp? deed) => deed is null
        ? "none"
        : string.Create(CultureInfo.InvariantCulture, $"{deed.Number}, {deed.When.UtcDateTime:yyyy-MM-dd HH:mm} UTC, {deed.Who}: {deed.Words}");

    /// <summary>What there is of each kind, what there is none of left out.</summary>
    public static IEnumerable<string[]> Rows(BookAnswer book) =>
    [
        .. book.Counts.Where(c => c.Count > 0 || c.Words == "animals").Select(c => new[] { Page.Plain(c.Words), c.Count.ToString("N0", CultureInfo.InvariantCulture) }),
        ["last deed", Page.Plain(Deed(book.LastDeed))],
        ["digest", Page.Plain(book.Digest)],
    ];

    public static JsonObject Json(BookAnswer book)
    {
        var counts = new JsonObject();
        foreach (var count in book.Counts)
        {
            counts[count.Words] = count.Count;
        }

        return new() { ["counts"] = counts, ["lastDeed"] = Json(book.LastDeed), ["digest"] = book.Digest };
    }

    public static JsonObject? Json(DeedStamp? deed) => deed is null
        ? null
        : new() { ["id"] = deed.Number, ["when"] = Instant(deed.When), ["who"] = deed.Who, ["what"] = deed.Words };

    public static JsonObject? Json(BackupDone? made) => made is null ? null : new()
    {
        ["file"] = made.File,
        ["bytes"] = made.Bytes,
        ["seconds"] = Math.Round(made.Took.TotalSeconds, 2),
        ["when"] = Instant(made.MadeAt),
        ["book"] = Json(made.Book),
    };
}
