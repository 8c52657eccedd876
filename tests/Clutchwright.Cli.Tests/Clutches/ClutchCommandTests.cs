using System.Text.Json.Nodes;
using Xunit;

namespace Clutchwright.Cli.Tests.Clutches;

/// <summary><c>clutch</c>, from laying to the last hatchling.</summary>
public sealed class ClutchCommandTests
{
    [Fact]
    public async Task Clutch_FromLayingToHatching_TellsWhatBecameOfIt()
    {
        using var data = await RoomAsync();

        Assert.Equal("L1", (string?)(await DoneAsync(data, "clutch", "lay", "F", "--sire", "M", "--eggs", "3", "--slugs", "1", "--on", "2025-05-01", "--id", "L1"))["clutch"]);
        await DoneAsync(data, "stock", "note", "F", "eggs lost", "--amount", "1", "--clutch", "L1", "--on", "2025-06-01");
        var hatched = await DoneAsync(data, "clutch", "hatch", "L1", "Normal", "--sex", "f", "--mass", "61", "--on", "2025-06-28");
        Assert.Equal("L1-1", (string?)hatched["id"]);

        var shown = await DoneAsync(data, "clutch", "show", "l1");
        Assert.Equal((3, 1, 1, 1, 1, "hatching"), ((int)shown["goodEggs"]!, (int)shown["slugs"]!, (int)shown["lost"]!, (int)shown["hatchedCount"]!, (int)shown["left"]!, (string?)shown["stage"]));
        Assert.Equal("female", (string?)shown["young"]![0]!["sex"]);
        Assert.Equal(1.0, shown["looks"]!.AsArray().Sum(l => (double)l!["probability"]!), 12);
        Assert.Single((await DoneAsync(data, "clutch", "list", "--of", "M"))["clutches"]!.AsArray());
        await DoneAsync(data, "clutch", "edit", "L1", "--counted", "1.0 normal");
        Assert.Equal("over", (string?)(await DoneAsync(data, "clutch", "list"))["clutches"]![0]!["stage"]);
    }

    [Fact]
    public async Task Ids_Set_AreUsedForTheNext()
    {
        using var data = await RoomAsync();

        await DoneAsync(data, "clutch", "ids", "--clutches", "{year}{letter}", "--hatchlings", "{clutch}.{nn}");
        Assert.Equal("2025a", (string?)(await DoneAsync(data, "clutch", "lay", "F", "--on", "2025-05-01"))["clutch"]);
        Assert.Equal("2025a.01", (string?)(await DoneAsync(data, "clutch", "hatch", "2025a", "--on", "2025-07-01"))["id"]);
    }

    [Fact]
    public async Task Bin_ThenRestore_IsThereAgain()
    {
        using var data = await RoomAsync();
        await DoneAsync(data, "clutch", "lay", "F", "--id", "L1");

        await DoneAsync(data, "clutch", "bin", "L1");
        Assert.Empty((await DoneAsync(data, "clutch", "list"))["clutches"]!.AsArray());
        Assert.Single((await DoneAsync(data, "clutch", "list", "--bin"))["clutches"]!.AsArray());
        await DoneAsync(data, "clutch", "restore", "L1");
        Assert.Single((await DoneAsync(data, "clutch", "list"))["clutches"]!.AsArray());
    }

    [Theory]
    [InlineData("clutch: There is no clutch X", "clutch", "show", "X")]
    [InlineData("dam: M is male", "clutch", "lay", "M")]
    [InlineData("eggs: \"many\" is no number of eggs", "clutch", "lay", "F", "--eggs", "many")]
    [InlineData("sire: No animal has the id Z", "clutch", "lay", "F", "--sire", "Z")]
    [InlineData("incubator: There is no incubator Warm in use", "clutch", "lay", "F", "--incubator", "Warm")]
    [InlineData("laid: 2199 is yet to come", "clutch", "lay", "F", "--on", "2199")]
    [InlineData("hatchlings: A number is missing", "clutch", "ids", "--hatchlings", "{yy}")]
    public async Task Clutch_AskedWrongly_SaysWhatAndWhere(string says, params string[] asked)
    {
        using var data = await RoomAsync();

        var run = await Run.MadeUpAsync([.. asked, "--data", data.Path]);

        Assert.Equal((ExitCode.AskedWrongly, string.Empty), (run.Code, run.Output));
        Assert.StartsWith(says, run.Error, StringComparison.Ordinal);
    }

    private static async Task<DataFolder> RoomAsync()
    {
        var data = new DataFolder();
        var run = await Run.MadeUpAsync("stock", "import", data.Write("animals.csv", "id,sex,hatched\nM,m,2020\nF,f,2020\n"), "--data", data.Path);
        Assert.Equal(ExitCode.Answered, run.Code);
        return data;
    }

    private static async Task<JsonNode> DoneAsync(DataFolder data, params string[] asked)
    {
        var run = await Run.MadeUpAsync([.. asked, "--data", data.Path, "--json"]);
        Assert.Equal((ExitCode.Answered, string.Empty), (run.Code, run.Error));
        return run.Json;
    }
}
