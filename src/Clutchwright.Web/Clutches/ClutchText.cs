using System.Globalization;
using Clutchwright.Desk.Clutches;
using Clutchwright.Web.Words;

namespace Clutchwright.Web.Clutches;

/// <summary>Puts a clutch into short words.</summary>
internal static class ClutchText
{
    private const int MostMarks = 40;

    /// <summary>Sire first, as a cross is written.</summary>
    public static string Parents(ClutchWords clutch) =>
        $"{(clutch.Sires.Count == 0 ? "sire unknown" : string.Join(" or ", clutch.Sires))} × {clutch.Dam}";

    public static string State(ClutchWords clutch) => clutch.Stage switch
    {
        ClutchStage.Over => $"laid {clutch.Laid}{(clutch.Hatched is { } hatched ? $", hatched {hatched}" : ", none hatched")}",
        _ => $"laid {clutch.Laid}, day {CountWords.Whole(clutch.Days)}{(clutch.Incubator is { } place ? $", in {place}" : string.Empty)}{(clutch.Pipped is { } pipped ? $", pipped {pipped}" : string.Empty)}",
    };

    /// <summary>Every egg in words.</summary>
    public static string Eggs(ClutchWords clutch)
    {
        var parts = new List<string>();
        if (clutch.GoodEggs is { } good)
        {
            parts.Add(CountWords.Of(good, "good egg", "good eggs"));
        }

        Add(clutch.Slugs, "slug", "slugs");
        Add(clutch.Lost, "lost", "lost");
        Add(clutch.HatchedCount, "hatched", "hatched");
        return parts.Count == 0 ? "eggs not counted" : string.Join(", ", parts);

        void Add(int? number, string one, string many)
        {
            if (number is > 0 and var some)
            {
                parts.Add(CountWords.Of(some, one, many));
            }
        }
    }

    /// <summary>What each egg became, for a row of marks: <c>hatched</c>, <c>egg</c>, <c>lost</c> or <c>slug</c>.</summary>
    public static IReadOnlyList<string> Marks(ClutchWords clutch) =>
    [
        .. Enumerable.Repeat("hatched", clutch.HatchedCount)
            .Concat(Enumerable.Repeat("egg", clutch.Left ?? 0))
            .Concat(Enumerable.Repeat("lost", clutch.Lost))
            .Concat(Enumerable.Repeat("slug", clutch.Slugs ?? 0))
            .Take(MostMarks),
    ];

    public static string Grams(double grams) => $"{grams.ToString("#,0.#", CultureInfo.CurrentCulture)} g";
}
