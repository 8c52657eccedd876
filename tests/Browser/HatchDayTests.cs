using Microsoft.Playwright;
using Xunit;
using static Microsoft.Playwright.Assertions;

namespace Clutchwright.Browser;

/// <summary>A clutch is written down and its young are entered with a thumb, with or without a script, and with a connection that comes and goes.</summary>
[Collection(BrowserGroup.Name)]
public sealed class HatchDayTests(BrowserFixture browser, ITestOutputHelper output)
{
    private const string Stock = "id,sex,hatched,seen,told\nM,m,2020,Clown,\nF,f,2020,Pastel,100% het Clown\n";

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public async Task Clutch_LaidAndHatchedOnAPhone_HasItsYoungWithIdsOfTheScheme(bool script)
    {
        var room = $"hatch{script}";
        await browser.ImportAsync(room, Stock);
        await using var visit = await browser.VisitAsync(room, width: 390, script: script);
        var page = visit.Page;
        await page.GotoAsync("/log?kind=Locked&animal=F");
        await page.GetByLabel("With").FillAsync("M");
        await page.GetByLabel("When").FillAsync("60 days ago is no date");
        await page.GetByRole(AriaRole.Button, new() { Name = "Write it down" }).ClickAsync();
        await Expect(page.Locator("#when-problem")).ToBeVisibleAsync();
        await page.GetByLabel("When").FillAsync(string.Empty);
        await page.GetByRole(AriaRole.Button, new() { Name = "Write it down" }).ClickAsync();
        await Expect(page.GetByRole(AriaRole.Status)).ToContainTextAsync("locked");

        await page.GotoAsync("/clutches/new?dam=F");
        await Expect(page.GetByLabel("Sire")).ToHaveValueAsync("M");
        if (script)
        {
            await PagesTests.AssertAccessibleAsync(visit);
        }

        await page.GetByLabel("Good eggs", new() { Exact = true }).FillAsync("3");
        await page.GetByLabel("Id of the clutch").FillAsync("C1");
        await page.GetByRole(AriaRole.Button, new() { Name = "Write it down" }).ClickAsync();
        await Expect(page.GetByRole(AriaRole.Heading, new() { Level = 1 })).ToHaveTextAsync("Clutch C1");
        if (script)
        {
            await PagesTests.AssertAccessibleAsync(visit);
            await PagesTests.PhotographAsync(visit, "clutch");
        }

        await page.GetByRole(AriaRole.Link, new() { Name = "Hatch day" }).ClickAsync();
        if (script)
        {
            await PagesTests.AssertAccessibleAsync(visit);
            await PagesTests.PhotographAsync(visit, "hatch");
        }

        await EnterAsync(page, "Pastel Clown", "female", "61");
        await Expect(page.GetByRole(AriaRole.Status).First).ToContainTextAsync("Entered C1-1 of clutch C1");
        await EnterAsync(page, "Clown", "male", "58,5");
        await Expect(page.GetByRole(AriaRole.Status).First).ToContainTextAsync("Entered C1-2 of clutch C1");

        // Neither parent shows or carries this: it is asked twice.
        await page.GetByLabel("Something else", new() { Exact = true }).FillAsync("Banana");
        await page.GetByRole(AriaRole.Button, new() { Name = "Enter it" }).ClickAsync();
        await Expect(page.GetByRole(AriaRole.Alert)).ToContainTextAsync("This cannot be from these parents");
        await Expect(page.GetByLabel("Something else", new() { Exact = true })).ToHaveValueAsync("Banana");
        if (script)
        {
            await PagesTests.AssertAccessibleAsync(visit);
            await PagesTests.PhotographAsync(visit, "hatch_again");

            // What was asked back is not lost with the page.
            await page.GotoAsync("/clutches/C1/hatch");
            await Expect(page.GetByRole(AriaRole.Alert)).ToContainTextAsync("This cannot be from these parents");
            await Expect(page.GetByLabel("Something else", new() { Exact = true })).ToHaveValueAsync("Banana");
        }

        await page.GetByRole(AriaRole.Button, new() { Name = "It is so: enter it" }).ClickAsync();
        await Expect(page.GetByRole(AriaRole.Status).First).ToContainTextAsync("Entered C1-3 of clutch C1");
        await Expect(page.Locator("[data-waiting]")).ToBeHiddenAsync();
        await page.GotoAsync("/stock/C1-3");
        await Expect(page.Locator("main")).ToContainTextAsync("These records cannot all be true");
        await Expect(page.Locator("main")).ToContainTextAsync("Asked twice on hatch day");
        await page.GotoAsync("/stock/C1-1");
        await Expect(page.Locator("main")).ToContainTextAsync("Last weighed 61 g.");
        await page.GotoAsync("/clutches");
        await Expect(page.GetByRole(AriaRole.Heading, new() { Name = "Over 1" })).ToBeVisibleAsync();
        if (script)
        {
            await PagesTests.AssertAccessibleAsync(visit);
            await PagesTests.PhotographAsync(visit, "clutches");
        }

        visit.AssertClean();
    }

