using Clutchwright.Genetics.Numbers;
using Clutchwright.Pedigrees.Kinship;
using Clutchwright.Testing.Pedigrees;
using Xunit;

namespace Clutchwright.Pedigrees.Tests.Kinship;

/// <summary>Published figures. Method: Wright S (1922). Coefficients of inbreeding and relationship. Am Nat 56: 330-338.</summary>
public sealed class InbreedingTests
{
    /// <summary>Computed and exact by Wright's formula. First cousins also Alvarez 2009: 0.0625. Each pedigree is "animal sire dam" by
    /// spaces and commas; the young is Z.</summary>
    [Theory]
    [InlineData("parent x offspring", "A . .,B . .,C A B,Z A C", "1/4")]
    [InlineData("full sibs", "A . .,B . .,C A B,D A B,Z C D", "1/4")]
    [InlineData("half sibs", "A . .,B . .,E . .,C A B,D A E,Z C D", "1/8")]
    [InlineData("half sibs whose other parents are full sibs", "S . .,G . .,H . .,P G H,Q G H,C S P,D S Q,Z C D", "3/16")]
    [InlineData("grandparent x grandchild", "A . .,B . .,C A B,E . .,D C E,Z A D", "1/8")]
    [InlineData("uncle x niece", "A . .,B . .,U A B,C A B,E . .,N C E,Z U N", "1/8")]
    [InlineData("double first cousins", "A . .,B . .,E . .,F . .,C A B,D A B,G E F,H E F,P C G,Q D H,Z P Q", "1/8")]
    [InlineData("half uncle x niece", "A . .,B . .,I . .,U A B,C A I,E . .,N C E,Z U N", "1/16")]
    [InlineData("first cousins", "A . .,B . .,C A B,D A B,E . .,F . .,P C E,Q D F,Z P Q", "1/16")]
    [InlineData("half first cousins", "A . .,B . .,I . .,C A B,D A I,E . .,F . .,P C E,Q D F,Z P Q", "1/32")]
    [InlineData("first cousins once removed", "A . .,B . .,C A B,D A B,E . .,F . .,P C E,Q D F,G . .,R Q G,Z P R", "1/32")]
    [InlineData("second cousins", "A . .,B . .,C A B,D A B,E . .,F . .,P C E,Q D F,G . .,H . .,R Q G,S P H,Z S R", "1/64")]
    [InlineData("strangers", "A . .,B . .,Z A B", "0")]
    [InlineData("one parent unknown", "A . .,B . .,C A B,Z C .", "0")]
    public void Of_ClassicMatings_GiveTheTextbooksFraction(string mating, string animals, string expected)
    {
        var (pedigree, reckoner) = Reckon(animals);
        var young = pedigree.PositionOf("Z");

        Assert.Equal(expected, ExactKinship.Of(reckoner.Descent, [young])!.InbreedingOf(young).ToString());
        Assert.True(reckoner.Inbreeding[young] == Parse(expected).ToDouble(), mating);
    }

    /// <summary>Continued full-sib mating, generation by generation [computed].</summary>
    [Fact]
    public void Of_ContinuedFullSibs_FollowTheSeries() => AssertSeries(
        [0, 0, 0.25, 0.375, 0.5, 0.59375, 0.671875, 0.734375, 0.78515625, 0.826171875, 0.859375, 0.88623046875],
        (line, generation) => line.AddRange([$"s{generation} {Parent("s", generation)} {Parent("d", generation)}", $"d{generation} {Parent("s", generation)} {Parent("d", generation)}"]),
        "s");

    /// <summary>Daughters put back to one unrelated sire [computed].</summary>
    [Fact]
    public void Of_RepeatedBackcross_FollowsTheSeries()
    {
        var (pedigree, reckoner) = Reckon("S . .,d0 . .,d1 S d0,d2 S d1,d3 S d2,d4 S d3,d5 S d4,d6 S d5");

        Assert.Equal(
            [0, 0.25, 0.375, 0.4375, 0.46875, 0.484375],
            Enumerable.Range(1, 6).Select(g => reckoner.Inbreeding[pedigree.PositionOf($"d{g}")]));
    }

    /// <summary>A line of one sire and many half sisters a generation: Wright's recurrence F = (1 + 6 F' + F'') / 8 [computed].</summary>
    [Fact]
    public void Of_HalfSibLine_FollowsTheSeries()
    {
        // Each generation's sire and dams are half sibs by the sire before; each dam has her own dam among the half sisters before.
        var animals = new List<string>();
        const int Generations = 5;
        for (var generation = 0; generation <= Generations; generation++)
        {
            var dams = 1 << (Generations - generation + 1);
            var sire = generation == 0 ? "." : $"s{generation - 1}";
            animals.Add($"s{generation} {sire} {(generation == 0 ? "." : $"d{generation - 1}_{2 * dams - 1}")}");
            animals.AddRange(Enumerable.Range(0, dams).Select(i => $"d{generation}_{i} {sire} {(generation == 0 ? "." : $"d{generation - 1}_{i}")}"));
        }

        var (pedigree, reckoner) = Reckon(string.Join(',', animals));

        Assert.Equal(
            [0, 0, 0.125, 0.21875, 0.3046875, 0.380859375],
            Enumerable.Range(0, 6).Select(g => reckoner.Inbreeding[pedigree.PositionOf($"s{g}")]));
    }

