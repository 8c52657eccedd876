using Clutchwright.Genetics.Crosses;
using Clutchwright.Genetics.Loci;
using Clutchwright.Genetics.Numbers;
using Clutchwright.Testing;

namespace Clutchwright.Genetics.Tests.Crosses;

public class LinkageTests
{
    // Sweet pea F2 in coupling, Bateson, Saunders & Punnett 1905: purple long, purple round, red long, red round.
    private static readonly int[] SweetPea = [284, 21, 21, 55];

    /// <summary>Punnett RC, Mendelism: the gametic series n : 1 : 1 : n and the F2 it gives, of 4 (n + 1)^2. (The stored copy misprints the first
    /// figure of n = 3 as 49.)</summary>
    [Theory]
    [InlineData(3, 41, 7, 7, 9)]
    [InlineData(7, 177, 15, 15, 49)]
    [InlineData(15, 737, 31, 31, 225)]
    [InlineData(31, 3009, 63, 63, 961)]
    [InlineData(63, 12161, 127, 127, 3969)]
    public void Coupling_PunnettsGameticSeries_GivesHisSecondGeneration(int n, int both, int first, int second, int none)
    {
        var looks = Ratios.Looks(Coupling(1.0 / (n + 1)));
        var total = 4.0 * (n + 1) * (n + 1);

        Assert.Equal(both / total, looks["normal"].Value, 1e-12);
        Assert.Equal(first / total, looks["b"].Value, 1e-12);
        Assert.Equal(second / total, looks["a"].Value, 1e-12);
        Assert.Equal(none / total, looks["a b"].Value, 1e-12);
    }

    [Fact]
    public void Coupling_SweetPea_GivesTheChiSquareAgainstIndependence()
    {
        var free = Coupling(0.5);

        // chi-square against 9:3:3:1, computed.
        Assert.Equal(134.728, Ratios.ChiSquare(SweetPea, Classes(free)), 5e-4);
    }

    // Maximum likelihood r = 0.12804 (P = 0.7603095), LOD 30.973 against independence: computed.
    [Fact]
    public void Coupling_SweetPeaAtTheBestFraction_HasItsLod()
    {
        var linked = Classes(Coupling(1.0 - Math.Sqrt(0.7603095)));
        var free = Classes(Coupling(0.5));

        var lod = SweetPea.Select((count, i) => count * Math.Log10(linked[i].Value / free[i].Value)).Sum();

        Assert.Equal(30.973, lod, 5e-4);
        Assert.True(lod > Lod(0.12804 - 0.01) && lod > Lod(0.12804 + 0.01));

        double Lod(double r) => SweetPea.Select((count, i) => count * Math.Log10(Classes(Coupling(r))[i].Value / free[i].Value)).Sum();
    }

    // Morgan TH (1916), A Critique of the Theory of Evolution: black vestigial F1 female to the double recessive male, 83 % parental and
    // 17 % recombinant. (The male without crossing over is not modelled: an autosomal group has one fraction for both sexes.)
    [Fact]
    public void TestCross_BlackVestigial_Is83To17()
    {
        var species = Species(Centimorgans(0.17));

        var looks = Ratios.Looks(Cross.Of(Mating.Of(Describe.Male(species, "a/a", "b/b"), Describe.Female(species, "a/+", "b/+"))));

        Assert.Equal(0.83, looks["normal"].Value + looks["a b"].Value, 1e-12);
        Assert.Equal(0.17, looks["a"].Value + looks["b"].Value, 1e-12);
        Assert.Equal(looks["a"].Value, looks["b"].Value, 1e-15);
    }

    // In repulsion parental and recombinant classes change places.
    [Fact]
    public void TestCross_Repulsion_IsCouplingWithTheClassesChanged()
    {
        var species = Species(Centimorgans(0.17));

        var looks = Ratios.Looks(Cross.Of(Mating.Of(Describe.Male(species, "a/a", "b/b"), Describe.Female(species, "a/+", "+/b"))));

        Assert.Equal(0.17, looks["normal"].Value + looks["a b"].Value, 1e-12);
    }

    // Trow 1913: r13 = r12 + r23 - 2 r12 r23 without interference; double recombinants r12 r23. By definition, at r12 = 0.1, r23 = 0.2.
    [Fact]
    public void ThreePoints_NoInterference_MultiplyTheirIntervals()
    {
        var species = Describe.Species(
            SexSystem.XY,
            Describe.Linked("C", Centimorgans(0.1) + Centimorgans(0.2), Describe.Recessive("c")),
            Describe.Linked("A", 0.0, Describe.Recessive("a")),
            Describe.Linked("B", Centimorgans(0.1), Describe.Recessive("b")));

        var looks = Ratios.Looks(Cross.Of(Mating.Of(
            Describe.Male(species, "a/+", "b/+", "c/+"), Describe.Female(species, "a/a", "b/b", "c/c"))));

        // Names stand in the order of the description: c, a, b.
        Assert.Equal(0.5 * 0.9 * 0.8, looks["normal"].Value, 1e-12);
        Assert.Equal(0.5 * 0.1 * 0.2, looks["b"].Value, 1e-12);
        Assert.Equal(0.5 * 0.1 * 0.2, looks["c a"].Value, 1e-12);
        Assert.Equal(0.1 + 0.2 - (2 * 0.1 * 0.2), looks["c"].Value + looks["a"].Value + looks["c b"].Value + looks["a b"].Value, 1e-12);
    }

    [Fact]
    public void Linked_NoDistance_IsExact()
    {
        var looks = Ratios.ExactLooks(Coupling(0.0));

        Assert.Equal(new Dictionary<string, string> { ["normal"] = "3/4", ["a b"] = "1/4" }, looks);
    }

    private static Cross Coupling(double fraction)
    {
        var species = Species(Centimorgans(fraction));
        return Cross.Of(Mating.Of(Describe.Male(species, "a/+", "b/+"), Describe.Female(species, "a/+", "b/+")));
    }

    private static Probability[] Classes(Cross cross)
    {
        var looks = Ratios.Looks(cross);
        return [looks["normal"], looks["b"], looks["a"], looks["a b"]];
    }

    private static Species Species(double centimorgans) => Describe.Species(
        SexSystem.XY, Describe.Linked("A", 10.0, Describe.Recessive("a")), Describe.Linked("B", 10.0 + centimorgans, Describe.Recessive("b")));

    // Haldane's function turned round.
    private static double Centimorgans(double fraction) => fraction >= 0.5 ? 5000.0 : -50.0 * Math.Log(1.0 - (2.0 * fraction));
}
