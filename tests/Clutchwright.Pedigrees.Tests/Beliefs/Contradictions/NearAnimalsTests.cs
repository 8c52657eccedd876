using Clutchwright.Genetics.Genotypes;
using Clutchwright.Genetics.Loci;
using Clutchwright.Pedigrees.Beliefs;
using Clutchwright.Pedigrees.Beliefs.Contradictions;
using Clutchwright.Testing.Stocks;
using Xunit;

namespace Clutchwright.Pedigrees.Tests.Beliefs.Contradictions;

/// <summary>Which animals of a large book the causes of a contradiction are weighed among.</summary>
public class NearAnimalsTests(ITestOutputHelper output)
{
    private const int Sires = 16;
    private const int Kept = 200;
    private const int LargeBooks = 12;

    [Fact]
    public void Of_BookOfFourHundred_IsTheWholeBook()
    {
        RecordedAnimal[] animals = [.. BredStock.Of(BredStock.Snake, 1, females: 10, males: 3, least: 400).Animals.Take(ClashCauses.WholeBook)];

        Assert.Same(animals, NearAnimals.Of(animals, ["a300"], Sires));
    }

    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    public void Of_LargerBook_IsTheNearestTwoHundredAndTheMalesWithTheMostYoung(int seed)
    {
        var animals = BredStock.Of(BredStock.Snake, seed, females: 15, males: 4, least: 900).Animals;
        string[] keys = [animals.Last(a => a.Dam is not null).Key, animals[450].Key];

        var near = NearAnimals.Of(animals, keys, Sires);

        // By definition: fewest steps over parents and young; whole rings of equal distance, and of the last ring as many as there is room for.
        var steps = Steps(animals, keys);
        var found = near.Select(a => a.Key).ToHashSet(StringComparer.Ordinal);
        var whole = Enumerable.Range(0, steps.Values.Max() + 1).Last(r => steps.Count(s => s.Value <= r) <= Kept);
        Assert.All(steps.Where(s => s.Value <= whole), s => Assert.Contains(s.Key, found));
        var males = animals.Where(a => a.Sex == Sex.Male && animals.Any(y => y.Sire == a.Key))
            .OrderByDescending(a => animals.Count(y => y.Sire == a.Key)).ThenBy(a => a.Key, StringComparer.Ordinal).Take(Sires).Select(a => a.Key).ToArray();
        Assert.All(males, m => Assert.Contains(m, found));
        Assert.All(found.Except(males), k => Assert.True(steps[k] <= whole + 1, k));
        Assert.InRange(near.Count, Kept, Kept + Sires);

        // In the order of the book, and a parent that is left out counts as unknown.
        Assert.Equal(animals.Where(a => found.Contains(a.Key)).Select(a => a.Key), near.Select(a => a.Key));
        Assert.All(near, a =>
        {
            var own = animals.First(b => b.Key == a.Key);
            Assert.Equal(own.Sire is { } sire && found.Contains(sire) ? sire : null, a.Sire);
            Assert.Equal(own.Dam is { } dam && found.Contains(dam) ? dam : null, a.Dam);
            Assert.Equal(own.Observations, a.Observations);
        });
    }

    [Fact]
    public void Of_PossibleSiresOfWhichOneIsFar_AreUnknown()
    {
        RecordedAnimal[] animals =
        [
            new("S", Sex.Male, []),
            new("D", Sex.Female, []),
            new("far", Sex.Male, []),
            new("y0", Sex.Female, []) { PossibleSires = ["S", "far"], Dam = "D" },
            .. Enumerable.Range(1, 350).Select(i => new RecordedAnimal($"y{i}", Sex.Female, []) { Sire = "S", Dam = "D" }),
            .. Enumerable.Range(10, 20).SelectMany(i => new RecordedAnimal[]
            {
                new($"m{i}", Sex.Male, []), new($"n{i}", Sex.Female, []),
                new($"p{i}", Sex.Male, []) { Sire = $"m{i}", Dam = $"n{i}" }, new($"q{i}", Sex.Male, []) { Sire = $"m{i}", Dam = $"n{i}" },
            }),
        ];

        var near = NearAnimals.Of(animals, ["D"], Sires).ToDictionary(a => a.Key, StringComparer.Ordinal);

        Assert.False(near.ContainsKey("far"));
        Assert.Equal((null, "D", 0), (near["y0"].Sire, near["y0"].Dam, near["y0"].PossibleSires.Count));
        Assert.Equal(("S", "D"), (near["y1"].Sire, near["y1"].Dam));
        Assert.Equal(Kept + Sires, near.Count);
    }

