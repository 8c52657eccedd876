using Microsoft.Playwright;
using Xunit;
using static Microsoft.Playwright.Assertions;

namespace Clutchwright.Browser;

/// <summary>What animals may carry, from a new record to what moved, and records that clash.</summary>
[Collection(BrowserGroup.Name)]
public sealed class CarryTests(BrowserFixture browser)
{
    private const string Family = "id,sex,sire,dam,hatched,seen,told,ruled_out\nS1,m,,,2019,normal,het Clown,\nD1,f,,,2019,normal,het Clown,\nY1,f,S1,D1,2022,normal,66% het Clown,\n";
    private const string Clash = "id,sex,sire,dam,hatched,seen,ruled_out\nX1,m,,,2018,Pied,\nX2,f,,,2018,normal,Pied\nX3,f,X1,X2,2021-07-01,Pied,\n";

    [Theory]
    [InlineData(1280, true)]
    [InlineData(360, true)]
    [InlineData(390, false)]
    public async Task Walk_NewRecord_MovesTheBeliefOfKinUntilItIsSeen(int width, bool script)
    {
        var room = $"carry-{width}-{script}";
        await browser.ImportAsync(room, Family);
        await using var visit = await browser.VisitAsync(room, width: width, script: script);
        var page = visit.Page;

        await page.GotoAsync("/stock");
        await Expect(page.GetByRole(AriaRole.Link, new() { Name = "may carry has changed" })).ToHaveCountAsync(0);
        await page.GotoAsync("/stock/Y1");
        await page.GetByRole(AriaRole.Link, new() { Name = "How this is known" }).ClickAsync();

        await Expect(page.GetByRole(AriaRole.Heading, new() { Level = 1 })).ToContainTextAsync("Y1");
        var clown = page.GetByRole(AriaRole.Region, new() { Name = "Clown group" });
        await Expect(clown.GetByRole(AriaRole.Img).First).ToHaveAttributeAsync("aria-label", "Clown group: het Clown 66.7%, Normal 33.3%");
        await Expect(clown).ToContainTextAsync("2 in 3");
        await Expect(clown.Locator(".walk li").First).ToBeVisibleAsync();
        await Expect(clown).ToContainTextAsync("Have a shed tested for Clown");
        await Expect(page.GetByText("Not counted.")).ToBeVisibleAsync();

        await browser.ImportAsync(room, "id,sire,dam,hatched,seen\nN1,S1,Y1,2025-06-01,Clown\n");
        await page.GotoAsync("/stock");
        await page.GetByRole(AriaRole.Link, new() { Name = "What 1 animal may carry has changed" }).ClickAsync();

        await Expect(page.Locator(".moves > li")).ToHaveCountAsync(1);
        await Expect(page.Locator(".moves > li")).ToContainTextAsync("Y1");
        await Expect(page.Locator(".moves > li strong")).ToHaveTextAsync("100%");
        await page.GetByRole(AriaRole.Button, new() { Name = "I have seen these" }).ClickAsync();
        await Expect(page.GetByRole(AriaRole.Heading, new() { Level = 1 })).ToHaveTextAsync("Stock");
        await Expect(page.GetByRole(AriaRole.Link, new() { Name = "may carry has changed" })).ToHaveCountAsync(0);
        visit.AssertClean();
    }

    [Theory]
    [InlineData(1280)]
    [InlineData(360)]
    public async Task Contradiction_IsFlaggedOnTheStockAndToldOnItsPage(int width)
    {
        await browser.ImportAsync("clash", Clash);
        await using var visit = await browser.VisitAsync("clash", width: width);
        var page = visit.Page;

        await page.GotoAsync("/stock");
        await page.GetByRole(AriaRole.Link, new() { Name = "1 contradiction in the records" }).ClickAsync();

        var contradiction = page.GetByRole(AriaRole.Region, new() { Name = "Contradiction 1: Piebald" });
        await Expect(contradiction).ToContainTextAsync("ruled out: Pied");
        await Expect(contradiction.Locator(".causes > li").First).ToContainTextAsync("To check");
        Assert.Equal(width, await page.EvaluateAsync<int>("() => document.documentElement.scrollWidth"));
        await PagesTests.AssertAccessibleAsync(visit);
        await PagesTests.PhotographAsync(visit, "clash_contradictions");
        await contradiction.GetByRole(AriaRole.Link, new() { Name = "X3" }).First.ClickAsync();
        await Expect(page.GetByRole(AriaRole.Heading, new() { Level = 1 })).ToContainTextAsync("X3");
    }

    [Fact]
    public async Task Moved_OnPhoneAndDesktop_IsAccessible()
    {
        await browser.ImportAsync("moved", Family);
        await using var visit = await browser.VisitAsync("moved");
        await visit.GoAsync("/stock");
        await browser.ImportAsync("moved", "id,sire,dam,hatched,seen\nN1,S1,Y1,2025-06-01,Clown\n");

        foreach (var path in new[] { "/stock", "/stock/moved", "/stock/Y1/carry" })
        {
            await visit.GoAsync(path);

            await PagesTests.AssertAccessibleAsync(visit);
            await PagesTests.PhotographAsync(visit, $"moved_{path.Split('/')[^1]}");
        }
    }
}
