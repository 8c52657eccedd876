using Clutchwright.Desk.Incubators;
using Clutchwright.Desk.Opened;
using Clutchwright.Stock.Happenings;

namespace Clutchwright.Desk.Condition;

/// <summary>Which animals and incubators ask for a look, and which animals are due to be fed?</summary>
public sealed class ShowWatch
{
    /// <summary>Where nobody's meal was written down for so long, meals are not kept here, and none is missed.</summary>
    private const int KeptDays = 30;

    private readonly OpenBook _book;
    private readonly OpenCatalogue _catalogue;
    private readonly ListIncubators _incubators;
    private readonly TimeProvider _clock;

    internal ShowWatch(OpenBook book, OpenCatalogue catalogue, ListIncubators incubators, TimeProvider clock) =>
        (_book, _catalogue, _incubators, _clock) = (book, catalogue, incubators, clock);

    /// <summary>Looks through all animals that are kept, held back or for sale, and all incubators in use.</summary>
    public async Task<WatchAnswer> RunAsync(CancellationToken cancel)
    {
        var (all, today) = await AllAsync(cancel);
        DateOnly?[] offers = [.. all.SelectMany(a => new[] { FeedingReckoning.Last(a.Care, HappeningKind.Fed), FeedingReckoning.Last(a.Care, HappeningKind.FoodRefused) })];
        return new(
            [.. all.Where(a => a.Answer.Remarks.Count > 0)
                .OrderByDescending(a => a.Answer.Level)
                .Select(a => new WatchLine(a.Answer.Tag, a.Answer.Name, a.Answer.Sex, a.Answer.Remarks))],
            all.Count,
            all.Count(a => a.Answer.DaysSinceWeighing is null && a.Care.MassGrams is null),
            Due(all, everyone: false, today).Length,
            offers.Max(),
            IsKept(offers.Max(), today),
            [.. (await _incubators.RunAsync(cancel)).Where(i => i.Remarks.Count > 0)]);
    }

    /// <summary>Which animals are due to be fed, by the rhythm of each?</summary>
    /// <param name="everyone">Whether to give all animals of the room.</param>
    /// <param name="cancel">Stops the question.</param>
    public async Task<RoundAnswer> RoundAsync(bool everyone, CancellationToken cancel)
    {
        var (all, today) = await AllAsync(cancel);
        return new(Due(all, everyone, today), all.Count, today);
    }

    internal static bool IsKept(DateOnly? lastOffer, DateOnly today) => lastOffer is { } day && today.DayNumber - day.DayNumber <= KeptDays;

    private async Task<(IReadOnlyList<(CareRecord Care, ConditionAnswer Answer)> All, DateOnly Today)> AllAsync(CancellationToken cancel)
    {
        var today = ConditionReckoning.Today(_clock);
        var reckoning = new ConditionReckoning(_catalogue.Catalogue.Biology, today);
        var care = await ConditionReckoning.CareAsync(_book.Book, null, reckoning.Since, cancel);
        var (young, grown) = reckoning.Rhythms(care);
        var lastOffer = care.SelectMany(c => new[] { FeedingReckoning.Last(c, HappeningKind.Fed), FeedingReckoning.Last(c, HappeningKind.FoodRefused) }).Max();
        var isKept = IsKept(lastOffer, today);
        return ([.. care.Select(c => (c, reckoning.Of(c, reckoning.IsYoung(c) ? young : grown, isKept)))], today);
    }

    private static RoundAnimal[] Due(IReadOnlyList<(CareRecord Care, ConditionAnswer Answer)> all, bool everyone, DateOnly today) =>
    [
        .. all.Where(a => everyone || (a.Answer.Feeding is var f && (f.DueInDays <= 0 || (f.DaysSinceOffer is null && IsOldEnough(a.Care, today)))))
            .OrderBy(a => a.Answer.Feeding.DueInDays ?? int.MaxValue)
            .Select(a => new RoundAnimal(
                a.Answer.Tag, a.Answer.Name, a.Answer.Sex, a.Answer.Feeding.DueInDays, a.Answer.Feeding.DaysSinceMeal, a.Answer.Feeding.RefusalsInARow, a.Answer.Feeding.Fast)),
    ];

    /// <summary>A hatchling is offered food after its first shed, or where none is written down after a fortnight.</summary>
    private static bool IsOldEnough(CareRecord animal, DateOnly today) =>
        animal.Hatched is not { } hatched || animal.Last.ContainsKey(HappeningKind.Shed) || today.DayNumber - hatched.Latest.DayNumber >= 14;
}
