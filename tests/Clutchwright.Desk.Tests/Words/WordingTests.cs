using Clutchwright.Desk.Genes;
using Clutchwright.Desk.Tests.Testing;
using Clutchwright.Desk.Words;
using Clutchwright.Genetics.Genotypes;
using Clutchwright.Genetics.Loci;

namespace Clutchwright.Desk.Tests.Words;

/// <summary>How animals are put into words, on the shipped catalogue.</summary>
public class WordingTests
{
    [Fact]
    public void Animal_AnyPairOfAlleles_LeadsToAnEntryOfItsLocus()
    {
        var show = new ShowGene(Shipped.Catalogue);

        foreach (var locus in Shipped.Species.Loci)
        {
            foreach (var (first, second) in Pairs(locus))
            {
                var words = Shipped.Catalogue.Wording.Animal(
                    GenotypeBelief.Certain(Genotype.Wild(Shipped.Species, Sex.Female).With(locus, first, second)));

                Assert.All(words.Parts, part => Assert.Equal((part.Text, locus.Name), (part.Text, show.Run(part.GeneId!)?.Line.Locus)));
            }
        }
    }

    [Theory]
    [InlineData("het Clown", "Clown")]
    [InlineData("66% het Clown", "Clown")]
    [InlineData("Super Pastel", "Pastel")]
    [InlineData("possible Pastel", "Pastel")]
    [InlineData("Yellow Belly/Gravel", "Highway")]
    public void Animal_Word_LeadsToItsEntry(string text, string entry) =>
        Assert.Equal(entry, new ShowGene(Shipped.Catalogue).Run(Assert.Single(Of(text).Parts).GeneId!)?.Line.Name);

    // Ivory hides other pattern genes but not Leopard (common practice, no source).
    [Theory]
    [InlineData("Ivory Pastel", "Ivory")]
    [InlineData("Ivory Leopard", "Ivory, Leopard")]
    [InlineData("Pastel het Clown", "Pastel")]
    public void Animal_FormHiddenByAnother_IsNotSeen(string text, string seen) =>
        Assert.Equal(
            seen.Split(", ").Order(StringComparer.Ordinal),
            Of(text).Parts.Where(p => p.IsSeen).Select(p => p.Text).Order(StringComparer.Ordinal));

    private static AnimalWords Of(string text) =>
        Shipped.Catalogue.Wording.Animal(Shipped.Catalogue.Catalogue.Trade.Read(text).Value!.ToBelief(Sex.Female).Value!);

    private static IEnumerable<(int First, int Second)> Pairs(Locus locus) =>
        from first in Enumerable.Range(0, locus.Alleles.Count)
        from second in Enumerable.Range(Math.Max(first, 1), locus.Alleles.Count - Math.Max(first, 1))
        select (first, second);
}
