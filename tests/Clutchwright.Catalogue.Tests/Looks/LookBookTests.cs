using Clutchwright.Catalogue.Tests.Folders;
using Clutchwright.Genetics.Loci;
using Clutchwright.Genetics.Looks;
using Xunit;

namespace Clutchwright.Catalogue.Tests.Looks;

public sealed class LookBookTests
{
    private static SpeciesCatalogue Catalogue => TestFolder.Catalogue;

    [Fact]
    public void LookOf_StatedForms_IsTheEntry()
    {
        var look = Catalogue.LookOf(Forms("flame"), AgeStage.Adult)!;

        Assert.True(look.IsRecorded);
        Assert.Empty(look.ComposedFrom);
        Assert.Equal(("strong-orange", "light-brown", "black"), (look.Tones.Ground.Id, look.Tones.Pattern.Id, look.Tones.Eye.Id));
        Assert.Equal("orange", look.Ground);
    }

    [Fact]
    public void LookOf_StageLeftOut_IsAsTheOneBefore()
    {
        Assert.Equal("dark-brown", Catalogue.LookOf([], AgeStage.Subadult)!.Tones.Ground.Id);
        Assert.Equal("moderate-brown", Catalogue.LookOf([], AgeStage.Adult)!.Tones.Ground.Id);
    }

    [Fact]
    public void LookOf_EntryPutTogetherByItsWriter_IsStatedAndNotRecorded()
    {
        var look = Catalogue.LookOf(Forms("pale", "flame"), AgeStage.Adult)!;

        Assert.False(look.IsRecorded);
        Assert.Empty(look.ComposedFrom);
        Assert.Equal(EvidenceGrade.Disputed, look.Evidence!.Grade);
    }

    [Fact]
    public void LookOf_FormsWithoutAnEntry_IsComposedAndSaysSo()
    {
        var look = Catalogue.LookOf(Forms("dot", "flame"), AgeStage.Hatchling)!;

        Assert.False(look.IsRecorded);
        Assert.Null(look.Evidence);
        Assert.Equal(["Dot", "Flame"], look.ComposedFrom.Select(p => p.Of)); // the stronger last
        Assert.Equal("strong-orange", look.Tones.Ground.Id);
        Assert.Equal("orange", look.Ground);
        Assert.Equal("dotted", look.Form); // Flame says nothing of the form
        Assert.Equal("orange", look.Head);
    }

    [Fact]
    public void LookOf_ComposedWithAWhole_TakesTheLargestStatedLooks()
    {
        var look = Catalogue.LookOf(Forms("pale", "flame", "dot"), AgeStage.Hatchling)!;

        Assert.Equal(["Dot", "Pale Flame"], look.ComposedFrom.Select(p => p.Of));
        Assert.Equal("white", look.Tones.Ground.Id);
    }

    [Fact]
    public void LookOf_FormWithoutAnyLook_IsNamedAsUnknown()
    {
        var look = Catalogue.LookOf(Forms("flame", "smoke"), AgeStage.Hatchling)!;

        Assert.Equal(["smoke"], look.Unknown.Select(f => f.Id));
        Assert.Equal(["Flame"], look.ComposedFrom.Select(p => p.Of));
    }

    [Fact]
    public void LookOf_OrderOfForms_DoesNotMatter()
    {
        var one = Catalogue.LookOf(Forms("pale", "dot", "ember"), AgeStage.Adult)!;
        var other = Catalogue.LookOf(Forms("ember", "dot", "pale"), AgeStage.Adult)!;

        Assert.Equal(one.Tones, other.Tones);
        Assert.Equal(one.ComposedFrom, other.ComposedFrom);
    }

    private static Expression[] Forms(params string[] ids) =>
        ids.Select(i => Catalogue.Species.FindExpression(i)!).ToArray();
}
