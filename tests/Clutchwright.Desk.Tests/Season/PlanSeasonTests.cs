using System.Text;
using Clutchwright.Desk.Season;
using Clutchwright.Desk.Tests.Testing;
using Clutchwright.Genetics.Numbers;
using Clutchwright.Proofs.TestPairings;

namespace Clutchwright.Desk.Tests.Season;

public sealed class PlanSeasonTests
{
    // Two brothers of a het pair, and a possible het male with three clown females.
    private const string Room = """
        id,sex,sire,dam,hatched,seen,told
        S,m,,,2015,normal,het Clown
        D,f,,,2015,normal,het Clown
        B,m,S,D,2018,normal,
        C,f,S,D,2018,normal,
        P,m,,,2018,normal,50% het Clown
        K1,f,,,2018,Clown,
        K2,f,,,2018,Clown,
        Y,f,,,2026-01-05,normal,
        """;

    /// <summary>Source: test pairings (docs/model/test-pairings.md): the information of one clutch is what that page's model gives.</summary>
    [Fact]
    public async Task Run_AProofByOneClutch_IsWorthWhatTheTestPairingIs()
    {
        var answer = await PlanAsync(Room, """{ "on": "2026-10-01", "goals": [ { "prove": "P", "gene": "Clown" } ], "limits": { "clutches": 1 } }""");
        var clutch = Shipped.Catalogue.Clutches.Of(new(null, null, null), withLaying: true, []).Eggs;
        var worth = PairingWorth.Of(TestPairing.OfHet("K1", Probability.Certain, Probability.Impossible), Probability.Half, clutch, Probability.Ratio(95, 100));

        Assert.Equal("P", Assert.Single(answer.Pairings).Sire.Tag);
        Assert.Equal(worth.EntropyDrop, answer.Goals[0].Figure, 9);
    }

    /// <summary>Source: the definition of a mixture: het with 1/2, two clutches of a male share it. docs/model/season.md</summary>
    [Fact]
    public async Task Run_TwoClutchesOfAPossibleHet_ShareHisDoubt()
    {
        var answer = await PlanAsync(Room, """
            { "on": "2026-10-01", "goals": [ { "want": "Clown" } ],
              "animals": { "S": { "leaveOut": true }, "B": { "leaveOut": true }, "C": { "leaveOut": true }, "D": { "leaveOut": true } } }
            """);
        var clutch = Shipped.Catalogue.Clutches.Of(new(null, null, null), withLaying: true, []).Eggs;
        var none = clutch.NoneOf(Probability.Half).Value;

        Assert.Equal(2, answer.Pairings.Count);
        Assert.All(answer.Pairings, p => Assert.Equal("P", p.Sire.Tag));
        Assert.Equal(0.5 * (1.0 - (none * none)), answer.Goals[0].Figure, 9);
        Assert.Equal(0.5 * (1.0 - none), answer.Pairings[0].Serves[0].Alone, 9);
    }

    /// <summary>Source: `cross` of the same two animals, which reads their joint belief. Full siblings share what their parents may be.</summary>
    [Fact]
    public async Task Run_APairOfKin_HasTheOddsOfTheCross()
    {
        var told = Room.Replace("S,m,,,2015,normal,het Clown", "S,m,,,2015,normal,50% het Clown", StringComparison.Ordinal);
        var answer = await PlanAsync(told, """
            { "on": "2026-10-01", "goals": [ { "want": "Clown" } ], "limits": { "clutches": 1 }, "pin": [ { "sire": "B", "dam": "C" } ] }
            """);
        using var desk = await TestDesk.WithAsync(told);
        var cross = await desk.Get<Desk.Crosses.AskCross>().RunAsync(new("B", "C") { Wants = ["Clown"], Clutch = new(6, null, null) }, TestDesk.Cancel);
        var perEgg = cross.Value!.Wants[0].PerEgg.Value;

        // The chance of one egg is what an expected number is made of.
        var expected = await PlanAsync(told, """
            { "on": "2026-10-01", "goals": [ { "expect": "Clown" } ], "limits": { "clutches": 1 }, "pin": [ { "sire": "B", "dam": "C" } ] }
            """);
        var clutch = Shipped.Catalogue.Clutches.Of(new(null, null, null), withLaying: true, []).Eggs;
        Assert.Equal(perEgg * clutch.Mean, expected.Goals[0].Figure, 9);
        Assert.Equal(0.25, answer.Pairings[0].Inbreeding, 12);
        Assert.InRange(answer.Goals[0].Figure, 1e-6, perEgg * clutch.Mean);
    }

