using Clutchwright.Genetics.Crosses;
using Clutchwright.Genetics.Genotypes;
using Clutchwright.Genetics.Loci;
using Clutchwright.Genetics.Numbers;
using Clutchwright.Genetics.Wants;
using Clutchwright.Testing;
using CsCheck;

namespace Clutchwright.Genetics.Tests.Crosses;

/// <summary>What must hold of every cross, whatever the numbers are.</summary>
public class CrossPropertyTests
{
    private const int Scenarios = 250;

    [Fact]
    public void Looks_AnyScenario_SumToSurvivalAtEveryStage() => ScenarioGen.Small.Sample(
        s =>
        {
            var cross = Cross.Of(s.Parents.Mating);

            foreach (var stage in Enum.GetValues<AgeStage>())
            {
                var looks = cross.Looks(stage).ToArray();
                Assert.Equal(cross.Survival.Value, looks.Sum(l => l.Chance.Value), 1e-11);
                Assert.Equal(cross.Survival.IsImpossible ? 0.0 : 1.0, looks.Sum(l => l.ChanceOfHatchling.Value), 1e-11);
            }

            Assert.Equal(1.0, cross.Genotypes().Sum(g => g.Chance.Value), 1e-11);
            Assert.Equal(cross.Survival.Value, cross.Genotypes().Sum(g => g.Chance.Value * g.Survival.Value), 1e-11);
        },
        iter: Scenarios);

    [Fact]
    public void Looks_TakenLazily_AreTheFirstOfAll() => Gen.Select(ScenarioGen.Small, Gen.Int[1, 20]).Sample(
        (s, count) =>
        {
            var cross = Cross.Of(s.Parents.Mating);

            var all = cross.Looks(s.Stage).Select(l => l.Chance.Value).OrderDescending().Take(count).ToArray();
            var first = cross.Looks(s.Stage).Take(count).Select(l => l.Chance.Value).ToArray();

            Assert.Equal(all.Length, first.Length);
            Assert.All(all.Zip(first), p => Assert.Equal(p.First, p.Second, 1e-12));
        },
        iter: Scenarios);

    [Fact]
    public void Cross_LociAndAllelesInAnotherOrder_IsTheSame() => Gen.Select(ScenarioGen.Small, Gen.Int[0, int.MaxValue]).Sample(
        (s, order) =>
        {
            // Another order of loci, and of alleles within each.
            var random = new Random(order);
            var definition = s.Sample.Definition;
            var loci = definition.Loci.Select(l => l with { Alleles = Shuffled(l.Alleles, random) }).ToArray();
            var known = Species.From(definition with { Loci = loci, Masks = [] });
            var other = Species.From(definition with
            {
                Loci = Shuffled(loci, random),
                Masks = definition.Masks.Select(m => m with { By = m.By.Select(id => Renamed(id, known)).ToArray() }).ToArray(),
            });
            var parents = SampleParents.Jointly(s.Parents.Cases
                .Select(c => new Weighted<(Genotype, Genotype)>((Moved(c.Value.Sire, other), Moved(c.Value.Dam, other)), c.Weight))
                .ToArray());

            var (before, after) = (Looks(s.Parents.Mating, s.Stage), Looks(parents.Mating, s.Stage));

            Same(before, after);
            Assert.Equal(
                Cross.Of(s.Parents.Mating).ChanceOf(s.Want.Want).Value,
                Cross.Of(parents.Mating).ChanceOf(Moved(s.Want.Want, other)).Value,
                1e-11);
        },
        iter: Scenarios);

