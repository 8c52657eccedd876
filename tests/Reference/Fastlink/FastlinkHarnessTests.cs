using Clutchwright.Reference.Tests.Cases;
using Clutchwright.Reference.Tests.Truth;

namespace Clutchwright.Reference.Tests.Fastlink;

/// <summary>The files we write and the answers we read mean what we think: FASTLINK agrees with the definition on small families.</summary>
public sealed class FastlinkHarnessTests
{
    private const double Tolerance = 1e-5;

    [Theory]
    [InlineData(LocusKind.Recessive, false)]
    [InlineData(LocusKind.Dominant, false)]
    [InlineData(LocusKind.Incomplete, false)]
    [InlineData(LocusKind.RankedSeries, false)]
    [InlineData(LocusKind.AnySeries, false)]
    [InlineData(LocusKind.Recessive, true)]
    [InlineData(LocusKind.Dominant, true)]
    [InlineData(LocusKind.Incomplete, true)]
    [InlineData(LocusKind.AnySeries, true)]
    public async Task Risks_OfSmallFamilies_AreThoseOfTheDefinition(LocusKind kind, bool isSexLinked)
    {
        var size = kind >= LocusKind.RankedSeries ? FamilySize.Least : FamilySize.Tiny;
        for (var seed = 1UL; seed <= 20; seed++)
        {
            var genetic = RandomCases.OneLocus(kind, isSexLinked, size, seed);
            var risks = await CompareAsync(genetic, 0);
            var apart = risks.DistanceTo(Math.Log(Enumeration.Of(genetic).Likelihood));
            Assert.True(apart < Tolerance, $"likelihood {apart} of a power of two apart\n{genetic}");
        }
    }

    [Fact]
    public async Task RisksAndLods_OfTwoLinkedLoci_AreThoseOfTheDefinition()
    {
        for (var seed = 1UL; seed <= 20; seed++)
        {
            var genetic = RandomCases.TwoLoci(FamilySize.Least, seed);
            await CompareAsync(genetic, 0);
            await CompareAsync(genetic, 1);
            var free = Enumeration.Of(genetic, 0.5).Likelihood;
            var lods = await FastlinkRun.LodsAsync(genetic);
            Assert.Equal(10, lods.Count(l => l.Theta < 0.46));
            foreach (var (theta, lod) in lods)
            {
                var expected = Math.Log10(Enumeration.Of(genetic, theta).Likelihood / free);
                Assert.True(
                    double.IsNegativeInfinity(expected) ? lod < -20 : Math.Abs(lod - expected) < Tolerance,
                    $"LOD at {theta}: {lod}, by the definition {expected}\n{genetic}");
            }
        }
    }

    private static async Task<FastlinkRisks> CompareAsync(GeneticCase genetic, int locus)
    {
        var truth = Enumeration.Of(genetic);
        FastlinkRisks? risks = null;
        for (var allele = 1; allele < genetic.Loci[locus].AlleleCount; allele++)
        {
            risks = await FastlinkRun.RisksAsync(genetic, locus, allele, [.. Enumerable.Range(0, genetic.Family.Count)]);
            Assert.True(risks.Copies.Count > 0, $"no answer\n{genetic}");
            foreach (var (animal, copies) in risks.Copies)
            {
                var expected = truth.Copies(animal, locus, allele);
                Assert.True(copies.DistanceTo(expected) < Tolerance, $"animal {animal}, allele {allele}: {copies}, by the definition {expected}\n{genetic}");
            }
        }

        return risks!;
    }
}
