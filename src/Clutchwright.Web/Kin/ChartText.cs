using Clutchwright.Desk.Charts;
using Clutchwright.Desk.Words;
using Clutchwright.Genetics.Numbers;

namespace Clutchwright.Web.Kin;

/// <summary>Puts a chart into words.</summary>
internal static class ChartText
{
    public static string Title(ChartAnswer chart) => chart.Tag is null ? "Pedigree of the stock" : $"Pedigree of {Of(chart.Tag, chart.Name)}";

    public static string Description(ChartAnswer chart)
    {
        var rows = chart.List.Select(l => l.Row).Distinct().Count();
        var animals = chart.List.Count == 1 ? "1 animal" : $"{chart.List.Count} animals";
        var generations = rows == 1 ? "1 generation" : $"{rows} generations";
        var marked = chart.Marked.Count == 0 ? string.Empty : $" Symbols are filled for {string.Join(", ", chart.Marked.Select(m => m.Name))}.";
        return $"{animals} in {generations}, the oldest at the top.{marked} The same stands below in words.";
    }

    /// <summary>Whose young an animal is; <c>null</c> where nothing is recorded.</summary>
    public static string? Parents(ChartListLine line) => (line.Sires.Count, line.Dam) switch
    {
        (0, null) => null,
        (0, _) => $"young of dam {line.Dam}",
        (_, null) => $"young of sire {string.Join(" or ", line.Sires)}",
        _ => $"young of {string.Join(" or ", line.Sires)} × {line.Dam}{(line.AreParentsKin ? ", who are kin" : "")}",
    };

    /// <summary>The chances of carrying what is marked; <c>null</c> where nothing is in doubt beyond the animal's words.</summary>
    public static string? Chances(ChartAnswer chart, ChartListLine line)
    {
        var parts = chart.Marked
            .Zip(line.Chances)
            .Where(p => p.Second.Value > Probability.RoundingTolerance)
            .Select(p => p.Second.IsCertain ? $"carries {p.First.Name}" : $"carries {p.First.Name} with {OddsText.RatioAndPercent(p.Second)}")
            .ToArray();
        return parts.Length == 0 ? null : string.Join(", ", parts);
    }

    private static string Of(string tag, string? name) => string.IsNullOrEmpty(name) ? tag : $"{tag} {name}";
}
