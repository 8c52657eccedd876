using System.Globalization;
using Clutchwright.Desk.Opened;
using Clutchwright.Stock;
using Clutchwright.Stock.Backups;

namespace Clutchwright.Desk.Backups;

/// <summary>Makes a backup once a day if anything was done since the last, and lets the oldest go.</summary>
public sealed class KeepBackups
{
    /// <summary>How often it is worth asking whether one is due.</summary>
    public static readonly TimeSpan Pause = TimeSpan.FromMinutes(5);

    private static readonly TimeSpan AgainAfterFailure = TimeSpan.FromHours(1);

    private readonly Lazy<OpenBook> _book;
    private readonly BackupSettings _settings;
    private readonly TimeProvider _clock;

    internal KeepBackups(Lazy<OpenBook> book, BackupSettings settings, TimeProvider clock)
    {
        _book = book;
        _settings = settings;
        _clock = clock;
    }

    /// <summary>Why the last one was not made; <c>null</c>: it was, or none was due yet.</summary>
    public BackupFailure? Failure { get; private set; }

    /// <summary>Makes one if it is due.</summary>
    /// <returns>The file; <c>null</c>: none was made.</returns>
    public async Task<string?> RunIfDueAsync(CancellationToken cancel)
    {
        if (_settings.Hour is not { } hour || (Failure is { } failed && _clock.GetUtcNow() - failed.At < AgainAfterFailure))
        {
            return null;
        }

        try
        {
            var now = _clock.GetLocalNow().DateTime;
            var due = now.Date.AddHours(hour) <= now ? now.Date.AddHours(hour) : now.Date.AddDays(-1).AddHours(hour);
            var newest = ShowBook.InFolder(_settings.Folder, _clock).FirstOrDefault(b => b.Reason is not null);
            if (newest is not null && BackupName.Read(newest.Name)!.Value.Local >= due)
            {
                return null;
            }

            var book = _book.Value.Book;
            var last = await new CountBook(book).RunAsync(cancel);
            if (!last.IsDone)
            {
                return Failed(ProblemWords.Say(last.Problem).ToString());
            }

            var saved = newest is null ? null : await CountBook.LastDeedOfAsync(newest.File, cancel);
            if (last.Value.LastDeed == saved)
            {
                Failure = null;
                return null;
            }

            var made = await Task.Run(
                () => new BackupBook(book).RunAsync(Path.Combine(_settings.Folder, BackupName.Of(now, BackupReason.Scheduled)), cancel), cancel);
            if (!made.IsDone)
            {
                return Failed(ProblemWords.Say(made.Problem).ToString());
            }

            Failure = null;
            SweepUnfinished();
            foreach (var old in TooOld(ShowBook.InFolder(_settings.Folder, _clock), _settings))
            {
                File.Delete(old.File);
            }

            return made.Value.File;
        }
        catch (Exception exception) when (exception is not OperationCanceledException)
        {
            // Whatever it was, the app goes on; the page tells.
            return Failed(exception.Message);
        }
    }

    /// <summary>Those that may go: of the days, weeks and months that are kept the last stays, and of what was not made by itself all.</summary>
    /// <param name="backups">The latest first.</param>
    /// <param name="settings">How many stay.</param>
    internal static IReadOnlyList<KeptBackup> TooOld(IReadOnlyList<KeptBackup> backups, BackupSettings settings)
    {
        var made = backups.Where(b => b.Reason == BackupReason.Scheduled)
            .Select(b => (Backup: b, BackupName.Read(b.Name)!.Value.Local)).OrderByDescending(b => b.Local).ToList();
        var kept = made.Take(1)
            .Concat(made.DistinctBy(b => b.Local.Date).Take(settings.Daily))
            .Concat(made.DistinctBy(b => (ISOWeek.GetYear(b.Local), ISOWeek.GetWeekOfYear(b.Local))).Take(settings.Weekly))
            .Concat(made.DistinctBy(b => (b.Local.Year, b.Local.Month)).Take(settings.Monthly))
            .Select(b => b.Backup.Name)
            .ToHashSet(StringComparer.Ordinal);
        return [.. made.Select(b => b.Backup).Where(b => !kept.Contains(b.Name))];
    }

    // A program that was killed while it made a backup leaves what was done of it.
    private void SweepUnfinished()
    {
        var dayAgo = _clock.GetUtcNow().UtcDateTime.AddDays(-1);
        foreach (var file in new DirectoryInfo(_settings.Folder).GetFiles($".*{BackupBook.Extension}.*.part").Where(f => f.LastWriteTimeUtc < dayAgo))
        {
            file.Delete();
        }
    }

    private string? Failed(string why)
    {
        Failure = new(_clock.GetUtcNow(), why);
        return null;
    }
}
