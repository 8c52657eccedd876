using CsCheck;
using Xunit;

namespace Clutchwright.Pedigrees.Tests;

public sealed class PedigreeTests
{
    /// <summary>Animals 0..n-1, each with parents drawn from all of them, so that loops are common.</summary>
    private static readonly Gen<PedigreeAnimal[]> AnyAnimals =
        Gen.Int[1, 12].SelectMany(n => Gen.Select(Gen.Int[-n, n - 1], Gen.Int[-n, n - 1], Gen.Int[-3 * n, n - 1]).Array[n]
            .Select(parents => parents.Select((p, i) => new PedigreeAnimal(
                Key(i)!,
                p.Item3 < 0 ? Key(p.Item1) : null,
                Key(p.Item2),
                p.Item3 < 0 ? null : [Key(Math.Max(0, p.Item1))!, Key(p.Item3)!])).ToArray()));

    /// <summary>Animals whose parents have a smaller number, in a random order: a real pedigree.</summary>
    private static readonly Gen<PedigreeAnimal[]> RealAnimals =
        Gen.Int[1, 30].SelectMany(n => Gen.Select(Gen.Int[-9, n], Gen.Int[-9, n]).Array[n]
            .Select(parents => parents.Select((p, i) => new PedigreeAnimal(
                Key(i)!, p.Item1 < i ? Key(p.Item1) : null, p.Item2 < i ? Key(p.Item2) : null)).ToArray()))
        .SelectMany(Gen.Shuffle);

    [Fact]
    public void Of_RealPedigreeInAnyOrder_PutsParentsBeforeOffspring() => RealAnimals.Sample(animals =>
    {
        var pedigree = Pedigree.Of(animals);

        Assert.Equal(animals.Select(a => a.Key).Order(StringComparer.Ordinal), pedigree.Animals.Select(a => a.Key).Order(StringComparer.Ordinal));
        for (var position = 0; position < pedigree.Count; position++)
        {
            var animal = pedigree.Animals[position];
            Assert.Equal(position, pedigree.PositionOf(animal.Key));
            Assert.True(pedigree.SireOf(position) < position && pedigree.DamOf(position) < position);
            Assert.Equal(animal.Sire, pedigree.SireOf(position) == Pedigree.NotKnown ? null : pedigree.Animals[pedigree.SireOf(position)].Key);
            Assert.Equal(animal.Dam, pedigree.DamOf(position) == Pedigree.NotKnown ? null : pedigree.Animals[pedigree.DamOf(position)].Key);
        }
    });

    [Fact]
    public void FindLoop_AnyAnimals_AgreesWithReachability() => AnyAnimals.Sample(animals =>
    {
        var loop = Pedigree.FindLoop(animals);

        Assert.Equal(SomeoneReachesThemselves(animals), loop.Count > 0);
        for (var i = 0; i < loop.Count; i++)
        {
            var animal = animals.Single(a => a.Key == loop[i]);
            Assert.Contains(loop[(i + 1) % loop.Count], animal.NamedParents());
        }
    });

    [Fact]
    public void Of_AnyAnimals_ThrowsExactlyWhereFindLoopFinds() => AnyAnimals.Sample(animals =>
    {
        var loop = Pedigree.FindLoop(animals);

        if (loop.Count == 0)
        {
            Assert.Equal(animals.Length, Pedigree.Of(animals).Count);
        }
        else
        {
            Assert.Equal(loop, Assert.Throws<PedigreeLoopException>(() => Pedigree.Of(animals)).Animals);
        }
    });

    [Fact]
    public void Of_GrandparentAsOffspring_ThrowsAndNamesTheLoop()
    {
        PedigreeAnimal[] animals = [new("A", dam: "B"), new("B", sire: "C"), new("C", sire: "A"), new("D", sire: "C")];

        var exception = Assert.Throws<PedigreeLoopException>(() => Pedigree.Of(animals));

        Assert.Equal(["A", "B", "C"], exception.Animals);
        Assert.Equal("A", exception.Animal);
        Assert.Equal("A is its own ancestor: A, child of B, child of C, child of A.", exception.Message);
    }

    [Fact]
    public void Of_OwnParent_Throws()
    {
        var exception = Assert.Throws<PedigreeLoopException>(() => Pedigree.Of([new("A", sire: "A")]));

        Assert.Equal(["A"], exception.Animals);
    }

    [Fact]
    public void Of_PossibleSireDescendsFromOffspring_Throws()
    {
        PedigreeAnimal[] animals = [new("X"), new("A", possibleSires: ["X", "B"]), new("B", sire: "A")];

        Assert.Equal(["A", "B"], Assert.Throws<PedigreeLoopException>(() => Pedigree.Of(animals)).Animals);
    }

    [Fact]
    public void Of_PossibleSires_ComeFirstAndAreGivenByPosition()
    {
        var pedigree = Pedigree.Of([new("A", possibleSires: ["X", "Y"], dam: "Z"), new("Y"), new("X"), new("Z")]);

        var animal = pedigree.PositionOf("A");
        Assert.Equal(["X", "Y"], pedigree.PossibleSiresOf(animal).Select(p => pedigree.Animals[p].Key));
        Assert.Equal(Pedigree.NotKnown, pedigree.SireOf(animal));
        Assert.Equal(3, animal);
    }

    [Fact]
    public void Of_SameAnimalTwice_Throws()
    {
        var exception = Assert.Throws<PedigreeKeyException>(() => Pedigree.Of([new("A"), new("A")]));

        Assert.Equal(("A", null), (exception.Animal, exception.Parent));
    }

    [Fact]
    public void Of_ParentNotListed_Throws()
    {
        var exception = Assert.Throws<PedigreeKeyException>(() => Pedigree.Of([new("A", dam: "B")]));

        Assert.Equal(("A", "B"), (exception.Animal, exception.Parent));
    }

    [Fact]
    public void Of_LongLine_DoesNotExhaustTheStack()
    {
        const int Generations = 200_000;
        var line = Enumerable.Range(0, Generations).Select(i => new PedigreeAnimal(Key(i)!, sire: i + 1 < Generations ? Key(i + 1) : null));

        Assert.Equal(Generations - 1, Pedigree.Of(line).PositionOf(Key(0)!));
    }

    [Fact]
    public void PedigreeAnimal_SireAndPossibleSires_Throws() =>
        Assert.Throws<ArgumentException>(() => new PedigreeAnimal("A", sire: "B", possibleSires: ["C", "D"]));

    /// <summary>The slow twin: Warshall's closure of "is a named parent of".</summary>
    private static bool SomeoneReachesThemselves(PedigreeAnimal[] animals)
    {
        var n = animals.Length;
        var reaches = new bool[n, n];
        for (var i = 0; i < n; i++)
        {
            foreach (var parent in animals[i].NamedParents())
            {
                reaches[i, Array.FindIndex(animals, a => a.Key == parent)] = true;
            }
        }

        for (var k = 0; k < n; k++)
        {
            for (var i = 0; i < n; i++)
            {
                for (var j = 0; j < n; j++)
                {
                    reaches[i, j] |= reaches[i, k] && reaches[k, j];
                }
            }
        }

        return Enumerable.Range(0, n).Any(i => reaches[i, i]);
    }

    private static string? Key(int number) => number < 0 ? null : $"a{number}";
}
