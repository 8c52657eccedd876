using Clutchwright.Desk.Animals;
using Clutchwright.Desk.Opened;
using Clutchwright.Desk.Words;
using Clutchwright.Stock.Backups;

namespace Clutchwright.Desk.Backups;

/// <summary>Makes a backup of everything now.</summary>
public sealed class BackUp
{
    private readonly OpenBook _book;
    private readonly BackupSettings _settings;
    private readonly TimeProvider _clock;

    internal BackUp(OpenBook book, BackupSettings settings, TimeProvider clock)
    {
        _book = book;
        _settings = settings;
        _clock = clock;
    }

    /// <summary>Makes it.</summary>
    /// <param name="file">Where; <c>null</c>: in the folder of backups, by a name that says when.</param>
    /// <param name="cancel">Stops it; nothing is left then.</param>
    public Task<Answer<BackupDone>> RunAsync(string? file, CancellationToken cancel) =>
        RunAsync(file ?? NewFile(BackupReason.ByHand), "file", cancel);

    /// <summary>A name for a backup made now; of two in one second the other is called after the next.</summary>
    internal string NewFile(BackupReason reason)
    {
        var local = _clock.GetLocalNow().DateTime;
        string file;
        do
        {
            file = Path.Combine(_settings.Folder, BackupName.Of(local, reason));
            local = local.AddSeconds(1);
        }
        while (File.Exists(file));
        return file;
    }

    internal async Task<Answer<BackupDone>> RunAsync(string file, string where, CancellationToken cancel)
    {
        // A file's database answers at once, so that all of it would be done on the caller's thread.
        var made = await Task.Run(() => new BackupBook(_book.Book).RunAsync(file, cancel), cancel);
        return made.IsDone ? Of(made.Value) : Refusals.Of(where, made.Problem);
    }

    internal static BackupDone Of(BackupMade made) =>
        new(made.File, made.Bytes, made.Took, new DateTimeOffset(made.MadeAt, TimeSpan.Zero), BookAnswer.Of(made.Contents));
}
