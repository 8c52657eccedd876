using System.CommandLine;
using System.Globalization;
using Clutchwright.Cli.Words;
using Clutchwright.Desk.Backups;
using Microsoft.Extensions.DependencyInjection;

namespace Clutchwright.Cli.Backups;

/// <summary><c>book backup</c>: everything in one file.</summary>
internal static class BackupCommand
{
    public static Command Create(CommonOptions common, Terminal terminal)
    {
        var file = new Argument<string?>("FILE")
        {
            Description = "Where to write; an existing file is not overwritten. Default: a name that says when, in the folder of backups.",
            Arity = ArgumentArity.ZeroOrOne,
        };
        var command = new Command("backup", "Write everything, the history too, into one file, and read it back. Others may go on writing.") { file };
        command.SetAction(async (asked, cancel) =>
        {
            await using var questions = common.Open(asked, BackupVariables.Read(common.DataFolder(asked)));
            var answer = await questions.GetRequiredService<BackUp>().RunAsync(asked.GetValue(file), cancel);
            if (answer.Value is not { } made)
            {
                return terminal.CouldNot(answer.Problems[0].Text);
            }

            if (common.IsJson(asked))
            {
                terminal.Send(BookWords.Json(made)!);
                return ExitCode.Answered;
            }

            var page = new Page(terminal);
            page.Heading("Backup");
            page.Table(
                ["", ""],
                [
                    ["file", Page.Plain(made.File)],
                    ["size", BookWords.Size(made.Bytes)],
                    ["took", $"{made.Took.TotalSeconds.ToString("0.0", CultureInfo.InvariantCulture)} s"],
                    .. BookWords.Rows(made.Book),
                ]);
            page.Line("It was read back and holds just what the book held.");
            page.Send();
            return ExitCode.Answered;
        });
        return command;
    }
}
