namespace Clutchwright.Stock.Animals;

/// <summary>How a status is written in a file.</summary>
internal static class StatusWords
{
    public static readonly IReadOnlyList<string> All = [.. Enum.GetValues<AnimalStatus>().Select(Of)];

    public static string Of(AnimalStatus status) => status switch
    {
        AnimalStatus.Kept => "kept",
        AnimalStatus.HeldBack => "held back",
        AnimalStatus.ForSale => "for sale",
        AnimalStatus.Sold => "sold",
        AnimalStatus.Given => "given",
        AnimalStatus.Died => "died",
        AnimalStatus.Reference => "reference",
    };

    /// <summary>Case, spaces, hyphens and underscores do not count.</summary>
    public static AnimalStatus? Read(string text)
    {
        var letters = Letters(text);
        foreach (var status in Enum.GetValues<AnimalStatus>())
        {
            if (string.Equals(Letters(Of(status)), letters, StringComparison.Ordinal))
            {
                return status;
            }
        }

        return null;
    }

    private static string Letters(string text) =>
        string.Concat(text.ToUpperInvariant().Where(c => !char.IsWhiteSpace(c) && c is not '-' and not '_'));
}
