using Clutchwright.Stock.Animals;
using Clutchwright.Stock.Happenings;
using Clutchwright.Stock.Routes;
using Clutchwright.Stock.Seasons;
using Clutchwright.Stock.Statements;
using Clutchwright.Stock.Storage;
using Microsoft.EntityFrameworkCore;

namespace Clutchwright.Stock.History;

/// <summary>The records that a deed changed, as they are now.</summary>
internal sealed class CurrentRecords
{
    /// <summary>Few enough for one query on every database.</summary>
    private const int IdsAtOnce = 500;

    private readonly Dictionary<Guid, Animal> _animals = [];
    private readonly Dictionary<Guid, Statement> _statements = [];
    private readonly Dictionary<Guid, KeptSeason> _seasons = [];
    private readonly Dictionary<Guid, AdoptedRoute> _routes = [];
    private readonly Dictionary<Guid, Happening> _happenings = [];

    public IEnumerable<Animal> AnimalsOutOfBin => _animals.Values.Where(animal => animal.BinnedAt is null);

    public static async Task<CurrentRecords> LoadAsync(StockContext db, IReadOnlyList<Change> changes, CancellationToken cancellation)
    {
        var records = new CurrentRecords();
        foreach (var ids in changes.Where(c => c.Kind == RecordKind.Animal).Select(c => new AnimalId(c.RecordId)).Chunk(IdsAtOnce))
        {
            foreach (var animal in await db.Animals.Where(a => ids.Contains(a.AnimalId)).ToListAsync(cancellation))
            {
                records._animals.Add(animal.AnimalId.Value, animal);
            }
        }

        foreach (var ids in changes.Where(c => c.Kind == RecordKind.Statement).Select(c => new StatementId(c.RecordId)).Chunk(IdsAtOnce))
        {
            foreach (var statement in await db.Statements.Where(s => ids.Contains(s.StatementId)).ToListAsync(cancellation))
            {
                records._statements.Add(statement.StatementId.Value, statement);
            }
        }

        // A deed changes few seasons and routes.
        var seasons = changes.Where(c => c.Kind == RecordKind.Season).Select(c => new KeptSeasonId(c.RecordId)).ToArray();
        foreach (var season in seasons.Length == 0 ? [] : await db.Seasons.Where(s => seasons.Contains(s.KeptSeasonId)).ToListAsync(cancellation))
        {
            records._seasons.Add(season.KeptSeasonId.Value, season);
        }

        var routes = changes.Where(c => c.Kind == RecordKind.Route).Select(c => new AdoptedRouteId(c.RecordId)).ToArray();
        foreach (var route in routes.Length == 0 ? [] : await db.Routes.Where(r => routes.Contains(r.AdoptedRouteId)).ToListAsync(cancellation))
        {
            records._routes.Add(route.AdoptedRouteId.Value, route);
        }

        foreach (var ids in changes.Where(c => c.Kind == RecordKind.Happening).Select(c => new HappeningId(c.RecordId)).Chunk(IdsAtOnce))
        {
            foreach (var happening in await db.Happenings.Where(h => ids.Contains(h.HappeningId)).ToListAsync(cancellation))
            {
                records._happenings.Add(happening.HappeningId.Value, happening);
            }
        }

        return records;
    }

    /// <summary>The record's state as JSON; null if there is no such record.</summary>
    public string? StateOf(Change change) => change.Kind switch
    {
        RecordKind.Animal => _animals.TryGetValue(change.RecordId, out var animal)
            ? Snapshots.Write(AnimalSnapshot.Of(animal, animal.PossibleSireIds))
            : null,
        RecordKind.Statement => _statements.TryGetValue(change.RecordId, out var statement)
            ? Snapshots.Write(StatementSnapshot.Of(statement))
            : null,
        RecordKind.Season => _seasons.TryGetValue(change.RecordId, out var season) ? Snapshots.Write(SeasonSnapshot.Of(season)) : null,
        RecordKind.Happening => _happenings.TryGetValue(change.RecordId, out var happening) ? Snapshots.Write(HappeningSnapshot.Of(happening)) : null,
        RecordKind.Route => _routes.TryGetValue(change.RecordId, out var route) ? Snapshots.Write(RouteSnapshot.Of(route)) : null,
    };

    /// <summary>Brings the records to their state before the changes, in the context only.</summary>
    public void PutBack(StockContext db, IReadOnlyList<Change> changes)
    {
        // What is said of an animal, or happened to it, goes before it does, and comes after it.
        var statements = changes.Where(c => c.Kind == RecordKind.Statement).ToLookup(c => c.Before is null);
        var happenings = changes.Where(c => c.Kind == RecordKind.Happening).ToLookup(c => c.Before is null);
        foreach (var going in happenings[true])
        {
            PutBack<Happening, HappeningSnapshot>(db, going, _happenings, s => new(s), (happening, s) => happening.Take(s));
        }

        foreach (var going in statements[true])
        {
            PutBack<Statement, StatementSnapshot>(db, going, _statements, s => new(s), (statement, s) => statement.Take(s));
        }

        // A possible sire can go only after it is named no more.
        var animals = changes.Where(c => c.Kind == RecordKind.Animal).ToList();
        db.PossibleSires.RemoveRange(animals.Where(c => c.Before is null).SelectMany(c => _animals[c.RecordId].PossibleSires).ToList());
        foreach (var animal in animals)
        {
            PutBackAnimal(db, animal);
        }

        foreach (var coming in happenings[false])
        {
            PutBack<Happening, HappeningSnapshot>(db, coming, _happenings, s => new(s), (happening, s) => happening.Take(s));
        }

        foreach (var coming in statements[false])
        {
            PutBack<Statement, StatementSnapshot>(db, coming, _statements, s => new(s), (statement, s) => statement.Take(s));
        }

        foreach (var change in changes.Where(c => c.Kind == RecordKind.Season))
        {
            PutBack<KeptSeason, SeasonSnapshot>(db, change, _seasons, s => new(s), (season, s) => season.Take(s));
        }

        foreach (var change in changes.Where(c => c.Kind == RecordKind.Route))
        {
            PutBack<AdoptedRoute, RouteSnapshot>(db, change, _routes, s => new(s), (route, s) => route.Take(s));
        }
    }

    private void PutBackAnimal(StockContext db, Change change)
    {
        if (change.Before is null)
        {
            db.Animals.Remove(_animals[change.RecordId]);
            _animals.Remove(change.RecordId);
            return;
        }

        if (!_animals.TryGetValue(change.RecordId, out var animal))
        {
            animal = new Animal(new AnimalId(change.RecordId));
            _animals.Add(change.RecordId, animal);
            animal.Take(Snapshots.Read<AnimalSnapshot>(change.Before));
            db.Animals.Add(animal);
            return;
        }

        animal.Take(Snapshots.Read<AnimalSnapshot>(change.Before));
    }

    private static void PutBack<T, TSnapshot>(
        StockContext db, Change change, Dictionary<Guid, T> known, Func<TSnapshot, T> make, Action<T, TSnapshot> take)
        where T : class
    {
        if (change.Before is null)
        {
            db.Remove(known[change.RecordId]);
            known.Remove(change.RecordId);
        }
        else if (known.TryGetValue(change.RecordId, out var record))
        {
            take(record, Snapshots.Read<TSnapshot>(change.Before));
        }
        else
        {
            db.Add(make(Snapshots.Read<TSnapshot>(change.Before)));
        }
    }
}
