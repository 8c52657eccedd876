using System.Text.Json.Nodes;
using Xunit;

namespace Clutchwright.Cli.Tests.Kin;

public sealed class KinCommandTests
{
    /// <summary>The Shorthorn bull Comet: F 15/32, Favourite 3/16, Young Phoenix 11/32 (parents [recalled], values [computed] by Wright's formula,
    /// Am Nat 56: 330-338, 1922); and a clutch of two possible sires.</summary>
    private const string Herd = """
        id,sex,sire,dam,hatched,name
        Foljambe,m,,,,
        Lady Maynard,f,,,,
        Dalton Duke,m,,,,
        Young Strawberry,f,Dalton Duke,Lady Maynard,,
        Bolingbroke,m,Foljambe,Young Strawberry,,
        Phoenix,f,Foljambe,Lady Maynard,,
        Favourite,m,Bolingbroke,Phoenix,,
        Young Phoenix,f,Favourite,Phoenix,,
        Comet,m,Favourite,Young Phoenix,,The first
        H1,f,Comet|Favourite,Lady Maynard,2005,
        H2,m,Comet|Favourite,Lady Maynard,2005,
        H3,f,,Lady Maynard,2006,
        """;

    [Theory]
    [InlineData("kin-all")]
    [InlineData("kin-pair", "--pair", "Favourite", "young phoenix", "--routes")]
    [InlineData("kin-pair-in-doubt", "--pair", "H1", "H2", "--routes", "--most", "4")]
    [InlineData("kin-animal", "--animal", "Comet", "--routes", "--most", "3")]
    [InlineData("kin-founders", "--founders")]
    public async Task Kin_OfAFile_IsAsItsFile(string name, params string[] args)
    {
        using var data = new DataFolder();
        string[] all = ["kin", data.Write("herd.csv", Herd), .. args];

        var text = await Run.MadeUpAsync(all);
        var json = await Run.MadeUpAsync([.. all, "--json"]);

        Assert.Equal((ExitCode.Answered, string.Empty), (text.Code, text.Error));
        Golden.Equal($"{name}.txt", text.Output);
        Assert.Equal((ExitCode.Answered, string.Empty), (json.Code, json.Error));
        Golden.Equal($"{name}.json", json.Output);
    }

    [Theory]
    [InlineData("kin-related-founders", "--pair", "Favourite", "Young Phoenix", "--routes", "--sex-linked", "7%")]
    [InlineData("kin-sex-linked", "--sex-linked", "0")]
    public async Task Kin_OfRelatedFoundersAndWeighedSires_IsAsItsFile(string name, params string[] args)
    {
        using var data = new DataFolder();
        var herd = Herd.Replace("Comet|Favourite", "Comet:0.7|Favourite:0.3", StringComparison.Ordinal);
        string[] all = ["kin", data.Write("herd.csv", herd), "--founder-kinship", data.Write("founders.csv", "a,b,kinship\nFoljambe,Lady Maynard,1/8\nDalton Duke,Dalton Duke,9/16\n"), .. args];

        var text = await Run.MadeUpAsync(all);
        var json = await Run.MadeUpAsync([.. all, "--json"]);

        Assert.Equal((ExitCode.Answered, string.Empty), (text.Code, text.Error));
        Golden.Equal($"{name}.txt", text.Output);
        Assert.Equal((ExitCode.Answered, string.Empty), (json.Code, json.Error));
        Golden.Equal($"{name}.json", json.Output);
    }

    [Fact]
    public async Task Kin_NoSuchFileOfFounders_CouldNotBeDone()
    {
        using var data = new DataFolder();

        var run = await Run.MadeUpAsync("kin", data.Write("herd.csv", Herd), "--founder-kinship", "nowhere.csv");

        Assert.Equal((ExitCode.CouldNotBeDone, string.Empty), (run.Code, run.Output));
    }

    [Fact]
    public async Task Kin_OfComet_GivesThePublishedFigures()
    {
        using var data = new DataFolder();

        var run = await Run.MadeUpAsync("kin", data.Write("herd.csv", Herd), "--pair", "Favourite", "Young Phoenix", "--json");

        var inbreeding = run.Json["inbreeding"]!;
        Assert.Equal((0.1875, 0.34375, 0.46875), ((double)inbreeding["Favourite"]!, (double)inbreeding["Young Phoenix"]!, (double)inbreeding["Comet"]!));
        Assert.Equal((0.46875, "15/32"), ((double)run.Json["kinship"]!, (string?)run.Json["kinshipExact"]));
    }

    [Fact]
    public async Task Kin_OverTheStock_AnswersAsOverItsFile()
    {
        using var data = new DataFolder();
        var file = data.Write("herd.csv", Herd);
        await Run.MadeUpAsync("stock", "import", file, "--data", data.Path);

        var stock = await Run.MadeUpAsync("kin", "--pair", "H1", "H2", "--routes", "--founders", "--json", "--data", data.Path);
        var alone = await Run.MadeUpAsync("kin", file, "--pair", "H1", "H2", "--routes", "--founders", "--json");

        Assert.Equal((ExitCode.Answered, string.Empty), (stock.Code, stock.Error));
        Assert.True(JsonNode.DeepEquals(alone.Json["kinship"], stock.Json["kinship"]));
        foreach (var (id, value) in alone.Json["inbreeding"]!.AsObject())
        {
            Assert.Equal((double)value!, (double)stock.Json["inbreeding"]![id]!, 1e-15);
        }
    }

    [Fact]
    public async Task Kin_OverAFile_LeavesTheDataFolderAlone()
    {
        using var data = new DataFolder();
        var file = data.Write("herd.csv", Herd);
        var folder = Path.Combine(data.Path, "book");

        await Run.MadeUpAsync("kin", file, "--data", folder);

        Assert.False(Directory.Exists(folder));
    }

    [Theory]
    [InlineData("--pair: ", "--pair", "Comet")]
    [InlineData("did you mean Phoenix?", "--pair", "Comet", "Phenix")]
    [InlineData("has no animal 'X9'", "--animal", "X9")]
    [InlineData("--routes: say between whom", "--routes")]
    [InlineData("sex-linked: 'x' is no recombination fraction", "--sex-linked", "x")]
    [InlineData("--most: '0' is not a whole number", "--most", "0")]
    public async Task Kin_AskedWrongly_SaysWhatWouldBeRight(string error, params string[] args)
    {
        using var data = new DataFolder();

        var run = await Run.MadeUpAsync(["kin", data.Write("herd.csv", Herd), .. args]);

        Assert.Equal((ExitCode.AskedWrongly, string.Empty), (run.Code, run.Output));
        Assert.Contains(error, run.Error, StringComparison.Ordinal);
        Assert.Single(run.Error.TrimEnd('\n').Split('\n'));
    }

    [Fact]
    public async Task Kin_BadRows_AreAllNamedByLine()
    {
        using var data = new DataFolder();

        var run = await Run.MadeUpAsync("kin", data.Write("herd.csv", "id,sex,sire\nA,q,\nB,m,C\n"));

        Assert.Equal((ExitCode.AskedWrongly, string.Empty), (run.Code, run.Output));
        Assert.Contains("herd.csv, line 2, column sex", run.Error, StringComparison.Ordinal);
        Assert.Contains("herd.csv, line 3, column sire: C has no row in the file", run.Error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Kin_NoSuchFile_CouldNotBeDone()
    {
        var run = await Run.MadeUpAsync("kin", "nowhere.csv");

        Assert.Equal((ExitCode.CouldNotBeDone, string.Empty), (run.Code, run.Output));
    }
}
