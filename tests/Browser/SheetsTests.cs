using Microsoft.Playwright;
using Xunit;
using static Microsoft.Playwright.Assertions;

namespace Clutchwright.Browser;

/// <summary>Sheets are chosen, looked at and printed.</summary>
[Collection(BrowserGroup.Name)]
public sealed class SheetsTests(BrowserFixture browser)
{
    [Theory]
    [InlineData("/sheets")]
    [InlineData("/sheets?sheet=label&tag=T-301&tag=T-314&tag=T-112&start=3&outlines=yes")]
    [InlineData("/sheets?sheet=label&tag=T-3O8&size=wide&start=x&code=link&link=x")]
    [InlineData("/sheets?sheet=label&page=roll&size=50x30&clutch=T-308&which=held&tag=T-308")]
    [InlineData("/sheets?sheet=record&tag=T-213")]
    [InlineData("/sheets?sheet=lineage&tag=T-308&generations=4")]
    [InlineData("/sheets?sheet=sale&tag=T-112&source=C")]
    [InlineData("/sheets?sheet=clutch&sire=T-201&dam=T-202&laid=2026-04-01&eggs=6")]
    [InlineData("/sheets?sheet=season&year=2025")]
    public async Task Page_LightAndDarkPhoneAndDesktop_IsAccessibleAndKeepsToItself(string path)
    {
        var visit = await browser.TourAsync("demo");

        await visit.GoAsync(path);

        Assert.Equal(1, await visit.Page.Locator("h1").CountAsync());
        await PagesTests.AssertFitsAPhoneAsync(visit);
        await PagesTests.AssertAccessibleAsync(visit);
        await PagesTests.PhotographAsync(visit, $"demo_{string.Concat(path.Trim('/').Select(c => char.IsLetterOrDigit(c) ? c : '-'))}");
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public async Task Label_FromTheAnimalOnAPhone_IsShownChangedAndFetched(bool script)
    {
        await using var visit = await browser.VisitAsync("demo", width: 360, script: script);
        var page = visit.Page;

        await page.GotoAsync("/stock/T-301");
        await page.GetByRole(AriaRole.Link, new() { Name = "Print a label" }).ClickAsync();
        await Expect(page.GetByRole(AriaRole.Img, new() { Name = "Page 1: T-301 Marram", Exact = false })).ToBeVisibleAsync();
        await page.GetByLabel("Label, width x height").FillAsync("4x2in");
        await page.GetByRole(AriaRole.Button, new() { Name = "Show it" }).ClickAsync();

        await Expect(page.GetByLabel("Label, width x height")).ToHaveValueAsync("4x2in");
        var link = await page.GetByRole(AriaRole.Link, new() { Name = "Download the PDF" }).GetAttributeAsync("href");
        var file = await page.APIRequest.GetAsync(new Uri(new Uri(page.Url), link!).ToString());
        Assert.Equal("application/pdf", file.Headers["content-type"]);
        Assert.StartsWith("%PDF", System.Text.Encoding.Latin1.GetString(await file.BodyAsync()), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("/sheets?sheet=label&tag=T-301&start=3", ".print-page")]
    [InlineData("/sheets?sheet=sale&tag=T-112", ".print-sheet")]
    public async Task Sheet_OnPaperInTheDark_IsTheSheetAloneOnWhite(string path, string sheet)
    {
        await using var visit = await browser.VisitAsync("demo", width: 800);
        await visit.GoAsync(path);

        await visit.Page.EmulateMediaAsync(new() { Media = Media.Print, ColorScheme = ColorScheme.Dark });

        await Expect(visit.Page.Locator(sheet)).ToBeVisibleAsync();
        await Expect(visit.Page.GetByRole(AriaRole.Navigation)).ToHaveCountAsync(0);
        await Expect(visit.Page.GetByRole(AriaRole.Button)).ToHaveCountAsync(0);
        await Expect(visit.Page.GetByRole(AriaRole.Heading, new() { Level = 1 })).ToHaveCountAsync(0);
        Assert.Equal("rgb(255, 255, 255)", await visit.Page.EvaluateAsync<string>("() => getComputedStyle(document.body).backgroundColor"));
    }
}
