using Microsoft.AspNetCore.Builder;
using Xunit;

namespace Clutchwright.Web.Tests.Hosting;

/// <summary>The app over the shipped species and an empty data folder.</summary>
public sealed class HostFixture : IAsyncLifetime
{
    private readonly string _folder = Directory.CreateTempSubdirectory("clutchwright-web-").FullName;
    private WebApplication? _app;

    public Uri Address => new(_app!.Urls.First());

    public HttpClient Client { get; private set; } = default!;

    public async ValueTask InitializeAsync()
    {
        _app = ClutchwrightWeb.Build(["--urls", "http://127.0.0.1:0"], CatalogueFolder(), _folder);
        await _app.StartAsync();
        Client = new HttpClient(new SocketsHttpHandler { AllowAutoRedirect = false, UseCookies = false }) { BaseAddress = Address };
    }

    public async ValueTask DisposeAsync()
    {
        Client.Dispose();
        await _app!.DisposeAsync();
        Directory.Delete(_folder, recursive: true);
    }

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
}
