using System.Text.Json.Nodes;
using Xunit;

namespace Clutchwright.Cli.Tests.Incubators;

/// <summary><c>incubator</c> and its commands.</summary>
public sealed class IncubatorCommandTests
{
    [Fact]
    public async Task AddEditReadRetire_OneIncubator_IsListedAsItIs()
    {
        using var data = await RoomAsync();

        await DoneAsync(data, "incubator", "edit", "north", "--name", "Attic", "--highest", "90.5F", "--lowest-humidity", "");
        await DoneAsync(data, "incubator", "read", "Attic", "--temperature", "31,5", "--humidity", "92", "--at", "2026-04-01 08:00");
        var incubator = Assert.Single((await DoneAsync(data, "incubator", "list"))["incubators"]!.AsArray())!;

        Assert.Equal(("Attic", 30.0, 32.5, null), ((string?)incubator["name"], (double)incubator["lowestCelsius"]!, (double)incubator["highestCelsius"]!, incubator["lowestHumidityPercent"]));
        Assert.Equal((31.5, 92.0), ((double)incubator["last"]!["celsius"]!, (double)incubator["last"]!["humidityPercent"]!));
        await DoneAsync(data, "incubator", "retire", "Attic");
        Assert.True((bool)(await DoneAsync(data, "incubator", "list"))["incubators"]![0]!["retired"]!);
        await DoneAsync(data, "incubator", "retire", "Attic", "--back");
        await DoneAsync(data, "incubator", "unit", "F");
        var page = await Run.MadeUpAsync("incubator", "list", "--data", data.Path);
        Assert.Contains("88.7 °F, 92 %", page.Output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Readings_OfALogger_AreShownThenTakenWhole()
    {
        using var data = await RoomAsync();
        var file = data.Write("log.csv", "time,temperature\n2026-04-01 10:00Z,31\n2026-04-01 11:00Z,33\n2026-04-01 12:00Z,32\n");

        var dry = await DoneAsync(data, "incubator", "readings", "North", file, "--dry-run");
        var taken = await DoneAsync(data, "incubator", "readings", "North", file);

        Assert.Equal((false, 3, true, 3), ((bool)dry["written"]!, (int)dry["fresh"]!, (bool)taken["written"]!, (int)taken["added"]!));
        var shown = await DoneAsync(data, "incubator", "readings", "North", "--days", "100000", "--most", "2");
        Assert.Equal(2, shown["readings"]!.AsArray().Count);

        // Above 32 degrees from half past ten to twelve.
        Assert.Equal((120.0, 90.0), ((double)shown["temperature"]!["knownMinutes"]!, (double)shown["temperature"]!["outsideMinutes"]!));
        Assert.Equal("2026-04-01T10:30:00Z", (string?)shown["temperature"]!["longestFrom"]);
    }

    [Fact]
    public async Task Readings_OfAWrongFile_NamesTheRowAndWritesNothing()
    {
        using var data = await RoomAsync();
        var file = data.Write("log.csv", "time,temperature\n2026-04-01 10:00,31\n2026-04-01 11:00,hot\n");

        var run = await Run.MadeUpAsync("incubator", "readings", "North", file, "--data", data.Path);

        Assert.Equal(ExitCode.AskedWrongly, run.Code);
        Assert.StartsWith("log.csv: 1 problem, nothing was written; the first: line 3, temperature: \"hot\" is no number", run.Error, StringComparison.Ordinal);
        Assert.Empty((await DoneAsync(data, "incubator", "readings", "North"))["readings"]!.AsArray());
    }

    [Theory]
    [InlineData("incubator: There is no incubator \"Nroth\"; did you mean", "read", "Nroth", "--temperature", "31")]
    [InlineData("temperature: \"warm\" is no number", "read", "North", "--temperature", "warm")]
    [InlineData("name: Another incubator is called North", "add", "NORTH")]
    [InlineData("lowest: A lowest limit is above its highest", "add", "South", "--lowest", "33", "--highest", "31")]
    [InlineData("unit: \"K\" is no unit", "unit", "K")]
    public async Task Incubator_AskedWrongly_SaysWhatAndWhere(string says, params string[] asked)
    {
        using var data = await RoomAsync();

        var run = await Run.MadeUpAsync(["incubator", .. asked, "--data", data.Path]);

        Assert.Equal((ExitCode.AskedWrongly, string.Empty), (run.Code, run.Output));
        Assert.StartsWith(says, run.Error, StringComparison.Ordinal);
    }

    private static async Task<DataFolder> RoomAsync()
    {
        var data = new DataFolder();
        await DoneAsync(data, "incubator", "add", "North", "--lowest", "30", "--highest", "32", "--lowest-humidity", "85");
        return data;
    }

    private static async Task<JsonNode> DoneAsync(DataFolder data, params string[] asked)
    {
        var run = await Run.MadeUpAsync([.. asked, "--data", data.Path, "--json"]);
        Assert.Equal((ExitCode.Answered, string.Empty), (run.Code, run.Error));
        return run.Json;
    }
}
