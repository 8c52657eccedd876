using Clutchwright.Stock.Animals;
using Clutchwright.Stock.Clutches;

namespace Clutchwright.Stock.Import;

/// <summary>One clutch of a file, as it was read. Animals are named by their ids.</summary>
public sealed class ClutchRow
{
    /// <summary>As a spreadsheet counts: the header is row 1.</summary>
    public required int Row { get; init; }

    /// <summary>As a text editor counts, from 1.</summary>
    public required int Line { get; init; }

    /// <summary>Its id; null: the next one of the keeper's scheme.</summary>
    public string? Tag { get; init; }

    public required string Dam { get; init; }

    public IReadOnlyList<string> Sires { get; init; } = [];

    public required DateRange Laid { get; init; }

    public int? GoodEggs { get; init; }

    public int? Slugs { get; init; }

    /// <summary>Good eggs that went bad; null: not said.</summary>
    public int? Lost { get; init; }

    public double? MassGrams { get; init; }

    public string? Incubator { get; init; }

    public DateRange? Hatched { get; init; }

    public IReadOnlyList<CountedYoung> Counted { get; init; } = [];

    public IReadOnlyList<string> Young { get; init; } = [];

    public string Notes { get; init; } = "";

    public override string ToString() => $"row {Row}: {Tag} of {Dam}";
}
