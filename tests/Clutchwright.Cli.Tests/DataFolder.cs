namespace Clutchwright.Cli.Tests;

/// <summary>A data folder of its own for one test.</summary>
internal sealed class DataFolder : IDisposable
{
    public string Path { get; } = Directory.CreateTempSubdirectory("clutchwright-cli-").FullName;

    /// <summary>Writes a file into the folder.</summary>
    public string Write(string name, string text)
    {
        var path = System.IO.Path.Combine(Path, name);
        File.WriteAllText(path, text);
        return path;
    }

    public void Dispose() => Directory.Delete(Path, recursive: true);
}
