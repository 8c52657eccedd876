using System.CommandLine;
using Clutchwright.Cli.Pairs;
using Clutchwright.Cli.Words;
using Clutchwright.Desk.Crosses;
using Microsoft.Extensions.DependencyInjection;

namespace Clutchwright.Cli.Crosses;

/// <summary><c>cross</c>: what can hatch from a pair; without a pair, the best pairs of the stock for a want.</summary>
internal sealed class CrossCommand
{
    // What a reader takes in, and what a program may want to add up.
    private const int MostForReaders = 40;
    private const int MostForPrograms = 1000;

    private readonly CommonOptions _common;
    private readonly Terminal _terminal;

    private readonly Argument<string?> _sire = new("SIRE")
    {
        Description = "The male: a tag of your stock, or trade text such as \"1.0 Banana het Clown\".",
        Arity = ArgumentArity.ZeroOrOne,
    };

    private readonly Argument<string?> _dam = new("DAM")
    {
        Description = "The female, likewise. Leave both out, and give --want, to rank the pairs of your stock.",
        Arity = ArgumentArity.ZeroOrOne,
    };

    private readonly Option<string[]> _want = new("--want")
    {
        Description = "A look or genotype wanted, as trade text. Any number of times.",
        HelpName = "TEXT",
    };

    private readonly Option<int?> _eggs = Options.Count(
        "--eggs", "The clutch has N good eggs: fertile, and hatching unless their genotype forbids it. Default: from the species' biology.", "N", 1, ClutchSetting.MostEggs);

    private readonly Option<int?> _laid = Options.Count(
        "--laid", "The clutch has N eggs laid, good or not. Default: from the species' biology.", "N", 1, ClutchSetting.MostEggs);

    private readonly Option<double?> _fertility = Options.Share(
        "--fertility", "The share of eggs that are fertile. Default: from the species' biology.", "F");

    private readonly Option<double?> _hatchRate = Options.Share(
        "--hatch-rate", "The share of fertile eggs that hatch, genotype aside. Default: from the species' biology.", "H");

    private readonly Option<int?> _atLeast = Options.Count(
        "--at-least", "Also give the chance of at least K wanted hatchlings in the clutch.", "K", 1, ClutchSetting.MostEggs);

    private readonly Option<Dictionary<string, double>> _recombination = Options.Recombination();

    private readonly Option<int?> _most = Options.Count(
        "--most", $"List at most N looks, genotypes or pairs. Default: {MostForReaders}, with --json {MostForPrograms}.", "N", 1, 1_000_000);

    private readonly Option<bool> _notation = new("--notation")
    {
        Description = "Show genetics' notation too, and list the genotypes.",
    };

    private CrossCommand(CommonOptions common, Terminal terminal)
    {
        _common = common;
        _terminal = terminal;
    }

    public static Command Create(CommonOptions common, Terminal terminal)
    {
        var cross = new CrossCommand(common, terminal);
        var command = new Command("cross", "What can hatch from a pair, with which odds; with --want alone, the best pairs of your stock.")
        {
            cross._sire,
            cross._dam,
            cross._want,
            cross._eggs,
            cross._laid,
            cross._fertility,
            cross._hatchRate,
            cross._atLeast,
            cross._recombination,
            cross._most,
            cross._notation,
        };
        command.SetAction(cross.RunAsync);
        return command;
    }

    private Task<int> RunAsync(ParseResult asked, CancellationToken cancel)
    {
        var wants = asked.GetValue(_want) ?? [];
        return (asked.GetValue(_sire), asked.GetValue(_dam)) switch
        {
            ({ } sire, { } dam) => CrossAsync(asked, sire, dam, wants, cancel),
            ({ } sire, null) => Task.FromResult(_terminal.AskedWrongly(
                $"cross: the dam is missing after '{sire}'; name both parents, or neither and a --want")),
            _ => PairsAsync(asked, wants, cancel),
        };
    }

    private async Task<int> CrossAsync(ParseResult asked, string sire, string dam, string[] wants, CancellationToken cancel)
    {
        var isJson = _common.IsJson(asked);
        if (asked.GetValue(_eggs) is not null && (asked.GetValue(_fertility) ?? asked.GetValue(_hatchRate)) is not null)
        {
            return _terminal.AskedWrongly("--eggs: counts good eggs, so --fertility and --hatch-rate have nothing to act on; give one or the other");
        }

        var question = new CrossQuestion(sire, dam)
        {
            Wants = wants,
            Clutch = new(asked.GetValue(_eggs), asked.GetValue(_fertility), asked.GetValue(_hatchRate)) { Laid = asked.GetValue(_laid) },
            Recombination = asked.GetValue(_recombination) ?? [],
            Most = asked.GetValue(_most) ?? (isJson ? MostForPrograms : MostForReaders),
            AtLeast = asked.GetValue(_atLeast) ?? 1,
        };
        await using var questions = _common.Open(asked);
        var answer = await questions.GetRequiredService<AskCross>().RunAsync(question, cancel);
        if (answer.Value is not { } cross)
        {
            return _terminal.AskedWrongly(answer.Problems, where => AskedAt(where, sire, dam, wants));
        }

        if (isJson)
        {
            _terminal.Send(CrossJson.Of(cross));
        }
        else
        {
            CrossPage.Send(_terminal, cross, asked.GetValue(_notation));
        }

        return ExitCode.Answered;
    }

    private async Task<int> PairsAsync(ParseResult asked, string[] wants, CancellationToken cancel)
    {
        if (wants.Length != 1)
        {
            return _terminal.AskedWrongly(wants.Length == 0
                ? "cross: name a sire and a dam, or one --want to rank the pairs of your stock"
                : "--want: pairs are ranked for one want at a time; name a sire and a dam to ask for several");
        }

        var onlyOfPairs = new (Option Option, bool IsGiven)[]
        {
            (_laid, asked.GetValue(_laid) is not null),
            (_fertility, asked.GetValue(_fertility) is not null),
            (_hatchRate, asked.GetValue(_hatchRate) is not null),
            (_atLeast, asked.GetValue(_atLeast) is not null),
        };
        if (Array.Find(onlyOfPairs, o => o.IsGiven).Option is { } needless)
        {
            return _terminal.AskedWrongly($"{needless.Name}: needs a sire and a dam; pairs are ranked by the species' biology or by --eggs");
        }

        return await PairsRanking.RunAsync(
            _common,
            _terminal,
            asked,
            new(wants[0])
            {
                Most = asked.GetValue(_most) ?? (_common.IsJson(asked) ? MostForPrograms : MostForReaders),
                Eggs = asked.GetValue(_eggs),
                Recombination = asked.GetValue(_recombination) ?? [],
            },
            asked.GetValue(_notation),
            cancel);
    }

    private static string? AskedAt(string where, string sire, string dam, string[] wants) => where switch
    {
        "sire" => sire,
        "dam" => dam,
        _ when where.StartsWith("want ", StringComparison.Ordinal)
            && int.TryParse(where.AsSpan(5), out var number) && number >= 1 && number <= wants.Length => wants[number - 1],
        _ when string.Equals(where, "want", StringComparison.Ordinal) && wants.Length == 1 => wants[0],
        _ => null,
    };
}
