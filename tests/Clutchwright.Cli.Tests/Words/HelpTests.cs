using Xunit;

namespace Clutchwright.Cli.Tests.Words;

/// <summary>What the program says of itself.</summary>
public sealed class HelpTests
{
    [Fact]
    public async Task Help_NamesTheDataFolder()
    {
        var run = await Run.ShippedAsync("--help");

        Assert.Equal(ExitCode.Answered, run.Code);
        Assert.Contains(CommonOptions.DefaultDataFolder, run.Output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Run_WithoutAQuestion_ShowsHelp()
    {
        var run = await Run.StyledAsync(isStyled: false, ["--data", "unused"]);

        Assert.Equal(ExitCode.Answered, run.Code);
        Assert.Contains("cross", run.Output, StringComparison.Ordinal);
    }
}
