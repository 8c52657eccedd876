using Clutchwright.Catalogue.Entries;
using Clutchwright.Desk.Genes;
using Clutchwright.Desk.Tests.Testing;
using Clutchwright.Genetics.Loci;

namespace Clutchwright.Desk.Tests.Genes;

/// <summary>The shipped catalogue as data. What it is held to is common practice in the trade, no source, unless a source is named.</summary>
public class ShippedCatalogueTests
{
    [Fact]
    public void Run_ShippedFolder_HasNoProblemsAndEnoughOfEverything()
    {
        var check = CheckCatalogue.Run(Shipped.Folder);

        Assert.Empty(check.Problems);
        Assert.True(check.Alleles >= 100, $"{check.Alleles} alleles");
        Assert.True(check.Combinations >= 50, $"{check.Combinations} combinations");
        Assert.True(check.Looks >= 60, $"{check.Looks} looks");
        Assert.True(check.Dangers >= 20, $"{check.Dangers} dangers");
    }

    [Fact]
    public void Looks_AtEveryStage_HaveTones()
    {
        var stages = Enum.GetValues<AgeStage>();
        var complete = Shipped.Catalogue.Catalogue.Looks.Count(l => stages.All(s => l.TonesAt(s) is { Ground: not null, Eye: not null }));

        Assert.True(complete >= 60, $"{complete} looks with tones at every stage");
    }

    [Theory]
    [InlineData("Albino", "Candy", "Candino")]
    [InlineData("Albino", "Toffee", "Toffino")]
    [InlineData("Ultramel", "Caramel", "Ultramel Caramel")]
    [InlineData("Clown", "Cryptic", "Crypton")]
    [InlineData("Lesser", "Mojave", "Blue-eyed White")]
    [InlineData("Mojave", "Mystic", "Mystic Potion")]
    [InlineData("Mojave", "Phantom", "Purple Passion")]
    [InlineData("Special", "Mojave", "Crystal")]
    [InlineData("Lesser", "Daddy", "Platinum")]
    [InlineData("Yellow Belly", "Yellow Belly", "Ivory")]
    [InlineData("Yellow Belly", "Asphalt", "Freeway")]
    [InlineData("Yellow Belly", "Gravel", "Highway")]
    [InlineData("Yellow Belly", "Spark", "Puma")]
    [InlineData("Yellow Belly", "Specter", "Superstripe")]
    [InlineData("Fire", "Fire", "Black-eyed Leucistic")]
    [InlineData("Fire", "Vanilla", "Vanilla Cream")]
    [InlineData("Black Pastel", "Cinnamon", "8-Ball")]
    [InlineData("Spider", "Blackhead", "Spider Blackhead")]
    [InlineData("Mahogany", "Mahogany", "Suma")]
    [InlineData("Woma", "Woma", "Pearl")]
    public void Compound_OfTheTrade_HasItsName(string first, string second, string name)
    {
        var (a, b) = (Find(first), Find(second));

        Assert.Equal(a.Allele.Locus, b.Allele.Locus);
        Assert.Equal(name, a.Allele.Locus.ExpressionOf(a.Allele.Index, b.Allele.Index).Name);
        Assert.NotNull(Shipped.Catalogue.Catalogue.FindForm(name));
    }

    [Theory]
    [InlineData("Albino", "Lavender Albino")] // TYR and OCA2, Brown et al. 2022
    [InlineData("Albino", "Ultramel")] // TYR and TYRP1, Brown et al. 2022
    [InlineData("Clown", "Piebald")] // MC1R, Garcia-Elfring et al. 2025; tfec, Garcia-Elfring et al. 2023
    [InlineData("Axanthic VPI", "Axanthic TSK")]
    [InlineData("Pastel", "Spider")]
    [InlineData("Lesser", "Yellow Belly")]
    public void Alleles_OfDifferentLoci_AreKeptApart(string first, string second) =>
        Assert.NotEqual(Find(first).Allele.Locus, Find(second).Allele.Locus);

    [Fact]
    public void CoralGlow_IsBanana() => Assert.Equal("banana", Find("Coral Glow").Allele.Id);

    [Fact]
    public void Banana_LiesOnTheSexChromosomesWithAnInterval()
    {
        // Sex-linked with recombination: Mallery & Carrillo 2016. No fraction is published, so an interval is stated.
        var entry = Shipped.Catalogue.Catalogue.EntryOf(Find("Banana").Allele.Locus);

        Assert.IsType<Placement.SexLinked>(entry.Locus.Placement);
        Assert.True(entry.Recombination!.Value.Least.Value < entry.Recombination.Value.Most.Value);
        Assert.NotEmpty(entry.Evidence.Sources);
    }

