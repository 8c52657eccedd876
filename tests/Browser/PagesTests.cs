using Deque.AxeCore.Playwright;
using Microsoft.Playwright;
using Xunit;

namespace Clutchwright.Browser;

/// <summary>What holds on every page: in light and dark, on a phone and on a desktop, with no animal and with many.</summary>
[Collection(BrowserGroup.Name)]
public sealed class PagesTests(BrowserFixture browser)
{
    private static readonly string[] InEveryRoom =
    [
        "/", "/stock", "/stock/new", "/stock/import", "/stock/history", "/stock/bin", "/pairs", "/pairs?want=Pastel Clown", "/pairs?want=Clwn",
        "/cross", "/cross?sire=1.0 het Clown&dam=0.1 het Clown&want=Clown&eggs=6", "/cross?sire=1.0 Pastel Mojave 66% het Clown&dam=0.1 Lesser Clown&want=Clown&want=Pastel Clown",
        "/cross?sire=1.0 het Clwn&dam=0.1 Clown&eggs=many", "/cross?sire=1.0 Banana Spider&dam=0.1 Spider Enchi&want=Banana", "/catalogue", "/catalogue?find=clown", "/catalogue/clown",
        "/not-found", "/problem",
    ];

    public static TheoryData<string, string> Rooms()
    {
        var rooms = new TheoryData<string, string>();
        foreach (var page in InEveryRoom)
        {
            rooms.Add("demo", page);
        }

        foreach (var page in new[] { "/", "/stock", "/stock/history", "/pairs?want=Clown" })
        {
            rooms.Add("empty", page);
            rooms.Add("large", page);
        }

        rooms.Add("large", "/stock?page=17&order=hatched&sex=f");
        rooms.Add("large", "/stock/L0001");
        rooms.Add("large", "/stock/L0001/edit");
        return rooms;
    }

    [Theory]
    [MemberData(nameof(Rooms))]
    public async Task Page_LightAndDarkPhoneAndDesktop_IsAccessibleAndKeepsToItself(string room, string path)
    {
        foreach (var (scheme, width) in from s in new[] { ColorScheme.Light, ColorScheme.Dark } from w in new[] { 390, 1280 } select (s, w))
        {
            await using var visit = await browser.VisitAsync(room, scheme, width);

            await visit.GoAsync(path);

            var violations = (await visit.Page.RunAxe()).Violations;
            Assert.True(violations.Length == 0, $"{scheme} {width}: {string.Join("; ", violations.Select(v => $"{v.Id} {v.Help}: {string.Join(" | ", v.Nodes.Take(3).Select(n => n.Html))}"))}");
            Assert.Equal(1, await visit.Page.Locator("main").CountAsync());
            Assert.Equal(1, await visit.Page.Locator("h1").CountAsync());
            visit.AssertClean();
        }
    }

    [Theory]
    [MemberData(nameof(Rooms))]
    public async Task Page_NarrowPhone_DoesNotScrollSidewaysAndHasBigTargets(string room, string path)
    {
        await using var visit = await browser.VisitAsync(room, width: 360, height: 740);

        await visit.GoAsync(path);

        Assert.Equal(360, await visit.Page.EvaluateAsync<int>("() => document.documentElement.scrollWidth"));
        var small = await visit.Page.EvaluateAsync<string[]>(
            """
            () => [...document.querySelectorAll('button, input:not([type=hidden], [type=radio]), select, textarea, summary, nav a, a.button')]
              .filter(e => { const r = e.getBoundingClientRect(); return r.width > 0 && r.height > 1 && r.height < 43.5; })
              .map(e => e.outerHTML.slice(0, 120))
            """);
        Assert.Empty(small);
    }

    [Theory]
    [MemberData(nameof(Rooms))]
    public async Task Page_OnRequest_IsPhotographed(string room, string path)
    {
        var folder = Environment.GetEnvironmentVariable("CLUTCHWRIGHT_SCREENSHOTS");
        Assert.SkipWhen(string.IsNullOrEmpty(folder), "Set CLUTCHWRIGHT_SCREENSHOTS to a folder to have every page photographed into it.");
        Directory.CreateDirectory(folder!);
        foreach (var (scheme, width) in from s in new[] { ColorScheme.Light, ColorScheme.Dark } from w in new[] { 390, 1440 } select (s, w))
        {
            await using var visit = await browser.VisitAsync(room, scheme, width, width < 600 ? 844 : 960);
            await visit.GoAsync(path);
            var name = string.Concat(path.Trim('/').Select(c => char.IsLetterOrDigit(c) ? c : '-'));
            await visit.Page.ScreenshotAsync(new PageScreenshotOptions
            {
                Path = Path.Combine(folder!, $"{room}_{(name.Length == 0 ? "start" : name)}_{scheme.ToString().ToLowerInvariant()}_{(width < 600 ? "phone" : "desktop")}.png"),
                FullPage = true,
            });
        }
    }
}
