using System.Globalization;
using Clutchwright.Desk.Importing;
using Clutchwright.Web.Words;

namespace Clutchwright.Web.Importing;

/// <summary>The words for what is imported.</summary>
internal static class ImportWords
{
    /// <summary>What an address asks for.</summary>
    public static ImportKind Kind(string? of) => of switch
    {
        "clutches" => ImportKind.Clutches,
        "log" => ImportKind.Log,
        _ => ImportKind.Animals,
    };

    /// <summary>How an address asks for it.</summary>
    public static string Place(ImportKind kind) => kind.ToString().ToLowerInvariant();

    /// <summary>Where it is to be seen afterwards.</summary>
    public static string Back(ImportKind kind) => kind switch
    {
        ImportKind.Clutches => "/clutches",
        ImportKind.Log => "/log",
        _ => "/stock",
    };

    /// <summary>A header row.</summary>
    public static string FirstRow(ImportKind kind) => kind switch
    {
        ImportKind.Clutches => "dam,sire,laid,eggs,slugs",
        ImportKind.Log => "animal,date,kind,mass_g",
        _ => "id,sex,seen,told",
    };

    /// <summary>So many records.</summary>
    public static string Count(ImportKind kind, int count) => kind switch
    {
        ImportKind.Clutches => CountWords.Of(count, "clutch", "clutches"),
        ImportKind.Log => CountWords.Of(count, "row of the log", "rows of the log"),
        _ => CountWords.Of(count, "animal", "animals"),
    };

    /// <summary>A place in a file as a line begins with it.</summary>
    public static string? Begin(string? where) => where is { Length: > 0 } ? char.ToUpper(where[0], CultureInfo.CurrentCulture) + where[1..] : where;

    /// <summary>A day, in the reader's culture.</summary>
    public static string Day(DateOnly day) => day.ToString("d MMMM yyyy", CultureInfo.CurrentCulture);
}
