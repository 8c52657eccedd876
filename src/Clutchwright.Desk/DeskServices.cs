using Clutchwright.Catalogue;
using Clutchwright.Desk.Animals;
using Clutchwright.Desk.Calendar;
using Clutchwright.Desk.Backups;
using Clutchwright.Desk.Carry;
using Clutchwright.Desk.Charts;
using Clutchwright.Desk.Clutches;
using Clutchwright.Desk.Condition;
using Clutchwright.Desk.Crosses;
using Clutchwright.Desk.Genes;
using Clutchwright.Desk.Happenings;
using Clutchwright.Desk.Importing;
using Clutchwright.Desk.Incubators;
using Clutchwright.Desk.Kin;
using Clutchwright.Desk.Leaving;
using Clutchwright.Desk.Looks;
using Clutchwright.Desk.Opened;
using Clutchwright.Desk.Pairs;
using Clutchwright.Desk.Photos;
using Clutchwright.Desk.Proofs;
using Clutchwright.Desk.Routes;
using Clutchwright.Desk.Season;
using Clutchwright.Desk.Sheets;
using Clutchwright.Desk.Words;
using Clutchwright.Stock;
using Clutchwright.Stock.Storage;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.DependencyInjection.Extensions;

namespace Clutchwright.Desk;

/// <summary>Puts the questions of the desk at the disposal of a face.</summary>
public static class DeskServices
{
    /// <summary>Adds every question, over one catalogue folder and one book. Both are opened when first needed.</summary>
    /// <param name="services">Where they are added.</param>
    /// <param name="catalogueFolder">The species' folder.</param>
    /// <param name="dataFolder">The keeper's folder, which holds the book unless a database does.</param>
    /// <param name="database">The connection string of a PostgreSQL database that holds the book; <c>null</c>: the folder does.</param>
    /// <param name="backups">Where backups go, and when they are made; <c>null</c>: into the data folder, and none by itself.</param>
    /// <remarks>What cannot be opened is told by a <see cref="DeskClosedException"/> from the question that needed it.</remarks>
    public static IServiceCollection AddDesk(this IServiceCollection services, string catalogueFolder, string dataFolder, string? database = null, BackupSettings? backups = null)
    {
        var place = database is null ? BookPlace.InFolder(dataFolder) : BookPlace.OnPostgreSql(database);
        services.TryAddSingleton(TimeProvider.System);
        services.AddSingleton(_ => Open(catalogueFolder));
        services.AddSingleton(provider => OpenStock(place, provider.GetRequiredService<TimeProvider>()));
        services.AddSingleton(p => new StockBeliefs(p.GetRequiredService<OpenBook>(), p.GetRequiredService<OpenCatalogue>(), p.GetRequiredService<TimeProvider>()));

        services.AddSingleton(p => new AskCross(p.GetRequiredService<OpenCatalogue>(), p.GetRequiredService<StockBeliefs>()));
        services.AddSingleton(p => new RankPairs(
            p.GetRequiredService<OpenCatalogue>(), p.GetRequiredService<StockBeliefs>(), p.GetRequiredService<TimeProvider>()));
        services.AddSingleton(p => new PlanRoute(
            p.GetRequiredService<OpenCatalogue>(), () => p.GetRequiredService<StockBeliefs>(), p.GetRequiredService<TimeProvider>()));
        services.AddSingleton(p => new FindLooks(
            p.GetRequiredService<OpenCatalogue>(),
            () => database is not null || File.Exists(Path.Combine(dataFolder, Book.FileName)) ? p.GetRequiredService<StockBeliefs>() : null,
            () => p.GetRequiredService<RankPairs>())
        {
            SeasonsNeeded = p.GetRequiredService<PlanRoute>().LeastSeasonsAsync,
        });
        services.AddSingleton(p => new ShowMakings(p.GetRequiredService<OpenCatalogue>()));
        services.AddSingleton(p => new ListTones(p.GetRequiredService<OpenCatalogue>()));
        services.AddSingleton(p => new ShowCarry(p.GetRequiredService<OpenCatalogue>(), p.GetRequiredService<StockBeliefs>()));
        services.AddSingleton(p => new ShowCarryNews(p.GetRequiredService<OpenBook>(), p.GetRequiredService<StockBeliefs>()));
        services.AddSingleton(p => new ListCarry(p.GetRequiredService<OpenCatalogue>(), () => p.GetRequiredService<StockBeliefs>()));
        services.AddSingleton(p => new DrawChart(p.GetRequiredService<OpenCatalogue>(), p.GetRequiredService<StockBeliefs>()));
        services.AddSingleton(p => new AnimalSource(() => p.GetRequiredService<OpenBook>(), p.GetRequiredService<OpenCatalogue>()));
        services.AddSingleton(p => new AskKin(p.GetRequiredService<AnimalSource>()));
        services.AddSingleton(p => new ShowKinTable(p.GetRequiredService<AnimalSource>()));
        services.AddSingleton(p => new ShowRelatives(p.GetRequiredService<AnimalSource>()));
        services.AddSingleton(p => new AskMaker(p.GetRequiredService<OpenCatalogue>()));
        services.AddSingleton(p => new AskPedigreeMaker(p.GetRequiredService<OpenCatalogue>()));
        services.AddSingleton(p => new AskPedigreeMode(p.GetRequiredService<OpenCatalogue>()));
        services.AddSingleton(p => new AskTraitMode(p.GetRequiredService<OpenCatalogue>()));
        services.AddSingleton(p => new AskTestPairings(p.GetRequiredService<OpenCatalogue>(), p.GetRequiredService<StockBeliefs>()));
        services.AddSingleton(p => new PlanSeason(
            p.GetRequiredService<OpenCatalogue>(), () => p.GetRequiredService<StockBeliefs>(), p.GetRequiredService<TimeProvider>()));
        services.AddSingleton(p => new ListHappenings(p.GetRequiredService<OpenBook>()));
        services.AddSingleton(p => new ShowCondition(p.GetRequiredService<OpenBook>(), p.GetRequiredService<OpenCatalogue>(), p.GetRequiredService<TimeProvider>()));
        services.AddSingleton(p => new ShowWatch(
            p.GetRequiredService<OpenBook>(), p.GetRequiredService<OpenCatalogue>(), p.GetRequiredService<ListIncubators>(), p.GetRequiredService<TimeProvider>()));
        services.AddSingleton(p => new WriteRound(p.GetRequiredService<OpenBook>(), p.GetRequiredService<ListDeeds>(), p.GetRequiredService<TimeProvider>()));
        services.AddSingleton(p => new TemperatureSetting(p.GetRequiredService<OpenBook>(), p.GetRequiredService<ListDeeds>()));
        services.AddSingleton(p => new ListIncubators(p.GetRequiredService<OpenBook>(), p.GetRequiredService<TemperatureSetting>(), p.GetRequiredService<TimeProvider>()));
        services.AddSingleton(p => new ShowIncubator(
            p.GetRequiredService<OpenBook>(),
            p.GetRequiredService<OpenCatalogue>(),
            p.GetRequiredService<ListIncubators>(),
            p.GetRequiredService<TemperatureSetting>(),
            p.GetRequiredService<TimeProvider>()));
        services.AddSingleton(p => new WriteIncubator(
            p.GetRequiredService<OpenBook>(),
            p.GetRequiredService<ListIncubators>(),
            p.GetRequiredService<TemperatureSetting>(),
            p.GetRequiredService<ListDeeds>(),
            p.GetRequiredService<TimeProvider>()));
        services.AddSingleton(p => new TakeReadings(
            p.GetRequiredService<OpenBook>(), p.GetRequiredService<ListIncubators>(), p.GetRequiredService<TemperatureSetting>(), p.GetRequiredService<TimeProvider>()));
        services.AddSingleton(p => new WriteHappening(p.GetRequiredService<OpenBook>(), p.GetRequiredService<ListDeeds>(), p.GetRequiredService<WriteClutch>(), p.GetRequiredService<TimeProvider>()));
        services.AddSingleton(p => new AnimalPhotos(p.GetRequiredService<OpenBook>(), p.GetRequiredService<OpenCatalogue>(), p.GetRequiredService<ListDeeds>()));
        services.AddSingleton(p => new Clutches.ListClutches(p.GetRequiredService<OpenBook>(), p.GetRequiredService<TimeProvider>()));
        services.AddSingleton(p => new ShowClutch(
            p.GetRequiredService<OpenBook>(), p.GetRequiredService<StockBeliefs>(), p.GetRequiredService<HoldbackAdvice>(), p.GetRequiredService<TimeProvider>()));
        services.AddSingleton(p => new IdSchemes(p.GetRequiredService<OpenBook>(), p.GetRequiredService<ListDeeds>()));
        services.AddSingleton(p => new WriteClutch(
            p.GetRequiredService<OpenBook>(),
            p.GetRequiredService<OpenCatalogue>(),
            p.GetRequiredService<IdSchemes>(),
            p.GetRequiredService<ListDeeds>(),
            p.GetRequiredService<TimeProvider>()));
        services.AddSingleton(p => new HoldbackAdvice(p.GetRequiredService<OpenCatalogue>(), p.GetRequiredService<AdoptedRoutes>()));
        services.AddSingleton(p => new HatchDay(
            p.GetRequiredService<OpenBook>(),
            p.GetRequiredService<OpenCatalogue>(),
            p.GetRequiredService<StockBeliefs>(),
            p.GetRequiredService<IdSchemes>(),
            p.GetRequiredService<HoldbackAdvice>(),
            p.GetRequiredService<ListDeeds>(),
            p.GetRequiredService<TimeProvider>()));
        services.AddSingleton(p => new KeptSeasons(p.GetRequiredService<OpenBook>(), p.GetRequiredService<OpenCatalogue>(), p.GetRequiredService<StockBeliefs>()));
        services.AddSingleton(p => new ShowSeason(p.GetRequiredService<OpenBook>(), p.GetRequiredService<KeptSeasons>(), p.GetRequiredService<TimeProvider>()));
        services.AddSingleton(p => new KeepSeason(p.GetRequiredService<OpenBook>(), p.GetRequiredService<KeptSeasons>(), p.GetRequiredService<ListDeeds>()));
        services.AddSingleton(p => new AdoptedRoutes(
            p.GetRequiredService<OpenBook>(),
            p.GetRequiredService<OpenCatalogue>(),
            p.GetRequiredService<StockBeliefs>(),
            p.GetRequiredService<KeptSeasons>(),
            p.GetRequiredService<ListDeeds>(),
            p.GetRequiredService<TimeProvider>()));
        services.AddSingleton(p => new ShowCalendar(
            p.GetRequiredService<OpenCatalogue>(),
            p.GetRequiredService<OpenBook>(),
            p.GetRequiredService<ListDeeds>(),
            p.GetRequiredService<TimeProvider>()));
        services.AddSingleton(p => new CalendarFeed(
            p.GetRequiredService<OpenBook>(), p.GetRequiredService<ShowCalendar>(), p.GetRequiredService<ListDeeds>(), p.GetRequiredService<TimeProvider>()));
        services.AddSingleton(p => new SheetStock(
            p.GetRequiredService<OpenBook>(), p.GetRequiredService<OpenCatalogue>(), p.GetRequiredService<StockBeliefs>(), p.GetRequiredService<TimeProvider>()));
        services.AddSingleton(p => new PickAnimals(p.GetRequiredService<OpenCatalogue>(), p.GetRequiredService<StockBeliefs>(), p.GetRequiredService<ListAnimals>()));
        services.AddSingleton(p => new PrintLabels(p.GetRequiredService<SheetStock>()));
        services.AddSingleton(p => new PrintSheets(p.GetRequiredService<SheetStock>(), p.GetRequiredService<DrawChart>()));
        services.AddSingleton(p => new PrintClutchCard(p.GetRequiredService<SheetStock>(), p.GetRequiredService<AskCross>()));
        services.AddSingleton(p => new PrintSeason(p.GetRequiredService<SheetStock>()));
        services.AddSingleton(p => new ListGenes(p.GetRequiredService<OpenCatalogue>()));
        services.AddSingleton(p => new ShowGene(p.GetRequiredService<OpenCatalogue>()));
        services.AddSingleton(p => new CompleteText(p.GetRequiredService<OpenCatalogue>()));

        services.AddSingleton(p => new ExplainBelief(p.GetRequiredService<OpenCatalogue>(), p.GetRequiredService<StockBeliefs>()));
        services.AddSingleton(p => new ListContradictions(p.GetRequiredService<StockBeliefs>()));
        services.AddSingleton(p => new ListSuspects(p.GetRequiredService<OpenCatalogue>(), p.GetRequiredService<StockBeliefs>()));

        services.AddSingleton(p => new ShowPlace(p.GetRequiredService<OpenBook>()));
        services.AddSingleton(p => new ListDeeds(p.GetRequiredService<OpenBook>()));
        services.AddSingleton(p => new ListAnimals(p.GetRequiredService<OpenBook>(), p.GetRequiredService<OpenCatalogue>(), p.GetRequiredService<StockBeliefs>()));
        services.AddSingleton(p => new ShowAnimal(
            p.GetRequiredService<OpenBook>(), p.GetRequiredService<OpenCatalogue>(), p.GetRequiredService<StockBeliefs>(), p.GetRequiredService<ListDeeds>()));
        services.AddSingleton(p => new SaveAnimal(p.GetRequiredService<OpenBook>(), p.GetRequiredService<OpenCatalogue>(), p.GetRequiredService<StockBeliefs>()));
        services.AddSingleton(p => new EditForm(p.GetRequiredService<OpenBook>()));
        services.AddSingleton(p => new BinAnimal(p.GetRequiredService<OpenBook>(), p.GetRequiredService<ListDeeds>()));
        services.AddSingleton(p => new RestoreAnimal(p.GetRequiredService<OpenBook>(), p.GetRequiredService<ListDeeds>()));
        services.AddSingleton(p => new AddStatement(p.GetRequiredService<OpenBook>(), p.GetRequiredService<OpenCatalogue>(), p.GetRequiredService<ListDeeds>()));
        services.AddSingleton(p => new WithdrawStatement(p.GetRequiredService<OpenBook>(), p.GetRequiredService<ListDeeds>()));
        services.AddSingleton(p => new UndoDeed(p.GetRequiredService<OpenBook>(), p.GetRequiredService<ListDeeds>()));
        services.AddSingleton(p => new ShowToday(p.GetRequiredService<OpenBook>(), p.GetRequiredService<StockBeliefs>(), p.GetRequiredService<ListDeeds>()));
        services.AddImporting();
        services.AddSingleton(p => new ImportStock(p.GetRequiredService<ImportTable>()));
        services.AddSingleton(p => new ExportStock(p.GetRequiredService<ExportTable>()));
        services.AddSingleton(p => new LoadDemo(p.GetRequiredService<ImportTable>(), p.GetRequiredService<TimeProvider>()));
        services.AddBackups(dataFolder, backups ?? BackupSettings.In(dataFolder));
        return services;
    }

