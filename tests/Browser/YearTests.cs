using System.Diagnostics;
using System.Globalization;
using Microsoft.Playwright;
using Xunit;
using static Microsoft.Playwright.Assertions;

namespace Clutchwright.Browser;

/// <summary>One whole year of an invented keeper on a phone: from the plan to the printed labels, with the book in a file and on a server.</summary>
[Collection(BrowserGroup.Name)]
public sealed class YearTests(BrowserFixture browser)
{
    /// <summary>Presses that a daily deed may take from the start page.</summary>
    private const int MostPresses = 3;

    private int _presses;

    [Theory]
    [InlineData("whole-year")]
    [InlineData(BrowserFixture.OnServer + "whole-year")]
    public async Task Year_FromPlanToLabels_IsWrittenDownOnAPhone(string room)
    {
        await browser.ImportAsync(room, "id,sex,hatched,seen,told,mass_g\nM,m,2020,Clown,,900\nF,f,2020,Pastel,100% het Clown,1900\n");
        await using var visit = await browser.VisitAsync(room, width: 390);
        var page = visit.Page;
        page.SetDefaultTimeout(60_000);

        // The plan.
        await page.GotoAsync("/season?goal=Pastel Clown*10");
        await page.GetByRole(AriaRole.Button, new() { Name = "Keep it as the season of" }).ClickAsync();
        await Expect(page.GetByText("as your book keeps it")).ToBeVisibleAsync();

        // The pairing, and what is seen of the female until she lays.
        await WriteAsync(page, "put together", "F", -200, mate: "M");
        await WriteAsync(page, "locked", "F", -190, mate: "M");
        await WriteAsync(page, "follicles measured", "F", -175, amount: "28");
        await WriteAsync(page, "ovulated", "F", -150);
        await WriteAsync(page, "pre-lay shed", "F", -132);
        await page.GotoAsync("/calendar");
        await Expect(page.Locator("main")).ToContainTextAsync("Eggs of F");

        // Eggs into an incubator.
        await page.GotoAsync("/incubators/new");
        await page.GetByLabel("Name").FillAsync("North");
        await page.GetByLabel("Lowest °C").FillAsync("30.5");
        await page.GetByLabel("Highest °C").FillAsync("32");
        await page.GetByRole(AriaRole.Button, new() { Name = "Write it down" }).ClickAsync();
        await page.GetByLabel("°C of North").FillAsync("31,5");
        await page.GetByRole(AriaRole.Button, new() { Name = "Write the reading of North" }).ClickAsync();
        await Expect(page.GetByRole(AriaRole.Status).First).ToContainTextAsync("31.5");
        _presses = 0;
        await page.GotoAsync("/");
        await PressAsync(page.GetByRole(AriaRole.Link, new() { Name = "laid", Exact = true }));
        await page.GetByLabel("Dam", new() { Exact = true }).FillAsync("F");
        await page.GetByLabel("Laid", new() { Exact = true }).FillAsync(Day(-102));
        await page.GetByLabel("Good eggs", new() { Exact = true }).FillAsync("4");
        await page.GetByLabel("Slugs").FillAsync("1");
        await page.GetByLabel("Incubator").FillAsync("North");
        await page.GetByLabel("Id of the clutch").FillAsync("Y1");
        await PressAsync(page.GetByRole(AriaRole.Button, new() { Name = "Write it down" }));
        Assert.InRange(_presses, 1, MostPresses);
        await Expect(page.GetByRole(AriaRole.Heading, new() { Level = 1 })).ToHaveTextAsync("Clutch Y1");
        await Expect(page.Locator("main")).ToContainTextAsync("M × F");

        // What becomes of them.
        await EggAsync(page, "candled", "4", -95);
        await EggAsync(page, "eggs lost", "1", -70);
        await EggAsync(page, "pipped", "1", -44);
        await Expect(page.Locator("main")).ToContainTextAsync("4 good eggs, 1 slug, 1 lost");

        await page.GotoAsync("/");
        await PagesTests.AssertAccessibleAsync(visit);
        await PagesTests.PhotographAsync(visit, "year_today");
        await visit.ShowAsync(ColorScheme.Light, 390);

        // Hatch day: from the start page to the first hatchling.
        _presses = 0;
        await page.GotoAsync("/");
        await PressAsync(page.GetByRole(AriaRole.Link, new() { Name = "Hatch day" }));
        await page.GetByText("Id, day, notes").ClickAsync();
        await page.GetByLabel("Hatched", new() { Exact = true }).FillAsync(Day(-43));
        var watch = Stopwatch.StartNew();
        await HatchDayTests.EnterAsync(page, "Pastel Clown", "female", "61");
        await Expect(page.GetByRole(AriaRole.Status).First).ToContainTextAsync("Entered Y1-1 of clutch Y1");
        await HatchDayTests.EnterAsync(page, "Clown", "male", "58");
        await Expect(page.GetByRole(AriaRole.Status).First).ToContainTextAsync("Entered Y1-2 of clutch Y1");
        await HatchDayTests.EnterAsync(page, "Pastel", "male", "64");
        await Expect(page.GetByRole(AriaRole.Status).First).ToContainTextAsync("Entered Y1-3 of clutch Y1");
        TestContext.Current.TestOutputHelper?.WriteLine($"three hatchlings in {watch.Elapsed.TotalSeconds:0.0} s of the program's part");

        // First shed, first meal, and one that leaves.
        await WriteAsync(page, "shed", "Y1-1", -33);
        await WriteAsync(page, "fed", "Y1-1", -31, amount: "9");
        await WriteAsync(page, "weighed", "Y1-1", -5, amount: "88");
        await page.GotoAsync("/log?kind=Sold&animal=Y1-3");
        await page.GetByLabel("When", new() { Exact = true }).FillAsync(Day(-2));
        await page.GetByLabel("What else").FillAsync("to a keeper nearby");
        await page.GetByRole(AriaRole.Button, new() { Name = "Write it down" }).ClickAsync();
        await page.GotoAsync("/stock/Y1-3");
        await Expect(page.Locator("main")).ToContainTextAsync("; sold.");

        // The labels, read as a printer would get them.
        await page.GotoAsync("/clutches/Y1");
        await page.GetByRole(AriaRole.Link, new() { Name = "Print their labels" }).ClickAsync();
        var link = await page.GetByRole(AriaRole.Link, new() { Name = "Download the PDF" }).GetAttributeAsync("href");
        var labels = await (await page.APIRequest.GetAsync(new Uri(new Uri(page.Url), link!).ToString())).BodyAsync();
        var printed = await PdfTextAsync(labels);
        foreach (var words in new[] { "Y1-1", "Y1-2", "Y1-3", "Pastel Clown" })
        {
            Assert.Contains(words, printed, StringComparison.Ordinal);
        }

        // The year stands in the history, and its last step can be taken back.
        await page.GotoAsync("/stock/history");
        await page.GetByRole(AriaRole.Button, new() { Name = "Undo", Exact = false }).First.ClickAsync();
        await page.GotoAsync("/stock/Y1-3");
        await Expect(page.Locator("main")).ToContainTextAsync("; kept.");
        visit.AssertClean();
    }

