using System.Globalization;
using Clutchwright.Desk.Incubators;
using Clutchwright.Genetics.Loci;
using Clutchwright.Planning.Expectations;
using Clutchwright.Stock.Animals;

namespace Clutchwright.Desk.Calendar;

/// <summary>Says from what a day was reckoned.</summary>
internal sealed class CalendarWhy(CalendarFigures figures, CalendarLearning learning, DateOnly on, TemperatureUnit unit)
{
    /// <summary>The reasons for a step of a female's season.</summary>
    public List<string> Of(FemaleSeason season, DueStep due)
    {
        var why = new List<string>();
        foreach (var step in due.From.Where(s => season.Of(s) is not null))
        {
            why.Add(Seen(step, season.Of(step)!));
        }

        if (due.From.Contains(YearStep.Paired) && season.LastLock is { } locked)
        {
            why.Add($"Last lock seen: {locked.ToText()}; ovulation is taken not to be before it.");
        }

        why.AddRange(IntervalsOf(due).Select(i => Interval(i, season.Tag)));
        if (due.Step is YearStep.Pip or YearStep.Hatch && season.Celsius is { } celsius)
        {
            var (pace, sd) = figures.Pace(celsius);
            var usual = TemperatureText.Of(figures.Of("incubation-temperature-celsius").Mean, unit);
            why.Add(string.Create(CultureInfo.InvariantCulture,
                $"The eggs are kept at {TemperatureText.Of(celsius, unit)} on the mean, by the readings of their incubator: {Math.Abs(pace - 1.0):P0} {(pace >= 1.0 ? "longer" : "shorter")} than at {usual}, give or take {sd:P0}."));
        }

        AddToday(due, why);
        if (due.From.Contains(YearStep.Paired) || (due.Step == YearStep.Eggs && season.Of(YearStep.PreLayShed) is null))
        {
            why.Add(string.Create(CultureInfo.InvariantCulture,
                $"A step may have been missed: {learning.Years.OvulationNoticed:P0} of ovulations and {learning.Years.ShedNoticed:P0} of pre-lay sheds are taken to be noticed."));
        }

        return why;
    }

    /// <summary>The reasons for a step of hatchlings.</summary>
    public List<string> Of(HatchlingLog young, DueStep due)
    {
        var why = new List<string> { young.FirstShed is { } shed ? Seen(YearStep.FirstShed, shed) : Seen(YearStep.Hatch, young.Hatched) };
        if (due.Step == YearStep.FirstShed || young.FirstShed is null)
        {
            why.Add(Interval(CalendarFigures.FirstShed, young.Family));
        }

        if (due.Step == YearStep.FirstMeal)
        {
            why.Add(Interval(CalendarFigures.FirstMeal, young.Family));
        }

        AddToday(due, why);
        return why;
    }

    /// <summary>The reasons for the eggs of the season after.</summary>
    public List<string> OfNext(FemaleSeason season, DueStep due)
    {
        var why = new List<string> { Seen(YearStep.Eggs, season.Of(YearStep.Eggs)!), Interval(CalendarFigures.NextEggs, season.Tag) };
        AddToday(due, why);
        why.Add("Many females skip a season; then there is nothing to expect.");
        return why;
    }

    public static string Grade(Evidence evidence) => evidence.Grade switch
    {
        EvidenceGrade.Published => "published",
        EvidenceGrade.CommonPractice => "common practice",
        EvidenceGrade.Reported => "reported",
        _ => "disputed",
    };

    private static string Seen(YearStep step, DateRange when) =>
        $"{(step == YearStep.Hatch ? "Hatched" : CalendarAdvice.Name(step))}: {when.ToText()}.{(when.IsExact ? string.Empty : " The day is in doubt, and every day of the range counts alike.")}";

    private static IEnumerable<string> IntervalsOf(DueStep due)
    {
        if (due.From.Contains(YearStep.Paired))
        {
            yield return CalendarFigures.PairingToOvulation;
        }

        var isShedSeen = due.From.Contains(YearStep.PreLayShed);
        var isLaid = due.From.Contains(YearStep.Eggs) || due.From.Contains(YearStep.Pip);
        if (due.Step >= YearStep.PreLayShed && !isShedSeen && !isLaid)
        {
            yield return CalendarFigures.OvulationToShed;
        }

        if (due.Step >= YearStep.Eggs && !isLaid)
        {
            yield return CalendarFigures.ShedToEggs;
            if (due.From.Contains(YearStep.Ovulation) || due.From.Contains(YearStep.Paired))
            {
                yield return CalendarFigures.OvulationToEggs;
            }
        }

        if (due.Step >= YearStep.Pip && !due.From.Contains(YearStep.Pip))
        {
            yield return CalendarFigures.Incubation;
        }

        if (due.Step >= YearStep.Hatch)
        {
            yield return CalendarFigures.PipToHatch;
        }
    }

    private string Interval(string interval, string female)
    {
        var (belief, prior) = (learning[interval], figures.Of(interval));
        var days = belief.Expect(female);
        var own = learning.RecordsOf(interval, female);
        var learnt = belief.Completed == 0
            ? "your book has none yet"
            : string.Create(CultureInfo.InvariantCulture, $"{belief.Completed} in your book{(own > 0 ? $", {own} of hers," : string.Empty)} {(belief.Completed == 1 ? "makes" : "make")} it {days.Mean:0.0} ± {days.Sd:0.0}");
        return string.Create(CultureInfo.InvariantCulture,
            $"{char.ToUpperInvariant(CalendarFigures.Words(interval)[0])}{CalendarFigures.Words(interval)[1..]}: {prior.Mean:0.#} ± {prior.Sd:0.#} days ({Grade(prior.Evidence)}, weighing {figures.Weight:0.#} records); {learnt}.");
    }

    private void AddToday(DueStep due, List<string> why)
    {
        if (due.StillOpen < 0.995)
        {
            why.Add(string.Create(CultureInfo.InvariantCulture,
                $"Not seen by {on:yyyy-MM-dd}; if all is well that has a chance of {Percent(due.StillOpen)}. The days before are left out."));
        }
    }

    private static string Percent(double chance) => chance switch
    {
        < 0.001 => "less than 1 in 1000",
        < 0.01 => "less than 1 %",
        _ => string.Create(CultureInfo.InvariantCulture, $"{Math.Round(100.0 * chance):0} %"),
    };
}
