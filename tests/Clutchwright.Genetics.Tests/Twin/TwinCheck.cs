using Clutchwright.Genetics.Clutches;
using Clutchwright.Genetics.Genotypes;
using Clutchwright.Genetics.Numbers;
using Clutchwright.Testing;

namespace Clutchwright.Genetics.Tests.Twin;

/// <summary>Makes slow twins of scenarios, and compares their numbers with the engine's.</summary>
internal static class TwinCheck
{
    /// <summary>Gets the comparison as fractions.</summary>
    public static TwinCheck<ExactNumber> Exact { get; } = new((expected, actual) =>
        actual.Exact is { } exact && exact.Numerator == expected.Numerator && exact.Denominator == expected.Denominator);

    /// <summary>Gets the comparison within rounding.</summary>
    public static TwinCheck<FloatNumber> Float { get; } = new((expected, actual) => Math.Abs(expected.Value - actual.Value) < 1e-11);
}

/// <summary>Makes slow twins of scenarios, and compares their numbers with the engine's.</summary>
/// <param name="isSame">Says whether the twin's number is the engine's.</param>
internal sealed class TwinCheck<T>(Func<T, Probability, bool> isSame)
    where T : struct, ITwinNumber<T>
{
    public SlowTwin<T> Twin(Scenario scenario) => new(
        scenario.Sample.Definition,
        scenario.Parents.Cases.Select(c => (Animal(c.Value.Sire), Animal(c.Value.Dam), T.Of(c.Weight))).ToArray());

    public void Same(T expected, Probability actual, string what) =>
        Assert.True(isSame(expected, actual), $"{what}: the twin says {expected}, the engine {actual}");

    /// <summary>Compares a chance by the cases of the parents with the engine's mixture.</summary>
    public void SameShared(IReadOnlyList<T> weights, T[] byCase, SharedChance actual, string what)
    {
        // Cases with one chance are one case. Doubles that differ by rounding alone count as one.
        var expected = byCase
            .Zip(weights, (chance, weight) => (Chance: chance, Weight: weight))
            .Where(c => !c.Weight.IsZero)
            .GroupBy(c => Math.Round(c.Chance.ToDouble(), 10))
            .OrderByDescending(g => g.Key)
            .Select(g => (g.First().Chance, Weight: g.Aggregate(T.Zero, (sum, c) => sum + c.Weight)))
            .ToArray();
        var engine = actual.Cases
            .GroupBy(c => Math.Round(c.Value.Value, 10))
            .OrderByDescending(g => g.Key)
            .Select(g => (Chance: g.First().Value, Weight: g.Aggregate(Probability.Impossible, (sum, c) => sum + c.Weight)))
            .ToArray();
        Assert.True(expected.Length == engine.Length, $"{what}: {expected.Length} cases, the engine has {string.Join(' ', actual.Cases)}");
        for (var i = 0; i < expected.Length; i++)
        {
            Same(expected[i].Chance, engine[i].Chance, $"{what}, case {i}");
            Same(expected[i].Weight, engine[i].Weight, $"{what}, weight of case {i}");
        }
    }

    private static TwinAnimal Animal(Genotype genotype)
    {
        var (first, second) = SampleParents.Strands(genotype);
        return new(genotype.Sex, TwinAnimal.Code(first), TwinAnimal.Code(second));
    }
}
