using Clutchwright.Genetics.Numbers;

namespace Clutchwright.Proofs.Segregations;

/// <summary>One class against the rest: the exact binomial test and interval.</summary>
/// <param name="Count">How many of the class.</param>
/// <param name="Number">Of how many.</param>
/// <param name="Expected">The share expected.</param>
/// <param name="PValue">The chance of any count no likelier than this one, if the expected share holds.</param>
/// <param name="Interval">The exact 95 % interval of the true share.</param>
/// <remarks>Source: docs/references.md [ClopperPearson1934].</remarks>
public sealed record BinomialTest(int Count, int Number, Fraction Expected, double PValue, ShareInterval Interval)
{
    /// <summary>Tests a count.</summary>
    /// <param name="count">From 0 to <paramref name="number"/>.</param>
    /// <param name="number">At most <see cref="SegregationTest.MostEggs"/>.</param>
    /// <param name="expected">Inside (0, 1).</param>
    /// <returns>The test, exact but for rounding.</returns>
    /// <exception cref="ArgumentException">A number is out of its range.</exception>
    public static BinomialTest Of(int count, int number, Fraction expected)
    {
        if (count < 0 || count > number || number > SegregationTest.MostEggs || expected <= Fraction.Zero || expected >= Fraction.One)
        {
            throw new ArgumentException("A count lies in 0 to the number, a share inside (0, 1).", nameof(count));
        }

        var share = expected.ToDouble();
        return new(
            count,
            number,
            expected,
            ExactMultinomial.Of([count, number - count], [share, 1.0 - share], ExactSettings.Default).Value,
            ShareInterval.Exact(count, number, Probability.From(0.95)));
    }
}