    [Fact]
    public async Task Hatchlings_EnteredWithoutConnection_AreSentOnceWhenItIsBack()
    {
        await browser.ImportAsync("hatchoffline", Stock);
        await using var visit = await browser.VisitAsync("hatchoffline", width: 390);
        var page = visit.Page;
        await LayAsync(page);
        await Expect(page.GetByRole(AriaRole.Button, new() { Name = "Enter it" })).ToBeVisibleAsync();

        await page.Context.SetOfflineAsync(true);
        await EnterAsync(page, "Clown", "male", "60");
        await Expect(page.Locator("[data-waiting]")).ToContainTextAsync("No connection: 1 hatchling waits");
        await EnterAsync(page, "Pastel Clown", "female", "63");
        await Expect(page.Locator("[data-waiting]")).ToContainTextAsync("2 hatchlings wait");
        await Expect(page.Locator("[data-waiting]")).ToContainTextAsync("Pastel Clown, female, 63 g");
        await PagesTests.PhotographAsync(visit, "hatch_waiting");

        // The phone goes to sleep, and the page is opened again where there is a connection.
        await page.Context.SetOfflineAsync(false);
        await page.ReloadAsync();

        await Expect(page.GetByRole(AriaRole.Heading, new() { Name = "Entered" })).ToBeVisibleAsync();
        await Expect(page.Locator(".young li")).ToHaveCountAsync(2);
        await Expect(page.Locator("[data-waiting]")).ToBeHiddenAsync();
        await page.ReloadAsync();
        await Expect(page.Locator(".young li")).ToHaveCountAsync(2);
    }

    /// <summary>The time a practised person needs by the keystroke-level model (docs/references.md [CardMoranNewell1980]; its figures recalled).</summary>
    [Fact]
    public async Task Hatchlings_Twelve_AreEnteredInUnderThreeMinutesByTheKeystrokeLevelModel()
    {
        await browser.ImportAsync("hatchtwelve", Stock);
        await using var visit = await browser.VisitAsync("hatchtwelve", width: 390);
        var page = visit.Page;
        await LayAsync(page);
        var thumb = new Thumb(page);
        string[] looks = ["Clown", "Pastel", "Pastel Clown", "Normal"];

        for (var i = 1; i <= 12; i++)
        {
            // What it looks like, what it weighs and whether all is right: each is thought of before it is tapped.
            thumb.Think();
            await thumb.TapAsync(page.Locator($"label:has(input[name='look'][value='{looks[i % 4]}'])"));
            await thumb.TapAsync(page.Locator($"label:has(input[name='sex'][value='{(i % 2 == 0 ? "f" : "m")}'])"));
            thumb.Think();
            await thumb.TapAsync(page.GetByLabel("Grams"));
            await thumb.TypeAsync($"{55 + i}");
            thumb.Think();
            await thumb.TapAsync(page.GetByRole(AriaRole.Button, new() { Name = "Enter it" }));
            await Expect(page.GetByRole(AriaRole.Status).First).ToContainTextAsync($"Entered C1-{i} of clutch C1");
        }

        output.WriteLine($"{thumb.Taps} taps, {thumb.Keys} keys, {thumb.Swipes} swipes: {thumb.Seconds:0} s");
        Assert.InRange(thumb.Seconds, 0.0, 180.0);
        await Expect(page.Locator(".young li")).ToHaveCountAsync(12);
    }

    /// <summary>One thumb on a phone: whatever is out of sight is swiped into it first.</summary>
    private sealed class Thumb(IPage page)
    {
        private const double KeySeconds = 0.28;
        private const double PointSeconds = 1.1;
        private const double ThinkSeconds = 1.35;
        private int _thoughts;

        public int Taps { get; private set; }

        public int Keys { get; private set; }

        public int Swipes { get; private set; }

        public double Seconds => ((Taps + Swipes) * (PointSeconds + KeySeconds)) + (Keys * KeySeconds) + (_thoughts * ThinkSeconds);

        public void Think() => _thoughts++;

        public async Task TapAsync(ILocator target)
        {
            if (await target.EvaluateAsync<bool>("e => { const r = e.getBoundingClientRect(); return r.top < 0 || r.bottom > innerHeight; }"))
            {
                Swipes++;
            }

            Taps++;
            await target.ClickAsync();
        }

        public async Task TypeAsync(string text)
        {
            Keys += text.Length;
            await page.Keyboard.TypeAsync(text);
        }
    }

    private static async Task LayAsync(IPage page)
    {
        await page.GotoAsync("/clutches/new?dam=F");
        await page.GetByLabel("Sire").FillAsync("M");
        await page.GetByLabel("Good eggs", new() { Exact = true }).FillAsync("12");
        await page.GetByLabel("Id of the clutch").FillAsync("C1");
        await page.GetByRole(AriaRole.Button, new() { Name = "Write it down" }).ClickAsync();
        await page.GetByRole(AriaRole.Link, new() { Name = "Hatch day" }).ClickAsync();
    }

    internal static async Task EnterAsync(IPage page, string look, string sex, string grams)
    {
        await page.GetByRole(AriaRole.Radio, new() { Name = look, Exact = false }).And(page.Locator($"input[value='{look}']")).First.CheckAsync();
        await page.GetByLabel(sex, new() { Exact = true }).CheckAsync();
        await page.GetByLabel("Grams").FillAsync(grams);
        await page.GetByRole(AriaRole.Button, new() { Name = "Enter it" }).ClickAsync();
    }
}
