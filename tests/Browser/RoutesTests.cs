using Microsoft.Playwright;
using Xunit;
using static Microsoft.Playwright.Assertions;

namespace Clutchwright.Browser;

/// <summary>Routes over several seasons as they are asked for, read, chosen and stopped.</summary>
[Collection(BrowserGroup.Name)]
public sealed class RoutesTests(BrowserFixture browser)
{
    private const float LongEnough = 120_000;

    public static TheoryData<string, string> Answers() => new()
    {
        { "demo", "/route" },
        { "demo", "/route?want=Pastel Clown Pied" },
        { "demo", "/route?want=Pastel Clown Pied&route=4&purchases=yes&buy=1.0 Clown Pied=300" },
        { "demo", "/route?want=Super Pastel Spider" },
        { "demo", "/route?want=Clwn&seasons=0&buy=Clown&space=many" },
        { "demo", "/route?want=Clwn" },
        { "empty", "/route?want=Pastel Clown" },
        { "empty", "/route?want=Pastel Clown&buy=singles" },
        { "large", "/route?want=Pastel Clown Pied" },
    };

    [Theory]
    [MemberData(nameof(Answers))]
    public async Task Page_LightAndDarkPhoneAndDesktop_IsAccessibleAndKeepsToThePhone(string room, string path)
    {
        var visit = await browser.TourAsync(room);

        await AnswerAsync(visit, path);

        await PagesTests.AssertFitsAPhoneAsync(visit);
        Assert.Equal(1, await visit.Page.Locator("h1").CountAsync());
        await PagesTests.AssertAccessibleAsync(visit);
        await PagesTests.PhotographAsync(visit, $"{room}_{string.Concat(path.Trim('/').Select(c => char.IsLetterOrDigit(c) ? c : '-'))}");
    }

    [Theory]
    [InlineData(1280, true)]
    [InlineData(360, true)]
    [InlineData(360, false)]
    public async Task Walk_AskChooseAndOpenAFounder_LeadsToTheAnimal(int width, bool script)
    {
        await using var visit = await browser.VisitAsync("demo", width: width, script: script);
        var page = visit.Page;
        page.SetDefaultTimeout(LongEnough);

        await page.GotoAsync("/");
        await page.GetByRole(AriaRole.Link, new() { Name = "Route", Exact = true }).ClickAsync();
        await page.GetByLabel("What should hatch in the end").FillAsync("Pastel Clown Pied");
        await page.GetByLabel("Within so many seasons").FillAsync("7");
        await page.GetByRole(AriaRole.Button, new() { Name = "Find the routes" }).ClickAsync();

        await Expect(page.GetByRole(AriaRole.Region, new() { Name = "The routes side by side" })).ToBeVisibleAsync(new() { Timeout = LongEnough });
        await page.GetByRole(AriaRole.Link, new() { Name = "Route 2", Exact = true }).ClickAsync();
        await Expect(page.GetByRole(AriaRole.Link, new() { Name = "Route 2", Exact = true })).ToHaveAttributeAsync("aria-current", "true");
        await Expect(page.Locator("#route h2").First).ToHaveTextAsync("Route 2");
        await page.Locator("#route ol a").First.ClickAsync();
        await Expect(page.GetByRole(AriaRole.Heading, new() { Level = 1 })).ToContainTextAsync("T-");
        visit.AssertClean();
    }

