using System.CommandLine;
using System.Globalization;
using Clutchwright.Cli.Words;
using Clutchwright.Desk.Crosses;
using Clutchwright.Desk.Sheets;
using Microsoft.Extensions.DependencyInjection;

namespace Clutchwright.Cli.Sheets;

/// <summary><c>sheet clutch</c> and <c>sheet season</c>.</summary>
internal static class OtherSheetCommands
{
    public static Command Clutch(CommonOptions common, Terminal terminal)
    {
        var first = new Argument<string>("CLUTCH") { Description = "The id of a clutch of your book; or, with DAM behind it, the sire: a tag of your stock, or trade text." };
        var dam = new Argument<string?>("DAM") { Description = "The dam: a tag of your stock, or trade text.", Arity = ArgumentArity.ZeroOrOne };
        var laid = new Option<string?>("--laid") { Description = "When the eggs were laid. Default: a line to write on.", HelpName = "DATE" };
        var eggs = Options.Count("--eggs", "Good eggs. Default: a line to write on.", "N", 1, ClutchSetting.MostEggs);
        var (to, page) = (SheetCommand.To(), SheetCommand.Page("a4 or letter"));
        var command = new Command("clutch", "The card of a clutch: parents, eggs, when it should hatch, what can hatch.") { first, dam, laid, eggs, to, page };
        command.SetAction(async (asked, cancel) =>
        {
            await using var questions = common.Open(asked);
            var answer = await questions.GetRequiredService<PrintClutchCard>().RunAsync(
                new(asked.GetRequiredValue(first), asked.GetValue(dam) ?? string.Empty)
                {
                    Clutch = asked.GetValue(dam) is null ? asked.GetRequiredValue(first) : null,
                    Laid = asked.GetValue(laid),
                    Eggs = asked.GetValue(eggs),
                    Page = asked.GetRequiredValue(page),
                },
                cancel);
            return await SheetAnswers.SendAsync(common, terminal, asked, answer, asked.GetValue(to), cancel);
        });
        return command;
    }

    public static Command Season(CommonOptions common, Terminal terminal)
    {
        var year = new Argument<int?>("YEAR")
        {
            Description = "The year in which its clutches hatch. Default: the season at hand.",
            Arity = ArgumentArity.ZeroOrOne,
            CustomParser = given =>
            {
                if (int.TryParse(given.Tokens[0].Value, NumberStyles.None, CultureInfo.InvariantCulture, out var number))
                {
                    return number;
                }

                given.AddError($"YEAR: '{given.Tokens[0].Value}' is no year");
                return null;
            },
        };
        var (to, page) = (SheetCommand.To(), SheetCommand.Page("a4 or letter"));
        var command = new Command("season", "What a season came to: pairings, clutches, what hatched, what was kept and sold.") { year, to, page };
        command.SetAction(async (asked, cancel) =>
        {
            await using var questions = common.Open(asked);
            var answer = await questions.GetRequiredService<PrintSeason>().RunAsync(asked.GetValue(year), asked.GetRequiredValue(page), cancel);
            return await SheetAnswers.SendAsync(common, terminal, asked, answer, asked.GetValue(to), cancel);
        });
        return command;
    }
}
