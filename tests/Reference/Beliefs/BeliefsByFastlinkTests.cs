using Clutchwright.Reference.Tests.Cases;
using Clutchwright.Reference.Tests.Fastlink;
using Clutchwright.Testing.Pedigrees;

namespace Clutchwright.Reference.Tests.Beliefs;

/// <summary>Beliefs and likelihoods against FASTLINK, on families too large to write out.</summary>
public sealed class BeliefsByFastlinkTests
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
    public async Task Beliefs_OfFamilies_AreFastlinksRisks(LocusKind kind, bool isSexLinked)
    {
        for (var seed = 1UL; seed <= 15; seed++)
        {
            await CompareAsync(RandomCases.OneLocus(kind, isSexLinked, FamilySize.Middle, 3000 + seed), seed);
            await CompareAsync(RandomCases.OneLocus(kind, isSexLinked, FamilySize.Looped, 4000 + seed), seed);
        }
    }

    [Fact]
    public async Task BeliefsAndLods_OfTwoLinkedLoci_AreFastlinks()
    {
        for (var seed = 1UL; seed <= 15; seed++)
        {
            var genetic = RandomCases.TwoLoci(FamilySize.Middle, 5000 + seed);
            await CompareAsync(genetic, seed);
            var free = EngineCase.Of(genetic, 0.5).LogLikelihood;
            foreach (var (theta, lod) in await FastlinkRun.LodsAsync(genetic))
            {
                // At 0 the records may be impossible: a clash to the engine, a very low number to FASTLINK.
                var engine = EngineCase.Of(genetic, theta);
                var own = (engine.LogLikelihood - free) / Math.Log(10);
                Assert.True(
                    engine.Beliefs.Clashes.Count > 0 ? lod < -20 : Math.Abs(lod - own) < Tolerance,
                    $"LOD at {theta}: {own}, by FASTLINK {lod}\n{genetic}");
            }
        }
    }

    private static async Task CompareAsync(GeneticCase genetic, ulong seed)
    {
        var engine = EngineCase.Of(genetic);
        Assert.True(engine.Beliefs.IsExact, genetic.ToString());
        var random = new SplitMix64(seed);
        var locus = random.Below(genetic.Loci.Count);
        var allele = 1 + random.Below(genetic.Loci[locus].AlleleCount - 1);

        // Many alleles and many loops take FASTLINK seconds a proband.
        var most = genetic.Loci[0].AlleleCount > 2 ? 2 : 8;
        var probands = Enumerable.Range(0, genetic.Family.Count).OrderBy(_ => random.Next()).Take(most).ToArray();
        var risks = await FastlinkRun.RisksAsync(genetic, locus, allele, probands);
        Assert.True(risks.Copies.Count > 0, $"no answer\n{genetic}");
        foreach (var (animal, expected) in risks.Copies)
        {
            var own = engine.Copies(animal, locus, allele);
            Assert.True(own.DistanceTo(expected) < Tolerance, $"animal {animal}, locus {locus}, allele {allele}: {own}, by FASTLINK {expected}\n{genetic}");
        }

        if (genetic.Loci.Count == 1)
        {
            var apart = risks.DistanceTo(engine.LogLikelihood);
            Assert.True(apart < Tolerance, $"likelihood {apart} of a power of two apart\n{genetic}");
        }
    }
}
