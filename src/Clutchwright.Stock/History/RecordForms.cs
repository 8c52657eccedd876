using Clutchwright.Stock.Clutches;
using Clutchwright.Stock.Happenings;
using Clutchwright.Stock.Incubators;
using Clutchwright.Stock.Photos;
using Clutchwright.Stock.Routes;
using Clutchwright.Stock.Seasons;
using Clutchwright.Stock.Settings;
using Clutchwright.Stock.Statements;

namespace Clutchwright.Stock.History;

/// <summary>Every kind of record, with the form in which the history keeps it.</summary>
internal static class RecordForms
{
    /// <summary>Gets all of them, a record before those it names: in this order they go into a deed and come back, in the other they go.</summary>
    public static IReadOnlyList<RecordForm> All { get; } =
    [
        new AnimalForm(),
        new RecordForm<Statement, StatementSnapshot>(RecordKind.Statement)
        {
            Id = s => s.StatementId.Value,
            Among = (db, ids) => Typed(ids, id => new StatementId(id)) is var typed ? db.Statements.Where(s => typed.Contains(s.StatementId)) : throw new InvalidOperationException(),
            Original = StatementSnapshot.Original,
            Of = StatementSnapshot.Of,
            Make = s => new(s),
            Take = (statement, s) => statement.Take(s),
            NewVersion = s => s.NewVersion(),
        },
        new RecordForm<KeptSeason, SeasonSnapshot>(RecordKind.Season)
        {
            Id = s => s.KeptSeasonId.Value,
            Among = (db, ids) => Typed(ids, id => new KeptSeasonId(id)) is var typed ? db.Seasons.Where(s => typed.Contains(s.KeptSeasonId)) : throw new InvalidOperationException(),
            Original = SeasonSnapshot.Original,
            Of = SeasonSnapshot.Of,
            Make = s => new(s),
            Take = (season, s) => season.Take(s),
            NewVersion = s => s.NewVersion(),
        },
        new RecordForm<AdoptedRoute, RouteSnapshot>(RecordKind.Route)
        {
            Id = r => r.AdoptedRouteId.Value,
            Among = (db, ids) => Typed(ids, id => new AdoptedRouteId(id)) is var typed ? db.Routes.Where(r => typed.Contains(r.AdoptedRouteId)) : throw new InvalidOperationException(),
            Original = RouteSnapshot.Original,
            Of = RouteSnapshot.Of,
            Make = s => new(s),
            Take = (route, s) => route.Take(s),
            NewVersion = r => r.NewVersion(),
        },
        new RecordForm<Incubator, IncubatorSnapshot>(RecordKind.Incubator)
        {
            Id = i => i.IncubatorId.Value,
            Among = (db, ids) => Typed(ids, id => new IncubatorId(id)) is var typed ? db.Incubators.Where(i => typed.Contains(i.IncubatorId)) : throw new InvalidOperationException(),
            Original = IncubatorSnapshot.Original,
            Of = IncubatorSnapshot.Of,
            Make = s => new(s),
            Take = (incubator, s) => incubator.Take(s),
            NewVersion = i => i.NewVersion(),
        },
        new RecordForm<Clutch, ClutchSnapshot>(RecordKind.Clutch)
        {
            Id = c => c.ClutchId.Value,
            Among = (db, ids) => Typed(ids, id => new ClutchId(id)) is var typed ? db.Clutches.Where(c => typed.Contains(c.ClutchId)) : throw new InvalidOperationException(),
            Original = ClutchSnapshot.Original,
            Of = ClutchSnapshot.Of,
            Make = s => new(s),
            Take = (clutch, s) => clutch.Take(s),
            NewVersion = c => c.NewVersion(),
        },
        new RecordForm<Happening, HappeningSnapshot>(RecordKind.Happening)
        {
            Id = h => h.HappeningId.Value,
            Among = (db, ids) => Typed(ids, id => new HappeningId(id)) is var typed ? db.Happenings.Where(h => typed.Contains(h.HappeningId)) : throw new InvalidOperationException(),
            Original = HappeningSnapshot.Original,
            Of = HappeningSnapshot.Of,
            Make = s => new(s),
            Take = (happening, s) => happening.Take(s),
            NewVersion = h => h.NewVersion(),
        },
        new RecordForm<Reading, ReadingSnapshot>(RecordKind.Reading)
        {
            Id = r => r.ReadingId.Value,
            Among = (db, ids) => Typed(ids, id => new ReadingId(id)) is var typed ? db.Readings.Where(r => typed.Contains(r.ReadingId)) : throw new InvalidOperationException(),
            Original = ReadingSnapshot.Original,
            Of = ReadingSnapshot.Of,
            Make = s => new(s),
            Take = (reading, s) => reading.Take(s),
            NewVersion = r => r.NewVersion(),
        },
        new RecordForm<Photo, PhotoSnapshot>(RecordKind.Photo)
        {
            Id = p => p.PhotoId.Value,
            Among = (db, ids) => Typed(ids, id => new PhotoId(id)) is var typed ? db.Photos.Where(p => typed.Contains(p.PhotoId)) : throw new InvalidOperationException(),
            Original = PhotoSnapshot.Original,
            Of = PhotoSnapshot.Of,
            Make = s => new(s),
            Take = (photo, s) => photo.Take(s),
            NewVersion = p => p.NewVersion(),
        },
        new RecordForm<KeptSetting, SettingSnapshot>(RecordKind.Setting)
        {
            Id = s => s.SettingId.Value,
            Among = (db, ids) => Typed(ids, id => new SettingId(id)) is var typed ? db.Settings.Where(s => typed.Contains(s.SettingId)) : throw new InvalidOperationException(),
            Original = SettingSnapshot.Original,
            Of = SettingSnapshot.Of,
            Make = s => new(s),
            Take = (setting, s) => setting.Take(s),
            NewVersion = s => s.NewVersion(),
        },
    ];

    private static readonly Dictionary<RecordKind, RecordForm> ByKind = All.ToDictionary(form => form.Kind);

    public static RecordForm Of(RecordKind kind) => ByKind[kind];

    private static T[] Typed<T>(Guid[] ids, Func<Guid, T> type) => [.. ids.Select(type)];
}
