using System.CommandLine;
using Clutchwright.Cli.Backups;
using Clutchwright.Cli.Words;
using Clutchwright.Desk.Animals;
using Clutchwright.Desk.Backups;
using Clutchwright.Desk.Genes;
using Clutchwright.Web;
using Clutchwright.Web.Hosting;
using Microsoft.AspNetCore.Builder;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Hosting;

namespace Clutchwright.Cli.Serving;

/// <summary><c>serve</c>: starts the web app and keeps it running.</summary>
internal static class ServeCommand
{
    // The host's own remarks go to standard error, and only what needs attention; that it cannot start we say ourselves.
    private static readonly string[] Quiet =
    [
        "--Logging:Console:LogToStandardErrorThreshold=Trace",
        "--Logging:LogLevel:Default=Warning",
        "--Logging:LogLevel:Microsoft.Hosting.Lifetime=Warning",
        "--Logging:LogLevel:Microsoft.Extensions.Hosting.Internal.Host=None",
    ];

    public static Command Create(CommonOptions common, Terminal terminal)
    {
        var urls = new Option<string?>("--urls")
        {
            Description = $"Where to listen; several with ';' between. Default: {ClutchwrightWeb.DefaultUrl}",
            HelpName = "ADDRESSES",
        };
        var folder = new Option<string?>("--backup-folder") { Description = "Where backups go. Default: backups in the data folder.", HelpName = "DIR" };
        var hour = new Option<string?>("--backup-hour")
        {
            Description = $"After which hour of the day a backup is made if anything was done since the last, or 'off'. Default: {BackupSettings.UsualHour}",
            HelpName = "HOUR",
        };
        var keep = new Option<string?>("--backup-keep")
        {
            Description = $"Of how many days, weeks and months the last backup is kept. Default: {BackupSettings.UsualKeep}",
            HelpName = "D,W,M",
        };
        var command = new Command("serve", "Start the web app.") { urls, folder, hour, keep };
        command.SetAction(async (asked, cancel) =>
        {
            var backups = BackupVariables.Read(common.DataFolder(asked), asked.GetValue(folder), asked.GetValue(hour), asked.GetValue(keep));
            WebApplication built;
            try
            {
                built = ClutchwrightWeb.Build(
                    asked.GetValue(urls) is { } listen ? [.. Quiet, $"--urls={listen}"] : Quiet,
                    common.CatalogueFolder(asked),
                    common.DataFolder(asked),
                    common.Database(asked),
                    backups);
            }
            catch (Exception wrong) when (wrong is OpenAddressException or FormatException)
            {
                return terminal.AskedWrongly($"--urls: {wrong.Message}");
            }

            await using var app = built;

            // Both are opened when first needed; what cannot be opened is better told now than on the first page. Each takes a processor some time, and
            // what is wrong with one is told when the other is open too, not while it is being opened.
            await Task.WhenAll(
                Task.Run(() => app.Services.GetRequiredService<ListGenes>().Run(find: null, kind: "combination"), cancel),
                Task.Run(() => app.Services.GetRequiredService<ListDeeds>().RunAsync(before: null, take: 1, cancel), cancel));

            var place = common.Database(asked) is null ? common.DataFolder(asked) : app.Services.GetRequiredService<ShowPlace>().Run();
            await app.StartAsync(cancel);
            if (common.IsJson(asked))
            {
                terminal.Send(new() { ["urls"] = JsonShapes.Array(app.Urls), ["data"] = place });
            }
            else
            {
                await terminal.Output.WriteAsync(
                    $"Clutchwright is at {string.Join(" and ", app.Urls)}\nYour stock lies in {place}\nStop it with Ctrl+C.\n");
            }

            await terminal.Output.FlushAsync(cancel);
            using var closing = CancellationTokenSource.CreateLinkedTokenSource(cancel, app.Lifetime.ApplicationStopping);
            var firstPages = app.AskForFirstPagesAsync(closing.Token);
            await app.WaitForShutdownAsync(cancel);
            await firstPages;
            return ExitCode.Answered;
        });
        return command;
    }
}
