using Xunit;

namespace Clutchwright.Cli.Tests;

/// <summary>What is asked wrongly is told in one line on standard error, and standard output stays empty.</summary>
public sealed class AskedWronglyTests
{
    [Theory]
    [InlineData("crss", "clutchwright: there is no command 'crss'; did you mean cross?")]
    [InlineData("stock", "clutchwright stock: say what: import, import-log, import-photos, export, export-log, list, show, log, note, watch, history or undo")]
    [InlineData("stock lsit", "clutchwright stock: there is no command 'lsit'; did you mean list?")]
    [InlineData("cross --wnat Amber", "clutchwright cross: there is no option --wnat; did you mean --want?")]
    [InlineData("cross a b c", "clutchwright cross: 'c' is one argument too many; put quotes around an animal of several words")]
    [InlineData("cross a", "cross: the dam is missing after 'a'; name both parents, or neither and a --want")]
    [InlineData("cross", "cross: name a sire and a dam, or one --want to rank the pairs of your stock")]
    [InlineData("cross --want Amber --want Lark", "--want: pairs are ranked for one want at a time; name a sire and a dam to ask for several")]
    [InlineData("cross --want Amber --at-least 2", "--at-least: needs a sire and a dam; pairs are ranked by the species' biology or by --eggs")]
    [InlineData("cross Amber Amber --eggs six", "clutchwright cross: --eggs: 'six' is not a whole number from 1 to 200")]
    [InlineData("cross Amber Amber --fertility 1.5", "clutchwright cross: --fertility: '1.5' is not a share from 0 to 1")]
    [InlineData("cross Amber Amber --eggs 5 --fertility 0.5", "--eggs: counts good eggs, so --fertility and --hatch-rate have nothing to act on; give one or the other")]
    [InlineData("cross Amber Amber --recombination Coral", "clutchwright cross: --recombination: 'Coral' is not LOCUS=R, for example Banana=0.08")]
    [InlineData("cross Amber Amber --recombination Coral=0.6", "clutchwright cross: --recombination: '0.6' is not a recombination fraction from 0 to 0.5 (in 'Coral=0.6')")]
    [InlineData("catalogue show", "clutchwright catalogue show: GENE is missing")]
    [InlineData("catalogue show Ambr", "GENE: the catalogue has no 'Ambr'; did you mean Amber?")]
    [InlineData("stock show X-1", "TAG: the stock has no 'X-1'")]
    [InlineData("stock undo last", "ID: 'last' is not the number of a deed; stock history lists them")]
    public async Task Run_AskedWrongly_SaysWhatAndWhere(string line, string said)
    {
        var run = await Run.MadeUpAsync(line.Split(' '));

        Assert.Equal(said + "\n", run.Error);
        Assert.Equal(ExitCode.AskedWrongly, run.Code);
        Assert.Equal(string.Empty, run.Output);
    }

    [Theory]
    [InlineData("1.0 Ambr", "0.1 Lark", "sire: ", "Amber", "at 5 in '1.0 Ambr'")]
    [InlineData("1.0 Lark", "0.1 het Ambr", "dam: ", "Amber", "at 9 in '0.1 het Ambr'")]
    [InlineData("1.0 Lark/Finch Lark", "0.1 Lark", "sire: ", "Lark", "in '1.0 Lark/Finch Lark'")]
    [InlineData("0.1 Lark", "0.1 Lark", "sire: ", "male", "\"0.1 Lark\"")]
    [InlineData("1.0 Lark", "0.1 male maker Coral", "dam: ", "maker", "in '0.1 male maker Coral'")]
    public async Task Cross_UnreadableAnimal_PointsAtThePlace(string sire, string dam, string where, string what, string place)
    {
        var run = await Run.MadeUpAsync("cross", sire, dam);

        Assert.Equal(ExitCode.AskedWrongly, run.Code);
        Assert.StartsWith(where, run.Error, StringComparison.Ordinal);
        Assert.Contains(what, run.Error, StringComparison.Ordinal);
        Assert.Contains(place, run.Error, StringComparison.Ordinal);
        Assert.Single(run.Error.TrimEnd('\n').Split('\n'));
        Assert.Equal(string.Empty, run.Output);
    }

    [Fact]
    public async Task Cross_UnreadableWant_PointsAtIt()
    {
        var run = await Run.MadeUpAsync("cross", "1.0 Lark", "0.1 Lark", "--want", "Lark", "--want", "Fnch");

        Assert.Equal(ExitCode.AskedWrongly, run.Code);
        Assert.StartsWith("want 2: ", run.Error, StringComparison.Ordinal);
        Assert.Contains("Finch", run.Error, StringComparison.Ordinal);
    }
}