    [Theory]
    [InlineData("Bumblebee", "Pastel", "Spider")]
    [InlineData("Killer Bee", "Super Pastel", "Spider")]
    [InlineData("Queen Bee", "Lesser", "Pastel", "Spider")]
    [InlineData("Spinner", "Spider", "Pinstripe")]
    [InlineData("Lemon Blast", "Pastel", "Pinstripe")]
    [InlineData("Firefly", "Pastel", "Fire")]
    [InlineData("Pewter", "Pastel", "Cinnamon")]
    [InlineData("Sterling", "Super Pastel", "Cinnamon")]
    [InlineData("Pastave", "Pastel", "Mojave")]
    [InlineData("Jigsaw", "Mojave", "Pinstripe")]
    [InlineData("Dreamsicle", "Lavender Albino", "Piebald")]
    [InlineData("Panda Pied", "Super Black Pastel", "Piebald")]
    public void Combination_OfTheTrade_HasItsParts(string name, params string[] parts)
    {
        var combination = Shipped.Catalogue.Catalogue.FindCombination(name);

        Assert.NotNull(combination);
        Assert.Equal(parts.Order(StringComparer.Ordinal), combination.Expressions.Select(e => e.Name).Order(StringComparer.Ordinal));
    }

    [Fact]
    public void Alleles_Published_NameTheirSources()
    {
        var catalogue = Shipped.Catalogue.Catalogue;
        var published = catalogue.Alleles.Select(a => a.Evidence)
            .Concat(catalogue.Loci.Select(l => l.Evidence))
            .Concat(catalogue.Forms.Select(f => f.Evidence))
            .Concat(catalogue.Species.Dangers.Select(d => d.Evidence))
            .Where(e => e.Grade == EvidenceGrade.Published)
            .ToArray();

        Assert.NotEmpty(published);
        Assert.All(published, e => Assert.NotEmpty(catalogue.SourcesOf(e)));
    }

    [Theory]
    [InlineData("Crystal", true)] // Special with Mojave only
    [InlineData("8-Ball", true)] // Black Pastel with Cinnamon only
    [InlineData("Blue-eyed White", false)] // two copies of Lesser are among its pairs, and those breed true
    [InlineData("Ivory", false)]
    public void Run_Form_SaysItDoesNotBreedTrueOnlyIfAllItsPairsAreOfTwoAlleles(string form, bool isSaid) =>
        Assert.Equal(isSaid, new ShowGene(Shipped.Catalogue).Run(form)!.Claims.Any(c => c.Heading == "Does not breed true"));

    [Theory]
    [InlineData("Fire Bee")] // to some Fire Spider, to others Fire Pastel Spider
    [InlineData("Banana Bee")]
    [InlineData("Enchi Bee")]
    public void FindCombination_NameTheTradeDoesNotAgreeOn_IsNotListed(string name) =>
        Assert.Null(Shipped.Catalogue.Catalogue.FindCombination(name));

    [Fact]
    public void Run_EveryEntryOfTheList_Opens()
    {
        var show = new ShowGene(Shipped.Catalogue);
        var all = new ListGenes(Shipped.Catalogue).Run(null, null);

        Assert.True(all.Count > 200, $"{all.Count} entries");
        Assert.All(all, line =>
        {
            var entry = show.Run(line.Id);
            Assert.NotNull(entry);
            Assert.Equal((line.Id, line.Name, line.Kind), (entry.Line.Id, entry.Line.Name, entry.Line.Kind));
            Assert.Equal(entry.Line.Name, show.Run(line.Name)?.Line.Name);
            Assert.NotEmpty(entry.Claims);
            Assert.All(entry.Claims, c => Assert.NotEmpty(c.Text));
            Assert.All(entry.Neighbours, n => Assert.NotNull(show.Run(n.Id)));
        });
        Assert.Equal(all.Count, all.Select(l => l.Id).Distinct(StringComparer.Ordinal).Count());
    }

    [Fact]
    public void Run_WordsToFind_MustAllBeThere()
    {
        var list = new ListGenes(Shipped.Catalogue);

        Assert.Equal("Pastel", list.Run("pastel", "allele")[0].Name);
        Assert.Equal("banana", Assert.Single(list.Run("coral glow", "allele")).Id);
        Assert.Empty(list.Run("pastel xyzzy", null));
        Assert.All(list.Run("sex-linked", "allele"), l => Assert.Contains("sex-linked", l.Inheritance, StringComparison.Ordinal));
        Assert.Null(new ShowGene(Shipped.Catalogue).Run("no such gene"));
        Assert.Contains("Pastel", new ShowGene(Shipped.Catalogue).Nearest("Pastle"));
    }

    [Fact]
    public void Run_Lesser_NamesWhatItMakesWithEachNeighbour()
    {
        var lesser = new ShowGene(Shipped.Catalogue).Run("Lesser")!;

        Assert.Equal("Blue-eyed White", lesser.Neighbours.Single(n => n.Name == "Mojave").PairName);
        Assert.Equal("Platinum", lesser.Neighbours.Single(n => n.Name == "Daddy").PairName);
        Assert.Contains(lesser.Dangers, d => d.Code == "lesser-two-copies-eyes");
    }

    private static AlleleEntry Find(string name) => Shipped.Catalogue.Catalogue.FindAllele(name) ?? throw new InvalidOperationException($"No {name}.");
}
