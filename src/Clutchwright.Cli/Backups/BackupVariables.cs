using Clutchwright.Desk.Backups;

namespace Clutchwright.Cli.Backups;

/// <summary>The environment variables that say where backups go, when, and how many stay. Every command reads them; those of <c>serve</c> can
/// be given as options too, which go first.</summary>
internal static class BackupVariables
{
    private const string FolderVariable = "CLUTCHWRIGHT_BACKUP_FOLDER";
    private const string HourVariable = "CLUTCHWRIGHT_BACKUP_HOUR";
    private const string KeepVariable = "CLUTCHWRIGHT_BACKUP_KEEP";

    /// <summary>The settings.</summary>
    /// <param name="dataFolder">Holds the folder of backups where no other is named.</param>
    /// <param name="folder">In place of the variable's.</param>
    /// <param name="hour">The same.</param>
    /// <param name="keep">The same.</param>
    /// <exception cref="SettingUnreadableException">One of them cannot be read.</exception>
    public static BackupSettings Read(string dataFolder, string? folder = null, string? hour = null, string? keep = null)
    {
        var usual = BackupSettings.In(dataFolder);
        var settings = usual with
        {
            Folder = (folder ?? Set(FolderVariable)) is { } named ? Path.GetFullPath(named) : usual.Folder,
            Hour = BackupSettings.UsualHour,
        };
        if ((hour ?? Set(HourVariable)) is { } hourText)
        {
            settings = BackupSettings.TryReadHour(hourText, out var read)
                ? settings with { Hour = read }
                : throw new SettingUnreadableException($"{(hour is null ? HourVariable : "--backup-hour")}: '{hourText}' is neither an hour from 0 to 23 nor 'off'");
        }

        var keepText = keep ?? Set(KeepVariable) ?? BackupSettings.UsualKeep;
        return settings.TryKeep(keepText)
            ?? throw new SettingUnreadableException($"{(keep is null ? KeepVariable : "--backup-keep")}: '{keepText}' is not how many days, weeks and months, for example {BackupSettings.UsualKeep}");
    }

    private static string? Set(string variable) => Environment.GetEnvironmentVariable(variable) is { } set && !string.IsNullOrWhiteSpace(set) ? set : null;
}
