using System.Text.Json.Nodes;
using Xunit;

namespace Clutchwright.Cli.Tests.Sheets;

/// <summary><c>sheet</c>.</summary>
public sealed class SheetCommandTests
{
    private const string Animals =
        "id,name,sex,sire,dam,hatched,seen,told\nS,Sire,m,,,2020,Clown,\nD,,f,,,2020,normal,66% het Clown\nA,Young,f,S,D,2024-07-03,normal,\nB,,m,S,D,2024-07-03,Clown,\nC,,f,,,2023,normal,\"90% het Clown, het Pied\"\n";

    [Fact]
    public async Task Label_Json_TellsEachPartItsFigureAndOnWhatItRests()
    {
        using var data = await RoomAsync();

        var label = (await DoneAsync(data, "sheet", "label", "A", "C", "--size", "70x40"))["labels"]!.AsArray();

        var sure = label[0]!["parts"]!.AsArray()[1]!;
        Assert.Equal(("100% het Clown", 100, "proven", "by descent", "1"), ((string?)sure["text"], (int?)sure["figure"], (string?)sure["basis"], (string?)sure["note"], (string?)sure["probabilityExact"]));
        var parts = label[1]!["parts"]!.AsArray();
        Assert.Equal(["het Piebald", "66% het Clown"], parts.Skip(1).Select(p => (string?)p!["text"]));
        Assert.Equal(["told", "told"], parts.Skip(1).Select(p => (string?)p!["basis"]));
        Assert.Null(parts[1]!["figure"]);
        Assert.Equal("text", (string?)label[0]!["code"]);
    }

    [Fact]
    public async Task Label_WithFile_WritesAPdfAndNotOverAnother()
    {
        using var data = await RoomAsync();
        var file = Path.Combine(data.Path, "labels.pdf");

        var done = await DoneAsync(data, "sheet", "label", "A", "B", "--to", file, "--page", "letter", "--start", "2", "--link", "http://127.0.0.1:5417");

        Assert.Equal((file, new FileInfo(file).Length, 2), ((string?)done["file"], (long)done["bytes"]!, (int)done["start"]!));
        Assert.Equal("http://127.0.0.1:5417/stock/animal/B", (string?)done["labels"]![1]!["codeText"]);
        Assert.StartsWith("%PDF-1.7", await File.ReadAllTextAsync(file, TestContext.Current.CancellationToken), StringComparison.Ordinal);
        var again = await Run.ShippedAsync("sheet", "label", "A", "--to", file, "--data", data.Path);
        Assert.Equal(ExitCode.CouldNotBeDone, again.Code);
    }

    [Theory]
    [InlineData("record", "A")]
    [InlineData("lineage", "A", "--generations", "2")]
    [InlineData("sale", "A", "--supplier", "A. Keeper", "--source", "C", "--sold", "2025-01-02")]
    [InlineData("clutch", "S", "D", "--laid", "2025-04-01", "--eggs", "6")]
    [InlineData("season", "2024")]
    [InlineData("label", "A", "C")]
    public async Task Sheet_OfEachKind_SaysWhatItHolds(string kind, params string[] asked)
    {
        using var data = await RoomAsync();

        var run = await Run.ShippedAsync(["sheet", kind, .. asked, "--data", data.Path]);

        Assert.Equal((ExitCode.Answered, string.Empty), (run.Code, run.Error));
        var today = TimeProvider.System.GetLocalNow();
        Golden.Equal($"sheet-{kind}.txt", AgeWords(run.Output), ($"{today:yyyy-MM-dd}", "TODAY"));
    }

    [Theory]
    [InlineData("animal: The stock has no animal 'AA'", "label", "AA")]
    [InlineData("size: \"62\" cannot be taken. Write it as 62x36 (millimetres) or 2.5x1.5in; each from 10 to 400 mm", "label", "A", "--size", "62")]
    [InlineData("page: \"roll\" is no page. One of: a4, letter", "record", "A", "--page", "roll")]
    [InlineData("--generations: '9' is not a whole number from 1 to 8", "lineage", "A", "--generations", "9")]
    [InlineData("source: \"X\" is no source code", "sale", "A", "--source", "X")]
    [InlineData("clutch: The book has no clutch 'C-1'", "clutch", "C-1")]
    [InlineData("YEAR: 'x' is no year", "season", "x")]
    public async Task Sheet_AskedWrongly_SaysWhatAndWhere(string says, params string[] asked)
    {
        using var data = await RoomAsync();

        var run = await Run.ShippedAsync(["sheet", .. asked, "--data", data.Path]);

        Assert.Equal((ExitCode.AskedWrongly, string.Empty), (run.Code, run.Output));
        Assert.Contains(says, run.Error, StringComparison.Ordinal);
    }

    // An age grows while the tests stay as they are.
    private static string AgeWords(string text) => System.Text.RegularExpressions.Regex.Replace(text, @"(?m)^Age .*$", "Age  AGE");

    private static async Task<DataFolder> RoomAsync()
    {
        var data = new DataFolder();
        var run = await Run.ShippedAsync("stock", "import", data.Write("animals.csv", Animals), "--data", data.Path);
        Assert.Equal(ExitCode.Answered, run.Code);
        return data;
    }

    private static async Task<JsonNode> DoneAsync(DataFolder data, params string[] asked)
    {
        var run = await Run.ShippedAsync([.. asked, "--data", data.Path, "--json"]);
        Assert.Equal((ExitCode.Answered, string.Empty), (run.Code, run.Error));
        return run.Json;
    }
}
