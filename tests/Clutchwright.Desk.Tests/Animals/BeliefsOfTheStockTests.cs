using Clutchwright.Desk.Animals;
using Clutchwright.Desk.Crosses;
using Clutchwright.Desk.Tests.Testing;

namespace Clutchwright.Desk.Tests.Animals;

/// <summary>What is believed follows the book, deed by deed.</summary>
public class BeliefsOfTheStockTests
{
    private const string Family = """
        id,sex,sire,dam,hatched,seen,told
        S,m,,,2019,normal,het Clown
        D,f,,,2019,normal,het Clown
        Y,f,S,D,2022,normal,66% het Clown
        """;

    [Fact]
    public async Task ReadAsync_AfterEachDeed_FollowsIt()
    {
        using var desk = await TestDesk.WithAsync(Family);
        Assert.Equal("66% het Clown", await desk.TextAsync("Y"));

        var said = await desk.Get<AddStatement>().RunAsync("D", new("RuledOut", "Clown", null, null), TestDesk.Who, TestDesk.Cancel);
        Assert.Empty(said.Problems);
        Assert.Equal("50% het Clown", await desk.TextAsync("Y"));

        await desk.Get<UndoDeed>().RunAsync(said.Value!.Id, TestDesk.Who, TestDesk.Cancel);
        Assert.Equal("66% het Clown", await desk.TextAsync("Y"));

        await desk.Get<AddStatement>().RunAsync("Y", new("ProvenByBreeding", "het Clown", "me", "2025"), TestDesk.Who, TestDesk.Cancel);
        Assert.Equal("het Clown", await desk.TextAsync("Y"));

        var proof = (await desk.ShowAsync("Y")).Statements.Single(s => s.Kind == "ProvenByBreeding");
        await desk.Get<WithdrawStatement>().RunAsync(proof.Id, TestDesk.Who, TestDesk.Cancel);
        Assert.Equal("66% het Clown", await desk.TextAsync("Y"));
    }

    [Fact]
    public async Task ShowAnimal_OneOfSeveralPossibleSires_ShowsItsPossibleYoung()
    {
        using var desk = await TestDesk.WithAsync("id,sex,sire\nS,m,\nT,m,\nY,f,S|T\n");

        var sire = await desk.ShowAsync("S");

        Assert.Empty(sire.Offspring);
        Assert.Equal(["Y"], sire.PossibleOffspring.Select(o => o.Tag));
    }

    // A male whose Banana may ride on X or on Y shows it: what is in doubt is what he makes, not what he carries.
    [Fact]
    public async Task ShowToday_PossibleHets_AreThoseOfRecessives()
    {
        using var desk = await TestDesk.WithAsync("id,sex,seen,told\nA,m,Banana,\nB,f,normal,66% het Clown\nC,f,normal,het Clown\n");

        Assert.Equal(1, (await desk.Get<ShowToday>().RunAsync(TestDesk.Cancel)).PossibleHets);
    }

    [Fact]
    public async Task ReadAsync_NothingDone_IsNotReckonedAgain()
    {
        using var desk = await TestDesk.WithAsync(Family);

        Assert.Same(await desk.StateAsync(), await desk.StateAsync());
    }

    [Fact]
    public async Task RunAsync_TagOfTheStock_IsAskedByItsBelief()
    {
        using var desk = await TestDesk.WithAsync(Family);

        var cross = (await desk.Get<AskCross>().RunAsync(new(" s ", "y") { Wants = ["Clown"], Clutch = new(6, null, null) }, TestDesk.Cancel)).Value!;

        Assert.Equal(("S", "Y"), (cross.Sire.Tag, cross.Dam.Tag));
        Assert.Equal("1/6", cross.Wants[0].PerEgg.ToString()); // 2/3 of 1/4
        Assert.Equal("2/3", cross.Wants[0].Ceiling.ToString());
    }

    [Fact]
    public async Task RunAsync_TagOfTheWrongSex_IsRefused()
    {
        using var desk = await TestDesk.WithAsync(Family);

        var answer = await desk.Get<AskCross>().RunAsync(new("D", "S"), TestDesk.Cancel);

        Assert.Equal(["sire", "dam"], answer.Problems.Select(p => p.Where));
        Assert.Contains("D is female", answer.Problems[0].Text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task ReadAsync_VisualOfOneRecordedParent_IsNoContradiction()
    {
        using var desk = await TestDesk.WithAsync(Family + "\nV,f,S,,2023,Clown,\n");

        Assert.Equal("Clown", await desk.TextAsync("V"));
        Assert.False((await desk.ShowAsync("V")).Line.HasProblem);
    }

    [Fact]
    public async Task ReadAsync_HatchlingThatCannotBe_IsToldWithTheRecords()
    {
        using var desk = await TestDesk.WithAsync(Family + "\nN,f,,,2019,Super Mojave,\nX,f,S,N,2022,normal,\n");

        var problem = Assert.Single((await desk.ShowAsync("X")).Problems);

        Assert.Contains("cannot all be true", problem, StringComparison.Ordinal);
        Assert.Equal(2, (await desk.Get<ShowToday>().RunAsync(TestDesk.Cancel)).WithProblems);
    }

    [Fact]
    public async Task ReadAsync_DnaTest_WeighsWhatWasBelieved()
    {
        // (2/3)(0.01) / ((2/3)(0.01) + (1/3)(0.99)) = 2/101 [computed, Bayes' rule].
        using var desk = await TestDesk.WithAsync(Family);

        var done = await desk.Get<AddStatement>().RunAsync(
            "Y", new("DnaTest", "het Clown", "a laboratory", "2025-03-01") { IsFound = false, Sensitivity = 0.99, Specificity = 0.99 }, TestDesk.Who, TestDesk.Cancel);

        Assert.Empty(done.Problems);
        var belief = (await desk.StateAsync()).Find("Y")!.Belief.Genotype;
        Assert.Equal(2.0 / 101.0, belief.ChanceOfCarrying(Shipped.Species.FindAllele("clown")!).Value, 1e-12);
        Assert.Contains((await desk.ShowAsync("Y")).Beliefs[0].Why, w => w.Text.Contains("DNA", StringComparison.Ordinal));
    }

    [Fact]
    public async Task RunAsync_UnreadableStatement_PointsAtThePlaceAndIsNotKept()
    {
        using var desk = await TestDesk.WithAsync(Family);

        var answer = await desk.Get<AddStatement>().RunAsync("Y", new("Told", "het Clwn", null, "the other day"), TestDesk.Who, TestDesk.Cancel);
        var kind = await desk.Get<AddStatement>().RunAsync("Y", new("Guessed", "het Clown", null, null), TestDesk.Who, TestDesk.Cancel);
        var nobody = await desk.Get<AddStatement>().RunAsync("Z", new("Told", "het Clown", null, null), TestDesk.Who, TestDesk.Cancel);

        Assert.Equal(["text", "when"], answer.Problems.Select(p => p.Where).Order(StringComparer.Ordinal));
        Assert.Contains("Clown", answer.Problems.Single(p => p.Where == "text").DidYouMean!);
        Assert.Equal("kind", Assert.Single(kind.Problems).Where);
        Assert.Equal("tag", Assert.Single(nobody.Problems).Where);
        Assert.Equal(2, (await desk.ShowAsync("Y")).Statements.Count);
    }
}
