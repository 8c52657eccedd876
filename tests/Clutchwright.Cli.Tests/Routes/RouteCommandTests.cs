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
