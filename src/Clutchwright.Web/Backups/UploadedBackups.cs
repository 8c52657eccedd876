namespace Clutchwright.Web.Backups;

/// <summary>Backups that were sent to be restored, until the keeper has decided. Each has a random id; a day later it goes.</summary>
internal sealed class UploadedBackups(string dataFolder)
{
    private static readonly TimeSpan Kept = TimeSpan.FromDays(1);

    private readonly string _folder = Path.Combine(dataFolder, "uploads");

    /// <summary>Keeps what is sent.</summary>
    public async Task<Guid> TakeAsync(Stream sent, DateTimeOffset now, CancellationToken cancel)
    {
        Directory.CreateDirectory(_folder);
        foreach (var old in new DirectoryInfo(_folder).GetFiles("*.upload").Where(f => now.UtcDateTime - f.LastWriteTimeUtc > Kept))
        {
            old.Delete();
        }

        var id = Guid.CreateVersion7();
        var isWhole = false;
        try
        {
            await using var file = new FileStream(PathOf(id), FileMode.CreateNew);
            await sent.CopyToAsync(file, cancel);
            isWhole = true;
            return id;
        }
        finally
        {
            if (!isWhole)
            {
                Forget(id);
            }
        }
    }

    /// <summary>The file of an id; <c>null</c>: it is gone.</summary>
    public string? Find(Guid id) => File.Exists(PathOf(id)) ? PathOf(id) : null;

    public void Forget(Guid id) => File.Delete(PathOf(id));

    private string PathOf(Guid id) => Path.Combine(_folder, $"{id:N}.upload");
}
