using System.Text.Json.Nodes;
using Xunit;

namespace Clutchwright.Cli.Tests.Happenings;

/// <summary><c>stock note</c> and <c>stock log</c>.</summary>
public sealed class LogCommandTests
{
    [Fact]
    public async Task Note_ThenLog_TellsItLatestFirst()
    {
        using var data = await RoomAsync();

        await DoneAsync(data, "stock", "note", "F", "weighed", "--amount", "1540,5", "--on", "2025-03-03");
        await DoneAsync(data, "stock", "note", "F", "put together", "--mate", "M", "--on", "about November 2025");
        await DoneAsync(data, "stock", "note", "M", "Health", "--text", "a mite", "--on", "2024");

        var lines = (await DoneAsync(data, "stock", "log")).AsObject()["happenings"]!.AsArray();
        Assert.Equal(["Introduced", "Weighed", "Health"], lines.Select(l => (string?)l!["kind"]));
        Assert.Equal((1540.5, "g", "2025-03-03"), ((double)lines[1]!["amount"]!, (string?)lines[1]!["unit"], (string?)lines[1]!["day"]));
        Assert.Equal("M", (string?)lines[0]!["mate"]);
        Assert.Equal(2, (await DoneAsync(data, "stock", "log", "M"))["happenings"]!.AsArray().Count);
        Assert.Single((await DoneAsync(data, "stock", "log", "--kind", "weighed"))["happenings"]!.AsArray());
    }

    [Theory]
    [InlineData("kind: \"wieghed\" is nothing that can be written down", "F", "wieghed")]
    [InlineData("amount: How much is missing", "F", "weighed")]
    [InlineData("amount: \"1,450.5\" is no number", "F", "weighed", "--amount", "1,450.5")]
    [InlineData("mate: The other animal of the pair is missing", "F", "locked")]
    [InlineData("animal: No animal has the id X", "X", "shed")]
    [InlineData("when: 2199 is yet to come", "F", "shed", "--on", "2199")]
    public async Task Note_AskedWrongly_SaysWhatAndWhere(string says, params string[] asked)
    {
        using var data = await RoomAsync();

        var run = await Run.MadeUpAsync(["stock", "note", .. asked, "--data", data.Path]);

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
