using Clutchwright.Genetics.Clutches;
using Clutchwright.Genetics.Crosses;
using Clutchwright.Genetics.Loci;
using Clutchwright.Genetics.Tests.Twin;
using Clutchwright.Testing;
using CsCheck;

namespace Clutchwright.Genetics.Tests.Crosses;

/// <summary>The lazy engine against the slow twin: every species, parents and wants that the generators think of.</summary>
public class SlowTwinTests
{
    // For a long search set the number in the environment.
    private static readonly int Scenarios =
        int.TryParse(Environment.GetEnvironmentVariable("CLUTCHWRIGHT_SCENARIOS"), out var number) ? number : 1000;

    [Fact]
    public void Cross_AnyScenarioWithExactNumbers_EqualsTheSlowTwinAsFractions() =>
        ScenarioGen.SmallExact.Sample(s => CompareAll(s, TwinCheck.Exact), iter: Scenarios);

    [Fact]
    public void Cross_AnyScenario_IsCloseToTheSlowTwin() =>
        ScenarioGen.Small.Sample(s => CompareAll(s, TwinCheck.Float), iter: Scenarios);

    [Fact]
    public void PairsAt_AnyParents_AreThePairsOfTheirCases() => ScenarioGen.Small.Sample(
        scenario =>
        {
            foreach (var locus in scenario.Sample.Species.Loci)
            {
                foreach (var sex in Enum.GetValues<Sex>())
                {
                    var expected = scenario.Parents.Cases
                        .GroupBy(c => Sorted((sex == Sex.Male ? c.Value.Sire : c.Value.Dam).AllelesAt(locus)))
                        .ToDictionary(g => g.Key, g => g.Sum(c => c.Weight.Value));

                    var pairs = scenario.Parents.Mating.PairsAt(locus, sex);

                    Assert.Equal(expected.Count, pairs.Count);
                    Assert.All(pairs, p => Assert.Equal(expected[p.Value], p.Weight.Value, 1e-11));
                    Assert.Equal(pairs.OrderByDescending(p => p.Weight.Value).Select(p => p.Weight), pairs.Select(p => p.Weight));
                }
            }
        },
        iter: Scenarios / 4);

    private static (int First, int Second) Sorted((int First, int Second) pair) =>
        pair.First <= pair.Second ? pair : (pair.Second, pair.First);

    private static void CompareAll<T>(Scenario scenario, TwinCheck<T> check)
        where T : struct, ITwinNumber<T>
    {
        var cross = Cross.Of(scenario.Parents.Mating);
        var twin = check.Twin(scenario);

        check.Same(twin.Survival(), cross.Survival, "survival");
        Assert.Equal(twin.IsBySex, cross.IsBySex);
        CompareGenotypes(cross, twin, check);
        CompareLooks(scenario, cross, twin, check);
        CompareWant(scenario, cross, twin, check);
        for (var i = 0; i < scenario.Sample.Species.Dangers.Count; i++)
        {
            check.Same(twin.ChanceOf(scenario.Sample.Definition.Dangers[i]), cross.ChanceOf(scenario.Sample.Species.Dangers[i]), $"danger {i}");
        }
    }

    private static void CompareGenotypes<T>(Cross cross, SlowTwin<T> twin, TwinCheck<T> check)
        where T : struct, ITwinNumber<T>
    {
        var seen = new HashSet<TwinAnimal>();
        var last = 1.0;
        foreach (var outcome in cross.Genotypes())
        {
            Assert.True(outcome.Chance.Value <= last * (1.0 + 1e-12), $"{outcome} comes after {last}");
            last = outcome.Chance.Value;
            Sex[] sexes = outcome.Sex is { } sex ? [sex] : [Sex.Female, Sex.Male];
            var laid = T.Zero;
            foreach (var one in sexes)
            {
                var (first, second) = SampleParents.Strands(outcome.Genotype);
                var animal = twin.Canonical(new(one, TwinAnimal.Code(first), TwinAnimal.Code(second)));
                Assert.True(seen.Add(animal), $"{outcome} is listed twice");
                laid += twin.Laid(animal);
                check.Same(T.Of(twin.Forms.Survival(one, animal.Pair)), outcome.Survival, $"survival of {outcome}");
            }

            check.Same(laid, outcome.Chance, $"genotype {outcome}");
        }

        Assert.Equal(twin.Children.Count(), seen.Count);
    }