    private static void AddImporting(this IServiceCollection services)
    {
        services.AddSingleton(p => new ImportMappings(p.GetRequiredService<OpenBook>(), p.GetRequiredService<TimeProvider>()));
        services.AddSingleton(p => new ImportTable(
            p.GetRequiredService<OpenBook>(), p.GetRequiredService<OpenCatalogue>(), p.GetRequiredService<IdSchemes>(), p.GetRequiredService<ImportMappings>()));
        services.AddSingleton(p => new ImportPhotoSet(p.GetRequiredService<OpenBook>(), p.GetRequiredService<ImportMappings>()));
        services.AddSingleton(p => new ExportTable(p.GetRequiredService<OpenBook>()));
    }

    private static void AddBackups(this IServiceCollection services, string dataFolder, BackupSettings settings)
    {
        services.AddSingleton(settings);
        services.AddSingleton(p => new KeepBackups(new(p.GetRequiredService<OpenBook>, LazyThreadSafetyMode.PublicationOnly), settings, p.GetRequiredService<TimeProvider>()));
        services.AddSingleton(p => new BackUp(p.GetRequiredService<OpenBook>(), settings, p.GetRequiredService<TimeProvider>()));
        services.AddSingleton(p => new ShowBook(p.GetRequiredService<OpenBook>(), settings, p.GetRequiredService<KeepBackups>(), p.GetRequiredService<TimeProvider>()));
        services.AddSingleton(p => new RestoreStock(p.GetRequiredService<OpenBook>(), p.GetRequiredService<BackUp>(), dataFolder, p.GetRequiredService<TimeProvider>()));
        services.AddSingleton(p => new CheckStock(p.GetRequiredService<OpenBook>()));
        services.AddSingleton(p => new LeaveBook(p.GetRequiredService<OpenBook>(), p.GetRequiredService<OpenCatalogue>()));
        services.AddSingleton(p => new ReturnBook(p.GetRequiredService<OpenBook>(), p.GetRequiredService<BackUp>(), dataFolder, p.GetRequiredService<TimeProvider>()));
    }

    private static OpenCatalogue Open(string folder)
    {
        var read = CatalogueFolder.Read(folder);
        return read.IsRead
            ? new(read.Catalogue, folder)
            : throw new DeskClosedException(
                $"The catalogue in {folder} cannot be used: {read.Problems[0]}"
                + (read.Problems.Count > 1 ? $" (and {read.Problems.Count - 1} more; `catalogue check` lists them)" : string.Empty));
    }

    // The container makes singletons synchronously; the book is opened once in the life of the program, before any request waits for it.
    private static OpenBook OpenStock(BookPlace place, TimeProvider clock)
    {
        var opened = Task.Run(() => Book.OpenAsync(place, clock, CancellationToken.None)).GetAwaiter().GetResult();
        return opened.IsDone ? new(opened.Value) : throw new DeskClosedException(ProblemWords.Say(opened.Problem).ToString());
    }
}
