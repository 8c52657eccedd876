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

    /// <summary>Clutches of four out of the animals of the last years, now and then by a male of the first: every later animal is inbred.</summary>
    public static string LineBred(int animals)
    {
        var random = new Random(7);
        var text = new StringBuilder("id,sex,sire,dam,hatched,seen,told\n");
        var founders = Math.Max(4, animals / 12);
        for (var i = 0; i < animals; i++)
        {
            var clutch = new Random(((i - founders) / 4) + 100);
            var hatched = founders + ((i - founders) / 4 * 4);
            var first = Math.Max(0, hatched - 24) / 2;
            var sire = clutch.Next(4) == 0 ? 2 * clutch.Next(founders / 2) : 2 * clutch.Next(first, hatched / 2);
            var dam = (2 * clutch.Next(first, hatched / 2)) + 1;
            var parents = i < founders ? "," : $"{Tag(sire)},{Tag(dam)}";
            var told = i >= founders ? string.Empty : i == 0 ? "het Clown" : i == 1 ? "66% het Clown" : string.Empty;
            text.Append($"{Tag(i)},{(i % 2 == 0 ? 'm' : 'f')},{parents},{2015 + (i / 10)},{(random.Next(3) > 0 || i >= founders ? string.Empty : "Pastel")},{told}\n");
        }

        return text.ToString();
    }

    private static string Tag(int number) => $"L{number:0000}";
}
