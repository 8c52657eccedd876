namespace Clutchwright.Reference.Tests.Programs;

/// <summary>A fresh folder for one run of a program, gone when the run is over.</summary>
internal sealed class WorkFolder : IDisposable
{
    /// <summary>Gets the full path.</summary>
    public string FullPath { get; } = Directory.CreateTempSubdirectory("clutchwright-reference-").FullName;

    /// <summary>Writes a file into the folder.</summary>
    public void Write(string name, string text) => File.WriteAllText(Path.Combine(FullPath, name), text);

    /// <summary>Reads a file of the folder.</summary>
    public string Read(string name) => File.ReadAllText(Path.Combine(FullPath, name));

    /// <summary>Copies a file of the folder over another.</summary>
    public void Copy(string from, string to) => File.Copy(Path.Combine(FullPath, from), Path.Combine(FullPath, to), overwrite: true);

    /// <inheritdoc/>
    public void Dispose() => Directory.Delete(FullPath, recursive: true);
}
