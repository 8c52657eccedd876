using Clutchwright.Genetics.Numbers;
using Clutchwright.Proofs.Distributions;

namespace Clutchwright.Proofs.Segregations;

/// <summary>Do several clutches fit a ratio together, and do they agree with each other?</summary>
/// <remarks>The sum of the clutches' chi-squares parts into that of the pooled counts and the rest, heterogeneity. Clutches that
/// disagree must not be pooled: some may be of other parents. Source: the partition in [Mather1951]; exact test of agreement
/// [FreemanHalton1951], docs/references.md.</remarks>
public sealed class HeterogeneityTest
{
    private HeterogeneityTest(IReadOnlyList<SegregationTest> clutches, SegregationTest pooled, ExactChance exact)
    {
        Clutches = clutches;
        Pooled = pooled;
        Exact = exact;
        Sum = clutches.Sum(c => c.ChiSquare);
        SumDegreesOfFreedom = clutches.Sum(c => c.DegreesOfFreedom);
        ChiSquare = Math.Max(0.0, Sum - pooled.ChiSquare);
        DegreesOfFreedom = SumDegreesOfFreedom - pooled.DegreesOfFreedom;
        SumPValue = Tail(Sum, SumDegreesOfFreedom);
        PValue = Tail(ChiSquare, DegreesOfFreedom);
    }

    /// <summary>Gets the test of each clutch.</summary>
    public IReadOnlyList<SegregationTest> Clutches { get; }

    /// <summary>Gets the test of all clutches taken together.</summary>
    public SegregationTest Pooled { get; }

    /// <summary>Gets the sum of the clutches' chi-squares.</summary>
    public double Sum { get; }

    /// <summary>Gets the degrees of freedom of <see cref="Sum"/>.</summary>
    public int SumDegreesOfFreedom { get; }

    /// <summary>Gets the chance of so large a sum.</summary>
    public double SumPValue { get; }

    /// <summary>Gets the heterogeneity chi-square: the sum less the pooled one.</summary>
    public double ChiSquare { get; }

    /// <summary>Gets its degrees of freedom: (clutches - 1) (classes - 1).</summary>
    public int DegreesOfFreedom { get; }

    /// <summary>Gets the chance of so much heterogeneity if all clutches have the same shares.</summary>
    public double PValue { get; }

    /// <summary>Gets the exact p value of agreement, whatever the common shares are: the chance, given the sizes of the clutches and of the
    /// classes, of a table no likelier than this one.</summary>
    public ExactChance Exact { get; }

    /// <summary>Tests clutches against a ratio and against each other.</summary>
    /// <param name="clutches">One row of counts a clutch, all over the same classes; at least one. A clutch without eggs is allowed.</param>
    /// <param name="ratio">The expected ratio, above 0.</param>
    /// <param name="settings">How far exact p values are pursued; <c>null</c> for the default.</param>
    /// <returns>The test. Cost: up to the settings' branches or draws.</returns>
    /// <exception cref="ArgumentException">There is no clutch, rows differ in length, or a number is out of its range.</exception>
    public static HeterogeneityTest Of(
        IReadOnlyList<IReadOnlyList<int>> clutches, IReadOnlyList<Fraction> ratio, ExactSettings? settings = null)
    {
        if (clutches.Count == 0 || clutches.Any(c => c.Count != ratio.Count))
        {
            throw new ArgumentException("Every clutch has one count a class.", nameof(clutches));
        }

        var sums = ratio.Select((_, c) => clutches.Sum(row => row[c])).ToArray();
        return new(
            [.. clutches.Select(c => SegregationTest.Of(c, ratio, settings))],
            SegregationTest.Of(sums, ratio, settings),
            ExactTable.Of(clutches, settings ?? ExactSettings.Default));
    }

    private static double Tail(double chiSquare, int degreesOfFreedom) =>
        degreesOfFreedom == 0 ? 1.0 : ChiSquareDistribution.UpperTail(chiSquare, degreesOfFreedom);
}
