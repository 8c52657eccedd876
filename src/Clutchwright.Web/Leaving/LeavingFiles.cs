using System.Globalization;

namespace Clutchwright.Web.Leaving;

/// <summary>Where files are written that are sent at once and go when they were. What a program that was ended has left goes a day later.</summary>
internal sealed class LeavingFiles(string dataFolder)
{
    private static readonly TimeSpan Kept = TimeSpan.FromDays(1);

    private readonly string _folder = Path.Combine(dataFolder, "leaving");

    /// <summary>A new folder to write in.</summary>
    public string NewFolder(DateTimeOffset now)
    {
        foreach (var old in Directory.Exists(_folder) ? new DirectoryInfo(_folder).GetDirectories().Where(f => now.UtcDateTime - f.LastWriteTimeUtc > Kept) : [])
        {
            old.Delete(recursive: true);
        }

        return Directory.CreateDirectory(Path.Combine(_folder, Guid.CreateVersion7().ToString("N", CultureInfo.InvariantCulture))).FullName;
    }

    /// <summary>Takes a folder away with all that is in it.</summary>
    public static void TakeAway(string folder)
    {
        try
        {
            Directory.Delete(folder, recursive: true);
        }
        catch (Exception exception) when (exception is IOException or UnauthorizedAccessException)
        {
            // It goes with the next one that is made.
        }
    }
}
