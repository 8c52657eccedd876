using System.Text;
using Clutchwright.Desk.Animals;
using Clutchwright.Desk.Importing;
using Clutchwright.Desk.Opened;
using Microsoft.Extensions.DependencyInjection;

namespace Clutchwright.Desk.Tests.Testing;

/// <summary>A desk over the shipped catalogue and an empty book in a folder of its own, which goes when the test ends.</summary>
internal sealed class TestDesk : IDisposable
{
    public const string Who = "Keeper";

    private const string Memory = "/dev/shm";

    // In memory where the system has a place for that, since every deed waits for the disk.
    private readonly string _folder = Directory.Exists(Memory)
        ? Directory.CreateDirectory(Path.Combine(Memory, $"clutchwright-desk-{Guid.CreateVersion7():N}")).FullName
        : Directory.CreateTempSubdirectory("clutchwright-desk-").FullName;

    private readonly ServiceProvider _services;

    public TestDesk()
    {
        var services = new ServiceCollection();
        services.AddSingleton<TimeProvider>(new FakeClock());
        services.AddDesk(Shipped.Folder, _folder);

        // Of two registrations the later counts: the catalogue is read once for all tests.
        services.AddSingleton(Shipped.Catalogue);
        _services = services.BuildServiceProvider();
    }

    public static CancellationToken Cancel => TestContext.Current.CancellationToken;

    /// <summary>Gets the folder of the book.</summary>
    public string Folder => _folder;

    public T Get<T>()
        where T : notnull => _services.GetRequiredService<T>();

    public static async Task<TestDesk> WithDemoAsync()
    {
        var desk = new TestDesk();
        Assert.Empty((await desk.Get<LoadDemo>().RunAsync(Who, Cancel)).Problems);
        return desk;
    }

    public static async Task<TestDesk> WithAsync(string csv)
    {
        var desk = new TestDesk();
        await desk.ImportAsync(csv);
        return desk;
    }

    public async Task<ImportDone> ImportAsync(string csv)
    {
        var done = await Get<ImportStock>().RunAsync(Encoding.UTF8.GetBytes(csv), null, "test.csv", Who, Cancel);
        Assert.Empty(done.Problems);
        return done.Value!;
    }

    public async Task<AnimalAnswer> ShowAsync(string tag) => (await Get<ShowAnimal>().RunAsync(tag, Cancel))!;

    public async Task<string> TextAsync(string tag) => (await ShowAsync(tag)).Line.Words.Text;

    public async Task<string> ExportAsync() => Encoding.UTF8.GetString(await Get<ExportStock>().RunAsync(Cancel));

    public async Task<IReadOnlyList<AnimalLine>> AllAsync()
    {
        var page = await Get<ListAnimals>().RunAsync(new AnimalsQuestion { PageSize = 200 }, Cancel);
        Assert.Equal(page.Total, page.Animals.Count);
        return page.Animals;
    }

    public Task<StockState> StateAsync() => Get<StockBeliefs>().ReadAsync(Cancel);

    public void Dispose()
    {
        _services.Dispose();
        Directory.Delete(_folder, recursive: true);
    }

    /// <summary>A clock that is a second later at every look, in the spring of a year in which all of the demo has hatched.</summary>
    private sealed class FakeClock : TimeProvider
    {
        private long _looks;

        public override DateTimeOffset GetUtcNow() =>
            new DateTimeOffset(2026, 5, 1, 12, 0, 0, TimeSpan.Zero).AddSeconds(Interlocked.Increment(ref _looks));

        public override TimeZoneInfo LocalTimeZone => TimeZoneInfo.Utc;
    }
}
