using Clutchwright.Genetics.Numbers;
using Clutchwright.Pedigrees.Kinship;
using Clutchwright.Testing.Pedigrees;
using CsCheck;
using Xunit;

namespace Clutchwright.Pedigrees.Tests.Kinship;

public sealed class KinshipPropertyTests
{
    [Fact]
    public void Of_AnyPedigree_LiesBetweenNothingAndOneAndIsSymmetric() => KinshipCase.Any(40, doubt: true).Sample(pedigree =>
    {
        var reckoner = KinshipReckoner.Of(Descent.Of(pedigree.ToPedigree(), pedigree.Settings()));

        for (var i = 0; i < pedigree.Count; i++)
        {
            Assert.InRange(reckoner.Inbreeding[i], 0.0, 1.0);
            Assert.Equal((1.0 + reckoner.Inbreeding[i]) / 2.0, reckoner.Between(i, i), 1e-13);
            Assert.InRange(reckoner.Between(i, 0), 0.0, 1.0);
            Assert.Equal(reckoner.Between(i, 0), reckoner.Between(0, i), 1e-13);
        }
    });

    [Fact]
    public void Of_AnyOrderAndNames_IsTheSame() => Gen.Select(KinshipCase.Any(25, doubt: true), Gen.Int[0, int.MaxValue]).Sample((pedigree, seed) =>
    {
        var settings = pedigree.Settings();
        var plain = Descent.Of(pedigree.ToPedigree(), settings);
        var animals = pedigree.Animals().ToArray();
        new Random(seed).Shuffle(animals);
        var shuffled = Descent.Of(
            Pedigree.Of(animals.Select(a => new PedigreeAnimal(New(a.Key), Name(a.Sire), Name(a.Dam), [.. a.PossibleSires.Select(New)]))),
            new KinshipSettings
            {
                SireWeights = settings.SireWeights.ToDictionary(w => New(w.Key), w => w.Value),
                Clutches = settings.Clutches.ToDictionary(c => New(c.Key), c => c.Value),
            });
        var (one, other) = (KinshipReckoner.Of(plain), KinshipReckoner.Of(shuffled));

        for (var i = 0; i < pedigree.Count; i++)
        {
            var j = shuffled.Pedigree!.PositionOf(New(KinshipCase.Key(i)));
            Assert.Equal(one.Inbreeding[i], other.Inbreeding[j], 1e-12);
            Assert.Equal(
                one.Between(i, pedigree.Count - 1),
                other.Between(j, shuffled.Pedigree.PositionOf(New(KinshipCase.Key(pedigree.Count - 1)))),
                1e-12);
        }

        static string New(string key) => $"z{key[^1]}{key}";

        static string? Name(string? key) => key is null ? null : New(key);
    });

    /// <summary>A kinship matrix is one of covariances, so that its Cholesky decomposition exists.</summary>
    [Fact]
    public void Matrix_AnyPedigree_IsPositiveSemidefinite() => KinshipCase.Any(20, doubt: true).Sample(pedigree =>
    {
        int[] all = [.. Enumerable.Range(0, pedigree.Count)];
        var matrix = KinshipReckoner.Of(Descent.Of(pedigree.ToPedigree(), pedigree.Settings())).Matrix(all);

        var lower = new double[all.Length, all.Length];
        foreach (var i in all)
        {
            for (var j = 0; j <= i; j++)
            {
                var left = matrix[i, j] - Enumerable.Range(0, j).Sum(k => lower[i, k] * lower[j, k]);
                Assert.True(i != j || left > -1e-12, $"pivot {i} is {left}");
                lower[i, j] = i == j ? Math.Sqrt(Math.Max(0.0, left)) : lower[j, j] > 1e-6 ? left / lower[j, j] : 0.0;
            }
        }
    });

    [Fact]
    public void Between_SireInDoubt_IsTheMeanOverHisCandidates()
    {
        // Half sibs if A is the sire, strangers on that side if B is.
        PedigreeAnimal[] animals = [new("A"), new("B"), new("X"), new("Y"), new("C", "A", "X"), new("D", dam: "Y", possibleSires: ["A", "B"])];
        var pedigree = Pedigree.Of(animals);
        var settings = new KinshipSettings
        {
            SireWeights = new Dictionary<string, IReadOnlyList<Probability>> { ["D"] = [Probability.Ratio(3, 4), Probability.Ratio(1, 4)] },
        };

        Assert.Equal(1.0 / 16, Between(null));
        Assert.Equal(3.0 / 32, Between(settings));

        double Between(KinshipSettings? with) =>
            KinshipReckoner.Of(Descent.Of(pedigree, with)).Between(pedigree.PositionOf("C"), pedigree.PositionOf("D"));
    }

    [Fact]
    public void Between_ClutchOfOneSireInDoubt_AreFullSibs()
    {
        var pedigree = Pedigree.Of(
            [new("A"), new("B"), new("X"), new("C", dam: "X", possibleSires: ["A", "B"]), new("D", dam: "X", possibleSires: ["A", "B"])]);
        var clutch = new KinshipSettings { Clutches = new Dictionary<string, string> { ["C"] = "1", ["D"] = "1" } };

        Assert.Equal(1.0 / 4, KinshipReckoner.Of(Descent.Of(pedigree, clutch)).Between(3, 4));
        Assert.Equal(3.0 / 16, KinshipReckoner.Of(Descent.Of(pedigree)).Between(3, 4));
    }

    [Fact]
    public void Of_ImpossibleFounderKinship_Throws()
    {
        var pedigree = Pedigree.Of([new("A"), new("B"), new("C"), new("D", "A", "B")]);

        Assert.Equal("C", Assert.Throws<ImpossibleKinshipException>(() => Descent.Of(pedigree, new KinshipSettings
        {
            FounderKinships = [new("A", "B", Probability.Ratio(1, 2)), new("B", "C", Probability.Ratio(1, 2)), new("A", "C", Probability.Impossible)],
        })).Founder);
        Throws(new FounderKinship("A", "D", Probability.Ratio(1, 4)));
        Throws(new FounderKinship("A", "A", Probability.Ratio(1, 4)));
        Throws(new FounderKinship("A", "E", Probability.Ratio(1, 4)));

        void Throws(params FounderKinship[] kinships) =>
            Assert.ThrowsAny<ArgumentException>(() => Descent.Of(pedigree, new KinshipSettings { FounderKinships = kinships }));
    }

    [Fact]
    public void OfParents_ParentAfterOffspring_Throws() =>
        Assert.Throws<ArgumentException>(() => Descent.OfParents([1, -1], [-1, -1]));

    [Fact]
    public void ExactKinship_TooManyAncestors_IsNotGiven()
    {
        var kennel = Kennels.Kennel(20_000);

        Assert.Null(ExactKinship.Of(Descent.OfParents(kennel.Sires, kennel.Dams), [kennel.Count - 1]));
    }

    [Fact]
    public void Matrix_Mean_IsTheMeanOfAllPairs() => KinshipCase.Any(12, doubt: false).Sample(pedigree =>
    {
        int[] all = [.. Enumerable.Range(0, pedigree.Count)];
        var matrix = KinshipReckoner.Of(Descent.Of(pedigree.ToPedigree())).Matrix(all);

        Assert.Equal(all.Average(i => all.Average(j => matrix[i, j])), matrix.Mean, 1e-11);
    });
}
