using Microsoft.Playwright;
using SkiaSharp;
using Xunit;
using static Microsoft.Playwright.Assertions;

namespace Clutchwright.Browser;

/// <summary>Photos of an animal over its life, from a phone.</summary>
[Collection(BrowserGroup.Name)]
public sealed class PhotosTests(BrowserFixture browser)
{
    [Fact]
    public async Task Photos_SeveralOverTheYears_AreAStripByAge()
    {
        await browser.ImportAsync("photos", "id,sex,hatched,seen\nA,f,2022-06-01,Clown\n");
        await using var visit = await browser.VisitAsync("photos", width: 390);
        var page = visit.Page;
        await page.GotoAsync("/stock/A");
        await page.GetByRole(AriaRole.Link, new() { Name = "Add photos" }).ClickAsync();

        await page.GetByLabel("Add photos").SetInputFilesAsync([File("broken.jpg", [1, 2, 3])]);
        await page.GetByRole(AriaRole.Button, new() { Name = "Keep them" }).ClickAsync();
        await Expect(page.Locator("main")).ToContainTextAsync("broken.jpg: This is no picture that can be read");
        await PagesTests.AssertAccessibleAsync(visit);
        foreach (var (taken, caption, color) in new[] { ("2022-06-10", "out of the egg", SKColors.SaddleBrown), ("2023-07-01", "", SKColors.Peru), ("2026-06-15", "grown", SKColors.Goldenrod) })
        {
            await page.GetByLabel("Add photos").SetInputFilesAsync([File($"{taken}.jpg", Jpeg(color))]);
            await page.Locator("#taken").FillAsync(taken);
            await page.Locator("#caption").FillAsync(caption);
            await page.GetByRole(AriaRole.Button, new() { Name = "Keep them" }).ClickAsync();
            await Expect(page.GetByRole(AriaRole.Status).First).ToContainTextAsync("Kept of A: photo");
        }

        await Expect(page.Locator(".growth li")).ToHaveCountAsync(3);
        await Expect(page.Locator(".growth")).ToContainTextAsync("under a month");
        await Expect(page.Locator(".growth")).ToContainTextAsync("4 years");
        await PagesTests.AssertAccessibleAsync(visit);
        await PagesTests.PhotographAsync(visit, "photos");
        var picture = await page.APIRequest.GetAsync(new Uri(new Uri(page.Url), (await page.Locator(".growth a").First.GetAttributeAsync("href"))!).ToString());
        Assert.Equal("image/jpeg", picture.Headers["content-type"]);
        await page.GotoAsync("/stock/A");
        await Expect(page.Locator(".growth li")).ToHaveCountAsync(3);
        await page.GotoAsync("/stock/A/photos");
        await page.GetByText("Change", new() { Exact = true }).First.ClickAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Take back 2022-06-10", Exact = false }).ClickAsync();
        await Expect(page.Locator(".growth li")).ToHaveCountAsync(2);
        await page.GetByRole(AriaRole.Button, new() { Name = "Bring it back", Exact = false }).ClickAsync();
        await Expect(page.Locator(".growth li")).ToHaveCountAsync(3);
        visit.AssertClean();
    }

    private static FilePayload File(string name, byte[] bytes) => new() { Name = name, MimeType = "image/jpeg", Buffer = bytes };

    private static byte[] Jpeg(SKColor color)
    {
        using var bitmap = new SKBitmap(640, 420);
        bitmap.Erase(color);
        using var image = SKImage.FromBitmap(bitmap);
        using var encoded = image.Encode(SKEncodedImageFormat.Jpeg, 90);
        return encoded.ToArray();
    }
}
