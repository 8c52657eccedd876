using System.CommandLine;
using System.CommandLine.Parsing;
using System.Globalization;

namespace Clutchwright.Cli.Words;

/// <summary>Options that check what is given to them, and say in plain words what would be right.</summary>
internal static class Options
{
    /// <summary>A whole number.</summary>
    public static Option<int?> Count(string name, string help, string helpName, int least, int most) => new(name)
    {
        Description = help,
        HelpName = helpName,
        CustomParser = given =>
        {
            if (int.TryParse(given.Tokens[0].Value, NumberStyles.None, CultureInfo.InvariantCulture, out var number)
                && number >= least && number <= most)
            {
                return number;
            }

            given.AddError($"{name}: '{given.Tokens[0].Value}' is not a whole number from {least} to {most}");
            return null;
        },
    };

    /// <summary>A share: <c>0.9</c> or <c>90%</c>.</summary>
    public static Option<double?> Share(string name, string help, string helpName) => new(name)
    {
        Description = help,
        HelpName = helpName,
        CustomParser = given =>
        {
            var text = given.Tokens[0].Value;
            if (ReadShare(text) is { } share && share <= 1.0)
            {
                return share;
            }

            given.AddError($"{name}: '{text}' is not a share from 0 to 1");
            return null;
        },
    };

    /// <summary>A pair of a name and a recombination fraction, any number of times.</summary>
    public static Option<Dictionary<string, double>> Recombination() => new("--recombination")
    {
        Description = "Reckon a sex-linked locus with this recombination fraction, 0 to 0.5, in place of the catalogue's. "
            + "LOCUS is its id or the name of one of its alleles. Any number of times.",
        HelpName = "LOCUS=R",
        Arity = ArgumentArity.OneOrMore,
        CustomParser = given => ReadPairs(given, "--recombination", "LOCUS=R, for example Banana=0.08", text =>
            ReadShare(text) is { } fraction && fraction <= 0.5 ? (fraction, null) : (0.0, $"'{text}' is not a recombination fraction from 0 to 0.5")),
    };

    /// <summary>A pair of an allele and its frequency, any number of times.</summary>
    public static Option<Dictionary<string, double>> Frequency() => new("--frequency")
    {
        Description = "How common an allele is among founders: its share of all copies, 0 to 1, in place of the catalogue's. Any number of times.",
        HelpName = "ALLELE=Q",
        Arity = ArgumentArity.OneOrMore,
        CustomParser = given => ReadPairs(given, "--frequency", "ALLELE=Q, for example Clown=0.02", text =>
            ReadShare(text) is { } share && share <= 1.0 ? (share, null) : (0.0, $"'{text}' is not a share from 0 to 1")),
    };

    /// <summary>A pair of names, any number of times.</summary>
    public static Option<Dictionary<string, string?>> Mapping() => new("--map")
    {
        Description = "Read the column HEADER of the file as FIELD; leave FIELD empty to keep the column as a note. Any number of times.",
        HelpName = "HEADER=FIELD",
        Arity = ArgumentArity.OneOrMore,
        CustomParser = given => ReadPairs<string?>(given, "--map", "HEADER=FIELD, for example Mother=dam", text =>
            (text.Length == 0 ? null : text, null)),
    };

    private static Dictionary<string, T> ReadPairs<T>(
        ArgumentResult given, string name, string shape, Func<string, (T Value, string? Problem)> read)
    {
        var result = new Dictionary<string, T>(StringComparer.OrdinalIgnoreCase);
        foreach (var text in given.Tokens.Select(t => t.Value))
        {
            var at = text.LastIndexOf('=');
            if (at <= 0)
            {
                given.AddError($"{name}: '{text}' is not {shape}");
                continue;
            }

            var (value, problem) = read(text[(at + 1)..].Trim());
            if (problem is not null)
            {
                given.AddError($"{name}: {problem} (in '{text}')");
            }
            else if (!result.TryAdd(text[..at].Trim(), value))
            {
                given.AddError($"{name}: '{text[..at].Trim()}' is given twice");
            }
        }

        return result;
    }

    private static double? ReadShare(string text)
    {
        var percent = text.EndsWith('%');
        return double.TryParse(
            percent ? text[..^1] : text, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var number)
            ? (percent ? number / 100.0 : number)
            : null;
    }
}
