using Microsoft.Playwright;
using Xunit;
using static Microsoft.Playwright.Assertions;

namespace Clutchwright.Browser;

/// <summary>What happens in the snake room is written down with a thumb.</summary>
[Collection(BrowserGroup.Name)]
public sealed class LogTests(BrowserFixture browser)
{
    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public async Task Weighing_FromTheStartPageOnAPhone_TakesTwoPressesAndIsCorrectedAndTakenBack(bool script)
    {
        var room = $"log{script}";
        await browser.ImportAsync(room, "id,sex,hatched\nM,m,2020\nF,f,2020\n");
        await using var visit = await browser.VisitAsync(room, width: 390, script: script);
        var page = visit.Page;

        await page.GotoAsync("/");
        await page.GetByRole(AriaRole.Link, new() { Name = "weighed", Exact = true }).ClickAsync();
        await page.GetByLabel("Animal", new() { Exact = true }).FillAsync("F");
        await page.GetByLabel("How much").FillAsync("1540");
        await page.GetByRole(AriaRole.Button, new() { Name = "Write it down" }).ClickAsync();

        await Expect(page.GetByRole(AriaRole.Status)).ToContainTextAsync("Done: Wrote of F: weighed 1540 g");
        await page.GetByRole(AriaRole.Link, new() { Name = "Correct: weighed 1540 g of F", Exact = false }).ClickAsync();
        await Expect(page.GetByLabel("How much")).ToHaveValueAsync("1540");
        await page.GetByLabel("How much").FillAsync("many");
        await page.GetByRole(AriaRole.Button, new() { Name = "Write it down" }).ClickAsync();
        await Expect(page.Locator("#amount-problem")).ToContainTextAsync("is no number");
        await Expect(page.GetByLabel("How much")).ToHaveValueAsync("many");
        await PagesTests.AssertAccessibleAsync(visit);
        await page.GetByLabel("How much").FillAsync("1450");
        await page.GetByRole(AriaRole.Button, new() { Name = "Write it down" }).ClickAsync();
        await Expect(page.GetByRole(AriaRole.Status)).ToContainTextAsync("Corrected of F: weighed 1450 g");
        await page.GotoAsync("/stock/F");
        await Expect(page.Locator("main")).ToContainTextAsync("Last weighed 1,450 g.");
        await page.GotoAsync("/log?animal=F");
        await PagesTests.PhotographAsync(visit, $"log_{script}");
        await page.GetByRole(AriaRole.Button, new() { Name = "Take back", Exact = false }).ClickAsync();
        await Expect(page.GetByRole(AriaRole.Status)).ToContainTextAsync("Took back of F: weighed 1450 g");
        visit.AssertClean();
    }
}
