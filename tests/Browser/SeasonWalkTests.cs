using System.Diagnostics;
using Microsoft.Playwright;
using Xunit;
using static Microsoft.Playwright.Assertions;

namespace Clutchwright.Browser;

/// <summary>From a look to a season that is kept, and on when young hatch: a newcomer's first minutes, and a keeper's next year.</summary>
[Collection(BrowserGroup.Name)]
public sealed class SeasonWalkTests(BrowserFixture browser)
{
    private const float LongEnough = 120_000;
    private int _presses;

    /// <summary>A newcomer gets from a look to a season's plan with the demo stock in at most ten presses; the time they need is theirs to read in, the program's
    /// part of it must leave them most of two minutes.</summary>
    [Theory]
    [InlineData(1280, true)]
    [InlineData(390, true)]
    [InlineData(390, false)]
    public async Task Walk_LookMakingRouteFollowSeasonPinPlan_TakesTenPressesAtMost(int width, bool script)
    {
        await using var visit = await browser.VisitAsync($"walk{width}{script}", width: width, script: script);
        var page = visit.Page;
        page.SetDefaultTimeout(LongEnough);
        var watch = Stopwatch.StartNew();

        await page.GotoAsync("/");
        await PressAsync(page.GetByRole(AriaRole.Button, new() { Name = "Load the demo stock" }));
        await PressAsync(page.GetByRole(AriaRole.Link, new() { Name = "Looks", Exact = true }));
        await PressAsync(page.GetByRole(AriaRole.Radio, new() { Name = "strong yellow", Exact = true }));
        await PressAsync(page.GetByRole(AriaRole.Button, new() { Name = "Find makings" }));
        await PressAsync(page.GetByRole(AriaRole.Link, new() { Name = "Route to Super Pastel", Exact = true }));
        await PressAsync(page.GetByRole(AriaRole.Button, new() { Name = "Follow this route number 1 to Super Pastel" }));

        await Expect(page.GetByRole(AriaRole.Heading, new() { Level = 1 })).ToContainTextAsync("The pairings of");
        await Expect(page.GetByRole(AriaRole.Status)).ToContainTextAsync("Done: Adopted a route to Super Pastel");
        await Expect(page.Locator(".goals")).ToContainTextAsync("Super Pastel");
        await PressAsync(page.Locator(".plan").GetByRole(AriaRole.Link, new() { Name = "Pin", Exact = false }).First);
        await Expect(page.GetByText("You pinned it.")).ToBeVisibleAsync();
        await PressAsync(page.GetByRole(AriaRole.Button, new() { Name = "Keep it as the season of" }));
        await Expect(page.GetByText("as your book keeps it")).ToBeVisibleAsync();
        await Expect(page.GetByText("You pinned it.")).ToBeVisibleAsync();

        Assert.InRange(_presses, 1, 10);
        TestContext.Current.TestOutputHelper?.WriteLine($"{_presses} presses, {watch.Elapsed.TotalSeconds:0.0} s");
        visit.AssertClean();
    }

    [Fact]
    public async Task Walk_YoungOfTheRouteHatch_RoutePlansAnewAndTheSeasonFollows()
    {
        const string room = "next-year";
        await browser.ImportAsync(room, "id,sex,hatched,seen\nC,m,2020,Clown\nP,f,2020,Pastel\nQ,f,2020,Pastel\n");
        await using var visit = await browser.VisitAsync(room, width: 390);
        var page = visit.Page;
        page.SetDefaultTimeout(LongEnough);
        await page.GotoAsync("/route?want=Pastel Clown&seasons=6&dams=1");
        await page.GetByRole(AriaRole.Button, new() { Name = "Follow this route" }).ClickAsync();
        await Expect(page.Locator(".plan")).ToBeVisibleAsync();

        var hatched = TimeProvider.System.GetUtcNow().AddDays(-20).ToString("yyyy-MM-dd", System.Globalization.CultureInfo.InvariantCulture);
        await browser.ImportAsync(room, $"id,sex,sire,dam,hatched,seen\nH1,m,C,P,{hatched},Pastel\nH2,f,C,Q,{hatched},Pastel\nH3,f,C,P,{hatched},normal\n");
        await page.GotoAsync("/");
        await page.GetByRole(AriaRole.Link, new() { Name = "Pastel Clown", Exact = true }).ClickAsync();

        await Expect(page.GetByRole(AriaRole.Heading, new() { Name = "Young to keep" })).ToBeVisibleAsync();
        await Expect(page.Locator("main")).ToContainTextAsync("H2");
        // The daughter is there, so nothing more is asked of the season.
        await page.GetByRole(AriaRole.Button, new() { Name = "Take its goals out of the season" }).ClickAsync();
        await Expect(page.GetByRole(AriaRole.Status)).ToContainTextAsync("Kept the season of");
        await page.GotoAsync("/route");
        await page.GetByRole(AriaRole.Link, new() { Name = "Pastel Clown", Exact = true }).ClickAsync();
        await Expect(page.GetByRole(AriaRole.Button, new() { Name = "Give it up" })).ToBeVisibleAsync();
        await Expect(page.GetByRole(AriaRole.Button, new() { Name = "Take its goals out of the season" })).ToHaveCountAsync(0);
        await PagesTests.AssertAccessibleAsync(visit);
        await PagesTests.PhotographAsync(visit, "route_followed");
        await page.GetByRole(AriaRole.Button, new() { Name = "Give it up" }).ClickAsync();
        await Expect(page.GetByText("given up; followed since")).ToBeVisibleAsync();
        visit.AssertClean();
    }

    [Fact]
    public async Task Draft_ChangedMeanwhile_IsRefusedAndNothingTypedIsLost()
    {
        await using var visit = await browser.VisitAsync("meanwhile");
        await browser.ImportAsync("meanwhile", "id,sex,hatched,seen\nC,m,2020,Clown\nP,f,2020,Clown\n");
        var (one, other) = (visit.Page, await visit.Page.Context.NewPageAsync());
        await one.GotoAsync("/season?draft=yes&goal=Clown");
        await other.GotoAsync("/season?draft=yes&goal=Clown*3");
        await one.GetByRole(AriaRole.Button, new() { Name = "Keep it as the season of" }).ClickAsync();
        await Expect(one.GetByText("as your book keeps it")).ToBeVisibleAsync();

        await other.GetByRole(AriaRole.Button, new() { Name = "Keep it as the season of" }).ClickAsync();

        await Expect(other.GetByText("was changed meanwhile")).ToBeVisibleAsync();
        await other.GoBackAsync();
        await Expect(other.GetByLabel("Weight").First).ToHaveValueAsync("3");
    }

    private async Task PressAsync(ILocator control)
    {
        _presses++;
        await control.ClickAsync(new() { Timeout = LongEnough });
    }
}
