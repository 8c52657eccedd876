using Microsoft.Playwright;
using Xunit;
using static Microsoft.Playwright.Assertions;

namespace Clutchwright.Browser;

/// <summary>A backup is made, and restored after something else was done.</summary>
[Collection(BrowserGroup.Name)]
public sealed class BookTests(BrowserFixture browser)
{
    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public async Task Backup_DownloadedAndSentBack_IsRestoredAfterAPreview(bool script)
    {
        var room = $"book{script}";
        await browser.ImportAsync(room, "id,sex,hatched\nM,m,2020\nF,f,2020\n");
        await using var visit = await browser.VisitAsync(room, width: 360, height: 740, script: script);
        var page = visit.Page;
        await page.GotoAsync("/book");
        var download = await page.RunAndWaitForDownloadAsync(() => page.GetByRole(AriaRole.Button, new() { Name = "Back up and download" }).ClickAsync());
        var file = await download.PathAsync();
        await page.GotoAsync("/log?animal=F");
        await page.GetByLabel("How much").FillAsync("1540");
        await page.GetByRole(AriaRole.Button, new() { Name = "Write it down" }).ClickAsync();
        await page.GotoAsync("/book");
        await Expect(page.Locator("main")).ToContainTextAsync("Something was done since.");
        if (script)
        {
            await PagesTests.AssertFitsAPhoneAsync(visit);
            await PagesTests.AssertAccessibleAsync(visit);
            await PagesTests.PhotographAsync(visit, "book");
            await visit.ShowAsync(ColorScheme.Light, 360);
        }

        await page.GetByLabel("The file of a backup").SetInputFilesAsync(file);
        await page.GetByRole(AriaRole.Button, new() { Name = "Look at it" }).ClickAsync();
        await Expect(page.Locator("main")).ToContainTextAsync("1 deed would be lost.");
        await Expect(page.Locator("main")).ToContainTextAsync("Wrote of F: weighed 1540 g");
        if (script)
        {
            await PagesTests.AssertFitsAPhoneAsync(visit);
            await PagesTests.AssertAccessibleAsync(visit);
            await PagesTests.PhotographAsync(visit, "book_restore");
            await visit.ShowAsync(ColorScheme.Light, 360);
        }

        await page.GetByRole(AriaRole.Button, new() { Name = "Replace the book with this backup" }).ClickAsync();
        await Expect(page.GetByRole(AriaRole.Status)).ToContainTextAsync("Restored.");
        await page.GotoAsync("/stock/F");
        await Expect(page.Locator("main")).Not.ToContainTextAsync("1,540 g");
        visit.AssertClean();
    }
}
