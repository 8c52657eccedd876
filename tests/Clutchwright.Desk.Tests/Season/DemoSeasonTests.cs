using Clutchwright.Desk.Season;
using Clutchwright.Desk.Tests.Testing;
using Clutchwright.Desk.Words;
using Clutchwright.Planning.Tests.Seasons;

namespace Clutchwright.Desk.Tests.Season;

public sealed class DemoSeasonTests
{
    private static readonly string Demo = Path.Combine(Path.GetDirectoryName(Path.GetDirectoryName(Shipped.Folder))!, "demo");

    /// <summary>Source: the greedy rule, written in SeasonGreedy. The margin is told in docs/model/season.md.</summary>
    [Fact]
    public async Task Run_DemoSeason_IsBetterThanGreedy()
    {
        using var desk = new TestDesk();
        var question = new SeasonQuestion(await FileAsync("season.json")) { Stock = await FileAsync("thornmoor.csv"), WithRunnersUp = false };

        var greedy = SeasonGreedy.Worth(await desk.Get<PlanSeason>().ProblemAsync(question, TestDesk.Cancel));
        var plan = (await desk.Get<PlanSeason>().RunAsync(question, null, TestDesk.Cancel)).Value!;

        TestContext.Current.TestOutputHelper?.WriteLine($"plan {plan.Objective:0.####}, bound {plan.Bound:0.####}, greedy {greedy:0.####}: {(plan.Objective / greedy) - 1.0:0.00%} better");
        Assert.True(plan.Objective > greedy * 1.001);
    }

    private static async Task<NamedFile> FileAsync(string name) => new(name, await File.ReadAllBytesAsync(Path.Combine(Demo, name), TestDesk.Cancel));
}
