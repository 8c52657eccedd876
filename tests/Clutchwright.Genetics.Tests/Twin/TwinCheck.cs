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
        var expected = Together(
            byCase.Zip(weights).Where(c => !c.Second.IsZero), c => c.ToDouble(), (x, y) => x + y);
        var engine = Together(actual.Cases.Select(c => (c.Value, c.Weight)), c => c.Value, (x, y) => x + y);
        Assert.True(expected.Count == engine.Count, $"{what}: {expected.Count} cases, the engine has {string.Join(' ', actual.Cases)}");
        for (var i = 0; i < expected.Count; i++)
        {
            Same(expected[i].Chance, engine[i].Chance, $"{what}, case {i}");
            Same(expected[i].Weight, engine[i].Weight, $"{what}, weight of case {i}");
        }
    }

    private static List<(TChance Chance, TWeight Weight)> Together<TChance, TWeight>(
        IEnumerable<(TChance Chance, TWeight Weight)> cases, Func<TChance, double> number, Func<TWeight, TWeight, TWeight> add)
    {
        var together = new List<(TChance Chance, TWeight Weight)>();
        foreach (var (chance, weight) in cases.OrderByDescending(c => number(c.Chance)))
        {
            if (together.Count > 0 && number(together[^1].Chance) - number(chance) < 1e-10)
            {
                together[^1] = (together[^1].Chance, add(together[^1].Weight, weight));
            }
            else
            {
                together.Add((chance, weight));
            }
        }

        return together;
    }

    private static TwinAnimal Animal(Genotype genotype)
    {
        var (first, second) = SampleParents.Strands(genotype);
        return new(genotype.Sex, TwinAnimal.Code(first), TwinAnimal.Code(second));
    }
}
