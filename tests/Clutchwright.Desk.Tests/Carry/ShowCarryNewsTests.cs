using Clutchwright.Desk.Animals;
using Clutchwright.Desk.Carry;
using Clutchwright.Desk.Tests.Testing;
using Clutchwright.Genetics.Numbers;

namespace Clutchwright.Desk.Tests.Carry;

public sealed class ShowCarryNewsTests
{
    private const string Family = """
        id,sex,sire,dam,hatched,seen,told,ruled_out
        S,m,,,2019,normal,het Clown,
        D,f,,,2019,normal,het Clown,
        Y,f,S,D,2022,normal,,
        Z,f,,,2022,normal,het Pied,
        """;

    [Fact]
    public async Task RunAsync_NoMark_CountsNothingAsNew()
    {
        using var desk = await TestDesk.WithAsync(Family);

        var news = await NewsAsync(desk, null);

        Assert.Empty(news.Moves);
        Assert.Null(news.Since);
        Assert.NotEmpty(news.Mark);
    }

    [Fact]
    public async Task RunAsync_RecordOfKin_TellsWhoseBeliefsMoved()
    {
        using var desk = await TestDesk.WithAsync(Family);
        var mark = (await NewsAsync(desk, null)).Mark;
        Assert.Empty((await NewsAsync(desk, mark)).Moves);

        var said = await desk.Get<AddStatement>().RunAsync("D", new("RuledOut", "Clown", null, null), TestDesk.Who, TestDesk.Cancel);
        Assert.Empty(said.Problems);
        var news = await NewsAsync(desk, mark);

        // D was taken as told, and is not any more; its young were het with 2/3, and are with 1/2.
        Assert.NotNull(news.Since);
        Assert.Equal(
            [("Y", "het Clown", Probability.Ratio(2, 3), Probability.Half)],
            news.Moves.Where(m => m.Tag == "Y").Select(m => (m.Tag, m.Words, m.Was, m.Now)));
        Assert.DoesNotContain(news.Moves, m => m.Tag is "S" or "Z");

        // Looked through: nothing is new. Undone: it moves back.
        Assert.Empty((await NewsAsync(desk, news.Mark)).Moves);
        await desk.Get<UndoDeed>().RunAsync(said.Value!.Id, TestDesk.Who, TestDesk.Cancel);
        Assert.Empty((await NewsAsync(desk, mark)).Moves);
        Assert.Contains((await NewsAsync(desk, news.Mark)).Moves, m => m.Tag == "Y" && m.Now == Probability.Ratio(2, 3));
    }

    [Fact]
    public async Task RunAsync_AnimalsAddedOrGone_AreNoMoves()
    {
        using var desk = await TestDesk.WithAsync(Family);
        var mark = (await NewsAsync(desk, null)).Mark;

        await desk.ImportAsync("id,seen,told\nN,Pastel,het Clown\n");
        await desk.Get<BinAnimal>().RunAsync("Z", TestDesk.Who, TestDesk.Cancel);

        Assert.Empty((await NewsAsync(desk, mark)).Moves);
    }

    [Theory]
    [InlineData("1-0")]
    [InlineData("99-0")]
    [InlineData("-1")]
    [InlineData("")]
    [InlineData("nonsense")]
    [InlineData("999999999999999999999-1")]
    public async Task RunAsync_MarkOfAnotherBook_CountsNothingAsNew(string mark)
    {
        using var desk = await TestDesk.WithAsync(Family);
        await desk.ImportAsync("id,sire,dam,seen\nN,S,D,Clown\n");

        var news = await NewsAsync(desk, mark);

        Assert.Empty(news.Moves);
        Assert.Null(news.Since);
    }

    [Fact]
    public async Task RunAsync_EmptyBook_HasNoMark() => Assert.Empty((await NewsAsync(new TestDesk(), null)).Mark);

    [Fact]
    public async Task RunAsync_RecordsThatClash_AreTold()
    {
        using var desk = await TestDesk.WithAsync("id,sex,sire,dam,seen,ruled_out\nS,m,,,Clown,\nD,f,,,normal,Clown\nY,f,S,D,Clown,\n");

        Assert.Equal(1, (await NewsAsync(desk, null)).Contradictions);
        Assert.Contains("D", Assert.Single(await desk.Get<ListContradictions>().RunAsync(TestDesk.Cancel)).Animals);
    }

    [Fact]
    public async Task ShowCarry_PossibleHet_TellsWhyAndWhatWouldSettleIt()
    {
        using var desk = await TestDesk.WithAsync(Family);

        var carry = (await desk.Get<ShowCarry>().RunAsync("y", TestDesk.Cancel))!;

        var belief = Assert.Single(carry.Beliefs);
        Assert.Equal(("clown-group", "clown"), (belief.Locus.Id, belief.GeneId));
        Assert.Equal([1, 0], belief.Locus.Genotypes.Select(g => g.Copies));
        Assert.Equal(Probability.Ratio(2, 3), belief.Explained.Chance);
        Assert.NotEmpty(belief.Explained.Why);
        Assert.NotEmpty(belief.Explained.Settles);
        Assert.Null(await desk.Get<ShowCarry>().RunAsync("nobody", TestDesk.Cancel));
    }

    private static Task<CarryNews> NewsAsync(TestDesk desk, string? mark) => desk.Get<ShowCarryNews>().RunAsync(mark, TestDesk.Cancel);
}
