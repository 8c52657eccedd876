using System.Runtime.InteropServices;

namespace Clutchwright.Stock.Backups;

/// <summary>Puts a file in its place so that after a power cut it is there whole or not at all.</summary>
internal static class SafeFile
{
    /// <summary>A name beside a file under which it is written; it begins with a dot and so is no backup yet.</summary>
    public static string Unfinished(string file) =>
        Path.Combine(Path.GetDirectoryName(file)!, $".{Path.GetFileName(file)}.{Guid.CreateVersion7():N}.part");

    /// <summary>Flushes what was written to the disk and gives it its name.</summary>
    /// <exception cref="IOException">There is a file of that name.</exception>
    public static void Finish(string unfinished, string file)
    {
        using (var written = new FileStream(unfinished, FileMode.Open, FileAccess.ReadWrite))
        {
            written.Flush(flushToDisk: true);
        }

        File.Move(unfinished, file, overwrite: false);
        FlushFolder(Path.GetDirectoryName(file)!);
    }

    /// <summary>Takes away a file that was not finished, and what SQLite may have left beside it.</summary>
    public static void Discard(string unfinished)
    {
        foreach (var ending in new[] { "", "-journal", "-wal", "-shm" })
        {
            File.Delete(unfinished + ending);
        }
    }

    // The name is on the disk when the folder is. Windows keeps names by itself, and opens no folder as a file.
    private static void FlushFolder(string folder)
    {
        if (OperatingSystem.IsWindows())
        {
            return;
        }

        var opened = NativeMethods.Open(folder, 0);
        if (opened >= 0)
        {
            _ = NativeMethods.Flush(opened);
            _ = NativeMethods.Close(opened);
        }
    }

    private static class NativeMethods
    {
        [DllImport("libc", EntryPoint = "open", CharSet = CharSet.Ansi, BestFitMapping = false)]
        [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
        internal static extern int Open([MarshalAs(UnmanagedType.LPUTF8Str)] string path, int flags);

        [DllImport("libc", EntryPoint = "fsync")]
        [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
        internal static extern int Flush(int file);

        [DllImport("libc", EntryPoint = "close")]
        [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
        internal static extern int Close(int file);
    }
}
