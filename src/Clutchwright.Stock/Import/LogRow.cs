using Clutchwright.Stock.Animals;
using Clutchwright.Stock.Happenings;

namespace Clutchwright.Stock.Import;

/// <summary>One row of a log file, as it was read. Animals and clutches are named by their ids.</summary>
public sealed class LogRow
{
    /// <summary>As a spreadsheet counts: the header is row 1.</summary>
    public required int Row { get; init; }

    /// <summary>As a text editor counts, from 1.</summary>
    public required int Line { get; init; }

    public required string Animal { get; init; }

    public required DateRange When { get; init; }

    public string? Mate { get; init; }

    public string? Clutch { get; init; }

    /// <summary>What happened that day: mostly one, two where the animal was weighed besides.</summary>
    public required IReadOnlyList<LogEntry> Entries { get; init; }

    public override string ToString() => $"row {Row}: {Animal}";
}

/// <summary>Something that happened, of a row.</summary>
/// <param name="Kind">What.</param>
/// <param name="Amount">In the unit of its kind; null: none.</param>
/// <param name="Text">What else is said.</param>
public sealed record LogEntry(HappeningKind Kind, double? Amount, string Text);
