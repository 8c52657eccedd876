using Xunit;

namespace Clutchwright.Cli.Tests.Genes;

/// <summary><c>catalogue</c> over the made-up species and over the shipped one.</summary>
public sealed class CatalogueCommandTests
{
    [Theory]
    [InlineData("catalogue-check", "catalogue check")]
    [InlineData("catalogue-show-amber", "catalogue show Amber")]
    [InlineData("catalogue-show-lark", "catalogue show Lark")]
    [InlineData("catalogue-show-bramble", "catalogue show Bramble")]
    [InlineData("catalogue-list", "catalogue list")]
    public async Task Catalogue_Answers_AreAsTheirFiles(string name, string line)
    {
        var text = await Run.MadeUpAsync(line.Split(' '));
        var json = await Run.MadeUpAsync([.. line.Split(' '), "--json"]);

        Assert.Equal((ExitCode.Answered, string.Empty), (text.Code, text.Error));
        Golden.Equal($"{name}.txt", text.Output);
        Golden.Equal($"{name}.json", json.Output);
    }

    [Fact]
    public async Task Check_OfTheShippedCatalogue_FindsNothing()
    {
        var run = await Run.ShippedAsync("catalogue", "check", "--json");

        Assert.Equal((ExitCode.Answered, string.Empty), (run.Code, run.Error));
        Assert.Empty(run.Json["problems"]!.AsArray());

        // What a keeper may expect of it: facts of the trade, common practice, no source.
        Assert.True((int)run.Json["alleles"]! >= 100);
        Assert.True((int)run.Json["combinations"]! >= 50);
    }

    [Fact]
    public async Task Check_OfABrokenFolder_NamesFileAndLine()
    {
        using var folder = new DataFolder();
        foreach (var file in Directory.GetFiles(Path.GetDirectoryName(Run.MadeUpSpecies)!, "*.yaml", SearchOption.AllDirectories))
        {
            var copy = Path.Combine(folder.Path, Path.GetRelativePath(Path.GetDirectoryName(Run.MadeUpSpecies)!, file));
            Directory.CreateDirectory(Path.GetDirectoryName(copy)!);
            File.Copy(file, copy);
        }

        File.WriteAllText(Path.Combine(folder.Path, "python-ficta", "masks.yaml"), "masks:\n  - {by: [snowdrft], hides: all, evidence: {grade: reported}}\n");

        var run = await Run.ShippedAsync("catalogue", "check", Path.Combine(folder.Path, "python-ficta"), "--json");

        Assert.Equal(ExitCode.AskedWrongly, run.Code);
        Assert.Equal("masks.yaml", (string?)run.Json["problems"]![0]!["file"]);
        Assert.Equal(2, (int)run.Json["problems"]![0]!["line"]!);
        Assert.Contains("masks.yaml:2", run.Error, StringComparison.Ordinal);
    }
}
