using System.CommandLine;
using System.Globalization;
using System.Text.Json.Nodes;
using Clutchwright.Cli.Animals;
using Clutchwright.Cli.Words;
using Clutchwright.Desk.Happenings;
using Microsoft.Extensions.DependencyInjection;

namespace Clutchwright.Cli.Happenings;

/// <summary><c>stock log</c> and <c>stock note</c>: what happened to the animals.</summary>
internal static class LogCommands
{
    private const int Usual = 50;

    public static Command Log(CommonOptions common, Terminal terminal)
    {
        var tag = new Argument<string?>("ID") { Description = "The animal; left out: all.", Arity = ArgumentArity.ZeroOrOne };
        var kinds = new Option<string[]>("--kind") { Description = "Only what is of this kind, as stock note takes it. Any number of times.", HelpName = "KIND" };
        var most = Options.Count("--most", $"List at most N. Default: {Usual}.", "N", 1, 1_000_000);
        var command = new Command("log", "What happened to an animal or to all, the latest first: weighings, meals, sheds, pairings, eggs.") { tag, kinds, most };
        command.SetAction(async (asked, cancel) =>
        {
            await using var questions = common.Open(asked);
            var answer = await questions.GetRequiredService<ListHappenings>().RunAsync(
                asked.GetValue(tag), asked.GetValue(kinds) ?? [], asked.GetValue(most) ?? Usual, cancel);
            if (answer.Value is not { } lines)
            {
                return terminal.AskedWrongly(answer.Problems, _ => null);
            }

            if (common.IsJson(asked))
            {
                terminal.Send(new() { ["happenings"] = JsonShapes.Array(lines, Json) });
                return ExitCode.Answered;
            }

            var page = new Page(terminal);
            page.Heading(asked.GetValue(tag) is { } one ? $"Log of {one}" : "Log");
            if (lines.Count == 0)
            {
                page.Line("Nothing is written down yet.");
            }
            else
            {
                page.Table(
                    ["when", "animal", "what", "with", "clutch", ""],
                    [.. lines.Select(l => new[] { Page.Plain(l.When), Page.Plain(l.Tag), Page.Seen(l.What), Page.Plain(l.Mate), Page.Plain(l.Clutch), Page.Plain(l.Text) })]);
            }

            page.Send();
            return ExitCode.Answered;
        });
        return command;
    }

    public static Command Note(CommonOptions common, Terminal terminal)
    {
        var tag = new Argument<string>("ID") { Description = "The animal." };
        var kind = new Argument<string>("KIND") { Description = $"What happened. One of: {string.Join(", ", ListHappenings.Kinds.Select(k => k.Words))}." };
        var when = new Option<string?>("--on") { Description = "When: a date, a year, or words such as 'about 3 March 2026'. Default: today.", HelpName = "DATE" };
        var amount = new Option<string?>("--amount") { Description = "How much: grams, millimetres or eggs, by the kind.", HelpName = "N" };
        var mate = new Option<string?>("--mate") { Description = "The other of a pair.", HelpName = "ID" };
        var text = new Option<string?>("--text") { Description = "What else is to be said.", HelpName = "TEXT" };
        var clutch = new Option<string?>("--clutch") { Description = "The clutch of the animal that it is about, for candled, eggs lost and pipped.", HelpName = "CLUTCH" };
        var who = StockCommand.Who();
        var command = new Command("note", "Write down what happened to an animal.") { tag, kind, when, amount, mate, clutch, text, who };
        command.SetAction(async (asked, cancel) =>
        {
            var form = new HappeningForm(
                asked.GetRequiredValue(tag), asked.GetRequiredValue(kind), asked.GetValue(when), asked.GetValue(amount), asked.GetValue(mate), asked.GetValue(text)) { Clutch = asked.GetValue(clutch) };
            await using var questions = common.Open(asked);
            return HistoryCommand.Done(
                common.IsJson(asked), terminal, await questions.GetRequiredService<WriteHappening>().RunAsync(form, asked.GetRequiredValue(who), cancel));
        });
        return command;
    }

    private static JsonObject Json(HappeningWords line) => new()
    {
        ["id"] = line.Tag,
        ["kind"] = line.Kind,
        ["when"] = line.When,
        ["day"] = line.Day.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture),
        ["amount"] = line.Amount,
        ["unit"] = line.Unit,
        ["mate"] = line.Mate,
        ["clutch"] = line.Clutch,
        ["text"] = line.Text,
    };
}
