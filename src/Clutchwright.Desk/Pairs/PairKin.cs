using Clutchwright.Desk.Kin;
using Clutchwright.Desk.Words;
using Clutchwright.Genetics.Numbers;
using Clutchwright.Stock.Animals;

namespace Clutchwright.Desk.Pairs;

/// <summary>How related the two animals of a pair are.</summary>
/// <param name="Inbreeding">F to be expected of their young, in [0, 1].</param>
/// <param name="Exact">The same as an exact ratio; <c>null</c> where there are too many ancestors for one.</param>
/// <param name="Relation">What she is to him, for example <c>half sister</c>; <c>null</c>: nothing, or there is no short word for it.</param>
public sealed record PairKin(double Inbreeding, Fraction? Exact, string? Relation)
{
    /// <summary>Gets what is told of it beside the pair: nothing of two that are not kin.</summary>
    internal IEnumerable<Warning> Notes => Inbreeding > 0.0
        ? [new("kin", "note", $"{(Relation is null ? "They are related" : $"She is his {Relation}")}: their young would be inbred {KinText.PercentAndFraction(Inbreeding, Exact)}.", null, [])]
        : [];

    /// <summary>Reckons the kinship of some pairs, all at once.</summary>
    /// <param name="stock">The stock.</param>
    /// <param name="pairs">The pairs; the answer has their order.</param>
    /// <remarks>Cost: a walk through the ancestors of each sire of the pairs; the words, of each pair that is kin.</remarks>
    internal static PairKin[] Of(KinStock stock, IReadOnlyList<(AnimalId Sire, AnimalId Dam)> pairs)
    {
        var (rows, rowOf) = Places(pairs.Select(p => p.Sire));
        var (columns, columnOf) = Places(pairs.Select(p => p.Dam));
        var table = stock.Reckoner.Table(rows, columns);
        var exact = stock.ExactOf([.. rows.Concat(columns).Distinct()]);
        return [.. pairs.Select(Pair)];

        PairKin Pair((AnimalId Sire, AnimalId Dam) pair)
        {
            var (row, column) = (rowOf[pair.Sire], columnOf[pair.Dam]);
            return table[row, column] is > 0.0 and var inbreeding
                ? new(inbreeding, exact?.Between(rows[row], columns[column]), stock.Relation(stock.IndexOf(pair.Sire), stock.IndexOf(pair.Dam)))
                : new(0.0, Fraction.Zero, null);
        }

        (int[] Positions, Dictionary<AnimalId, int> PlaceOf) Places(IEnumerable<AnimalId> animals)
        {
            AnimalId[] different = [.. animals.Distinct()];
            return (
                [.. different.Select(a => stock.PositionOf(stock.IndexOf(a)))],
                different.Select((a, i) => (a, i)).ToDictionary(p => p.a, p => p.i));
        }
    }
}
