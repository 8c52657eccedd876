using Clutchwright.Reference.Tests.Cases;
using Clutchwright.Reference.Tests.Toulbar2;

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
    public async Task LogLikelihood_OfAKennel_IsToulbar2s(int seasons, int females, int males, double share, ulong seed)
    {
        var genetic = KennelCases.Recessive(seasons, females, males, share, seed);

        var engine = EngineCase.Of(genetic);

        Assert.True(engine.Beliefs.IsExact);
        Assert.Empty(engine.Beliefs.Clashes);
        var said = await Toulbar2Run.LogLikelihoodAsync(genetic, TimeSpan.FromSeconds(60));
        Assert.True(Math.Abs(said - engine.LogLikelihood) < Tolerance, $"{engine.LogLikelihood}, by toulbar2 {said}; {genetic.Name}");
    }
}
