using Clutchwright.Catalogue.Entries;
using Clutchwright.Desk.Words;
using Clutchwright.Genetics.Clutches;
using Clutchwright.Genetics.Numbers;

namespace Clutchwright.Desk.Crosses;

/// <summary>Makes the clutch that odds are reckoned with, from the species' biology and what the keeper says.</summary>
internal sealed class ClutchReckoning(Biology biology)
{
    /// <summary>Makes the clutch, with a sentence that says what it is.</summary>
    /// <param name="setting">What the keeper says.</param>
    /// <param name="withLaying">Whether the chance that the female lays at all belongs in it: for a season, not for a clutch that is there.</param>
    /// <param name="problems">What the keeper said that cannot be.</param>
    public (GoodEggs Eggs, string Text) Of(ClutchSetting setting, bool withLaying, List<AskedWrongly> problems)
    {
        if (setting.Eggs is < 0 or > ClutchSetting.MostEggs)
        {
            problems.Add(new("eggs", $"{setting.Eggs} is no number of eggs for a clutch. Write 0 to {ClutchSetting.MostEggs}."));
        }

        if (setting.Laid is < 0 or > ClutchSetting.MostEggs)
        {
            problems.Add(new("laid", $"{setting.Laid} is no number of eggs for a clutch. Write 0 to {ClutchSetting.MostEggs}."));
        }
        else if (setting is { Laid: not null, Eggs: not null })
        {
            problems.Add(new("laid", "Give the eggs laid or the good eggs among them, not both."));
        }

        foreach (var (name, share) in new[] { ("fertility", setting.Fertility), ("hatch-rate", setting.HatchRate) })
        {
            if (share is { } given && given is not (>= 0.0 and <= 1.0))
            {
                problems.Add(new(name, $"{given} is no share. Write a number from 0 to 1, for example 0.9."));
            }
        }

        if (problems.Count > 0)
        {
            return (GoodEggs.Exactly(0), string.Empty);
        }

        if (setting.Eggs is { } exact)
        {
            return (GoodEggs.Exactly(exact), exact == 1
                ? "1 good egg: fertile, and hatching unless its genotype forbids it."
                : $"{exact} good eggs: fertile, and hatching unless their genotype forbids it.");
        }

        var eggs = biology.Eggs;
        var number = setting.Laid is { } laid ? Exactly(laid) : Numbers(eggs);
        var laying = withLaying && biology.Laying is { } lays ? Probability.From(lays.Mean) : Probability.Certain;
        var fertility = Rate(setting.Fertility, biology.Fertility);
        var hatching = Rate(setting.HatchRate, biology.HatchRate);
        var good = GoodEggs.Of(number, laying, fertility, hatching);
        var clutch = setting.Laid is { } known
            ? $"A clutch of {known} {(known == 1 ? "egg" : "eggs")} laid"
            : $"A clutch as the species lays it: {Mean(number):0.#} eggs on average";
        var text = $"{clutch}, {fertility.Mean:0%} fertile, {hatching.Mean:0%} of those hatching"
            + (fertility.StandardDeviation > 0.0 || hatching.StandardDeviation > 0.0 ? ", more in some clutches and less in others" : string.Empty)
            + (laying.IsCertain ? string.Empty : $", and a chance of {laying.Value:0%} that she lays at all this season")
            + $" ({Wording.Grade(eggs?.Evidence ?? Genetics.Loci.Evidence.CommonPractice)}).";
        return (good, text);
    }

    // Whole numbers weighed by the normal curve within the limits.
    private static double[] Numbers(Spread? eggs)
    {
        if (eggs is null)
        {
            return [0.0, 1.0];
        }

        if (eggs.IsValue)
        {
            return Exactly((int)Math.Round(eggs.Mean));
        }

        var least = (int)Math.Max(0, eggs.Least ?? Math.Floor(eggs.Mean - (4 * eggs.Sd)));
        var most = (int)Math.Min(ClutchSetting.MostEggs, eggs.Most ?? Math.Ceiling(eggs.Mean + (4 * eggs.Sd)));
        var weights = Enumerable.Range(0, most + 1)
            .Select(n => n < least ? 0.0 : Math.Exp(-(n - eggs.Mean) * (n - eggs.Mean) / (2.0 * eggs.Sd * eggs.Sd)))
            .ToArray();
        var total = weights.Sum();
        return Array.ConvertAll(weights, w => w / total);
    }

    private static double[] Exactly(int eggs)
    {
        var number = new double[eggs + 1];
        number[eggs] = 1.0;
        return number;
    }

    private static ClutchRate Rate(double? given, Spread? known) =>
        given is { } share ? ClutchRate.Fixed(share)
        : known is null ? ClutchRate.Fixed(1.0)
        : ClutchRate.Of(known.Mean, known.Sd);

    private static double Mean(double[] number) => number.Select((p, n) => p * n).Sum();
}
