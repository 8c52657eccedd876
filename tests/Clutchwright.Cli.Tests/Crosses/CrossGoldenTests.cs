using Xunit;

namespace Clutchwright.Cli.Tests.Crosses;

/// <summary>The readable and the JSON answer of <c>cross</c>, whole, over a made-up species.</summary>
public sealed class CrossGoldenTests
{
    public static TheoryData<string, string[]> Questions => new()
    {
        { "cross-het-het", ["cross", "1.0 het Amber", "0.1 het Amber", "--want", "Amber", "--eggs", "6", "--notation"] },
        { "cross-possible-het", ["cross", "1.0 66% het Amber", "0.1 Amber", "--want", "Amber", "--eggs", "5", "--at-least", "2"] },
        { "cross-poss-without-figure", ["cross", "1.0 poss het Amber", "0.1 Amber", "--want", "Amber"] },
        { "cross-compound", ["cross", "1.0 Lark het Amber", "0.1 Finch Amber", "--eggs", "4", "--notation"] },
        { "cross-sex-linked", ["cross", "1.0 male maker Coral", "0.1 Normal", "--recombination", "Coral=0.08", "--eggs", "4", "--want", "0.1 Coral"] },
        { "cross-lethal", ["cross", "1.0 Thorn Lark", "0.1 Thorn", "--want", "Bramble", "--notation"] },
        { "cross-most", ["cross", "1.0 Lark het Amber", "0.1 Finch Amber", "--eggs", "4", "--most", "2"] },
        { "cross-clutch-settings", ["cross", "1.0 Amber", "0.1 Amber", "--fertility", "50%", "--hatch-rate", "0.5", "--want", "Amber"] },
    };

    [Theory]
    [MemberData(nameof(Questions))]
    public async Task Cross_ReadableAnswer_IsAsItsFile(string name, string[] question)
    {
        var run = await Run.MadeUpAsync(question);

        Assert.Equal(string.Empty, run.Error);
        Assert.Equal(ExitCode.Answered, run.Code);
        Golden.Equal($"{name}.txt", run.Output);
    }

    [Theory]
    [MemberData(nameof(Questions))]
    public async Task Cross_JsonAnswer_IsAsItsFile(string name, string[] question)
    {
        var run = await Run.MadeUpAsync([.. question, "--json"]);

        Assert.Equal(string.Empty, run.Error);
        Assert.Equal(ExitCode.Answered, run.Code);
        Golden.Equal($"{name}.json", run.Output);
    }

    [Fact]
    public async Task Cross_InATerminal_SetsSeenBoldAndCarriedItalic()
    {
        var run = await Run.StyledAsync(isStyled: true, ["cross", "1.0 Lark het Amber", "0.1 Normal", "--eggs", "4", "--catalogue", Run.MadeUpSpecies]);

        // Select Graphic Rendition of ECMA-48: 1 is bold, 3 is italic.
        Assert.Contains("\u001b[1mLark\u001b[0m", run.Output, StringComparison.Ordinal);
        Assert.Contains("\u001b[3mhet Amber\u001b[0m", run.Output, StringComparison.Ordinal);
    }
}
