namespace Clutchwright.Stock.Storage;

/// <summary>Conditions that the database itself holds the records to. NULL passes a check in SQL.</summary>
internal static class Checks
{
    public static string OneOf<T>(string column)
        where T : struct, Enum =>
        $"\"{column}\" IN ({string.Join(", ", Enum.GetNames<T>().Select(name => $"'{name}'"))})";

    /// <summary>A date in doubt is there as a whole or not at all.</summary>
    public static string Range(string property) =>
        $"(\"{property}_Earliest\" IS NULL AND \"{property}_Latest\" IS NULL AND \"{property}_Words\" IS NULL)"
        + $" OR (\"{property}_Earliest\" IS NOT NULL AND \"{property}_Latest\" IS NOT NULL AND \"{property}_Words\" IS NOT NULL"
        + $" AND \"{property}_Earliest\" <= \"{property}_Latest\")";
}
