using Clutchwright.Catalogue.TradeTexts;
using Clutchwright.Genetics.Loci;
using Xunit;

namespace Clutchwright.Catalogue.Tests.TradeTexts;

public sealed class TradeTextReadTests
{
    // What each label means: common practice, no source.
    [Theory]
    [InlineData("Clown", "mc1r", "clown/clown 1")]
    [InlineData("visual Clown", "mc1r", "clown/clown 1")]
    [InlineData("Super Clown", "mc1r", "clown/clown 1")]
    [InlineData("het Clown", "mc1r", "+/clown 1")]
    [InlineData("100% het Clown", "mc1r", "+/clown 1")]
    [InlineData("66% het Clown", "mc1r", "+/+ 1/3, +/clown 2/3")]
    [InlineData("67% het Clown", "mc1r", "+/+ 1/3, +/clown 2/3")]
    [InlineData("66 % poss het Clown", "mc1r", "+/+ 1/3, +/clown 2/3")]
    [InlineData("66 het clown", "mc1r", "+/+ 1/3, +/clown 2/3")]
    [InlineData("33% het Clown", "mc1r", "+/+ 2/3, +/clown 1/3")]
    [InlineData("50% ph Clown", "mc1r", "+/+ 1/2, +/clown 1/2")]
    [InlineData("25% possible het Clown", "mc1r", "+/+ 3/4, +/clown 1/4")]
    [InlineData("12.5% het Clown", "mc1r", "+/+ 7/8, +/clown 1/8")]
    [InlineData("possible het Clown", "mc1r", "+/+ 1/2, +/clown 1/2")]
    [InlineData("poss. het Clown", "mc1r", "+/+ 1/2, +/clown 1/2")]
    [InlineData("ph Clown", "mc1r", "+/+ 1/2, +/clown 1/2")]
    [InlineData("heterozygous for Clown", "mc1r", "+/clown 1")]
    [InlineData("double het Clown Pied", "pied", "+/pied 1")]
    [InlineData("dh Clown & Pied", "mc1r", "+/clown 1")]
    [InlineData("triple het Clown, Pied and Albino", "tyr", "+/albino 1")]
    [InlineData("Pastel het Clown Pied", "pied", "+/pied 1")]
    [InlineData("het Clown Pastel", "pastel", "+/pastel 1")]
    [InlineData("66% het Clown Pied", "pied", "+/+ 1/3, +/pied 2/3")]
    [InlineData("het Clown/Pied", "pied", "+/pied 1")]
    [InlineData("Super Mojave", "bel", "mojave/mojave 1")]
    [InlineData("homozygous Mojave", "bel", "mojave/mojave 1")]
    [InlineData("supermojave", "bel", "mojave/mojave 1")]
    [InlineData("Mojave/Lesser", "bel", "lesser/mojave 1")]
    [InlineData("Lesser Mojave", "bel", "lesser/mojave 1")]
    [InlineData("Mystic Potion", "bel", "mojave/mystic 1")]
    [InlineData("Cryptic het Clown", "mc1r", "clown/cryptic 1")]
    [InlineData("Cryptic 66% het Clown", "mc1r", "+/cryptic 1/3, clown/cryptic 2/3")]
    [InlineData("Albino Candy", "tyr", "albino/candy 1")]
    [InlineData("Spider", "spider", "+/spider 1")]
    [InlineData("Super Spider", "spider", "spider/spider 1")]
    [InlineData("Bumblebee", "pastel", "+/pastel 1")]
    [InlineData("bumble-bee", "spider", "+/spider 1")]
    [InlineData("KILLERBEE", "pastel", "pastel/pastel 1")]
    [InlineData("Black Pastel", "bp", "+/black-pastel 1")]
    [InlineData("Black Pastel", "pastel", "not named")]
    [InlineData("Super  black-pastel", "bp", "black-pastel/black-pastel 1")]
    [InlineData("Black, Pastel", "bp", "not read")]
    [InlineData("Pastel + Clown", "mc1r", "clown/clown 1")]
    [InlineData("Pastel, Clown and Pied", "pied", "pied/pied 1")]
    [InlineData("Pastel (het Clown)", "mc1r", "+/clown 1")]
    [InlineData("clown/clown", "mc1r", "clown/clown 1")]
    [InlineData("Pastel/+", "pastel", "+/pastel 1")]
    [InlineData("+/pastel", "pastel", "+/pastel 1")]
    [InlineData("possible Pastel", "pastel", "+/+ 1/2, +/pastel 1/2")]
    [InlineData("Pastel 33% possible Super Pastel", "pastel", "+/pastel 2/3, pastel/pastel 1/3")]
    [InlineData("50% het Albino 25% het Candy", "tyr", "+/+ 1/4, +/albino 1/2, +/candy 1/4")]
    [InlineData("het Bumblebee", "pastel", "not read")]
    [InlineData("het Albino Clown Pied Dream", "tyr", "+/albino 1")]
    [InlineData("Normal het Clown", "mc1r", "+/clown 1")]
    public void Read_TubLabel_GivesPairsWithExactChances(string text, string locus, string expected)
    {
        var outcome = SampleSpecies.Trade.Read(text);

        Assert.Equal(expected, outcome.IsRead ? SampleSpecies.Pairs(outcome.Value, locus) : "not read");
    }

