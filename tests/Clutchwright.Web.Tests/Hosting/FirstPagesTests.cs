using System.Collections.Concurrent;
using Clutchwright.Web.Hosting;
using Microsoft.AspNetCore.Builder;
using Xunit;

namespace Clutchwright.Web.Tests.Hosting;

public sealed class FirstPagesTests
{
    [Fact]
    public async Task AskForFirstPages_AppStarted_AsksForStartAndStock()
    {
        var folder = Directory.CreateTempSubdirectory("clutchwright-first-").FullName;
        await using var app = ClutchwrightWeb.Build(["--urls", "http://127.0.0.1:0"], HostFixture.CatalogueFolder(), folder);
        var asked = new ConcurrentQueue<string>();
        app.Use((context, next) =>
        {
            asked.Enqueue(context.Request.Path);
            return next(context);
        });
        await app.StartAsync(TestContext.Current.CancellationToken);

        await app.AskForFirstPagesAsync(TestContext.Current.CancellationToken);

        Assert.Equal(["/", "/stock"], asked);
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
