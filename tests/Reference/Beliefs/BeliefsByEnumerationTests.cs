using Clutchwright.Reference.Tests.Cases;
using Clutchwright.Reference.Tests.Truth;

namespace Clutchwright.Reference.Tests.Beliefs;

/// <summary>Beliefs of small families against the definition, so that a disagreement with another program has a judge.</summary>
public sealed class BeliefsByEnumerationTests
{
    private const double Tolerance = 1e-11;

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
    public void Beliefs_OfSmallFamilies_AreThoseOfTheDefinition(LocusKind kind, bool isSexLinked)
    {
        var size = kind >= LocusKind.RankedSeries ? FamilySize.Least : FamilySize.Tiny;
        for (var seed = 1UL; seed <= 40; seed++)
        {
            Compare(RandomCases.OneLocus(kind, isSexLinked, size, 2000 + seed));
        }
    }

    [Fact]
    public void Beliefs_OfTwoLinkedLoci_AreThoseOfTheDefinition()
    {
        for (var seed = 1UL; seed <= 40; seed++)
        {
            Compare(RandomCases.TwoLoci(FamilySize.Least, 2000 + seed));
        }
    }

    private static void Compare(GeneticCase genetic)
    {
        var (truth, engine) = (Enumeration.Of(genetic), EngineCase.Of(genetic));
        Assert.True(engine.Beliefs.IsExact, genetic.ToString());
        Near.Check(Math.Log(truth.Likelihood), engine.LogLikelihood, Tolerance, genetic);
        for (var locus = 0; locus < genetic.Loci.Count; locus++)
        {
            for (var allele = 0; allele < genetic.Loci[locus].AlleleCount; allele++)
            {
                for (var animal = 0; animal < genetic.Family.Count; animal++)
                {
                    var (expected, said) = (truth.Copies(animal, locus, allele), engine.Copies(animal, locus, allele));
                    Assert.True(said.DistanceTo(expected) < Tolerance, $"animal {animal}, locus {locus}, allele {allele}: {said}, by the definition {expected}\n{genetic}");
                }
            }
        }
    }
}
