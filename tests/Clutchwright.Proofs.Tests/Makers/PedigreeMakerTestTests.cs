using Clutchwright.Genetics.Genotypes;
using Clutchwright.Genetics.Loci;
using Clutchwright.Pedigrees.Beliefs;
using Clutchwright.Proofs.Linkages;
using Clutchwright.Proofs.Makers;
using CsCheck;

namespace Clutchwright.Proofs.Tests.Makers;

public class PedigreeMakerTestTests
{
    /// <summary>One carrier of unknown phase with young of a mate without: the pedigree says just what the counts say.</summary>
    [Fact]
    public void Lod_OfOneCarriersYoung_IsThatOfTheCounts() => Gen.Select(Gen.Int[0, 4].Array[4], Gen.Bool).Where(p => p.Item1.Sum() > 0).Sample((n, isXY) =>
    {
        var system = isXY ? SexSystem.XY : SexSystem.ZW;
        var species = Glow(system, 0.2);
        var counts = new MakerCounts(n[0], n[1], n[2], n[3]);

        var test = PedigreeMakerTest.Of(species, Family(species, counts), "glow", Common(species), Cancel);
        var byCounts = MakerTest.Of([(counts, MakerPhase.Unknown)], system).Linkage;

        foreach (var r in new[] { 0.02, 0.1, 0.28, 0.4 })
        {
            Assert.Equal(byCounts.Lod(r), test.Curve.At(r), 1e-6);
        }

        Assert.Equal(byCounts.Curve.Most, test.Curve.Most, 1e-4);
        Assert.Equal(counts.Number, test.Meioses);
        Assert.True(test.IsExact);
    }, iter: 8);

    /// <summary>18 and 19 of 20 young each go with sex: 3 recombinants of 40 [computed, as by counts].</summary>
    [Fact]
    public void Best_OfAMaleMakersYoung_IsTheShareOfRecombinants()
    {
        var species = Glow(SexSystem.XY, 0.5);

        var curve = PedigreeMakerTest.Of(species, Family(species, new(18, 2, 1, 19)), "glow", Common(species), Cancel).Curve;

        Assert.Equal(0.075, curve.Best, 1e-4);
        Assert.True(double.IsNegativeInfinity(curve.At(0.0)));
        Assert.InRange(0.075, curve.Support.Low, curve.Support.High);
        Assert.Equal(curve.Most - 1.0, curve.At(curve.Support.High), 1e-2);
    }

    /// <summary>A grandsire that has it fixes the phase of his carrier son: what came from the sire rides on the Y.</summary>
    [Fact]
    public void Lod_WhereTheCarriersOwnSireHasIt_IsThatOfAKnownPhase()
    {
        var species = Glow(SexSystem.XY, 0.2);
        var grand = new RecordedAnimal("grandsire", Sex.Male, [Seen(species, Sex.Male, true)]);
        var family = Family(species, new(6, 1, 0, 5)).Select(a => a.Key == "carrier" ? a with { Sire = "grandsire", Dam = "granddam" } : a);
        RecordedAnimal[] animals = [grand, new("granddam", Sex.Female, [Seen(species, Sex.Female, false)]), .. family];

        var test = PedigreeMakerTest.Of(species, animals, "glow", Common(species), Cancel);

        // The grandsire may hold it on either strand; to a son he gave it on the Y, one meiosis without effect on the phase of the son.
        var known = new LinkageFamily(1, 12, LinkagePhase.Known);
        Assert.Equal(known.Lod(0.1), test.Curve.At(0.1), 1e-6);
        Assert.Equal(1.0 / 12.0, test.Curve.Best, 1e-4);
    }

    [Fact]
    public void Of_ALocusThatIsNotSexLinked_Throws()
    {
        var species = Species.From(new("made-up", SexSystem.XY, [new("glow", "Glow", new Placement.Autosomal(), [new("glow", "Glow", InheritanceMode.Recessive)])]));

        Assert.Throws<ArgumentException>(() => PedigreeMakerTest.Of(species, [], "glow", null, Cancel));
    }

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    private static Species Glow(SexSystem system, double r) => Species.From(new("made-up", system,
    [
        new("near", "Near", new Placement.SexLinked(RecombinationFraction.From(0.1)), [new("near", "Near", InheritanceMode.Recessive)]),
        new("glow", "Glow", new Placement.SexLinked(RecombinationFraction.From(r)), [new("glow", "Glow", InheritanceMode.IncompleteDominant)]),
    ]));

    private static BeliefSettings Common(Species species) => new()
    {
        Frequencies = new Dictionary<Allele, double> { [species.FindAllele("glow")!] = 0.1 },
    };

    private static Observation.Seen Seen(Species species, Sex sex, bool has) => new(
        has ? [species.FindLocus("glow")!.ExpressionOf(0, 1)] : [], GenotypeBelief.Wild(species, sex));

    private static RecordedAnimal[] Family(Species species, MakerCounts counts)
    {
        var carrierSex = species.SexSystem.Heterogametic();
        var mateSex = carrierSex.Opposite();
        var (sire, dam) = carrierSex == Sex.Male ? ("carrier", "mate") : ("mate", "carrier");
        var young = new List<RecordedAnimal>();
        Add(Sex.Male, true, counts.MalesWith);
        Add(Sex.Male, false, counts.MalesWithout);
        Add(Sex.Female, true, counts.FemalesWith);
        Add(Sex.Female, false, counts.FemalesWithout);
        return [new("carrier", carrierSex, [Seen(species, carrierSex, true)]), new("mate", mateSex, [Seen(species, mateSex, false)]), .. young];

        void Add(Sex sex, bool has, int number)
        {
            for (var i = 0; i < number; i++)
            {
                young.Add(new($"y{young.Count}", sex, [Seen(species, sex, has)]) { Sire = sire, Dam = dam });
            }
        }
    }
}
