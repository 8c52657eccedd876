using System.CommandLine;
using System.Globalization;
using Clutchwright.Cli.Words;
using Clutchwright.Desk.Animals;
using Microsoft.Extensions.DependencyInjection;

namespace Clutchwright.Cli.Animals;

/// <summary><c>stock undo</c>: takes a deed back.</summary>
internal static class UndoCommand
{
    public static Command Create(CommonOptions common, Terminal terminal)
    {
        var id = new Argument<string>("ID") { Description = "The deed's number, as in stock history." };
        var who = StockCommand.Who();
        var command = new Command("undo", "Take a deed back; that is a deed too, and stands in the history.") { id, who };
        command.SetAction(async (asked, cancel) =>
        {
            var text = asked.GetRequiredValue(id);
            if (!long.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out var deed))
            {
                return terminal.AskedWrongly($"ID: '{text}' is not the number of a deed; stock history lists them");
            }

            await using var questions = common.Open(asked);
            var answer = await questions.GetRequiredService<UndoDeed>().RunAsync(deed, asked.GetRequiredValue(who), cancel);
            if (answer.Value is not { } undone)
            {
                return terminal.AskedWrongly(answer.Problems, _ => null);
            }

            if (common.IsJson(asked))
            {
                terminal.Send(HistoryCommand.Json(undone));
            }
            else
            {
                terminal.Output.Write($"{undone.Words} (deed {undone.Id})\n");
            }

            return ExitCode.Answered;
        });
        return command;
    }
}
