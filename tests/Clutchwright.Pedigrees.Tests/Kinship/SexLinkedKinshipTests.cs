using Clutchwright.Genetics.Loci;
using Clutchwright.Pedigrees.Kinship;
using Clutchwright.Testing;
using CsCheck;
using Xunit;

namespace Clutchwright.Pedigrees.Tests.Kinship;

public sealed class SexLinkedKinshipTests
{
    /// <summary>Pedigrees in which sires are male and dams female.</summary>
    private static readonly Gen<(int[] Sires, int[] Dams, Sex[] Sexes)> Sexed = Draw.Gen(draw =>
    {
        var n = 3 + draw.Below(5);
        var (sires, dams) = (new int[n], new int[n]);
        var sexes = Enumerable.Range(0, n).Select(i => i < 2 ? (Sex)(i + 1) : draw.Of(Sex.Male, Sex.Female)).ToArray();
        for (var i = 0; i < n; i++)
        {
            draw.Count();
            sires[i] = Parent(i, Sex.Male);
            dams[i] = Parent(i, Sex.Female);
        }

        return (sires, dams, sexes);

        int Parent(int i, Sex sex)
        {
            int[] candidates = [.. Enumerable.Range(0, i).Where(j => sexes[j] == sex)];
            return i < 3 && candidates.Length > 0 && draw.Chance(1, 2) ? -1
                : candidates.Length == 0 || draw.Chance(1, 6) ? -1 : candidates[draw.Below(candidates.Length)];
        }
    });

    /// <summary>The slow twin: every way in which strands can be passed on is written out, and equal letters counted.</summary>
    [Theory]
    [InlineData(SexSystem.XY, 0.0)]
    [InlineData(SexSystem.XY, 0.1)]
    [InlineData(SexSystem.ZW, 0.0)]
    [InlineData(SexSystem.ZW, 0.25)]
    public void Between_AnyPedigree_IsWhatDroppingLettersGives(SexSystem system, double r) => Sexed.Sample(
        animals =>
        {
            var (sires, dams, sexes) = animals;
            var kinship = Of(sires, dams, sexes, system, r);
            var (pairs, shared) = Drop(sires, dams, sexes, system, r);

            for (var i = 0; i < sires.Length; i++)
            {
                for (var j = 0; j < sires.Length; j++)
                {
                    Assert.Equal(pairs[i, j], kinship.Between(i, j), 1e-12);
                    Assert.Equal(shared[i, j], kinship.BetweenShared(i, j), 1e-12);
                }
            }
        },
        iter: 100);

    [Fact]
    public void Between_FreeRecombination_IsAutosomal() => Sexed.Sample(animals =>
    {
        var (sires, dams, sexes) = animals;
        var kinship = Of(sires, dams, sexes, SexSystem.XY, 0.5);
        var autosomal = KinshipReckoner.Of(Descent.OfParents(sires, dams));

        for (var i = 0; i < sires.Length; i++)
        {
            Assert.Equal(autosomal.Inbreeding[i], kinship.InbreedingOf(i), 1e-11);
            Assert.Equal(autosomal.Between(i, 0), kinship.Between(i, 0), 1e-11);
        }
    });

    /// <summary>On the X: a male with his daughter 1/2, with his son 0; full sisters 3/8, full brothers 1/2, brother and sister 1/4
    /// [computed from the definition].</summary>
    [Fact]
    public void BetweenShared_FullyLinked_GivesTheKnownValues()
    {
        // 0 sire, 1 dam, 2 and 3 daughters, 4 and 5 sons
        var kinship = Of(
            [-1, -1, 0, 0, 0, 0], [-1, -1, 1, 1, 1, 1], [Sex.Male, Sex.Female, Sex.Female, Sex.Female, Sex.Male, Sex.Male], SexSystem.XY, 0.0);

        Assert.Equal(
            (0.5, 0.0, 0.375, 0.5, 0.25),
            (kinship.BetweenShared(0, 2), kinship.BetweenShared(0, 4), kinship.BetweenShared(2, 3), kinship.BetweenShared(4, 5), kinship.BetweenShared(2, 4)));
        Assert.Equal((1.0, 0.5), (kinship.BetweenShared(0, 0), kinship.BetweenShared(1, 1)));
    }

    [Fact]
    public void BetweenShared_NotSexed_Throws()
    {
        var pedigree = Pedigree.Of([new("A"), new("B")]);
        var kinship = SexLinkedKinship.Of(pedigree, [Sex.Male, null], SexSystem.XY, RecombinationFraction.Complete);

        Assert.Throws<ArgumentException>(() => kinship.BetweenShared(0, 1));
        Assert.Equal(0.0, kinship.Between(0, 1));
    }

    private static SexLinkedKinship Of(int[] sires, int[] dams, Sex[] sexes, SexSystem system, double r)
    {
        var pedigree = Pedigree.Of(sires.Select((sire, i) => new PedigreeAnimal($"{i}", Key(sire), Key(dams[i]))));
        return SexLinkedKinship.Of(pedigree, [.. sexes.Select(s => (Sex?)s)], system, RecombinationFraction.From(r));

        static string? Key(int animal) => animal < 0 ? null : $"{animal}";
    }

    private static (double[,] Pairs, double[,] Shared) Drop(int[] sires, int[] dams, Sex[] sexes, SexSystem system, double r)
    {
        var n = sires.Length;
        var (pairs, shared) = (new double[n, n], new double[n, n]);
        var (strands, letters) = (new (int Shared, int Other)[n], 0);
        Next(0, 1.0);
        return (pairs, shared);

        void Next(int animal, double chance)
        {
            if (animal == n)
            {
                Tally(chance);
                return;
            }

            var isDifferent = sexes[animal] == system.Heterogametic();
            var (alike, different) = system == SexSystem.XY ? (dams[animal], sires[animal]) : (sires[animal], dams[animal]);
            var before = letters;
            var fromAlike = alike < 0 ? [(letters++, 1.0)] : new[] { (strands[alike].Shared, 0.5), (strands[alike].Other, 0.5) };
            var stay = isDifferent ? r : 1.0 - r;
            var fromDifferent = different < 0 ? [(letters++, 1.0)] : new[] { (strands[different].Shared, stay), (strands[different].Other, 1.0 - stay) };
            foreach (var (one, p) in fromAlike)
            {
                foreach (var (other, q) in fromDifferent.Where(d => d.Item2 > 0.0))
                {
                    strands[animal] = (one, other);
                    Next(animal + 1, chance * p * q);
                }
            }

            letters = before;
        }

        void Tally(double chance)
        {
            for (var i = 0; i < n; i++)
            {
                for (var j = 0; j < n; j++)
                {
                    pairs[i, j] += chance * Same([strands[i].Shared, strands[i].Other], [strands[j].Shared, strands[j].Other]);
                    shared[i, j] += chance * Same(OnShared(i), OnShared(j));
                }
            }
        }

        int[] OnShared(int i) => sexes[i] == system.Heterogametic() ? [strands[i].Shared] : [strands[i].Shared, strands[i].Other];

        static double Same(int[] one, int[] other) => one.Average(a => other.Average(b => a == b ? 1.0 : 0.0));
    }
}
