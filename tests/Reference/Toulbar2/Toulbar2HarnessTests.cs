using Clutchwright.Reference.Tests.Cases;
using Clutchwright.Reference.Tests.Truth;

namespace Clutchwright.Reference.Tests.Toulbar2;

/// <summary>The networks we write mean what we think: toulbar2 agrees with the definition on small families.</summary>
public sealed class Toulbar2HarnessTests
{
    [Theory]
    [InlineData(LocusKind.Recessive, false)]
    [InlineData(LocusKind.Incomplete, false)]
    [InlineData(LocusKind.AnySeries, false)]
    [InlineData(LocusKind.Recessive, true)]
    [InlineData(LocusKind.AnySeries, true)]
    public async Task LogLikelihood_OfSmallFamilies_IsThatOfTheDefinition(LocusKind kind, bool isSexLinked)
    {
        var size = kind >= LocusKind.RankedSeries ? FamilySize.Least : FamilySize.Tiny;
        for (var seed = 1UL; seed <= 20; seed++)
        {
            var genetic = RandomCases.OneLocus(kind, isSexLinked, size, 1000 + seed);
            var said = await Toulbar2Run.LogLikelihoodAsync(genetic, TimeSpan.FromSeconds(20));
            var expected = Math.Log(Enumeration.Of(genetic).Likelihood);

            // Printed with 3 decimals.
            Assert.True(Math.Abs(said - expected) <= 0.00051, $"{said}, by the definition {expected}\n{genetic}");
        }
    }
}
