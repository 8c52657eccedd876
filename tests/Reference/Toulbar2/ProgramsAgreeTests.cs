using Clutchwright.Reference.Tests.Cases;
using Clutchwright.Reference.Tests.Fastlink;

namespace Clutchwright.Reference.Tests.Toulbar2;

/// <summary>Families too large to write out: the two programs, which have nothing in common, say the same.</summary>
public sealed class ProgramsAgreeTests
{
    [Theory]
    [InlineData(LocusKind.Recessive, false)]
    [InlineData(LocusKind.Incomplete, true)]
    [InlineData(LocusKind.AnySeries, false)]
    public async Task LogLikelihood_OfFamiliesWithLoops_IsTheSameByBothPrograms(LocusKind kind, bool isSexLinked)
    {
        for (var seed = 1UL; seed <= 10; seed++)
        {
            var genetic = RandomCases.OneLocus(kind, isSexLinked, seed % 2 == 0 ? FamilySize.Middle : FamilySize.Looped, seed);
            var risks = await FastlinkRun.RisksAsync(genetic, 0, 1, [0]);
            var said = await Toulbar2Run.LogLikelihoodAsync(genetic, TimeSpan.FromSeconds(20));

            // The one prints 3 decimals, the other leaves whole powers of two out.
            Assert.True(risks.DistanceTo(said) <= 0.0015, $"{risks.DistanceTo(said)} of a power of two apart\n{genetic}");
        }
    }
}
