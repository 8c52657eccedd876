using System.Xml.Linq;
using Xunit;

namespace Clutchwright.Architecture.Tests.Arrows;

/// <summary>What is built and tested is all of it.</summary>
public sealed class SolutionTests
{
    [Fact]
    public void Solution_NamesEveryProject()
    {
        var named = XDocument.Parse(Checkout.Read("Clutchwright.slnx")).Descendants("Project").Select(p => p.Attribute("Path")!.Value);

        var there = new[] { "src", "tests", "bench" }.SelectMany(f => Checkout.Files(f, ".csproj"));

        Assert.Equal(there.Order(StringComparer.Ordinal), named.Order(StringComparer.Ordinal));
    }

    [Fact]
    public void EveryProject_HasItsLockFile() =>
        Assert.All(
            new[] { "src", "tests", "bench" }.SelectMany(f => Checkout.Files(f, ".csproj")),
            p => Assert.True(File.Exists(Path.Combine(Checkout.Root, Path.GetDirectoryName(p)!, "packages.lock.json")), p));
}
