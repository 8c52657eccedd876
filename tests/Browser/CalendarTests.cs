using System.Globalization;
using Clutchwright.Desk.Happenings;
using Microsoft.Playwright;
using Xunit;
using static Microsoft.Playwright.Assertions;

namespace Clutchwright.Browser;

/// <summary>What is due, on a phone and on a desk.</summary>
[Collection(BrowserGroup.Name)]
public sealed class CalendarTests(BrowserFixture browser)
{
    [Fact]
    public async Task Calendar_SeasonUnderWay_ShowsLateWeekAndRangesAndTellsWhy()
    {
        await SeasonAsync("calendar");
        await using var visit = await browser.VisitAsync("calendar", width: 360, height: 740);
        var page = visit.Page;

        await page.GotoAsync("/calendar");

        await Expect(page.GetByRole(AriaRole.Heading, new() { Name = "Overdue: Eggs of D", Exact = true })).ToBeVisibleAsync();
        await Expect(page.Locator("main")).ToContainTextAsync("call a reptile veterinarian now");
        await Expect(page.Locator(".week")).ToContainTextAsync("Lay box for B");
        await page.Locator("summary[aria-label='Why: Eggs of B']").ClickAsync();
        await Expect(page.Locator("main")).ToContainTextAsync("common practice, weighing 6 records");
        await PagesTests.AssertFitsAPhoneAsync(visit);
        await PagesTests.AssertAccessibleAsync(visit);
        await PagesTests.PhotographAsync(visit, "calendar_season");

        await visit.ShowAsync(ColorScheme.Light, 360);
        await page.GetByRole(AriaRole.Navigation, new() { Name = "Only one step" }).GetByRole(AriaRole.Link, new() { Name = "Eggs", Exact = true }).ClickAsync();
        await Expect(page.Locator(".sheet > li")).Not.ToHaveCountAsync(0);
        await Expect(page.Locator(".sheet")).Not.ToContainTextAsync("Pre-lay shed of");
        await page.GetByRole(AriaRole.Link, new() { Name = "Later", Exact = true }).ClickAsync();
        await Expect(page.GetByRole(AriaRole.Link, new() { Name = "Now, all" })).ToBeVisibleAsync();
        visit.AssertClean();
    }

    [Fact]
    public async Task Feed_SecretAddress_AnswersUntilItIsRenewed()
    {
        await SeasonAsync("feed");
        await using var visit = await browser.VisitAsync("feed", width: 390);
        var page = visit.Page;
        await page.GotoAsync("/calendar");

        await page.GetByRole(AriaRole.Button, new() { Name = "Make a secret address" }).ClickAsync();
        var first = await page.Locator(".secret").InnerTextAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Make a new address" }).ClickAsync();
        var second = await page.Locator(".secret").InnerTextAsync();

        Assert.NotEqual(first, second);
        Assert.Equal(404, (await page.APIRequest.GetAsync(first)).Status);
        var feed = await page.APIRequest.GetAsync(second);
        Assert.Equal((200, "text/calendar; charset=utf-8"), (feed.Status, feed.Headers["content-type"]));
        Assert.StartsWith("BEGIN:VCALENDAR\r\n", await feed.TextAsync(), StringComparison.Ordinal);
        Assert.Equal(200, (await page.APIRequest.GetAsync("/calendar.ics")).Status);
        visit.AssertClean();
    }

    private async Task SeasonAsync(string room)
    {
        await browser.ImportAsync(room, "id,sex,hatched\nM,m,2020\nA,f,2020\nB,f,2020\nC,f,2020\nD,f,2020\n");
        var write = await browser.GetAsync<WriteHappening>(room);
        foreach (var (tag, kind, days, mate) in new (string, string, int, string?)[]
        {
            ("A", "Locked", 40, "M"), ("A", "Locked", 5, "M"), ("B", "Ovulated", 43, null), ("B", "PreLayShed", 25, null), ("C", "Ovulated", 10, null), ("D", "PreLayShed", 44, null),
        })
        {
            var when = DateTime.SpecifyKind(TimeProvider.System.GetLocalNow().DateTime.AddDays(-days), DateTimeKind.Unspecified).ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);
            Assert.Empty((await write.RunAsync(new(tag, kind, when, null, mate, null), "keeper", TestContext.Current.CancellationToken)).Problems);
        }
    }
}
