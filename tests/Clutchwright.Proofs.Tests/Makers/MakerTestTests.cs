using Clutchwright.Genetics.Crosses;
using Clutchwright.Genetics.Genotypes;
using Clutchwright.Genetics.Loci;
using Clutchwright.Proofs.Makers;
using CsCheck;

namespace Clutchwright.Proofs.Tests.Makers;

public class MakerTestTests
{
    /// <summary>A male with 18 carrier sons of 20 and 1 carrier daughter of 20 is 37 of 40 non-recombinant: r = 3/40 [computed].</summary>
    [Fact]
    public void Of_AMaleMaker_FindsHimAndHisFraction()
    {
        var test = MakerTest.Of([(new(18, 2, 1, 19), MakerPhase.Unknown)], SexSystem.XY);

        Assert.Equal(0.075, test.Linkage.Curve.Best, 1e-6);
        Assert.True(test.OnDiffering[0] > 0.9999999);
        Assert.True(test.Linkage.Curve.Most > 3.0);
        Assert.Equal(40, test.Linkage.Meioses);
    }

    [Fact]
    public void Of_TheOtherSexSystem_SwapsSonsAndDaughters()
    {
        var male = MakerTest.Of([(new(18, 2, 1, 19), MakerPhase.OnDiffering)], SexSystem.XY);
        var female = MakerTest.Of([(new(1, 19, 18, 2), MakerPhase.OnDiffering)], SexSystem.ZW);

        Assert.Equal(male.Linkage.Curve.Best, female.Linkage.Curve.Best);
        Assert.Equal(0.075, male.Linkage.Curve.Best, 1e-12);
    }

    [Fact]
    public void Of_AFemaleMakerToldSo_CountsTheOthersAsRecombinants() =>
        Assert.Equal(0.075, MakerTest.Of([(new(1, 19, 18, 2), MakerPhase.OnShared)], SexSystem.XY).Linkage.Curve.Best, 1e-12);

    [Fact]
    public void OnDiffering_WithoutYoung_IsEven() =>
        Assert.Equal(0.5, MakerTest.Of([(new(0, 0, 0, 0), MakerPhase.Unknown)], SexSystem.XY).OnDiffering[0], 1e-12);

    /// <summary>The LOD against the engine's own crosses: the chance of the young at r over that at 1/2, each way round.</summary>
    [Fact]
    public void Lod_OnAnyCounts_EqualsTheEnginesCrosses() => Gen.Select(Gen.Int[0, 5].Array[4], Gen.Double[0.01, 0.49], Gen.Bool).Sample((n, r, isXY) =>
    {
        var counts = new MakerCounts(n[0], n[1], n[2], n[3]);
        var system = isXY ? SexSystem.XY : SexSystem.ZW;
        var slow = Math.Log10((Chance(counts, system, r, true) + Chance(counts, system, r, false)) / 2.0 / Chance(counts, system, 0.5, true));

        var test = MakerTest.Of([(counts, MakerPhase.Unknown)], system);

        Assert.Equal(slow, test.Linkage.Lod(r), 1e-9);
    }, iter: 100);

    private static double Chance(MakerCounts counts, SexSystem system, double r, bool onDiffering)
    {
        var species = Species.From(new("made-up", system,
        [
            new("glow", "Glow", new Placement.SexLinked(RecombinationFraction.From(r)), [new("glow", "Glow", InheritanceMode.IncompleteDominant)]),
        ]));
        var carrierSex = system.Heterogametic();
        var mateSex = carrierSex == Sex.Male ? Sex.Female : Sex.Male;
        var carrier = Genotype.Wild(species, carrierSex).With(species.SexGroup, onDiffering ? new Diplotype(0, 1) : new Diplotype(1, 0));
        var mate = Genotype.Wild(species, mateSex);
        var cross = Cross.Of(carrierSex == Sex.Male ? Mating.Of(carrier, mate) : Mating.Of(mate, carrier));
        var chance = 1.0;
        foreach (var (sex, has, number) in new[]
        {
            (Sex.Male, true, counts.MalesWith), (Sex.Male, false, counts.MalesWithout),
            (Sex.Female, true, counts.FemalesWith), (Sex.Female, false, counts.FemalesWithout),
        })
        {
            var perEgg = cross.Genotypes()
                .Where(g => g.Genotype[species.SexGroup].IsWild != has && (g.Sex is null || g.Sex == sex))
                .Sum(g => g.Sex is null ? g.Chance.Value / 2.0 : g.Chance.Value);
            chance *= Math.Pow(perEgg, number);
        }

        return chance;
    }
}
