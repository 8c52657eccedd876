using Clutchwright.Genetics.Clutches;
using Clutchwright.Genetics.Crosses;
using Clutchwright.Genetics.Genotypes;
using Clutchwright.Genetics.Loci;
using Clutchwright.Genetics.Numbers;
using Clutchwright.Planning.Simulation;
using CsCheck;

namespace Clutchwright.Planning.Tests.Simulation;

public class ClutchTests
{
    private static readonly double[] Eggs = [0.0, 0.02, 0.04, 0.1, 0.18, 0.2, 0.2, 0.14, 0.08, 0.04];

    [Fact]
    public void AliasTable_AnyWeights_ComeUpAsOftenAsTheySay()
    {
        var random = new CountedRandom(12);
        for (var round = 0; round < 40; round++)
        {
            var weights = Enumerable.Range(0, 1 + random.Below(12)).Select(_ => random.Below(4) == 0 ? 0.0 : 5.0 * random.NextShare()).Append(1.0).ToArray();
            var table = AliasTable.Of(weights);
            var counts = new long[weights.Length];
            for (var i = 0; i < 20_000; i++)
            {
                counts[table.Draw(random)]++;
            }

            ChiSquare.Agrees([.. weights.Select(w => w / weights.Sum())], counts);
        }
    }

    [Fact]
    public void AliasTable_WrongWeights_Throws()
    {
        Assert.Throws<ArgumentException>(() => AliasTable.Of([]));
        Assert.Throws<ArgumentException>(() => AliasTable.Of([0.0]));
        Assert.Throws<ArgumentException>(() => AliasTable.Of([1.0, -0.1]));
        Assert.Throws<ArgumentException>(() => AliasTable.Of([double.NaN]));
    }

    // A species with free, linked and sex-linked loci and a lethal pair; every class against the exact odds of the cross.
    [Fact]
    public void Draw_AnyCross_GivesEachClassAsOftenAsItsExactChance()
    {
        var random = new CountedRandom(13);
        for (var round = 0; round < 40; round++)
        {
            var cross = CompiledCross.Of(CrossGen.Animal(Sex.Male, random), CrossGen.Animal(Sex.Female, random));
            var counts = new long[cross.Classes.Count + 1];
            for (var i = 0; i < 20_000; i++)
            {
                counts[cross.Draw(random) is var place && place < 0 ? counts.Length - 1 : place]++;
            }

            var dies = cross.Survival > 1.0 - 1e-12 ? 0.0 : 1.0 - cross.Survival;
            ChiSquare.Agrees([.. cross.Classes.Select(c => c.Chance * c.Survival), dies], counts);
        }
    }

    // The same odds again, drawn group by group.
    [Fact]
    public void Hatches_AnyPair_GivesEachGenotypeAsOftenAsItsExactChance()
    {
        var species = CompiledSpecies.Of(CrossGen.Species, CrossGen.Species.Groups);
        var random = new CountedRandom(14);
        for (var round = 0; round < 40; round++)
        {
            var (sire, dam) = (CrossGen.Animal(Sex.Male, random), CrossGen.Animal(Sex.Female, random));
            var cross = CompiledCross.Of(sire, dam);
            var places = cross.Classes.Select((c, i) => (Animal: species.Compile(c.Genotype), i)).ToDictionary(c => c.Animal, c => c.i);
            var counts = new long[cross.Classes.Count + 1];
            var (packedSire, packedDam) = (species.Compile(sire), species.Compile(dam));
            for (var i = 0; i < 20_000; i++)
            {
                counts[species.Hatches(packedSire, packedDam, random, out var young) ? places[young] : counts.Length - 1]++;
            }

            var dies = cross.Survival > 1.0 - 1e-12 ? 0.0 : 1.0 - cross.Survival;
            ChiSquare.Agrees([.. cross.Classes.Select(c => c.Chance * c.Survival), dies], counts);
        }
    }

    [Fact]
    public void Compile_AnyGenotype_UnpacksTheSame() => CrossGen.Certain.Sample(
        pair =>
        {
            var species = CompiledSpecies.Of(CrossGen.Species, CrossGen.Species.Groups);

            Assert.Equal(pair.Sire, species.GenotypeOf(species.Compile(pair.Sire)));
            Assert.All(CrossGen.Species.Groups, g => Assert.Equal(pair.Dam[g], species.At(species.Compile(pair.Dam), g)));
        },
        iter: 200);

    [Fact]
    public void Compile_AlleleThatIsNotInPlay_Throws()
    {
        var species = CompiledSpecies.Of(CrossGen.Species, []);
        var het = Genotype.Wild(CrossGen.Species, Sex.Male).With(CrossGen.Species.FindLocus("free")!, 0, 1);

        Assert.Throws<ArgumentException>(() => species.Compile(het));
        Assert.True(species.At(species.Compile(Genotype.Wild(CrossGen.Species, Sex.Male)), CrossGen.Species.FindLocus("free")!.Group).IsWild);
    }

    [Fact]
    public void Of_AnyCross_HasTheClassesOfTheExactCross() => CrossGen.Certain.Sample(
        pair =>
        {
            var cross = CompiledCross.Of(pair.Sire, pair.Dam);
            var exact = Cross.Of(Mating.Of(pair.Sire, pair.Dam));

            Assert.Equal(1.0, cross.Classes.Sum(c => c.Chance), 1e-12);
            Assert.Equal(exact.Survival.Value, cross.Survival, 1e-12);
            Assert.Equal(cross.Classes.Count, cross.Classes.Select(c => c.Genotype).Distinct().Count());
            Assert.Equal(0.5, cross.Classes.Where(c => c.Genotype.Sex == Sex.Male).Sum(c => c.Chance), 1e-12);
            foreach (var outcome in exact.Genotypes())
            {
                var sum = cross.Classes.Where(c => (outcome.Sex is null || c.Genotype.Sex == outcome.Sex)
                    && pair.Sire.Species.Groups.All(g => c.Genotype[g] == outcome.Genotype[g])).Sum(c => c.Chance);
                Assert.Equal(outcome.Chance.Value, sum, 1e-12);
            }
        },
        iter: 100);

