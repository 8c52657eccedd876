using Microsoft.Playwright;
using Xunit;
using static Microsoft.Playwright.Assertions;

namespace Clutchwright.Browser;

/// <summary>Everything is taken along, and put into the book again.</summary>
[Collection(BrowserGroup.Name)]
public sealed class LeavingTests(BrowserFixture browser)
{
    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public async Task Leave_DownloadedAndSentBack_ComesBackAfterAPreview(bool script)
    {
        var room = $"leaving{script}";
        await browser.ImportAsync(room, "id,sex,hatched,seen\nM,m,2020,Pastel\nF,f,2020,Clown\n");
        await using var visit = await browser.VisitAsync(room, width: 360, height: 740, script: script);
        var page = visit.Page;
        await page.GotoAsync("/book");
        var download = await page.RunAndWaitForDownloadAsync(() => page.GetByRole(AriaRole.Button, new() { Name = "Everything, with photos (ZIP)" }).ClickAsync());
        Assert.StartsWith("clutchwright-", download.SuggestedFilename, StringComparison.Ordinal);

        // The page stays, and is ready for the next press.
        await page.RunAndWaitForDownloadAsync(async () =>
        {
            await Expect(page.Locator("form[aria-busy]")).ToHaveCountAsync(0);
            await page.GetByRole(AriaRole.Button, new() { Name = "Without pictures (JSON)" }).ClickAsync();
        });
        var file = await download.PathAsync();
        await page.GotoAsync("/log?animal=F");
        await page.GetByLabel("How much").FillAsync("1540");
        await page.GetByRole(AriaRole.Button, new() { Name = "Write it down" }).ClickAsync();
        await page.GotoAsync("/book");
        if (script)
        {
            await PagesTests.AssertFitsAPhoneAsync(visit);
            await PagesTests.AssertAccessibleAsync(visit);
            await PagesTests.PhotographAsync(visit, "leaving");
            await visit.ShowAsync(ColorScheme.Light, 360);

            // As it is while the answer is on the way.
            var leave = page.Locator("form[action='/book/leave']");
            await Expect(leave.GetByRole(AriaRole.Button, new() { Name = "Stop" })).ToBeHiddenAsync();
            await leave.EvaluateAsync("form => form.setAttribute('aria-busy', 'true')");
            await PagesTests.AssertFitsAPhoneAsync(visit);
            await PagesTests.AssertAccessibleAsync(visit);
            await PagesTests.PhotographAsync(visit, "leaving_underway");
            await visit.ShowAsync(ColorScheme.Light, 360);
            await leave.GetByRole(AriaRole.Button, new() { Name = "Stop" }).ClickAsync();
            await Expect(leave).Not.ToHaveAttributeAsync("aria-busy", "true");
        }

        await page.GetByLabel("The ZIP or JSON of a whole book").SetInputFilesAsync(file);
        await page.GetByRole(AriaRole.Button, new() { Name = "Look at what it holds" }).ClickAsync();
        await Expect(page.Locator("main")).ToContainTextAsync("All of this gives way, the history too.");
        if (script)
        {
            await PagesTests.AssertFitsAPhoneAsync(visit);
            await PagesTests.AssertAccessibleAsync(visit);
            await PagesTests.PhotographAsync(visit, "leaving_return");
            await visit.ShowAsync(ColorScheme.Light, 360);
        }

        await page.GetByRole(AriaRole.Button, new() { Name = "Replace the book with it" }).ClickAsync();
        await Expect(page.GetByRole(AriaRole.Status)).ToContainTextAsync("Everything came back.");
        await page.GotoAsync("/stock/F");
        await Expect(page.Locator("main")).Not.ToContainTextAsync("1,540 g");
        visit.AssertClean();
    }

    [Fact]
    public async Task Leave_StoppedWhileItIsPacked_IsNotWaitedForAndCanBeSentAgain()
    {
        await browser.ImportAsync("leavingstopped", "id,sex\nM,m\n");
        await using var visit = await browser.VisitAsync("leavingstopped", width: 360, height: 740, script: true);
        var page = visit.Page;
        await page.GotoAsync("/book");

        // As a book would that takes long.
        var (isSlow, given) = (true, new TaskCompletionSource<string>(TaskCreationOptions.RunContinuationsAsynchronously));
        page.RequestFailed += (_, request) => given.TrySetResult(request.Url);
        await page.RouteAsync("**/book/leave", async route =>
        {
            if (!isSlow)
            {
                await route.ContinueAsync();
            }
        });
        var zip = page.GetByRole(AriaRole.Button, new() { Name = "Everything, with photos (ZIP)" });

        // Pressed within the page: from outside nothing can be asked of it while an answer is on its way.
        await page.EvaluateAsync(
            """
            () => {
              const form = document.querySelector("form[action='/book/leave']");
              const stop = form.querySelector("[data-stop]");
              setTimeout(() => form.querySelector("button.main").click(), 0);
              setTimeout(() => {
                window.wasShown = stop.checkVisibility() && form.getAttribute("aria-busy") === "true";
                stop.click();
              }, 500);
            }
            """);

        Assert.EndsWith("/book/leave", await given.Task.WaitAsync(TimeSpan.FromSeconds(20), TestContext.Current.CancellationToken), StringComparison.Ordinal);
        Assert.True(await page.EvaluateAsync<bool>("() => window.wasShown"));
        await Expect(page.GetByText("Everything is being packed")).ToBeHiddenAsync();
        isSlow = false;
        var download = await page.RunAndWaitForDownloadAsync(() => zip.ClickAsync());
        Assert.EndsWith(".zip", download.SuggestedFilename, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Return_FileThatIsWrong_SaysWhere()
    {
        await browser.ImportAsync("leavingwrong", "id,sex\nM,m\n");
        await using var visit = await browser.VisitAsync("leavingwrong", width: 360, height: 740, script: true);
        var page = visit.Page;
        await page.GotoAsync("/book");
        await page.GetByLabel("The ZIP or JSON of a whole book").SetInputFilesAsync(
            new FilePayload { Name = "a-book-with-a-rather-long-name-of-last-year.json", MimeType = "application/json", Buffer = "{\"format\": \"clutchwright-book\", \"version\": 1, \"animals\": [{\"id\": 3}]}"u8.ToArray() });
        await page.GetByRole(AriaRole.Button, new() { Name = "Look at what it holds" }).ClickAsync();

        await Expect(page.Locator("main")).ToContainTextAsync("a-book-with-a-rather-long-name-of-last-year.json, line 1, animals[0].id: the value is not of the kind that belongs here.");
        await PagesTests.AssertFitsAPhoneAsync(visit);
        await PagesTests.AssertAccessibleAsync(visit);
        await PagesTests.PhotographAsync(visit, "leaving_wrong");
        visit.AssertClean();
    }
}
