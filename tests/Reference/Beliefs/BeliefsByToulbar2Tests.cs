using Clutchwright.Reference.Tests.Cases;
using Clutchwright.Reference.Tests.Toulbar2;
using Clutchwright.Testing.Pedigrees;

namespace Clutchwright.Reference.Tests.Beliefs;

/// <summary>Likelihoods of whole kennels, too large and too looped for FASTLINK, against toulbar2.</summary>
public sealed class BeliefsByToulbar2Tests
{
    // Three decimals are printed.
    private const double Tolerance = 0.00051;

    [Theory]
    [InlineData(10, 10, 3, 0.25, 1)]
    [InlineData(10, 10, 3, 0.05, 1)]
    [InlineData(20, 10, 3, 0.25, 1)]
    [InlineData(20, 10, 3, 0.25, 2)]
    [InlineData(20, 10, 3, 0.25, 3)]
    [InlineData(10, 20, 5, 0.25, 1)]
    [InlineData(10, 20, 5, 0.25, 2)]
    [InlineData(10, 20, 5, 0.25, 3)]
    public async Task LogLikelihood_OfARecessiveInAKennel_IsToulbar2s(int seasons, int females, int males, double share, ulong seed)
    {
        await CompareAsync(KennelCases.Recessive(seasons, females, males, share, seed));
    }

    [Theory]
    [InlineData(LocusKind.Incomplete, true, 1)]
    [InlineData(LocusKind.Recessive, true, 1)]
    [InlineData(LocusKind.Recessive, true, 2)]
    [InlineData(LocusKind.Dominant, false, 1)]
    [InlineData(LocusKind.Dominant, false, 2)]
    [InlineData(LocusKind.RankedSeries, false, 1)]
    [InlineData(LocusKind.RankedSeries, false, 2)]
    public async Task LogLikelihood_OfAnotherLocusInAKennel_IsToulbar2s(LocusKind kind, bool isSexLinked, ulong seed)
    {
        LocusModel locus = kind switch
        {
            LocusKind.Recessive => new([0.7, 0.3], (a, _) => a),
            LocusKind.Dominant => new([0.8, 0.2], (_, b) => b),
            LocusKind.Incomplete => new([0.8, 0.2], (a, b) => a + b),
            _ => new([0.5, 0.3, 0.2], (a, _) => a),
        };
        await CompareAsync(KennelCases.Of(Kennels.Seasons(10, 10, 3, seed), locus, isSexLinked, seed));
    }

    private static async Task CompareAsync(GeneticCase genetic)
    {
        var engine = EngineCase.Of(genetic);

        Assert.True(engine.Beliefs.IsExact);
        Assert.Empty(engine.Beliefs.Clashes);
        var said = await Toulbar2Run.LogLikelihoodAsync(genetic, TimeSpan.FromSeconds(60));
        Assert.True(Math.Abs(said - engine.LogLikelihood) < Tolerance, $"{engine.LogLikelihood}, by toulbar2 {said}; {genetic.Name}");
    }
}
