using Xunit;

namespace Clutchwright.Cli.Tests.Looks;

/// <summary><c>look</c> over the made-up species and over the shipped one.</summary>
public sealed class LookCommandTests
{
    [Theory]
    [InlineData("look-tone", "look", "ground vivid red within 30, hatchling")]
    [InlineData("look-holds", "look", "pattern vivid red, no white, holds")]
    [InlineData("look-nothing", "look", "eye vivid red within 1, all white")]
    public async Task Look_Answers_AreAsTheirFiles(string name, params string[] line)
    {
        var text = await Run.MadeUpAsync(line);
        var json = await Run.MadeUpAsync([.. line, "--json"]);

        Assert.Equal((ExitCode.Answered, string.Empty), (text.Code, text.Error));
        Golden.Equal($"{name}.txt", text.Output);
        Golden.Equal($"{name}.json", json.Output);
    }

    [Fact]
    public async Task Look_OfTheShippedSpecies_HasTheKeysThatProgramsRelyOn()
    {
        var run = await Run.ShippedAsync("look", "pattern strong yellow, white patches, holds", "--json");

        Assert.Equal((ExitCode.Answered, string.Empty), (run.Code, run.Error));
        var makings = run.Json["makings"]!.AsArray();
        Assert.NotEmpty(makings);
        Assert.All(makings, m => Assert.All(
            ["genotype", "loci", "tone", "evidence", "warnings"], key => Assert.True(m!.AsObject().ContainsKey(key), key)));
        Assert.All(makings, m => Assert.InRange((double)m!["distance"]!, 0.0, 12.0));

        // A Piebald with a yellow gene: common practice of the trade, no source.
        Assert.Contains(makings, m => (string?)m!["genotype"] == "Pastel Piebald");
    }

    [Theory]
    [InlineData("hatchling")]
    [InlineData("juvenile")]
    [InlineData("subadult")]
    [InlineData("adult")]
    public async Task Look_AtAStage_TellsTheTonesOfIt(string stage)
    {
        var run = await Run.ShippedAsync("look", "eye red", "--at", stage, "--json");

        Assert.All(run.Json["makings"]!.AsArray(), m => Assert.Equal(stage, (string?)m!["tone"]!["stage"]));
    }

    [Fact]
    public async Task Look_WithStock_TellsTheBestChance()
    {
        using var data = new DataFolder();
        var file = data.Write("stock.csv", "id,sex,hatched,seen\nM1,m,2015,Amber\nF1,f,2015,Amber\n");
        Assert.Equal(ExitCode.Answered, (await Run.MadeUpAsync("stock", "import", file, "--data", data.Path)).Code);

        var run = await Run.MadeUpAsync("look", "with Amber", "--json", "--data", data.Path);

        var making = run.Json["makings"]!.AsArray().Select(m => m!.AsObject()).First(m => (string?)m["genotype"] == "Amber");
        Assert.True((double)making["bestChance"]! > 0.0);
        Assert.Equal("M1", (string?)making["bestPair"]!["sire"]);
        Assert.Empty(making["missing"]!.AsArray());
    }

    [Theory]
    [InlineData("QUERY: 'strong yelow' is no tone", "look", "pattern strong yelow")]
    [InlineData("--at: 'adlt' is no stage of life; write hatchling, juvenile, subadult or adult", "look", "white", "--at", "adlt")]
    [InlineData("clutchwright look: --within: 'far' is not a number above 0 and up to 100", "look", "white", "--within", "far")]
    [InlineData("clutchwright look: --genes: '4' is not a whole number from 1 to 3", "look", "white", "--genes", "4")]
    [InlineData("clutchwright look: QUERY is missing", "look")]
    public async Task Look_AskedWrongly_SaysWhatAndWhere(string said, params string[] line)
    {
        var run = await Run.ShippedAsync(line);

        Assert.Equal(ExitCode.AskedWrongly, run.Code);
        Assert.StartsWith(said, run.Error, StringComparison.Ordinal);
        Assert.Single(run.Error.TrimEnd('\n').Split('\n'));
        Assert.Equal(string.Empty, run.Output);
    }

    [Fact]
    public async Task Look_WithoutABook_MakesNone()
    {
        using var data = new DataFolder();

        var run = await Run.MadeUpAsync("look", "no white", "--data", data.Path);

        Assert.Equal(ExitCode.Answered, run.Code);
        Assert.Empty(Directory.GetFileSystemEntries(data.Path));
    }
}
