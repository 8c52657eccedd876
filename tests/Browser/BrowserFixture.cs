using System.Collections.Concurrent;
using System.Text;
using Clutchwright.Desk.Animals;
using Clutchwright.Web;
using Microsoft.AspNetCore.Builder;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Playwright;
using Xunit;

namespace Clutchwright.Browser;

/// <summary>One browser and the rooms for every test: an empty one, the demo stock, a hundred line-bred animals, and two thousand.</summary>
/// <remarks>A room is opened once, by whichever test asks for it first; every visit has cookies and a store of its own.</remarks>
public sealed class BrowserFixture : IAsyncLifetime
{
    // A machine that is busy with other things is no failure of a page.
    private const float LongEnoughMilliseconds = 30_000;

    /// <summary>How the name of a room begins whose book lies on PostgreSQL.</summary>
    public const string OnServer = "postgresql-";

    private readonly ConcurrentDictionary<string, Lazy<Task<WebApplication>>> _rooms = new(StringComparer.Ordinal);
    private readonly string _folder = Directory.CreateTempSubdirectory("clutchwright-browser-").FullName;
    private readonly Dictionary<string, Visit> _tours = new(StringComparer.Ordinal);
    private IPlaywright? _playwright;
    private IBrowser? _browser;

    public async ValueTask InitializeAsync()
    {
        Assertions.SetDefaultExpectTimeout(LongEnoughMilliseconds);
        _playwright = await Playwright.CreateAsync();
        _browser = await _playwright.Chromium.LaunchAsync(new BrowserTypeLaunchOptions
        {
            ExecutablePath = Environment.GetEnvironmentVariable("CLUTCHWRIGHT_CHROMIUM") ?? OnPath("chromium"),
            Args =
            [
                "--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run", "--disable-background-networking",
                "--disable-component-update", "--disable-sync",
            ],
        });
    }

    /// <summary>The address of a room: <c>empty</c>, <c>demo</c>, <c>inbred</c> or <c>large</c>, or of a fresh one by any other name.</summary>
    public async Task<string> RoomAsync(string name) => (await OpenAsync(name)).Urls.First();

    /// <summary>A page on a room; it collects what goes wrong and every request that leaves the room.</summary>
    public async Task<Visit> VisitAsync(string room, int width = 1280, int height = 900, bool script = true)
    {
        var url = await RoomAsync(room);
        var context = await _browser!.NewContextAsync(new BrowserNewContextOptions
        {
            BaseURL = url,
            ColorScheme = ColorScheme.Light,
            JavaScriptEnabled = script,
            Locale = "en-GB",
            HasTouch = width < 600,
            ViewportSize = new ViewportSize { Width = width, Height = height },
        });
        context.SetDefaultNavigationTimeout(2 * LongEnoughMilliseconds);
        return await Visit.OpenAsync(context, url);
    }

    /// <summary>The page that goes round all the pages of a room, one after another, in one tab: a phone with nothing wrong on it yet.</summary>
    public async Task<Visit> TourAsync(string room)
    {
        if (!_tours.TryGetValue(room, out var visit))
        {
            _tours[room] = visit = await VisitAsync(room, width: 360, height: 740);
        }

        visit.Forget();
        await visit.ShowAsync(ColorScheme.Light, 360);
        return visit;
    }

    /// <summary>Imports animals into a room.</summary>
    public async Task ImportAsync(string room, string csv)
    {
        var import = await (await OpenAsync(room)).Services.GetRequiredService<ImportStock>()
            .RunAsync(Encoding.UTF8.GetBytes(csv), mapping: null, "room.csv", "keeper", TestContext.Current.CancellationToken);
        Assert.DoesNotContain(import.Problems, p => !p.Text.StartsWith("Nothing new", StringComparison.Ordinal));
    }

    /// <summary>A question or deed of a room's desk.</summary>
    public async Task<T> GetAsync<T>(string room)
        where T : notnull => (await OpenAsync(room)).Services.GetRequiredService<T>();

