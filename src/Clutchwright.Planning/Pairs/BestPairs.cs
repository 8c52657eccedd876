using Clutchwright.Genetics.Clutches;
using Clutchwright.Genetics.Crosses;
using Clutchwright.Genetics.Genotypes;
using Clutchwright.Genetics.Wants;

namespace Clutchwright.Planning.Pairs;

/// <summary>The best pairs of a stock for a want, with no more pairs reckoned than it takes to be sure of them.</summary>
/// <param name="Pairs">Pairs that give no lethal or suffering genotype, best first: the first of what <see cref="PairRanking"/> lists, in its order.</param>
/// <param name="LeftOut">Pairs that can, likewise.</param>
/// <param name="PairsThatCan">How many pairs have a chance and give no such genotype. Of two whose doubts are tied and that were not reckoned it counts
/// whether they have one as far as each animal's own doubt goes.</param>
/// <param name="LeftOutCount">How many pairs have a chance and are left out, likewise.</param>
/// <param name="Reckoned">How many pairs that share a doubt were reckoned with it.</param>
/// <param name="Apart">How many pairs that share a doubt could stand among those listed but could not be reckoned with it: they count as if each animal's
/// doubt were its own.</param>
public sealed record BestPairs(
    IReadOnlyList<RankedPair> Pairs, IReadOnlyList<RankedPair> LeftOut, int PairsThatCan, int LeftOutCount, int Reckoned, int Apart)
{
    /// <summary>Finds the best pairs.</summary>
    /// <param name="sires">Males of one species.</param>
    /// <param name="dams">Females of the same species.</param>
    /// <param name="want">What is wanted.</param>
    /// <param name="clutch">How many good eggs a clutch holds; the chance that a female lays belongs in it.</param>
    /// <param name="most">How many pairs are wanted at most, 1 or more.</param>
    /// <param name="ties">The pairs that share a doubt; <c>null</c>: none.</param>
    /// <param name="cancel">Stops the work.</param>
    /// <remarks>
    /// Every pair has a bound on its chance (<see cref="PairTable.BoundOf"/>). With C the most that a wanted young can be possible and m the most that its chance per egg
    /// can be, the chance of at least one is C·F(m/C) at most, F(p) the chance of at least one at p per egg, since F is concave and F(0) = 0. Pairs
    /// are reckoned in the order of their bounds until the last one listed is above every bound left. Cost: a bound for each pair, some tens of nanoseconds, and a reckoning for
    /// each that is looked at.
    /// </remarks>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="most"/> is below 1.</exception>
    /// <exception cref="OperationCanceledException"><paramref name="cancel"/> was set.</exception>
    public static BestPairs Of(
        IReadOnlyList<GenotypeBelief> sires,
        IReadOnlyList<GenotypeBelief> dams,
        Want want,
        GoodEggs clutch,
        int most,
        PairTies? ties = null,
        CancellationToken cancel = default)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(most, 1);
        return sires.Count == 0 || dams.Count == 0 ? new([], [], 0, 0, 0, 0) : new PairSearch(sires, dams, want, clutch, ties, cancel).Find(most);
    }
}
