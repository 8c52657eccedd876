using Microsoft.Playwright;
using Xunit;
using static Microsoft.Playwright.Assertions;

namespace Clutchwright.Browser;

/// <summary>The box for trade text, by keyboard alone and by touch, after the combobox pattern of the ARIA Authoring Practices Guide
/// (w3.org/WAI/ARIA/apg/patterns/combobox).</summary>
[Collection(BrowserGroup.Name)]
public sealed class ComboboxTests(BrowserFixture browser)
{
    [Fact]
    public async Task Want_KeyboardAlone_CompletesWordsAndAsks()
    {
        await using var visit = await browser.VisitAsync("demo");
        var page = visit.Page;
        await page.GotoAsync("/");
        var box = page.GetByRole(AriaRole.Combobox);

        await TabToAsync(page, box);
        await page.Keyboard.TypeAsync("pas");
        await Expect(box).ToHaveAttributeAsync("aria-expanded", "true");
        await page.Keyboard.PressAsync("ArrowDown");
        var active = await box.GetAttributeAsync("aria-activedescendant");
        await Expect(page.Locator($"#{active}")).ToHaveAttributeAsync("aria-selected", "true");
        await page.Keyboard.PressAsync("Enter");
        await Expect(box).ToHaveValueAsync("Pastel ");
        await Expect(box).ToHaveAttributeAsync("aria-expanded", "false");

        await page.Keyboard.TypeAsync("clow");
        await Expect(box).ToHaveAttributeAsync("aria-expanded", "true");
        await page.Keyboard.PressAsync("Escape");
        await Expect(box).ToHaveAttributeAsync("aria-expanded", "false");
        await Expect(box).ToHaveValueAsync("Pastel clow");
        await page.Keyboard.PressAsync("ArrowDown");
        await Expect(box).ToHaveAttributeAsync("aria-expanded", "true");
        await page.Keyboard.PressAsync("ArrowUp");
        await page.Keyboard.PressAsync("ArrowDown");
        await page.Keyboard.PressAsync("ArrowDown");
        await page.Keyboard.PressAsync("Enter");
        await Expect(box).ToHaveValueAsync("Pastel Clown ");
        await page.Keyboard.PressAsync("Enter");

        await Expect(page.GetByRole(AriaRole.Heading, new() { Level = 1 })).ToHaveTextAsync("Pairs for Pastel Clown");
        visit.AssertClean();
    }

    [Fact]
    public async Task Sire_Touched_TakesTheCompletion()
    {
        await using var visit = await browser.VisitAsync("demo", width: 390, height: 844);
        var page = visit.Page;
        await page.GotoAsync("/cross");
        var box = page.GetByLabel("Put this sire");

        await box.TapAsync();
        await page.Keyboard.TypeAsync("1.0 het clo");
        await page.GetByRole(AriaRole.Option).Filter(new() { HasText = "Clown" }).First.TapAsync();

        await Expect(box).ToHaveValueAsync("1.0 het Clown ");
        await Expect(box).ToBeFocusedAsync();
    }

    private static async Task TabToAsync(IPage page, ILocator target)
    {
        for (var i = 0; i < 80; i++)
        {
            await page.Keyboard.PressAsync("Tab");
            if (await target.EvaluateAsync<bool>("e => e === document.activeElement"))
            {
                return;
            }
        }

        Assert.Fail("The box cannot be reached by the Tab key.");
    }
}
