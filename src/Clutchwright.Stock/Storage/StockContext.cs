using Clutchwright.Genetics.Loci;
using Clutchwright.Stock.Animals;
using Clutchwright.Stock.Clutches;
using Clutchwright.Stock.Happenings;
using Clutchwright.Stock.History;
using Clutchwright.Stock.Incubators;
using Clutchwright.Stock.Photos;
using Clutchwright.Stock.Routes;
using Clutchwright.Stock.Seasons;
using Clutchwright.Stock.Settings;
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

    public DbSet<Clutch> Clutches => Set<Clutch>();

    public DbSet<Incubator> Incubators => Set<Incubator>();

    public DbSet<Reading> Readings => Set<Reading>();

    public DbSet<Photo> Photos => Set<Photo>();

    public DbSet<PhotoContent> PhotoContents => Set<PhotoContent>();

    public DbSet<KeptSetting> Settings => Set<KeptSetting>();

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
        foreach (var form in RecordForms.All)
        {
            form.AddChanges(this, deed);
        }

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
        configurationBuilder.Properties<ClutchId>().HaveConversion<ClutchIdConverter>();
        configurationBuilder.Properties<IncubatorId>().HaveConversion<IncubatorIdConverter>();
        configurationBuilder.Properties<ReadingId>().HaveConversion<ReadingIdConverter>();
        configurationBuilder.Properties<PhotoId>().HaveConversion<PhotoIdConverter>();
        configurationBuilder.Properties<SettingId>().HaveConversion<SettingIdConverter>();
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
}
