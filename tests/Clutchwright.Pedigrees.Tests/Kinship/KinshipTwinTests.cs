using Clutchwright.Genetics.Numbers;
using Clutchwright.Pedigrees.Kinship;
using Clutchwright.Testing.Pedigrees;
using CsCheck;
using Xunit;

namespace Clutchwright.Pedigrees.Tests.Kinship;

/// <summary>The engine against the slow twin, on random pedigrees with unknown parents, selfing and sires in doubt.</summary>
public sealed class KinshipTwinTests
{
    private const double Tolerance = 1e-11;

    [Fact]
    public void Of_AnyPedigree_IsTheTwinsTable() => KinshipCase.Any(14, doubt: true).Sample(
        pedigree =>
        {
            var twin = KinshipTwin.Of(pedigree);
            var reckoner = KinshipReckoner.Of(Descent.Of(pedigree.ToPedigree(), pedigree.Settings()));
            int[] all = [.. Enumerable.Range(0, pedigree.Count)];
            var (table, matrix) = (reckoner.Table(all, all), reckoner.Matrix(all));

            foreach (var i in all)
            {
                Assert.Equal(((twin[i, i] * 2) - Fraction.One).ToDouble(), reckoner.Inbreeding[i], Tolerance);
                foreach (var j in all)
                {
                    Assert.Equal(twin[i, j].ToDouble(), reckoner.Between(i, j), Tolerance);
                    Assert.Equal(twin[i, j].ToDouble(), table[i, j], Tolerance);
                    Assert.Equal(twin[i, j].ToDouble(), matrix[i, j], Tolerance);
                }
            }
        },
        iter: 3000);

    [Fact]
    public void ExactKinship_AnyPedigree_IsTheTwinsFraction() => KinshipCase.Any(12, doubt: true).Sample(
        pedigree =>
        {
            var twin = KinshipTwin.Of(pedigree);
            int[] all = [.. Enumerable.Range(0, pedigree.Count)];
            var exact = ExactKinship.Of(Descent.Of(pedigree.ToPedigree(), pedigree.Settings()), all)!;

            foreach (var i in all)
            {
                Assert.Equal((twin[i, i] * 2) - Fraction.One, exact.InbreedingOf(i));
                Assert.All(all, j => Assert.Equal(twin[i, j], exact.Between(i, j)));
            }
        },
        iter: 1500);

    [Fact]
    public void Of_PossibleSiresWithoutWeights_AreAlikeAndEachAnimalForItself() => KinshipCase.Any(12, doubt: true).Sample(
        pedigree =>
        {
            var alike = new KinshipCase
            {
                Sires = pedigree.Sires,
                Dams = pedigree.Dams,
                Possible = [.. pedigree.Possible.Select(p => p.Select(q => (q.Sire, 1)).ToArray())],
                Clutches = [.. pedigree.Clutches.Select(_ => -1)],
            };
            var twin = KinshipTwin.Of(alike);

            var reckoner = KinshipReckoner.Of(Descent.Of(pedigree.ToPedigree()));

            for (var i = 0; i < pedigree.Count; i++)
            {
                Assert.Equal(twin[i, 0].ToDouble(), reckoner.Between(i, 0), Tolerance);
                Assert.Equal(twin[i, pedigree.Count - 1].ToDouble(), reckoner.Between(i, pedigree.Count - 1), Tolerance);
            }
        },
        iter: 500);

    /// <summary>Larger closed kennels, where many lanes and words of bits are in use at a time.</summary>
    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    public void Of_KennelOfSevenHundred_IsTheTwinsTable(ulong seed)
    {
        var kennel = Kennels.Kennel(700, seed);
        var twin = Doubles(kennel);

        var reckoner = KinshipReckoner.Of(Descent.OfParents(kennel.Sires, kennel.Dams));
        var ofPedigree = KinshipReckoner.Of(Descent.Of(kennel.ToPedigree()));

        for (var i = 0; i < kennel.Count; i++)
        {
            Assert.Equal((2.0 * twin[i, i]) - 1.0, reckoner.Inbreeding[i], 1e-12);
            Assert.Equal((2.0 * twin[i, i]) - 1.0, ofPedigree.Inbreeding[i], 1e-12);
            Assert.Equal(twin[i, kennel.Count - 1], reckoner.Between(i, kennel.Count - 1), 1e-12);
        }
    }

    /// <summary>What lies behind the founders of a part of a pedigree can be told as their inbreeding and kinship instead.</summary>
    [Fact]
    public void Of_FoundersWithGivenKinship_AreAsWithTheirAncestors() => Gen.Select(KinshipCase.Any(9, doubt: false), KinshipCase.Any(9, doubt: false)).Sample(
        (before, after) =>
        {
            // The founders of the later pedigree are the last animals of the earlier one.
            int[] founders = [.. Enumerable.Range(0, after.Count).Where(i => after.Sires[i] < 0 && after.Dams[i] < 0).Take(before.Count)];
            var sires = before.Sires.ToList();
            var dams = before.Dams.ToList();
            var place = new int[after.Count];
            for (var i = 0; i < after.Count; i++)
            {
                place[i] = Array.IndexOf(founders, i) is >= 0 and var index ? before.Count - 1 - index : sires.Count;
                if (place[i] == sires.Count)
                {
                    sires.Add(after.Sires[i] < 0 ? -1 : place[after.Sires[i]]);
                    dams.Add(after.Dams[i] < 0 ? -1 : place[after.Dams[i]]);
                }
            }

            var twin = KinshipTwin.Table(sires, dams);
            var settings = new KinshipSettings
            {
                FounderInbreeding = founders.ToDictionary(KinshipCase.Key, f => Chance((twin[place[f], place[f]] * 2) - Fraction.One)),
                FounderKinships =
                [
                    .. from one in founders from other in founders where one < other
                       select new FounderKinship(KinshipCase.Key(one), KinshipCase.Key(other), Chance(twin[place[one], place[other]])),
                ],
            };
            var descent = Descent.Of(after.ToPedigree(), settings);
            var reckoner = KinshipReckoner.Of(descent);
            int[] all = [.. Enumerable.Range(0, after.Count)];
            var exact = ExactKinship.Of(descent, all)!;
            var table = reckoner.Table(all, all);

            foreach (var i in all)
            {
                foreach (var j in all)
                {
                    var expected = twin[place[i], place[j]];
                    Assert.Equal(expected.ToDouble(), reckoner.Between(i, j), 1e-12);
                    Assert.Equal(expected.ToDouble(), table[i, j], 1e-12);
                    Assert.Equal(expected, exact.Between(i, j));
                    var routes = DescentRoutes.Between(reckoner, i, j, int.MaxValue);
                    Assert.Equal(expected.ToDouble(), routes.Routes.Sum(r => r.Contribution), 1e-12);
                }
            }
        },
        iter: 500);

    private static Probability Chance(Fraction fraction) => Probability.From(fraction);

    private static double[,] Doubles(SamplePedigree pedigree)
    {
        var kinship = new double[pedigree.Count, pedigree.Count];
        for (var i = 0; i < pedigree.Count; i++)
        {
            var (sire, dam) = (pedigree.Sires[i], pedigree.Dams[i]);
            for (var j = 0; j < i && sire >= 0; j++)
            {
                kinship[i, j] = kinship[j, i] = (kinship[sire, j] + kinship[dam, j]) / 2.0;
            }

            kinship[i, i] = sire < 0 ? 0.5 : (1.0 + kinship[sire, dam]) / 2.0;
        }

        return kinship;
    }
}
