using Microsoft.Playwright;
using Xunit;
using static Microsoft.Playwright.Assertions;

namespace Clutchwright.Browser;

/// <summary>The pedigree as it is read, pressed and printed.</summary>
[Collection(BrowserGroup.Name)]
public sealed class KinTests(BrowserFixture browser)
{
    [Theory]
    [InlineData(1280, true)]
    [InlineData(360, true)]
    [InlineData(360, false)]
    public async Task Walk_StockKinAnimalAndBack_LeadsRoundTheFamily(int width, bool script)
    {
        await using var visit = await browser.VisitAsync("demo", width: width, script: script);
        var page = visit.Page;

        await page.GotoAsync("/");
        await page.Locator("a[href='/kin']:visible").First.ClickAsync();
        await page.GetByLabel("Animal, by its tag").FillAsync("T-308");
        await page.GetByLabel("Mark").SelectOptionAsync("clown");
        await page.GetByRole(AriaRole.Button, new() { Name = "Draw it" }).ClickAsync();

        await Expect(page.GetByRole(AriaRole.Heading, new() { Level = 1 })).ToHaveTextAsync("Kin of T-308 Goldenrod");
        await Expect(page.Locator(".who.asked")).ToHaveCountAsync(1);
        await page.GetByRole(AriaRole.Link, new() { Name = "T-201 Teasel, male, Pastel Clown" }).ClickAsync();
        await Expect(page.GetByRole(AriaRole.Heading, new() { Level = 1 })).ToHaveTextAsync("T-201 Teasel");
        await page.GetByRole(AriaRole.Link, new() { Name = "More of its kin" }).ClickAsync();
        await Expect(page.GetByRole(AriaRole.Heading, new() { Level = 1 })).ToHaveTextAsync("Kin of T-201 Teasel");
        visit.AssertClean();
    }

    [Fact]
    public async Task Chart_KeyboardAlone_ReachesEveryAnimalAndPans()
    {
        await using var visit = await browser.VisitAsync("demo", width: 390, height: 844);
        var page = visit.Page;
        await visit.GoAsync("/kin?animal=T-308&show=all");

        var sheet = page.GetByRole(AriaRole.Region, new() { Name = "Pedigree of T-308 Goldenrod, drawn" });
        await sheet.FocusAsync();
        var before = await sheet.EvaluateAsync<double>("e => e.scrollLeft");
        await page.Keyboard.PressAsync("ArrowRight");
        await page.WaitForFunctionAsync("before => document.querySelector('.sheet').scrollLeft !== before", before);

        var animals = await page.Locator(".pedigree a.who").CountAsync();
        var reached = new HashSet<string>();
        for (var i = 0; i < animals + 10 && reached.Count < animals; i++)
        {
            await page.Keyboard.PressAsync("Tab");
            if (await page.EvaluateAsync<string?>("() => document.activeElement.classList.contains('who') ? document.activeElement.querySelector('title').textContent : null") is { } name)
            {
                reached.Add(name);
            }
        }

        Assert.Equal(animals, reached.Count);

        // Whoever has the focus is in sight.
        Assert.True(await page.EvaluateAsync<bool>(
            "() => { const a = document.activeElement.getBoundingClientRect(), s = document.querySelector('.sheet').getBoundingClientRect(); return a.left >= s.left - 1 && a.right <= s.right + 1; }"));
        await page.Keyboard.PressAsync("Enter");
        await Expect(page.GetByRole(AriaRole.Heading, new() { Level = 1 })).ToContainTextAsync("T-3");
    }

    [Fact]
    public async Task Pairs_FigurePressed_SaysWhereItComesFrom()
    {
        await using var visit = await browser.VisitAsync("demo");
        var page = visit.Page;
        await visit.GoAsync("/kin/pairs");

        // T-201 and T-210 have the sire T-101 in common: half siblings, (1/2)^3 (Wright 1922).
        var cell = page.GetByRole(AriaRole.Row, new() { Name = "T-201" }).Locator("a[href$='dam=T-210']");
        await Expect(cell).ToHaveTextAsync("12.5%");
        await cell.ClickAsync();

        await Expect(page.GetByRole(AriaRole.Heading, new() { Level = 1 })).ToContainTextAsync("T-201 Teasel");
        await Expect(page.Locator("main")).ToContainTextAsync("12.5% (1/8) would be the inbreeding of their young.");
        await Expect(page.Locator(".routes li")).ToHaveCountAsync(1);
        await Expect(page.Locator(".routes li")).ToContainTextAsync("T-201 – T-101 – T-210");
        await page.GetByRole(AriaRole.Link, new() { Name = "What can hatch?" }).ClickAsync();
        await Expect(page.GetByRole(AriaRole.Heading, new() { Level = 1 })).ToContainTextAsync("Teasel");
        visit.AssertClean();
    }

