using System.Numerics;

namespace Clutchwright.Genetics.Crosses;

/// <summary>What the mean of something that depends on two doubtful things cannot pass, however the two doubts are tied to each other.</summary>
/// <remarks>
/// By layers: the most often that the value reaches each of the heights it has. Over all joint distributions with the given weights on either side a set of cases has at most the
/// smallest, over all sets A of the first thing's states, of (weight outside A) + (weight of all that can stand with a state of A). Source: docs/references.md [Strassen1965].
/// </remarks>
internal sealed class CouplingBound
{
    private const int MostStates = 10;
    private readonly bool _isTurned;
    private readonly double[] _rises;
    private readonly uint[][] _partners;

    /// <summary>Notes the heights.</summary>
    /// <param name="values">The value of each case, not negative, the second thing's states counting fastest.</param>
    /// <param name="first">How many states the first thing has.</param>
    /// <param name="second">How many states the second has.</param>
    public CouplingBound(double[] values, int first, int second)
    {
        _isTurned = first > second;
        var (few, many) = _isTurned ? (second, first) : (first, second);
        double[] heights = [.. values.Where(v => v > 0.0).Distinct().Order()];
        _rises = [.. heights.Select((h, i) => i == 0 ? h : h - heights[i - 1])];
        _partners = many > 32
            ? []
            : [.. heights.Select(h => Enumerable.Range(0, few)
                .Select(f => Enumerable.Range(0, many).Aggregate(0U, (bits, m) => values[_isTurned ? (m * second) + f : (f * second) + m] >= h ? bits | (1U << m) : bits))
                .ToArray())];
        (IsCrude, Mean) = (many > 32, heights.Length == 0 ? 0.0 : heights[^1]);
    }

    private bool IsCrude { get; }

    private double Mean { get; }

    /// <summary>The largest mean, and the largest weight of what is above 0.</summary>
    /// <param name="first">The weights of the first thing's states, summing to 1.</param>
    /// <param name="second">Those of the second's.</param>
    public (double Mean, double Positive) Most(double[] first, double[] second)
    {
        if (IsCrude)
        {
            return (Mean, Mean > 0.0 ? 1.0 : 0.0);
        }

        var (few, many) = _isTurned ? (second, first) : (first, second);
        var (mean, positive) = (0.0, 0.0);
        for (var i = 0; i < _rises.Length; i++)
        {
            var most = Weight(few, many, _partners[i]);
            mean += _rises[i] * most;
            positive = i == 0 ? most : positive;
        }

        return (mean, positive);
    }

    private static double Weight(double[] few, double[] many, uint[] partners)
    {
        if (few.Length > MostStates)
        {
            return Math.Min(1.0, Math.Min(
                few.Where((_, f) => partners[f] != 0).Sum(),
                many.Where((_, m) => Array.Exists(partners, p => (p & (1U << m)) != 0)).Sum()));
        }

        var least = 1.0;
        for (var set = 0U; set < 1U << few.Length; set++)
        {
            var (sum, reached) = (0.0, 0U);
            for (var f = 0; f < few.Length; f++)
            {
                if ((set & (1U << f)) == 0)
                {
                    sum += few[f];
                }
                else
                {
                    reached |= partners[f];
                }
            }

            for (; reached != 0 && sum < least; reached &= reached - 1)
            {
                sum += many[BitOperations.TrailingZeroCount(reached)];
            }

            least = Math.Min(least, sum);
        }

        return least;
    }
}
