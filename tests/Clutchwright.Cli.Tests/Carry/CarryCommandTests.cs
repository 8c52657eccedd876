using Xunit;

namespace Clutchwright.Cli.Tests.Carry;

/// <summary><c>carry</c> over a file and over the stock, whole, with the made-up species.</summary>
public sealed class CarryCommandTests
{
    private const string Family = """
        id,sex,sire,dam,hatched,seen,told,ruled_out,count
        S,m,,,2018,normal,het Amber,,
        D,f,,,2018,Coral,66% het Amber,,
        Y,m,S,D,2022-06-01,Coral,66% het Amber,,
        E,f,,,2020,Amber,,,
        K,,Y,E,2024-07-01,normal,,,4
        """;

    private const string Clash = """
        id,sex,sire,dam,seen,ruled_out
        S,m,,,Amber,
        D,f,,,normal,Amber
        Y,f,S,D,Amber,
        """;

    public static TheoryData<string, string, string[]> Questions => new()
    {
        { "carry-family", Family, ["--notation"] },
        { "carry-one", Family, ["--animal", "Y", "--frequency", "Lark=0.05", "--misreading", "0.01"] },
        { "carry-clash", Clash, [] },
    };

    [Theory]
    [MemberData(nameof(Questions))]
    public async Task Carry_File_IsAnsweredAsItsFile(string name, string csv, string[] options)
    {
        using var data = new DataFolder();
        var file = data.Write("animals.csv", csv);

        var text = await Run.MadeUpAsync(["carry", file, .. options]);
        var json = await Run.MadeUpAsync(["carry", file, .. options, "--json"]);

        Assert.Equal((ExitCode.Answered, string.Empty), (text.Code, text.Error));
        Golden.Equal($"{name}.txt", text.Output);
        Assert.Equal((ExitCode.Answered, string.Empty), (json.Code, json.Error));
        Golden.Equal($"{name}.json", json.Output);
    }

    [Fact]
    public async Task Carry_Stock_IsAnsweredAsItsFile()
    {
        using var data = new DataFolder();
        var file = data.Write("animals.csv", string.Join('\n', Family.ReplaceLineEndings("\n").Split('\n').Take(5)));
        await Run.MadeUpAsync("stock", "import", file, "--data", data.Path);

        var stock = await Run.MadeUpAsync("carry", "--data", data.Path);
        var alone = await Run.MadeUpAsync("carry", file);

        // The stock stands in the order of the tags.
        Assert.Equal(ExitCode.Answered, stock.Code);
        Assert.Equal(alone.Output.Split('\n').Order(StringComparer.Ordinal), stock.Output.Split('\n').Order(StringComparer.Ordinal));
    }

    [Fact]
    public async Task Carry_EmptyStock_SaysSo()
    {
        var text = await Run.MadeUpAsync("carry");
        var json = await Run.MadeUpAsync("carry", "--json");

        Assert.StartsWith("No animal.", text.Output, StringComparison.Ordinal);
        Assert.Empty(json.Json["animals"]!.AsArray());
        Assert.Equal("exact", (string?)json.Json["method"]);
        Assert.Equal(0.0, (double)json.Json["logLikelihood"]!);
    }

    [Fact]
    public async Task Carry_AskedWrongly_SaysSoInOneLine()
    {
        using var data = new DataFolder();
        var file = data.Write("animals.csv", Family);

        var animal = await Run.MadeUpAsync("carry", file, "--animal", "YY");
        var allele = await Run.MadeUpAsync("carry", file, "--frequency", "Ambr=0.1");
        var missing = await Run.MadeUpAsync("carry", file + ".csv");

        Assert.Equal((ExitCode.AskedWrongly, "animal: animals.csv has no 'YY'\n"), (animal.Code, animal.Error));
        Assert.Equal((ExitCode.AskedWrongly, "frequency: 'Ambr' is no gene of the catalogue; did you mean Amber?\n"), (allele.Code, allele.Error));
        Assert.Equal(ExitCode.CouldNotBeDone, missing.Code);
    }
}
