using Clutchwright.Desk.Crosses;
using Clutchwright.Desk.Kin;
using Clutchwright.Desk.Pairs;
using Clutchwright.Desk.Tests.Testing;

namespace Clutchwright.Desk.Tests.Pairs;

public class RankPairsTests
{
    private const string Room = """
        id,sex,hatched,seen,told,status
        M1,m,2020,Spider Pastel,,Kept
        M2,m,2020,Pastel,het Clown,Kept
        M3,m,2020,Clown,,Sold
        M4,m,2026-02-01,Clown,,Kept
        F1,f,2020,Spider,het Clown,Kept
        F2,f,2020,Pinstripe,66% het Clown,Kept
        F3,f,2024-09-01,Clown,,HeldBack
        U1,u,2020,Clown,,Kept
        """;

    [Fact]
    public async Task RunAsync_PairsThatGiveADanger_AreLeftOutWithTheReason()
    {
        using var desk = await TestDesk.WithAsync(Room);

        var answer = await AskAsync(desk, "Pastel");

        Assert.Equal([("M2", "F2")], answer.Pairs.Select(p => (p.Sire.Tag, p.Dam.Tag)));
        Assert.Equal(1, answer.PairsThatCan);
        Assert.Equal(3, answer.LeftOutCount);
        Assert.Equal(
            [("M1", "F1"), ("M1", "F2"), ("M2", "F1")],
            answer.LeftOut.Select(p => (p.Sire.Tag, p.Dam.Tag)).Order());
        var both = answer.LeftOut.Single(p => p.Sire.Tag == "M1" && p.Dam.Tag == "F1");
        Assert.Equal(["spider-two-copies", "spider-wobble"], both.Why.Select(w => w.Code));
        Assert.All(both.Why, w => Assert.NotEmpty(w.Text));
        Assert.NotEmpty(both.Why[1].Sources);
    }

    [Fact]
    public async Task RunAsync_AnimalsThatCannotBePaired_AreLeftOutAndSaid()
    {
        // First paired: males from about 12 months, females from about 30 (common practice, no source). The clock stands at May 2026.
        using var desk = await TestDesk.WithAsync(Room);

        var answer = await AskAsync(desk, "Clown");

        Assert.Equal((2, 2), (answer.MalesLooked, answer.FemalesLooked));
        Assert.Contains(answer.Notes, n => n.StartsWith("1 male is under 12 months", StringComparison.Ordinal));
        Assert.Contains(answer.Notes, n => n.StartsWith("1 female is under 30 months", StringComparison.Ordinal));
        Assert.Contains(answer.Notes, n => n.StartsWith("1 animal is not sexed", StringComparison.Ordinal));
        Assert.DoesNotContain(answer.Pairs, p => p.Sire.Tag is "M3" or "M4" or "U1");
    }

    [Fact]
    public async Task RunAsync_NearKin_IsNotedBesideThePair()
    {
        using var desk = await TestDesk.WithAsync("""
            id,sex,sire,dam,hatched,seen
            M1,m,,,2015,Pastel
            F1,f,,,2015,Pastel
            F2,f,,,2015,Pastel
            M2,m,M1,F1,2019,Pastel
            F3,f,M1,F1,2019,Pastel
            F4,f,M1,F2,2019,Pastel
            """);

        var answer = await AskAsync(desk, "Super Pastel");

        // F of the young of full sibs and of parent and young is 1/4, of half sibs 1/8 (Wright 1922).
        Assert.Equal($"She is his daughter: their young would be inbred {0.25:0.##%} (1/4).", Kin("M1", "F3"));
        Assert.Equal($"She is his dam: their young would be inbred {0.25:0.##%} (1/4).", Kin("M2", "F1"));
        Assert.Equal($"She is his full sister: their young would be inbred {0.25:0.##%} (1/4).", Kin("M2", "F3"));
        Assert.Equal($"She is his half sister: their young would be inbred {0.125:0.##%} (1/8).", Kin("M2", "F4"));
        Assert.Null(Kin("M1", "F1"));
        Assert.Null(Kin("M2", "F2"));

        string? Kin(string sire, string dam) =>
            answer.Pairs.Single(p => p.Sire.Tag == sire && p.Dam.Tag == dam).Watch.SingleOrDefault(w => w.Code == "kin")?.Text;
    }

    [Fact]
    public async Task RunAsync_Demo_TellsTheKinshipOfKin()
    {
        using var desk = await TestDesk.WithDemoAsync();

        var pairs = (await desk.Get<RankPairs>().RunAsync(new("Clown") { Most = 10_000 }, TestDesk.Cancel)).Value!.Pairs;

        Assert.Contains(pairs, p => p.Kin.Inbreeding > 0.0);
        foreach (var pair in pairs)
        {
            var kin = (await desk.Get<AskKin>().RunAsync(new() { Pair = (pair.Sire.Tag, pair.Dam.Tag) }, TestDesk.Cancel)).Value!.Pair!;
            Assert.Equal((kin.Kinship, kin.Exact, kin.Relation), (pair.Kin.Inbreeding, pair.Kin.Exact, pair.Kin.Relation));
            Assert.Equal(kin.Kinship > 0.0, pair.Watch.Any(w => w.Code == "kin"));
        }
    }

