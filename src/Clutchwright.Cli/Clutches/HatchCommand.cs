using System.CommandLine;
using System.Text.Json.Nodes;
using Clutchwright.Cli.Animals;
using Clutchwright.Cli.Words;
using Clutchwright.Desk.Clutches;
using Microsoft.Extensions.DependencyInjection;

namespace Clutchwright.Cli.Clutches;

/// <summary><c>clutch hatch</c>: one hatchling.</summary>
internal static class HatchCommand
{
    public static Command Create(CommonOptions common, Terminal terminal)
    {
        var tag = ClutchCommand.Tag();
        var look = new Argument<string?>("LOOK") { Description = "What is seen, in the trade's words; Normal: it shows nothing. Left out: not looked at.", Arity = ArgumentArity.ZeroOrOne };
        var id = new Option<string?>("--id") { Description = "Its id. Default: the next by the scheme of hatchling ids.", HelpName = "ID" };
        var sex = new Option<string?>("--sex") { Description = "m, f or u (unsexed). Default: u.", HelpName = "SEX" };
        var mass = new Option<string?>("--mass") { Description = "Its mass in grams.", HelpName = "G" };
        var on = new Option<string?>("--on") { Description = "When it hatched. Default: with the clutch, or today.", HelpName = "DATE" };
        var status = new Option<string?>("--status") { Description = "Kept, HeldBack, ForSale or Died. Default: Kept.", HelpName = "STATUS" };
        var notes = new Option<string?>("--notes") { Description = "Notes.", HelpName = "TEXT" };
        var unsure = new Option<bool>("--unsure") { Description = "You are not quite sure of the look." };
        var again = new Option<bool>("--again") { Description = "It is so although it cannot be from these parents, or is more than the eggs: it is kept with the doubt." };
        var who = StockCommand.Who();
        var command = new Command("hatch", "Enter one hatchling of a clutch.") { tag, look, id, sex, mass, on, status, notes, unsure, again, who };
        command.SetAction(async (asked, cancel) =>
        {
            await using var questions = common.Open(asked);
            var done = await questions.GetRequiredService<HatchDay>().EnterAsync(
                new()
                {
                    Id = Guid.CreateVersion7(),
                    Clutch = asked.GetRequiredValue(tag),
                    Look = asked.GetValue(look),
                    Tag = asked.GetValue(id),
                    Sex = asked.GetValue(sex),
                    MassGrams = asked.GetValue(mass),
                    Hatched = asked.GetValue(on),
                    Status = asked.GetValue(status),
                    Notes = asked.GetValue(notes),
                    IsUnsure = asked.GetValue(unsure),
                    IsAgain = asked.GetValue(again),
                },
                asked.GetRequiredValue(who),
                cancel);
            if (done.Value is not { } answer)
            {
                return terminal.AskedWrongly(done.Problems, _ => null);
            }

            if (answer.Animal is null)
            {
                return terminal.AskedWrongly([new("look", $"{string.Join(' ', answer.AskAgain)} If it is so, say it again with --again.")], _ => null);
            }

            if (common.IsJson(asked))
            {
                terminal.Send(new JsonObject { ["id"] = answer.Tag, ["clutch"] = asked.GetRequiredValue(tag), ["deed"] = answer.Deed?.Id, ["advice"] = ClutchPage.Json(answer.Advice) }.WithWords(answer.Words!));
            }
            else
            {
                var page = new Page(terminal);
                page.Line($"{Page.Plain(answer.Tag)}: {Page.Marked(answer.Words!)}");
                page.Points(answer.Advice.Select(a => a.Text));
                page.Line(Page.Plain($"To take it back: stock undo {answer.Deed!.Id}"));
                page.Send();
            }

            return ExitCode.Answered;
        });
        return command;
    }
}
