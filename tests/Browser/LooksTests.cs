using Microsoft.Playwright;
using Xunit;
using static Microsoft.Playwright.Assertions;

namespace Clutchwright.Browser;

/// <summary>A look is looked for, put on the board, printed and followed to its pairs.</summary>
[Collection(BrowserGroup.Name)]
public sealed class LooksTests(BrowserFixture browser)
{
    [Theory]
    [InlineData(1280, true)]
    [InlineData(360, true)]
    [InlineData(360, false)]
    public async Task Walk_ToneToMakingsToBoardToPairs_LeadsThere(int width, bool script)
    {
        await using var visit = await browser.VisitAsync("demo", width: width, script: script);
        var page = visit.Page;

        await page.GotoAsync("/");
        await page.GetByRole(AriaRole.Link, new() { Name = "Looks", Exact = true }).ClickAsync();
        await page.GetByRole(AriaRole.Radio, new() { Name = "strong yellow", Exact = true }).CheckAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Find makings" }).ClickAsync();

        await Expect(page.GetByRole(AriaRole.Heading, new() { Level = 1 })).ToHaveTextAsync("Makings that look so");
        await Expect(page.Locator(".lede")).ToHaveTextAsync("Pattern strong yellow (within 12); as an adult.");
        await page.GetByRole(AriaRole.Link, new() { Name = "Add to board: Super Pastel", Exact = true }).ClickAsync();
        await page.GetByRole(AriaRole.Link, new() { Name = "Add to board: Pastel", Exact = true }).ClickAsync();
        await page.GetByRole(AriaRole.Link, new() { Name = "Open the board" }).ClickAsync();

        await Expect(page.GetByRole(AriaRole.Heading, new() { Level = 1 })).ToHaveTextAsync("Board of looks");
        await Expect(page.Locator(".board > li")).ToHaveCountAsync(2);
        await page.GetByRole(AriaRole.Link, new() { Name = "Take off: Super Pastel" }).ClickAsync();
        await Expect(page.Locator(".board > li")).ToHaveCountAsync(1);
        await page.GetByLabel("Add a making").FillAsync("Clown");
        await page.GetByRole(AriaRole.Button, new() { Name = "Add it" }).ClickAsync();
        await Expect(page.Locator(".board > li")).ToHaveCountAsync(2);
        await page.GetByRole(AriaRole.Link, new() { Name = "Pairs for Clown" }).ClickAsync();
        await Expect(page.GetByRole(AriaRole.Heading, new() { Level = 1 })).ToHaveTextAsync("Pairs for Clown");
        visit.AssertClean();
    }

    [Fact]
    public async Task Tone_OwnColourPicked_IsTheOneAskedFor()
    {
        await using var visit = await browser.VisitAsync("demo");
        var page = visit.Page;
        await visit.GoAsync("/looks");

        await page.GetByLabel("My own colour").FillAsync("#b08d3c");
        await page.GetByRole(AriaRole.Button, new() { Name = "Find makings" }).ClickAsync();

        await Expect(page.Locator(".lede")).ToContainTextAsync("#B08D3C");
        visit.AssertClean();
    }

    [Fact]
    public async Task Tones_KeyboardAlone_AreWalkedWithTheArrows()
    {
        await using var visit = await browser.VisitAsync("demo");
        var page = visit.Page;
        await visit.GoAsync("/looks");

        await page.GetByRole(AriaRole.Radio, new() { Name = "any tone" }).FocusAsync();
        await page.Keyboard.PressAsync("ArrowDown");
        await page.Keyboard.PressAsync("ArrowDown");

        var chosen = page.Locator("input[name=tone]:checked");
        await Expect(chosen).ToBeFocusedAsync();
        Assert.NotEqual("none", await chosen.EvaluateAsync<string>("e => getComputedStyle(e.nextElementSibling).outlineStyle"));
        await page.Keyboard.PressAsync("Enter");
        await Expect(page.GetByRole(AriaRole.Heading, new() { Level = 1 })).Not.ToHaveTextAsync("Which look?");
    }

    [Fact]
    public async Task Tones_OnAPhone_AreBigEnoughToPress()
    {
        await using var visit = await browser.VisitAsync("demo", width: 360, height: 740);
        await visit.GoAsync("/looks");

        Assert.Empty(await visit.Page.EvaluateAsync<string[]>(
            """
            () => [...document.querySelectorAll('.looks-form label:has(input), .spine a')]
              // What is not on the page at this width is nothing to press.
              .filter(e => e.getClientRects().length > 0)
              .filter(e => { const r = e.getBoundingClientRect(); return r.height < 43.5 || r.width < 43; }).map(e => e.textContent + e.getBoundingClientRect().width)
            """));
    }

    [Fact]
    public async Task Board_OnPaper_IsTheBoardAlone()
    {
        await using var visit = await browser.VisitAsync("demo", width: 720);
        await visit.GoAsync("/looks/board?m=Pastel Clown&m=Albino&m=Bumblebee&m=Blue-eyed White");

        await visit.Page.EmulateMediaAsync(new PageEmulateMediaOptions { Media = Media.Print });

        await Expect(visit.Page.GetByRole(AriaRole.Navigation)).ToHaveCountAsync(0);
        await Expect(visit.Page.GetByRole(AriaRole.Button)).ToHaveCountAsync(0);
        await Expect(visit.Page.GetByRole(AriaRole.Link, new() { Name = "Pairs for" })).ToHaveCountAsync(0);
        Assert.Equal(720, await visit.Page.EvaluateAsync<int>("() => document.documentElement.scrollWidth"));
        if (Environment.GetEnvironmentVariable("CLUTCHWRIGHT_SCREENSHOTS") is { Length: > 0 } folder)
        {
            Directory.CreateDirectory(folder);
            await visit.Page.ScreenshotAsync(new PageScreenshotOptions { Path = Path.Combine(folder, "demo_board_print.png"), FullPage = true });
        }
    }

    [Fact]
    public async Task Query_Misspelled_PointsAtThePlace()
    {
        await using var visit = await browser.VisitAsync("demo");
        await visit.GoAsync("/looks?q=pattern strnog yellow");

        await Expect(visit.Page.Locator(".problem mark")).ToHaveTextAsync("strnog yellow");
        await Expect(visit.Page.Locator(".spellings")).ToContainTextAsync("strong yellow");
    }
}
