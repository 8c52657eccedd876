using System.CommandLine;
using System.Text;
using Clutchwright.Cli.Words;
using Clutchwright.Desk.Animals;
using Microsoft.Extensions.DependencyInjection;

namespace Clutchwright.Cli.Animals;

/// <summary><c>stock export</c>: gives everything back as CSV.</summary>
internal static class ExportCommand
{
    public static Command Create(CommonOptions common, Terminal terminal)
    {
        var file = new Argument<string?>("FILE")
        {
            Description = "Where to write; an existing file is not overwritten. Default: standard output.",
            Arity = ArgumentArity.ZeroOrOne,
        };
        var command = new Command("export", "Write the whole stock as CSV, in the shape that import reads.") { file };
        command.SetAction(async (asked, cancel) =>
        {
            await using var questions = common.Open(asked);
            var csv = await questions.GetRequiredService<ExportStock>().RunAsync(cancel);
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
