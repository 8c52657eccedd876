using Clutchwright.Desk.Animals;
using Clutchwright.Desk.Condition;
using Clutchwright.Desk.Happenings;
using Clutchwright.Desk.Tests.Testing;

namespace Clutchwright.Desk.Tests.Condition;

public sealed class WatchTests
{
    [Fact]
    public async Task Round_MarkedAndSentTwice_IsWrittenOnceAndUndoneWhole()
    {
        using var desk = await RoomAsync();
        Assert.Equal(["A", "B"], (await RoundAsync(desk)).Select(a => a.Tag));
        RoundMark[] marks = [new("A", "ate"), new("b", "refused")];

        var written = (await desk.Get<WriteRound>().RunAsync(marks, null, TestDesk.Who, TestDesk.Cancel)).Value!;
        var again = (await desk.Get<WriteRound>().RunAsync(marks, "2026-05-01", TestDesk.Who, TestDesk.Cancel)).Value!;

        Assert.Equal((2, 0, 0, 2), (written.Written, written.Skipped, again.Written, again.Skipped));
        Assert.Null(again.Deed);
        Assert.Empty(await RoundAsync(desk));
        Assert.Empty((await desk.Get<UndoDeed>().RunAsync(written.Deed!.Id, TestDesk.Who, TestDesk.Cancel)).Problems);
        Assert.Equal(["A", "B"], (await RoundAsync(desk)).Select(a => a.Tag));
    }

    [Fact]
    public async Task Round_OneMarkWrong_NamesItAndWritesNothing()
    {
        using var desk = await RoomAsync();

        var answer = await desk.Get<WriteRound>().RunAsync([new("A", "ate"), new("S", "ate")], null, TestDesk.Who, TestDesk.Cancel);

        Assert.Equal("S", Assert.Single(answer.Problems).Where);
        Assert.Equal(2, (await RoundAsync(desk)).Count);
        Assert.Equal("round", Assert.Single((await desk.Get<WriteRound>().RunAsync([], null, TestDesk.Who, TestDesk.Cancel)).Problems).Where);
    }

    [Fact]
    public async Task Watch_OfARoom_PutsTheGravestFirst()
    {
        using var desk = await RoomAsync();
        await NoteAsync(desk, "A", "Weighed", "2025-12-01", "2000");
        await NoteAsync(desk, "A", "Weighed", "2026-04-20", "1500");
        await NoteAsync(desk, "B", "Weighed", "2026-01-01", "900");

        var watch = await desk.Get<ShowWatch>().RunAsync(TestDesk.Cancel);

        Assert.Equal([("A", WatchLevel.AskVeterinarian), ("B", WatchLevel.Due)], watch.Lines.Select(l => (l.Tag, l.Level)));
        Assert.Equal((2, 0, 2, null), (watch.Animals, watch.NeverWeighed, watch.FoodDue, watch.LastOffer));
    }

    private static async Task<TestDesk> RoomAsync() => await TestDesk.WithAsync("id,sex,hatched,status\nA,f,2020,kept\nB,m,2020,kept\nS,m,2020,sold\n");

    private static async Task<IReadOnlyList<RoundAnimal>> RoundAsync(TestDesk desk) => (await desk.Get<ShowWatch>().RoundAsync(everyone: false, TestDesk.Cancel)).Animals;

    private static async Task NoteAsync(TestDesk desk, string tag, string kind, string when, string amount) =>
        Assert.Empty((await desk.Get<WriteHappening>().RunAsync(new(tag, kind, when, amount, null, null), TestDesk.Who, TestDesk.Cancel)).Problems);
}
