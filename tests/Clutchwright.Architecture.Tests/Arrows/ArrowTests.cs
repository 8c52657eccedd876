using Xunit;

namespace Clutchwright.Architecture.Tests.Arrows;

/// <summary>Arrows point down only: Web, Cli ► Desk ► Planning, Proofs, Stock ► Pedigrees, Catalogue ► Genetics; Desk ► Sheets, Pictures.</summary>
public sealed class ArrowTests
{
    // The higher number may name the lower, never the same nor a higher one. The command line starts the web app (serve).
    private static readonly Dictionary<string, int> Floors = new(StringComparer.Ordinal)
    {
        ["Clutchwright.Genetics"] = 0,
        ["Clutchwright.Pictures"] = 0,
        ["Clutchwright.Sheets"] = 0,
        ["Clutchwright.Pedigrees"] = 1,
        ["Clutchwright.Catalogue"] = 1,
        ["Clutchwright.Planning"] = 2,
        ["Clutchwright.Proofs"] = 2,
        ["Clutchwright.Stock"] = 2,
        ["Clutchwright.Stock.Sqlite"] = 3,
        ["Clutchwright.Stock.PostgreSql"] = 3,
        ["Clutchwright.Desk"] = 4,
        ["Clutchwright.Web"] = 5,
        ["Clutchwright.Cli"] = 6,
    };

    public static TheoryData<string> Projects => [.. Checkout.Projects.Select(p => p.Name)];

    public static TheoryData<string> Engines => [.. Checkout.Engines.Select(p => p.Name)];

    [Fact]
    public void Projects_OfTheHouse_AreAllOnAFloor() =>
        Assert.Empty(Checkout.Projects.Select(p => p.Name).Except(Floors.Keys));

    [Theory]
    [MemberData(nameof(Projects))]
    public void ProjectFile_NamesOnlyLowerProjects(string project)
    {
        var references = Named(project).References;

        Assert.All(references, r => Assert.True(Floors[r] < Floors[project], $"{project} names {r}."));
    }

    [Theory]
    [MemberData(nameof(Projects))]
    public void Assembly_UsesOnlyLowerProjects(string project)
    {
        var byAssembly = Checkout.Projects.ToDictionary(p => p.AssemblyName, p => p.Name, StringComparer.Ordinal);

        var used = Named(project).AssembliesUsed().Where(byAssembly.ContainsKey).Select(a => byAssembly[a]);

        Assert.All(used, r => Assert.True(Floors[r] < Floors[project], $"{project} uses {r}."));
    }

    [Theory]
    [InlineData("Clutchwright.Cli")]
    [InlineData("Clutchwright.Web")]
    public void Face_UsesNeitherStockNorCatalogueNorPlanning(string face)
    {
        if (Checkout.Projects.All(p => p.Name != face))
        {
            Assert.Skip($"{face} is not there.");
        }

        // Both faces call only the desk; of the engines they may show the values that its answers hold.
        var used = Named(face).AssembliesUsed();

        Assert.Empty(used.Intersect(["Clutchwright.Stock", "Clutchwright.Stock.Sqlite", "Clutchwright.Stock.PostgreSql", "Clutchwright.Catalogue", "Clutchwright.Planning", "Clutchwright.Pedigrees"]));
    }

    [Theory]
    [MemberData(nameof(Projects))]
    public void EntityFramework_IsNamedInStockOnly(string project)
    {
        if (project.StartsWith("Clutchwright.Stock", StringComparison.Ordinal))
        {
            Assert.Contains(Named("Clutchwright.Stock").TypesUsed(), IsEntityFramework);
            return;
        }

        Assert.DoesNotContain(Named(project).TypesUsed(), IsEntityFramework);
    }

    [Theory]
    [MemberData(nameof(Engines))]
    public void Engine_TakesNoPackageButPlanningItsSolver(string engine) =>
        Assert.Equal(engine == "Clutchwright.Planning" ? ["Google.OrTools", "Google.Protobuf"] : [], Named(engine).Packages);

    [Fact]
    public void Photos_AreReadByPicturesOnly() =>
        Assert.Equal(
            ["Clutchwright.Pictures"],
            Checkout.Projects.Where(p => p.TypesUsed().Any(t => t.StartsWith("SkiaSharp.", StringComparison.Ordinal) || t.StartsWith("MetadataExtractor.", StringComparison.Ordinal))).Select(p => p.Name));

    [Fact]
    public void PdfAndCodes_AreWrittenBySheetsOnly() =>
        Assert.Equal(
            ["Clutchwright.Sheets"],
            Checkout.Projects.Where(p => p.TypesUsed().Any(t => t.StartsWith("PdfSharp.", StringComparison.Ordinal) || t.StartsWith("QRCoder.", StringComparison.Ordinal))).Select(p => p.Name));

    [Fact]
    public void Solver_IsCalledByOneTypeOfPlanning()
    {
        var callers = Checkout.Files("src", ".cs", ".razor").Where(f => Checkout.Read(f).Contains("Google.OrTools", StringComparison.Ordinal));

        Assert.Equal(["src/Clutchwright.Planning/Seasons/LinearProgramme.cs"], callers);
    }

    [Theory]
    [MemberData(nameof(Engines))]
    public void Engine_UsesNoFileClockLoggerConsoleOrEnvironment(string engine)
    {
        var forbidden = new[] { "System.IO.", "System.Net.", "System.Console.", "Microsoft.Extensions.", "System.Diagnostics.Process." };

        var used = Named(engine).TypesUsed().Select(t => t + ".").Where(t => Array.Exists(forbidden, f => t.StartsWith(f, StringComparison.Ordinal)));

        Assert.Empty(used);
        // Every lazy list asks for its thread's number; nothing else of the environment may be asked.
        Assert.DoesNotContain(Named(engine).MembersUsed(), m =>
            m.StartsWith("System.Environment.", StringComparison.Ordinal) && m != "System.Environment.get_CurrentManagedThreadId/0");
    }

    [Theory]
    [MemberData(nameof(Engines))]
    public void Engine_TakesClockAndChanceFromOutside(string engine)
    {
        string[] forbidden =
        [
            "System.DateTime.get_Now/0", "System.DateTime.get_UtcNow/0", "System.DateTime.get_Today/0",
            "System.DateTimeOffset.get_Now/0", "System.DateTimeOffset.get_UtcNow/0", "System.TimeProvider.get_System/0",
            "System.Random.get_Shared/0", "System.Random..ctor/0", "System.Guid.NewGuid/0", "System.Guid.CreateVersion7/0",
            "System.Diagnostics.Stopwatch.GetTimestamp/0", "System.Diagnostics.Stopwatch.StartNew/0",
        ];

        Assert.Empty(Named(engine).MembersUsed().Intersect(forbidden));
    }

    private static SourceProject Named(string name) => Checkout.Projects.Single(p => p.Name == name);

    private static bool IsEntityFramework(string type) => type.StartsWith("Microsoft.EntityFrameworkCore", StringComparison.Ordinal);
}
