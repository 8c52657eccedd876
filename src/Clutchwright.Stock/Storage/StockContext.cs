using Clutchwright.Genetics.Loci;
using Clutchwright.Stock.Animals;
using Clutchwright.Stock.Happenings;
using Clutchwright.Stock.History;
using Clutchwright.Stock.Routes;
using Clutchwright.Stock.Seasons;
using Clutchwright.Stock.Statements;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.ChangeTracking;

namespace Clutchwright.Stock.Storage;

/// <summary>The book as EF Core sees it. Nothing is saved but through <see cref="RecordAsync"/>, so that no change is without
/// its history.</summary>
internal sealed class StockContext(DbContextOptions<StockContext> options) : DbContext(options)
{
    public DbSet<Animal> Animals => Set<Animal>();

    public DbSet<PossibleSire> PossibleSires => Set<PossibleSire>();

    public DbSet<Statement> Statements => Set<Statement>();

    public DbSet<KeptSeason> Seasons => Set<KeptSeason>();

    public DbSet<AdoptedRoute> Routes => Set<AdoptedRoute>();

    public DbSet<Happening> Happenings => Set<Happening>();

    public DbSet<Deed> Deeds => Set<Deed>();

    public DbSet<Change> Changes => Set<Change>();

    /// <summary>Saves what has been changed in this context together with its history.</summary>
    /// <returns>The deed; null if nothing had changed, and then nothing was written.</returns>
    /// <exception cref="InvalidOperationException">No transaction is open: the checks before the deed would not hold for it.</exception>
    public async Task<Deed?> RecordAsync(
        string who, string words, DateTime when, CancellationToken cancellation, DeedId? undoes = null)
    {
        if (Database.CurrentTransaction is null)
        {
            throw new InvalidOperationException("A deed is recorded inside a transaction.");
        }

        ChangeTracker.DetectChanges();
        var last = await Deeds.MaxAsync(d => (DeedId?)d.DeedId, cancellation);
        var deed = new Deed(new DeedId((last?.Number ?? 0) + 1), when, who, words, undoes);
        RecordAnimals(deed);
        Record<Statement>(
            deed, RecordKind.Statement, s => s.StatementId.Value, e => Snapshots.Write(StatementSnapshot.Original(e)), s => Snapshots.Write(StatementSnapshot.Of(s)), s => s.NewVersion());
        Record<KeptSeason>(
            deed, RecordKind.Season, s => s.KeptSeasonId.Value, e => Snapshots.Write(SeasonSnapshot.Original(e)), s => Snapshots.Write(SeasonSnapshot.Of(s)), s => s.NewVersion());
        Record<AdoptedRoute>(
            deed, RecordKind.Route, r => r.AdoptedRouteId.Value, e => Snapshots.Write(RouteSnapshot.Original(e)), r => Snapshots.Write(RouteSnapshot.Of(r)), r => r.NewVersion());
        Record<Happening>(
            deed, RecordKind.Happening, h => h.HappeningId.Value, e => Snapshots.Write(HappeningSnapshot.Original(e)), h => Snapshots.Write(HappeningSnapshot.Of(h)), h => h.NewVersion());
        if (deed.Changes.Count == 0)
        {
            return null;
        }

        Deeds.Add(deed);
        await base.SaveChangesAsync(acceptAllChangesOnSuccess: true, cancellation);
        return deed;
    }

    public override int SaveChanges(bool acceptAllChangesOnSuccess) => throw Bypassed();

    public override Task<int> SaveChangesAsync(bool acceptAllChangesOnSuccess, CancellationToken cancellationToken = default) =>
        throw Bypassed();

    protected override void ConfigureConventions(ModelConfigurationBuilder configurationBuilder)
    {
        configurationBuilder.Properties<DateTime>().HaveConversion<UtcConverter>();
        configurationBuilder.Properties<AnimalId>().HaveConversion<AnimalIdConverter>();
        configurationBuilder.Properties<StatementId>().HaveConversion<StatementIdConverter>();
        configurationBuilder.Properties<KeptSeasonId>().HaveConversion<KeptSeasonIdConverter>();
        configurationBuilder.Properties<AdoptedRouteId>().HaveConversion<AdoptedRouteIdConverter>();
        configurationBuilder.Properties<HappeningId>().HaveConversion<HappeningIdConverter>();
        configurationBuilder.Properties<HappeningKind>().HaveConversion<string>().HaveMaxLength(20);
        configurationBuilder.Properties<RouteEnding>().HaveConversion<string>().HaveMaxLength(20);
        configurationBuilder.Properties<DeedId>().HaveConversion<DeedIdConverter>();
        configurationBuilder.Properties<Sex>().HaveConversion<string>().HaveMaxLength(20);
        configurationBuilder.Properties<AnimalStatus>().HaveConversion<string>().HaveMaxLength(20);
        configurationBuilder.Properties<StatementKind>().HaveConversion<string>().HaveMaxLength(20);
        configurationBuilder.Properties<RecordKind>().HaveConversion<string>().HaveMaxLength(20);
    }

    protected override void OnModelCreating(ModelBuilder modelBuilder)
    {
        modelBuilder.ApplyConfigurationsFromAssembly(typeof(StockContext).Assembly);
        if (Database.IsNpgsql())
        {
            PostgreSqlStore.CompareTextByItsCodes(modelBuilder.Model);
        }
    }

    private static InvalidOperationException Bypassed() =>
        new("Changes are saved by RecordAsync, together with their history.");

    private void RecordAnimals(Deed deed)
    {
        var sires = ChangeTracker.Entries<PossibleSire>().ToList();
        var siresChanged = sires.Where(IsChanged).Select(p => p.Entity.OffspringId).ToHashSet();
        foreach (var entry in ChangeTracker.Entries<Animal>().Where(a => IsChanged(a) || siresChanged.Contains(a.Entity.AnimalId)).ToList())
        {
            var own = sires.Where(p => p.Entity.OffspringId == entry.Entity.AnimalId).ToList();
            var before = entry.State == EntityState.Added
                ? null
                : Snapshots.Write(AnimalSnapshot.Original(
                    entry, own.Where(p => p.State != EntityState.Added).Select(p => p.Entity.SireId)));
            var after = entry.State == EntityState.Deleted
                ? null
                : Snapshots.Write(AnimalSnapshot.Of(
                    entry.Entity, own.Where(p => p.State != EntityState.Deleted).Select(p => p.Entity.SireId)));
            if (!string.Equals(before, after, StringComparison.Ordinal))
            {
                deed.Add(RecordKind.Animal, entry.Entity.AnimalId.Value, entry.Entity.Tag, before, after);
                entry.Entity.NewVersion();
            }
        }
    }

    private void Record<T>(
        Deed deed, RecordKind kind, Func<T, Guid> id, Func<EntityEntry<T>, string> original, Func<T, string> current, Action<T> newVersion)
        where T : class
    {
        foreach (var entry in ChangeTracker.Entries<T>().Where(IsChanged).ToList())
        {
            var before = entry.State == EntityState.Added ? null : original(entry);
            var after = entry.State == EntityState.Deleted ? null : current(entry.Entity);
            if (!string.Equals(before, after, StringComparison.Ordinal))
            {
                deed.Add(kind, id(entry.Entity), entry.Entity.ToString()!, before, after);
                newVersion(entry.Entity);
            }
        }
    }

    private static bool IsChanged(EntityEntry entry) =>
        entry.State is EntityState.Added or EntityState.Modified or EntityState.Deleted;
}