    [Fact]
    public async Task Run_AnimalsThatAreNotReady_AreToldWithWhy()
    {
        var answer = await PlanAsync(Room, """
            { "on": "2026-10-01", "goals": [ { "want": "Clown" } ], "limits": { "restMonths": 12 },
              "animals": { "K1": { "massGrams": 900 }, "K2": { "lastClutch": "2026-04-01" }, "P": { "hold": "mites" } } }
            """);

        var why = answer.NotReady.ToDictionary(n => n.Tag, n => n.Why);
        Assert.Equal("Too light: 900 g; a female breeds from 1200 g.", why["K1"]);
        Assert.Equal("Rests: last clutch 2026-04-01; 12 months of rest are asked.", why["K2"]);
        Assert.Equal("On hold: mites.", why["P"]);
        Assert.StartsWith("Too young: hatched 2026-01-05;", why["Y"], StringComparison.Ordinal);
        Assert.All(answer.Pairings, p => Assert.DoesNotContain(p.Dam.Tag, why.Keys));
    }

    [Fact]
    public async Task Run_OverTheBook_PlansTheDemo()
    {
        using var desk = await TestDesk.WithDemoAsync();
        var goals = """{ "on": "2026-10-01", "goals": [ { "want": "Enchi Desert Ghost Clown" } ], "limits": { "inbreeding": 0.125 } }""";

        var answer = await desk.Get<PlanSeason>().RunAsync(new(new("goals.json", Encoding.UTF8.GetBytes(goals))), null, TestDesk.Cancel);

        Assert.Empty(answer.Problems);
        Assert.Equal("optimal", answer.Value!.Status);
        Assert.NotEmpty(answer.Value.Pairings);
    }

    /// <summary>A stock with more pairs than can be weighed: those of the animals that promise most are, pinned ones too, and the answer says so.</summary>
    [Fact]
    public async Task Run_MorePairsThanCanBeWeighed_PlansAmongThoseThatPromiseMost()
    {
        var rows = Enumerable.Range(0, 100).Select(i => $"M{i},m,2018,{(i % 10 == 0 ? "Clown" : "normal")},")
            .Concat(Enumerable.Range(0, 100).Select(i => $"F{i},f,2018,normal,{(i % 4 == 0 ? "het Clown" : string.Empty)}"));
        var answer = await PlanAsync(
            $"id,sex,hatched,seen,told\n{string.Join('\n', rows)}\n",
            """{ "on": "2026-10-01", "goals": [ { "want": "Clown" } ], "limits": { "clutches": 6 }, "pin": [ { "sire": "M1", "dam": "F1" } ] }""");

        Assert.Equal("feasible", answer.Status);
        Assert.Contains(answer.Notes, n => n.StartsWith("The stock has 10,000 pairs, more than can be weighed", StringComparison.Ordinal));
        Assert.Contains(answer.Pairings, p => (p.Sire.Tag, p.Dam.Tag) == ("M1", "F1"));

        // Five clutches of a visual with a het: the best that there is.
        var none = Shipped.Catalogue.Clutches.Of(new(null, null, null), withLaying: true, []).Eggs.NoneOf(Probability.Half).Value;
        Assert.Equal(1.0 - Math.Pow(none, 5), answer.Goals[0].Figure, 9);
    }

    private static async Task<SeasonAnswer> PlanAsync(string stock, string goals)
    {
        var plan = new PlanSeason(Shipped.Catalogue, () => throw new InvalidOperationException("The book stays shut."), TimeProvider.System);
        var answer = await plan.RunAsync(
            new(new("goals.json", Encoding.UTF8.GetBytes(goals))) { Stock = new("stock.csv", Encoding.UTF8.GetBytes(stock)) }, null, TestDesk.Cancel);
        Assert.Empty(answer.Problems);
        return answer.Value!;
    }
}