    [Theory]
    [InlineData("1.0 Clown", Sex.Male)]
    [InlineData("Clown 1.0", Sex.Male)]
    [InlineData("male Clown", Sex.Male)]
    [InlineData("0.1 Clown", Sex.Female)]
    [InlineData("FEMALE clown", Sex.Female)]
    [InlineData("♀ Clown", Sex.Female)]
    [InlineData("0.0.1 Clown", null)]
    [InlineData("Clown", null)]
    [InlineData("male maker Banana", Sex.Male)]
    public void Read_Sex_IsTaken(string text, Sex? expected) =>
        Assert.Equal(expected, SampleSpecies.Trade.Read(text).Value!.Sex);

    [Theory]
    [InlineData("possible het Clown", 0, 12, "taken as 50 %")]
    [InlineData("Pastel ph Clown", 7, 2, "taken as 50 %")]
    [InlineData("Super Clown", 0, 11, "is recessive")]
    [InlineData("1.0 Banana", 4, 6, "rides on X or Y is not told")]
    [InlineData("1.0 het Left Right", 4, 8, "are linked")]
    [InlineData("het Pastel", 0, 10, "shows in one copy")]
    public void Read_WhatTheTextLeavesOpen_IsNoted(string text, int position, int length, string words)
    {
        var note = Assert.Single(SampleSpecies.Trade.Read(text).Value!.Notes);

        Assert.Equal((position, length), (note.Position, note.Length));
        Assert.Contains(words, note.Text, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("0.1 Banana")]
    [InlineData("1.0 Super Banana")]
    [InlineData("1.0 male maker Banana")]
    [InlineData("1.0 Pastel Clown")]
    [InlineData("1.0 Left Right")]
    [InlineData("1.0 het Left Right (Left Right/+ +)")]
    public void Read_WhatIsWhollyTold_HasNoNote(string text) =>
        Assert.Empty(SampleSpecies.Trade.Read(text).Value!.Notes);

    // Faulty texts, and where the fault stands: position from 0.
    [Theory]
    [InlineData("", TextProblemKind.Empty, 0, 0)]
    [InlineData("Pastel Clwon", TextProblemKind.UnknownWord, 7, 5)]
    [InlineData("Pastel Black Pstel", TextProblemKind.UnknownWord, 7, 11)]
    [InlineData("Pastel # Clown", TextProblemKind.UnknownWord, 7, 1)]
    [InlineData("Lesser Mojave Mystic", TextProblemKind.TooManyAlleles, 14, 6)]
    [InlineData("Lesser/Mojave/Mystic", TextProblemKind.TooManyAlleles, 14, 6)]
    [InlineData("Lesser/Mojave Mystic", TextProblemKind.TooManyAlleles, 14, 6)]
    [InlineData("0.1 female maker Banana", TextProblemKind.NotAMaker, 4, 19)]
    [InlineData("0.1 Banana male maker", TextProblemKind.NotAMaker, 4, 6)]
    [InlineData("male maker Pastel", TextProblemKind.NotAMaker, 0, 10)]
    [InlineData("male maker Super Banana", TextProblemKind.NotAMaker, 0, 23)]
    [InlineData("66% het 100% het Clown", TextProblemKind.Contradiction, 0, 12)]
    [InlineData("Clown het Clown", TextProblemKind.Contradiction, 6, 9)]
    [InlineData("66% het Clown 100% het Clown", TextProblemKind.Contradiction, 14, 14)]
    [InlineData("Pastel Super Pastel", TextProblemKind.Contradiction, 7, 12)]
    [InlineData("Bumblebee Pastel", TextProblemKind.Contradiction, 10, 6)]
    [InlineData("Albino het Candy", TextProblemKind.Contradiction, 7, 9)]
    [InlineData("75% het Albino 50% het Candy", TextProblemKind.Contradiction, 15, 13)]
    [InlineData("Normal Pastel", TextProblemKind.Contradiction, 7, 6)]
    [InlineData("het Pastel Clown", TextProblemKind.Contradiction, 0, 16)]
    [InlineData("double het Clown Pied Albino", TextProblemKind.Contradiction, 0, 28)]
    [InlineData("het Albino/Candy", TextProblemKind.Contradiction, 0, 10)]
    [InlineData("0% het Clown", TextProblemKind.Contradiction, 0, 2)]
    [InlineData("101% het Clown", TextProblemKind.Contradiction, 0, 4)]
    [InlineData("1.0 0.1 Clown", TextProblemKind.Contradiction, 4, 3)]
    [InlineData("66% Clown", TextProblemKind.Incomplete, 0, 3)]
    [InlineData("Pastel 66%", TextProblemKind.Incomplete, 7, 3)]
    [InlineData("Pastel het", TextProblemKind.Incomplete, 7, 3)]
    [InlineData("double het Clown", TextProblemKind.Incomplete, 0, 10)]
    [InlineData("double Clown", TextProblemKind.Incomplete, 0, 6)]
    [InlineData("Mojave/", TextProblemKind.Incomplete, 6, 1)]
    [InlineData("het Spider", TextProblemKind.NotCarriedUnseen, 0, 10)]
    [InlineData("het Mystic Potion", TextProblemKind.NotCarriedUnseen, 0, 17)]
    [InlineData("Pastel/Clown", TextProblemKind.NotOneLocus, 0, 12)]
    [InlineData("Mystic Potion/Lesser", TextProblemKind.NotOneLocus, 0, 13)]
    [InlineData("Blue-eyed White", TextProblemKind.Ambiguous, 0, 15)]
    [InlineData("1.2 Clown", TextProblemKind.NotHere, 0, 3)]
    [InlineData("Clown or Pied", TextProblemKind.NotHere, 6, 2)]
    [InlineData("0.1 (X Banana/Y +)", TextProblemKind.Contradiction, 4, 14)]
    [InlineData("Right (Left +/+ +)", TextProblemKind.Contradiction, 6, 12)]
    public void Read_Fault_IsToldAtItsPlace(string text, TextProblemKind kind, int position, int length)
    {
        var problem = SampleSpecies.Trade.Read(text).Problem!;

        Assert.Equal((kind, position, length), (problem.Kind, problem.Position, problem.Length));
    }

    [Theory]
    [InlineData("Pastle", "Pastel")]
    [InlineData("Clwon", "Clown")]
    [InlineData("Moajve", "Mojave")]
    [InlineData("hte Clown", "het")]
    [InlineData("bumblbee", "Bumblebee")]
    public void Read_UnknownWord_OffersTheNearestSpellingFirst(string text, string nearest) =>
        Assert.Equal(nearest, SampleSpecies.Trade.Read(text).Problem!.Spellings[0]);

    [Fact]
    public void Read_AmbiguousForm_ListsThePairsItMayMean() =>
        Assert.Contains("Lesser/Lesser, Lesser/Mojave", SampleSpecies.Trade.Read("BEL").Problem!.Text, StringComparison.Ordinal);

    [Theory]
    [InlineData("1.0 Banana", "1.0 Banana", "0,1 1/2; 1,0 1/2")]
    [InlineData("1.0 male maker Banana", "1.0 male maker Banana", "0,1 1")]
    [InlineData("1.0 Banana (male maker)", "1.0 male maker Banana", "0,1 1")]
    [InlineData("1.0 female maker Banana", "1.0 female maker Banana", "1,0 1")]
    [InlineData("1.0 X Banana/Y +", "1.0 female maker Banana", "1,0 1")]
    [InlineData("(X +/Y Banana)", "1.0 male maker Banana", "0,1 1")]
    [InlineData("(Y Banana/X +)", "1.0 male maker Banana", "0,1 1")]
    [InlineData("1.0 90% male maker Banana", "1.0 90% male maker Banana", "0,1 9/10; 1,0 1/10")]
    [InlineData("1.0 66% het Banana", "1.0 66% possible Banana", "0,0 1/3; 0,1 1/3; 1,0 1/3")]
    public void ToBelief_SexLinkedInMale_KeepsWhichChromosome(string text, string written, string diplotypes)
    {
        var belief = SampleSpecies.Trade.Read(text).Value!.ToBelief(Sex.Male).Value!;

        var shown = belief[SampleSpecies.Species.SexGroup]
            .OrderBy(w => w.Value.First).ThenBy(w => w.Value.Second)
            .Select(w => $"{w.Value.First},{w.Value.Second} {w.Weight}");
        Assert.Equal(diplotypes, string.Join("; ", shown));
        Assert.Equal(written, SampleSpecies.Trade.Write(belief));
    }

    [Fact]
    public void ToBelief_TwoLinkedLociOfUnknownPhase_TakesBothPhasesAsEquallyLikely()
    {
        var group = SampleSpecies.Species.FindLocus("left")!.Group;

        var belief = SampleSpecies.Trade.Read("0.1 het Left Right").Value!.ToBelief(Sex.Female).Value!;

        // Haplotype codes: Left counts 1, Right counts 2.
        Assert.Equal(
            ["0/3 1/2", "1/2 1/2"],
            belief[group].Select(w => $"{w.Value.First}/{w.Value.Second} {w.Weight}"));
    }

    [Fact]
    public void ToBelief_OtherSexThanTold_IsAContradiction()
    {
        var animal = SampleSpecies.Trade.Read("1.0 Clown").Value!;

        Assert.Equal(TextProblemKind.Contradiction, animal.ToBelief(Sex.Female).Problem!.Kind);
    }

    [Fact]
    public void ToBelief_MakerAsFemale_IsNotAMaker()
    {
        var animal = SampleSpecies.Trade.Read("male maker Banana").Value!;

        Assert.Equal(TextProblemKind.NotAMaker, animal.ToBelief(Sex.Female).Problem!.Kind);
    }
}