    [Fact]
    public async Task RunAsync_KinByAPossibleSire_HaveTheMeanOfBoth()
    {
        using var desk = await TestDesk.WithAsync("""
            id,sex,sire,dam,hatched,seen
            M1,m,,,2015,Pastel
            M2,m,,,2015,Pastel
            F1,f,,,2015,Pastel
            F2,f,M1|M2,F1,2019,Pastel
            """);

        var pair = (await AskAsync(desk, "Super Pastel")).Pairs.Single(p => p.Sire.Tag == "M1" && p.Dam.Tag == "F2");

        // His daughter with 1/2: F of their young is half of 1/4.
        Assert.Equal((0.125, "1/8", null), (pair.Kin.Inbreeding, pair.Kin.Exact?.ToString(), pair.Kin.Relation));
        Assert.Equal($"They are related: their young would be inbred {0.125:0.##%} (1/8).", Assert.Single(pair.Watch).Text);
    }

    [Fact]
    public async Task RunAsync_WantThatNoAnimalCarries_SaysSo()
    {
        using var desk = await TestDesk.WithAsync(Room);

        var answer = await AskAsync(desk, "Piebald");

        Assert.Empty(answer.Pairs);
        Assert.Contains(answer.Notes, n => n.Contains("no animal of the stock carries Piebald", StringComparison.Ordinal));
    }

    [Fact]
    public async Task RunAsync_EmptyStock_HasNoPairs()
    {
        using var desk = new TestDesk();

        var answer = await AskAsync(desk, "Clown");

        Assert.Empty(answer.Pairs);
        Assert.Equal((0, 0), (answer.MalesLooked, answer.FemalesLooked));
    }

    [Fact]
    public async Task RunAsync_WrongQuestion_ListsEveryProblem()
    {
        using var desk = new TestDesk();

        var answer = await desk.Get<RankPairs>().RunAsync(
            new("Clwn") { Eggs = 999, Most = 0, Recombination = new Dictionary<string, double> { ["Clown"] = 0.1 } }, TestDesk.Cancel);

        Assert.Equal(["eggs", "most", "recombination", "want"], answer.Problems.Select(p => p.Where).Order(StringComparer.Ordinal));
    }

    [Fact]
    public async Task RunAsync_Demo_EveryPairHasTheOddsOfItsCross()
    {
        using var desk = await TestDesk.WithDemoAsync();

        foreach (var want in new[] { "Enchi Desert Ghost Clown", "Banana Clown or Pastel Clown", "1.0 male maker Banana", "Ivory" })
        {
            var answer = (await desk.Get<RankPairs>().RunAsync(new(want) { Eggs = 6, Most = 12 }, TestDesk.Cancel)).Value!;
            Assert.NotEmpty(answer.Pairs);
            Assert.Equal(answer.Pairs.OrderByDescending(p => p.ThisSeason.Value).Select(p => p.ThisSeason), answer.Pairs.Select(p => p.ThisSeason));
            foreach (var pair in answer.Pairs.Concat(answer.LeftOut.Select(l => new PairLine(l.Sire, l.Dam, default, l.ThisSeason, default, [], new(0.0, null, null)))))
            {
                var cross = (await desk.Get<AskCross>().RunAsync(
                    new(pair.Sire.Tag, pair.Dam.Tag) { Wants = [want], Clutch = new(6, null, null) }, TestDesk.Cancel)).Value!;
                Assert.Equal(cross.Wants[0].AtLeastOne.Value, pair.ThisSeason.Value, 1e-12);
                Assert.Equal(
                    answer.LeftOut.Any(l => l.Sire.Tag == pair.Sire.Tag && l.Dam.Tag == pair.Dam.Tag),
                    cross.Warnings.Any(w => w.Severity is "lethal" or "suffering" && w.Text.Contains("This pair gives it", StringComparison.Ordinal)));
            }
        }
    }

    [Fact]
    public async Task RunAsync_ThisSeason_CountsTheChanceThatSheLays()
    {
        using var desk = await TestDesk.WithAsync(Room);

        var pair = Assert.Single((await AskAsync(desk, "Pastel")).Pairs);
        var cross = (await desk.Get<AskCross>().RunAsync(new("M2", "F2") { Wants = ["Pastel"] }, TestDesk.Cancel)).Value!;

        // The catalogue's laying figure is 0.75; a clutch that is there is not asked whether she lays.
        Assert.Equal(0.75 * cross.Wants[0].AtLeastOne.Value, pair.ThisSeason.Value, 1e-9);
    }

    private static async Task<PairsAnswer> AskAsync(TestDesk desk, string want)
    {
        var answer = await desk.Get<RankPairs>().RunAsync(new(want), TestDesk.Cancel);
        Assert.Empty(answer.Problems);
        return answer.Value!;
    }
}
