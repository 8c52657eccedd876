using System.Text.RegularExpressions;
using Xunit;

namespace Clutchwright.Catalogue.Tests.TradeTexts;

/// <summary>docs/how-to/trade-text.md says what is so.</summary>
public sealed partial class TradeTextPageTests
{
    [Fact]
    public void Page_EveryExampleOfAnAnimal_IsRead()
    {
        var page = File.ReadAllLines(Path.Combine(AppContext.BaseDirectory, "docs", "trade-text.md"));
        var examples = page
            .Where(l => l.StartsWith("| `", StringComparison.Ordinal))
            .SelectMany(l => Code().Matches(l.Split(" | ")[0]).Select(m => m.Groups["text"].Value))
            .ToArray();

        Assert.True(examples.Length >= 15);
        Assert.All(examples, e => Assert.True(SampleSpecies.Trade.Read(e).IsRead, e));
    }

    [GeneratedRegex("`(?<text>[^`]+)`", RegexOptions.CultureInvariant | RegexOptions.ExplicitCapture)]
    private static partial Regex Code();
}
