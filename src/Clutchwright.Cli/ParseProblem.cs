using System.CommandLine;
using System.CommandLine.Parsing;
using Clutchwright.Cli.Words;

namespace Clutchwright.Cli;

/// <summary>Puts a command line that cannot be understood into one line: what, where, and the nearest good spelling.</summary>
internal static class ParseProblem
{
    /// <summary>Finds what is wrong, or <c>null</c>.</summary>
    public static string? Find(ParseResult asked)
    {
        // No animal, gene or file is written with two dashes in front, so a word that begins so is an option misspelt.
        if (MisspeltOption(asked) is { } option)
        {
            return $"{PathOf(asked)}: there is no option {option}{Spelling.Hint(option, OptionsOf(asked))}";
        }

        return asked.Errors.Count == 0 ? null : Describe(asked);
    }

    private static string? MisspeltOption(ParseResult asked) => asked.Tokens
        .TakeWhile(t => t.Type != TokenType.DoubleDash)
        .FirstOrDefault(t => t.Type == TokenType.Argument && t.Value.StartsWith("--", StringComparison.Ordinal))?.Value;

    private static string Describe(ParseResult asked)
    {
        var command = asked.CommandResult.Command;
        var name = PathOf(asked);
        if (asked.UnmatchedTokens.Count == 0)
        {
            var subcommands = command.Subcommands.Where(c => !c.Hidden).Select(c => c.Name).ToArray();
            if (command.Action is null && subcommands.Length > 0)
            {
                return $"{name}: say what: {Spelling.OneOf(subcommands)}";
            }

            var error = asked.Errors[0];
            return error.SymbolResult is ArgumentResult { Tokens.Count: 0, Parent: CommandResult } missing
                ? $"{name}: {missing.Argument.Name} is missing"
                : $"{name}: {error.Message}";
        }

        var token = asked.UnmatchedTokens[0];
        return command.Subcommands.Count > 0
            ? $"{name}: there is no command '{token}'{Spelling.Hint(token, command.Subcommands.Select(c => c.Name))}"
            : $"{name}: '{token}' is one argument too many; put quotes around an animal of several words";
    }

    private static string PathOf(ParseResult asked)
    {
        var names = new List<string>();
        for (var at = asked.CommandResult; at is not null; at = at.Parent as CommandResult)
        {
            names.Insert(0, at.Command is RootCommand ? "clutchwright" : at.Command.Name);
        }

        return string.Join(' ', names);
    }

    private static IEnumerable<string> OptionsOf(ParseResult asked)
    {
        for (var at = asked.CommandResult; at is not null; at = at.Parent as CommandResult)
        {
            foreach (var option in at.Command.Options.Where(o => at == asked.CommandResult || o.Recursive))
            {
                yield return option.Name;
            }
        }
    }
}
