using System.Globalization;
using Clutchwright.Desk.Incubators;
using Clutchwright.Desk.Season;
using Clutchwright.Planning.Expectations;

namespace Clutchwright.Desk.Calendar;

/// <summary>Everything that is due, reckoned once for a state of the book and a day.</summary>
internal sealed class CalendarState
{
    private readonly CalendarFigures _figures;
    private readonly CalendarLearning _learning;
    private readonly CalendarWhy _why;
    private readonly DateOnly _on;
    private readonly Dictionary<YearSoFar, IReadOnlyList<DueStep>> _years;
    private readonly List<CalendarDue> _dues = [];
    private readonly List<CalendarTask> _tasks = [];

    public CalendarState(CalendarFigures figures, IReadOnlyList<FemaleSeason> seasons, IReadOnlyList<HatchlingLog> hatchlings, DateOnly on, TemperatureUnit unit, CalendarState? before, CancellationToken cancel)
    {
        (_figures, _on) = (figures, on);
        _learning = new(figures, seasons, hatchlings, on, before?._learning);
        _why = new(figures, _learning, on, unit);
        var last = seasons.GroupBy(s => s.Female).Select(g => g.Last()).Where(s => s.IsHere && s.Of(YearStep.Eggs) is not null && !_learning.Open.Contains(s)).ToArray();

        // Each female by herself; one of whom nothing new is known stays as she was.
        var known = before is not null && before._learning.Years == _learning.Years ? before._years : [];
        _years = seasons.Where(_learning.Open.Contains).Select(Year).Distinct().AsParallel().WithCancellation(cancel)
            .Select(y => (Year: y, Due: known.TryGetValue(y, out var due) ? due : YearExpectation.Of(y, _learning.Years)))
            .ToDictionary(y => y.Year, y => y.Due);
        last.AsParallel().WithCancellation(cancel).ForAll(s => _learning[CalendarFigures.NextEggs].Expect(s.Tag));
        foreach (var season in seasons.Where(_learning.Open.Contains))
        {
            cancel.ThrowIfCancellationRequested();
            Add(season);
        }

        foreach (var group in hatchlings.Where(IsYoung).GroupBy(h => (h.Dam, h.Hatched.Latest, Shed: h.FirstShed?.Latest)))
        {
            Add([.. group]);
        }

        foreach (var season in last)
        {
            AddNext(season);
        }
    }

    public IReadOnlyList<CalendarDue> Dues => _dues;

    public IReadOnlyList<CalendarTask> Tasks => _tasks;

    public IReadOnlyList<string> Doubts => _learning.Doubts;

    public IReadOnlyList<CalendarLearnt> Learnt() => [.. CalendarFigures.Intervals.Select(i =>
    {
        var (belief, days) = (_learning[i], _learning[i].Expect(null));
        return new CalendarLearnt(
            i, CalendarFigures.Words(i), _figures.Of(i).Mean, _figures.Of(i).Sd, CalendarWhy.Grade(_figures.Of(i).Evidence), _figures.Weight, belief.Completed, days.Mean, days.Sd);
    })];

    private static string Number(Guid id) => id.ToString("N", CultureInfo.InvariantCulture);

    private YearSoFar Year(FemaleSeason season)
    {
        var (pace, paceSd) = _figures.Pace(season.Celsius);
        return new YearSoFar(season.Tag, _on.DayNumber)
        {
            Paired = season.Span(YearStep.Paired, _on),
            LastLock = season.LastLock?.Latest is { } locked ? Math.Min(locked.DayNumber, _on.DayNumber) : null,
            Ovulation = season.Span(YearStep.Ovulation, _on),
            PreLayShed = season.Span(YearStep.PreLayShed, _on),
            Eggs = season.Span(YearStep.Eggs, _on),
            Pip = season.Span(YearStep.Pip, _on),
            IncubationPace = pace,
            IncubationPaceSd = paceSd,
        };
    }

    private void Add(FemaleSeason season)
    {
        var year = Year(season);
        var due = _years[year];
        var isOvulated = year.Ovulation is not null || year.PreLayShed is not null || year.Eggs is not null;
        var open = due.FirstOrDefault(d => d.Step == YearStep.Eggs)?.StillOpen ?? 1.0;
        var willLay = isOvulated ? 1.0 : _figures.Laying * open / ((_figures.Laying * open) + 1.0 - _figures.Laying);
        foreach (var step in due.Where(d => d.Step <= Last(year)))
        {
            var level = CalendarAdvice.Level(step.Step, step.StillOpen, IsBeyond(season, step.Step));
            if (step.Step == YearStep.Eggs && !isOvulated && level > CalendarLevel.Late)
            {
                level = CalendarLevel.Late;
            }

            var why = _why.Of(season, step);
            if (willLay < 1.0)
            {
                why.Add(string.Create(CultureInfo.InvariantCulture,
                    $"{_figures.Laying:P0} of paired females lay in a season ({CalendarWhy.Grade(_figures.Of("laying").Evidence)}); with what is seen so far the chance that she will is {willLay:P0}."));
            }

            var id = Id(season, step.Step);
            Add(Due(id, step, $"{CalendarAdvice.Name(step.Step)} of {season.Tag}", season.Tag, [], willLay, level, CalendarAdvice.Of(step.Step, level, _figures, isOvulated), why) with { Clutch = season.Clutch }, isOvulated ? step : null);
        }
    }

