using System.Globalization;
using Clutchwright.Genetics.Loci;
using Clutchwright.Stock.Happenings;

namespace Clutchwright.Desk.Condition;

/// <summary>What is to be said of the figures, in calm words. No diagnosis.</summary>
internal sealed class ConditionRemarks(CareThresholds thresholds, DateOnly today)
{
    public const string Practice = "Common practice, no source.";

    // A tenth is a tenth, whatever a fraction of two doubles comes to.
    private const double Rounding = 1e-9;

    private const int HatchlingDays = 200;
    private const int GrowthFromDays = 60;

    /// <summary>The remarks, the gravest first.</summary>
    public IReadOnlyList<WatchRemark> Of(CareRecord animal, FeedingFigures feeding, MassFigures? mass, int? sinceShed, int? sinceWeighing, bool isFeedingKept) =>
        [.. new[] { Feeding(animal, feeding, sinceShed, isFeedingKept), Mass(animal, mass), Growth(mass), Weighing(animal, sinceWeighing) }
            .OfType<WatchRemark>().OrderByDescending(r => r.Level)];

    private WatchRemark? Feeding(CareRecord animal, FeedingFigures feeding, int? sinceShed, bool isFeedingKept)
    {
        if (feeding.DaysSinceMeal is null && CareThresholds.HatchDay(animal.Hatched) is { } hatched && today.DayNumber - hatched.DayNumber is >= 0 and <= HatchlingDays and var age)
        {
            return Hatchling(age, feeding, isFeedingKept);
        }

        if (feeding.DaysSinceOffer is null)
        {
            return null;
        }

        var rhythm = feeding.Rhythm;
        var isLongGap = feeding.DaysSinceMeal > rhythm.WatchDays;
        var isLongStreak = feeding.RefusalsInARow >= Math.Max(thresholds.RefusalsUsual, rhythm.RefusalsUsual + 1);
        if (!isLongGap && !isLongStreak)
        {
            return null;
        }

        var what = What(feeding);
        var source = rhythm.Basis switch
        {
            RhythmBasis.Own => $"Its own record: of its last {rhythm.Gaps} gaps between meals half are {DaysText(rhythm.UsualDays)} or less, nine in ten {DaysText(rhythm.LongDays)} or less.",
            RhythmBasis.Stock => $"Its own record is short; of the last {rhythm.Gaps.ToString("N0", CultureInfo.CurrentCulture)} gaps between meals of all animals of its age here half are {DaysText(rhythm.UsualDays)} or less, nine in ten {DaysText(rhythm.LongDays)} or less.",
            RhythmBasis.Practice => $"Too few meals are written down here; among keepers {DaysText(rhythm.UsualDays)} from meal to meal are usual and {DaysText(rhythm.LongDays)} long. {Practice}",
        };
        if (feeding.Fast is { } fast)
        {
            return new(WatchLevel.Told, "feeding", $"{what}; {fast}.", Practice);
        }

        if (!isLongStreak && feeding.RefusalsBeforeShed > 0 && sinceShed <= thresholds.DaysBeforeShed)
        {
            return new(WatchLevel.Told, "feeding", $"{what}; it refused shortly before its shed {AgoText(sinceShed!.Value)}, as pythons often do.", Practice);
        }

        var isKept = isFeedingKept || feeding.RefusalsInARow > 0;
        return new(
            isKept ? WatchLevel.Look : WatchLevel.Told,
            "feeding",
            feeding.RefusalsInARow + feeding.RefusalsBeforeShed > 0 ? $"{what}." : $"{what}, and no refusal either: perhaps it was not offered any, or that was not written down.",
            source);
    }

    private WatchRemark? Hatchling(int age, FeedingFigures feeding, bool isFeedingKept)
    {
        var refused = feeding.RefusalsInARow + feeding.RefusalsBeforeShed;
        var tried = refused > 0 ? $" It refused {TimesText(refused)}." : string.Empty;
        if (age > thresholds.FirstMealDays && (isFeedingKept || refused > 0))
        {
            return new(
                WatchLevel.AskVeterinarian,
                "feeding",
                $"Hatched {AgoText(age)}, and no meal is written down.{tried} Nearly all have eaten by {DaysText(thresholds.FirstMealDays)}: ask a reptile veterinarian.",
                Practice);
        }

        return refused == 0 && age > thresholds.FirstMealDays
            ? null
            : new(WatchLevel.Told, "feeding", $"Hatched {AgoText(age)}, before its first meal.{tried} It is offered after the first shed, and some take weeks to accept it.", Practice);
    }

