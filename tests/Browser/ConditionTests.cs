using System.Globalization;
using System.Text;
using Clutchwright.Desk.Importing;
using Microsoft.Playwright;
using Xunit;
using static Microsoft.Playwright.Assertions;

namespace Clutchwright.Browser;

/// <summary>The animal in hand, the feeding round and the incubator, with a thumb on a phone.</summary>
[Collection(BrowserGroup.Name)]
public sealed class ConditionTests(BrowserFixture browser)
{
    public static TheoryData<string, string> Pages()
    {
        var pages = new TheoryData<string, string>();
        foreach (var room in new[] { "empty", "demo", "large" })
        {
            foreach (var path in new[] { "/watch", "/feeding", "/incubators" })
            {
                pages.Add(room, path);
            }
        }

        pages.Add("demo", "/watch/T-201");
        pages.Add("demo", "/incubators/new");
        pages.Add("demo", "/feeding?show=all");
        return pages;
    }

    [Theory]
    [MemberData(nameof(Pages))]
    public async Task Page_LightAndDarkPhoneAndDesktop_IsAccessibleAndKeepsToItself(string room, string path)
    {
        var visit = await browser.TourAsync(room);

        await visit.GoAsync(path);

        Assert.Equal(1, await visit.Page.Locator("h1").CountAsync());
        await PagesTests.AssertFitsAPhoneAsync(visit);
        await PagesTests.AssertAccessibleAsync(visit);
        await PagesTests.PhotographAsync(visit, $"{room}_{string.Concat(path.Trim('/').Select(c => char.IsLetterOrDigit(c) ? c : '-'))}");
    }

