using System.Text;
using System.Text.Json.Nodes;
using Clutchwright.Desk.Animals;
using Clutchwright.Desk.Season;
using Clutchwright.Desk.Tests.Testing;
using Clutchwright.Desk.Words;

namespace Clutchwright.Desk.Tests.Season;

public sealed class KeepSeasonTests
{
    private const string Room = "id,sex,hatched,seen,told\nC,m,2020,Clown,\nP,f,2020,normal,het Clown\nQ,f,2020,normal,50% het Clown\n";

    private const string Goals = """
        {
          // A keeper's own word.
          "goals": [ { "want": "Clown" }, { "prove": "q", "gene": "Clown" } ],
          "animals": { "P": { "hold": "mites" } },
          "ban": [ { "sire": "C", "dam": "Q", "because": "done" } ],
        }
        """;

    [Fact]
    public async Task Run_TagsChangedSince_AreTheTagsOfToday()
    {
        using var desk = await TestDesk.WithAsync(Room);
        Assert.Empty((await KeepAsync(desk, null, Goals)).Problems);
        await RenameAsync(desk, "Q", "Q-2");
        await RenameAsync(desk, "P", "P-2");

        var kept = await desk.Get<ShowSeason>().RunAsync(2026, TestDesk.Cancel);

        var goals = JsonNode.Parse(kept.Goals!)!;
        Assert.Equal("Q-2", (string?)goals["goals"]![1]!["prove"]);
        Assert.Equal("Q-2", (string?)goals["ban"]![0]!["dam"]);
        Assert.Equal("mites", (string?)goals["animals"]!["P-2"]!["hold"]);
        Assert.Equal([2026], kept.Years);
    }

    [Fact]
    public async Task Run_AnimalInTheBinSince_IsLeftOutAndTold()
    {
        using var desk = await TestDesk.WithAsync(Room);
        Assert.Empty((await KeepAsync(desk, null, Goals)).Problems);
        Assert.NotNull((await desk.Get<BinAnimal>().RunAsync("Q", TestDesk.Who, TestDesk.Cancel)).Value);

        var kept = await desk.Get<ShowSeason>().RunAsync(null, TestDesk.Cancel);

        Assert.Single(JsonNode.Parse(kept.Goals!)!["goals"]!.AsArray());
        Assert.Empty(JsonNode.Parse(kept.Goals!)!["ban"]!.AsArray());
        Assert.Contains("is in the bin", Assert.Single(kept.Notes), StringComparison.Ordinal);

        // What is shown can be kept again.
        Assert.Empty((await KeepAsync(desk, kept.Version, kept.Goals!)).Problems);
    }

    [Fact]
    public async Task Run_AGoalOfTheTradeOffIsLost_CanStillBePlanned()
    {
        using var desk = await TestDesk.WithAsync(Room);
        Assert.Empty((await KeepAsync(desk, null, """
            { "goals": [ { "want": "Clown" }, { "prove": "Q", "gene": "Clown" } ], "tradeOff": ["Clown", "Q het Clown?"] }
            """)).Problems);
        Assert.NotNull(JsonNode.Parse((await desk.Get<ShowSeason>().RunAsync(2026, TestDesk.Cancel)).Goals!)!["tradeOff"]);
        Assert.NotNull((await desk.Get<BinAnimal>().RunAsync("Q", TestDesk.Who, TestDesk.Cancel)).Value);

        var kept = await desk.Get<ShowSeason>().RunAsync(2026, TestDesk.Cancel);

        Assert.Null(JsonNode.Parse(kept.Goals!)!["tradeOff"]);
        Assert.Empty((await desk.Get<PlanSeason>().RunAsync(new(new("season", Encoding.UTF8.GetBytes(kept.Goals!))), null, TestDesk.Cancel)).Problems);
    }

    [Fact]
    public async Task Run_WhatCannotBeRead_IsToldWhereAndNotKept()
    {
        using var desk = await TestDesk.WithAsync(Room);

        var answer = await KeepAsync(desk, null, """{ "goals": [ { "want": "Clwn" } ], "pin": [ { "sire": "C", "dam": "X" } ] }""");

        Assert.Equal(["goals.json, goals[1].want", "goals.json, pin[1].dam"], answer.Problems.Select(p => p.Where));
        Assert.Null((await desk.Get<ShowSeason>().RunAsync(2026, TestDesk.Cancel)).Goals);
    }

    [Fact]
    public async Task Run_ChangedMeanwhile_IsRefused()
    {
        using var desk = await TestDesk.WithAsync(Room);
        Assert.Empty((await KeepAsync(desk, null, Goals)).Problems);

        var problem = Assert.Single((await KeepAsync(desk, null, """{ "goals": [] }""")).Problems);

        Assert.Equal("The season of 2026 was changed meanwhile. Look at it again, then repeat the change.", problem.Text);
    }

    private static Task<Answer<DeedLine>> KeepAsync(TestDesk desk, Guid? version, string goals) =>
        desk.Get<KeepSeason>().RunAsync(2026, version, new("goals.json", Encoding.UTF8.GetBytes(goals)), TestDesk.Who, TestDesk.Cancel);

    private static async Task RenameAsync(TestDesk desk, string tag, string to)
    {
        var form = (await desk.Get<EditForm>().RunAsync(tag, TestDesk.Cancel))!;
        var done = await desk.Get<SaveAnimal>().RunAsync(form with { Tag = to }, tag, TestDesk.Who, TestDesk.Cancel);
        Assert.Empty(done.Problems);
    }
}
