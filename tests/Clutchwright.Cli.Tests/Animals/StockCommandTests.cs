using Xunit;

namespace Clutchwright.Cli.Tests.Animals;

/// <summary><c>stock</c> from an import to its undoing, and the ranking of pairs over it.</summary>
public sealed class StockCommandTests
{
    private const string Animals = """
        id,sex,sire,dam,hatched,seen,told,ruled_out,shelf
        M1,m,,,2018,Amber,,,top
        F1,f,,,2018,normal,het Amber,,
        F2,f,,,2018,Thorn,66% het Amber,,
        K1,f,M1,F1,2024-07-01,normal,,,
        """;

    [Fact]
    public async Task Import_DryRun_ShowsAndWritesNothing()
    {
        using var data = new DataFolder();
        var file = data.Write("animals.csv", Animals);

        var run = await RunAsync(data, "stock", "import", file, "--dry-run");
        var after = await RunAsync(data, "stock", "list", "--json");

        Assert.Equal(ExitCode.Answered, run.Code);
        Golden.Equal("import-dry-run.txt", run.Output, (data.Path, "DATA"));
        Assert.Equal(0, (int)after.Json["total"]!);
    }

    [Fact]
    public async Task Import_ThenListShowHistory_AreAsTheirFiles()
    {
        using var data = new DataFolder();
        var file = data.Write("animals.csv", Animals);

        var imported = await RunAsync(data, "stock", "import", file, "--who", "Keeper");
        Golden.Equal("import.txt", imported.Output, (data.Path, "DATA"));
        foreach (var (name, args) in new (string, string[])[]
        {
            ("list", ["stock", "list"]),
            ("show", ["stock", "show", "K1"]),
            ("history", ["stock", "history"]),
            ("pairs", ["cross", "--want", "Amber"]),
        })
        {
            var text = await RunAsync(data, args);
            var json = await RunAsync(data, [.. args, "--json"]);

            Assert.Equal((ExitCode.Answered, string.Empty), (text.Code, text.Error));
            Golden.Equal($"stock-{name}.txt", text.Output, (data.Path, "DATA"));
            Assert.Equal((ExitCode.Answered, string.Empty), (json.Code, json.Error));
            Assert.NotEmpty(json.Json);
        }
    }

    [Fact]
    public async Task Pairs_ThatCanGiveADanger_AreLeftOutWithTheReason()
    {
        using var data = new DataFolder();
        await RunAsync(data, "stock", "import", data.Write("animals.csv", Animals));

        var run = await RunAsync(data, "cross", "--want", "Amber", "--eggs", "4", "--json");

        // M1 is the only male. F1 lays four good eggs, as the question says: 1 - (1/2)^4. F2 has Thorn and is left out.
        Assert.Equal("F1", (string?)run.Json["pairs"]![0]!["dam"]);
        Assert.Equal(15.0 / 16.0, (double)run.Json["pairs"]![0]!["thisSeason"]!, 12);
        Assert.Equal("F2", (string?)run.Json["leftOut"]![0]!["dam"]);
        Assert.Equal("Thorn wobbles.", ((string)run.Json["leftOut"]![0]!["why"]![0]!["text"]!)[..14]);
    }

    [Fact]
    public async Task Import_BadRow_WritesNothingAndNamesIt()
    {
        using var data = new DataFolder();
        var file = data.Write("animals.csv", Animals.Replace("het Amber,,\n", "het Ambr,,\n", StringComparison.Ordinal));

        var run = await RunAsync(data, "stock", "import", file, "--json");
        var after = await RunAsync(data, "stock", "list", "--json");

        Assert.Equal(ExitCode.AskedWrongly, run.Code);
        Assert.False((bool)run.Json["written"]!);
        Assert.Equal(3, (int)run.Json["refused"]![0]!["row"]!);
        Assert.Contains("row 3", run.Error, StringComparison.Ordinal);
        Assert.Contains("Amber", run.Error, StringComparison.Ordinal);
        Assert.Equal(0, (int)after.Json["total"]!);
    }

    [Fact]
    public async Task Import_MappedColumn_IsReadAsTold()
    {
        using var data = new DataFolder();
        var file = data.Write("animals.csv", Animals.Replace("told", "breeder says", StringComparison.Ordinal));

        await RunAsync(data, "stock", "import", file, "--map", "breeder says=told");
        var run = await RunAsync(data, "stock", "show", "F1", "--json");

        Assert.Equal("het Amber", (string?)run.Json["genotype"]);
    }

    [Fact]
    public async Task Export_OfAnImport_ReadsBackTheSame()
    {
        using var data = new DataFolder();
        using var other = new DataFolder();
        await RunAsync(data, "stock", "import", data.Write("animals.csv", Animals));

        var exported = await RunAsync(data, "stock", "export");
        await RunAsync(other, "stock", "import", other.Write("again.csv", exported.Output));
        var again = await RunAsync(other, "stock", "export");

        Assert.Equal(exported.Output, again.Output);
        Assert.Equal(5, exported.Output.TrimEnd('\n').Split('\n').Length);
    }

    [Fact]
    public async Task Undo_OfAnImport_TakesItBackAndIsADeedToo()
    {
        using var data = new DataFolder();
        await RunAsync(data, "stock", "import", data.Write("animals.csv", Animals));

        var undo = await RunAsync(data, "stock", "undo", "1");
        var list = await RunAsync(data, "stock", "list", "--json");
        var history = await RunAsync(data, "stock", "history", "--json");

        Assert.Equal((ExitCode.Answered, string.Empty), (undo.Code, undo.Error));
        Assert.Equal(0, (int)list.Json["total"]!);
        Assert.Equal([2, 1], history.Json["deeds"]!.AsArray().Select(d => (int)d!["id"]!));
        Assert.True((bool)history.Json["deeds"]![1]!["undone"]!);
    }

    [Theory]
    [InlineData("held")]
    [InlineData("1")]
    public async Task List_UnknownStatus_IsAskedWrongly(string status)
    {
        var run = await Run.MadeUpAsync("stock", "list", "--status", status);

        Assert.Equal(ExitCode.AskedWrongly, run.Code);
        Assert.Contains("HeldBack", run.Error, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("kept", 4)]
    [InlineData("Sold", 0)]
    [InlineData("bin", 0)]
    public async Task List_Status_ListsOnlyThose(string status, int number)
    {
        using var data = new DataFolder();
        await RunAsync(data, "stock", "import", data.Write("animals.csv", Animals));

        Assert.Equal(number, (int)(await RunAsync(data, "stock", "list", "--status", status, "--json")).Json["total"]!);
    }

    [Fact]
    public async Task Undo_OfNoDeed_IsAskedWrongly()
    {
        var run = await Run.MadeUpAsync("stock", "undo", "9");

        Assert.Equal(ExitCode.AskedWrongly, run.Code);
        Assert.Contains('9', run.Error);
    }

    private static Task<Run> RunAsync(DataFolder data, params string[] args) => Run.MadeUpAsync([.. args, "--data", data.Path]);
}
