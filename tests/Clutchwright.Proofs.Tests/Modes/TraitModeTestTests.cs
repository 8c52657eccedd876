using Clutchwright.Genetics.Crosses;
using Clutchwright.Genetics.Genotypes;
using Clutchwright.Genetics.Loci;
using Clutchwright.Proofs.Modes;
using CsCheck;

namespace Clutchwright.Proofs.Tests.Modes;

public class TraitModeTestTests
{
    private static readonly TraitCounts None = new(0, 0);

    private static readonly Gen<TraitClutch> Clutches = Gen.Select(Gen.Int[0, 1], Gen.Int[0, 1], Gen.Int[0, 3].Array[9]).Select((sire, dam, n) => new TraitClutch(
        $"s{sire}", sire == 0 ? TraitLook.Normal : TraitLook.Shows, $"d{dam}", dam == 0 ? TraitLook.Shows : TraitLook.Normal,
        new(n[0], n[1], n[2] / 3), new(n[3], n[4], n[5] / 3), new(n[6], n[7], n[8] / 3)));

    /// <summary>Andalusian fowl: blue × blue gives 1 black, 2 blue, 1 splashed [Punnett1911], here named by copies of splash.</summary>
    [Fact]
    public void Of_BlueByBlue_IsIncompleteDominant()
    {
        var test = TraitModeTest.Of(
        [
            new("a", TraitLook.Shows, "b", TraitLook.Shows, new(6, 11, 5), new(5, 12, 6), None),
            new("a", TraitLook.Shows, "c", TraitLook.Normal, new(5, 6), new(6, 5), None),
        ], SexSystem.XY);

        Assert.Equal(new(TraitPlacement.Autosomal, InheritanceMode.IncompleteDominant), test.Evidence[0].Hypothesis);
        Assert.Equal(1.0, test.Evidence.Sum(e => e.Posterior), 1e-12);
        Assert.Equal(0.0, test.Evidence.Single(e => e.Hypothesis == new TraitHypothesis(TraitPlacement.Autosomal, InheritanceMode.Dominant)).Posterior);
    }

    [Fact]
    public void Of_VisualsOfNormalParentsInAQuarter_IsRecessive()
    {
        var test = TraitModeTest.Of(
        [
            new("a", TraitLook.Normal, "b", TraitLook.Normal, new(9, 3), new(9, 3), None),
            new("v", TraitLook.Shows, "w", TraitLook.Shows, new(0, 4), new(0, 5), None),
        ], SexSystem.XY);

        Assert.Equal(new(TraitPlacement.Autosomal, InheritanceMode.Recessive), test.Evidence[0].Hypothesis);
        // A dominant one cannot come of two normal parents.
        Assert.Equal(0.0, test.Evidence.Single(e => e.Hypothesis == new TraitHypothesis(TraitPlacement.Autosomal, InheritanceMode.Dominant)).Posterior);
    }

    [Fact]
    public void Of_SonsThatShowAndDaughtersThatDoNot_IsSexLinked()
    {
        var test = TraitModeTest.Of([new("a", TraitLook.Shows, "b", TraitLook.Normal, new(0, 12), new(12, 0), None)], SexSystem.XY);
        var withRecombinants = TraitModeTest.Of([new("a", TraitLook.Shows, "b", TraitLook.Normal, new(1, 23), new(22, 2), None)], SexSystem.XY);

        Assert.Equal(TraitPlacement.FullySexLinked, test.Evidence[0].Hypothesis.Placement);
        Assert.Equal(TraitPlacement.PartlySexLinked, withRecombinants.Evidence[0].Hypothesis.Placement);
    }

    [Fact]
    public void Of_OneOddAnimalInManyFromNormals_MayNotBeInheritedAtAll()
    {
        var test = TraitModeTest.Of([new("a", TraitLook.Shows, "b", TraitLook.Normal, new(20, 0), new(20, 1), None), new("a", TraitLook.Shows, "c", TraitLook.Normal, new(19, 1), new(21, 0), None)], SexSystem.XY);

        Assert.Equal(TraitPlacement.NotInherited, test.Evidence[0].Hypothesis.Placement);
    }

    /// <summary>With no inheritance the marginal likelihood is the beta function: n normal of n gives 1/(n + 1).</summary>
    [Fact]
    public void LogLikelihood_NotInherited_IsTheBetaFunction()
    {
        var test = TraitModeTest.Of([new("a", TraitLook.Normal, "b", TraitLook.Normal, new(7, 2), None, None)], SexSystem.XY);

        // 7! 2! / 10!
        Assert.Equal(Math.Log(5040.0 * 2.0 / 3628800.0), test.Evidence.Single(e => e.Hypothesis.Mode is null).LogLikelihood, 1e-12);
    }