    [Fact]
    public void Cross_SexSystemMirrored_IsTheSameWithTheSexesSwapped() => ScenarioGen.Small.Sample(
        s =>
        {
            var definition = s.Sample.Definition;
            var mirrored = Species.From(definition with
            {
                SexSystem = definition.SexSystem == SexSystem.XY ? SexSystem.ZW : SexSystem.XY,
                Dangers = definition.Dangers.Select(d => d with { Sex = d.Sex?.Opposite() }).ToArray(),
            });
            var parents = SampleParents.Jointly(s.Parents.Cases
                .Select(c => new Weighted<(Genotype, Genotype)>((Moved(c.Value.Dam, mirrored, Sex.Male), Moved(c.Value.Sire, mirrored, Sex.Female)), c.Weight))
                .ToArray());

            var before = Looks(s.Parents.Mating, s.Stage);
            var after = Looks(parents.Mating, s.Stage);

            Same(before, after.ToDictionary(l => (l.Key.Seen, l.Key.Sex?.Opposite()), l => l.Value));
        },
        iter: Scenarios);

    [Fact]
    public void Cross_FreeSexLinkedLocus_EqualsAnAutosomalOne() => ScenarioGen.Small.Sample(
        s =>
        {
            // The first locus alone on the sex chromosomes, free of the region; all others as they are, but off them.
            var definition = s.Sample.Definition;
            var autosomal = definition with
            {
                Loci = definition.Loci
                    .Select((l, i) => i == 0 || l.Placement is Placement.SexLinked ? l with { Placement = new Placement.Autosomal() } : l)
                    .ToArray(),
            };
            var sexLinked = Species.From(autosomal with
            {
                Loci = autosomal.Loci
                    .Select((l, i) => i == 0 ? l with { Placement = new Placement.SexLinked(RecombinationFraction.Free) } : l)
                    .ToArray(),
            });
            var (before, after) = (Retold(Species.From(autosomal)), Retold(sexLinked));

            var expected = AlleleTable(before);
            var actual = AlleleTable(after);

            Assert.Equal(expected.Count, actual.Count);
            Assert.All(expected, e => Assert.Equal(e.Value, actual[e.Key], 1e-11));

            Cross Retold(Species species) => Cross.Of(SampleParents.Jointly(s.Parents.Cases
                .Select(c => new Weighted<(Genotype, Genotype)>((Moved(c.Value.Sire, species), Moved(c.Value.Dam, species)), c.Weight))
                .ToArray()).Mating);
        },
        iter: Scenarios);

    [Fact]
    public void Cross_ReciprocalOnAutosomes_IsTheSame() => ScenarioGen.Small.Where(s => s.Sample.Species.SexGroup.Loci.Count == 0).Sample(
        s =>
        {
            var species = s.Sample.Species;
            var swapped = SampleParents.Jointly(s.Parents.Cases
                .Select(c => new Weighted<(Genotype, Genotype)>((Moved(c.Value.Dam, species, Sex.Male), Moved(c.Value.Sire, species, Sex.Female)), c.Weight))
                .ToArray());

            Same(Looks(s.Parents.Mating, s.Stage), Looks(swapped.Mating, s.Stage));
        },
        iter: Scenarios);

    [Fact]
    public void Want_LocusThatHasNothingToDoWithIt_ChangesNothing() => Gen.Select(ScenarioGen.Small, Gen.Int[0, 2], Gen.Int[0, 2]).Sample(
        (s, ofSire, ofDam) =>
        {
            var definition = s.Sample.Definition;
            var larger = Species.From(definition with
            {
                Loci = [.. definition.Loci, Describe.Free("further", Describe.Incomplete("further-one"))],
            });
            var further = larger.Loci[^1];
            var parents = SampleParents.Jointly(s.Parents.Cases
                .Select(c => new Weighted<(Genotype, Genotype)>((With(c.Value.Sire, ofSire), With(c.Value.Dam, ofDam)), c.Weight))
                .ToArray());

            var before = Cross.Of(s.Parents.Mating);
            var after = Cross.Of(parents.Mating);

            Assert.Equal(before.Survival.Value, after.Survival.Value, 1e-12);
            Assert.Equal(before.ChanceOf(s.Want.Want).Value, after.ChanceOf(Moved(s.Want.Want, larger)).Value, 1e-12);
            Assert.Equal(
                before.SharedChanceOf(s.Want.Want).AtLeastOne(5).Value,
                after.SharedChanceOf(Moved(s.Want.Want, larger)).AtLeastOne(5).Value,
                1e-11);
            for (var i = 0; i < larger.Dangers.Count; i++)
            {
                Assert.Equal(before.ChanceOf(s.Sample.Species.Dangers[i]).Value, after.ChanceOf(larger.Dangers[i]).Value, 1e-12);
            }

            Genotype With(Genotype genotype, int copies) => Moved(genotype, larger).With(further, Math.Min(copies, 1), copies / 2);
        },
        iter: Scenarios);

