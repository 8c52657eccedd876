using Clutchwright.Pedigrees.Kinship;
using CsCheck;
using Xunit;

namespace Clutchwright.Pedigrees.Tests.Kinship;

/// <summary>Definitions: Lacy RC (1989). Zoo Biology 8: 111-123 (effective founders); Boichard D, Maignel L, Verrier E (1997). Genet Sel Evol 29: 5-23
/// (effective ancestors). Values [computed].</summary>
public sealed class FounderContributionsTests
{
    [Fact]
    public void Of_OneBusySire_CountsLessThanHisMates()
    {
        // S with two dams, a young of each: 1/2, 1/4, 1/4.
        var (pedigree, shares) = Of(["P", "Q"], new("S"), new("A"), new("B"), new("P", "S", "A"), new("Q", "S", "B"));

        Assert.Equal([("S", 0.5), ("A", 0.25), ("B", 0.25)], shares.Founders.Select(f => (pedigree.Animals[f.Animal].Key, f.Share)));
        Assert.Equal(8.0 / 3, shares.EffectiveFounders, 1e-12);
        Assert.Equal(0.0, shares.UnknownShare);
    }

    [Fact]
    public void MajorAncestors_NarrowPass_CountsOneAnimalForItsFounders()
    {
        // All of A and B comes through C.
        var (pedigree, shares) = Of(
            ["P", "Q"], new("A"), new("B"), new("X"), new("Y"), new("C", "A", "B"), new("P", "C", "X"), new("Q", "C", "Y"));

        var (ancestors, effective) = shares.MajorAncestors();

        Assert.Equal(4.0, shares.EffectiveFounders, 1e-12);
        Assert.Equal([("C", 0.5), ("X", 0.25), ("Y", 0.25)], ancestors.Select(f => (pedigree.Animals[f.Animal].Key, f.Share)));
        Assert.Equal(8.0 / 3, effective, 1e-12);
    }

    [Fact]
    public void Of_UnknownSire_CountsAsOneFounderMore()
    {
        var (_, shares) = Of(["P"], new("A"), new("P", dam: "A"));

        Assert.Equal((0.5, 2.0), (shares.UnknownShare, shares.EffectiveFounders));
    }

    [Fact]
    public void Of_AnyPedigree_IsTheMeanOverSettledSires() => KinshipCase.Any(14, doubt: true).Sample(pedigree =>
    {
        int[] group = [.. Enumerable.Range(pedigree.Count / 2, pedigree.Count - (pedigree.Count / 2))];
        var founders = Enumerable.Range(0, pedigree.Count).Where(i => pedigree.Animals().ElementAt(i).IsFounder).ToArray();

        var shares = FounderContributions.Of(Descent.Of(pedigree.ToPedigree(), pedigree.Settings()), group);

        var expected = founders.ToDictionary(f => f, f => KinshipTwin.Settled(pedigree)
            .Sum(way => way.Chance.ToDouble() * group.Average(i => Share(pedigree, way.Sires, f, i))));
        // The twin sums thousands of ways; in one of hundreds of runs its own rounding passed 1e-13.
        Assert.All(shares.Founders, f => Assert.Equal(expected[f.Animal], f.Share, 1e-11));
        Assert.Equal(expected.Values.Sum(), shares.Founders.Sum(f => f.Share), 1e-11);
        Assert.Equal(1.0, shares.Founders.Sum(f => f.Share) + shares.UnknownShare, 1e-11);
        var (ancestors, effective) = shares.MajorAncestors();
        Assert.InRange(effective, 1.0 - 1e-9, pedigree.Count);
        Assert.InRange(ancestors.Sum(a => a.Share), 0.0, 1.0 + 1e-9);
    });

    private static double Share(KinshipCase pedigree, int[] sires, int founder, int animal)
    {
        if (animal == founder)
        {
            return 1.0;
        }

        return new[] { sires[animal], pedigree.Dams[animal] }.Where(p => p >= 0).Sum(p => Share(pedigree, sires, founder, p) / 2.0);
    }

    private static (Pedigree Pedigree, FounderContributions Shares) Of(string[] group, params PedigreeAnimal[] animals)
    {
        var pedigree = Pedigree.Of(animals);
        return (pedigree, FounderContributions.Of(Descent.Of(pedigree), [.. group.Select(pedigree.PositionOf)]));
    }
}