    [Fact]
    public void CrossTable_EqualGenotypes_AreOneCrossAndOneObject()
    {
        var species = CrossGen.Species;
        var table = new CrossTable();
        var locus = species.FindLocus("free")!;

        var first = table.Of(Genotype.Wild(species, Sex.Male).With(locus, 0, 1), Genotype.Wild(species, Sex.Female));
        var second = table.Of(Genotype.Wild(species, Sex.Male).With(locus, 1, 0), Genotype.Wild(species, Sex.Female));

        Assert.Same(first, second);
        Assert.All(first.Classes, c => Assert.Same(c.Genotype, table.Known(Genotype.Wild(species, c.Genotype.Sex).With(locus, c.Genotype.AllelesAt(locus).First, c.Genotype.AllelesAt(locus).Second))));
    }

    [Fact]
    public void Of_TooManyClasses_Throws() => Assert.Throws<InvalidOperationException>(
        () => CompiledCross.Of(Genotype.Wild(CrossGen.Species, Sex.Male), Genotype.Wild(CrossGen.Species, Sex.Female), mostClasses: 1));

    [Fact]
    public void Draw_GoodEggs_AreTheExactDistribution()
    {
        var (laying, fertility, hatching) = (Probability.From(0.8), ClutchRate.Of(0.9, 0.1), ClutchRate.Of(0.85, 0.2));
        var sampler = ClutchSampler.Of(Eggs, laying, fertility, hatching);
        var exact = GoodEggs.Of(Eggs, laying, fertility, hatching);
        var (good, laid) = (new long[exact.Chances.Count], new long[Eggs.Length]);
        var random = new CountedRandom(11);
        for (var i = 0; i < 200_000; i++)
        {
            var draw = sampler.Draw(random);
            good[draw.Good]++;
            laid[draw.Eggs]++;
            Assert.True(draw.Good <= draw.Fertile && draw.Fertile <= draw.Eggs);
        }

        ChiSquare.Agrees([.. exact.Chances.Select(c => c.Value)], good);
        ChiSquare.Agrees([.. Eggs.Select((p, n) => (0.8 * p) + (n == 0 ? 0.2 : 0.0))], laid);
    }

    [Fact]
    public void Draw_OfExactGoodEggs_HatchesThemAll()
    {
        var species = CrossGen.Species;
        var cross = CompiledCross.Of(Genotype.Wild(species, Sex.Male), Genotype.Wild(species, Sex.Female));
        var hatched = new List<int> { 99 };

        var draw = ClutchSampler.Of(GoodEggs.Exactly(4)).Draw(cross, new(1), hatched);

        Assert.Equal(new ClutchDraw(4, 4, 4), draw);
        Assert.Equal(4, hatched.Count);
        Assert.All(hatched, h => Assert.InRange(h, 0, 1));
    }

    // Three seasons of het x het for a visual of each sex, with replanning in between: the same on 1, 2 and 3 threads.
    [Fact]
    public void Run_AnyNumberOfThreads_IsTheSame()
    {
        var one = Programme(1);

        Assert.Equal(one, Programme(2));
        Assert.Equal(one, Programme(3));

        static int[] Programme(int threads)
        {
            var species = CrossGen.Species;
            var locus = species.FindLocus("free")!;
            var table = new CrossTable();
            var clutch = ClutchSampler.Of(Eggs, Probability.From(0.8), ClutchRate.Of(0.9, 0.1), ClutchRate.Of(0.85, 0.2));
            return Replicates.Run(1000, 42, threads, (random, number) =>
            {
                var (sire, dam) = (Genotype.Wild(species, Sex.Male).With(locus, 0, 1), Genotype.Wild(species, Sex.Female).With(locus, 0, 1));
                var (hatched, visuals) = (new List<int>(), number % 2);
                for (var season = 0; season < 3; season++)
                {
                    var cross = table.Of(sire, dam);
                    _ = clutch.Draw(cross, random, hatched);
                    foreach (var young in hatched.Select(h => cross.Classes[h].Genotype).Where(g => g.AllelesAt(locus) == (1, 1)))
                    {
                        visuals++;
                        (sire, dam) = young.Sex == Sex.Male ? (young, dam) : (sire, young);
                    }
                }

                return visuals;
            }, TestContext.Current.CancellationToken);
        }
    }

    [Fact]
    public void Sum_AnyNumberOfThreads_IsTheSameToTheLastBit()
    {
        var one = Total(1);

        Assert.Equal(one, Total(2));
        Assert.Equal(one, Total(3));
        Assert.InRange(one, 0.5 - (6 * 0.003), 0.5 + (6 * 0.003));

        static double Total(int threads) => Replicates.Sum(
            10_000, 7, threads, () => new double[1], (sum, random, _) => sum[0] += random.NextShare() / 10_000.0, (sum, other) => sum[0] += other[0])[0];
    }

    [Fact]
    public void Run_Cancelled_Throws() => Assert.Throws<OperationCanceledException>(
        () => Replicates.Run(10, 1, 1, (_, i) => i, new(canceled: true)));
}