    private static void CompareLooks<T>(Scenario scenario, Cross cross, SlowTwin<T> twin, TwinCheck<T> check)
        where T : struct, ITwinNumber<T>
    {
        var expected = twin.Looks(scenario.Stage);
        var last = 1.0;
        var count = 0;
        foreach (var look in cross.Looks(scenario.Stage))
        {
            var text = SlowTwin<T>.LookText(look.Seen.Select(e => e.Id), look.Sex);
            Assert.True(expected.TryGetValue(text, out var twinLook), $"'{text}' is no look of the twin's {string.Join(" | ", expected.Keys)}");
            count++;
            Assert.True(look.Chance.Value <= last * (1.0 + 1e-12), $"'{text}' with {look.Chance} comes after {last}");
            last = look.Chance.Value;

            var chance = twin.Over(twinLook.ByCase);
            check.Same(chance, look.Chance, $"look '{text}'");
            check.Same(chance / twin.Survival(), look.ChanceOfHatchling, $"look '{text}' among hatchlings");
            Assert.Equal(twinLook.Faint.Order(StringComparer.Ordinal), look.Faint.Select(e => e.Id).Order(StringComparer.Ordinal));
            check.SameShared(twin.Weights, twinLook.ByCase, look.Shared(), $"shared chance of '{text}'");
            CompareHidden(scenario.Sample.Species, twinLook, chance, look, check);
        }

        Assert.Equal(expected.Count, count);
    }

    private static void CompareHidden<T>(Species species, TwinLook<T> twinLook, T chance, LookOutcome look, TwinCheck<T> check)
        where T : struct, ITwinNumber<T>
    {
        // What the look says itself is left out: wild where nothing is seen, and the only pair left where a form is.
        var expected = species.Loci
            .SelectMany(l => twinLook.Pairs[l.Index]
                .Where(p => twinLook.Seen[l.Index] is null ? p.Key != (0, 0, false) : twinLook.Pairs[l.Index].Count > 1)
                .Select(p => (Key: (Locus: l.Index, p.Key), Chance: p.Value / chance)))
            .ToDictionary(p => p.Key, p => p.Chance);
        foreach (var hidden in look.Hidden)
        {
            var key = (hidden.Locus.Index, (hidden.First, hidden.Second, hidden.IsOrdered));
            Assert.True(expected.Remove(key, out var share), $"hidden {hidden} is not expected in {look.Chance}");
            check.Same(share, hidden.Chance, $"hidden {hidden}");
        }

        Assert.Empty(expected);
        Assert.True(look.Hidden.Zip(look.Hidden.Skip(1), (a, b) => a.Locus.Index < b.Locus.Index
            || (a.Locus == b.Locus && a.Chance.Value >= b.Chance.Value)).All(x => x));
    }

    private static void CompareWant<T>(Scenario scenario, Cross cross, SlowTwin<T> twin, TwinCheck<T> check)
        where T : struct, ITwinNumber<T>
    {
        var byCase = twin.Hatched(c => scenario.Want.IsMet(c.Sex, twin.IsHeterogametic(c.Sex), c.Pair));
        var shared = cross.SharedChanceOf(scenario.Want.Want);
        check.Same(twin.Over(byCase), cross.ChanceOf(scenario.Want.Want), "want per egg");
        check.Same(twin.Over(byCase), shared.PerEgg, "want per egg by cases");
        check.SameShared(twin.Weights, byCase, shared, "shared chance of the want");

        // A clutch of four eggs, each egg wanted or not: all sixteen patterns in every case of the parents.
        var atLeast = new T[5];
        for (var k = 0; k < byCase.Length; k++)
        {
            for (var pattern = 0; pattern < 16; pattern++)
            {
                var chance = twin.Weights[k];
                for (var egg = 0; egg < 4; egg++)
                {
                    chance *= ((pattern >> egg) & 1) == 1 ? byCase[k] : T.One - byCase[k];
                }

                for (var count = 0; count <= int.PopCount(pattern); count++)
                {
                    atLeast[count] += chance;
                }
            }
        }

        check.Same(atLeast[1], shared.AtLeastOne(4), "at least one of four eggs");
        for (var count = 0; count <= 4; count++)
        {
            check.Same(atLeast[count], shared.AtLeast(count, GoodEggs.Exactly(4)), $"at least {count} of four eggs");
        }
    }
}
