using System.Text.Json.Nodes;
using Xunit;

namespace Clutchwright.Cli.Tests.Season;

public sealed class SeasonCommandTests
{
    private const string Stock = """
        id,sex,sire,dam,seen,told,hatched
        M1,m,,,Amber,,2018
        M2,m,,,normal,66% het Amber,2018
        M3,m,,,Thorn,,2018
        F1,f,,,normal,het Amber,2018
        F2,f,,,Lark,50% het Amber,2018
        F3,f,,,Amber,,2018
        F4,f,,,Finch,,2018
        D1,f,M1,F1,normal,,2021
        D2,f,M1,F1,Amber,,2021
        U1,u,M1,F1,,,2023
        """;

    private const string Goals = """
        {
          "on": "2026-10-01",
          "goals": [
            { "name": "amber", "want": "Amber", "weight": 5, "atLeast": 2 },
            { "name": "snowdrift", "want": "Snowdrift" },
            { "prove": "M2", "gene": "Amber", "weight": 2 },
            { "expect": "Lark", "weight": 0.1 },
            { "value": { "each": 10, "Amber": 90 }, "weight": 0.001 }
          ],
          "limits": { "matingsPerMale": 3, "inbreeding": 0.2, "restMonths": 12 },
          "animals": { "F4": { "hold": "mites" }, "D1": { "lastClutch": "2026-05-01" }, "M1": { "matings": 2 } },
          "pin": [ { "sire": "M2", "dam": "F3" } ],
          "tradeOff": ["amber", "value"]
        }
        """;

    [Theory]
    [InlineData("season-plan")]
    [InlineData("season-plan-quick", "--quick")]
    public async Task Plan_OfAStockFile_IsAsItsFile(string name, params string[] options)
    {
        using var data = new DataFolder();
        string[] all = ["season", "plan", "--stock", data.Write("stock.csv", Stock), "--goals", data.Write("goals.json", Goals), .. options];

        var text = await Run.MadeUpAsync(all);
        var json = await Run.MadeUpAsync([.. all, "--json"]);

        Assert.Equal((ExitCode.Answered, string.Empty), (text.Code, text.Error));
        Assert.Equal((ExitCode.Answered, string.Empty), (json.Code, json.Error));
        new SeasonChecker(Stock, Goals).Check(json.Json);
        Golden.Equal($"{name}.txt", text.Output);
        Golden.Equal($"{name}.json", json.Output);
    }

    [Fact]
    public async Task Plan_OfRandomStocks_KeepsToTheRules()
    {
        var planned = 0;
        for (var seed = 1; seed <= 60; seed++)
        {
            var (csv, goals) = RandomSeason(seed);
            using var data = new DataFolder();

            var run = await Run.MadeUpAsync("season", "plan", "--stock", data.Write("stock.csv", csv), "--goals", data.Write("goals.json", goals), "--json", "--quick");

            Assert.True(run.Code == ExitCode.Answered, $"seed {seed}: {run.Error}");
            new SeasonChecker(csv, goals).Check(run.Json);
            planned += run.Json["pairings"]!.AsArray().Count;
        }

        Assert.True(planned > 100, $"{planned}");
    }

    [Fact]
    public async Task Plan_WithALiftedDanger_MayUseThatPairAndNoOther()
    {
        const string Thorns = """{ "goals": [ { "expect": "Thorn" } ], "lift": [ { "sire": "M3", "dam": "F4", "because": "asked a vet" } ] }""";
        using var data = new DataFolder();

        var run = await Run.MadeUpAsync("season", "plan", "--stock", data.Write("stock.csv", Stock), "--goals", data.Write("goals.json", Thorns), "--json");

        var pairing = Assert.Single(run.Json["pairings"]!.AsArray());
        Assert.Equal(("M3", "F4"), (pairing!["sire"]!.GetValue<string>(), pairing["dam"]!.GetValue<string>()));
        Assert.NotEmpty(pairing["lifted"]!.AsArray());
    }

    [Fact]
    public async Task Plan_FromAnEarlierAnswer_IsTheSame()
    {
        using var data = new DataFolder();
        string[] all = ["season", "plan", "--stock", data.Write("stock.csv", Stock), "--goals", data.Write("goals.json", Goals), "--json", "--quick"];
        var first = await Run.MadeUpAsync(all);

        var second = await Run.MadeUpAsync([.. all, "--before", data.Write("before.json", first.Output)]);

        Assert.Equal(first.Output, second.Output);
    }

    [Fact]
    public async Task Plan_WhereTwoPinsNeedOneMating_SaysWhatWouldHelp()
    {
        const string Clash = """
            { "goals": [ { "want": "Amber" } ], "animals": { "M1": { "matings": 1 } },
              "pin": [ { "sire": "M1", "dam": "F3" }, { "sire": "M1", "dam": "F2" } ] }
            """;
        using var data = new DataFolder();

        var run = await Run.MadeUpAsync("season", "plan", "--stock", data.Write("stock.csv", Stock), "--goals", data.Write("goals.json", Clash), "--json");

        Assert.Equal((ExitCode.Answered, "infeasible"), (run.Code, run.Json["status"]!.GetValue<string>()));
        Assert.Equal(
            ["M1 has 1 mating at most.", "M1 with F2 is pinned.", "M1 with F3 is pinned."],
            run.Json["clashes"]!.AsArray().Select(c => c!["text"]!.GetValue<string>()).Order(StringComparer.Ordinal));
        Assert.Contains(run.Json["clashes"]!.AsArray(), c => c!["change"]?.GetValue<string>() == "Let him have 2.");
    }

