using System.Globalization;
using System.Text.RegularExpressions;
using Clutchwright.Desk.Words;
using Clutchwright.Genetics.Loci;
using Clutchwright.Stock.Clutches;

namespace Clutchwright.Desk.Clutches;

/// <summary>Young of which only the number is kept, as the trade writes them: <c>3 Pied</c>, or <c>1.2 Pied</c> for one male and two females.</summary>
internal static partial class CountedText
{
    /// <summary>Reads a line each.</summary>
    public static IReadOnlyList<CountedYoung> Read(string? text, List<AskedWrongly> problems)
    {
        var counted = new List<CountedYoung>();
        foreach (var line in (text ?? string.Empty).Split(['\n', ';'], StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries))
        {
            var match = Line().Match(line);
            if (!match.Success)
            {
                problems.Add(new("counted", $"\"{line}\" cannot be read. Write a number and a look: 3 Pied, or 1.2 Pied for one male and two females."));
                continue;
            }

            var look = match.Groups["look"].Value.Trim();
            var (males, females, rest) = (Number(match.Groups["males"]), Number(match.Groups["females"]), Number(match.Groups["rest"]));
            var parts = match.Groups["females"].Success ? new[] { (Sex.Male, males), (Sex.Female, females), ((Sex?)null, rest) } : [(null, males)];
            counted.AddRange(parts.Where(p => p.Item2 > 0).Select(p => new CountedYoung(look, p.Item1, p.Item2)));
        }

        return counted;
    }

    /// <summary>The same text again.</summary>
    public static string Write(IReadOnlyList<CountedYoung> counted) => string.Join('\n', counted.Select(c => $"{Of(c.Sex, c.Count)} {c.Seen}"));

    public static CountedWords Words(CountedYoung counted) => new(counted.Count, counted.Seen, counted.Sex switch
    {
        Sex.Male => "1.0",
        Sex.Female => "0.1",
        null => string.Empty,
    });

    private static string Of(Sex? sex, int count) => sex switch
    {
        Sex.Male => string.Create(CultureInfo.InvariantCulture, $"{count}.0"),
        Sex.Female => string.Create(CultureInfo.InvariantCulture, $"0.{count}"),
        null => count.ToString(CultureInfo.InvariantCulture),
    };

    private static int Number(Group group) => group.Success && int.TryParse(group.Value, NumberStyles.None, CultureInfo.InvariantCulture, out var number) ? number : 0;

    [GeneratedRegex(@"^(?<males>\d{1,4})(\.(?<females>\d{1,4})(\.(?<rest>\d{1,4}))?)?\s*[x×]?\s+(?<look>\S.*)$", RegexOptions.ExplicitCapture, matchTimeoutMilliseconds: 1000)]
    private static partial Regex Line();
}
