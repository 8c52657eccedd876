using Clutchwright.Genetics.Numbers;

namespace Clutchwright.Genetics.Clutches;

/// <summary>How many good eggs a clutch holds: fertile eggs that hatch if only their genotype lets them.</summary>
/// <remarks>A distribution over 0, 1, ..., computed from egg number, fertility and hatch rate, not simulated. Immutable.</remarks>
public sealed class GoodEggs
{
    private readonly Probability[] _chances;

    private GoodEggs(Probability[] chances) => _chances = chances;

    /// <summary>Gets the largest number possible.</summary>
    public int Most => _chances.Length - 1;

    /// <summary>Gets the chance of each number; index n holds the chance of exactly n.</summary>
    public IReadOnlyList<Probability> Chances => _chances;

    /// <summary>Gets the mean number.</summary>
    public double Mean => _chances.Select((p, n) => n * p.Value).Sum();

    /// <summary>Gets whether there is never a good egg.</summary>
    public bool IsAlwaysEmpty => Most == 0;

    /// <summary>A clutch of exactly so many good eggs.</summary>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="count"/> is negative.</exception>
    public static GoodEggs Exactly(int count)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(count);
        var chances = new Probability[count + 1];
        chances[count] = Probability.Certain;
        return new(chances);
    }

    /// <summary>A clutch as nature gives it.</summary>
    /// <param name="eggs">The chance of each number of eggs; index n holds the chance of n. Sums to 1.</param>
    /// <param name="laying">The chance that the female lays at all; without, there are no eggs.</param>
    /// <param name="fertility">The share of eggs that are fertile.</param>
    /// <param name="hatchRate">The share of fertile eggs that hatch, genotype aside.</param>
    /// <remarks>Eggs of a clutch share its fertility and its hatch rate where these vary from clutch to clutch
    /// (beta-binomial). Cost: O(n²) for fertility and again for hatching, n the most eggs.</remarks>
    /// <exception cref="ArgumentException">The chances do not sum to 1.</exception>
    public static GoodEggs Of(IReadOnlyList<double> eggs, Probability laying, ClutchRate fertility, ClutchRate hatchRate)
    {
        if (eggs.Any(p => p < 0.0 || double.IsNaN(p)) || Math.Abs(eggs.Sum() - 1.0) > 1e-9)
        {
            throw new ArgumentException("The chances of the egg numbers do not sum to 1.", nameof(eggs));
        }

        var laid = eggs.Select(p => p * laying.Value).ToArray();
        laid[0] += 1.0 - laying.Value;
        return new(Trim(hatchRate.Thin(fertility.Thin(laid))));
    }

    /// <summary>The chance that none of the good eggs is what has <paramref name="chance"/> per egg.</summary>
    public Probability NoneOf(Probability chance)
    {
        var miss = chance.Complement;
        var power = Probability.Certain;
        var sum = Probability.Impossible;
        foreach (var n in _chances)
        {
            if (!n.IsImpossible)
            {
                sum += n * power;
            }

            power *= miss;
        }

        return sum;
    }

    /// <summary>The chance that at least <paramref name="count"/> of the good eggs are what has <paramref name="chance"/> per egg.</summary>
    public Probability AtLeast(int count, Probability chance)
    {
        if (count <= 0)
        {
            return Probability.Certain;
        }

        var sum = Probability.Impossible;
        for (var n = count; n < _chances.Length; n++)
        {
            if (!_chances[n].IsImpossible)
            {
                sum += _chances[n] * Binomial.AtLeast(count, n, chance);
            }
        }

        return sum;
    }

    /// <summary>The distribution of how many good eggs are what has <paramref name="chance"/> per egg; index n holds the chance of n.</summary>
    public IReadOnlyList<double> NumberOf(Probability chance)
    {
        var result = new double[_chances.Length];
        for (var n = 0; n < _chances.Length; n++)
        {
            if (_chances[n].IsImpossible)
            {
                continue;
            }

            for (var k = 0; k <= n; k++)
            {
                result[k] += _chances[n].Value * Binomial.Exactly(k, n, chance.Value);
            }
        }

        return result;
    }

    // Without the numbers at the end that never come up, and summing to 1.
    private static Probability[] Trim(double[] chances)
    {
        var total = chances.Sum();
        var most = Array.FindLastIndex(chances, p => p > 0.0);
        return chances.Take(most + 1).Select(p => Probability.From(Math.Clamp(p / total, 0.0, 1.0))).ToArray();
    }
}
