using System.CommandLine;
using Clutchwright.Cli.Animals;
using Clutchwright.Cli.Importing;
using Clutchwright.Cli.Words;
using Clutchwright.Desk.Clutches;
using Clutchwright.Desk.Words;
using Microsoft.Extensions.DependencyInjection;

namespace Clutchwright.Cli.Clutches;

/// <summary><c>clutch</c>: eggs, incubation, hatch day, what each hatchling is.</summary>
internal static class ClutchCommand
{
    public static Command Create(CommonOptions common, Terminal terminal) =>
        new("clutch", "Eggs, hatch day, what each hatchling is.")
        {
            List(common, terminal),
            Show(common, terminal),
            Lay(common, terminal),
            Edit(common, terminal),
            HatchCommand.Create(common, terminal),
            Bin(common, terminal),
            Restore(common, terminal),
            ImportCommand.Clutches(common, terminal),
            ExportCommand.Clutches(common, terminal),
            Ids(common, terminal),
        };

    public static Argument<string> Tag() => new("CLUTCH") { Description = "The id of the clutch." };

    private static Command List(CommonOptions common, Terminal terminal)
    {
        var bin = new Option<bool>("--bin") { Description = "Those in the bin." };
        var of = new Option<string?>("--of") { Description = "Only those of this dam or sire.", HelpName = "ID" };
        var command = new Command("list", "The clutches, the one laid last first.") { of, bin };
        command.SetAction(async (asked, cancel) =>
        {
            await using var questions = common.Open(asked);
            var list = questions.GetRequiredService<ListClutches>();
            var answer = asked.GetValue(of) is { } parent
                ? await list.OfParentAsync(parent, cancel)
                : Answer.Of(await list.RunAsync(asked.GetValue(bin), cancel));
            if (answer.Value is not { } clutches)
            {
                return terminal.AskedWrongly(answer.Problems, _ => null);
            }

            if (common.IsJson(asked))
            {
                terminal.Send(new() { ["clutches"] = JsonShapes.Array(clutches, ClutchPage.Json) });
            }
            else
            {
                ClutchPage.Show(terminal, clutches);
            }

            return ExitCode.Answered;
        });
        return command;
    }

    private static Command Show(CommonOptions common, Terminal terminal)
    {
        var tag = Tag();
        var command = new Command("show", "A clutch, its young, and the looks that can hatch from it, likeliest first.") { tag };
        command.SetAction(async (asked, cancel) =>
        {
            await using var questions = common.Open(asked);
            var answer = await questions.GetRequiredService<ShowClutch>().RunAsync(asked.GetRequiredValue(tag), cancel);
            if (answer.Value is not { } clutch)
            {
                return terminal.AskedWrongly(answer.Problems, _ => null);
            }

            if (common.IsJson(asked))
            {
                terminal.Send(ClutchPage.Json(clutch));
            }
            else
            {
                ClutchPage.Show(terminal, clutch);
            }

            return ExitCode.Answered;
        });
        return command;
    }

    private static Command Lay(CommonOptions common, Terminal terminal)
    {
        var dam = new Argument<string>("DAM") { Description = "The female that laid." };
        var fields = new ClutchOptions();
        var who = StockCommand.Who();
        var command = new Command("lay", "Write down what a female laid: a new clutch.") { dam, who };
        fields.AddTo(command, isChange: false);
        command.SetAction(async (asked, cancel) =>
        {
            await using var questions = common.Open(asked);
            var write = questions.GetRequiredService<WriteClutch>();
            var form = fields.Read(asked, await write.NewAsync(asked.GetRequiredValue(dam), cancel));
            return Told(common.IsJson(asked), terminal, await write.RecordAsync(form, asked.GetRequiredValue(who), cancel));
        });
        return command;
    }

