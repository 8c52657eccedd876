using Xunit;

namespace Clutchwright.Cli.Tests.Calendar;

/// <summary><c>season calendar</c>, reckoned as on a past day so that it is the same on every day.</summary>
public sealed class CalendarCommandTests
{
    [Fact]
    public async Task Calendar_Shed_TellsEggsTaskAndWhy()
    {
        using var data = await RoomAsync();
        await NoteAsync(data, "F", "pre-lay shed", "--on", "2025-03-01");

        var answer = (await AskAsync(data, "--from", "2025-03-10", "--days", "60", "--json")).Json;

        Assert.Equal(("2025-03-10", "2025-05-08"), ((string?)answer["on"], (string?)answer["to"]));
        var eggs = answer["due"]!.AsArray().Single(d => (string?)d!["step"] == "Eggs")!;

        // 1 March and 30 days: 31 March (facts of the species data).
        Assert.InRange(string.CompareOrdinal((string?)eggs["median"], "2025-03-30"), 0, 1);
        Assert.Equal("F", (string?)eggs["dam"]);
        Assert.Equal("InTime", (string?)eggs["level"]);
        Assert.Contains(eggs["why"]!.AsArray(), w => ((string?)w)!.StartsWith("Pre-lay shed: 2025-03-01", StringComparison.Ordinal));
        Assert.Single(answer["tasks"]!.AsArray());
        Assert.Equal(9, answer["intervals"]!.AsArray().Count);
    }

    [Fact]
    public async Task Calendar_AsText_SaysWhatIsOverdue()
    {
        using var data = await RoomAsync();
        await NoteAsync(data, "F", "pre-lay shed", "--on", "2025-03-01");

        var run = await AskAsync(data, "--from", "2025-04-15");

        Assert.StartsWith("Calendar from 2025-04-15 to 2025-08-12\n", run.Output, StringComparison.Ordinal);
        Assert.Contains("Overdue: Eggs of F. Eggs can be retained. Common practice: call a reptile veterinarian now", run.Output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Calendar_Ics_WritesTheFile()
    {
        using var data = await RoomAsync();
        await NoteAsync(data, "F", "ovulated", "--on", "2025-03-01");
        var file = Path.Combine(data.Path, "season.ics");

        await AskAsync(data, "--from", "2025-03-05", "--ics", file);

        var text = await File.ReadAllTextAsync(file, TestContext.Current.CancellationToken);
        Assert.StartsWith("BEGIN:VCALENDAR\r\nVERSION:2.0\r\n", text, StringComparison.Ordinal);
        Assert.Contains("SUMMARY:Eggs of F", text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Calendar_NothingWritten_SaysHowToBegin()
    {
        using var data = await RoomAsync();

        Assert.Contains("Nothing is due.", (await AskAsync(data)).Output, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("clutchwright season calendar: --from: '1 May' is no day; write it as 2026-03-14", "--from", "1 May")]
    [InlineData("clutchwright season calendar: --days: '0' is not a whole number from 1 to 1000", "--days", "0")]
    [InlineData("from: 2199-01-01 is too far away", "--from", "2199-01-01")]
    public async Task Calendar_AskedWrongly_SaysWhat(string says, params string[] asked)
    {
        using var data = await RoomAsync();

        var run = await Run.ShippedAsync(["season", "calendar", .. asked, "--data", data.Path]);

        Assert.Equal((ExitCode.AskedWrongly, string.Empty), (run.Code, run.Output));
        Assert.StartsWith(says, run.Error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Calendar_SpeciesWithoutTheFigures_SaysWhichAreMissing()
    {
        using var data = await RoomAsync();

        var run = await Run.MadeUpAsync("season", "calendar", "--data", data.Path);

        Assert.Equal(ExitCode.AskedWrongly, run.Code);
        Assert.StartsWith("catalogue: The species data state no first-pairing-to-ovulation-days", run.Error, StringComparison.Ordinal);
    }

    private static async Task<DataFolder> RoomAsync()
    {
        var data = new DataFolder();
        var run = await Run.ShippedAsync("stock", "import", data.Write("animals.csv", "id,sex,hatched\nM,m,2020\nF,f,2020\n"), "--data", data.Path);
        Assert.Equal(ExitCode.Answered, run.Code);
        return data;
    }

    private static async Task NoteAsync(DataFolder data, params string[] note) =>
        Assert.Equal(ExitCode.Answered, (await Run.ShippedAsync(["stock", "note", .. note, "--data", data.Path])).Code);

    private static async Task<Run> AskAsync(DataFolder data, params string[] asked)
    {
        var run = await Run.ShippedAsync(["season", "calendar", .. asked, "--data", data.Path]);
        Assert.Equal((ExitCode.Answered, string.Empty), (run.Code, run.Error));
        return run;
    }
}
