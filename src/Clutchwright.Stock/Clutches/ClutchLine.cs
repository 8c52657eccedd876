using Clutchwright.Stock.Animals;

namespace Clutchwright.Stock.Clutches;

/// <summary>A clutch with what became of its eggs so far.</summary>
/// <param name="Clutch">The clutch.</param>
/// <param name="Dam">Her tag.</param>
/// <param name="Sires">The tag of the sire, or of each that may be it.</param>
/// <param name="Incubator">Where it is; null: in none.</param>
/// <param name="Lost">How many good eggs were written down as lost.</param>
/// <param name="Pipped">The day the first shell was cut; null: not written down.</param>
/// <param name="Young">Its young in the book, in the order of their tags.</param>
public sealed record ClutchLine(
    Clutch Clutch, string Dam, IReadOnlyList<string> Sires, string? Incubator, int Lost, DateRange? Pipped, IReadOnlyList<AnimalLine> Young)
{
    /// <summary>How many hatched, as far as they are in the book one by one or as a number.</summary>
    public int HatchedCount => Young.Count + Clutch.Counted.Sum(c => c.Count);
}