    private static string Day(int fromToday) => TimeProvider.System.GetUtcNow().AddDays(fromToday).ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);

    private static async Task EggAsync(IPage page, string what, string howMany, int day)
    {
        await page.GotoAsync("/clutches/Y1");
        await page.GetByLabel(what, new() { Exact = true }).CheckAsync();
        await page.GetByLabel("How many").FillAsync(howMany);
        await page.GetByLabel("When", new() { Exact = true }).FillAsync(Day(day));
        await page.GetByRole(AriaRole.Button, new() { Name = "Write it down" }).ClickAsync();
        await Expect(page.GetByRole(AriaRole.Status).First).ToContainTextAsync($"Wrote of F: {what}");
    }

    private static async Task<string> PdfTextAsync(byte[] pdf)
    {
        var file = Path.GetTempFileName();
        await File.WriteAllBytesAsync(file, pdf);
        using var reader = Process.Start(new ProcessStartInfo("pdftotext", [file, "-"]) { RedirectStandardOutput = true, UseShellExecute = false })!;
        var text = await reader.StandardOutput.ReadToEndAsync();
        await reader.WaitForExitAsync();
        File.Delete(file);
        return text;
    }

    /// <summary>Writes down a daily deed from the start page, and counts its presses.</summary>
    private async Task WriteAsync(IPage page, string what, string tag, int day, string? amount = null, string? mate = null)
    {
        _presses = 0;
        await page.GotoAsync("/");
        await PressAsync(page.Locator("main").GetByRole(AriaRole.Link, new() { Name = what, Exact = true }));
        await page.GetByLabel("Animal", new() { Exact = true }).FillAsync(tag);
        await page.GetByLabel("When", new() { Exact = true }).FillAsync(Day(day));
        if (amount is not null)
        {
            await page.GetByLabel("How much").FillAsync(amount);
        }

        if (mate is not null)
        {
            await page.GetByLabel("With", new() { Exact = true }).FillAsync(mate);
        }

        await PressAsync(page.GetByRole(AriaRole.Button, new() { Name = "Write it down" }));
        await Expect(page.GetByRole(AriaRole.Status).First).ToContainTextAsync($"Wrote of {tag}: {what}");
        Assert.InRange(_presses, 1, MostPresses);
    }

    private async Task PressAsync(ILocator what)
    {
        await what.ClickAsync();
        _presses++;
    }
}
