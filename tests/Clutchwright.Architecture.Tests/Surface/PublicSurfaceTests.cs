using PublicApiGenerator;
using Xunit;

namespace Clutchwright.Architecture.Tests.Surface;

/// <summary>The public surface of an engine is a text file, so that a change of it is seen in review.</summary>
/// <remarks>Run with CLUTCHWRIGHT_REWRITE=1 to write the files anew.</remarks>
public sealed class PublicSurfaceTests
{
    public static TheoryData<string> Engines => [.. Checkout.Engines.Select(p => p.Name)];

    [Theory]
    [MemberData(nameof(Engines))]
    public void PublicSurface_OfAnEngine_IsAsItsFileSays(string engine)
    {
        var project = Checkout.Engines.Single(p => p.Name == engine);
        var file = Path.Combine(Checkout.Root, "tests", "Clutchwright.Architecture.Tests", "Surface", engine + ".txt");

        var surface = project.Load().GeneratePublicApi(new ApiGeneratorOptions { IncludeAssemblyAttributes = false })
            .ReplaceLineEndings("\n").TrimEnd() + "\n";

        if (Environment.GetEnvironmentVariable("CLUTCHWRIGHT_REWRITE") is "1")
        {
            File.WriteAllText(file, surface);
        }

        Assert.Equal(File.ReadAllText(file), surface);
    }
}
