using Xunit;

namespace Clutchwright.Cli.Tests.Routes;

/// <summary><c>route</c>, whole, with the made-up species, and what is asked wrongly.</summary>
public sealed class RouteCommandTests
{
    private const string Room = """
        id,sex,sire,dam,hatched,seen,told
        M,m,,,2018,Amber,
        N,m,M,F,2022,normal,
        F,f,,,2018,Coral,
        G,f,,,2019,normal,66% het Amber
        """;

    public static TheoryData<string, string[]> Questions => new()
    {
        { "route-two-genes", ["--want", "Amber Coral", "--seasons", "6", "--eggs", "6"] },
        { "route-bought", ["--want", "Amber or Super Coral", "--seasons", "7", "--buy", "0.1 Amber=300", "--buy", "1.0 Coral", "--purchases", "--most-inbreeding", "0.2", "--tries", "200"] },
        { "route-none", ["--want", "Lark", "--seasons", "4"] },
    };

    [Theory]
    [MemberData(nameof(Questions))]
    public async Task Route_File_IsAnsweredAsItsFile(string name, string[] options)
    {
        using var data = new DataFolder();
        var file = data.Write("animals.csv", Room);

        var text = await Run.MadeUpAsync(["route", "--stock", file, .. options]);
        var json = await Run.MadeUpAsync(["route", "--stock", file, .. options, "--json"]);

        Assert.Equal((ExitCode.Answered, string.Empty), (text.Code, text.Error));
        Golden.Equal($"{name}.txt", text.Output);
        Assert.Equal((ExitCode.Answered, string.Empty), (json.Code, json.Error));
        Golden.Equal($"{name}.json", json.Output);
    }

    [Fact]
    public async Task Route_FromNothing_BuysWhatItNeeds()
    {
        var run = await Run.MadeUpAsync("route", "--want", "Amber Coral", "--buy", "singles", "--json");

        Assert.Equal(ExitCode.Answered, run.Code);
        Assert.NotEmpty(run.Json["routes"]!.AsArray());
        Assert.True(run.Json["routes"]![0]!["price"]!.GetValue<double>() >= 2.0);
    }

    [Fact]
    public async Task Route_Followed_IsKeptAsksTheSeasonAndEnds()
    {
        using var data = new DataFolder();
        var file = data.Write("animals.csv", Room.Replace("G,f,,,2019,normal,66% het Amber", "G,f,,,2019,Coral,", StringComparison.Ordinal));
        await DoneAsync("stock", "import", file);

        var route = await DoneAsync("route", "--want", "Amber Coral", "--seasons", "6", "--tries", "0", "--follow", "1");
        var season = await DoneAsync("season", "show");
        var plan = await DoneAsync("season", "plan", "--quick");
        var standing = await DoneAsync("route", "followed", "1");

        Assert.Equal("Adopted a route to Amber Coral", (string?)route["deed"]!["what"]);
        Assert.Equal((string?)season["season"]!["goals"]![0]!["name"], (string?)plan["goals"]![0]!["goal"]);
        Assert.NotEmpty(plan["pairings"]!.AsArray());
        Assert.True((bool?)standing["inSeason"]);
        Assert.Equal((double?)route["routes"]![0]!["chance"], (double?)standing["chance"]);
        await DoneAsync("route", "followed", "1", "--ask-season");
        await DoneAsync("route", "followed", "1", "--give-up");
        Assert.Equal("given up", (string?)(await DoneAsync("route", "followed"))["routes"]![0]!["ending"]);
        Assert.Empty((await DoneAsync("season", "show"))["season"]!["goals"]!.AsArray());
        Assert.Contains("there is no route 2", (await Run.MadeUpAsync("route", "followed", "2", "--data", data.Path)).Error, StringComparison.Ordinal);
        Assert.Contains("nothing of the season of 2100", (await Run.MadeUpAsync("season", "show", "--year", "2100", "--data", data.Path)).Output, StringComparison.Ordinal);
        Assert.Contains("your book keeps no season of 2100", (await Run.MadeUpAsync("season", "plan", "--year", "2100", "--data", data.Path)).Error, StringComparison.Ordinal);

        async Task<System.Text.Json.Nodes.JsonNode> DoneAsync(params string[] asked)
        {
            var run = await Run.MadeUpAsync([.. asked, "--data", data.Path, "--json"]);
            Assert.Equal((ExitCode.Answered, string.Empty), (run.Code, run.Error));
            return run.Json;
        }
    }

    [Theory]
    [InlineData("route: say what shall hatch", "route")]
    [InlineData("want: ", "route", "--want", "Ambre")]
    [InlineData("clutchwright route: --seasons: '0' is not a whole number from 1 to 20", "route", "--want", "Amber", "--seasons", "0")]
    [InlineData("buy: \"Amber\" has no sex", "route", "--want", "Amber", "--buy", "Amber")]
    [InlineData("buy: 'much' is no price", "route", "--want", "Amber", "--buy", "1.0 Amber=much")]
    [InlineData("lift: 'nothing' is no danger of the catalogue", "route", "--want", "Amber", "--lift", "nothing")]
    public async Task Route_AskedWrongly_SaysWhatAndWhere(string expected, params string[] args)
    {
        var run = await Run.MadeUpAsync(args);

        Assert.Equal((ExitCode.AskedWrongly, string.Empty), (run.Code, run.Output));
        Assert.StartsWith(expected, run.Error, StringComparison.Ordinal);
    }
}
