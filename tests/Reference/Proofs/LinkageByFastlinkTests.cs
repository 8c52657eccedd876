using Clutchwright.Genetics.Loci;
using Clutchwright.Proofs.Linkages;
using Clutchwright.Reference.Tests.Cases;
using Clutchwright.Reference.Tests.Fastlink;

namespace Clutchwright.Reference.Tests.Proofs;

/// <summary>LOD scores from counts, against FASTLINK's from whole families.</summary>
public sealed class LinkageByFastlinkTests
{
    private const double Tolerance = 1e-5;

    [Theory]
    [InlineData(0, 6)]
    [InlineData(1, 6)]
    [InlineData(2, 11)]
    [InlineData(5, 15)]
    public async Task Lod_OfATestCross_IsThatOfTheFamily(int recombinants, int meioses)
    {
        await CompareAsync(TestCross(recombinants, meioses, isPhaseKnown: true), new LinkageFamily(recombinants, meioses, LinkagePhase.Known).Lod);
        await CompareAsync(TestCross(recombinants, meioses, isPhaseKnown: false), new LinkageFamily(recombinants, meioses, LinkagePhase.Unknown).Lod);
    }

    [Theory]
    [InlineData(9, 2, 1, 3, true)]
    [InlineData(6, 3, 3, 1, true)]
    [InlineData(6, 4, 4, 1, false)]
    [InlineData(5, 4, 5, 0, false)]
    public async Task Lod_OfAnIntercross_IsThatOfTheFamily(int both, int first, int second, int neither, bool isCoupling) => await CompareAsync(
        Intercross([both, first, second, neither], isCoupling), IntercrossTest.Of([both, first, second, neither], isCoupling).Curve.At);

    // FASTLINK's lowest number stands for a likelihood of 0.
    private static async Task CompareAsync(GeneticCase genetic, Func<double, double> lod)
    {
        var said = await FastlinkRun.LodsAsync(genetic);
        Assert.Equal(10, said.Count(s => s.Theta < 0.46));
        Assert.All(said, s => Assert.True(
            double.IsNegativeInfinity(lod(s.Theta)) ? s.Lod < -20 : Math.Abs(s.Lod - lod(s.Theta)) < Tolerance,
            $"LOD at {s.Theta}: {lod(s.Theta)}, by FASTLINK {s.Lod}\n{genetic}"));
    }

    // A double het of two loci that show one copy and two, put to an animal without; its phase is known by its parents.
    private static GeneticCase TestCross(int recombinants, int meioses, bool isPhaseKnown)
    {
        var locus = new LocusModel([0.5, 0.5], (a, b) => a + b);
        var family = new FamilyBuilder([locus, locus]);
        var sire = isPhaseKnown
            ? family.Young(Sex.Male, family.Founder(Sex.Male, 2, 2), family.Founder(Sex.Female, 0, 0), 1, 1)
            : family.Founder(Sex.Male, 1, 1);
        var dam = family.Founder(Sex.Female, 0, 0);
        for (var i = 0; i < meioses; i++)
        {
            var first = i % 2;
            family.Young(Sex.Female, sire, dam, first, i < recombinants ? 1 - first : first);
        }

        return family.Build($"test cross, {recombinants} of {meioses}");
    }

    // Two double hets of recessives. Each has one parent that shows both (coupling), or one parent for each (repulsion).
    private static GeneticCase Intercross(int[] counts, bool isCoupling)
    {
        var locus = new LocusModel([0.9, 0.1], (a, _) => a);
        var family = new FamilyBuilder([locus, locus]);
        var sire = DoubleHet(Sex.Male);
        var dam = DoubleHet(Sex.Female);
        for (var kind = 0; kind < counts.Length; kind++)
        {
            for (var i = 0; i < counts[kind]; i++)
            {
                family.Young(Sex.Male, sire, dam, kind / 2, kind % 2);
            }
        }

        return family.Build($"intercross {string.Join(' ', counts)}");

        int DoubleHet(Sex sex) => isCoupling
            ? family.Young(sex, family.Founder(Sex.Male, 1, 1), family.Founder(Sex.Female), 0, 0)
            : family.Young(sex, family.Founder(Sex.Male, 1, 0), family.Founder(Sex.Female, 0, 1), 0, 0);
    }
}
