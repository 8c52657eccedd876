using Clutchwright.Desk.Animals;
using Clutchwright.Desk.Incubators;
using Clutchwright.Desk.Opened;
using Clutchwright.Desk.Words;
using Clutchwright.Stock.Animals;
using Clutchwright.Stock.Happenings;

namespace Clutchwright.Desk.Calendar;

/// <summary>What is due when, what is late, and what is to be prepared?</summary>
public sealed class ShowCalendar : IDisposable
{
    /// <summary>The days told of when nothing else is asked.</summary>
    public const int UsualDays = 120;

    /// <summary>The most days that can be asked for.</summary>
    public const int MostDays = 1_000;

    private const int MostLines = 50_000;

    private readonly OpenCatalogue _catalogue;
    private readonly OpenBook _book;
    private readonly ListDeeds _deeds;
    private readonly TimeProvider _clock;
    private readonly SemaphoreSlim _turn = new(1, 1);
    private readonly EggWarmth _warmth;
    private volatile Kept? _kept;

    internal ShowCalendar(OpenCatalogue catalogue, OpenBook book, ListDeeds deeds, TimeProvider clock) =>
        (_catalogue, _book, _deeds, _clock, _warmth) = (catalogue, book, deeds, clock, new(book));

    /// <inheritdoc/>
    public void Dispose() => _turn.Dispose();

    /// <summary>Answers.</summary>
    /// <param name="from">The first day told of; <c>null</c>: today. If it is past, it is reckoned as on that day: what was written of later days has
    /// no part in it.</param>
    /// <param name="days">How many days are told of, from 1 to <see cref="MostDays"/>.</param>
    /// <param name="asOnThatDay">Whether a past <paramref name="from"/> is the day it is reckoned on, or only the first day told of.</param>
    /// <param name="cancel">Stops the question.</param>
    public async Task<Answer<CalendarAnswer>> RunAsync(DateOnly? from, int days, bool asOnThatDay, CancellationToken cancel)
    {
        if (days is < 1 or > MostDays)
        {
            return new AskedWrongly("days", $"{days} days cannot be told of: 1 to {MostDays}.");
        }

        var today = DateOnly.FromDateTime(_clock.GetLocalNow().DateTime);
        var first = from ?? today;
        if (first < new DateOnly(1900, 1, 1) || first > today.AddYears(5))
        {
            return new AskedWrongly("from", $"{first:yyyy-MM-dd} is too far away: at most five years from now.");
        }

        var figures = new CalendarFigures(_catalogue.Catalogue.Biology);
        if (figures.Missing.Count > 0)
        {
            return new AskedWrongly("catalogue", $"The species data state no {string.Join(", ", figures.Missing)}: the calendar cannot be reckoned without.");
        }

        var on = asOnThatDay && first < today ? first : today;
        var last = first.AddDays(days - 1);
        var kept = await ReadAsync(figures, on, cancel);
        var late = kept.State.Dues.Where(d => d.Level > CalendarLevel.InTime).OrderByDescending(d => d.Level).ThenBy(d => d.StillOpen).ThenBy(d => d.Tag, StringComparer.Ordinal).ToArray();
        return new CalendarAnswer(
            on,
            first,
            last,
            late,
            [.. kept.State.Dues.Where(d => d.Level == CalendarLevel.InTime && d.Nine is { } nine && nine.From <= last && nine.To >= first).OrderBy(d => d.Likely).ThenBy(d => d.What, StringComparer.Ordinal)],
            [.. kept.State.Tasks.Where(t => t.By >= first && t.By <= last).OrderBy(t => t.By).ThenBy(t => t.What, StringComparer.Ordinal)],
            [.. kept.Past.Where(p => p.Day >= first && p.Day <= last && p.Day <= on)],
            kept.State.Learnt(),
            kept.State.Doubts,
            kept.Deed + on.DayNumber - new DateOnly(2020, 1, 1).DayNumber,
            kept.ChangedAt);
    }

    private async Task<Kept> ReadAsync(CalendarFigures figures, DateOnly on, CancellationToken cancel)
    {
        // Whoever asks meanwhile waits for the same answer.
        await _turn.WaitAsync(cancel);
        try
        {
            return await ReckonAsync(figures, on, cancel);
        }
        finally
        {
            _turn.Release();
        }
    }

    private async Task<Kept> ReckonAsync(CalendarFigures figures, DateOnly on, CancellationToken cancel)
    {
        var deed = await _deeds.RunAsync(null, 1, cancel) is [var last, ..] ? last : null;
        if (_kept is { } kept && kept.Deed == (deed?.Id ?? 0) && kept.ChangedAt == deed?.When && kept.On == on)
        {
            return kept;
        }

        var before = _kept;
        var stock = await StockAsync(before, cancel);
        var ask = new Stock.Happenings.ListHappenings(_book.Book);
        var lines = (await ask.RunAsync(null, SeasonEvent.Kinds, MostLines, cancel)).Expect();
        var clutches = (await new Stock.Clutches.ListClutches(_book.Book).RunAsync(false, cancel)).Expect();
        var events = SeasonEvent.Of(stock.Animals, lines, clutches).ToArray();
        var firsts = (await new ListFirsts(_book.Book).RunAsync(on, HatchlingLog.MostToShedDays, cancel)).Expect();
        var seasons = SeasonsInBook.Of(stock.Animals, events, on, figures.SeasonGapDays);
        await _warmth.AddAsync(seasons, on, (int)figures.Most(CalendarFigures.Incubation), cancel);
        var unit = await new TemperatureSetting(_book, _deeds).UnitAsync(cancel);
        return _kept = new(
            deed?.Id ?? 0,
            deed?.When,
            on,
            stock,
            new(figures, seasons, HatchlingLog.Of(stock.Animals, firsts, on), on, unit, before?.State, cancel),
            [.. events.Where(e => e.When.Earliest <= on)
                .Select(e => new CalendarPast(e.When.Latest < on ? e.When.Latest : on, e.When.ToText(), e.Female.Tag, e.What))
                .OrderByDescending(p => p.Day).ThenBy(p => p.Tag, StringComparer.Ordinal)]);
    }

    private async Task<MarkedStock> StockAsync(Kept? before, CancellationToken cancel)
    {
        var mark = (await new Stock.History.LatestDeed(_book.Book).OfAnimalsAsync(cancel)).Expect();
        return before is not null && before.Stock.Mark == mark ? before.Stock : new(mark, new((await new AllAnimals(_book.Book).RunAsync(cancel)).Expect()));
    }

    private sealed record MarkedStock((Stock.History.DeedId Deed, DateTime When) Mark, CalendarStock Animals);

    private sealed record Kept(long Deed, DateTimeOffset? ChangedAt, DateOnly On, MarkedStock Stock, CalendarState State, IReadOnlyList<CalendarPast> Past);
}