    public async ValueTask DisposeAsync()
    {
        foreach (var room in _rooms.Values.Where(r => r.Value.IsCompletedSuccessfully))
        {
            await (await room.Value).DisposeAsync();
        }

        if (_browser is not null)
        {
            await _browser.DisposeAsync();
        }

        _playwright?.Dispose();
        Directory.Delete(_folder, recursive: true);
    }

    /// <summary>The shipped species, wherever in the checkout the tests run.</summary>
    internal static string CatalogueFolder()
    {
        for (var folder = new DirectoryInfo(AppContext.BaseDirectory); folder is not null; folder = folder.Parent)
        {
            var species = Path.Combine(folder.FullName, "catalogue", "python-regius");
            if (Directory.Exists(species))
            {
                return species;
            }
        }

        throw new DirectoryNotFoundException("No folder above the tests holds catalogue/python-regius.");
    }

    private Task<WebApplication> OpenAsync(string name) => _rooms.GetOrAdd(name, _ => new(() => BuildAsync(name))).Value;

    private async Task<WebApplication> BuildAsync(string name)
    {
        var app = ClutchwrightWeb.Build(
            ["--urls", "http://127.0.0.1:0"], CatalogueFolder(), Path.Combine(_folder, name), name.StartsWith(OnServer, StringComparison.Ordinal) ? await NewDatabaseAsync() : null);
        app.MapAxe();
        await app.StartAsync(TestContext.Current.CancellationToken);
        await FillAsync(name, app);
        return app;
    }

    // It goes with the server, which ./test makes for itself.
    private static async Task<string> NewDatabaseAsync()
    {
        var server = Environment.GetEnvironmentVariable("CLUTCHWRIGHT_TEST_POSTGRESQL");
        Assert.SkipWhen(string.IsNullOrEmpty(server), "no PostgreSQL server to test on; ./test starts one, CLUTCHWRIGHT_TEST_POSTGRESQL names another");
        var database = $"browser_{Guid.CreateVersion7():N}";
        await using var connection = new Npgsql.NpgsqlConnection(new Npgsql.NpgsqlConnectionStringBuilder(server) { Database = "postgres", Pooling = false }.ConnectionString);
        await connection.OpenAsync(TestContext.Current.CancellationToken);
        await using var command = connection.CreateCommand();
        command.CommandText = $"CREATE DATABASE {database} TEMPLATE template0 ENCODING 'UTF8' LC_COLLATE 'C' LC_CTYPE 'C'";
        await command.ExecuteNonQueryAsync(TestContext.Current.CancellationToken);
        return new Npgsql.NpgsqlConnectionStringBuilder(server) { Database = database, MaxPoolSize = 20 }.ConnectionString;
    }

    private static async Task FillAsync(string name, WebApplication app)
    {
        var cancel = TestContext.Current.CancellationToken;
        if (name == "demo")
        {
            var demo = await app.Services.GetRequiredService<LoadDemo>().RunAsync("keeper", cancel);
            Assert.Empty(demo.Problems);
        }
        else if (name == "large")
        {
            var import = await app.Services.GetRequiredService<ImportStock>()
                .RunAsync(Encoding.UTF8.GetBytes(LargeStock.Csv(2000)), mapping: null, "large.csv", "keeper", cancel);
            Assert.Empty(import.Problems);
            Assert.Equal(2000, import.Value!.Added);
        }
        else if (name == "inbred")
        {
            var import = await app.Services.GetRequiredService<ImportStock>()
                .RunAsync(Encoding.UTF8.GetBytes(LargeStock.LineBred(100)), mapping: null, "inbred.csv", "keeper", cancel);
            Assert.Empty(import.Problems);
        }
    }

    private static string OnPath(string program) =>
        (Environment.GetEnvironmentVariable("PATH") ?? string.Empty).Split(Path.PathSeparator)
            .Select(folder => Path.Combine(folder, program)).FirstOrDefault(File.Exists)
        ?? throw new FileNotFoundException($"{program} is not on the path; set CLUTCHWRIGHT_CHROMIUM to its place.");
}

[CollectionDefinition(Name)]
public sealed class BrowserGroup : ICollectionFixture<BrowserFixture>
{
    public const string Name = "browser";
}