    [Theory]
    [InlineData("""{ "goals": [ { "wnat": "Amber" } ] }""", "goals.json, goals[1]: There is no 'wnat' here; did you mean want?")]
    [InlineData("""{ "goals": [ { "want": "Ambr" } ] }""", "goals.json, goals[1].want:")]
    [InlineData("""{ "goals": [ { "want": "Amber", "weight": "much" } ] }""", "goals.json, goals[1].weight: Here stands the text 'much'. Write a number, 0 or more")]
    [InlineData("""{ "goals": [], "pin": [ { "sire": "M9", "dam": "F1" } ] }""", "goals.json, pin[1].sire: The stock has no animal 'M9'; did you mean")]
    [InlineData("""{ "goals": [], "pin": [ { "sire": "F1", "dam": "F2" } ] }""", "goals.json, pin[1].sire: F1 is female")]
    [InlineData("""{ "goals": [], "limits": { "inbreeding": 2 } }""", "goals.json, limits.inbreeding: Here stands 2. Write a number, from 0 to 1")]
    [InlineData("""{ "goals": [ { "prove": "M2", "gene": "Lark" } ] }""", "goals.json, goals[1].gene: Lark shows in one copy")]
    [InlineData("""{ "goals": [ {} ] }""", "goals.json, goals[1]: It is not said what this goal is. Write one of: want, holdback, prove, expect, value")]
    [InlineData("""{ "goals": [ { "want": "Amber" }, { "want": "Amber" } ] }""", "goals.json, goals: Two goals are called 'Amber'. Give one another \"name\"")]
    [InlineData("""{ "goals": [ ], "tradeOff": ["a", "b"] }""", "goals.json, tradeOff: There is no goal called 'a'")]
    [InlineData("{ \"goals\": [\n }", "goals.json, line 2: This is no JSON")]
    [InlineData("[]", "goals.json: Here stands a list. Write an object")]
    public async Task Plan_OfGoalsThatAreWrong_SaysWhatAndWhere(string goals, string said)
    {
        using var data = new DataFolder();

        var run = await Run.MadeUpAsync("season", "plan", "--stock", data.Write("stock.csv", Stock), "--goals", data.Write("goals.json", goals));

        Assert.Equal((ExitCode.AskedWrongly, string.Empty), (run.Code, run.Output));
        Assert.StartsWith(said, run.Error, StringComparison.Ordinal);
        Assert.Equal(1, run.Error.Count(c => c == '\n'));
    }

    [Fact]
    public async Task Plan_OfTheDemo_RunsAsTheHowToSays()
    {
        var demo = Path.Combine(Golden.ProjectFolder, "..", "..", "demo");

        var run = await Run.ShippedAsync("season", "plan", "--stock", Path.Combine(demo, "thornmoor.csv"), "--goals", Path.Combine(demo, "season.json"), "--json");

        Assert.Equal((ExitCode.Answered, string.Empty), (run.Code, run.Error));
        Assert.InRange(run.Json["gap"]!.GetValue<double>(), 0.0, 0.05);
        Assert.NotEmpty(run.Json["pairings"]!.AsArray());
        Assert.All(run.Json["pairings"]!.AsArray(), p => Assert.NotNull(p!["runnerUp"]));
    }

    private static (string Csv, string Goals) RandomSeason(int seed)
    {
        var random = new Random(seed);
        var rows = new List<string> { "id,sex,sire,dam,seen,told,hatched" };
        var (males, females) = (new List<string>(), new List<string>());
        var count = random.Next(6, 18);
        for (var i = 0; i < count; i++)
        {
            var isMale = i % 3 == 0;
            var hasParents = i > 5 && random.Next(2) == 0;
            var id = $"{(isMale ? 'M' : 'F')}{i}";
            var (sire, dam) = hasParents ? (males[random.Next(males.Count)], females[random.Next(females.Count)]) : (string.Empty, string.Empty);

            // Founders say what they are; of the others nothing is known, so that no record can clash.
            var seen = hasParents ? string.Empty : random.Next(6) switch { 0 => "Thorn", 1 => "Amber", 2 => "Lark", _ => "normal" };
            var told = seen == "normal" && random.Next(2) == 0 ? "50% het Amber" : string.Empty;
            rows.Add($"{id},{(isMale ? 'm' : 'f')},{sire},{dam},{seen},{told},20{10 + i}");
            (isMale ? males : females).Add(id);
        }

        var goals = new JsonObject
        {
            ["on"] = "2032-10-01",
            ["goals"] = new JsonArray(
                new JsonObject { ["want"] = "Amber", ["atLeast"] = random.Next(1, 3), ["weight"] = 3 },
                new JsonObject { ["expect"] = "Lark", ["weight"] = 0.2 }),
            ["limits"] = new JsonObject
            {
                ["matingsPerMale"] = random.Next(0, 4),
                ["inbreeding"] = random.Next(3) * 0.0625,
                ["meanInbreeding"] = 0.05,
                ["restMonths"] = 12,
                ["eggs"] = random.Next(2, 20),
            },
            ["animals"] = new JsonObject
            {
                [females[0]] = new JsonObject { ["lastClutch"] = random.Next(2) == 0 ? "2032-06-01" : "2031-06-01" },
                [females[^1]] = new JsonObject { ["hold"] = "thin" },
                [males[0]] = new JsonObject { ["matings"] = random.Next(1, 6), ["leaveOut"] = random.Next(4) == 0 },
            },
            ["ban"] = new JsonArray(new JsonObject { ["sire"] = males[^1], ["dam"] = females[1] }),
            ["pin"] = random.Next(4) == 0 ? new JsonArray(new JsonObject { ["sire"] = males[1], ["dam"] = females[2] }) : [],
            ["lift"] = random.Next(2) == 0 ? new JsonArray(new JsonObject { ["sire"] = males[0], ["dam"] = females[1] }) : [],
        };
        return (string.Join('\n', rows), goals.ToJsonString());
    }
}
