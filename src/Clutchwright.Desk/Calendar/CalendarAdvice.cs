using System.Globalization;
using Clutchwright.Planning.Expectations;

namespace Clutchwright.Desk.Calendar;

/// <summary>What to do about a step that is late, and what to prepare before one. All of it is common practice; none of it is treatment.</summary>
internal static class CalendarAdvice
{
    private const double LateBelow = 0.10;
    private const double OverdueBelow = 0.025;

    /// <summary>How late a step is.</summary>
    /// <param name="step">The step.</param>
    /// <param name="stillOpen">The chance that it has not happened yet if all is well.</param>
    /// <param name="isBeyondBiology">Whether the longest that biology states has passed as well.</param>
    public static CalendarLevel Level(YearStep step, double stillOpen, bool isBeyondBiology) => step switch
    {
        // Both can be missed, and a female that skips the season has neither.
        YearStep.Ovulation or YearStep.PreLayShed or YearStep.FirstShed => stillOpen < LateBelow ? CalendarLevel.Late : CalendarLevel.InTime,
        YearStep.FirstMeal => isBeyondBiology ? CalendarLevel.Overdue : stillOpen < LateBelow ? CalendarLevel.Late : CalendarLevel.InTime,
        _ => stillOpen < OverdueBelow && isBeyondBiology ? CalendarLevel.Overdue : stillOpen < LateBelow ? CalendarLevel.Late : CalendarLevel.InTime,
    };

    /// <summary>What to do; null: wait.</summary>
    /// <param name="step">The step.</param>
    /// <param name="level">How late it is.</param>
    /// <param name="figures">The species' figures.</param>
    /// <param name="isOvulated">Whether an ovulation or pre-lay shed was seen.</param>
    public static string? Of(YearStep step, CalendarLevel level, CalendarFigures figures, bool isOvulated) => (step, level) switch
    {
        (_, CalendarLevel.InTime) => null,
        (YearStep.Ovulation, _) => "An ovulation is easily missed, and a female may skip the season. Watch for the pre-lay shed, and write down what you see.",
        (YearStep.PreLayShed, _) => "It may have been missed: if she has shed, write it down with its day. Have the lay box ready.",
        (YearStep.Eggs, _) when !isOvulated => "Without an ovulation or a pre-lay shed seen she may well skip this season.",
        (YearStep.Eggs, CalendarLevel.Late) => "Later than nine in ten. Common practice: leave her quiet and warm with her lay box, and look every day. If she strains, swells or is weak, call a reptile veterinarian at once.",
        (YearStep.Eggs, _) => "Eggs can be retained. Common practice: call a reptile veterinarian now, and tell the days of the shed and of ovulation. Leave her quiet and warm until then.",
        (YearStep.Pip, CalendarLevel.Late) => "Later than nine in ten. Common practice: check the thermometer, since eggs kept cooler take longer, and leave the eggs as they lie.",
        (YearStep.Pip, _) => "Past every usual range. Common practice: check the temperature over the whole time and hold the eggs against a light; ask a reptile veterinarian, or a keeper who has done it, before you open any egg.",
        (YearStep.Hatch, _) => "A pipped egg may rest a day or two. Leave the young in the shell; if one does not come out when its siblings have, ask a reptile veterinarian.",
        (YearStep.FirstShed, _) => "If it has shed, write it down. If not, common practice is a damp hide; if old skin stays on the eyes or the tail, ask a reptile veterinarian.",
        (YearStep.FirstMeal, CalendarLevel.Late) => "Some take their time. Offer again at the usual distance, and weigh: a hatchling that loses mass should be seen by a reptile veterinarian.",
        (YearStep.FirstMeal, _) => string.Create(CultureInfo.InvariantCulture,
            $"More than {figures.MealConcernDays} days since the first shed without a meal. Common practice: call a reptile veterinarian; sooner if it loses mass."),
        _ => null,
    };

    /// <summary>What to prepare before a step, and how many days before its earliest likely day; null: nothing.</summary>
    public static (string What, int Days)? Before(YearStep step, string tag) => step switch
    {
        YearStep.Eggs => ($"Lay box for {tag}, and the incubator at its temperature with the boxes in it", 7),
        YearStep.Pip => ($"Tubs, water bowls and labels for the young of {tag}", 5),
        YearStep.FirstMeal => ($"First meals for the young of {tag}", 1),
        _ => null,
    };

    public static string Name(YearStep step) => step switch
    {
        YearStep.Ovulation => "Ovulation",
        YearStep.PreLayShed => "Pre-lay shed",
        YearStep.Eggs => "Eggs",
        YearStep.Pip => "First pip",
        YearStep.Hatch => "Young out of the egg",
        YearStep.FirstShed => "First shed",
        YearStep.FirstMeal => "First meal",
        YearStep.NextEggs => "Eggs of the season after",
        _ => "Pairing",
    };
}
