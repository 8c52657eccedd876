using System.Text;
using System.Text.RegularExpressions;
using Microsoft.Playwright;
using Xunit;
using static Microsoft.Playwright.Assertions;

namespace Clutchwright.Browser;

/// <summary>What a keeper does, from the first page on.</summary>
[Collection(BrowserGroup.Name)]
public sealed partial class WalkTests(BrowserFixture browser)
{
    // Mendel: het × het gives one in four. Six eggs: 1 - (3/4)^6 = 0.822021.
    private const string Pair = "id,sex,sire,dam,hatched,seen,told,shed date\nS1,m,,,2019,normal,het Clown,2024-03-01\nD1,f,,,2019-07-02,normal,het Clown,\nD2,f,,,2020,Pastel,66% het Clown,\n";

    [Theory]
    [InlineData(1280, true)]
    [InlineData(390, true)]
    [InlineData(390, false)]
    public async Task Walk_ImportWantPairsCrossWhyAnimal_Answers(int width, bool script)
    {
        await using var visit = await browser.VisitAsync($"walk-{width}-{script}", width: width, script: script);
        var page = visit.Page;

        await page.GotoAsync("/");
        await page.GetByRole(AriaRole.Link, new() { Name = "Import a CSV file" }).ClickAsync();
        await page.GetByLabel("The file").SetInputFilesAsync(new FilePayload { Name = "room.csv", MimeType = "text/csv", Buffer = Encoding.UTF8.GetBytes(Pair) });
        await page.GetByRole(AriaRole.Button, new() { Name = "Look at it" }).ClickAsync();

        await Expect(page.GetByText("Nothing has been written yet")).ToBeVisibleAsync();
        await Expect(page.GetByLabel("Field for the column shed date")).ToHaveValueAsync(NoteOrEmpty());
        await page.GetByRole(AriaRole.Button, new() { Name = "Write 3 animals into the book" }).ClickAsync();

        await Expect(page.GetByRole(AriaRole.Status)).ToContainTextAsync("room.csv");
        await Expect(page.GetByRole(AriaRole.Heading, new() { Name = "3 animals" })).ToBeVisibleAsync();

        await page.GetByRole(AriaRole.Link, new() { Name = "Today" }).ClickAsync();
        await page.GetByLabel("A look or a genotype, in the trade’s words").FillAsync("Clown");
        await page.GetByRole(AriaRole.Button, new() { Name = "Find the best pairs" }).ClickAsync();

        await Expect(page.GetByRole(AriaRole.Heading, new() { Level = 1 })).ToHaveTextAsync("Pairs for Clown");
        var pairs = page.Locator("ol.pairs > li");
        await Expect(pairs).ToHaveCountAsync(2);
        await Expect(pairs.First).ToContainTextAsync("1 in 4");
        await pairs.First.GetByRole(AriaRole.Link, new() { NameRegex = Both() }).ClickAsync();

        await Expect(page.GetByRole(AriaRole.Heading, new() { Level = 1 })).ToHaveTextAsync(Both());
        var want = page.GetByRole(AriaRole.Region, new() { Name = "Odds of Clown" });
        await Expect(want.Locator("svg.eggs").First).ToHaveAttributeAsync("data-of", "4");
        await Expect(want.Locator("svg.eggs").First).ToHaveAttributeAsync("data-wanted", "1");
        await want.GetByText("Why these figures?").ClickAsync();
        await Expect(want.Locator(".why li").First).ToBeVisibleAsync();

        await page.Locator("dl.parents").GetByRole(AriaRole.Link, new() { Name = "D1" }).ClickAsync();
        await Expect(page.GetByRole(AriaRole.Heading, new() { Level = 1 })).ToContainTextAsync("D1");
        await Expect(page.Locator(".genotype-line i")).ToHaveTextAsync("het Clown");
        await page.GetByText("Why?").First.ClickAsync();
        await Expect(page.Locator(".beliefs .why li").First).ToBeVisibleAsync();
        visit.AssertClean();
    }

    [Fact]
    public async Task Cross_SixEggsOfTwoHets_SaysEightyTwoPercent()
    {
        await using var visit = await browser.VisitAsync("empty");

        await visit.GoAsync("/cross?sire=1.0 het Clown&dam=0.1 het Clown&want=Clown&eggs=6");

        // 1 - (3/4)^6 = 0.822021; 11 eggs for 95%, 17 for 99%: the fewest n with 1 - (3/4)^n at or above it.
        var want = visit.Page.GetByRole(AriaRole.Region, new() { Name = "Odds of Clown" });
        await Expect(want).ToContainTextAsync("82.2%");
        await Expect(want.GetByRole(AriaRole.Row, new() { Name = "95%" }).GetByRole(AriaRole.Cell).First).ToHaveTextAsync("11");
        await Expect(want.GetByRole(AriaRole.Row, new() { Name = "99%" }).GetByRole(AriaRole.Cell).First).ToHaveTextAsync("17");
    }

    [Fact]
    public async Task Cross_MisspelledSire_OffersTheGoodSpellingAsALink()
    {
        await using var visit = await browser.VisitAsync("empty");

        await visit.GoAsync("/cross?sire=1.0 het Clwn&dam=0.1 Clown");
        await visit.Page.GetByRole(AriaRole.Alert).GetByRole(AriaRole.Link, new() { Name = "Clown", Exact = true }).ClickAsync();

        await Expect(visit.Page.GetByRole(AriaRole.Heading, new() { Level = 1 })).ToContainTextAsync("het Clown");
    }