    // A union of alternatives is never more than their sum and never less than the largest of them.
    [Fact]
    public void Want_Union_LiesBetweenItsLargestPartAndTheSum() => ScenarioGen.Small.Sample(
        s =>
        {
            var cross = Cross.Of(s.Parents.Mating);
            var parts = s.Want.Want.Alternatives.Select(a => cross.ChanceOf(new Want([a])).Value).ToArray();

            var union = cross.ChanceOf(s.Want.Want).Value;

            Assert.InRange(union, parts.Max() - 1e-12, Math.Min(cross.Survival.Value, parts.Sum()) + 1e-12);
        },
        iter: Scenarios);

    // The look's share in each case of the parents, over the cases, is its share; what it hides is conditional on the look.
    [Fact]
    public void Look_SharedAndHidden_AreSharesOfTheLook() => ScenarioGen.Small.Sample(
        s =>
        {
            foreach (var look in Cross.Of(s.Parents.Mating).Looks(s.Stage).Take(20))
            {
                Assert.Equal(look.Chance.Value, look.Shared().PerEgg.Value, 1e-12);
                Assert.All(look.Hidden.GroupBy(h => h.Locus), g => Assert.InRange(g.Sum(h => h.Chance.Value), 0.0, 1.0 + 1e-12));
            }
        },
        iter: Scenarios);

    /// <summary>The next generation of a pair taken jointly: every son against every daughter in every case of the pair.</summary>
    [Fact]
    public void OfSiblings_AnyPair_EqualsAllPairsOfYoungWrittenOut() => ScenarioGen.Small
        .Where(s => s.Parents.Cases.All(c => Cross.Of(Mating.Of(c.Value.Sire, c.Value.Dam)).Genotypes().Take(13).Count() < 13))
        .Sample(
            s =>
            {
                var species = s.Sample.Species;
                var pairs = s.Parents.Cases.SelectMany(c =>
                {
                    var young = Cross.Of(Mating.Of(c.Value.Sire, c.Value.Dam)).Genotypes().ToArray();
                    return from son in Of(young, Sex.Male)
                           from daughter in Of(young, Sex.Female)
                           select new Weighted<(Genotype, Genotype)>(
                               (son.Genotype, daughter.Genotype), Probability.Rounded(c.Weight.Value * son.Share * daughter.Share));
                }).ToArray();

                var siblings = Cross.Of(Mating.OfSiblings(s.Parents.Mating));
                var written = Cross.Of(Mating.Jointly(pairs));

                Assert.Equal(written.ChanceOf(s.Want.Want).Value, siblings.ChanceOf(s.Want.Want).Value, 1e-11);
                Assert.Equal(
                    written.SharedChanceOf(s.Want.Want).AtLeastOne(4).Value, siblings.SharedChanceOf(s.Want.Want).AtLeastOne(4).Value, 1e-11);
                Assert.Equal(written.Survival.Value, siblings.Survival.Value, 1e-11);

                // Where both sexes are put together a genotype stands for either.
                IEnumerable<(Genotype Genotype, double Share)> Of(GenotypeOutcome[] young, Sex sex)
                {
                    var own = young.Where(g => g.Sex is null || g.Sex == sex).ToArray();
                    var total = own.Sum(g => g.Chance.Value);
                    return own.Select(g => (Moved(g.Genotype, species, sex), g.Chance.Value / total));
                }
            },
            iter: 100);

