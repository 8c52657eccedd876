using Clutchwright.Desk.Kin;
using Clutchwright.Genetics.Loci;
using Clutchwright.Genetics.Numbers;
using Clutchwright.Web.Kin;
using Microsoft.AspNetCore.Components;
using Microsoft.AspNetCore.Components.Web;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Logging.Abstractions;
using Xunit;

namespace Clutchwright.Web.Tests.Kin;

public sealed class KinComponentTests
{
    private static readonly KinAnimal Sire = new("S", "Ash", Sex.Male, true);
    private static readonly KinAnimal Dam = new("D", null, Sex.Female, true);

    [Fact]
    public async Task PairKin_HalfSiblings_SaysFigureRelationAncestorAndRoute()
    {
        var pair = new KinPair(
            Sire, Dam, 0.125, new Fraction(1, 8), 0, 0.25, "half sister", new([new(["S", "A", "D"], "A", 0, 1, 0.125)], 0, 0, [new(new("A", null, Sex.Male, false), 0.125, 1)], true), true);

        var html = await HtmlAsync<PairKin>(new() { ["Pair"] = pair });

        Assert.Contains(">12.5% (1/8)</span> would be the inbreeding of their young.", html, StringComparison.Ordinal);
        Assert.Contains("D is S’s half sister.", System.Net.WebUtility.HtmlDecode(html), StringComparison.Ordinal);
        Assert.Contains("D is inbred 25% itself.", html, StringComparison.Ordinal);
        Assert.DoesNotContain("S is inbred", html, StringComparison.Ordinal);
        Assert.Contains("href=\"/cross?sire=S&amp;dam=D\"", html, StringComparison.Ordinal);
    }

    [Fact]
    public async Task PairKin_OneSex_OffersNoCross()
    {
        var pair = new KinPair(Sire, Sire with { Tag = "T" }, 0, null, 0, 0, null, new([], 0, 0, [], true), false);

        var html = await HtmlAsync<PairKin>(new() { ["Pair"] = pair });

        Assert.Contains("The two are of one sex.", html, StringComparison.Ordinal);
        Assert.Contains("no ancestor in common", html, StringComparison.Ordinal);
        Assert.DoesNotContain("/cross", html, StringComparison.Ordinal);
    }

    [Fact]
    public async Task KinTable_Window_ShowsThatPartWithItsDepths()
    {
        var table = new KinTableAnswer(
            [Line("M1"), Line("M2")], [Line("F1"), Line("F2")], [[0, 0.5], [0.25, 0.125]], 0);

        var html = await HtmlAsync<KinTable>(new() { ["Table"] = table, ["FirstMale"] = 1, ["Most"] = 2 });

        Assert.DoesNotContain("M1", html, StringComparison.Ordinal);
        Assert.Contains("href=\"/kin/pairs?sire=M2&amp;dam=F1\"", html, StringComparison.Ordinal);
        Assert.Contains(">25%</a>", html, StringComparison.Ordinal);
        Assert.Contains("class=\"closest\"", html, StringComparison.Ordinal);
        Assert.Contains("class=\"close\"", html, StringComparison.Ordinal);
    }

    private static KinLine Line(string tag) => new(new(tag, null, null, true), 0, null, [], null);

    private static async Task<string> HtmlAsync<TComponent>(Dictionary<string, object?> parameters)
        where TComponent : IComponent
    {
        await using var services = new ServiceCollection().BuildServiceProvider();
        await using var renderer = new HtmlRenderer(services, NullLoggerFactory.Instance);
        return await renderer.Dispatcher.InvokeAsync(async () =>
            (await renderer.RenderComponentAsync<TComponent>(ParameterView.FromDictionary(parameters))).ToHtmlString());
    }
}