    /// <summary>A year of an invented female: meals, refusals, sheds and a mass that falls.</summary>
    [Fact]
    public async Task Condition_OfAYear_IsDrawnAndHasATable()
    {
        await browser.ImportAsync("year", "id,sex,hatched,name\nF,f,2022-06-01,Fern\n");
        var today = DateOnly.FromDateTime(TimeProvider.System.GetLocalNow().Date);
        var log = new StringBuilder("animal,date,kind,amount\n");
        for (var week = 50; week >= 0; week -= 2)
        {
            Write(week % 8 == 6 ? "FoodRefused" : "Fed", week, 0, null);
            if (week % 6 == 0)
            {
                Write("Weighed", week, 0, week > 10 ? 1300 - (4 * week) : 1000 + (20 * week));
            }

            if (week % 10 == 0)
            {
                Write("Shed", week, 3, null);
            }
        }

        var import = await browser.GetAsync<ImportTable>("year");
        Assert.Empty((await import.RunAsync(ImportKind.Log, new(Encoding.UTF8.GetBytes(log.ToString()), "log.csv"), "keeper", TestContext.Current.CancellationToken)).Problems);
        await using var visit = await browser.VisitAsync("year", width: 360);
        foreach (var path in new[] { "/watch/F", "/stock/F", "/watch" })
        {
            await visit.GoAsync(path);
            await visit.ShowAsync(ColorScheme.Light, 360);
            await PagesTests.AssertFitsAPhoneAsync(visit);
            await PagesTests.AssertAccessibleAsync(visit);
            await PagesTests.PhotographAsync(visit, $"year_{path.Trim('/').Replace('/', '-')}");
        }

        await visit.GoAsync("/watch/F");
        await Expect(visit.Page.Locator("main")).ToContainTextAsync("Ask a reptile veterinarian.");
        await visit.Page.GetByText("The same as a table").ClickAsync();
        await Expect(visit.Page.GetByRole(AriaRole.Region, new() { Name = "Record of F" }).GetByRole(AriaRole.Row)).ToHaveCountAsync(42);
        visit.AssertClean();

        void Write(string kind, int weeksAgo, int daysBefore, int? grams) =>
            log.Append(CultureInfo.InvariantCulture, $"F,{today.AddDays((-7 * weeksAgo) - daysBefore):yyyy-MM-dd},{kind},{grams}\n");
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public async Task InHand_OnAPhone_TakesOnePressForAMealAndTwoForAMass(bool script)
    {
        var room = $"hand{script}";
        await browser.ImportAsync(room, "id,sex,hatched\nF,f,2020\n");
        await using var visit = await browser.VisitAsync(room, width: 360, script: script);
        var page = visit.Page;

        await page.GotoAsync("/stock/F");
        await page.GetByRole(AriaRole.Button, new() { Name = "Fed F" }).ClickAsync();
        await Expect(page.GetByRole(AriaRole.Status)).ToContainTextAsync("Done: Wrote of F: fed");
        await page.GetByLabel("Mass of F in grams").FillAsync("1540");
        await page.GetByRole(AriaRole.Button, new() { Name = "Weighed F" }).ClickAsync();
        await Expect(page.GetByRole(AriaRole.Status)).ToContainTextAsync("Done: Wrote of F: weighed 1540 g");
        await Expect(page.GetByLabel("Mass of F in grams")).ToHaveAttributeAsync("placeholder", "1540");
        await page.GotoAsync("/watch/F");
        await page.GetByRole(AriaRole.Button, new() { Name = "Refused F" }).ClickAsync();
        await Expect(page.GetByRole(AriaRole.Status)).ToContainTextAsync("refused food");
        await page.GetByRole(AriaRole.Button, new() { Name = "Shed F" }).ClickAsync();
        await Expect(page.GetByRole(AriaRole.Status)).ToContainTextAsync("Wrote of F: shed");
        await page.GetByRole(AriaRole.Button, new() { Name = "Undo" }).ClickAsync();
        await Expect(page.GetByRole(AriaRole.Status)).ToContainTextAsync("Undid");
        if (script)
        {
            await PagesTests.AssertAccessibleAsync(visit);
            await PagesTests.PhotographAsync(visit, "hand_watch");
        }

        visit.AssertClean();
    }

    [Fact]
    public async Task FeedingRound_OnAPhone_KeepsItsMarksUntilTheyAreWritten()
    {
        await browser.ImportAsync("round", "id,sex,hatched\nA,f,2020\nB,m,2020\nC,f,2021\n");
        await using var visit = await browser.VisitAsync("round", width: 360);
        var page = visit.Page;

        await page.GotoAsync("/feeding");
        await Mark(page, "A", "Ate").ClickAsync();
        await Mark(page, "B", "Refused").ClickAsync();
        await PagesTests.AssertFitsAPhoneAsync(visit);
        await PagesTests.AssertAccessibleAsync(visit);
        await PagesTests.PhotographAsync(visit, "round_feeding");
        await page.ReloadAsync();
        await Expect(page.Locator(".kept")).ToContainTextAsync("is back");
        await Expect(page.Locator("input[name='of:A'][value=ate]")).ToBeCheckedAsync();
        await Expect(page.Locator("input[name='of:B'][value=refused]")).ToBeCheckedAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Write down what is marked" }).ClickAsync();

        await Expect(page.GetByRole(AriaRole.Status).First).ToContainTextAsync("Wrote of a round: 1 fed, 1 refused food");
        await Expect(page.Locator("form.round legend b")).ToHaveTextAsync(["C"]);
        await Expect(page.Locator(".kept")).ToHaveCountAsync(0);
        await Mark(page, "C", "Ate").ClickAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Write down what is marked" }).ClickAsync();
        await Expect(page.Locator("main")).ToContainTextAsync("0 animals are due");
        visit.AssertClean();
    }

    [Fact]
    public async Task Incubator_OnAPhone_IsReadInTwoPressesAndTakesALoggersFile()
    {
        await using var visit = await browser.VisitAsync("incubators", width: 360);
        var page = visit.Page;

        await page.GotoAsync("/incubators/new");
        await page.GetByLabel("Name").FillAsync("North");
        await page.GetByLabel("Lowest °C").FillAsync("30.5");
        await page.GetByLabel("Highest °C").FillAsync("32");
        await page.GetByRole(AriaRole.Button, new() { Name = "Write it down" }).ClickAsync();
        await Expect(page.GetByRole(AriaRole.Status)).ToContainTextAsync("Added incubator North");
        await page.GetByLabel("°C of North").FillAsync("warm");
        await page.GetByRole(AriaRole.Button, new() { Name = "Write the reading of North" }).ClickAsync();
        await Expect(page.Locator(".problem")).ToContainTextAsync("is no number");
        await page.GetByLabel("°C of North").FillAsync("31,5");
        await page.GetByRole(AriaRole.Button, new() { Name = "Write the reading of North" }).ClickAsync();
        await Expect(page.GetByRole(AriaRole.Status)).ToContainTextAsync("Read of incubator North: 31.5 °C");
        await PagesTests.AssertFitsAPhoneAsync(visit);
        await PagesTests.AssertAccessibleAsync(visit);
        await PagesTests.PhotographAsync(visit, "incubators_list");

        await page.GetByRole(AriaRole.Link, new() { Name = "North" }).ClickAsync();
        await page.GetByRole(AriaRole.Link, new() { Name = "Take in a logger’s file" }).ClickAsync();
        await page.GetByText("Or paste the rows").ClickAsync();
        await page.GetByLabel("Rows").FillAsync(Logger());
        await page.GetByRole(AriaRole.Button, new() { Name = "Look at it" }).ClickAsync();
        await PagesTests.AssertAccessibleAsync(visit);
        await PagesTests.PhotographAsync(visit, "incubators_preview");
        await page.GetByRole(AriaRole.Button, new() { Name = "Write 97 readings into the book" }).ClickAsync();
        await Expect(page.GetByRole(AriaRole.Status)).ToContainTextAsync("Took 97 readings of incubator North from pasted rows");
        await Expect(page.Locator("main")).ToContainTextAsync("outside of");
        await visit.ShowAsync(ColorScheme.Light, 360);
        await PagesTests.AssertFitsAPhoneAsync(visit);
        await PagesTests.AssertAccessibleAsync(visit);
        await PagesTests.PhotographAsync(visit, "incubators_curve");
        visit.AssertClean();
    }

    /// <summary>Two days of April, every half hour, above 32 degrees for some hours of each.</summary>
    private static string Logger()
    {
        var start = new DateTime(2026, 4, 1, 0, 0, 0, DateTimeKind.Unspecified);
        return "time,temperature,humidity\n" + string.Concat(Enumerable.Range(0, 97).Select(i =>
            FormattableString.Invariant($"{start.AddMinutes(30 * i):yyyy-MM-dd HH:mm},{31.5 + (0.8 * Math.Sin(i / 7.6)):0.0},{90 + (4 * Math.Cos(i / 11.0)):0}\n")));
    }

    private static ILocator Mark(IPage page, string tag, string what) =>
        page.Locator("fieldset").Filter(new() { Has = page.Locator("b", new() { HasTextRegex = new($"^{tag}$") }) }).Locator("label", new() { HasText = what });
}
