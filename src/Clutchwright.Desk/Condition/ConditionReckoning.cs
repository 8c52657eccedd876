using Clutchwright.Catalogue.Entries;
using Clutchwright.Stock.Animals;
using Clutchwright.Stock.Happenings;
using Clutchwright.Stock.Storage;

namespace Clutchwright.Desk.Condition;

/// <summary>Reckons the figures of animals on one day.</summary>
internal sealed class ConditionReckoning
{
    private readonly DateOnly _today;
    private readonly FeedingReckoning _feeding;
    private readonly MassReckoning _mass;
    private readonly ConditionRemarks _remarks;

    public ConditionReckoning(Biology biology, DateOnly today)
    {
        var thresholds = new CareThresholds(biology);
        _today = today;
        _feeding = new(thresholds, today);
        _mass = new(thresholds, today);
        _remarks = new(thresholds, today);
    }

    /// <summary>The day from which on the whole stock's entries are looked at.</summary>
    public DateOnly Since => _today.AddDays(-FeedingReckoning.Days);

    public static DateOnly Today(TimeProvider clock) => DateOnly.FromDateTime(clock.GetLocalNow().DateTime);

    public static async Task<IReadOnlyList<CareRecord>> CareAsync(Book book, AnimalId? animal, DateOnly since, CancellationToken cancel) =>
        (await new ListCare(book).RunAsync(animal, since, cancel)).Expect();

    /// <summary>The gaps of all animals of an age together; a rhythm is null where there are too few.</summary>
    public (FeedingRhythm? Young, FeedingRhythm? Grown) Rhythms(IReadOnlyList<CareRecord> stock)
    {
        var byAge = stock.ToLookup(_feeding.IsYoung);
        return (Of(byAge[true]), Of(byAge[false]));

        FeedingRhythm? Of(IEnumerable<CareRecord> animals) => FeedingRhythm.Of([.. animals.SelectMany(_feeding.Gaps)], FeedingRhythm.StockGaps, RhythmBasis.Stock);
    }

    public bool IsYoung(CareRecord animal) => _feeding.IsYoung(animal);

    public bool HasOwnRhythm(CareRecord animal) => _feeding.Gaps(animal).Count >= FeedingRhythm.OwnGaps;

    /// <param name="animal">What is written down of it.</param>
    /// <param name="stock">The rhythm of its age in the stock; null: none.</param>
    /// <param name="isFeedingKept">Whether meals are written down here at all, of any animal, lately.</param>
    public ConditionAnswer Of(CareRecord animal, FeedingRhythm? stock, bool isFeedingKept)
    {
        var feeding = _feeding.Of(animal, stock);
        var mass = _mass.Of(animal);
        var shed = _feeding.Since(FeedingReckoning.Last(animal, HappeningKind.Shed));
        var weighed = _feeding.Since(FeedingReckoning.Last(animal, HappeningKind.Weighed));
        return new(
            animal.Tag,
            animal.Name,
            animal.Sex,
            feeding,
            mass,
            shed,
            weighed,
            _mass.Aim(animal, mass),
            _remarks.Of(animal, feeding, mass, shed, weighed, isFeedingKept),
            MassReckoning.Weighings(animal),
            [.. animal.Events.Select(Mark).OfType<CareMark>().Concat(animal.Clutches.Select(c => new CareMark(c.Laid, "laid", null))).OrderBy(m => m.Day)],
            _today);
    }

    private static CareMark? Mark(CareEvent entry) => entry.Kind switch
    {
        HappeningKind.Fed => new(entry.Day, "meal", entry.Amount),
        HappeningKind.FoodRefused => new(entry.Day, "refused", null),
        HappeningKind.Shed or HappeningKind.PreLayShed => new(entry.Day, "shed", null),
        _ => null,
    };
}
