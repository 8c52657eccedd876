namespace Clutchwright.Architecture.Tests;

/// <summary>The files of the project, as they would be committed.</summary>
internal static class Checkout
{
    private static readonly string[] NotKept = [".git", "artifacts", "bin", "obj", "out", "node_modules", "BenchmarkDotNet.Artifacts"];

    /// <summary>Gets the top folder.</summary>
    public static string Root { get; } = FindRoot();

    /// <summary>Gets the projects of <c>src</c> that have a project file.</summary>
    public static IReadOnlyList<SourceProject> Projects { get; } = Directory
        .GetFiles(Path.Combine(Root, "src"), "*.csproj", SearchOption.AllDirectories)
        .Order(StringComparer.Ordinal)
        .Select(SourceProject.Read)
        .ToArray();

    /// <summary>Gets the engines: pure, without packages, files, clocks, loggers or chance of their own.</summary>
    public static IReadOnlyList<SourceProject> Engines { get; } = Projects
        .Where(p => p.Name is "Clutchwright.Genetics" or "Clutchwright.Pedigrees" or "Clutchwright.Proofs" or "Clutchwright.Planning")
        .ToArray();

    /// <summary>Lists files under a folder of the checkout, by ending, relative to the top.</summary>
    public static IEnumerable<string> Files(string folder, params string[] endings) => Walk(Path.Combine(Root, folder))
        .Where(f => endings.Length == 0 || endings.Any(e => f.EndsWith(e, StringComparison.Ordinal)))
        .Select(f => Path.GetRelativePath(Root, f).Replace('\\', '/'))
        .Order(StringComparer.Ordinal);

    /// <summary>Reads a file of the checkout.</summary>
    public static string Read(string relative) => File.ReadAllText(Path.Combine(Root, relative));

    private static IEnumerable<string> Walk(string folder) => Directory.Exists(folder)
        ? Directory.GetFiles(folder).Concat(Directory.GetDirectories(folder)
            .Where(d => !NotKept.Contains(Path.GetFileName(d), StringComparer.Ordinal))
            .SelectMany(Walk))
        : [];

    private static string FindRoot()
    {
        for (var folder = new DirectoryInfo(AppContext.BaseDirectory); folder is not null; folder = folder.Parent)
        {
            if (File.Exists(Path.Combine(folder.FullName, "Clutchwright.slnx")))
            {
                return folder.FullName;
            }
        }

        throw new DirectoryNotFoundException("The tests run inside a checkout.");
    }
}
