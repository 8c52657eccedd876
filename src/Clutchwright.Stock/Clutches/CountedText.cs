using System.Globalization;
using System.Text.RegularExpressions;
using Clutchwright.Genetics.Loci;

namespace Clutchwright.Stock.Clutches;

/// <summary>Young of which only the number is kept, as the trade writes them: <c>3 Pied</c>, or <c>1.2 Pied</c> for one male and two females.</summary>
public static partial class CountedText
{
    /// <summary>Reads a line each.</summary>
    /// <param name="text">Lines, or parts with <c>;</c> between; null: none.</param>
    /// <param name="unread">The lines that cannot be read.</param>
    public static IReadOnlyList<CountedYoung> Read(string? text, out IReadOnlyList<string> unread)
    {
        var (counted, wrong) = (new List<CountedYoung>(), new List<string>());
        foreach (var line in (text ?? string.Empty).Split(['\n', ';'], StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries))
        {
            var match = Line().Match(line);
            if (!match.Success)
            {
                wrong.Add(line);
                continue;
            }

            var look = match.Groups["look"].Value.Trim();
            var (males, females, rest) = (Number(match.Groups["males"]), Number(match.Groups["females"]), Number(match.Groups["rest"]));
            var parts = match.Groups["females"].Success ? new[] { (Sex.Male, males), (Sex.Female, females), ((Sex?)null, rest) } : [(null, males)];
            counted.AddRange(parts.Where(p => p.Item2 > 0).Select(p => new CountedYoung(look, p.Item1, p.Item2)));
        }

        unread = wrong;
        return counted;
    }

    /// <summary>The same text again.</summary>
    public static string Write(IReadOnlyList<CountedYoung> counted) => string.Join('\n', counted.Select(c => $"{Of(c.Sex, c.Count)} {c.Seen}"));

    private static string Of(Sex? sex, int count) => sex switch
    {
        Sex.Male => string.Create(CultureInfo.InvariantCulture, $"{count}.0"),
        Sex.Female => string.Create(CultureInfo.InvariantCulture, $"0.{count}"),
        null => count.ToString(CultureInfo.InvariantCulture),
    };

    private static int Number(Group group) => group.Success && int.TryParse(group.Value, NumberStyles.None, CultureInfo.InvariantCulture, out var number) ? number : 0;

    [GeneratedRegex(@"^(?<males>[0-9]{1,4})(\.(?<females>[0-9]{1,4})(\.(?<rest>[0-9]{1,4}))?)?\s*[x×]?\s+(?<look>\S.*)$", RegexOptions.ExplicitCapture, matchTimeoutMilliseconds: 1000)]
    private static partial Regex Line();
}