    // What lies further ahead than that is not worth a line yet.
    private static YearStep Last(YearSoFar year) =>
        year.Eggs is not null ? YearStep.Hatch : year.Ovulation is not null || year.PreLayShed is not null ? YearStep.Pip : YearStep.Eggs;

    private void Add(HatchlingLog[] young)
    {
        var (first, family) = (young[0], young[0].Dam ?? young[0].Tag);
        var span = FemaleSeason.Span(first.Hatched, _on);
        var due = YearExpectation.OfHatchling(first.Family, span, first.FirstShed is { } shed ? FemaleSeason.Span(shed, _on) : null, _on.DayNumber, _learning.Years);
        var tags = young.Select(y => y.Tag).ToArray();
        var who = tags.Length == 1 ? tags[0] : string.Create(CultureInfo.InvariantCulture, $"{tags.Length} young of {family}");
        foreach (var step in due)
        {
            var isBeyond = step.Step == YearStep.FirstMeal && first.FirstShed is { } seen && _on.DayNumber - seen.Latest.DayNumber > _figures.MealConcernDays;
            var level = CalendarAdvice.Level(step.Step, step.StillOpen, isBeyond);
            var id = string.Create(CultureInfo.InvariantCulture, $"{Lower(step.Step)}-{first.Hatched.Latest:yyyyMMdd}-{Number(first.Id.Value)}");
            Add(Due(id, step, $"{CalendarAdvice.Name(step.Step)} of {who}", family, tags, 1.0, level, CalendarAdvice.Of(step.Step, level, _figures, true), _why.Of(first, step)), step);
        }
    }

    // A season ahead is only told of once this one's young are out.
    private void AddNext(FemaleSeason season)
    {
        if (season.Of(YearStep.Eggs) is not { } laid)
        {
            return;
        }

        var step = YearExpectation.OfNextSeason(season.Tag, FemaleSeason.Span(laid, _on), _on.DayNumber, _learning.Years);
        if (step.When is not null && step.StillOpen > 0.5)
        {
            Add(Due(Id(season, step.Step), step, $"Eggs of {season.Tag}, if she lays again", season.Tag, [], _figures.Laying, CalendarLevel.InTime, null, _why.OfNext(season, step)), null);
        }
    }

    private void Add(CalendarDue due, DueStep? preparedFor)
    {
        _dues.Add(due);
        if (preparedFor is null || due.Nine is not { } nine || CalendarAdvice.Before(preparedFor.Step, due.Tag) is not var (what, days))
        {
            return;
        }

        var by = nine.From.AddDays(-days);
        _tasks.Add(new("prepare-" + due.Id, by < _on ? _on : by, what, due.Tag, due));
    }

    private static CalendarDue Due(
        string id, DueStep step, string what, string tag, IReadOnlyList<string> animals, double willHappen, CalendarLevel level, string? advice, IReadOnlyList<string> why)
    {
        var (half, nine) = (step.When?.Middle(0.5), step.When?.Middle(0.9));
        return new(
            id,
            step.Step.ToString(),
            what,
            tag,
            animals,
            step.When is null ? null : DateOnly.FromDayNumber(step.When.MostLikely),
            step.When is null ? null : DateOnly.FromDayNumber(step.When.Median),
            Days(half),
            Days(nine),
            step.StillOpen,
            willHappen,
            level,
            advice,
            why);

        static CalendarDays? Days(DaySpan? span) => span is { } known ? new(DateOnly.FromDayNumber(known.From), DateOnly.FromDayNumber(known.To)) : null;
    }

    private static string Id(FemaleSeason season, YearStep step) =>
        string.Create(CultureInfo.InvariantCulture, $"{Lower(step)}-{SeasonYear.At(season.FirstDay)}-{Number(season.Female.Value)}");

    private static string Lower(YearStep step) => step.ToString().ToLowerInvariant();

    private bool IsBeyond(FemaleSeason season, YearStep step)
    {
        var (from, most) = step switch
        {
            YearStep.Eggs when season.Of(YearStep.PreLayShed) is { } shed => (shed, _figures.Most(CalendarFigures.ShedToEggs)),
            YearStep.Eggs when season.Of(YearStep.Ovulation) is { } ovulated => (ovulated, _figures.Most(CalendarFigures.OvulationToEggs)),
            YearStep.Pip when season.Of(YearStep.Eggs) is { } laid => (laid, _figures.Most(CalendarFigures.Incubation) * _figures.Pace(season.Celsius).Pace),
            YearStep.Hatch when season.Of(YearStep.Pip) is { } pip => (pip, _figures.Most(CalendarFigures.PipToHatch)),
            _ => (null, 0.0),
        };
        return from is not null && _on.DayNumber - from.Latest.DayNumber > most;
    }

    // Hatchlings of which nothing was ever written are not waited for longer than a first shed and a first meal usually take.
    private bool IsYoung(HatchlingLog young) =>
        young.IsHere && young.FirstMeal is null
        && _on.DayNumber - young.Hatched.Latest.DayNumber <= (young.FirstShed is null
            ? _figures.Most(CalendarFigures.FirstShed) + _figures.Most(CalendarFigures.FirstMeal)
            : 120.0);
}