    private WatchRemark? Mass(CareRecord animal, MassFigures? mass)
    {
        if (mass is null)
        {
            return null;
        }

        var peak = $"{Grams(mass.Last.Grams)} {AgoText(Math.Max(0, today.DayNumber - mass.Last.Day.DayNumber))} is {Percent(mass.LossSincePeak)} less than the {Grams(mass.Peak.Grams)} of {Day(mass.Peak.Day)}";
        const string Eggs = "Clutch: about 32 % of her mass before laying (Ellis and Chappell 1987); brooding: under 6 % (Aubret and others 2005).";
        if (mass.Unexplained < thresholds.LossToLookAt - Rounding)
        {
            return mass.NormalLoss > 0.0 && mass.LossSincePeak >= thresholds.LossToLookAt - Rounding
                ? new(WatchLevel.Told, "mass", $"{peak}; the eggs laid since explain {Percent(mass.NormalLoss)}.", Eggs)
                : null;
        }

        var beyond = mass.NormalLoss > 0.0 ? $"; the eggs laid since explain {Percent(mass.NormalLoss)}, and she is {Percent(mass.Unexplained)} below what is left" : string.Empty;
        var season = animal.Sex == Sex.Male && thresholds.IsPairingSeason(mass.Last.Day) ? " Some loss is usual in males that fast in the pairing season." : string.Empty;
        var isToAsk = mass.Unexplained >= thresholds.LossToAskAbout - Rounding;
        return new(
            isToAsk ? WatchLevel.AskVeterinarian : WatchLevel.Look,
            "mass",
            $"{peak}{beyond}.{season}{(isToAsk ? " Weigh it again, and ask a reptile veterinarian if it holds." : " Weigh it again soon; a meal or droppings make some of it.")}",
            $"{(mass.NormalLoss > 0.0 ? Eggs + " " : string.Empty)}From {Percent(thresholds.LossToLookAt)} on it is looked at, from {Percent(thresholds.LossToAskAbout)} a veterinarian is asked: common practice, no source.");
    }

    private WatchRemark? Growth(MassFigures? mass)
    {
        if (mass?.Growth is not { AgeDays: >= GrowthFromDays } growth || Math.Log(growth.Factor) >= thresholds.SlowGrowthShare * Math.Log(growth.Expected))
        {
            return null;
        }

        return new(
            WatchLevel.Look,
            "growth",
            $"{Factor(growth.Factor)} its {(growth.IsWeighed ? string.Empty : "probable ")}mass at hatching at {DaysText(growth.AgeDays)} of age; a first year of {Factor(thresholds.FirstYearFactor!.Value)} comes to {Factor(growth.Expected)} by then.",
            "Fourfold in the first year (Ellis and Chappell 1987); that less than half of that growth is looked at: common practice, no source.");
    }

    private WatchRemark? Weighing(CareRecord animal, int? sinceWeighing)
    {
        var isYoung = animal.Hatched is { } hatched && today.DayNumber - hatched.Latest.DayNumber < CareThresholds.YoungDays;
        var usual = thresholds.WeighingGap(isYoung);
        return sinceWeighing > usual
            ? new(WatchLevel.Due, "weighing", $"Last weighed {AgoText(sinceWeighing.Value)}.", $"Every {DaysText(usual)} for {(isYoung ? "one in its first year" : "a grown one")}: common practice, no source.")
            : null;
    }

    private static string What(FeedingFigures feeding)
    {
        var meal = feeding.DaysSinceMeal is { } days ? $"No meal for {DaysText(days)}" : "No meal is written down";
        return feeding.RefusalsInARow switch
        {
            0 => meal,
            1 => $"{meal}, refused once",
            _ => $"{meal}, refused {TimesText(feeding.RefusalsInARow)} in a row",
        };
    }

    private static string TimesText(int count) => count switch { 1 => "once", 2 => "twice", _ => $"{count.ToString(CultureInfo.InvariantCulture)} times" };

    private static string DaysText(int days) => days == 1 ? "1 day" : $"{days.ToString("N0", CultureInfo.CurrentCulture)} days";

    private static string AgoText(int days) => days switch { 0 => "today", 1 => "yesterday", _ => $"{DaysText(days)} ago" };

    private static string Grams(double grams) => $"{grams.ToString(grams < 100.0 ? "0.#" : "N0", CultureInfo.CurrentCulture)} g";

    private static string Percent(double share) => $"{(100.0 * share).ToString(share < 0.0995 ? "0.#" : "0", CultureInfo.CurrentCulture)} %";

    private static string Factor(double factor) => $"{factor.ToString("0.0", CultureInfo.CurrentCulture)} times";

    private static string Day(DateOnly day) => day.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);
}
