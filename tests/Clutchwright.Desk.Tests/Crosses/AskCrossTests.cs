using Clutchwright.Desk.Crosses;
using Clutchwright.Desk.Tests.Testing;
using Clutchwright.Genetics.Loci;
using Clutchwright.Genetics.Numbers;

namespace Clutchwright.Desk.Tests.Crosses;

/// <summary>What a keeper asks of a pair, on the shipped catalogue.</summary>
public class AskCrossTests
{
    [Theory]
    [InlineData(1.0, 1.0, 0.866516)] // 1 - (3/4)^7, [computed: table of 1 - (3/4)^n]
    [InlineData(0.5, 1.0, 0.607304)] // 1 - (7/8)^7 [computed]
    [InlineData(0.5, 0.8, 0.521703)] // 1 - (9/10)^7 [computed]
    public async Task RunAsync_EggsLaid_AreThinnedByBothShares(double fertility, double hatchRate, double atLeastOne)
    {
        var answer = await Shipped.CrossAsync(
            "1.0 het Clown", "0.1 het Clown", q => q with { Wants = ["Clown"], Clutch = new(null, fertility, hatchRate) { Laid = 7 } });

        Assert.Equal(atLeastOne, answer.Wants[0].AtLeastOne.Value, 5e-7);
    }

    [Fact]
    public async Task RunAsync_HetToHet_IsMendelsQuarter()
    {
        // Mendel 1866; 1 - (3/4)^6 = 0.822021, and 11 and 17 eggs for 95 and 99 % [computed; NDSU genetics notes give 10.413 and 16.008].
        var want = await Shipped.WantAsync("1.0 het Clown", "0.1 het Clown", "Clown", eggs: 6);

        Assert.Equal("1/4", want.PerEgg.ToString());
        Assert.Equal(0.822021, want.AtLeastOne.Value, 5e-7);
        Assert.Equal([3, 9, 11, 17], WantOrder(want.EggsFor));
        Assert.Equal([1, 2, 2, 3], WantOrder(want.ClutchesFor));
        Assert.True(want.Ceiling.IsCertain);
    }

    [Fact]
    public async Task RunAsync_SharesThatVaryBetweenClutches_AreSaidAndLowerAtLeastOne()
    {
        // Slugs come by whole clutches (common practice, no source): at least one of a quarter is then less likely than at fixed shares.
        var varying = await Shipped.CrossAsync("1.0 het Clown", "0.1 het Clown", q => q with { Wants = ["Clown"] });
        var same = await Shipped.CrossAsync(
            "1.0 het Clown", "0.1 het Clown", q => q with { Wants = ["Clown"], Clutch = new(null, 0.9, 0.9) });

        Assert.Contains("more in some clutches and less in others", varying.ClutchText, StringComparison.Ordinal);
        Assert.DoesNotContain("more in some clutches", same.ClutchText, StringComparison.Ordinal);
        Assert.Equal(same.MeanGoodEggs, varying.MeanGoodEggs, 1e-9);
        Assert.True(varying.Wants[0].AtLeastOne.Value < same.Wants[0].AtLeastOne.Value - 0.01);
    }

    [Fact]
    public async Task RunAsync_HetToHet_TellsTheHiddenTwoInThree()
    {
        // Normal-looking young of het x het: 2/3 het (common practice, and the textbooks' unaffected sib of an affected).
        var cross = await Shipped.CrossAsync("1.0 het Clown", "0.1 het Clown");

        var normal = cross.Outcomes[0];
        Assert.Equal(("Normal", "3/4"), (normal.Name, normal.PerEgg.ToString()));
        Assert.Equal([("het Clown", "2/3")], normal.Hidden.Select(h => (h.Carries, h.Chance.ToString())));
        Assert.Equal(("Clown", "1/4"), (cross.Outcomes[1].Name, cross.Outcomes[1].PerEgg.ToString()));
        Assert.True(cross.OutcomesShare.IsCertain);
        Assert.False(cross.HasMoreOutcomes);
    }

    [Fact]
    public async Task RunAsync_PossibleHetToVisual_IsAMixtureOfWhatItMayBe()
    {
        // 1 - (1/3 + 2/3 (1/2)^5) = 0.645833 [computed]; "66 %" is 2/3.
        var want = await Shipped.WantAsync("1.0 66% het Clown", "0.1 Clown", "Clown", eggs: 5);

        Assert.Equal(0.645833, want.AtLeastOne.Value, 5e-7);
        Assert.Equal("1/3", want.PerEgg.ToString());
        Assert.Equal("2/3", want.Ceiling.ToString());
        Assert.Equal([2, null, null, null], WantOrder(want.EggsFor)); // at most 2/3 however many eggs
    }

