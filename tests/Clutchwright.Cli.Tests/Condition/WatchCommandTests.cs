using System.Globalization;
using Xunit;

namespace Clutchwright.Cli.Tests.Condition;

/// <summary><c>stock watch</c>.</summary>
public sealed class WatchCommandTests
{
    [Fact]
    public async Task Watch_OfARoomAndOfOne_TellsWhoLosesMass()
    {
        using var data = new DataFolder();
        Assert.Equal(ExitCode.Answered, (await Run.ShippedAsync("stock", "import", data.Write("animals.csv", "id,sex,hatched\nM,m,2020\nF,f,2020\n"), "--data", data.Path)).Code);
        foreach (var (days, grams) in new[] { (120, "2000"), (3, "1600") })
        {
            var day = TimeProvider.System.GetLocalNow().Date.AddDays(-days).ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);
            Assert.Equal(ExitCode.Answered, (await Run.ShippedAsync("stock", "note", "F", "weighed", "--amount", grams, "--on", day, "--data", data.Path)).Code);
        }

        var watch = await Run.ShippedAsync("stock", "watch", "--data", data.Path);
        var room = (await Run.ShippedAsync("stock", "watch", "--data", data.Path, "--json")).Json;
        var one = (await Run.ShippedAsync("stock", "watch", "f", "--data", data.Path, "--json")).Json;

        Assert.StartsWith("Ask a reptile veterinarian\n", watch.Output, StringComparison.Ordinal);
        Assert.Contains("1,600 g 3 days ago is 20 % less than the 2,000 g of", watch.Output, StringComparison.Ordinal);
        Assert.Equal(("F", "ask", 2, 1), ((string?)room["animals"]![0]!["id"], (string?)room["animals"]![0]!["level"], (int)room["inTheRoom"]!, (int)room["neverWeighed"]!));
        Assert.Equal((3, 0.2, "practice"), ((int)one["daysSinceWeighing"]!, Math.Round((double)one["mass"]!["unexplained"]!, 9), (string?)one["rhythm"]!["basis"]));
        Assert.Equal(ExitCode.AskedWrongly, (await Run.ShippedAsync("stock", "watch", "X", "--data", data.Path)).Code);
    }
}