    /// <summary>What parents pass on, against the engine's own crosses.</summary>
    [Fact]
    public void Young_OfAnyParents_EqualsTheEnginesCross() => Gen.Select(Gen.Int[0, 3], Gen.Int[0, 3], Gen.Bool, Gen.Bool, Gen.Double[0.0, 0.5]).Sample((sire, dam, isXY, isSexLinked, r) =>
    {
        var system = isXY ? SexSystem.XY : SexSystem.ZW;
        var species = Species.From(new("made-up", system,
        [
            new(
                "glow",
                "Glow",
                isSexLinked ? new Placement.SexLinked(RecombinationFraction.From(r)) : new Placement.Autosomal(),
                [new("glow", "Glow", InheritanceMode.IncompleteDominant)]),
        ]));
        var locus = species.Loci[0];
        Genotype Parent(int state, Sex sex) => Genotype.Wild(species, sex).With(locus, state & 1, state >> 1);
        var cross = Cross.Of(Mating.Of(Parent(sire, Sex.Male), Parent(dam, Sex.Female)));
        var meiosis = new TraitMeiosis(new(TraitPlacement.PartlySexLinked, InheritanceMode.IncompleteDominant), system, isSexLinked, r);

        foreach (var sex in new[] { Sex.Male, Sex.Female })
        {
            var looks = new double[3];
            foreach (var g in cross.Genotypes().Where(g => g.Sex is null || g.Sex == sex))
            {
                var (first, second) = g.Genotype.AllelesAt(locus);
                looks[first + second] += (g.Sex is null ? 1.0 : 2.0) * g.Chance.Value;
            }

            Assert.All(looks.Zip(meiosis.Young(sire, dam, sex)), p => Assert.Equal(p.First, p.Second, 1e-12));
        }
    }, iter: 300);

    /// <summary>The likelihood from its definition: every state of every parent, every clutch multiplied out.</summary>
    [Fact]
    public void Log_OnAnyClutches_EqualsSummingOverEveryParent() => Gen.Select(Clutches.Array[1, 3], Gen.Double[0.01, 0.5], Gen.Double[0.0, 0.5], Gen.Int[0, 5]).Sample((clutches, q, r, which) =>
    {
        var hypothesis = TraitHypothesis.All[which < 3 ? which : which + 3];
        var meiosis = new TraitMeiosis(hypothesis, SexSystem.XY, hypothesis.Placement != TraitPlacement.Autosomal, r);
        var families = TraitFamily.Of(clutches);
        var fast = families.Sum(f => f.Log(meiosis, f.Tables(meiosis), q));

        var parents = clutches.SelectMany(c => new[] { (Name: c.Sire, Look: c.SireLook), (Name: c.Dam, Look: c.DamLook) }).Distinct().ToArray();
        var slow = 0.0;
        for (var code = 0; code < Math.Pow(4, parents.Length); code++)
        {
            var states = parents.Select((p, i) => (p.Name, State: (code >> (2 * i)) & 3)).ToDictionary(p => p.Name, p => p.State, StringComparer.Ordinal);
            var chance = parents.Aggregate(1.0, (product, p) => product * meiosis.Founder(p.Look, q)[states[p.Name]]);
            foreach (var c in clutches)
            {
                var (males, females) = (meiosis.Young(states[c.Sire], states[c.Dam], Sex.Male), meiosis.Young(states[c.Sire], states[c.Dam], Sex.Female));
                for (var look = 0; look < 3; look++)
                {
                    chance *= Math.Pow(males[look], c.Males.Of((TraitLook)look)) * Math.Pow(females[look], c.Females.Of((TraitLook)look))
                        * Math.Pow((males[look] + females[look]) / 2.0, c.Unsexed.Of((TraitLook)look));
                }
            }

            slow += chance;
        }

        // The twin multiplies plain numbers, of which none is nearer to 0 than e^-745.
        Assert.True(slow == 0.0 ? fast < -700.0 : Math.Abs(Math.Log(slow) - fast) < 1e-9, $"{Math.Log(slow)} {fast}");
    }, iter: 300);

    [Fact]
    public void Of_ClutchesInAnotherOrder_IsTheSame()
    {
        TraitClutch[] clutches =
        [
            new("a", TraitLook.Shows, "b", TraitLook.Normal, new(3, 4), new(4, 2), new(1, 1)),
            new("a", TraitLook.Shows, "c", TraitLook.Shows, new(1, 4), new(2, 5), None),
        ];

        var one = TraitModeTest.Of(clutches, SexSystem.ZW);
        var other = TraitModeTest.Of([.. clutches.Reverse()], SexSystem.ZW);

        Assert.All(one.Evidence.Zip(other.Evidence), p => Assert.Equal(p.First.LogLikelihood, p.Second.LogLikelihood, 1e-9));
    }

    [Fact]
    public void Of_AParentThatShowsTwoThings_Throws() => Assert.Throws<ArgumentException>(() => TraitModeTest.Of(
    [
        new("a", TraitLook.Shows, "b", TraitLook.Normal, None, None, new(1, 1)),
        new("a", TraitLook.Normal, "c", TraitLook.Normal, None, None, new(1, 1)),
    ], SexSystem.XY));
}
