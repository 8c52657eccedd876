using Clutchwright.Desk.Backups;
using Microsoft.Extensions.Hosting;

namespace Clutchwright.Web.Backups;

/// <summary>Asks again and again, while the app runs, whether a backup is due.</summary>
internal sealed class DailyBackup(KeepBackups backups, BackupSettings settings, TimeProvider clock) : BackgroundService
{
    protected override async Task ExecuteAsync(CancellationToken stoppingToken)
    {
        if (settings.Hour is null)
        {
            return;
        }

        try
        {
            while (true)
            {
                // First after a while too: the first pages are more urgent.
                await Task.Delay(KeepBackups.Pause, clock, stoppingToken);
                await backups.RunIfDueAsync(stoppingToken);
            }
        }
        catch (OperationCanceledException)
        {
            // The app stops.
        }
    }
}
