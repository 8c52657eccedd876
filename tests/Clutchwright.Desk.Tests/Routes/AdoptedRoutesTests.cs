using System.Text.Json.Nodes;
using Clutchwright.Desk.Animals;
using Clutchwright.Desk.Routes;
using Clutchwright.Desk.Season;
using Clutchwright.Desk.Tests.Testing;
using Clutchwright.Desk.Words;
using Clutchwright.Genetics.Numbers;

namespace Clutchwright.Desk.Tests.Routes;

/// <summary>A route is followed from the adopting to the animal that was wanted; the clock of the desk stands in May 2026.</summary>
public sealed class AdoptedRoutesTests
{
    // A Clown male, a Clown female still too young, and a Pastel female: the Pastel Clown takes a Pastel het Clown daughter or son first.
    private const string Room = """
        id,sex,hatched,seen,told
        C,m,2020,Clown,
        P,f,2020,Pastel,
        Q,f,2020,Pastel,
        """;

    private static readonly RoutesQuestion Question = new("Pastel Clown") { Seasons = 6, Tries = 0, MostDams = 1 };

    [Fact]
    public async Task Adopt_Route_AsksTheSeasonForItsHoldbacks()
    {
        using var desk = await TestDesk.WithAsync(Room);
        var (_, id) = await AdoptAsync(desk);

        var season = await desk.Get<ShowSeason>().RunAsync(null, TestDesk.Cancel);
        var goal = Assert.Single(Goals(season));
        Assert.Equal((2026, id.ToString("N")), (season.Year, (string?)goal["route"]));
        Assert.Contains("Pastel", (string)goal["holdback"]!, StringComparison.Ordinal);
        var standing = await StandingAsync(desk, id);
        Assert.True(standing.IsInSeason);
        Assert.Equal(6, standing.Question!.Seasons);
        Assert.Equal((1, 2026, 2031), (standing.Number, standing.Route.FirstYear, standing.Route.LastYear));
        Assert.NotEmpty((await PlanAsync(desk, season)).Pairings);
    }

    [Fact]
    public async Task Standing_YoungRecorded_KeepsItAndAsksForSomethingElse()
    {
        using var desk = await TestDesk.WithAsync(Room);
        var (_, id) = await AdoptAsync(desk);
        var before = await StandingAsync(desk, id);

        await desk.ImportAsync("""
            id,sex,sire,dam,hatched,seen
            H1,m,C,P,2026-04-20,Pastel
            H2,f,C,Q,2026-04-21,Pastel
            H3,f,C,P,2026-04-20,normal
            """);
        var after = await StandingAsync(desk, id);

        var tags = after.Keep.SelectMany(k => k.Tags).ToArray();
        Assert.NotEmpty(tags);
        Assert.All(tags, t => Assert.Contains(t, (string[])["H1", "H2"]));
        Assert.True(await ChanceAsync(desk, id) > before.Route.Chance);
        Assert.False(after.IsInSeason);

        // The season then asks what the route asks now.
        var answer = await AnswerAsync(desk, id);
        Assert.NotNull((await desk.Get<AdoptedRoutes>().AskOfSeasonAsync(id, answer, after.Number!.Value, TestDesk.Who, TestDesk.Cancel)).Value);
        Assert.True((await StandingAsync(desk, id)).IsInSeason);
    }

    [Fact]
    public async Task Standing_WantedHatched_SaysSo()
    {
        using var desk = await TestDesk.WithAsync(Room);
        var (_, id) = await AdoptAsync(desk);
        await desk.ImportAsync("id,sex,sire,dam,hatched,seen\nH1,m,C,P,2026-04-20,Pastel\nH9,f,,,2026-04-20,Pastel Clown\n");

        var standing = await StandingAsync(desk, id);

        var there = Assert.Single(standing.There);
        Assert.Equal("H9", there.Tag);
        Assert.True(there.Chance.IsCloseTo(Probability.Certain));
        Assert.NotNull((await desk.Get<AdoptedRoutes>().EndAsync(id, isReached: true, TestDesk.Who, TestDesk.Cancel)).Value);
        Assert.Equal("reached", Assert.Single(await desk.Get<AdoptedRoutes>().ListAsync(TestDesk.Cancel)).Ending);
        Assert.Empty(Goals(await desk.Get<ShowSeason>().RunAsync(null, TestDesk.Cancel)));
        Assert.Null(await desk.Get<AdoptedRoutes>().QuestionAsync(id, TestDesk.Cancel));
    }