    /// <summary>Shorthorn bull Comet. Favourite to his dam Phoenix, and back to Favourite: caption seen (Types and Breeds of Farm Animals); the
    /// parents of Bolingbroke, Phoenix, Favourite and Young Strawberry [recalled]; values [computed].</summary>
    [Fact]
    public void Of_CometsPedigree_IsFifteenThirtySeconds()
    {
        var (pedigree, reckoner) = Reckon(
            "Foljambe . .,LadyMaynard . .,DaltonDuke . .,YoungStrawberry DaltonDuke LadyMaynard,Bolingbroke Foljambe YoungStrawberry,"
            + "Phoenix Foljambe LadyMaynard,Favourite Bolingbroke Phoenix,YoungPhoenix Favourite Phoenix,Comet Favourite YoungPhoenix");
        var exact = ExactKinship.Of(reckoner.Descent, [.. Enumerable.Range(0, pedigree.Count)])!;

        Assert.Equal("3/16", exact.InbreedingOf(pedigree.PositionOf("Favourite")).ToString());
        Assert.Equal("11/32", exact.InbreedingOf(pedigree.PositionOf("YoungPhoenix")).ToString());
        Assert.Equal("15/32", exact.InbreedingOf(pedigree.PositionOf("Comet")).ToString());
        Assert.Equal(0.46875, reckoner.Inbreeding[pedigree.PositionOf("Comet")]);
    }

    /// <summary>With nothing known behind Phoenix and on Favourite's sire's side [computed].</summary>
    [Fact]
    public void Of_CometsPedigreeCutShort_IsThreeEighths()
    {
        var (pedigree, reckoner) = Reckon("Phoenix . .,Favourite . Phoenix,YoungPhoenix Favourite Phoenix,Comet Favourite YoungPhoenix");

        Assert.Equal((0.25, 0.375), (reckoner.Inbreeding[pedigree.PositionOf("YoungPhoenix")], reckoner.Inbreeding[pedigree.PositionOf("Comet")]));
    }

    /// <summary>Mean, maximum and last of generated pedigrees as several other programs gave them, all to the digits printed.</summary>
    [Theory]
    [InlineData(10_000, 0.0529329989, 10, 0.316571, 0.104038432093, 12)]
    [InlineData(1_000_000, 0.0005376316, 10, null, 0.001038526496, 12)]
    public void Of_GeneratedKennel_IsWhatOtherProgramsGave(int animals, double mean, int meanDigits, double? most, double last, int lastDigits)
    {
        var kennel = Kennels.Kennel(animals);

        var inbreeding = KinshipReckoner.Of(Descent.OfParents(kennel.Sires, kennel.Dams)).Inbreeding;

        Assert.Equal(mean, inbreeding.Average(), meanDigits);
        Assert.Equal(last, inbreeding[^1], lastDigits);
        if (most is { } expected)
        {
            Assert.Equal(expected, inbreeding.Max(), 6);
        }
    }

    private static string Parent(string of, int generation) => generation == 0 ? "." : $"{of}{generation - 1}";

    private static void AssertSeries(double[] expected, Action<List<string>, int> add, string of)
    {
        var line = new List<string>();
        for (var generation = 0; generation < expected.Length; generation++)
        {
            add(line, generation);
        }

        var (pedigree, reckoner) = Reckon(string.Join(',', line));
        Assert.Equal(expected, Enumerable.Range(0, expected.Length).Select(g => reckoner.Inbreeding[pedigree.PositionOf($"{of}{g}")]));
    }

    private static Fraction Parse(string text) => text.Split('/') is [var over, var under]
        ? new Fraction(long.Parse(over), long.Parse(under))
        : new Fraction(long.Parse(text));

    private static (Pedigree Pedigree, KinshipReckoner Reckoner) Reckon(string animals)
    {
        var pedigree = Pedigree.Of(animals.Split(',').Select(row => row.Split(' ') is [var key, var sire, var dam]
            ? new PedigreeAnimal(key, sire == "." ? null : sire, dam == "." ? null : dam)
            : throw new FormatException(row)));
        return (pedigree, KinshipReckoner.Of(Descent.Of(pedigree)));
    }
}
