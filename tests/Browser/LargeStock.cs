using System.Text;

namespace Clutchwright.Browser;

/// <summary>A made-up stock of any size, the same every time.</summary>
internal static class LargeStock
{
    private static readonly string[] Seen = ["Pastel", "normal", "Mojave", "Enchi Pastel", "Clown", "Pied", "Lesser", "Super Pastel", "Banana"];
    private static readonly string[] Told = ["", "66% het Clown", "het Pied", "", "50% het Ultramel", "het Clown het Pied", ""];

    /// <summary>The stock as the CSV that the import takes. The first tenth are founders.</summary>
    public static string Csv(int animals)
    {
        var text = new StringBuilder("id,sex,sire,dam,hatched,seen,told\n");
        var founders = animals / 10;
        for (var i = 0; i < animals; i++)
        {
            var seen = Seen[i % Seen.Length];
            var told = Told[i % Told.Length];

            // What is seen need not be told again.
            if (told.Split("het ").Skip(1).Any(w => seen.Contains(w.Trim(), StringComparison.Ordinal)))
            {
                told = string.Empty;
            }

            var (sire, dam) = i < founders ? (string.Empty, string.Empty) : (Tag(i % founders / 2 * 2), Tag((i % founders / 2 * 2) + 1));
            text.Append($"{Tag(i)},{(i % 2 == 0 ? 'm' : 'f')},{sire},{dam},{(i < founders ? 2018 : 2023)},{(i < founders ? seen : string.Empty)},{(i < founders ? told : string.Empty)}\n");
        }

        return text.ToString();
    }

    private static string Tag(int number) => $"L{number:0000}";
}
