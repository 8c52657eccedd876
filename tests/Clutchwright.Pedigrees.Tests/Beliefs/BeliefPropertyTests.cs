using Clutchwright.Genetics.Genotypes;
using Clutchwright.Genetics.Loci;
using Clutchwright.Pedigrees.Beliefs;
using Clutchwright.Pedigrees.Tests.Beliefs.Twin;
using Clutchwright.Testing;
using Clutchwright.Testing.Pedigrees;
using CsCheck;
using Xunit;

namespace Clutchwright.Pedigrees.Tests.Beliefs;

/// <summary>What holds of beliefs of any book.</summary>
public class BeliefPropertyTests
{
    [Fact]
    public void Of_AnyBook_SumsToOne() => BookGen.Larger.SampleCounted(
        500,
        book =>
        {
            var beliefs = book.Reckon();

            Assert.True(beliefs.IsExact);
            foreach (var (animal, group) in book.Animals.SelectMany(_ => book.Species.Groups, (a, g) => (a, g)))
            {
                Assert.Equal(1.0, beliefs[animal.Key].Genotype[group].Sum(w => w.Weight.Value), 1e-10);
            }
        });

    [Fact]
    public void Of_AnimalsInAnotherOrderUnderOtherNames_IsTheSame() => Gen.Select(BookGen.Larger, Gen.Int[0, int.MaxValue]).SampleCounted(
        500,
        drawn =>
        {
            var (book, seed) = drawn;
            var random = new Random(seed);
            var names = book.Animals.Select(a => a.Key).Zip(book.Animals.Select(a => $"n{a.Key}").OrderBy(_ => random.Next())).ToDictionary(p => p.First, p => p.Second);
            var other = book with
            {
                Animals = [.. book.Animals.OrderBy(_ => random.Next()).Select(a => a with
                {
                    Key = names[a.Key],
                    Sire = a.Sire is null ? null : names[a.Sire],
                    Dam = a.Dam is null ? null : names[a.Dam],
                    PossibleSires = [.. a.PossibleSires.Reverse().Select(s => names[s])],
                    SireWeights = [.. a.SireWeights.Reverse()],
                })],
            };

            var (one, two) = (book.Reckon(), other.Reckon());

            // Which of several smallest sets of clashing records is found, and what gives way, may depend on the order.
            if (one.Clashes.Count == 0)
            {
                Assert.Empty(two.Clashes);
                Assert.Equal(one.LogLikelihood, two.LogLikelihood, 1e-8);
                Assert.All(book.Animals, a => AssertSame(one[a.Key], two[names[a.Key]]));
            }
        });

    [Fact]
    public void Of_OneMoreYoungWithoutRecords_ChangesNothing() => BookGen.Larger.SampleCounted(
        500,
        book =>
        {
            var before = book.Reckon();
            var parents = book.Animals.Where(a => a.Count == 1).ToArray();
            if (parents.Length < 2 || RoleOf(book, parents[0], Sex.Male) != Sex.Male || RoleOf(book, parents[^1], Sex.Female) != Sex.Female)
            {
                return;
            }

            var more = book with { Animals = [.. book.Animals, new RecordedAnimal("more", null, []) { Sire = parents[0].Key, Dam = parents[^1].Key }] };
            var after = more.Reckon();

            if (parents[0].Sex is not null && parents[^1].Sex is not null && SameKin(book, parents[0].Key, parents[^1].Key))
            {
                Assert.Equal(before.LogLikelihood, after.LogLikelihood, 1e-8);
                Assert.All(book.Animals, a => AssertSame(before[a.Key], after[a.Key]));
            }
        });