    /// <summary>Twelve books of 900 animals, each with one look entered that neither parent can give: the cause found first is about that animal.</summary>
    [Fact]
    public void Of_OneImpossibleEntryInALargeBook_NamesTheAnimalFirst()
    {
        var (named, clock) = (0, System.Diagnostics.Stopwatch.StartNew());
        for (var seed = 1; seed <= LargeBooks; seed++)
        {
            var drop = BredStock.Of(BredStock.Snake, seed, females: 15, males: 4, least: 900);
            var (animals, wrong) = Misread(drop, seed);
            var beliefs = PedigreeBeliefs.Of(drop.Species, animals, cancel: TestContext.Current.CancellationToken);
            var clash = Assert.Single(beliefs.Clashes);

            var causes = ClashCauses.Of(beliefs, clash, CauseRates.Default, TestContext.Current.CancellationToken);

            Assert.True(causes.IsNearOnly);
            Assert.Equal(1.0, causes.Causes.Sum(c => c.Posterior.Value), 1e-9);
            named += causes.Causes[0].Animal == wrong || causes.Causes[0].Clutch.Contains(wrong) ? 1 : 0;
        }

        output.WriteLine($"{named} of {LargeBooks} named first; {clock.Elapsed.TotalSeconds / LargeBooks:0.00} s a book, its beliefs included.");
        Assert.True(named >= LargeBooks - 1, $"{named} of {LargeBooks}");
    }

    // A young of the middle of the book that shows Yellow, which neither parent does.
    private static (RecordedAnimal[] Animals, string Wrong) Misread(BredStock drop, int seed)
    {
        var yellow = drop.Species.FindLocus("yellow")!;
        var young = drop.Animals.Where(a => a.Dam is not null && Copies(a.Sire!) + Copies(a.Dam!) + Copies(a.Key) == 0).Skip(200 + seed).First();
        var seen = (Observation.Seen)young.Observations[0];
        var genotype = seen.Reading.MostLikely().With(yellow, 0, 1);
        var wrong = new Observation.Seen([.. seen.Forms, yellow.ExpressionOf(0, 1)], GenotypeBelief.Certain(genotype));
        return ([.. drop.Animals.Select(a => a == young ? a with { Observations = [wrong] } : a)], young.Key);

        int Copies(string key)
        {
            var (a, b) = drop.TruthOf(key).AllelesAt(yellow);
            return a + b;
        }
    }

    private static Dictionary<string, int> Steps(IReadOnlyList<RecordedAnimal> animals, string[] keys)
    {
        var steps = keys.ToDictionary(k => k, _ => 0, StringComparer.Ordinal);
        for (var r = 0; steps.Any(s => s.Value == r); r++)
        {
            foreach (var a in animals)
            {
                foreach (var parent in new[] { a.Sire, a.Dam }.OfType<string>())
                {
                    if (steps.GetValueOrDefault(a.Key, -1) == r)
                    {
                        steps.TryAdd(parent, r + 1);
                    }

                    if (steps.GetValueOrDefault(parent, -1) == r)
                    {
                        steps.TryAdd(a.Key, r + 1);
                    }
                }
            }
        }

        return steps;
    }
}
