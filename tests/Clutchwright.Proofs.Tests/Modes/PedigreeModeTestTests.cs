using Clutchwright.Genetics.Loci;
using Clutchwright.Proofs.Modes;

namespace Clutchwright.Proofs.Tests.Modes;

public class PedigreeModeTestTests
{
    /// <summary>Unrelated parents: the pedigree says what the clutches given one by one say. Different rules of integration, so within 1e-3.</summary>
    [Fact]
    public void Of_UnrelatedParents_EqualsTheClutchesOneByOne()
    {
        var none = new TraitCounts(0, 0);
        TraitClutch[] clutches =
        [
            new("a", TraitLook.Shows, "b", TraitLook.Normal, new(2, 2), new(3, 1), none),
            new("a", TraitLook.Shows, "c", TraitLook.Normal, new(1, 2), new(1, 1), new(1, 0)),
        ];

        var pedigree = PedigreeModeTest.Of(Pedigree(clutches), SexSystem.XY, null, Cancel);
        var byClutch = TraitModeTest.Of(clutches, SexSystem.XY);

        foreach (var evidence in byClutch.Evidence)
        {
            var same = pedigree.Evidence.Single(e => e.Hypothesis == evidence.Hypothesis);
            Assert.True(
                double.IsNegativeInfinity(evidence.LogLikelihood) ? double.IsNegativeInfinity(same.LogLikelihood) : Math.Abs(evidence.LogLikelihood - same.LogLikelihood) < 1e-3,
                $"{evidence} {same}");
        }

        Assert.Equal(1.0, pedigree.Evidence.Sum(e => e.Posterior), 1e-9);
    }

    /// <summary>A visual, her normal young, and visuals of these young among each other: recessive, which clutches one by one could not tell so well.</summary>
    [Fact]
    public void Of_VisualsInTheSecondGeneration_IsRecessive()
    {
        TraitAnimal[] animals =
        [
            new("v", Sex.Female, TraitLook.Shows), new("n", Sex.Male, TraitLook.Normal),
            .. Enumerable.Range(0, 6).Select(i => new TraitAnimal($"f{i}", i % 2 == 0 ? Sex.Male : Sex.Female, TraitLook.Normal) { Sire = "n", Dam = "v" }),
            .. Enumerable.Range(0, 8).Select(i => new TraitAnimal($"g{i}", null, i < 2 ? TraitLook.Shows : TraitLook.Normal) { Sire = "f0", Dam = "f1" }),
        ];

        var test = PedigreeModeTest.Of(animals, SexSystem.XY, null, Cancel);

        Assert.Equal(InheritanceMode.Recessive, test.Evidence[0].Hypothesis.Mode);
        Assert.Equal(0.0, test.Evidence.Single(e => e.Hypothesis == new TraitHypothesis(TraitPlacement.Autosomal, InheritanceMode.Dominant)).Posterior);
    }

    /// <summary>Two visible genes of one locus: an animal with both gives one or the other to every young, never both nor neither.</summary>
    [Fact]
    public void Of_AnAnimalWithBothThatGivesOneToEach_IsAnAlleleOfTheKnownLocus()
    {
        TraitAnimal[] animals =
        [
            new("both", Sex.Male, TraitLook.Shows) { OtherLook = TraitLook.Shows }, new("mate", Sex.Female, TraitLook.Normal),
            .. Enumerable.Range(0, 12).Select(i => i % 2 == 0
                ? new TraitAnimal($"y{i}", Sex.Male, TraitLook.Shows) { Sire = "both", Dam = "mate" }
                : new TraitAnimal($"y{i}", Sex.Female, TraitLook.Normal) { Sire = "both", Dam = "mate", OtherLook = TraitLook.Shows }),
        ];

        var mode = PedigreeModeTest.Of(animals[..10], SexSystem.ZW, InheritanceMode.IncompleteDominant, Cancel);
        var allelism = PedigreeModeTest.OfAllelism(animals, InheritanceMode.IncompleteDominant, InheritanceMode.IncompleteDominant, SexSystem.XY, Cancel);

        Assert.True(mode.Evidence[0].IsOneLocus);
        Assert.True(allelism.Evidence[0].IsOneLocus);
        // Each of 12 eggs is one or the other with 1 against 1/2.
        Assert.InRange(allelism.Evidence[0].LogLikelihood - allelism.Evidence[1].LogLikelihood, (12.0 * Math.Log(2.0)) - 1.0, (12.0 * Math.Log(2.0)) + 1.0);
    }

    /// <summary>A visual of one recessive to a visual of another, all young normal: two loci, and one locus cannot be.</summary>
    [Fact]
    public void OfAllelism_VisualsThatComplement_AreTwoLoci()
    {
        TraitAnimal[] animals =
        [
            new("a", Sex.Male, TraitLook.Shows), new("b", Sex.Female, TraitLook.Normal) { OtherLook = TraitLook.Shows },
            new("y", null, TraitLook.Normal) { Sire = "a", Dam = "b" },
        ];

        var test = PedigreeModeTest.OfAllelism(animals, InheritanceMode.Recessive, InheritanceMode.Recessive, SexSystem.XY, Cancel);

        Assert.False(test.Evidence[0].IsOneLocus);
        Assert.Equal(1.0, test.Evidence[0].Posterior, 1e-12);
    }

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    private static TraitAnimal[] Pedigree(IReadOnlyList<TraitClutch> clutches)
    {
        var animals = new Dictionary<string, TraitAnimal>(StringComparer.Ordinal);
        foreach (var clutch in clutches)
        {
            animals[clutch.Sire] = new(clutch.Sire, Sex.Male, clutch.SireLook);
            animals[clutch.Dam] = new(clutch.Dam, Sex.Female, clutch.DamLook);
            foreach (var (sex, counts) in new[] { ((Sex?)Sex.Male, clutch.Males), (Sex.Female, clutch.Females), (null, clutch.Unsexed) })
            {
                foreach (var look in Enum.GetValues<TraitLook>())
                {
                    for (var i = 0; i < counts.Of(look); i++)
                    {
                        animals[$"y{animals.Count}"] = new($"y{animals.Count}", sex, look) { Sire = clutch.Sire, Dam = clutch.Dam };
                    }
                }
            }
        }

        return [.. animals.Values];
    }
}