    [Fact]
    public async Task Map_DemoStock_NamesEveryPairingOfTheWordsAndEndsInTheWanted()
    {
        await using var visit = await browser.VisitAsync("demo");
        await AnswerAsync(visit, "/route?want=Pastel Clown Pied");
        var page = visit.Page;

        var pairings = await page.Locator("#route ol.steps > li").CountAsync();
        Assert.Equal(pairings, await page.Locator(".route-map .card").CountAsync());
        Assert.Equal(1, await page.Locator(".route-map .target").CountAsync());
        var letters = await page.Locator(".route-map .letter").AllTextContentsAsync();
        foreach (var letter in letters)
        {
            await Expect(page.Locator("#route ol.steps")).ToContainTextAsync([$"Hold back {letter}", string.Empty]);
            break;
        }

        Assert.NotEmpty(letters);
        Assert.StartsWith("/stock/T-", await page.Locator(".route-map a").First.GetAttributeAsync("href"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Stop_SearchUnderWay_BringsBackTheFilledForm()
    {
        await using var visit = await browser.VisitAsync("large");
        var page = visit.Page;
        await page.GotoAsync("/route?want=Pastel Clown Pied Banana Mojave&seasons=12", new() { WaitUntil = WaitUntilState.DOMContentLoaded });

        await page.GetByRole(AriaRole.Link, new() { Name = "Stop" }).ClickAsync();

        await Expect(page.GetByLabel("What should hatch in the end")).ToHaveValueAsync("Pastel Clown Pied Banana Mojave");
        await Expect(page.GetByLabel("Within so many seasons")).ToHaveValueAsync("12");
    }

    [Fact]
    public async Task Question_AskedWrongly_IsToldBesideTheField()
    {
        await using var visit = await browser.VisitAsync("demo");
        await visit.GoAsync("/route?want=Clown&seasons=50&rearing=none");

        await Expect(visit.Page.Locator("#seasons-problem")).ToContainTextAsync("Give a whole number from 1 to 20");
        await Expect(visit.Page.Locator("#rearing-problem")).ToContainTextAsync("Give a share in percent");
        Assert.Equal("true", await visit.Page.Locator("#seasons").GetAttributeAsync("aria-invalid"));
    }

    [Fact]
    public async Task Stock_Empty_OffersARouteFromAnimalsBought()
    {
        await using var visit = await browser.VisitAsync("empty");
        var page = visit.Page;
        await page.GotoAsync("/stock");
        await page.GetByRole(AriaRole.Link, new() { Name = "Start from what should hatch in the end" }).ClickAsync();
        await page.GetByLabel("What should hatch in the end").FillAsync("Pastel Clown");
        await page.GetByRole(AriaRole.Button, new() { Name = "Find the routes" }).ClickAsync();

        await Expect(page.Locator("#route ol.steps")).ToContainTextAsync(["bought"], new() { Timeout = LongEnough });
    }

    [Fact]
    public async Task Route_OnPaper_IsTheAnswerWithItsMap()
    {
        await using var visit = await browser.VisitAsync("demo", width: 720);
        await AnswerAsync(visit, "/route?want=Pastel Clown Pied");

        await visit.Page.EmulateMediaAsync(new PageEmulateMediaOptions { Media = Media.Print });

        await Expect(visit.Page.GetByRole(AriaRole.Navigation)).ToHaveCountAsync(0);
        await Expect(visit.Page.GetByRole(AriaRole.Button)).ToHaveCountAsync(0);
        await Expect(visit.Page.Locator(".route-map")).ToBeVisibleAsync();
        var map = await visit.Page.Locator(".route-map").BoundingBoxAsync();
        Assert.InRange(map!.X + map.Width, 0, 720);
        if (Environment.GetEnvironmentVariable("CLUTCHWRIGHT_SCREENSHOTS") is { Length: > 0 } folder)
        {
            Directory.CreateDirectory(folder);
            await visit.Page.ScreenshotAsync(new PageScreenshotOptions { Path = Path.Combine(folder, "demo_route_print.png"), FullPage = true });
        }
    }

    // The page sends for the answer and comes again with it.
    private static async Task AnswerAsync(Visit visit, string path)
    {
        await visit.Page.GotoAsync(path);
        await Expect(visit.Page.Locator("[data-work]")).ToHaveCountAsync(0, new() { Timeout = LongEnough });
        await visit.Page.EvaluateAsync("() => document.fonts.ready.then(() => true)");
    }
}
