using Clutchwright.Genetics.Genotypes;
using Clutchwright.Genetics.Loci;
using Xunit;

namespace Clutchwright.Catalogue.Tests.Folders;

/// <summary>The catalogue that ships, catalogue/python-regius.</summary>
public sealed class ShippedCatalogueTests
{
    private static readonly string Folder = Path.Combine(AppContext.BaseDirectory, "catalogue", "python-regius");
    private static readonly Lazy<CatalogueOutcome> Outcome = new(() => CatalogueFolder.Read(Folder));

    private static SpeciesCatalogue Catalogue
    {
        get
        {
            Assert.SkipUnless(Directory.Exists(Folder), "There is no catalogue/python-regius in this checkout.");
            return Outcome.Value.Catalogue ?? throw new InvalidOperationException(string.Join('\n', Outcome.Value.Problems));
        }
    }

    [Fact]
    public void Read_ShippedFolder_HasNoProblem()
    {
        Assert.SkipUnless(Directory.Exists(Folder), "There is no catalogue/python-regius in this checkout.");

        Assert.Empty(Outcome.Value.Problems.Select(p => p.ToString()));
    }

    [Fact]
    public void Read_ShippedFolder_HoldsWhatIsPromised()
    {
        Assert.True(Catalogue.Alleles.Count() >= 100);
        Assert.True(Catalogue.Combinations.Count >= 50);
        Assert.True(Catalogue.Looks.Count >= 60);
        Assert.Equal(267, Catalogue.Tones.Count); // the blocks of the ISCC-NBS system, NBS Special Publication 440
    }

    [Fact]
    public void Read_EveryPairOfAllelesAsWritten_GivesThePairBack()
    {
        foreach (var sex in new[] { Sex.Male, Sex.Female })
        {
            foreach (var locus in Catalogue.Species.Loci)
            {
                for (var first = 0; first < locus.Alleles.Count; first++)
                {
                    for (var second = 0; second < locus.Alleles.Count; second++)
                    {
                        var genotype = Genotype.Wild(Catalogue.Species, sex).With(locus, first, second);
                        var text = Catalogue.Trade.Write(genotype);

                        Assert.Equal(genotype, Catalogue.Trade.Read(text).Value!.ToBelief(sex).Value!.MostLikely());
                    }
                }
            }
        }
    }

    [Fact]
    public void FindAllele_EveryNameInEverySpelling_IsTheAllele()
    {
        foreach (var entry in Catalogue.Alleles)
        {
            foreach (var name in entry.Also.Prepend(entry.Allele.Name))
            {
                Assert.Same(entry, Catalogue.FindAllele(name.ToUpperInvariant()));
                Assert.Same(entry, Catalogue.FindAllele(name.Replace(' ', '-')));
                Assert.Same(entry, Catalogue.FindAllele(name.Replace(" ", "", StringComparison.Ordinal)));
            }
        }
    }

    [Fact]
    public void LookOf_EveryFormAtEveryAge_IsStatedOrComposed()
    {
        foreach (var stage in Enum.GetValues<AgeStage>())
        {
            Assert.All(Catalogue.Forms, f => Assert.NotNull(Catalogue.LookOf([f.Expression], stage)));
        }
    }

    // Common practice, no source (the trade's test of the blue-eyed group): put to Lesser, a member gives the white snake.
    [Theory]
    [InlineData("Lesser/Mojave", true)]
    [InlineData("Lesser/Phantom", true)]
    [InlineData("Lesser/Mystic", true)]
    [InlineData("Super Lesser", true)]
    [InlineData("Super Phantom", false)]
    [InlineData("Super Mystic", false)]
    [InlineData("Mojave/Mystic", false)]
    public void ReadWant_BlueEyedWhite_TakesTheWhitePairsOnly(string pair, bool isWhite)
    {
        var genotype = Catalogue.Trade.Read("0.1 " + pair).Value!.ToBelief(Sex.Female).Value!.MostLikely();

        Assert.Equal(isWhite, Catalogue.Trade.ReadWant("BEL").Value!.IsMetBy(genotype));
    }

    // Common practice, no source.
    [Theory]
    [InlineData("Bumblebee", "1.0 Pastel Spider")]
    [InlineData("killer bee", "1.0 Super Pastel Spider")]
    [InlineData("Freeway", "1.0 Freeway")]
    [InlineData("Lesser Mojave", "1.0 Lesser/Mojave")]
    [InlineData("Banana Clown male maker", "1.0 Clown male maker Banana")]
    [InlineData("dh Clown Pied", "1.0 het Piebald het Clown")]
    public void Write_TradeNamesAsRead_AreTheMakings(string text, string expected) =>
        Assert.Equal(expected, Catalogue.Trade.Write(Catalogue.Trade.Read(text).Value!.ToBelief(Sex.Male).Value!.MostLikely()));

    [Fact]
    public void EvidenceOf_EveryClaim_NamesKnownSourcesOnly()
    {
        IEnumerable<Evidence> all =
        [
            Catalogue.SexSystemEvidence,
            .. Catalogue.Loci.Select(l => l.Evidence),
            .. Catalogue.Alleles.Select(a => a.Evidence),
            .. Catalogue.Forms.Select(f => f.Evidence),
            .. Catalogue.Masks.Select(m => m.Evidence),
            .. Catalogue.Combinations.Select(c => c.Evidence),
            .. Catalogue.Looks.Select(l => l.Evidence),
            .. Catalogue.Species.Dangers.Select(d => d.Evidence),
            .. Catalogue.Biology.Figures.Values.Select(f => f.Evidence),
        ];

        Assert.All(all, e => Assert.All(Catalogue.SourcesOf(e), s => Assert.NotEqual(0, (int)s.Seen)));
    }
}
