using Clutchwright.Desk.Words;
using Clutchwright.Genetics.Numbers;
using Clutchwright.Web.Forms;
using Clutchwright.Web.Words;
using Microsoft.AspNetCore.Components;
using Microsoft.AspNetCore.Components.Web;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Logging.Abstractions;
using Xunit;

namespace Clutchwright.Web.Tests.Words;

public sealed class ComponentTests
{
    [Fact]
    public async Task GenotypeText_SeenAndCarried_AreBoldAndItalic()
    {
        var words = new AnimalWords(
            [new("Pastel", true, null, "pastel"), new("Clown", true, null, "clown"), new("66% het Pied", false, Probability.Ratio(2, 3), null)], string.Empty);

        var html = await HtmlAsync<GenotypeText>(new() { ["Words"] = words });

        Assert.Contains("<b>Pastel</b> <b>Clown</b>, <i>66% het Pied</i>", Bare(html), StringComparison.Ordinal);
    }

    [Fact]
    public async Task EggGrid_ThreeInSixteen_FillsThreeAndSaysSo()
    {
        var html = await HtmlAsync<EggGrid>(new() { ["Chance"] = Probability.Ratio(3, 16), ["Of"] = "Clown" });

        Assert.Equal(16, html.Split("<use ").Length - 1);
        Assert.Equal(3, html.Split("class=\"wanted\"").Length - 1);
        Assert.Contains("aria-label=\"3 of 16 eggs: Clown\"", html, StringComparison.Ordinal);
    }

    [Fact]
    public async Task ToneStrip_Composed_SaysSoInWordsAndByHatching()
    {
        var look = new LookWords(
            "Pastel Clown", IsRecorded: false, ["Pastel", "Clown"], [new("hatchling", 0, new("vivid yellow", "#F3C300"), null, null)], [], null, null, []);

        var html = await HtmlAsync<ToneStrip>(new() { ["Look"] = look });

        Assert.Contains("Composed from Pastel, Clown", html, StringComparison.Ordinal);
        Assert.Contains("url(#hatch)", html, StringComparison.Ordinal);
        Assert.Contains("(composed from its parts, not recorded)", html, StringComparison.Ordinal);
    }

    [Fact]
    public async Task ProblemText_PlaceInTheText_IsMarkedAndMended()
    {
        var html = await HtmlAsync<ProblemText>(new()
        {
            ["Problem"] = new AskedWrongly("sire", "Not known.", 8, 4, ["Clown"]),
            ["Asked"] = "1.0 het Clwn Pied",
            ["Mend"] = (Func<string, string>)(text => $"/cross?sire={text}"),
        });

        Assert.Contains("1.0 het <mark", html, StringComparison.Ordinal);
        Assert.Contains(">Clwn</mark> Pied", html, StringComparison.Ordinal);
        Assert.Contains("href=\"/cross?sire=1.0 het Clown Pied\"", html, StringComparison.Ordinal);
    }

    // What a page's own style adds to every element is of no account here.
    private static string Bare(string html) => System.Text.RegularExpressions.Regex.Replace(html, " b-[a-z0-9]+", string.Empty, default, TimeSpan.FromSeconds(1));

    private static async Task<string> HtmlAsync<TComponent>(Dictionary<string, object?> parameters)
        where TComponent : IComponent
    {
        await using var services = new ServiceCollection().BuildServiceProvider();
        await using var renderer = new HtmlRenderer(services, NullLoggerFactory.Instance);
        return await renderer.Dispatcher.InvokeAsync(async () =>
            (await renderer.RenderComponentAsync<TComponent>(ParameterView.FromDictionary(parameters))).ToHtmlString());
    }
}
