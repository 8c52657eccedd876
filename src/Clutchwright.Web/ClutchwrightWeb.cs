using Clutchwright.Desk;
using Clutchwright.Desk.Backups;
using Clutchwright.Web.Assets;
using Clutchwright.Web.Backups;
using Clutchwright.Web.Calendar;
using Clutchwright.Web.Carry;
using Clutchwright.Web.Condition;
using Clutchwright.Web.Deeds;
using Clutchwright.Web.Hosting;
using Clutchwright.Web.Importing;
using Clutchwright.Web.Incubators;
using Clutchwright.Web.Kin;
using Clutchwright.Web.Layout;
using Clutchwright.Web.Leaving;
using Clutchwright.Web.Photos;
using Clutchwright.Web.Routes;
using Clutchwright.Web.Season;
using Clutchwright.Web.Sheets;
using Clutchwright.Web.Words;
using Microsoft.AspNetCore.Builder;
using Microsoft.Extensions.DependencyInjection;

namespace Clutchwright.Web;

/// <summary>The web app, ready to be started by any program.</summary>
public static class ClutchwrightWeb
{
    /// <summary>Where the app listens when nothing else is asked for.</summary>
    public const string DefaultUrl = "http://127.0.0.1:5417";

    /// <summary>Puts the web app together; the caller runs it.</summary>
    /// <param name="args">Arguments of the host, for example <c>--urls http://127.0.0.1:5417</c>.</param>
    /// <param name="catalogueFolder">The species' folder.</param>
    /// <param name="dataFolder">The keeper's data folder; made if it is not there.</param>
    /// <param name="database">The connection string of a PostgreSQL database that holds the book; <c>null</c>: the data folder does.</param>
    /// <param name="backups">Where backups go, and when they are made; <c>null</c>: into the data folder, and none by itself.</param>
    /// <exception cref="OpenAddressException">An address was asked for that other machines can reach.</exception>
    public static WebApplication Build(string[] args, string catalogueFolder, string dataFolder, string? database = null, BackupSettings? backups = null)
    {
        var builder = WebApplication.CreateBuilder(new WebApplicationOptions
        {
            Args = args,
            ApplicationName = typeof(ClutchwrightWeb).Assembly.GetName().Name,
            ContentRootPath = AppContext.BaseDirectory,
        });
        builder.ListenOnLoopbackOnly();
        builder.Services.AddDesk(catalogueFolder, dataFolder, database, backups);
        builder.Services.AddRazorComponents();
        builder.Services.AddWords();
        builder.Services.AddHosting(dataFolder);
        builder.Services.AddHostedService<DailyBackup>();
        builder.Services.AddSingleton(new UploadedBackups(dataFolder));
        builder.Services.AddSingleton(new LeavingFiles(dataFolder));
        builder.Services.AddSingleton<AssetShelf>();
        builder.Services.AddSingleton(typeof(KeptAnswers<>));
        builder.Services.AddSingleton<RouteAnswers>();
        builder.Services.AddSingleton<SeasonAnswers>();
        builder.Services.AddSingleton<SheetPrinter>();

        var app = builder.Build();
        app.UseHosting();
        app.MapAssets();
        app.MapCompletion();
        app.MapDeeds();
        app.MapBackups();
        app.MapLeaving();
        app.MapIncubators();
        app.MapCondition();
        app.MapPhotos();
        app.MapImporting();
        app.MapSeen();
        app.MapChart();
        app.MapCalendar();
        app.MapSheets();
        app.MapHealthChecks("/healthz");
        app.MapRazorComponents<App>();
        return app;
    }
}
