namespace Clutchwright.Catalogue.Tests.Folders;

/// <summary>The made-up species folder, and copies of it with one thing changed.</summary>
internal sealed class TestFolder : IDisposable
{
    private readonly DirectoryInfo _root = Directory.CreateTempSubdirectory("clutchwright-");

    public TestFolder()
    {
        foreach (var file in Directory.EnumerateFiles(Shipped, "*.yaml", SearchOption.AllDirectories))
        {
            var target = System.IO.Path.Combine(_root.FullName, System.IO.Path.GetRelativePath(Shipped, file));
            Directory.CreateDirectory(System.IO.Path.GetDirectoryName(target)!);
            File.Copy(file, target);
        }
    }

    public static string Shipped { get; } = System.IO.Path.Combine(AppContext.BaseDirectory, "TestSpecies");

    public static SpeciesCatalogue Catalogue { get; } =
        CatalogueFolder.Read(System.IO.Path.Combine(Shipped, "lacerta-ficta")).Catalogue
        ?? throw new InvalidOperationException("The test species has problems.");

    public string Path => System.IO.Path.Combine(_root.FullName, "lacerta-ficta");

    /// <summary>Puts one text in place of another, which must stand in the file exactly once.</summary>
    public void Change(string file, string old, string changed)
    {
        var path = System.IO.Path.Combine(Path, file);
        var text = File.ReadAllText(path);
        var at = text.IndexOf(old, StringComparison.Ordinal);
        if (at < 0 || text.IndexOf(old, at + 1, StringComparison.Ordinal) >= 0)
        {
            throw new ArgumentException($"'{old}' does not stand once in {file}.", nameof(old));
        }

        File.WriteAllText(path, text[..at] + changed + text[(at + old.Length)..]);
    }

    public void Append(string file, string text) => File.AppendAllText(System.IO.Path.Combine(Path, file), text);

    public void Delete(string file) => File.Delete(System.IO.Path.Combine(Path, file));

    public IReadOnlyList<string> Problems() =>
        CatalogueFolder.Read(Path).Problems.Select(p => p.ToString()).ToArray();

    public void Dispose() => _root.Delete(recursive: true);
}
