using Clutchwright.Genetics.Dangers;
using Clutchwright.Genetics.Genotypes;
using Clutchwright.Genetics.Loci;
using Clutchwright.Genetics.Numbers;
using Xunit;

namespace Clutchwright.Catalogue.Tests.Folders;

/// <summary>The made-up species: another sex system, other genes, other ages, and not a line of code for it.</summary>
public sealed class SpeciesCatalogueTests
{
    private static SpeciesCatalogue Catalogue => TestFolder.Catalogue;

    [Fact]
    public void Read_ZwSpecies_IsWhatItsFilesSay()
    {
        var species = Catalogue.Species;

        Assert.Equal(SexSystem.ZW, species.SexSystem);
        Assert.Equal(["pale", "smoke", "stripe", "dot", "flame", "ember"], species.Loci.Select(l => l.Id));
        Assert.Same(species.FindLocus("stripe")!.Group, species.FindLocus("dot")!.Group);
        Assert.Same(species.SexGroup, species.FindLocus("ember")!.Group);
        Assert.Equal(Probability.Ratio(9, 10), species.FindAllele("flame")!.Penetrance);
        Assert.Equal(("Lacerta ficta", "made-up lizard", "Wildtype"), (Catalogue.Name, Catalogue.TradeName, Catalogue.NormalName));
        Assert.Equal((2.0, 0.2, 1.0, 3.0), (Catalogue.Biology.Eggs!.Mean, Catalogue.Biology.Eggs.Sd, Catalogue.Biology.Eggs.Least, Catalogue.Biology.Eggs.Most));
        Assert.True(Catalogue.Biology.Laying!.IsValue);
        Assert.Null(Catalogue.Biology.HatchRate);
    }

    [Fact]
    public void Read_Dangers_KeepSexSurvivalAndGrounds()
    {
        var danger = Catalogue.Species.Dangers.Single(d => d.Id == "flame-pale");

        Assert.Equal((Sex.Female, Severity.Lethal), (danger.Sex, danger.Severity));
        Assert.Equal(Probability.Ratio(1, 4), danger.Viability.Egg);
        Assert.Equal(EvidenceGrade.Reported, danger.Evidence.Grade);
    }

    [Fact]
    public void Read_Frequency_IsKeptWithItsGrounds()
    {
        using var folder = new TestFolder();
        folder.Change("loci/all.yaml", "two-copies: white\n", "two-copies: white\n        frequency: {value: 0.03, evidence: {grade: published, source: [invented]}}\n");

        var read = CatalogueFolder.Read(folder.Path).Catalogue!;

        var frequency = read.FindAllele("Pale")!.Frequency!;
        Assert.Equal(0.03, frequency.Value);
        Assert.Equal(EvidenceGrade.Published, frequency.Evidence.Grade);
        Assert.All(Catalogue.Alleles, a => Assert.Null(a.Frequency));
    }

    [Theory]
    [InlineData("{value: 0, evidence: {grade: reported}}", "it must be more than 0")]
    [InlineData("{value: 0.5}", "evidence")]
    [InlineData("0.5", "frequency")]
    public void Read_FrequencyThatCannotBe_IsAProblem(string text, string told)
    {
        using var folder = new TestFolder();
        folder.Change("loci/all.yaml", "two-copies: white\n", $"two-copies: white\n        frequency: {text}\n");

        Assert.Contains(told, Assert.Single(folder.Problems()), StringComparison.Ordinal);
    }

    [Fact]
    public void Read_FrequenciesOfOneLocusAboveOne_AreAProblem()
    {
        using var folder = new TestFolder();
        const string Half = ", frequency: {value: 0.6, evidence: {grade: reported}}, evidence";
        folder.Change("loci/all.yaml", "two-copies: grey, evidence", "two-copies: grey" + Half);
        folder.Change("loci/all.yaml", "one-copy: darker, two-copies: black, evidence", "one-copy: darker, two-copies: black" + Half);

        Assert.Contains("sum to more than 1", Assert.Single(folder.Problems()), StringComparison.Ordinal);
    }

