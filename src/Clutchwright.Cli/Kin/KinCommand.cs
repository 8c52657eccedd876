using System.CommandLine;
using Clutchwright.Cli.Words;
using Clutchwright.Desk.Kin;
using Microsoft.Extensions.DependencyInjection;

namespace Clutchwright.Cli.Kin;

/// <summary><c>kin</c>: who descends from whom, how related two animals are.</summary>
internal sealed class KinCommand
{
    private const int MostForReaders = 20;
    private const int MostForPrograms = 1000;

    private readonly CommonOptions _common;
    private readonly Terminal _terminal;

    private readonly Argument<string?> _file = new("FILE.csv")
    {
        Description = "A pedigree file. Left out: your stock.",
        Arity = ArgumentArity.ZeroOrOne,
    };

    private readonly Option<string[]> _pair = new("--pair")
    {
        Description = "How related A and B are: the inbreeding of their young.",
        HelpName = "A B",
        Arity = new ArgumentArity(1, 2),
        AllowMultipleArgumentsPerToken = true,
    };

    private readonly Option<string?> _animal = new("--animal")
    {
        Description = "One animal: its relatives, and where its own inbreeding comes from.",
        HelpName = "ID",
    };

    private readonly Option<bool> _routes = new("--routes")
    {
        Description = "With --pair or --animal: every route of descent behind the figure, and what each adds.",
    };

    private readonly Option<bool> _founders = new("--founders")
    {
        Description = "Which founders the genes of the animals you have now come from, and how many founders that amounts to.",
    };

    private readonly Option<string?> _founderKinship = new("--founder-kinship")
    {
        Description = "A CSV file a,b,kinship that says how related founders are. Left out: not at all.",
        HelpName = "FILE.csv",
    };

    private readonly Option<string?> _sexLinked = new("--sex-linked")
    {
        Description = "Also inbreeding and kinship at a locus on the sex chromosomes: R is its recombination fraction with sex, 0 to 0.5, or a sex-linked gene.",
        HelpName = "R",
    };

    private readonly Option<int?> _most = Options.Count(
        "--most", $"List at most N animals, relatives, routes and founders. Default: {MostForReaders}, with --json {MostForPrograms}; in JSON, inbreeding has every animal.", "N", 1, 1_000_000);

    private KinCommand(CommonOptions common, Terminal terminal)
    {
        _common = common;
        _terminal = terminal;
    }

    public static Command Create(CommonOptions common, Terminal terminal)
    {
        var kin = new KinCommand(common, terminal);
        var command = new Command("kin", "Who is inbred, how related two animals are and by which routes, where the genes of your stock come from.")
        {
            kin._file,
            kin._pair,
            kin._animal,
            kin._routes,
            kin._founders,
            kin._founderKinship,
            kin._sexLinked,
            kin._most,
        };
        command.SetAction(kin.RunAsync);
        return command;
    }

    private async Task<int> RunAsync(ParseResult asked, CancellationToken cancel)
    {
        if (asked.GetValue(_pair) is [var lonely])
        {
            return _terminal.AskedWrongly($"--pair: one more animal is missing after '{lonely}'; write --pair A B");
        }

        var pair = asked.GetValue(_pair) is [var first, var second] ? (first, second) : ((string, string)?)null;
        var animal = asked.GetValue(_animal);
        var withRoutes = asked.GetValue(_routes);
        if (withRoutes && pair is null && animal is null)
        {
            return _terminal.AskedWrongly("--routes: say between whom: --pair A B, or --animal ID for the routes between its parents");
        }

        var isJson = _common.IsJson(asked);
        var most = asked.GetValue(_most) ?? (isJson ? MostForPrograms : MostForReaders);
        var path = asked.GetValue(_file);
        var founderKinship = asked.GetValue(_founderKinship);
        var question = new KinQuestion
        {
            File = path is null ? null : new(Path.GetFileName(path), await File.ReadAllBytesAsync(path, cancel)),
            Pair = pair,
            Animal = animal,
            MostRoutes = withRoutes ? most : 0,
            WithFounders = asked.GetValue(_founders),
            FounderKinship = founderKinship is null ? null : new(Path.GetFileName(founderKinship), await File.ReadAllBytesAsync(founderKinship, cancel)),
            SexLinked = asked.GetValue(_sexLinked),
        };
        await using var questions = _common.Open(asked);
        var answer = await questions.GetRequiredService<AskKin>().RunAsync(question, cancel);
        if (answer.Value is not { } kin)
        {
            return _terminal.AskedWrongly(answer.Problems, _ => null);
        }

        if (isJson)
        {
            _terminal.Send(KinJson.Of(kin, withRoutes, most));
        }
        else
        {
            KinPage.Send(_terminal, kin, withRoutes, most);
        }

        return ExitCode.Answered;
    }
}
