using Clutchwright.Genetics.Loci;
using Clutchwright.Testing.Pedigrees;

namespace Clutchwright.Reference.Tests.R;

/// <summary>R's script reckons what the textbooks say.</summary>
public sealed class KinshipByRHarnessTests
{
    // Wright 1922, worked through by hand: continued full-sib mating, generations 0 to 5.
    private static readonly double[] FullSibSeries = [0, 0, 0.25, 0.375, 0.5, 0.59375];

    [Fact]
    public async Task Inbreeding_OfContinuedFullSibMating_IsWrightsSeries()
    {
        var line = new SamplePedigree();
        var (sire, dam) = (line.Add(Sex.Male), line.Add(Sex.Female));
        var generations = new List<int> { sire };
        while (generations.Count < FullSibSeries.Length)
        {
            (sire, dam) = (line.Add(Sex.Male, sire, dam), line.Add(Sex.Female, sire, dam));
            generations.Add(sire);
        }

        var kinship = await KinshipByR.OfAsync(line);

        Assert.Equal(FullSibSeries, generations.Select(kinship.Inbreeding));
    }

    [Fact]
    public async Task Kinship_OfHalfSibsWhoseOtherParentsAreFullSibs_IsThreeSixteenths()
    {
        var family = new SamplePedigree();
        var (sire, father, mother) = (family.Add(Sex.Male), family.Add(Sex.Male), family.Add(Sex.Female));
        var (aunt, dam) = (family.Add(Sex.Female, father, mother), family.Add(Sex.Female, father, mother));
        var (a, b) = (family.Add(Sex.Male, sire, aunt), family.Add(Sex.Female, sire, dam));

        var kinship = await KinshipByR.OfAsync(family);

        Assert.Equal(3.0 / 16, kinship[a, b]);
        Assert.Equal(kinship[a, b], kinship[b, a]);
    }
}