    [Fact]
    public void EvidenceOf_Allele_NamesItsSource()
    {
        var pale = Catalogue.FindAllele("PALE")!;

        Assert.Equal(EvidenceGrade.Published, Catalogue.EvidenceOf(pale.Allele).Grade);
        Assert.Equal("Invented for tests.", Assert.Single(Catalogue.SourcesOf(pale.Evidence)).Citation);
    }

    [Fact]
    public void EntryOf_Forms_AreStatedOrFollowFromTheAllele()
    {
        var smoke = Catalogue.FindForm("Smoke")!;
        var superDot = Catalogue.FindForm("super dot")!;
        var soot = Catalogue.Species.FindAllele("soot")!.Locus;
        var unstated = Catalogue.EntryOf(soot.ExpressionOf(2, 3));

        Assert.Equal(2, smoke.Pairs.Count);
        Assert.Equal("densely dotted", superDot.Shows);
        Assert.Equal("Soot", unstated.Expression.Name); // Tar is recessive and hides behind Soot
        Assert.Equal("Coal", Catalogue.FindForm("anthracite")!.Expression.Name);
    }

    [Theory]
    [InlineData(0, AgeStage.Hatchling)]
    [InlineData(1.9, AgeStage.Hatchling)]
    [InlineData(2, AgeStage.Juvenile)]
    [InlineData(6, AgeStage.Subadult)]
    [InlineData(120, AgeStage.Adult)]
    public void StageAt_Months_FollowsTheFolder(double months, AgeStage expected) =>
        Assert.Equal(expected, Catalogue.Stages.StageAt(months));

    [Fact]
    public void CombinationsOf_LargerLook_FindsTheLargestNameInIt()
    {
        var forms = Forms("flame", "ember", "dot", "pale");

        Assert.Equal(["Great Bonfire"], Catalogue.CombinationsOf(forms).Select(c => c.Name));
        Assert.Equal(["Bonfire"], Catalogue.CombinationsOf(Forms("flame", "ember")).Select(c => c.Name));
        Assert.Empty(Catalogue.CombinationsOf(Forms("flame")));
    }

    // In a ZW species the dam is the one with two different chromosomes: what rides on her W goes to daughters.
    [Theory]
    [InlineData("0.1 female maker Ember", 0, 1)]
    [InlineData("0.1 male maker Ember", 1, 0)]
    [InlineData("0.1 (Z Ember/W +)", 1, 0)]
    [InlineData("campfire female maker", 0, 1)]
    public void Read_MakerInZw_IsTheDam(string text, int onZ, int onW)
    {
        var animal = Catalogue.Trade.Read(text).Value!;

        var belief = animal.ToBelief(Sex.Female).Value!;
        Assert.Equal(Sex.Female, animal.Sex);
        Assert.Equal(new Diplotype(onZ, onW), Assert.Single(belief[Catalogue.Species.SexGroup]).Value);
        Assert.False(animal.ToBelief(Sex.Male).IsRead);
    }

    [Theory]
    [InlineData("1.0 ember pale", "1.0 Pale Ember")]
    [InlineData("1.0 made-up lizard, cinder", "1.0 Ash")]
    [InlineData("0.1 plain", "0.1 Wildtype")]
    [InlineData("1.0 Campfire 66% het stripe", "1.0 Flame Ember, 66% het Stripe")]
    [InlineData("1.0 anthracite", "1.0 Coal")]
    [InlineData("1.0 soot tar", "1.0 Soot, het Tar")]
    public void Write_WhatWasRead_UsesTheFoldersNames(string text, string expected)
    {
        var animal = Catalogue.Trade.Read(text).Value!;

        Assert.Equal(expected, Catalogue.Trade.Write(animal.ToBelief(animal.Sex!.Value).Value!));
    }

    private static Genetics.Looks.Expression[] Forms(params string[] ids) =>
        ids.Select(i => Catalogue.Species.FindExpression(i)!).ToArray();
}
