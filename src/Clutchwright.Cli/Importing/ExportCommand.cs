using System.CommandLine;
using System.Text;
using Clutchwright.Cli.Words;
using Clutchwright.Desk.Importing;
using Microsoft.Extensions.DependencyInjection;

namespace Clutchwright.Cli.Importing;

/// <summary><c>stock export</c>, <c>stock export-log</c> and <c>clutch export</c>: give everything back as CSV.</summary>
internal static class ExportCommand
{
    public static Command Animals(CommonOptions common, Terminal terminal) =>
        Create(ImportKind.Animals, "export", "Write the whole stock as CSV, in the shape that import reads.", common, terminal);

    public static Command Clutches(CommonOptions common, Terminal terminal) =>
        Create(ImportKind.Clutches, "export", "Write every clutch as CSV, in the shape that import reads.", common, terminal);

    public static Command Log(CommonOptions common, Terminal terminal) =>
        Create(ImportKind.Log, "export-log", "Write the log of every animal as CSV, in the shape that import-log reads.", common, terminal);

    private static Command Create(ImportKind kind, string name, string help, CommonOptions common, Terminal terminal)
    {
        var file = new Argument<string?>("FILE")
        {
            Description = "Where to write; an existing file is not overwritten. Default: standard output.",
            Arity = ArgumentArity.ZeroOrOne,
        };
        var command = new Command(name, help) { file };
        command.SetAction(async (asked, cancel) =>
        {
            await using var questions = common.Open(asked);
            var csv = await questions.GetRequiredService<ExportTable>().RunAsync(kind, cancel);
            if (asked.GetValue(file) is { } path)
            {
                await using var stream = new FileStream(path, FileMode.CreateNew);
                await stream.WriteAsync(csv, cancel);
                if (common.IsJson(asked))
                {
                    terminal.Send(new() { ["file"] = path, ["bytes"] = csv.Length });
                }
                else
                {
                    terminal.Output.Write($"{path}: {csv.Length:N0} bytes\n");
                }

                return ExitCode.Answered;
            }

            var text = new UTF8Encoding(encoderShouldEmitUTF8Identifier: false).GetString(csv).TrimStart('\uFEFF');
            if (common.IsJson(asked))
            {
                terminal.Send(new() { ["csv"] = text });
            }
            else
            {
                terminal.Output.Write(text);
            }

            return ExitCode.Answered;
        });
        return command;
    }
}
