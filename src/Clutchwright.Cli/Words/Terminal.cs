using Clutchwright.Desk.Words;

namespace Clutchwright.Cli.Words;

/// <summary>Where the program writes. Standard output holds the answer and nothing else.</summary>
/// <param name="Output">For the answer.</param>
/// <param name="Error">For everything else.</param>
/// <param name="IsStyled">Whether bold and italic can be shown.</param>
/// <param name="Width">Letters a line has room for.</param>
internal sealed record Terminal(TextWriter Output, TextWriter Error, bool IsStyled, int Width)
{
    // Into a file or a pipe lines are not broken, so that they can be searched.
    private const int Unbroken = 20_000;

    /// <summary>The console that the program was started from.</summary>
    public static Terminal OfConsole()
    {
        var isStyled = !Console.IsOutputRedirected && string.IsNullOrEmpty(Environment.GetEnvironmentVariable("NO_COLOR"));
        var width = Console.IsOutputRedirected || Console.WindowWidth < 40 ? Unbroken : Console.WindowWidth;
        return new(Console.Out, Console.Error, isStyled, width);
    }

    /// <summary>Says in one line what was asked wrongly.</summary>
    public int AskedWrongly(string text)
    {
        Error.WriteLine(OneLine(text));
        return ExitCode.AskedWrongly;
    }

    /// <summary>Says in one line what was asked wrongly, where, and what would be right.</summary>
    /// <param name="problems">At least one.</param>
    /// <param name="askedAt">What was asked in a place, for pointing into it; may know nothing of a place.</param>
    public int AskedWrongly(IReadOnlyList<AskedWrongly> problems, Func<string, string?> askedAt) =>
        AskedWrongly(string.Join("; also ", problems.Select(p => Describe(p, askedAt(p.Where)))));

    /// <summary>Says in one line what could not be done, and why.</summary>
    public int CouldNot(string text)
    {
        Error.WriteLine(OneLine(text));
        return ExitCode.CouldNotBeDone;
    }

    private static string Describe(AskedWrongly problem, string? asked)
    {
        var text = problem.Text.TrimEnd().TrimEnd('.');
        var place = problem.At is { } at && asked is not null && at <= asked.Length
            ? $" (at {at + 1} in '{asked}')"
            : string.Empty;

        // The reader of trade text says the nearest spellings in its sentence already.
        var hint = problem.DidYouMean is [var first, ..] && text.Contains(first, StringComparison.Ordinal)
            ? string.Empty
            : Spelling.DidYouMean(problem.DidYouMean);
        return $"{problem.Where}: {text}{place}{hint}";
    }

    private static string OneLine(string text) =>
        string.Join(' ', text.Split(['\r', '\n'], StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries));
}
