using System.Text.Json.Nodes;
using Xunit;

namespace Clutchwright.Cli.Tests.Crosses;

/// <summary>Figures that the shipped catalogue and the engine must give, end to end.</summary>
public sealed class MustHoldTests
{
    // 1 - (3/4)^6 = 0.822021, and 11 and 17 eggs for 95 and 99 %: the usual table for proving a het, n = ceil(log(1 - c) / log(3/4)).
    [Fact]
    public async Task Cross_HetWithHet_GivesOneInFour()
    {
        var want = await WantAsync("1.0 het Clown", "0.1 het Clown", "Clown", "6");

        Assert.Equal("1/4", (string?)want["probabilityExact"]);
        Assert.Equal(0.822021, (double)want["atLeastOne"]!, 6);
        Assert.Equal(11, (int?)want["eggsFor"]!["95"]);
        Assert.Equal(17, (int?)want["eggsFor"]!["99"]);
    }

    // 66 % stands for 2/3. All eggs share the doubt: 1 - (1/3 + 2/3 (1/2)^5) = 0.645833, and never 90 %.
    [Fact]
    public async Task Cross_PossibleHetWithVisual_IsAMixture()
    {
        var want = await WantAsync("1.0 66% het Clown", "0.1 Clown", "Clown", "5");

        Assert.Equal("1/3", (string?)want["probabilityExact"]);
        Assert.Equal("31/48", (string?)want["atLeastOneExact"]);
        Assert.Equal("2/3", (string?)want["ceilingExact"]);
        Assert.Null(want["eggsFor"]!["90"]);
        Assert.True(want["eggsFor"]!.AsObject().ContainsKey("90"));
    }

    [Theory]
    [InlineData("50%", "1/2")]
    [InlineData("33%", "1/3")]
    [InlineData("poss", "1/2")]
    public async Task Cross_PossibleHet_IsTakenAsTheTradeMeansIt(string figure, string carries)
    {
        var want = await WantAsync($"1.0 {figure} het Clown", "0.1 Clown", "Clown", "5");

        Assert.Equal(carries, (string?)want["ceilingExact"]);
    }

    // Worked out from the model of partial sex linkage: allele on the Y, wild dam, r = 0.08.
    [Theory]
    [InlineData("male maker", 0.46, 0.04)]
    [InlineData("female maker", 0.04, 0.46)]
    public async Task Cross_Maker_GivesItMostlyToOneSex(string maker, double sons, double daughters)
    {
        var run = await Run.ShippedAsync("cross", $"1.0 {maker} Banana", "0.1 Normal", "--recombination", "Banana=0.08", "--json");

        Assert.Equal(sons, Chance(run.Json, "Banana", "male"), 12);
        Assert.Equal(daughters, Chance(run.Json, "Banana", "female"), 12);
        Assert.Equal(daughters, Chance(run.Json, "Normal", "male"), 12);
        Assert.Equal(sons, Chance(run.Json, "Normal", "female"), 12);
    }

    [Theory]
    [InlineData("0.0")]
    [InlineData("0.08")]
    [InlineData("0.5")]
    public async Task Cross_SexLinkedDam_GivesItToHalfOfEach(string r)
    {
        var run = await Run.ShippedAsync("cross", "1.0 Normal", "0.1 Banana", "--recombination", $"Banana={r}", "--json");

        Assert.All(["male", "female"], sex => Assert.Equal(0.25, Chance(run.Json, "Banana", sex), 12));
    }

    // Common practice, no source: every member put to Lesser makes the white snake with blue eyes.
    [Fact]
    public async Task Cross_LesserWithMojave_GivesFourQuarters()
    {
        var run = await Run.ShippedAsync("cross", "1.0 Lesser", "0.1 Mojave", "--json");

        Assert.Equal(["1/4", "1/4", "1/4", "1/4"], Outcomes(run.Json).Select(o => (string?)o!["probabilityExact"]));
        Assert.Equal(["Blue-eyed White", "Lesser", "Mojave", "Normal"], Outcomes(run.Json).Select(o => (string)o!["look"]!).Order(StringComparer.Ordinal));
    }

    // Two copies lethal, as of the yellow mouse: 2 : 1 among the living (checked against Castle & Little 1910 in the engine's tests).
    [Fact]
    public async Task Cross_TwoCopyLethal_ShowsEggsAndHatchlings()
    {
        var run = await Run.ShippedAsync("cross", "1.0 Champagne", "0.1 Champagne", "--json");

        var carrier = Outcomes(run.Json).Single(o => (string?)o!["look"] == "Champagne")!;
        Assert.Equal("3/4", (string?)run.Json["survivalExact"]);
        Assert.Equal("1/2", (string?)carrier["probabilityExact"]);
        Assert.Equal("2/3", (string?)carrier["perHatchlingExact"]);
        Assert.Equal("1/4", (string?)run.Json["losses"]![0]!["probabilityExact"]);
    }

    // Common practice, no source: Ivory hides other pattern genes but not Leopard.
    [Fact]
    public async Task Cross_Ivory_HidesPinstripeButNotLeopard()
    {
        var run = await Run.ShippedAsync("cross", "1.0 Ivory", "0.1 Ivory Leopard Pinstripe", "--json");

        Assert.Equal(["Ivory", "Leopard Ivory"], Outcomes(run.Json).Select(o => (string)o!["look"]!).Order(StringComparer.Ordinal));
        Assert.All(Outcomes(run.Json), o => Assert.Contains(o!["hidden"]!.AsArray(), h => (string?)h!["carries"] == "Pinstripe"));
    }

    [Fact]
    public async Task Cross_Outcomes_SumToSurvival()
    {
        var run = await Run.ShippedAsync("cross", "1.0 Spider Pastel het Clown 66% het Piebald", "0.1 Spider Enchi het Clown", "--json");

        Assert.Equal((double)run.Json["survival"]!, Outcomes(run.Json).Sum(o => (double)o!["probability"]!), 12);
        Assert.Equal(1.0, run.Json["genotypes"]!.AsArray().Sum(o => (double)o!["probability"]!), 12);
    }

    private static async Task<JsonNode> WantAsync(string sire, string dam, string want, string eggs)
    {
        var run = await Run.ShippedAsync("cross", sire, dam, "--want", want, "--eggs", eggs, "--json");
        Assert.Equal(string.Empty, run.Error);
        return run.Json["want"]![0]!;
    }

    private static JsonArray Outcomes(JsonObject cross) => cross["outcomes"]!.AsArray();

    private static double Chance(JsonObject cross, string look, string sex) => (double)Outcomes(cross)
        .Single(o => (string?)o!["look"] == look && (string?)o["sex"] == sex)!["probability"]!;
}