    private static Command Edit(CommonOptions common, Terminal terminal)
    {
        var tag = Tag();
        var dam = new Option<string?>("--dam") { Description = "The female that laid it.", HelpName = "ID" };
        var fields = new ClutchOptions();
        var who = StockCommand.Who();
        var command = new Command("edit", "Change what is recorded of a clutch. Its young in the book get its parents.") { tag, dam, who };
        fields.AddTo(command, isChange: true);
        command.SetAction(async (asked, cancel) =>
        {
            await using var questions = common.Open(asked);
            var write = questions.GetRequiredService<WriteClutch>();
            if (await write.FormAsync(asked.GetRequiredValue(tag), cancel) is not { } now)
            {
                return terminal.AskedWrongly([new("clutch", $"There is no clutch {asked.GetRequiredValue(tag)}, or it is in the bin.")], _ => null);
            }

            var form = fields.Read(asked, asked.GetValue(dam) is { } other ? now with { Dam = other } : now);
            return Told(common.IsJson(asked), terminal, await write.EditAsync(asked.GetRequiredValue(tag), form, asked.GetRequiredValue(who), cancel));
        });
        return command;
    }

    private static Command Bin(CommonOptions common, Terminal terminal)
    {
        var tag = Tag();
        var who = StockCommand.Who();
        var command = new Command("bin", "Put a clutch that should not have been entered into the bin.") { tag, who };
        command.SetAction(async (asked, cancel) =>
        {
            await using var questions = common.Open(asked);
            return Told(
                common.IsJson(asked), terminal, await questions.GetRequiredService<WriteClutch>().BinAsync(asked.GetRequiredValue(tag), asked.GetRequiredValue(who), cancel));
        });
        return command;
    }

    private static Command Restore(CommonOptions common, Terminal terminal)
    {
        var tag = Tag();
        var who = StockCommand.Who();
        var command = new Command("restore", "Take a clutch out of the bin.") { tag, who };
        command.SetAction(async (asked, cancel) =>
        {
            await using var questions = common.Open(asked);
            var binned = (await questions.GetRequiredService<ListClutches>().RunAsync(inBin: true, cancel))
                .FirstOrDefault(c => string.Equals(c.Tag, asked.GetRequiredValue(tag).Trim(), StringComparison.OrdinalIgnoreCase));
            return binned is null
                ? terminal.AskedWrongly([new("clutch", $"There is no clutch {asked.GetRequiredValue(tag)} in the bin.")], _ => null)
                : Told(common.IsJson(asked), terminal, await questions.GetRequiredService<WriteClutch>().RestoreAsync(binned.Id, asked.GetRequiredValue(who), cancel));
        });
        return command;
    }

    private static Command Ids(CommonOptions common, Terminal terminal)
    {
        var clutches = new Option<string?>("--clutches") { Description = "How clutches are called from now on.", HelpName = "SCHEME" };
        var hatchlings = new Option<string?>("--hatchlings") { Description = "How hatchlings are called from now on.", HelpName = "SCHEME" };
        var who = StockCommand.Who();
        var command = new Command("ids", "How clutches and hatchlings are called: text with {year}, {yy}, {clutch}, {dam}, {sire}, {n}, {nn} or {letter} in it.") { clutches, hatchlings, who };
        command.SetAction(async (asked, cancel) =>
        {
            await using var questions = common.Open(asked);
            var schemes = questions.GetRequiredService<IdSchemes>();
            foreach (var (isOfClutches, text) in new[] { (true, asked.GetValue(clutches)), (false, asked.GetValue(hatchlings)) })
            {
                if (text is not null && (await schemes.SetAsync(isOfClutches, text, asked.GetRequiredValue(who), cancel)).Problems is { Count: > 0 } problems)
                {
                    return terminal.AskedWrongly(problems, _ => null);
                }
            }

            var (ofClutches, ofHatchlings) = await schemes.ReadAsync(cancel);
            if (common.IsJson(asked))
            {
                terminal.Send(new() { ["clutches"] = ofClutches.Text, ["hatchlings"] = ofHatchlings.Text });
            }
            else
            {
                terminal.Output.Write($"Clutches are called {ofClutches.Text}, hatchlings {ofHatchlings.Text}.\n");
            }

            return ExitCode.Answered;
        });
        return command;
    }

    private static int Told(bool isJson, Terminal terminal, Answer<WrittenClutch> done)
    {
        if (done.Value is not { } written)
        {
            return terminal.AskedWrongly(done.Problems, _ => null);
        }

        if (isJson)
        {
            terminal.Send(HistoryCommand.Json(written.Deed).With("clutch", written.Tag));
        }
        else
        {
            terminal.Output.Write($"{written.Deed.Words}. To take it back: stock undo {written.Deed.Id}\n");
        }

        return ExitCode.Answered;
    }
}