    [Fact]
    public async Task Founders_Demo_SharesAreThoseOfTheRoom()
    {
        await using var visit = await browser.VisitAsync("demo");

        await visit.GoAsync("/kin/founders");

        var founders = visit.Page.GetByRole(AriaRole.Region, new() { Name = "Founders by share" });
        await Expect(founders.GetByRole(AriaRole.Row)).ToHaveCountAsync(16);
        await Expect(founders.GetByRole(AriaRole.Row).Nth(1)).ToContainTextAsync("Juniper");
    }

    [Fact]
    public async Task Chart_InWords_SaysParentsKinAndChances()
    {
        await using var visit = await browser.VisitAsync("demo");
        await visit.GoAsync("/kin?animal=T-308&gene=clown");

        await visit.Page.GetByText("The same in words").ClickAsync();

        var words = visit.Page.Locator(".in-words");
        await Expect(words).ToContainTextAsync("young of T-201 × T-210, who are kin");

        // A certain het put to an animal without it: one in two.
        await visit.GoAsync("/kin?animal=T-214&gene=clown");
        await visit.Page.GetByText("The same in words").ClickAsync();
        await Expect(words.GetByRole(AriaRole.Listitem).Filter(new() { HasText = "Lovage" })).ToContainTextAsync("50%");
    }

    [Fact]
    public async Task Chart_NoLabelMeetsAnother()
    {
        foreach (var (room, path) in new[] { ("demo", "/kin"), ("inbred", "/kin?animal=L0066&show=all") })
        {
            await using var visit = await browser.VisitAsync(room);
            await visit.GoAsync(path);

            // The text as the browser set it, in its own typefaces: inside the room the layout gave it.
            var wide = await visit.Page.EvaluateAsync<string[]>(
                """
                () => [...document.querySelectorAll('.pedigree-drawing a.who')].flatMap(a => {
                  const room = a.querySelector('.reach').getBBox();
                  return [...a.querySelectorAll('text')].filter(t => { const b = t.getBBox(); return b.x < room.x - 4 || b.x + b.width > room.x + room.width + 4 || b.y + b.height > room.y + room.height + 3; }).map(t => t.textContent);
                })
                """);
            Assert.Empty(wide);
        }
    }

    [Fact]
    public async Task Chart_OnPaper_IsWholeAndBlackOnWhite()
    {
        await using var visit = await browser.VisitAsync("demo");
        await visit.GoAsync("/kin?animal=T-308&show=all");

        await visit.Page.EmulateMediaAsync(new PageEmulateMediaOptions { Media = Media.Print });

        var drawing = await visit.Page.EvaluateAsync<double[]>(
            "() => { const d = document.querySelector('.pedigree-drawing').getBoundingClientRect(), m = document.querySelector('main').getBoundingClientRect(); return [d.left - m.left, m.right - d.right]; }");
        Assert.All(drawing, edge => Assert.True(edge >= -1, $"{edge}"));
        Assert.Equal("rgb(0, 0, 0)", await visit.Page.EvaluateAsync<string>("() => getComputedStyle(document.querySelector('.pedigree-drawing .filled')).fill"));
        Assert.Equal("rgb(0, 0, 0)", await visit.Page.EvaluateAsync<string>("() => getComputedStyle(document.querySelector('.pedigree-drawing .tag')).fill"));
    }

    [Fact]
    public async Task Chart_Saved_IsASvgFile()
    {
        await using var visit = await browser.VisitAsync("demo");
        await visit.GoAsync("/kin?animal=T-308");

        var download = await visit.Page.RunAndWaitForDownloadAsync(() => visit.Page.GetByRole(AriaRole.Link, new() { Name = "Save the drawing" }).ClickAsync());

        Assert.Equal("pedigree-T-308.svg", download.SuggestedFilename);
        Assert.StartsWith("<svg ", await File.ReadAllTextAsync(await download.PathAsync(), TestContext.Current.CancellationToken), StringComparison.Ordinal);
    }
}
