using Clutchwright.Desk.Carry;
using Clutchwright.Desk.Opened;
using Clutchwright.Desk.Tests.Testing;
using Clutchwright.Pedigrees.Beliefs.Explanations;

namespace Clutchwright.Desk.Tests.Carry;

/// <summary>Beliefs and contradictions in the keeper's words.</summary>
public class ExplainBeliefTests
{
    private const string TestPairing = """
        id,sex,sire,dam,hatched,seen,told
        S,m,,,2019,normal,50% het Clown
        D,f,,,2019,Clown,
        Y1,f,S,D,2023-07-01,normal,
        Y2,f,S,D,2023-07-01,normal,
        Y3,f,S,D,2023-07-01,normal,
        Y4,f,S,D,2023-07-01,normal,
        Y5,m,S,D,2023-07-01,normal,
        """;

    [Fact]
    public async Task RunAsync_PossibleHetWithFiveNormals_TellsStartAndClutch()
    {
        using var desk = await TestDesk.WithAsync(TestPairing);

        var answer = (await desk.Get<ExplainBelief>().RunAsync("s", "Clown", TestDesk.Cancel)).Value!;

        // 1/2, then a factor of 1/32: 1/33 [computed].
        Assert.Equal(
            [
                "Before anything is recorded: 0",
                "Told 50% het Clown: the start. 1/2",
                "Its 2023 clutch with D: 5 young, none Clown: 32 times as likely if it does not carry Clown. 1/33",
                "1 other record tells nothing. ",
                "So the chance that it carries Clown is 1/33",
            ],
            answer.Why.Select(w => $"{w.Text} {w.Value}"));
        Assert.Equal("Clutch", Assert.Single(answer.Steps).Kind);
        Assert.Equal("DnaTest", answer.Settles[0].Kind);
        Assert.Equal("Put it to a visual Clown (D) and hatch 6 young.", answer.Settles.Single(s => s.Kind == "TestPairing").Text);
    }

    // Of young of S and a normal female that were looked at, with their own young: without room for single steps all is told in one.
    [Fact]
    public async Task All_TooMuchForSingleSteps_TellsWhoseTheRecordsAre()
    {
        using var desk = await TestDesk.WithAsync(TestPairing + """

            E,f,,,2019,,50% het Clown
            Z1,f,S,E,2023-08-01,normal,
            Z2,m,S,E,2023-08-01,normal,
            W1,f,Z2,Y1,2026-06-01,normal,
            """);
        var state = await desk.Get<StockBeliefs>().ReadAsync(Shipped.Catalogue.BeliefSettings with { ExplanationBudget = 0.0 }, TestDesk.Cancel);
        var key = StockRecord.Key(state.Find("Z2")!.Animal.AnimalId);
        var clown = Shipped.Catalogue.Species.FindAllele("clown")!;

        var explanation = BeliefExplanation.Of(state.Beliefs, key, new GenotypeClaim.Carries(clown), TestDesk.Cancel);
        var told = new ExplanationWords(Shipped.Catalogue, state.Record, explanation).All().Select(s => s.Text).ToArray();

        Assert.Contains(told, t => t.StartsWith("8 records together, 1 of its own, 1 of its young, 6 of its sibs", StringComparison.Ordinal));
    }

    [Fact]
    public async Task RunAsync_YoungOfAVisual_IsCertainByItsDam()
    {
        using var desk = await TestDesk.WithAsync(TestPairing);

        var why = (await desk.ShowAsync("Y1")).Beliefs[0].Why;

        Assert.Contains(why, w => w.Text.Contains("D seen Clown", StringComparison.Ordinal));
        Assert.Equal("1", why[^1].Value.ToString());
    }

    [Theory]
    [InlineData("Q", "Clown", "animal")]
    [InlineData("S", "Clwn", "gene")]
    public async Task RunAsync_AskedWrongly_SaysWhere(string tag, string gene, string where)
    {
        using var desk = await TestDesk.WithAsync(TestPairing);

        var answer = await desk.Get<ExplainBelief>().RunAsync(tag, gene, TestDesk.Cancel);

        Assert.Equal(where, Assert.Single(answer.Problems).Where);
    }

    [Fact]
    public async Task ListContradictions_PastelOfTwoNormals_NamesCausesAndWhatToCheck()
    {
        using var desk = await TestDesk.WithAsync("""
            id,sex,sire,dam,hatched,seen
            S,m,,,2019,normal
            D,f,,,2019,normal
            Y1,f,S,D,2023-07-01,Pastel
            Y2,f,S,D,2023-07-01,Pastel
            Y3,f,S,D,2023-07-01,normal
            """);

        var contradiction = (await desk.Get<ListContradictions>().RunAsync(TestDesk.Cancel))[0];

        Assert.Equal("UnknownSire", contradiction.Causes[0].Kind);
        Assert.Equal("The clutch Y1, Y2, Y3 has a sire that is not recorded.", contradiction.Causes[0].Text);
        Assert.All(contradiction.Causes, c => Assert.NotEmpty(c.Check));
        Assert.Contains("Most likely: The clutch Y1, Y2, Y3", Assert.Single((await desk.ShowAsync("Y1")).Problems.Take(1)), StringComparison.Ordinal);
    }
}
