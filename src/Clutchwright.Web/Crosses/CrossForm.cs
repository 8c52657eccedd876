using System.Globalization;
using Clutchwright.Desk.Crosses;
using Clutchwright.Desk.Words;
using Microsoft.AspNetCore.Http;

namespace Clutchwright.Web.Crosses;

/// <summary>What a keeper asks of a pair, as the address holds it.</summary>
public sealed record CrossForm
{
    /// <summary>The most wants that are answered at once.</summary>
    public const int MostWants = 8;


    public string Sire { get; init; } = string.Empty;

    public string Dam { get; init; } = string.Empty;

    public IReadOnlyList<string> Wants { get; init; } = [];

    public string? Eggs { get; init; }

    public string? Laid { get; init; }

    public string? Fertility { get; init; }

    public string? Hatch { get; init; }

    public string? AtLeast { get; init; }

    public string? Most { get; init; }

    /// <summary>Gets whether there is enough to ask.</summary>
    public bool IsAsked => Sire.Length > 0 && Dam.Length > 0;

    /// <summary>Gets whether the keeper says anything of the clutch.</summary>
    public bool SaysClutch => Eggs is not null || Laid is not null || Fertility is not null || Hatch is not null || AtLeast is not null;

    public static CrossForm Read(IQueryCollection query) => new()
    {
        Sire = Text(query, "sire") ?? string.Empty,
        Dam = Text(query, "dam") ?? string.Empty,
        Wants = [.. query["want"].OfType<string>().Select(w => w.Trim()).Where(w => w.Length > 0).Take(MostWants)],
        Eggs = Text(query, "eggs"),
        Laid = Text(query, "laid"),
        Fertility = Text(query, "fertility"),
        Hatch = Text(query, "hatch"),
        AtLeast = Text(query, "atleast"),
        Most = Text(query, "most"),
    };

    /// <summary>The address that asks this.</summary>
    public string Link() => Links.With(
        "/cross",
        [
            ("sire", Sire), ("dam", Dam), .. Wants.Select(w => ("want", (string?)w)),
            ("eggs", Eggs), ("laid", Laid), ("fertility", Fertility), ("hatch", Hatch), ("atleast", AtLeast), ("most", Most),
        ]);

    /// <summary>The question, without what in the address cannot be read.</summary>
    /// <param name="problems">Takes what cannot be read.</param>
    public CrossQuestion Question(List<AskedWrongly> problems)
    {
        var eggs = Whole(Eggs, "eggs", ClutchSetting.MostEggs, problems);
        var laid = Whole(Laid, "laid", ClutchSetting.MostEggs, problems);
        var atLeast = Whole(AtLeast, "atleast", ClutchSetting.MostEggs, problems);
        var most = Whole(Most, "most", 1000, problems);
        var clutch = new ClutchSetting(eggs, Share(Fertility, "fertility", problems), Share(Hatch, "hatch", problems)) { Laid = laid };
        var question = new CrossQuestion(Sire, Dam) { Wants = Wants, Clutch = clutch, AtLeast = atLeast ?? 1 };
        return most is { } more ? question with { Most = more } : question;
    }

    private static string? Text(IQueryCollection query, string name)
    {
        var text = query[name].ToString().Trim();
        return text.Length == 0 ? null : text;
    }

    private static int? Whole(string? text, string where, int most, List<AskedWrongly> problems)
    {
        if (text is null)
        {
            return null;
        }

        if (int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out var number) && number >= 1 && number <= most)
        {
            return number;
        }

        problems.Add(new AskedWrongly(where, $"Give a whole number from 1 to {most}, not “{text}”."));
        return null;
    }

    // 90, 90% and 0.9 say the same.
    private static double? Share(string? text, string where, List<AskedWrongly> problems)
    {
        if (text is null)
        {
            return null;
        }

        var bare = text.TrimEnd('%', ' ').Replace(',', '.');
        if (double.TryParse(bare, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var number) && number is > 0 and <= 100)
        {
            return number > 1 || text.EndsWith('%') ? number / 100.0 : number;
        }

        problems.Add(new AskedWrongly(where, $"Give a share in percent, above 0 and up to 100, not “{text}”."));
        return null;
    }
}
