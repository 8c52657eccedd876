using Clutchwright.Desk.Words;
using Clutchwright.Genetics.Loci;
using Clutchwright.Stock.Clutches;

namespace Clutchwright.Desk.Clutches;

/// <summary>Young of which only the number is kept, as a keeper writes them.</summary>
internal static class CountedText
{
    /// <summary>Reads a line each.</summary>
    public static IReadOnlyList<CountedYoung> Read(string? text, List<AskedWrongly> problems)
    {
        var counted = Stock.Clutches.CountedText.Read(text, out var unread);
        problems.AddRange(unread.Select(line =>
            new AskedWrongly("counted", $"\"{line}\" cannot be read. Write a number and a look: 3 Pied, or 1.2 Pied for one male and two females.")));
        return counted;
    }

    /// <summary>The same text again.</summary>
    public static string Write(IReadOnlyList<CountedYoung> counted) => Stock.Clutches.CountedText.Write(counted);

    public static CountedWords Words(CountedYoung counted) => new(counted.Count, counted.Seen, counted.Sex switch
    {
        Sex.Male => "1.0",
        Sex.Female => "0.1",
        null => string.Empty,
    });
}