    [Fact]
    public async Task Import_RowsThatCannotBeRead_NamesEachAndWritesNothing()
    {
        await using var visit = await browser.VisitAsync("bad-import");
        var page = visit.Page;

        await page.GotoAsync("/stock/import");
        await page.GetByText("Or paste the rows").ClickAsync();
        await page.GetByLabel("Rows").FillAsync("id,sex,seen\nA1,m,Pastle\nA2,x,Clown\n");
        await page.GetByRole(AriaRole.Button, new() { Name = "Look at it" }).ClickAsync();

        await Expect(page.Locator(".wrong")).ToContainTextAsync("Row 2");
        await Expect(page.Locator(".wrong")).ToContainTextAsync("Row 3");
        await Expect(page.GetByRole(AriaRole.Button, new() { NameRegex = Write() })).ToHaveCountAsync(0);
        await page.GotoAsync("/");
        await Expect(page.GetByRole(AriaRole.Heading, new() { Level = 1 })).ToHaveTextAsync("An empty book");
    }

    [Fact]
    public async Task Animal_AddedChangedBinnedAndUndone_IsAsItWas()
    {
        await using var visit = await browser.VisitAsync("deeds");
        var page = visit.Page;

        await page.GotoAsync("/stock/new");
        await page.GetByLabel("Tag").FillAsync("new");
        await page.GetByLabel("female", new() { Exact = true }).CheckAsync();
        await page.GetByLabel("What is seen").FillAsync("Pastel Clwn");
        await page.GetByRole(AriaRole.Button, new() { Name = "Write it down" }).ClickAsync();
        await Expect(page.GetByRole(AriaRole.Alert)).ToContainTextAsync("Clwn");
        await Expect(page.GetByLabel("Tag")).ToHaveValueAsync("new");

        await page.GetByLabel("What is seen").FillAsync("Pastel Clown");
        await page.GetByRole(AriaRole.Button, new() { Name = "Write it down" }).ClickAsync();

        // A tag that is also the name of a page still has a page.
        await Expect(page.GetByRole(AriaRole.Heading, new() { Level = 1 })).ToContainTextAsync("new");
        await Expect(page.Locator(".genotype-line b").First).ToHaveTextAsync("Pastel");

        await page.GetByText("Add what someone says of it").ClickAsync();
        await page.GetByLabel("On what ground").SelectOptionAsync("Told");
        await page.GetByLabel("What is said").FillAsync("het Piebald");
        await page.GetByRole(AriaRole.Button, new() { Name = "Write it down" }).ClickAsync();
        await Expect(page.Locator(".genotype-line i").First).ToHaveTextAsync("het Piebald");

        await page.GetByRole(AriaRole.Link, new() { Name = "Change", Exact = true }).ClickAsync();
        await page.GetByLabel("Mass").FillAsync("1480");
        await page.GetByRole(AriaRole.Button, new() { Name = "Save" }).ClickAsync();
        await Expect(page.GetByText("Last weighed 1,480 g.")).ToBeVisibleAsync();

        await page.GetByRole(AriaRole.Button, new() { Name = "To the bin" }).ClickAsync();
        await Expect(page.GetByText("This animal lies in the bin")).ToBeVisibleAsync();
        await page.GetByRole(AriaRole.Status).GetByRole(AriaRole.Button, new() { Name = "Undo" }).ClickAsync();
        await Expect(page.GetByText("This animal lies in the bin")).ToHaveCountAsync(0);
        await Expect(page.GetByText("Last weighed 1,480 g.")).ToBeVisibleAsync();
    }

    [Fact]
    public async Task Form_NotSentWhenThePageGoes_HoldsWhatWasTyped()
    {
        await using var visit = await browser.VisitAsync("empty");
        var page = visit.Page;

        await page.GotoAsync("/stock/new");
        await page.GetByLabel("Tag").FillAsync("K-7");
        await page.GetByLabel("Notes").FillAsync("Found the shed on Tuesday");
        await page.GotoAsync("/stock");
        await page.GotoAsync("/stock/new");

        await Expect(page.GetByLabel("Tag")).ToHaveValueAsync("K-7");
        await Expect(page.GetByLabel("Notes")).ToHaveValueAsync("Found the shed on Tuesday");
        await page.GetByRole(AriaRole.Button, new() { Name = "Put it back as it was" }).ClickAsync();
        await Expect(page.GetByLabel("Tag")).ToHaveValueAsync(string.Empty);
    }

    [Fact]
    public async Task Theme_Chosen_IsKeptOnTheNextPage()
    {
        await using var visit = await browser.VisitAsync("empty");
        var page = visit.Page;

        await page.GotoAsync("/");
        await page.GetByRole(AriaRole.Button, new() { Name = "Dark" }).ClickAsync();
        await page.GotoAsync("/catalogue");

        await Expect(page.Locator("html")).ToHaveAttributeAsync("data-theme", "dark");
        await Expect(page.GetByRole(AriaRole.Button, new() { Name = "Dark" })).ToHaveAttributeAsync("aria-pressed", "true");
    }

    [GeneratedRegex("^Write ")]
    private static partial Regex Write();

    [GeneratedRegex("S1.*×.*D1", RegexOptions.Singleline)]
    private static partial Regex Both();

    [GeneratedRegex("^(note)?$")]
    private static partial Regex NoteOrEmpty();
}