    // Sex and the unordered pairs of alleles at every locus, with their chance among eggs laid.
    private static Dictionary<string, double> AlleleTable(Cross cross)
    {
        var table = new Dictionary<string, double>(StringComparer.Ordinal);
        foreach (var outcome in cross.Genotypes())
        {
            var pairs = string.Join(' ', cross.Mating.Species.Loci.Select(l =>
            {
                var (a, b) = outcome.Genotype.AllelesAt(l);
                return $"{Math.Min(a, b)}/{Math.Max(a, b)}";
            }));
            foreach (var sex in outcome.Sex is { } own ? [own] : Enum.GetValues<Sex>())
            {
                var key = $"{sex} {pairs}";
                table[key] = table.GetValueOrDefault(key) + (outcome.Sex is null ? outcome.Chance.Value / 2.0 : outcome.Chance.Value);
            }
        }

        return table;
    }

    private static Dictionary<(string Seen, Sex? Sex), double> Looks(Mating mating, AgeStage stage) => Cross.Of(mating)
        .Looks(stage)
        .ToDictionary(l => (string.Join(' ', l.Seen.Select(e => Name(e.Id)).Order(StringComparer.Ordinal)), l.Sex), l => l.Chance.Value);

    // A form put together of two alleles is named by both, in the order of the description.
    private static string Name(string id) => string.Join('/', id.Split('/').Order(StringComparer.Ordinal));

    private static string Renamed(string id, Species species) =>
        species.FindExpression(id) is null ? string.Join('/', id.Split('/').Reverse()) : id;

    private static void Same(Dictionary<(string Seen, Sex? Sex), double> expected, Dictionary<(string Seen, Sex? Sex), double> actual)
    {
        Assert.Equal(expected.Keys.Order(), actual.Keys.Order());
        Assert.All(expected, e => Assert.Equal(e.Value, actual[e.Key], 1e-11));
    }

    // The same alleles on the same strands in a species that has the same loci in another order or place.
    private static Genotype Moved(Genotype genotype, Species species, Sex? sex = null)
    {
        var (first, second) = SampleParents.Strands(genotype);
        return Describe.Animal(species, sex ?? genotype.Sex, genotype.Species.Loci
            .Where(l => first[l.Index] > 0 || second[l.Index] > 0)
            .Select(l => $"{l.Alleles[first[l.Index]].Id}/{l.Alleles[second[l.Index]].Id}")
            .ToArray());
    }

    private static Want Moved(Want want, Species species) => new(want.Alternatives
        .Select(a => new WantedGenotype(a.Sex, a.Loci.Select(l => Moved(l, species)).ToArray()))
        .ToArray());

    private static WantedPairs Moved(WantedPairs wanted, Species species)
    {
        var own = wanted.Locus;
        var locus = species.FindLocus(own.Id)!;
        var pairs = from a in own.Alleles
                    from b in own.Alleles
                    where wanted.Allows(a.Index, b.Index, ordered: true)
                    select (a, b);
        var moved = pairs.Select(p => (Index(p.a), Index(p.b))).ToArray();

        // By strand: one pair, which counts only where strands are told apart.
        return moved.Length == 1 && !wanted.Allows(pairs.First().a.Index, pairs.First().b.Index, ordered: false)
            ? WantedPairs.ByStrand(locus, moved[0].Item1, moved[0].Item2)
            : WantedPairs.Of(locus, moved);

        int Index(Allele allele) => locus.Alleles.Single(a => a.Id == allele.Id).Index;
    }

    private static T[] Shuffled<T>(IReadOnlyList<T> items, Random random)
    {
        var shuffled = items.ToArray();
        random.Shuffle(shuffled);
        return shuffled;
    }
}