    [Fact]
    public async Task Adopt_Undone_LeavesNothing()
    {
        using var desk = await TestDesk.WithAsync(Room);
        var (deed, _) = await AdoptAsync(desk);

        Assert.NotNull((await desk.Get<UndoDeed>().RunAsync(deed.Id, TestDesk.Who, TestDesk.Cancel)).Value);

        Assert.Empty(await desk.Get<AdoptedRoutes>().ListAsync(TestDesk.Cancel));
        Assert.Null((await desk.Get<ShowSeason>().RunAsync(null, TestDesk.Cancel)).Goals);
    }

    [Fact]
    public async Task Adopt_GoalsOfTheKeepersOwn_Stay()
    {
        using var desk = await TestDesk.WithAsync(Room);
        Assert.NotNull((await KeepAsync(desk, 2026, null, """{ "goals": [ { "want": "Pastel", "weight": 3 } ], "pin": [ { "sire": "C", "dam": "P" } ] }""")).Value);

        await AdoptAsync(desk);

        var season = await desk.Get<ShowSeason>().RunAsync(null, TestDesk.Cancel);
        Assert.Equal(2, Goals(season).Count);
        Assert.Equal("C", (string?)JsonNode.Parse(season.Goals!)!["pin"]![0]!["sire"]);
    }

    private static async Task<(DeedLine Deed, Guid Id)> AdoptAsync(TestDesk desk)
    {
        var answer = (await desk.Get<PlanRoute>().RunAsync(Question, null, TestDesk.Cancel)).Value!;
        var done = await desk.Get<AdoptedRoutes>().AdoptAsync(Question, answer.Routes[0], TestDesk.Who, TestDesk.Cancel);
        Assert.Empty(done.Problems);
        return (done.Value!, (await desk.Get<AdoptedRoutes>().ListAsync(TestDesk.Cancel))[0].Id);
    }

    private static async Task<RoutesAnswer> AnswerAsync(TestDesk desk, Guid id) =>
        (await desk.Get<PlanRoute>().RunAsync((await desk.Get<AdoptedRoutes>().QuestionAsync(id, TestDesk.Cancel))! with { Tries = 0 }, null, TestDesk.Cancel)).Value!;

    private static async Task<double> ChanceAsync(TestDesk desk, Guid id) => (await AnswerAsync(desk, id)).Routes[0].Chance.Value;

    private static async Task<RouteStanding> StandingAsync(TestDesk desk, Guid id) =>
        (await desk.Get<AdoptedRoutes>().StandingAsync(id, await desk.Get<AdoptedRoutes>().QuestionAsync(id, TestDesk.Cancel) is null ? null : await AnswerAsync(desk, id), null, TestDesk.Cancel))!;

    private static Task<Answer<DeedLine>> KeepAsync(TestDesk desk, int year, Guid? version, string goals) =>
        desk.Get<KeepSeason>().RunAsync(year, version, new("goals.json", System.Text.Encoding.UTF8.GetBytes(goals)), TestDesk.Who, TestDesk.Cancel);

    private static async Task<SeasonAnswer> PlanAsync(TestDesk desk, SeasonKept season)
    {
        var answer = await desk.Get<PlanSeason>().RunAsync(new(new("season", System.Text.Encoding.UTF8.GetBytes(season.Goals!))), null, TestDesk.Cancel);
        Assert.Empty(answer.Problems);
        return answer.Value!;
    }

    private static List<JsonObject> Goals(SeasonKept season) => [.. JsonNode.Parse(season.Goals!)!["goals"]!.AsArray().OfType<JsonObject>()];
}
