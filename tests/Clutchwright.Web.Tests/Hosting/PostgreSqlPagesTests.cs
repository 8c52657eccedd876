using System.Net;
using Clutchwright.Desk.Animals;
using Microsoft.Extensions.DependencyInjection;
using Npgsql;
using Xunit;

namespace Clutchwright.Web.Tests.Hosting;

/// <summary>The pages over a book on a server, whose answers have to be waited for where those of a file are there at once.</summary>
public sealed class PostgreSqlPagesTests
{
    private static readonly string[] Pages = ["/", "/stock", "/stock/history", "/stock/T-101", "/stock?find=pastel", "/stock/moved", "/stock/contradictions", "/stock/bin", "/pairs", "/cross", "/kin", "/season", "/route", "/looks", "/proof", "/log", "/catalogue"];

    [Fact]
    public async Task Pages_BookOnAServer_AreAnswered()
    {
        var server = Environment.GetEnvironmentVariable("CLUTCHWRIGHT_TEST_POSTGRESQL");
        Assert.SkipWhen(server is null, "no PostgreSQL server to test on; ./test starts one, CLUTCHWRIGHT_TEST_POSTGRESQL names another");
        var database = $"clutchwright_test_{Guid.CreateVersion7():N}";
        await RunAsync(server!, $"CREATE DATABASE {database} TEMPLATE template0 ENCODING 'UTF8'");
        var folder = Directory.CreateTempSubdirectory("clutchwright-web-").FullName;
        await using (var app = ClutchwrightWeb.Build(
            ["--urls", "http://127.0.0.1:0"], HostFixture.CatalogueFolder(), folder, $"{server};Database={database};Maximum Pool Size=20"))
        {
            await app.StartAsync(TestContext.Current.CancellationToken);
            Assert.Empty((await app.Services.GetRequiredService<LoadDemo>().RunAsync("Keeper", TestContext.Current.CancellationToken)).Problems);
            using var client = new HttpClient { BaseAddress = new Uri(app.Urls.First()) };
            var tag = (await app.Services.GetRequiredService<ListAnimals>().RunAsync(new AnimalsQuestion(), TestContext.Current.CancellationToken)).Animals[0].Tag;

            foreach (var page in Pages.Select(p => p.Replace("T-101", tag, StringComparison.Ordinal)))
            {
                using var response = await client.GetAsync(new Uri(page, UriKind.Relative), TestContext.Current.CancellationToken);
                Assert.True(response.StatusCode == HttpStatusCode.OK, $"{page}: {response.StatusCode}");
            }
        }

        Directory.Delete(folder, recursive: true);
        await RunAsync(server!, $"DROP DATABASE {database} WITH (FORCE)");
    }

    private static async Task RunAsync(string server, string sql)
    {
        await using var connection = new NpgsqlConnection($"{server};Pooling=false");
        await connection.OpenAsync(TestContext.Current.CancellationToken);
        await using var command = new NpgsqlCommand(sql, connection);
        await command.ExecuteNonQueryAsync(TestContext.Current.CancellationToken);
    }
}
