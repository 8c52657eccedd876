using System.Collections.Concurrent;
using Clutchwright.Desk.Animals;
using Clutchwright.Web.Hosting;
using Microsoft.AspNetCore.Builder;
using Microsoft.Extensions.DependencyInjection;
using Xunit;

namespace Clutchwright.Web.Tests.Hosting;

public sealed class FirstPagesTests
{
    [Fact]
    public async Task AskForFirstPages_AppStarted_AsksForStartAndStock()
    {
        Assert.Equal(["/", "/stock"], await AskedAsync(isDemo: false));
    }

    [Fact]
    public async Task AskForFirstPages_AnimalsKept_AsksForThePageAndTheLabelOfOne()
    {
        Assert.Equal(["/", "/stock", "/stock/T-101", "/sheets"], await AskedAsync(isDemo: true));
    }

    private static async Task<IEnumerable<string>> AskedAsync(bool isDemo)
    {
        var folder = Directory.CreateTempSubdirectory("clutchwright-first-").FullName;
        await using var app = ClutchwrightWeb.Build(["--urls", "http://127.0.0.1:0"], HostFixture.CatalogueFolder(), folder);
        var asked = new ConcurrentQueue<string>();
        app.Use((context, next) =>
        {
            asked.Enqueue(context.Request.Path);
            return next(context);
        });
        if (isDemo)
        {
            _ = await app.Services.GetRequiredService<LoadDemo>().RunAsync("test", TestContext.Current.CancellationToken);
        }

        await app.StartAsync(TestContext.Current.CancellationToken);
        await app.AskForFirstPagesAsync(TestContext.Current.CancellationToken);
        return asked;
    }

    [Fact]
    public async Task AskForFirstPages_Cancelled_EndsQuietly()
    {
        var folder = Directory.CreateTempSubdirectory("clutchwright-first-").FullName;
        await using var app = ClutchwrightWeb.Build(["--urls", "http://127.0.0.1:0"], HostFixture.CatalogueFolder(), folder);
        await app.StartAsync(TestContext.Current.CancellationToken);
        using var cancelled = new CancellationTokenSource();
        await cancelled.CancelAsync();

        var asking = app.AskForFirstPagesAsync(cancelled.Token);

        Assert.Null(await Record.ExceptionAsync(() => asking));
    }
}
