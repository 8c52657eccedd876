using System.Globalization;
using Clutchwright.Planning.Expectations;
using Clutchwright.Stock.Animals;

namespace Clutchwright.Desk.Calendar;

/// <summary>Learns the intervals of a year from the book.</summary>
internal sealed class CalendarLearning
{
    // As if so many layings had been seen before.
    private const double NoticedWeight = 6.0;

    private readonly CalendarFigures _figures;
    private readonly DateOnly _on;
    private readonly Dictionary<string, List<IntervalRecord>> _records = CalendarFigures.Intervals.ToDictionary(i => i, _ => new List<IntervalRecord>(), StringComparer.Ordinal);
    private readonly Dictionary<string, IntervalBelief> _beliefs;
    private readonly Dictionary<(string Interval, string Female), int> _completed;

    public CalendarLearning(CalendarFigures figures, IReadOnlyList<FemaleSeason> seasons, IReadOnlyList<HatchlingLog> hatchlings, DateOnly on, CalendarLearning? before)
    {
        (_figures, _on) = (figures, on);
        var open = seasons.GroupBy(s => s.Female).Select(g => g.Last()).Where(IsOpen).ToHashSet();
        foreach (var season in seasons)
        {
            Take(season, open.Contains(season));
        }

        foreach (var pair in seasons.GroupBy(s => s.Female).SelectMany(g => g.Where(s => s.Of(YearStep.Eggs) is not null).ToArray() is var laid ? laid.Zip(laid.Skip(1)) : []))
        {
            var days = pair.Second.Of(YearStep.Eggs)!.Latest.DayNumber - pair.First.Of(YearStep.Eggs)!.Earliest.DayNumber;
            if (days <= 1.5 * figures.Most(CalendarFigures.NextEggs))
            {
                // Beyond that she skipped a season, which is no long interval.
                Add(CalendarFigures.NextEggs, pair.First.Tag, pair.First.Of(YearStep.Eggs), pair.Second.Of(YearStep.Eggs), 1.0);
            }
        }

        foreach (var young in hatchlings)
        {
            Add(CalendarFigures.FirstShed, young.Family, young.Hatched, young.FirstShed, 1.0);
            Add(CalendarFigures.FirstMeal, young.Family, young.FirstShed, young.FirstMeal, 1.0);
        }

        var past = seasons.Where(s => s.Of(YearStep.Eggs) is not null && s.Seen.Count > 1).ToArray();

        // An interval of which nothing new is recorded stays as it was reckoned, with all that was asked of it.
        _beliefs = _records.AsParallel()
            .Select(r => (r.Key, Belief: before is not null && before._records[r.Key].SequenceEqual(r.Value) ? before._beliefs[r.Key] : IntervalBelief.From(figures.Prior(r.Key), r.Value)))
            .ToDictionary(r => r.Key, r => r.Belief, StringComparer.Ordinal);
        _completed = _records.SelectMany(r => r.Value.Where(i => !double.IsInfinity(i.MostDays)), (r, i) => (r.Key, i.Female)).CountBy(i => i).ToDictionary();
        Open = open;
        Years = new(
            _beliefs[CalendarFigures.PairingToOvulation],
            _beliefs[CalendarFigures.OvulationToShed],
            _beliefs[CalendarFigures.ShedToEggs],
            _beliefs[CalendarFigures.OvulationToEggs],
            _beliefs[CalendarFigures.Incubation],
            _beliefs[CalendarFigures.PipToHatch],
            _beliefs[CalendarFigures.FirstShed],
            _beliefs[CalendarFigures.FirstMeal],
            _beliefs[CalendarFigures.NextEggs],
            Noticed(figures.OvulationNoticed, past, YearStep.Ovulation),
            Noticed(figures.ShedNoticed, past, YearStep.PreLayShed));
    }

    /// <summary>The seasons that are going on.</summary>
    public IReadOnlySet<FemaleSeason> Open { get; }

    public YearIntervals Years { get; }

    /// <summary>Records that were left out.</summary>
    public List<string> Doubts { get; } = [];

    public IntervalBelief this[string interval] => _beliefs[interval];

    /// <summary>How many completed intervals of a female it was learnt from.</summary>
    public int RecordsOf(string interval, string tag) => _completed.GetValueOrDefault((interval, tag));