    [Fact]
    public void Of_WithAnEarlierAnswer_IsAsFromNothing() => Gen.Select(BookGen.Larger, Gen.Int[0, int.MaxValue]).SampleCounted(
        300,
        drawn =>
        {
            var (book, seed) = drawn;
            var changed = book.Animals.ToArray();
            var at = seed % changed.Length;
            changed[at] = changed[at] with { Observations = [.. changed[at].Observations.Skip(1), .. book.Animals[(at + 1) % changed.Length].Observations] };
            var other = book with { Animals = changed };

            var (fresh, kept) = (other.Reckon(), other.Reckon(book.Reckon()));

            Assert.Equal(fresh.LogLikelihood, kept.LogLikelihood);
            Assert.All(book.Animals, a => AssertSame(fresh[a.Key], kept[a.Key]));
            Assert.Equal(fresh.Clashes.SelectMany(c => c.Records), kept.Clashes.SelectMany(c => c.Records));
        });

    [Fact]
    public void Of_WithAnEarlierAnswerThatWasRead_IsAsFromNothing() => Gen.Select(BookGen.Larger, Gen.Int[0, int.MaxValue]).SampleCounted(
        500,
        drawn =>
        {
            var (book, seed) = drawn;
            var changed = book.Animals.ToList();
            var at = seed % changed.Count;
            changed[at] = changed[at] with { Observations = [.. changed[at].Observations.Skip(1), .. book.Animals[(at + 1) % changed.Count].Observations] };
            var dam = changed.Find(a => a.Count == 1 && RoleOf(book, a, Sex.Female) == Sex.Female);
            if (seed % 3 > 0 && dam is not null)
            {
                changed[at] = seed % 3 == 1 ? book.Animals[at] : changed[at];
                changed.Insert(seed % (changed.Count + 1), new RecordedAnimal("more", null, changed[^1].Observations) { Dam = dam.Key });
            }

            var other = book with { Animals = changed };
            var earlier = book.Reckon();
            Assert.All(book.Animals.Where((_, i) => i % 4 != seed % 5), a => Assert.NotNull(earlier[a.Key]));

            var (fresh, kept) = (other.Reckon(), other.Reckon(earlier));

            Assert.Equal(fresh.LogLikelihood, kept.LogLikelihood);
            foreach (var animal in changed)
            {
                var (expected, actual) = (fresh[animal.Key], kept[animal.Key]);
                Assert.All(book.Species.Groups, g => Assert.Equal(expected.Genotype[g], actual.Genotype[g]));
                Assert.Equal(expected.Genotype.Sex, actual.Genotype.Sex);
                Assert.Equal(expected.Spoken, actual.Spoken);
                Assert.Equal(expected.NotCounted, actual.NotCounted);
                Assert.Equal(expected.StandardErrors, actual.StandardErrors);
            }
        });

    [Fact]
    public void Of_StockWithOneMoreHatchling_TakesOverWhatItDoesNotTouch()
    {
        var stock = KeptStock.Grow(301, 1);
        RecordedAnimal[] first = [.. stock.Animals.Take(300)];
        var before = PedigreeBeliefs.Of(stock.Species, first, cancel: TestContext.Current.CancellationToken);
        Assert.All(first, a => Assert.NotNull(before[a.Key]));

        var after = PedigreeBeliefs.Of(stock.Species, stock.Animals, before: before, cancel: TestContext.Current.CancellationToken);

        var fresh = PedigreeBeliefs.Of(stock.Species, stock.Animals, cancel: TestContext.Current.CancellationToken);
        Assert.All(stock.Animals, a => AssertSame(fresh[a.Key], after[a.Key]));
        Assert.InRange(first.Count(a => ReferenceEquals(before[a.Key], after[a.Key])), 1, 299);
    }

    [Fact]
    public void Of_ACountSplitIntoSingleYoung_IsTheSame() => BookGen.Larger.Where(b => b.Animals.Any(a => a.Count > 1)).SampleCounted(
        200,
        book =>
        {
            var split = book with
            {
                Animals = [.. book.Animals.SelectMany(a => Enumerable.Range(0, a.Count).Select(i => a with
                {
                    Key = i == 0 ? a.Key : $"{a.Key}{i}",
                    Count = 1,
                    Clutch = a.Clutch ?? (a.Count > 1 ? $"of {a.Key}" : null),
                }))],
            };

            var (one, two) = (book.Reckon(), split.Reckon());

            if (one.Clashes.Count == 0)
            {
                Assert.Equal(one.LogLikelihood, two.LogLikelihood, 1e-8);
                Assert.All(book.Animals, a => AssertSame(one[a.Key], two[a.Key]));
            }
        });

