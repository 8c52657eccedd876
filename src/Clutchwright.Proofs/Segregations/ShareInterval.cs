using Clutchwright.Genetics.Numbers;
using Clutchwright.Proofs.Distributions;

namespace Clutchwright.Proofs.Segregations;

/// <summary>A range of a share or a fraction that holds the true one with a stated confidence.</summary>
/// <param name="Low">The lower end, in [0, 1].</param>
/// <param name="High">The upper end, in [<paramref name="Low"/>, 1].</param>
public readonly record struct ShareInterval(double Low, double High)
{
    private const int Halvings = 200;

    /// <summary>The exact interval of a share, from k of n.</summary>
    /// <param name="count">k, from 0 to n.</param>
    /// <param name="number">n, at least 0; without trials the interval is [0, 1].</param>
    /// <param name="confidence">Inside (0, 1), for example 0.95.</param>
    /// <returns>The interval of Clopper and Pearson: each end is the share at which so extreme a count has half the doubt.</returns>
    /// <remarks>It holds the truth at least as often as stated, whatever the truth is. Source: docs/references.md [ClopperPearson1934].</remarks>
    /// <exception cref="ArgumentOutOfRangeException">A number is out of its range.</exception>
    public static ShareInterval Exact(int count, int number, Probability confidence)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(count);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(count, number);
        var doubt = Doubt(confidence) / 2.0;
        return new(
            count == 0 ? 0.0 : Solve(0.0, (double)count / number, p => BinomialDistribution.AtLeast(count, number, p) >= doubt),
            count == number ? 1.0 : Solve((double)count / number, 1.0, p => BinomialDistribution.AtMost(count, number, p) < doubt));
    }

    /// <summary>What a confidence leaves over.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The confidence is not inside (0, 1).</exception>
    internal static double Doubt(Probability confidence) => confidence.IsImpossible || confidence.IsCertain
        ? throw new ArgumentOutOfRangeException(nameof(confidence), confidence, "A confidence lies inside (0, 1).")
        : 1.0 - confidence.Value;

    /// <summary>The place where a claim that is false at the low end and true at the high end turns.</summary>
    internal static double Solve(double low, double high, Func<double, bool> isReached, double tolerance = 0.0)
    {
        for (var i = 0; i < Halvings && high - low > tolerance; i++)
        {
            var middle = low + ((high - low) / 2.0);
            if (middle <= low || middle >= high)
            {
                break;
            }

            (low, high) = isReached(middle) ? (low, middle) : (middle, high);
        }

        return low + ((high - low) / 2.0);
    }
}
