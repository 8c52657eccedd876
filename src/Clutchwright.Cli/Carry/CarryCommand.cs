using System.CommandLine;
using Clutchwright.Cli.Words;
using Clutchwright.Desk.Carry;
using Clutchwright.Desk.Words;
using Microsoft.Extensions.DependencyInjection;

namespace Clutchwright.Cli.Carry;

/// <summary><c>carry</c>: what each animal may carry, with its probability.</summary>
internal sealed class CarryCommand
{
    private readonly CommonOptions _common;
    private readonly Terminal _terminal;

    private readonly Argument<string?> _file = new("FILE.csv")
    {
        Description = "A pedigree file. Default: your stock.",
        Arity = ArgumentArity.ZeroOrOne,
    };

    private readonly Option<string[]> _animal = new("--animal")
    {
        Description = "Tell of this animal only; the others are reckoned with all the same. Any number of times.",
        HelpName = "ID",
    };

    private readonly Option<double?> _misreading = Options.Share(
        "--misreading", "The chance that the eye reads one locus wrongly, 0 to 0.5. Default: 0, a record is right unless it cannot be.", "E");

    private readonly Option<Dictionary<string, double>> _frequency = Options.Frequency();

    private readonly Option<bool> _notation = new("--notation") { Description = "Show genetics' notation too." };

    private CarryCommand(CommonOptions common, Terminal terminal)
    {
        _common = common;
        _terminal = terminal;
    }

    public static Command Create(CommonOptions common, Terminal terminal)
    {
        var carry = new CarryCommand(common, terminal);
        var command = new Command("carry", "What each animal may carry, with its probability, from all that is recorded of it and of its kin.")
        {
            carry._file, carry._animal, carry._misreading, carry._frequency, carry._notation,
        };
        command.SetAction(carry.RunAsync);
        return command;
    }

    private async Task<int> RunAsync(ParseResult asked, CancellationToken cancel)
    {
        var path = asked.GetValue(_file);
        var question = new CarryQuestion
        {
            File = path is null ? null : new NamedFile(Path.GetFileName(path), await File.ReadAllBytesAsync(path, cancel)),
            Animals = asked.GetValue(_animal) ?? [],
            Misreading = asked.GetValue(_misreading),
            Frequencies = asked.GetValue(_frequency) ?? [],
        };
        await using var questions = _common.Open(asked);
        var answer = await questions.GetRequiredService<ListCarry>().RunAsync(question, cancel);
        if (answer.Value is not { } carry)
        {
            return _terminal.AskedWrongly(answer.Problems, _ => null);
        }

        if (_common.IsJson(asked))
        {
            _terminal.Send(CarryJson.Of(carry));
        }
        else
        {
            CarryPage.Send(_terminal, carry, asked.GetValue(_notation));
        }

        return ExitCode.Answered;
    }
}
