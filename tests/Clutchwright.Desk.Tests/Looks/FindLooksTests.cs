using Clutchwright.Desk.Looks;
using Clutchwright.Desk.Pairs;
using Clutchwright.Desk.Tests.Testing;

namespace Clutchwright.Desk.Tests.Looks;

public class FindLooksTests
{
    [Fact]
    public async Task RunAsync_Demo_BestChanceIsThatOfTheRankedPairs()
    {
        using var desk = await TestDesk.WithDemoAsync();

        var answer = await AskAsync(desk, new("pattern strong yellow") { FromStock = true, Genes = 2 });

        Assert.NotEmpty(answer.Makings);
        foreach (var making in answer.Makings)
        {
            Assert.Empty(making.Nearness!.Missing);
            var ranked = (await desk.Get<RankPairs>().RunAsync(new(making.Genotype), TestDesk.Cancel)).Value!;
            Assert.Equal(ranked.Pairs.Count > 0 ? ranked.Pairs[0].ThisSeason : null, making.Nearness.BestChance);
            Assert.Equal(ranked.Pairs.Count == 0 && ranked.LeftOutCount > 0, making.Nearness.IsOnlyByLeftOutPairs);
            if (making.Nearness.BestPair is var (sire, dam))
            {
                Assert.Contains(ranked.Pairs.TakeWhile(p => p.ThisSeason == ranked.Pairs[0].ThisSeason), p => p.Sire.Tag == sire && p.Dam.Tag == dam);
            }
        }
    }

    [Fact]
    public async Task RunAsync_Makings_StandByTheSumOfTheirSteps()
    {
        using var desk = await TestDesk.WithDemoAsync();

        var answer = await AskAsync(desk, new("pattern strong yellow, no white") { Most = 40 });

        Assert.Equal(40, answer.Makings.Count);
        Assert.True(answer.IsMore);
        Assert.Equal(answer.Makings.Select(m => m.Steps!.Sum).Order(), answer.Makings.Select(m => m.Steps!.Sum));
        Assert.All(answer.Makings, m => Assert.Equal(m.Distance, m.Steps!.Distance));

        // One that a pair can give this season takes one season; one of which an allele is missing has no route at all.
        Assert.All(answer.Makings.Where(m => m.Nearness is { BestChance.Value: > 0.05, IsOnlyByLeftOutPairs: false }), m => Assert.Equal(1, m.SeasonsNeeded));
        Assert.All(answer.Makings.Where(m => m.Nearness!.Missing.Count > 0), m => Assert.Null(m.SeasonsNeeded));
    }

    [Fact]
    public async Task RunAsync_EmptyStock_TellsNoNearness()
    {
        using var desk = new TestDesk();

        var answer = await AskAsync(desk, new("all white, holds"));

        Assert.NotEmpty(answer.Makings);
        Assert.All(answer.Makings, m => Assert.Null(m.Nearness));

        var refused = await desk.Get<FindLooks>().RunAsync(new("all white, from my stock"), TestDesk.Cancel);
        Assert.Contains("holds no animal", refused.Problems[0].Text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task RunAsync_AllWhite_NamesTheWhiteSnakesByEveryWay()
    {
        // Lesser with any member of its group is a blue-eyed white (common practice, no source).
        using var desk = new TestDesk();

        var answer = await AskAsync(desk, new("all white, saying blue eyes"));

        var blueEyed = Assert.Single(answer.Makings, m => m.Genotype == "Blue-eyed White");
        Assert.Contains("Lesser/Mojave", blueEyed.Loci[0].Ways);
        Assert.True(blueEyed.Loci[0].Ways.Count > 10);
    }

    [Fact]
    public async Task RunAsync_StageAskedTwice_IsRefused()
    {
        using var desk = new TestDesk();

        Assert.Equal("at", (await desk.Get<FindLooks>().RunAsync(new("white, holds") { At = "adult" }, TestDesk.Cancel)).Problems[0].Where);
        Assert.Equal("at", (await desk.Get<FindLooks>().RunAsync(new("white") { At = "adlt" }, TestDesk.Cancel)).Problems[0].Where);
        Assert.Equal("hatchling", (await AskAsync(desk, new("white") { At = "hatchling" })).Stage);
    }

    [Fact]
    public async Task RunAsync_EveryGenotypeFound_IsAWantAndCanStandOnTheBoard()
    {
        using var desk = new TestDesk();
        var makings = new List<Making>();
        foreach (var query in new[] { "no white", "some white", "eye red within 30, up to 3 genes" })
        {
            makings.AddRange((await AskAsync(desk, new(query) { Most = 200 })).Makings);
        }

        Assert.All(makings, m => Assert.True(Shipped.Catalogue.Catalogue.Trade.ReadWant(m.Genotype).IsRead, m.Genotype));
        var (shown, problems) = desk.Get<ShowMakings>().Run([.. makings.Select(m => m.Genotype)]);
        Assert.Empty(problems);
        Assert.Equal(makings.Select(m => m.Genotype), shown.Select(s => s.Genotype));
        Assert.Equal(makings.Select(m => m.Look.Stages), shown.Select(s => s.Look.Stages));
    }

    [Fact]
    public void ListTones_Shipped_AreThoseOfItsLooksEachOnce()
    {
        using var desk = new TestDesk();

        var tones = desk.Get<ListTones>().Run().SelectMany(r => r.Tones).ToArray();

        Assert.Equal(tones.Length, tones.Distinct().Count());
        Assert.InRange(tones.Length, 50, 267);
        Assert.Contains(tones, t => t.Name == "strong yellow");
    }

    private static async Task<LooksAnswer> AskAsync(TestDesk desk, LooksQuestion question)
    {
        var answer = await desk.Get<FindLooks>().RunAsync(question, TestDesk.Cancel);
        Assert.Empty(answer.Problems);
        return answer.Value!;
    }
}
