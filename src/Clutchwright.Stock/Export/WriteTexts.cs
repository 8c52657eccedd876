using Clutchwright.Stock.Backups;

namespace Clutchwright.Stock.Export;

/// <summary>Writes several small texts to files that belong together: nothing is overwritten, and none gets its name before all are on the disk.</summary>
public static class WriteTexts
{
    /// <param name="files">Paths and what stands in them; the first gets its name last.</param>
    /// <param name="cancellation">Stops it; no file is left then.</param>
    /// <returns>The length of all together, in bytes.</returns>
    public static async Task<Outcome<BookFilesWritten>> RunAsync(IReadOnlyList<BookText> files, CancellationToken cancellation)
    {
        ArgumentNullException.ThrowIfNull(files);
        var paths = files.Select(f => Path.GetFullPath(f.Name)).ToList();
        var unfinished = paths.ConvertAll(SafeFile.Unfinished);
        try
        {
            if (paths.Find(Path.Exists) is { } there)
            {
                return new BookFileProblem.FileThere(there);
            }

            Directory.CreateDirectory(Path.GetDirectoryName(paths[0])!);
            for (var i = 0; i < files.Count; i++)
            {
                await File.WriteAllTextAsync(unfinished[i], files[i].Text, BookJson.Utf8, cancellation);
            }

            var bytes = unfinished.Sum(f => new FileInfo(f).Length);
            for (var i = files.Count - 1; i >= 0; i--)
            {
                SafeFile.Finish(unfinished[i], paths[i]);
            }

            return new BookFilesWritten(paths, bytes);
        }
        catch (Exception exception) when (exception is IOException or UnauthorizedAccessException)
        {
            return new BookFileProblem.FileUnusable(paths[0], exception.Message);
        }
        finally
        {
            foreach (var left in unfinished.Where(File.Exists))
            {
                SafeFile.Discard(left);
            }
        }
    }
}

/// <summary>Files that were written, and their length together.</summary>
public sealed record BookFilesWritten(IReadOnlyList<string> Files, long Bytes);