    private static double Noticed(double prior, FemaleSeason[] past, YearStep step) =>
        Math.Min(0.98, ((prior * NoticedWeight) + past.Count(s => s.Of(step) is not null)) / (NoticedWeight + past.Length));

    private bool IsOpen(FemaleSeason season)
    {
        var passed = _on.DayNumber - season.LastDay.DayNumber;
        return season.IsHere && !season.IsLost && season.Of(YearStep.Hatch) is null
            && passed <= (season.Of(YearStep.Eggs) is null ? _figures.SeasonGapDays : 2.0 * _figures.Most(CalendarFigures.Incubation));
    }

    private void Take(FemaleSeason season, bool isOpen)
    {
        var (paired, ovulated, shed, laid, pip, hatched) = (season.Of(YearStep.Paired), season.Of(YearStep.Ovulation), season.Of(YearStep.PreLayShed),
            season.Of(YearStep.Eggs), season.Of(YearStep.Pip), season.Of(YearStep.Hatch));
        Add(CalendarFigures.PairingToOvulation, season.Tag, paired, ovulated, 1.0);
        Add(CalendarFigures.OvulationToShed, season.Tag, ovulated, shed, 1.0);
        Add(CalendarFigures.ShedToEggs, season.Tag, shed, laid, 1.0);
        Add(CalendarFigures.OvulationToEggs, season.Tag, ovulated, laid, 1.0);
        var pace = _figures.Pace(season.Celsius).Pace;
        if (pip is not null)
        {
            Add(CalendarFigures.Incubation, season.Tag, laid, pip, pace);
            Add(CalendarFigures.PipToHatch, season.Tag, pip, hatched, 1.0);
        }
        else if (laid is not null && hatched is not null)
        {
            // The pip lies as long before the hatching as biology says it does.
            var (least, most) = ((int)_figures.Least(CalendarFigures.PipToHatch), (int)Math.Ceiling(_figures.Most(CalendarFigures.PipToHatch)));
            Add(CalendarFigures.Incubation, season.Tag, laid, new(hatched.Earliest.AddDays(-most), hatched.Latest.AddDays(-least), hatched.Words), pace);
        }

        if (!isOpen)
        {
            return;
        }

        if (laid is not null)
        {
            Run(CalendarFigures.Incubation, laid, pip ?? hatched, 0.98, pace);
        }
        else
        {
            Run(CalendarFigures.PairingToOvulation, shed is null ? paired : null, ovulated, _figures.Laying * _figures.OvulationNoticed, 1.0);
            Run(CalendarFigures.OvulationToShed, ovulated, shed, _figures.ShedNoticed, 1.0);
            Run(CalendarFigures.ShedToEggs, shed, null, 0.98, 1.0);
            Run(CalendarFigures.OvulationToEggs, ovulated, null, 0.98, 1.0);
        }

        void Run(string interval, DateRange? from, DateRange? to, double willEnd, double atPace)
        {
            if (from is not null && to is null && _on.DayNumber - from.Latest.DayNumber is > 0 and var days && days < 2.0 * _figures.Most(interval))
            {
                _records[interval].Add(IntervalRecord.Running(season.Tag, days - 0.5, willEnd) with { Pace = atPace });
            }
        }
    }

    private void Add(string interval, string female, DateRange? from, DateRange? to, double pace)
    {
        if (from is null || to is null)
        {
            return;
        }

        var (least, most) = (to.Earliest.DayNumber - from.Latest.DayNumber, to.Latest.DayNumber - from.Earliest.DayNumber);
        var middle = (least + most) / 2.0 / pace;
        if (most <= 0 || middle < _figures.Least(interval) / 2.0 || middle > 2.0 * _figures.Most(interval))
        {
            Doubts.Add(string.Create(CultureInfo.InvariantCulture,
                $"{female}: {CalendarFigures.Words(interval)} would be {(least == most ? $"{least}" : $"{least} to {most}")} days ({from.Words} to {to.Words}), where {_figures.Least(interval):0} to {_figures.Most(interval):0} are usual: nothing is learnt from it. If it is a slip, correct it in the log."));
            return;
        }

        _records[interval].Add((least == most ? IntervalRecord.Exact(female, most) : IntervalRecord.Between(female, Math.Max(0.0, least - 0.5), most + 0.5)) with { Pace = pace });
    }
}
