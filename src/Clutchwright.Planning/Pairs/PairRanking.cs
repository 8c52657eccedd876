using Clutchwright.Genetics.Clutches;
using Clutchwright.Genetics.Crosses;
using Clutchwright.Genetics.Dangers;
using Clutchwright.Genetics.Genotypes;
using Clutchwright.Genetics.Numbers;
using Clutchwright.Genetics.Wants;

namespace Clutchwright.Planning.Pairs;

/// <summary>A pair that can give what is wanted.</summary>
/// <param name="Sire">The place of the male in the list given, from 0.</param>
/// <param name="Dam">The place of the female in the list given, from 0.</param>
/// <param name="PerEgg">The chance per good egg, as it depends on what the two may be.</param>
/// <param name="AtLeastOne">The chance of at least one in the clutch reckoned with.</param>
/// <param name="Dangers">The dangers whose genotype the pair can give, gravest first.</param>
public sealed record RankedPair(
    int Sire, int Dam, SharedChance PerEgg, Probability AtLeastOne, IReadOnlyList<Danger> Dangers);

/// <summary>Every pair of a stock that can give a want, best first.</summary>
/// <param name="Pairs">Pairs that give no lethal or suffering genotype.</param>
/// <param name="LeftOut">Pairs that can.</param>
public sealed record PairRanking(IReadOnlyList<RankedPair> Pairs, IReadOnlyList<RankedPair> LeftOut)
{
    /// <summary>Ranks every male with every female by the chance of at least one wanted hatchling from one clutch.</summary>
    /// <param name="sires">Males of one species.</param>
    /// <param name="dams">Females of the same species.</param>
    /// <param name="want">What is wanted.</param>
    /// <param name="clutch">How many good eggs a clutch holds; the chance that a female lays belongs in it.</param>
    /// <param name="tied">The pair whose doubts are tied to each other, by their places; <c>null</c>, also as an answer: independent.</param>
    /// <param name="cancel">Stops the work.</param>
    /// <returns>The pairs whose chance is above 0; of equal ones the likelier per egg first, then in the order given.</returns>
    /// <remarks>Each pair is judged alone: how one male serves several females is a question of the season's plan. Cost: see
    /// <see cref="PairTable"/>, plus a sum over the clutch sizes for each pair that can give the want.</remarks>
    /// <exception cref="OperationCanceledException"><paramref name="cancel"/> was set.</exception>
    public static PairRanking Of(
        IReadOnlyList<GenotypeBelief> sires,
        IReadOnlyList<GenotypeBelief> dams,
        Want want,
        GoodEggs clutch,
        Func<int, int, Mating?>? tied = null,
        CancellationToken cancel = default)
    {
        if (sires.Count == 0 || dams.Count == 0)
        {
            return new([], []);
        }

        var table = new PairTable(sires, dams, want);
        var chances = new ClutchChances(clutch);
        var (pairs, leftOut) = (new List<RankedPair>(), new List<RankedPair>());
        for (var sire = 0; sire < sires.Count; sire++)
        {
            cancel.ThrowIfCancellationRequested();
            for (var dam = 0; dam < dams.Count; dam++)
            {
                var chance = table.ChanceOf(sire, dam);
                if (chance.Ceiling.IsImpossible)
                {
                    continue;
                }

                // What is impossible of two apart is impossible of them together, so only the others need a closer look.
                if (tied?.Invoke(sire, dam) is { } mating)
                {
                    chance = Cross.Of(mating).SharedChanceOf(want);
                    if (chance.Ceiling.IsImpossible)
                    {
                        continue;
                    }
                }

                var dangers = table.DangersOf(sire, dam).OrderByDescending(d => d.Severity).ToArray();
                var isLeftOut = dangers.Length > 0 && dangers[0].Severity >= Severity.Suffering;
                (isLeftOut ? leftOut : pairs).Add(new(sire, dam, chance, chances.AtLeastOne(chance), dangers));
            }
        }

        return new(Best(pairs), Best(leftOut));
    }

    private static RankedPair[] Best(List<RankedPair> pairs) => pairs
        .OrderByDescending(p => p.AtLeastOne.Value)
        .ThenByDescending(p => p.PerEgg.PerEgg.Value)
        .ThenBy(p => p.Sire)
        .ThenBy(p => p.Dam)
        .ToArray();
}
