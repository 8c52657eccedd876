using Clutchwright.Catalogue.Looks;
using Clutchwright.Catalogue.Tests.Folders;
using Clutchwright.Genetics.Loci;
using CsCheck;
using Xunit;

namespace Clutchwright.Catalogue.Tests.Looks;

public sealed class LookSearchTests
{
    private static readonly Lazy<SpeciesCatalogue> Shipped = new(() =>
        CatalogueFolder.Read(Path.Combine(AppContext.BaseDirectory, "catalogue", "python-regius")).Catalogue!);

    private static readonly Gen<ToneWish> AnyTone = Gen.Select(
        Gen.Int[1, 3], Gen.Bool, Gen.Byte, Gen.Byte, Gen.Byte, Gen.Double[4, 40],
        (place, isAny, r, g, b, most) => new ToneWish(
            isAny ? [TonePlace.Ground, TonePlace.Pattern] : [(TonePlace)place], [CielabColour.FromSrgb(new(r, g, b))], most));

    private static readonly Gen<LookWish> AnyWish = Gen.Select(
        AnyTone.List[0, 2],
        Gen.Enum<LookCourse>(),
        Gen.Enum<AgeStage>(),
        Gen.Enum<WhiteExtent>(),
        Gen.Bool,
        Gen.Int[1, 2],
        (tones, course, stage, white, hasWhite, genes) => new LookWish
        {
            Tones = tones,
            Course = tones.Count == 0 && course is LookCourse.Comes or LookCourse.Fades ? LookCourse.Holds : course,
            Stage = stage,
            White = hasWhite ? (white, WhiteExtent.All) : null,
            MostGenes = genes,
        });

    [Fact]
    public void FindLooks_AnyWishOfTheMadeUpSpecies_IsWhatTheSlowTwinFinds() =>
        AnyWish.Sample(wish => AssertAsTheTwin(TestFolder.Catalogue, wish), iter: 200);

    [Fact]
    public void FindLooks_AnyWishOfTheShippedSpecies_IsWhatTheSlowTwinFinds() =>
        AnyWish.Sample(wish => AssertAsTheTwin(Shipped.Value, wish), iter: 4);

    [Fact]
    public void FindLooks_ThreeGenes_IsWhatTheSlowTwinFinds() => AssertAsTheTwin(TestFolder.Catalogue, new LookWish
    {
        Tones = [new([TonePlace.Ground], [CielabColour.FromSrgb(SrgbColour.Parse("#C07030"))], 60)],
        MostGenes = 3,
    });

    [Fact]
    public void FindLooks_StrongYellowPatternAndWhitePatches_FirstIsRecordedAndClose()
    {
        var yellow = Shipped.Value.Tones.First(t => t.Name == "strong yellow").Lab;
        var wish = new LookWish
        {
            Tones = [new([TonePlace.Pattern], [yellow], 12)],
            White = (WhiteExtent.Patches, WhiteExtent.Patches),
            Course = LookCourse.Holds,
        };

        var found = Shipped.Value.FindLooks(wish, TestContext.Current.CancellationToken).Take(10).ToArray();

        // Pattern and white of a Piebald with a yellow gene: common practice of the trade, no source.
        Assert.NotEmpty(found);
        Assert.All(found, f => Assert.Contains(f.Forms, e => e.Id == "piebald" || Shipped.Value.LookOf(f.Forms, AgeStage.Adult)!.White == WhiteExtent.Patches));
        Assert.All(found, f => Assert.InRange(f.Distance!.Value, 0, 12));
    }

    [Fact]
    public void FindLooks_OfAllelesAtHand_NamesNoOther()
    {
        var catalogue = Shipped.Value;
        var held = new HashSet<Allele> { catalogue.FindAllele("Pastel")!.Allele, catalogue.FindAllele("Clown")!.Allele };

        var found = catalogue.FindLooks(new() { AtHand = held, IsOfThoseAtHand = true }, TestContext.Current.CancellationToken).ToArray();

        Assert.Contains(found, f => f.Forms.Count() == 2);
        Assert.All(found, f => Assert.All(f.Made, m => Assert.Empty(m.Missing)));
        Assert.All(found, f => Assert.All(f.Forms, e => Assert.Contains(e.Locus, held.Select(a => a.Locus))));
    }

    [Fact]
    public void FindLooks_WithAndWithout_AreObeyed()
    {
        var catalogue = Shipped.Value;
        var (clown, spider) = (catalogue.FindAllele("Clown")!.Allele, catalogue.FindAllele("Spider")!.Allele);

        var found = catalogue.FindLooks(new() { With = [clown], Without = [spider] }, TestContext.Current.CancellationToken).Take(200).ToArray();

        Assert.Equal(200, found.Length);
        Assert.All(found, f => Assert.Contains(f.Made, m => m.Form.Locus == clown.Locus));
        Assert.DoesNotContain(found, f => f.Made.Any(m => m.Form.Locus == spider.Locus && (m.First == spider.Index || m.Second == spider.Index)));
    }

    [Fact]
    public void FindLooks_Suffering_IsToldAndCanBeLeftOut()
    {
        var catalogue = Shipped.Value;
        var spider = catalogue.FindAllele("Spider")!.Allele;

        var told = catalogue.FindLooks(new() { With = [spider], MostGenes = 1 }, TestContext.Current.CancellationToken).ToArray();

        Assert.NotEmpty(told);
        Assert.All(told, f => Assert.Contains(f.Dangers, d => d.Id == "spider-wobble"));
        Assert.Empty(catalogue.FindLooks(new() { With = [spider], IsWithoutHarm = true }, TestContext.Current.CancellationToken));
    }

    [Theory]
    [InlineData(0)]
    [InlineData(4)]
    public void FindLooks_NumberOfGenesOutside_Throws(int genes) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => Shipped.Value.FindLooks(new() { MostGenes = genes }, TestContext.Current.CancellationToken));

    private static void AssertAsTheTwin(SpeciesCatalogue catalogue, LookWish wish)
    {
        var expected = SlowLooks.Find(catalogue, wish);

        var found = catalogue.FindLooks(wish, TestContext.Current.CancellationToken).ToArray();

        Assert.Equal(expected.Keys.Order(StringComparer.Ordinal), found.Select(SlowLooks.Key).Order(StringComparer.Ordinal));
        Assert.All(found, f => Assert.Equal(expected[SlowLooks.Key(f)], f.Steps.Sum, 9));
        Assert.Equal(found.Select(f => f.Steps.Sum).Order(), found.Select(f => f.Steps.Sum));
    }
}