    [Fact]
    public void Together_OfAnyTwo_IsSymmetricWithTheSingleBeliefsAsMargins() => BookGen.Larger.SampleCounted(
        300,
        book =>
        {
            var beliefs = book.Reckon();
            var (a, b) = (book.Animals[0].Key, book.Animals[^1].Key);
            if (a == b)
            {
                return;
            }

            foreach (var group in book.Species.Groups)
            {
                var joint = beliefs.Together(group, a, b).ToDictionary(w => w.Value, w => w.Weight.Value);
                var turned = beliefs.Together(group, b, a).ToDictionary(w => (w.Value.Second, w.Value.First), w => w.Weight.Value);
                AssertClose(joint, turned);
                AssertClose(Margin(joint, p => p.First), beliefs[a].Genotype[group].ToDictionary(w => w.Value, w => w.Weight.Value));
                AssertClose(Margin(joint, p => p.Second), beliefs[b].Genotype[group].ToDictionary(w => w.Value, w => w.Weight.Value));
            }
        });

    [Fact]
    public void Of_TwoBooksOfOneSpeciesInOne_IsEachByItself() => BookGen.Pairs.SampleCounted(
        500,
        pair =>
        {
            var (one, two) = pair;
            var both = one with { Animals = [.. one.Animals, .. two.Animals.Select(a => a with
            {
                Key = $"2{a.Key}",
                Sire = a.Sire is null ? null : $"2{a.Sire}",
                Dam = a.Dam is null ? null : $"2{a.Dam}",
                PossibleSires = [.. a.PossibleSires.Select(s => $"2{s}")],
                Clutch = a.Clutch is null ? null : $"2{a.Clutch}",
            })] };

            var (first, second, together) = (one.Reckon(), two.Reckon(), both.Reckon());

            Assert.All(one.Animals, a => AssertSame(first[a.Key], together[a.Key]));
            Assert.All(two.Animals, a => AssertSame(second[a.Key], together[$"2{a.Key}"]));
        });

    private static Sex? RoleOf(SampleBook book, RecordedAnimal animal, Sex otherwise) => animal.Sex
        ?? (book.Animals.Any(a => a.Sire == animal.Key || a.PossibleSires.Contains(animal.Key)) ? Sex.Male
            : book.Animals.Any(a => a.Dam == animal.Key) ? Sex.Female : otherwise);

    // Young of two kins would make them one, of which the founders of both then give way together.
    private static bool SameKin(SampleBook book, string first, string second) =>
        TwinNode.Kins(book.Animals).Exists(k => k.Exists(n => n.Name == first) && k.Exists(n => n.Name == second));

    private static void AssertSame(AnimalBelief expected, AnimalBelief actual)
    {
        foreach (var group in expected.Genotype.Species.Groups)
        {
            AssertClose(
                expected.Genotype[group].ToDictionary(w => w.Value, w => w.Weight.Value), actual.Genotype[group].ToDictionary(w => w.Value, w => w.Weight.Value));
        }

        Assert.Equal(expected.NotCounted, actual.NotCounted);
    }

    private static Dictionary<Diplotype, double> Margin(
        Dictionary<(Diplotype First, Diplotype Second), double> joint, Func<(Diplotype First, Diplotype Second), Diplotype> own) =>
        joint.GroupBy(p => own(p.Key)).ToDictionary(g => g.Key, g => g.Sum(p => p.Value));

    private static void AssertClose<T>(Dictionary<T, double> expected, Dictionary<T, double> actual)
        where T : notnull
    {
        foreach (var key in expected.Keys.Union(actual.Keys))
        {
            Assert.Equal(expected.GetValueOrDefault(key), actual.GetValueOrDefault(key), 1e-9);
        }
    }
}
