using Clutchwright.Stock.History;
using Clutchwright.Stock.Storage;
using Microsoft.EntityFrameworkCore;

namespace Clutchwright.Stock.Export;

/// <summary>Every record of a book but its history, in the form in which the history keeps it and a file of the whole book has it. What is in
/// the bin or was taken back is among them.</summary>
internal sealed record BookRecords(
    IReadOnlyList<AnimalSnapshot> Animals,
    IReadOnlyList<StatementSnapshot> Statements,
    IReadOnlyList<IncubatorSnapshot> Incubators,
    IReadOnlyList<ReadingSnapshot> Readings,
    IReadOnlyList<ClutchSnapshot> Clutches,
    IReadOnlyList<HappeningSnapshot> Log,
    IReadOnlyList<PhotoRecord> Photos,
    IReadOnlyList<RouteSnapshot> Routes,
    IReadOnlyList<SeasonSnapshot> Seasons,
    IReadOnlyList<SettingSnapshot> Settings)
{
    /// <summary>How many of each kind, by the key of the JSON.</summary>
    public IReadOnlyList<KeyValuePair<string, int>> Counts =>
    [
        new("animals", Animals.Count), new("statements", Statements.Count), new("incubators", Incubators.Count), new("readings", Readings.Count),
        new("clutches", Clutches.Count), new("log", Log.Count), new("photos", Photos.Count), new("routes", Routes.Count), new("seasons", Seasons.Count),
        new("settings", Settings.Count),
    ];

    /// <summary>Reads them all, each kind in the order of its ids as text, on which no database has a say.</summary>
    public static async Task<BookRecords> LoadAsync(StockContext db, CancellationToken cancellation)
    {
        var animals = Sorted((await db.Animals.AsNoTracking().ToListAsync(cancellation)).Select(a => AnimalSnapshot.Of(a, a.PossibleSireIds)), a => a.Id);
        var photos = Sorted((await db.Photos.AsNoTracking().ToListAsync(cancellation)).Select(PhotoSnapshot.Of), p => p.Id);
        var names = PhotoNames.Of(photos, animals.ToDictionary(a => a.Id, a => a.Tag));
        return new(
            animals,
            Sorted((await db.Statements.AsNoTracking().ToListAsync(cancellation)).Select(StatementSnapshot.Of), s => s.Id),
            Sorted((await db.Incubators.AsNoTracking().ToListAsync(cancellation)).Select(IncubatorSnapshot.Of), i => i.Id),
            Sorted((await db.Readings.AsNoTracking().ToListAsync(cancellation)).Select(ReadingSnapshot.Of), r => r.Id),
            Sorted((await db.Clutches.AsNoTracking().ToListAsync(cancellation)).Select(ClutchSnapshot.Of), c => c.Id),
            Sorted((await db.Happenings.AsNoTracking().ToListAsync(cancellation)).Select(HappeningSnapshot.Of), h => h.Id),
            [.. photos.Select(p => PhotoRecord.Of(p, names[p.Digest]))],
            Sorted((await db.Routes.AsNoTracking().ToListAsync(cancellation)).Select(RouteSnapshot.Of), r => r.Id),
            Sorted((await db.Seasons.AsNoTracking().ToListAsync(cancellation)).Select(SeasonSnapshot.Of), s => s.Id),
            Sorted((await db.Settings.AsNoTracking().ToListAsync(cancellation)).Select(SettingSnapshot.Of), s => s.Id));
    }

    private static List<T> Sorted<T>(IEnumerable<T> records, Func<T, Guid> id) => [.. records.OrderBy(r => id(r).ToString(), StringComparer.Ordinal)];
}
