using System.CommandLine;
using System.Globalization;
using Clutchwright.Cli.Words;
using Clutchwright.Desk.Looks;
using Microsoft.Extensions.DependencyInjection;

namespace Clutchwright.Cli.Looks;

/// <summary><c>look</c>: which makings show this look, at this age, and how surely.</summary>
internal sealed class LookCommand
{
    private const int MostForReaders = 12;
    private const int MostForPrograms = 50;

    private readonly CommonOptions _common;
    private readonly Terminal _terminal;

    private readonly Argument<string> _query = new("QUERY")
    {
        Description = "What is to be seen: tones of ground, pattern or eye, words, white, an age; with commas between. Example: \"pattern strong yellow, white patches, holds\".",
    };

    private readonly Option<string?> _at = new("--at")
    {
        Description = "At which stage of life: hatchling, juvenile, subadult or adult. Default: as the query says, or else adult.",
        HelpName = "STAGE",
    };

    private readonly Option<double?> _within = new("--within")
    {
        Description = string.Create(CultureInfo.InvariantCulture, $"How far a tone may be from the one asked for, by CIEDE2000, where the query does not say. Default: {LooksQuestion.UsualWithin}"),
        HelpName = "D",
        CustomParser = given =>
        {
            if (double.TryParse(given.Tokens[0].Value, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var number) && number is > 0.0 and <= 100.0)
            {
                return number;
            }

            given.AddError($"--within: '{given.Tokens[0].Value}' is not a number above 0 and up to 100");
            return null;
        },
    };

    private readonly Option<int?> _genes = Options.Count("--genes", "Compose makings of up to N genes, 1 to 3. Default: as the query says, or else 2.", "N", 1, 3);

    private readonly Option<bool> _fromStock = new("--from-stock") { Description = "Only makings of alleles that your stock carries." };

    private readonly Option<bool> _noHarm = new("--no-harm") { Description = "Leave out makings that suffer or die." };

    private readonly Option<int?> _most = Options.Count(
        "--most", $"List at most N makings. Default: {MostForReaders}, with --json {MostForPrograms}.", "N", 1, 1000);

    private LookCommand(CommonOptions common, Terminal terminal)
    {
        _common = common;
        _terminal = terminal;
    }

    public static Command Create(CommonOptions common, Terminal terminal)
    {
        var look = new LookCommand(common, terminal);
        var command = new Command("look", "Which makings show this look, at this age, how surely, and how near your stock is to them.")
        {
            look._query, look._at, look._within, look._genes, look._fromStock, look._noHarm, look._most,
        };
        command.SetAction(look.RunAsync);
        return command;
    }

    private async Task<int> RunAsync(ParseResult asked, CancellationToken cancel)
    {
        var query = asked.GetRequiredValue(_query);
        var isJson = _common.IsJson(asked);
        var question = new LooksQuestion(query)
        {
            At = asked.GetValue(_at),
            Within = asked.GetValue(_within),
            Genes = asked.GetValue(_genes),
            FromStock = asked.GetValue(_fromStock),
            WithoutHarm = asked.GetValue(_noHarm),
            Most = asked.GetValue(_most) ?? (isJson ? MostForPrograms : MostForReaders),
        };
        await using var questions = _common.Open(asked);
        var answer = await questions.GetRequiredService<FindLooks>().RunAsync(question, cancel);
        if (answer.Value is not { } looks)
        {
            return _terminal.AskedWrongly(
                [.. answer.Problems.Select(p => p with { Where = p.Where == "query" ? "QUERY" : $"--{p.Where}" })],
                where => where == "QUERY" ? query : null);
        }

        if (isJson)
        {
            _terminal.Send(LookJson.Of(looks));
        }
        else
        {
            LookPage.Send(_terminal, looks);
        }

        return ExitCode.Answered;
    }
}
