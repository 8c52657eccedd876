using Xunit;

namespace Clutchwright.Cli.Tests;

/// <summary>What cannot be done ends with exit code 2 and says why.</summary>
public sealed class CouldNotBeDoneTests
{
    [Fact]
    public async Task Import_MissingFile_SaysSo()
    {
        var run = await Run.MadeUpAsync("stock", "import", "nowhere.csv");

        Assert.Equal(ExitCode.CouldNotBeDone, run.Code);
        Assert.Contains("nowhere.csv", run.Error, StringComparison.Ordinal);
        Assert.Equal(string.Empty, run.Output);
    }

    [Fact]
    public async Task Catalogue_MissingFolder_SaysSo()
    {
        var run = await Run.ShippedAsync("catalogue", "list", "--catalogue", "nowhere");

        Assert.Equal(ExitCode.CouldNotBeDone, run.Code);
        Assert.Equal("There is no folder 'nowhere' (--catalogue).\n", run.Error);
    }

    [Fact]
    public async Task Stock_DamagedBook_SaysSo()
    {
        using var data = new DataFolder();
        data.Write("clutchwright.db", "this is no database, and long enough to be looked at as one");

        var run = await Run.MadeUpAsync("stock", "list", "--data", data.Path);

        Assert.Equal(ExitCode.CouldNotBeDone, run.Code);
        Assert.Contains("clutchwright.db", run.Error, StringComparison.Ordinal);
        Assert.Single(run.Error.TrimEnd('\n').Split('\n'));
    }

    [Fact]
    public async Task Export_FileThatIsThere_IsNotOverwritten()
    {
        using var data = new DataFolder();
        var file = data.Write("kept.csv", "mine");

        var run = await Run.MadeUpAsync("stock", "export", file, "--data", data.Path);

        Assert.Equal(ExitCode.CouldNotBeDone, run.Code);
        Assert.Equal("mine", File.ReadAllText(file));
    }
}
