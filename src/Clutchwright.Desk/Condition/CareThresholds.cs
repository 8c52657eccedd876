using Clutchwright.Catalogue.Entries;
using Clutchwright.Genetics.Loci;
using Clutchwright.Stock.Animals;

namespace Clutchwright.Desk.Condition;

/// <summary>What the species' biology says of care; where it says nothing, nothing is held against an animal.</summary>
internal sealed class CareThresholds(Biology biology)
{
    public const int YoungDays = 365;

    /// <summary>The day of hatching, where it is known to a month; null: an age in days would say too much.</summary>
    public static DateOnly? HatchDay(DateRange? hatched) => hatched is { } range && range.Latest.DayNumber - range.Earliest.DayNumber <= 31 ? range.Latest : null;

    /// <summary>Gaps between meals as keepers keep them.</summary>
    public FeedingRhythm Practice(bool isYoung)
    {
        var gap = biology.Find(isYoung ? "meal-gap-days-young" : "meal-gap-days-grown");
        return new((int)(gap?.Mean ?? 14.0), (int)(gap?.Most ?? gap?.Mean ?? 28.0), RefusalsUsual - 1, 0, RhythmBasis.Practice);
    }

    /// <summary>From so many refusals in a row on an animal is looked at.</summary>
    public int RefusalsUsual => (int)(biology.Find("refusals-until-watched")?.Mean ?? 4.0);

    public int DaysBeforeShed => (int)(biology.Find("refusal-before-shed-days")?.Mean ?? 14.0);

    /// <summary>By this age a hatchling has taken its first meal.</summary>
    public int FirstMealDays => Most("first-meal-age-days") is { } days ? (int)days : 45;

    public int FirstShedDays => Most("first-shed-days") is { } days ? (int)days : 14;

    public int WeighingGap(bool isYoung) => (int)(biology.Find(isYoung ? "weighing-gap-days-young" : "weighing-gap-days-grown")?.Mean ?? (isYoung ? 31.0 : 92.0));

    public double LossToLookAt => biology.Find("mass-loss-looked-at-share")?.Mean ?? 0.1;

    public double LossToAskAbout => biology.Find("mass-loss-asked-about-share")?.Mean ?? 0.15;

    public double ClutchShare => biology.Find("clutch-mass-share")?.Mean ?? 0.0;

    public double BroodingShare => biology.Find("brooding-mass-loss-share")?.Mean ?? 0.0;

    public double? FirstYearFactor => biology.Find("first-year-mass-factor")?.Mean;

    public double? HatchGrams => biology.Find("hatchling-mass-grams")?.Mean;

    public double SlowGrowthShare => biology.Find("slow-growth-share")?.Mean ?? 0.5;

    public double FollicleMillimetres => biology.Find("fasting-follicle-mm")?.Mean ?? 20.0;

    public int OvulationToEggs => Most("ovulation-to-eggs-days") is { } days ? (int)days : 55;

    public int ShedToEggs => Most("prelay-shed-to-eggs-days") is { } days ? (int)days : 35;

    public int IncubationDays => Most("incubation-days") is { } days ? (int)days : 70;

    /// <summary>The least mass at which a sex breeds; <c>null</c>: not stated.</summary>
    public double? BreedingGrams(Sex sex) =>
        biology.Find(sex == Sex.Male ? "male-breeding-mass-grams" : "female-breeding-mass-grams") is { } mass ? mass.Least ?? mass.Mean : null;

    public double? MaleBreedingMonths => biology.MaleBreedingAgeMonths is { } age ? age.Least ?? age.Mean : null;

    /// <summary>Whether a day lies in the months of pairing.</summary>
    public bool IsPairingSeason(DateOnly day) =>
        biology.Find("pairing-first-month") is { } first && biology.Find("pairing-last-month") is { } last
        && (first.Mean <= last.Mean ? day.Month >= first.Mean && day.Month <= last.Mean : day.Month >= first.Mean || day.Month <= last.Mean);

    private double? Most(string name) => biology.Find(name) is { } figure ? figure.Most ?? figure.Mean : null;
}
