using System.Net;
using Xunit;

namespace Clutchwright.Web.Tests.Hosting;

public sealed class ClosedBookTests
{
    [Theory]
    [InlineData("/")]
    [InlineData("/stock?deed=1")]
    public async Task Get_CatalogueIsNotThere_SaysWhichAndWhy(string path)
    {
        var folder = Directory.CreateTempSubdirectory("clutchwright-closed-").FullName;
        await using var app = ClutchwrightWeb.Build(["--urls", "http://127.0.0.1:0"], Path.Combine(folder, "no-catalogue"), folder);
        await app.StartAsync(TestContext.Current.CancellationToken);
        using var client = new HttpClient { BaseAddress = new Uri(app.Urls.First()) };

        using var answer = await client.GetAsync(path, TestContext.Current.CancellationToken);

        Assert.Equal(HttpStatusCode.InternalServerError, answer.StatusCode);
        Assert.Contains("no-catalogue", await answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken), StringComparison.Ordinal);
    }
}
