using System.CommandLine;
using Clutchwright.Cli.Words;

namespace Clutchwright.Cli;

/// <summary>Puts a command line that cannot be understood into one line: what, where, and the nearest good spelling.</summary>
internal static class ParseProblem
{
    public static string Describe(ParseResult asked)
    {
        var command = asked.CommandResult.Command;
        var name = PathOf(asked);
        if (asked.UnmatchedTokens.Count == 0)
        {
            var subcommands = command.Subcommands.Where(c => !c.Hidden).Select(c => c.Name).ToArray();
            return command.Action is null && subcommands.Length > 0
                ? $"{name}: say what: {Spelling.OneOf(subcommands)}"
                : $"{name}: {asked.Errors[0].Message}";
        }

        var token = asked.UnmatchedTokens[0];
        if (token.StartsWith('-'))
        {
            return $"{name}: there is no option {token}{Spelling.Hint(token, OptionsOf(asked))}";
        }

        return command.Subcommands.Count > 0
            ? $"{name}: there is no command '{token}'{Spelling.Hint(token, command.Subcommands.Select(c => c.Name))}"
            : $"{name}: '{token}' is one argument too many; put quotes around an animal of several words";
    }

    private static string PathOf(ParseResult asked)
    {
        var names = new List<string>();
        for (var at = asked.CommandResult; at is not null; at = at.Parent as System.CommandLine.Parsing.CommandResult)
        {
            names.Insert(0, at.Command is RootCommand ? "clutchwright" : at.Command.Name);
        }

        return string.Join(' ', names);
    }

    private static IEnumerable<string> OptionsOf(ParseResult asked)
    {
        for (var at = asked.CommandResult; at is not null; at = at.Parent as System.CommandLine.Parsing.CommandResult)
        {
            foreach (var option in at.Command.Options.Where(o => at == asked.CommandResult || o.Recursive))
            {
                yield return option.Name;
            }
        }
    }
}