    [Theory]
    [InlineData("66% het Clown", "2/3")]
    [InlineData("50% het Clown", "1/2")]
    [InlineData("33% het Clown", "1/3")]
    [InlineData("poss het Clown", "1/2")]
    public async Task RunAsync_PossibleHet_MeansTheExactFraction(string text, string ceiling) =>
        Assert.Equal(ceiling, (await Shipped.WantAsync($"1.0 {text}", "0.1 Clown", "Clown")).Ceiling.ToString());

    // Keepers say Snow of any line of Axanthic (common practice, no source): which was reckoned with must be told.
    [Fact]
    public async Task RunAsync_NamedCombination_SaysWhatItWasTakenAs() =>
        Assert.Equal(
            "Snow is taken as Albino Axanthic VPI.",
            Assert.Single((await Shipped.CrossAsync("1.0 Snow", "0.1 Normal")).Sire.Notes));

    [Fact]
    public async Task RunAsync_PossibleHetWithoutFigure_SaysHowItWasTaken() =>
        Assert.Contains("50", Assert.Single((await Shipped.CrossAsync("1.0 poss het Clown", "0.1 Clown")).Sire.Notes), StringComparison.Ordinal);

    [Theory]
    [InlineData("male maker Banana", 0.46, 0.04)]
    [InlineData("female maker Banana", 0.04, 0.46)]
    [InlineData("male maker Coral Glow", 0.46, 0.04)]
    public async Task RunAsync_MakerToWildDam_FollowsTheRecombination(string sire, double sons, double daughters)
    {
        // Sire with it on the Y: sons (1-r)/2 mutant and r/2 wild, daughters r/2 and (1-r)/2; on the X mirrored [derived], r = 0.08.
        var cross = await Shipped.CrossAsync($"1.0 {sire}", "0.1 Normal", q => q with { Recombination = Banana(0.08) });

        Assert.Equal(sons, Share(cross, "Banana", Sex.Male), 1e-12);
        Assert.Equal(0.5 - sons, Share(cross, "Normal", Sex.Male), 1e-12);
        Assert.Equal(daughters, Share(cross, "Banana", Sex.Female), 1e-12);
        Assert.Equal(0.5 - daughters, Share(cross, "Normal", Sex.Female), 1e-12);
        Assert.Equal(4, cross.Outcomes.Count);
        Assert.Contains(cross.Warnings, w => w.Code == "recombination-banana" && w.Text.Contains("0.08", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData(0.0)]
    [InlineData(0.08)]
    [InlineData(0.5)]
    public async Task RunAsync_BananaDam_GivesAQuarterEachForAnyRecombination(double recombination)
    {
        // [derived] A dam has two X: what recombination does in males does not matter.
        var cross = await Shipped.CrossAsync("1.0 Normal", "0.1 Banana", q => q with { Recombination = Banana(recombination) });

        Assert.All([Sex.Male, Sex.Female], sex =>
        {
            Assert.Equal(0.25, Share(cross, "Banana", sex), 1e-12);
            Assert.Equal(0.25, Share(cross, "Normal", sex), 1e-12);
        });
        Assert.DoesNotContain(cross.Warnings, w => w.Code.StartsWith("recombination", StringComparison.Ordinal));
    }

    [Fact]
    public async Task RunAsync_FreeRecombination_EqualsAnAutosomalLocus()
    {
        var cross = await Shipped.CrossAsync("1.0 male maker Banana", "0.1 Normal", q => q with { Recombination = Banana(0.5) });

        Assert.All(cross.Outcomes, o => Assert.Equal("1/4", o.PerEgg.ToString()));
    }

    [Fact]
    public async Task RunAsync_NoRecombination_GivesNoUnexpectedSex()
    {
        var cross = await Shipped.CrossAsync("1.0 male maker Banana", "0.1 Normal", q => q with { Recombination = Banana(0.0) });

        Assert.Equal(
            [("Banana", (Sex?)Sex.Male, "1/2"), ("Normal", Sex.Female, "1/2")],
            cross.Outcomes.OrderBy(o => o.Name, StringComparer.Ordinal).Select(o => (o.Name, o.Sex, o.PerEgg.ToString())));
    }

    [Fact]
    public async Task RunAsync_LesserToMojave_GivesAQuarterOfEach()
    {
        // Two alleles of one locus (common practice, no source): 1:1:1:1, and the fourth is the white compound.
        var cross = await Shipped.CrossAsync("1.0 Lesser", "0.1 Mojave");

        Assert.Equal(
            ["Blue-eyed White", "Lesser", "Mojave", "Normal"],
            cross.Outcomes.Select(o => o.Name).Order(StringComparer.Ordinal));
        Assert.All(cross.Outcomes, o => Assert.Equal("1/4", o.PerEgg.ToString()));
        Assert.Contains(cross.Genotypes, g => g.Notation is "Lesser/Mojave" or "Mojave/Lesser");
    }

    [Theory]
    [InlineData("Normal")]
    [InlineData("Mojave")]
    [InlineData("Super Mojave")]
    [InlineData("Lesser")]
    [InlineData("Purple Passion")]
    [InlineData("Super Pastel Banana het Clown")]
    public async Task RunAsync_TwoCopiesOfLesser_NeverGiveAChickWithoutLesser(string dam)
    {
        var cross = await Shipped.CrossAsync("1.0 Super Lesser", $"0.1 {dam}");

        Assert.NotEmpty(cross.Genotypes);
        Assert.All(cross.Genotypes, g => Assert.Contains("Lesser", g.Notation, StringComparison.Ordinal));
    }

    [Fact]
    public async Task RunAsync_LesserToEveryMember_GivesTheWhiteSnakeWithBlueEyes()
    {
        // The trade's test of membership (common practice, no source). Daddy is left out: its membership is disputed, as the
        // catalogue's note on it says.
        var members = Shipped.Species.FindLocus("bel")!.Alleles.Where(a => !a.IsWild && a.Id != "daddy").ToArray();
        Assert.Equal(9, members.Length);

        foreach (var member in members)
        {
            var cross = await Shipped.CrossAsync("1.0 Lesser", $"0.1 {member.Name}");
            var white = Assert.Single(cross.Outcomes, o => o.Name == "Blue-eyed White");
            Assert.Equal("1/4", white.PerEgg.ToString());
        }

        var daddy = await Shipped.CrossAsync("1.0 Lesser", "0.1 Daddy");
        Assert.DoesNotContain(daddy.Outcomes, o => o.Name == "Blue-eyed White");
        Assert.Contains(daddy.Outcomes, o => o.Name == "Platinum");
    }

    [Theory]
    [InlineData("Phantom", "Phantom")]
    [InlineData("Mystic", "Mystic")]
    [InlineData("Mojave", "Phantom")]
    [InlineData("Mojave", "Mystic")]
    public async Task RunAsync_MauvePairs_AreNotWhite(string sire, string dam)
    {
        // Mauve to grey, not white (common practice, no source).
        var cross = await Shipped.CrossAsync($"1.0 {sire}", $"0.1 {dam}");

        Assert.DoesNotContain(cross.Outcomes, o => o.Name.Contains("White", StringComparison.Ordinal));
        Assert.All(cross.Outcomes.SelectMany(o => o.Look.Words), w => Assert.DoesNotContain("White: all", w, StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("Mojave", "Mojave")]
    [InlineData("Lesser", "Lesser")]
    [InlineData("Lesser", "Phantom")]
    [InlineData("Lesser", "Mystic")]
    public async Task RunAsync_WhitePairs_AreWhiteWithBlueEyes(string sire, string dam)
    {
        var cross = await Shipped.CrossAsync($"1.0 {sire}", $"0.1 {dam}");

        var pair = cross.Outcomes.Single(o => o.Name is "Blue-eyed White" or "Super Mojave");
        Assert.Contains("blue", pair.Look.Stages[^1].Eye!.Name, StringComparison.Ordinal);
        Assert.Contains("white", pair.Look.Stages[^1].Ground!.Name, StringComparison.Ordinal);
    }

    [Fact]
    public async Task RunAsync_TwoCopiesThatDie_ShowsBothTheLossAndTheLivingShare()
    {
        // Of eggs 1/4 fail; of live hatchlings 2/3 carry, as of yellow mice (Castle & Little 1910 [recalled]: 2 yellow : 1 not).
        var cross = await Shipped.CrossAsync("1.0 Spider", "0.1 Spider", q => q with { Wants = ["Spider"] });

        Assert.Equal("3/4", cross.Survival.ToString());
        Assert.Equal([("egg", "1/4")], cross.Losses.Select(l => (l.Stage, l.PerEgg.ToString())));
        Assert.Equal("1/2", cross.Wants[0].PerEgg.ToString());
        Assert.Equal("2/3", cross.Wants[0].PerHatchling.ToString());
        var spider = cross.Outcomes.Single(o => o.Name == "Spider");
        Assert.Equal(("1/2", "2/3"), (spider.PerEgg.ToString(), spider.PerHatchling.ToString()));
        Assert.Contains(cross.Warnings, w => w is { Code: "spider-two-copies", Severity: "lethal", Grade: "disputed" });
        Assert.Contains(cross.Warnings, w => w is { Code: "spider-wobble", Severity: "suffering", Grade: "published", Sources.Count: > 0 });
        Assert.Contains(cross.Warnings, w => w.Code == "law" && w.Text.Contains("veterinarian", StringComparison.Ordinal));
    }

    [Fact]
    public async Task RunAsync_Ivory_HidesPastelAndNotLeopardAndKeepsTheHiddenChance()
    {
        // The white of Ivory hides nearly everything; Leopard shows through it strongly (common practice, no source).
        var cross = await Shipped.CrossAsync("1.0 Yellow Belly Pastel", "0.1 Yellow Belly Leopard", q => q with { Wants = ["Ivory Pastel", "Ivory Pastel Leopard"] });

        var plain = cross.Outcomes.Single(o => o.Name == "Ivory");
        Assert.Equal("1/8", plain.PerEgg.ToString());
        Assert.Contains(plain.Hidden, h => h.Carries == "Pastel" && h.Chance.ToString() == "1/2");
        var leopard = cross.Outcomes.Single(o => o.Name.Contains("Ivory", StringComparison.Ordinal) && o.Name.Contains("Leopard", StringComparison.Ordinal));
        Assert.Equal("1/8", leopard.PerEgg.ToString());
        Assert.Contains(leopard.Hidden, h => h.Carries == "Pastel" && h.Chance.ToString() == "1/2");
        Assert.DoesNotContain(cross.Outcomes, o => o.Name.Contains("Ivory", StringComparison.Ordinal) && o.Name.Contains("Pastel", StringComparison.Ordinal));
        Assert.Equal("1/8", cross.Wants[0].PerEgg.ToString()); // Leopard left open
        Assert.Equal("1/16", cross.Wants[1].PerEgg.ToString());
    }

    [Fact]
    public async Task RunAsync_TwoDoubleHets_IsNineThreeThreeOne()
    {
        // Mendel 1866, seeds of 15 plants: 315, 101, 108, 32, to be expected as 9:3:3:1.
        var cross = await Shipped.CrossAsync("1.0 double het Clown Piebald", "0.1 double het Clown Piebald");

        Assert.Equal(["9/16", "3/16", "3/16", "1/16"], cross.Outcomes.Select(o => o.PerEgg.ToString()));
        Assert.Equal(9, cross.Genotypes.Count);
        Assert.Equal(["4", "2", "2", "2", "2", "1", "1", "1", "1"], cross.Genotypes.Select(g => (g.PerEgg.Exact!.Value * 16).ToString()));
        Assert.Equal(4, cross.Punnett!.Cells.Count);
        Assert.All(cross.Punnett.Cells, row => Assert.Equal(4, row.Count));
        Assert.Equal("1", cross.Punnett.Cells.SelectMany(r => r).Aggregate(Probability.Impossible, (sum, c) => sum + c.Chance).ToString());
    }

    [Fact]
    public async Task RunAsync_AlbinoToLavenderAlbino_GivesNormalsThatAreDoubleHet()
    {
        // Two loci, TYR and OCA2 (Brown et al. 2022): no compound.
        var cross = await Shipped.CrossAsync("1.0 Albino", "0.1 Lavender Albino");

        var only = Assert.Single(cross.Outcomes);
        Assert.Equal("Normal", only.Name);
        Assert.Equal(["het Albino", "het Lavender Albino"], only.Hidden.Select(h => h.Carries).Order(StringComparer.Ordinal));
        Assert.All(only.Hidden, h => Assert.True(h.Chance.IsCertain));
    }

    [Fact]
    public async Task RunAsync_AlbinoToCandy_GivesTheCompound()
    {
        // One locus, TYR (Brown et al. 2022; the compounds [recalled]): every young is the compound.
        var cross = await Shipped.CrossAsync("1.0 Albino", "0.1 Candy");

        Assert.Equal("Candino", Assert.Single(cross.Outcomes).Name);
    }

    [Fact]
    public async Task RunAsync_Bumblebee_CarriesItsLabel()
    {
        var cross = await Shipped.CrossAsync("1.0 Pastel", "0.1 Spider");

        var bee = cross.Outcomes.Single(o => o.Label == "Bumblebee");
        Assert.Equal("1/4", bee.PerEgg.ToString());
        Assert.True(bee.Look.Stages.Count == 4);
    }

    [Fact]
    public async Task RunAsync_AnyCross_ItsClutchFiguresFitTogether()
    {
        var cross = await Shipped.CrossAsync(
            "1.0 Spider Pastel 66% het Clown", "0.1 Spider het Clown", q => q with { Wants = ["Clown"], AtLeast = 2, Clutch = new(8, null, null) });

        Assert.Equal(cross.Survival.Value, cross.OutcomesShare.Value, 1e-12);
        Assert.Equal(8.0, cross.MeanGoodEggs);
        Assert.All(cross.Outcomes, o => Assert.Equal(8.0 * o.PerEgg.Value, o.InClutch.Mean, 1e-9));
        Assert.All(cross.Outcomes, o => Assert.InRange(o.InClutch.Mean, o.InClutch.Low - 1.0, o.InClutch.High + 1.0));
        var want = cross.Wants[0];
        Assert.True(want.AtLeast < want.AtLeastOne);

        // At least two of eight, eggs sharing the doubt: 2/3 of Binomial(8, 3/16); 3/16 = 1/4 het x het of those that live [computed by hand below].
        var none = Math.Pow(13.0 / 16.0, 8);
        var one = 8.0 * (3.0 / 16.0) * Math.Pow(13.0 / 16.0, 7);
        Assert.Equal(2.0 / 3.0 * (1.0 - none - one), want.AtLeast.Value, 1e-12);
        Assert.Null(cross.Punnett);
    }

    // het Clown × het Clown and Pastel × Normal: 1/4 or 1/2, less both, 1/8 [computed, inclusion and exclusion].
    [Fact]
    public async Task RunAsync_WhyOfSeveralWays_PutsThemTogether()
    {
        var want = await Shipped.WantAsync("1.0 Pastel het Clown", "0.1 het Clown", "Clown or Pastel");

        Assert.Equal("5/8", want.PerEgg.ToString());
        Assert.Contains(want.Why, s => s.Text.StartsWith("Any of these ways", StringComparison.Ordinal) && s.Value.ToString() == "5/8");
    }

    [Fact]
    public async Task RunAsync_Why_EndsInTheChanceOfAtLeastOne()
    {
        var cross = await Shipped.CrossAsync("1.0 66% het Clown Pastel", "0.1 Clown", q => q with { Wants = ["Pastel Clown or Super Pastel"], Clutch = new(5, null, null) });

        var want = cross.Wants[0];
        Assert.Equal(want.AtLeastOne, want.Why[^1].Value);
        Assert.Contains(want.Why, s => s.Text.Contains("cannot give it at all", StringComparison.Ordinal) && s.Value.ToString() == "1/3");
        Assert.All(want.Why, s => Assert.DoesNotContain(" 0%", s.Text, StringComparison.Ordinal));
    }

    [Fact]
    public async Task RunAsync_ManyLoci_NeverReadsAsZeroPercent()
    {
        const string Hets = "het Clown het Piebald het Albino het Ghost het Lavender Albino het Ultramel het Axanthic VPI het Axanthic TSK het Desert Ghost";
        var want = await Shipped.WantAsync($"1.0 {Hets}", $"0.1 {Hets}", Hets.Replace("het ", "", StringComparison.Ordinal), eggs: 6);

        Assert.Equal("1/262144", want.PerEgg.ToString());
        Assert.NotEqual("0%", Desk.Words.OddsText.Percent(want.PerEgg));
        Assert.True(want.EggsFor[99] > 1_000_000);
    }

    private static Dictionary<string, double> Banana(double recombination) => new() { ["Banana"] = recombination };

    private static double Share(CrossAnswer cross, string name, Sex sex) => cross.Outcomes.Single(o => o.Name == name && o.Sex == sex).PerEgg.Value;

    private static int?[] WantOrder(IReadOnlyDictionary<int, int?> numbers) => [numbers[50], numbers[90], numbers[95], numbers[99]];
}
