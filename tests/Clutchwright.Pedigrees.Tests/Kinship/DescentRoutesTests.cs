using Clutchwright.Pedigrees.Kinship;
using Clutchwright.Testing.Pedigrees;
using CsCheck;
using Xunit;

namespace Clutchwright.Pedigrees.Tests.Kinship;

public sealed class DescentRoutesTests
{
    /// <summary>Wright S (1922). Coefficients of inbreeding and relationship. Am Nat 56: 330-338: F = sum of (1/2)^n (1 + F_A) over lines of
    /// descent that share no animal but the common ancestor.</summary>
    [Fact]
    public void Between_AnyPedigree_ListsExactlyWrightsPaths() => Gen.Select(KinshipCase.Any(11, doubt: false), Gen.Int[0, 1000], Gen.Int[0, 1000]).Sample(
        (pedigree, one, other) =>
        {
            var (first, second) = (one % pedigree.Count, other % pedigree.Count);
            var twin = KinshipTwin.Table(pedigree.Sires, pedigree.Dams);
            var expected = KinshipTwin.Routes(pedigree.Sires, pedigree.Dams, first, second);
            var reckoner = KinshipReckoner.Of(Descent.Of(pedigree.ToPedigree()));

            var routes = DescentRoutes.Between(reckoner, first, second, int.MaxValue);

            // A selfed animal's two parents are one, and its lines of descent are counted twice: once through each.
            Assert.Equal((ulong)expected.Count, routes.Count);
            Assert.Equal(
                expected.Select(r => $"{string.Join(' ', r.First)} - {string.Join(' ', r.Second)}").Order(StringComparer.Ordinal),
                routes.Routes.Select(r => $"{string.Join(' ', r.First)} - {string.Join(' ', r.Second)}").Order(StringComparer.Ordinal));
            Assert.Equal(twin[first, second].ToDouble(), routes.Routes.Sum(r => r.Contribution), 1e-11);
            Assert.All(routes.Routes, r => Assert.Equal(
                Math.Pow(0.5, r.Length) * (2.0 * twin[r.Ancestor, r.Ancestor].ToDouble()), r.Contribution, 1e-11));
            Assert.Equal(routes.Routes.OrderByDescending(r => r.Contribution).Select(r => r.Contribution), routes.Routes.Select(r => r.Contribution));
            Assert.All(routes.Ancestors, a =>
            {
                Assert.Equal((ulong)routes.Routes.Count(r => r.Ancestor == a.Ancestor), a.Routes);
                Assert.Equal(routes.Routes.Where(r => r.Ancestor == a.Ancestor).Sum(r => r.Contribution), a.Contribution, 1e-11);
            });
        },
        iter: 2000);

    [Fact]
    public void Between_SiresInDoubt_SumsToTheKinship() => KinshipCase.Any(11, doubt: true).Sample(
        pedigree =>
        {
            var reckoner = KinshipReckoner.Of(Descent.Of(pedigree.ToPedigree(), pedigree.Settings()));

            var routes = DescentRoutes.Between(reckoner, pedigree.Count - 1, pedigree.Count - 2, int.MaxValue);

            Assert.Equal(routes.Kinship, routes.Routes.Sum(r => r.Contribution), 1e-11);
            Assert.Equal(routes.Kinship, routes.Ancestors.Sum(a => a.Contribution), 1e-11);
            Assert.Equal(routes.Count, (ulong)routes.Routes.Count);
            Assert.All(routes.Routes, r => Assert.Equal(
                r.Chance * Math.Pow(0.5, r.Length) * (1.0 + r.AncestorInbreeding), r.Contribution, 1e-11));
        },
        iter: 1000);

    [Fact]
    public void Between_FirstCousins_GivesBothGrandparents()
    {
        var pedigree = Pedigree.Of(
        [
            new("grandsire"), new("granddam"), new("x"), new("y"),
            new("uncle", "grandsire", "granddam"), new("mother", "grandsire", "granddam"), new("cousin", "uncle", "x"), new("niece", "y", "mother"),
        ]);
        var reckoner = KinshipReckoner.Of(Descent.Of(pedigree));

        var routes = DescentRoutes.Between(reckoner, pedigree.PositionOf("cousin"), pedigree.PositionOf("niece"), 10);

        Assert.Equal(
            ["cousin uncle grandsire | niece mother grandsire 5 0.03125", "cousin uncle granddam | niece mother granddam 5 0.03125"],
            routes.Routes.Select(r => $"{Names(r.First)} | {Names(r.Second)} {r.Length} {r.Contribution}"));
        Assert.Equal((2UL, 0.0625, true), (routes.Count, routes.Kinship, routes.IsComplete));

        string Names(IEnumerable<int> path) => string.Join(' ', path.Select(p => pedigree.Animals[p].Key));
    }

    /// <summary>There are thousands of millions of routes in a deep closed kennel: the best are listed at once, the rest is a number.</summary>
    [Fact]
    public void Between_DeepKennel_ListsTheBestAndSumsTheRest()
    {
        var kennel = Kennels.Kennel(1_000);
        var reckoner = KinshipReckoner.Of(Descent.OfParents(kennel.Sires, kennel.Dams));

        var routes = DescentRoutes.Between(reckoner, kennel.Count - 1, kennel.Count - 20, 25);

        Assert.Equal(25, routes.Routes.Count);
        Assert.True(routes.Count > 1_000_000_000);
        Assert.True(routes.IsComplete);
        Assert.Equal(routes.Kinship, routes.Ancestors.Sum(a => a.Contribution), 1e-12);
    }

    [Fact]
    public void Between_MoreAncestorsThanLookedAt_SaysSo()
    {
        var kennel = Kennels.Kennel(30_000);
        var reckoner = KinshipReckoner.Of(Descent.OfParents(kennel.Sires, kennel.Dams));

        var routes = DescentRoutes.Between(reckoner, kennel.Count - 1, kennel.Count - 50, 5);

        Assert.False(routes.IsComplete);
        Assert.InRange(routes.Ancestors.Sum(a => a.Contribution), 0.0, routes.Kinship);
    }
}
