using Clutchwright.Genetics.Loci;
using Clutchwright.Reference.Tests.Cases;
using Clutchwright.Reference.Tests.Fastlink;
using Clutchwright.Reference.Tests.Truth;

namespace Clutchwright.Reference.Tests.Beliefs;

/// <summary>Loci that both sex chromosomes carry and that recombine with the sex-determining region. To FASTLINK, and to the definition, such a
/// locus is one of two linked autosomal ones: the other has the alleles X and Y, and every animal's look at it is its sex.</summary>
public sealed class SexLinkedBeliefsTests
{
    private const double Tolerance = 1e-5;

    private static readonly LocusModel SexRegion = new([0.75, 0.25], (a, b) => a + b);

    [Theory]
    [InlineData(LocusKind.Recessive)]
    [InlineData(LocusKind.Dominant)]
    [InlineData(LocusKind.Incomplete)]
    public void Beliefs_OfSmallFamilies_AreThoseOfTheDefinition(LocusKind kind)
    {
        for (var seed = 1UL; seed <= 20; seed++)
        {
            var (own, two) = Draw(kind, FamilySize.Least, 6000 + seed);
            var (engine, truth) = (EngineCase.OnSexChromosomes(own, RecombinationFraction.From(two.Recombination)), Enumeration.Of(two));
            for (var animal = 0; animal < own.Family.Count; animal++)
            {
                var (said, expected) = (engine.Copies(animal, 0, 1), truth.Copies(animal, 1, 1));
                Assert.True(said.DistanceTo(expected) < 1e-11, $"animal {animal}: {said}, by the definition {expected}\n{two}");
            }
        }
    }

    [Theory]
    [InlineData(LocusKind.Recessive)]
    [InlineData(LocusKind.Dominant)]
    [InlineData(LocusKind.Incomplete)]
    public async Task BeliefsAndLods_OfFamilies_AreFastlinks(LocusKind kind)
    {
        for (var seed = 1UL; seed <= 8; seed++)
        {
            var (own, two) = Draw(kind, FamilySize.Middle, 7000 + seed);
            var engine = EngineCase.OnSexChromosomes(own, RecombinationFraction.From(two.Recombination));
            var risks = await FastlinkRun.RisksAsync(two, 1, 1, [.. Enumerable.Range(0, 8)]);
            Assert.True(risks.Copies.Count > 0, $"no answer\n{two}");
            foreach (var (animal, expected) in risks.Copies)
            {
                var said = engine.Copies(animal, 0, 1);
                Assert.True(said.DistanceTo(expected) < Tolerance, $"animal {animal}: {said}, by FASTLINK {expected}\n{two}");
            }

            var free = EngineCase.OnSexChromosomes(own, RecombinationFraction.Free).LogLikelihood;
            foreach (var (theta, lod) in await FastlinkRun.LodsAsync(two))
            {
                var at = EngineCase.OnSexChromosomes(own, RecombinationFraction.From(theta));
                var said = (at.LogLikelihood - free) / Math.Log(10);
                Assert.True(
                    at.Beliefs.Clashes.Count > 0 ? lod < -20 : Math.Abs(lod - said) < Tolerance,
                    $"LOD at {theta}: {said}, by FASTLINK {lod}\n{two}");
            }
        }
    }

    private static (GeneticCase Own, GeneticCase TwoLoci) Draw(LocusKind kind, FamilySize size, ulong seed)
    {
        var own = RandomCases.OneLocus(kind, isSexLinked: false, size, seed);
        var sexes = own.Family.Sexes.Select(s => (int?)(s == Sex.Male ? 1 : 0)).ToArray();
        var recombination = 0.05 * (1 + (int)(seed % 5));
        return (own, own with { Loci = [SexRegion, own.Loci[0]], Recombination = recombination, Seen = [sexes, own.Seen[0]] });
    }
}
