using Microsoft.Playwright;
using Xunit;
using static Microsoft.Playwright.Assertions;

namespace Clutchwright.Browser;

/// <summary>A season is planned, a pair is pinned, and the pin is undone.</summary>
[Collection(BrowserGroup.Name)]
public sealed class SeasonTests(BrowserFixture browser)
{
    [Theory]
    [InlineData(1280, true)]
    [InlineData(360, false)]
    public async Task Pin_PairOfThePlan_StaysAndIsUndone(int width, bool script)
    {
        await using var visit = await browser.VisitAsync("demo", width: width, script: script);
        var page = visit.Page;
        await page.GotoAsync("/season");
        await page.GetByLabel("To hatch").FillAsync("Clown");
        await page.GetByRole(AriaRole.Button, new() { Name = "Plan the season" }).ClickAsync();

        await Expect(page.Locator(".lede")).ToContainTextAsync("proven best");
        await page.Locator(".plan").GetByRole(AriaRole.Link, new() { Name = "Pin", Exact = false }).First.ClickAsync();

        await Expect(page.GetByText("You pinned it.")).ToBeVisibleAsync();
        await page.GetByRole(AriaRole.Link, new() { Name = "Undo: pinned", Exact = false }).ClickAsync();
        await Expect(page.GetByText("You pinned it.")).ToHaveCountAsync(0);
        visit.AssertClean();
    }

    [Theory]
    [InlineData("/season", "start")]
    [InlineData("/season?goal=Enchi Clown*10&goal=Piebald*2&ban=T-205|T-210&matings=3&clutches=6&inbreeding=12.5", "plan")]
    [InlineData("/season?goal=Clown&clutches=0&pin=T-205|T-210", "clash")]
    public async Task Page_EachAnswer_IsAccessible(string path, string name)
    {
        await using var visit = await browser.VisitAsync("demo");

        await visit.GoAsync(path);

        await PagesTests.AssertAccessibleAsync(visit);
        await PagesTests.PhotographAsync(visit, $"season_{name}");
    }
}
