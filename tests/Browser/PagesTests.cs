using System.IO.Compression;
using Microsoft.Playwright;
using Xunit;

namespace Clutchwright.Browser;

/// <summary>What holds on every page: in light and dark, on a phone and on a desktop, with no animal and with many.</summary>
[Collection(BrowserGroup.Name)]
public sealed class PagesTests(BrowserFixture browser)
{
    private static readonly string[] InEveryRoom =
    [
        "/", "/stock", "/stock/new", "/stock/import", "/stock/import?of=clutches", "/stock/import?of=log", "/stock/import/photos", "/stock/import/photos?upload=00000000000000000000000000000001", "/stock/history", "/stock/bin", "/pairs", "/pairs?want=Pastel Clown", "/pairs?want=Clwn",
        "/cross", "/cross?sire=1.0 het Clown&dam=0.1 het Clown&want=Clown&eggs=6", "/cross?sire=1.0 Pastel Mojave 66% het Clown&dam=0.1 Lesser Clown&want=Clown&want=Pastel Clown",
        "/cross?sire=1.0 het Clwn&dam=0.1 Clown&eggs=many", "/cross?sire=1.0 Banana Spider&dam=0.1 Spider Enchi&want=Banana", "/catalogue", "/catalogue?find=clown", "/catalogue/clown",
        "/stock/T-213", "/stock/T-112", "/stock/T-213/carry", "/stock/T-101/carry", "/stock/moved", "/stock/contradictions", "/catalogue/spider", "/not-found", "/problem",
        "/proof", "/proof/het", "/proof/het?prior=66%25&mate=visual&normals=3&visuals=", "/proof/het?prior=66&mate=het&normals=x", "/proof/fit?observed=45,12%0A27,8%0A4,3&expected=3:1",
        "/proof/locus?cross=visual-het&others=4&prior=10%25", "/proof/chromosome?recombinants=1&meioses=6&phase=unknown", "/proof/sex?sons-with=18&sons-without=2&daughters-with=1&daughters-without=19",
        "/proof/look?clutch=Rex shows x Ada normal: sons 5 shows 4 normal, daughters 3 shows 6 normal", "/proof/look?clutch=Rex", "/proof/mate?prior=66%25",
        "/kin", "/kin?animal=T-308", "/kin?animal=T-308&show=all&gene=clown", "/kin?animal=T-3O8", "/kin/pairs", "/kin/pairs?sire=T-201&dam=T-210",
        "/kin/pairs?sire=T-2O1&dam=T-201", "/kin/founders",
        "/looks", "/looks?tone=strong yellow&place=pattern&when=holds&white=patches", "/looks?tone=own&own=%23B4B0A8&place=ground&when=fades&from=stock&m=Pastel Clown",
        "/looks?q=pattern strnog yellow, with Clwn", "/looks?q=with Spider&harm=none", "/looks/board", "/looks/board?m=Bumblebee&m=Blue-eyed White&m=Normal&m=Clwn",
        "/log", "/log?animal=T-201", "/calendar", "/season", "/season?goal=Enchi Clown*10&goal=Piebald*2&ban=T-205|T-210&matings=3&clutches=6&inbreeding=12.5", "/season?goal=Clwn&goal=Clown*x&eggs=many", "/book", "/book?check=1", "/book/restore?name=nowhere",
        "/season?goal=Clown&clutches=0&pin=T-205|T-210",
    ];

    private static readonly string? Folder = Environment.GetEnvironmentVariable("CLUTCHWRIGHT_SCREENSHOTS");

    public static TheoryData<string, string> Rooms()
    {
        var rooms = new TheoryData<string, string>();
        foreach (var page in InEveryRoom)
        {
            rooms.Add("demo", page);
        }

        foreach (var page in new[] { "/", "/calendar", "/looks?tone=strong yellow", "/stock", "/stock/history", "/pairs?want=Clown", "/stock/moved", "/stock/contradictions", "/kin", "/kin/pairs", "/kin/founders" })
        {
            rooms.Add("empty", page);
            rooms.Add("large", page);
        }

        rooms.Add("large", "/stock?page=17&order=hatched&sex=f");
        rooms.Add("large", "/kin?animal=L0001");
        rooms.Add("large", "/kin/pairs?sire=L0000&dam=L0201&males=4&females=2");
        rooms.Add("inbred", "/kin/pairs?sire=L0092&dam=L0097");
        rooms.Add("inbred", "/kin?animal=L0066&show=all");
        rooms.Add("inbred", "/kin?animal=L0090&up=12");
        rooms.Add("large", "/stock/L0001");
        rooms.Add("large", "/stock/L0001/edit");
        rooms.Add("large", "/stock/L0300/carry");
        return rooms;
    }

    [Theory]
    [MemberData(nameof(Rooms))]
    public async Task Page_LightAndDarkPhoneAndDesktop_IsAccessibleAndKeepsToItself(string room, string path)
    {
        var visit = await browser.TourAsync(room);

        await visit.GoAsync(path);

        Assert.Equal(1, await visit.Page.Locator("main").CountAsync());
        Assert.Equal(1, await visit.Page.Locator("h1").CountAsync());
        await AssertFitsAPhoneAsync(visit);
        await AssertAccessibleAsync(visit);
        var name = string.Concat(path.Trim('/').Select(c => char.IsLetterOrDigit(c) ? c : '-'));
        await PhotographAsync(visit, $"{room}_{(name.Length == 0 ? "start" : name)}");
    }

    [Fact]
    public async Task Import_MappingShown_IsAccessible()
    {
        await using var visit = await browser.VisitAsync("empty");
        await visit.GoAsync("/stock/import");
        await visit.Page.GetByText("Or paste the rows").ClickAsync();
        await visit.Page.GetByLabel("Rows").FillAsync("id,sex,seen,shed\nA1,m,Pastle,2024\nA2,x,Clown,\nA3,f,Clown,\n");

        await visit.Page.GetByRole(AriaRole.Button, new() { Name = "Look at it" }).ClickAsync();

        await Assertions.Expect(visit.Page.GetByRole(AriaRole.Heading, new() { Name = "Columns" })).ToBeVisibleAsync();
        await AssertAccessibleAsync(visit);
        await PhotographAsync(visit, "empty_stock-import-shown");
    }

    [Fact]
    public async Task Import_LogAndItsMapping_AreShownRememberedAndAccessible()
    {
        await browser.ImportAsync("imported-log", "id,sex\nT-201,m\n");
        await using var visit = await browser.VisitAsync("imported-log", width: 360, height: 740);
        await visit.GoAsync("/stock/import?of=log");
        await visit.Page.GetByText("Or paste the rows").ClickAsync();
        await visit.Page.GetByLabel("Rows").FillAsync("Tier,day,event,weight\nT-201,2024-03-01,ate,1450\nT-2O1,about 3 March 2024,danced,\n");
        await visit.Page.GetByRole(AriaRole.Button, new() { Name = "Look at it" }).ClickAsync();
        await Assertions.Expect(visit.Page.Locator(".wrong")).ToContainTextAsync("No column holds the animal");

        await visit.Page.GetByLabel("Field for the column Tier").SelectOptionAsync("animal");
        await visit.Page.GetByRole(AriaRole.Button, new() { Name = "Look again with these columns" }).ClickAsync();

        await Assertions.Expect(visit.Page.Locator(".wrong")).ToContainTextAsync("Row 3, event");
        await AssertFitsAPhoneAsync(visit);
        await AssertAccessibleAsync(visit);
        await PhotographAsync(visit, "demo_stock-import-log-shown");
    }

    [Fact]
    public async Task ImportPhotos_SetSent_IsShownAndKept()
    {
        await browser.ImportAsync("imported-photos", "id,sex\nT-201,m\n");
        await using var visit = await browser.VisitAsync("imported-photos", width: 360, height: 740);
        var picture = Convert.FromBase64String("iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAYAAAAfFcSJAAAADUlEQVR42mNk+M9QDwADhgGAWjR9awAAAABJRU5ErkJggg==");
        await visit.GoAsync("/stock/import/photos");
        await visit.Page.GetByLabel("The file").SetInputFilesAsync(new FilePayload { Name = "set.zip", MimeType = "application/zip", Buffer = Zip(("T-201_2025-07-03.png", picture), ("../T-202.png", picture), ("notes.txt", [1])) });
        await visit.Page.GetByRole(AriaRole.Button, new() { Name = "Look at it" }).ClickAsync();
        await Assertions.Expect(visit.Page.Locator(".wrong")).ToContainTextAsync("leads out of the ZIP file");
        await AssertFitsAPhoneAsync(visit);
        await AssertAccessibleAsync(visit);
        await PhotographAsync(visit, "demo_stock-import-photos-shown");

        await visit.GoAsync("/stock/import/photos");
        await visit.Page.GetByLabel("The file").SetInputFilesAsync(new FilePayload { Name = "set.zip", MimeType = "application/zip", Buffer = Zip(("T-201_2025-07-03.png", picture)) });
        await visit.Page.GetByRole(AriaRole.Button, new() { Name = "Look at it" }).ClickAsync();
        await visit.Page.GetByRole(AriaRole.Button, new() { Name = "Keep 1 photo" }).ClickAsync();

        await Assertions.Expect(visit.Page.GetByText("Imported 1 photo from set.zip")).ToBeVisibleAsync();
    }

    [Fact]
    public async Task Cross_OnPaper_IsTheAnswerAlone()
    {
        await using var visit = await browser.VisitAsync("demo", width: 720);
        await visit.GoAsync("/cross?sire=1.0 Banana Spider&dam=0.1 Spider Enchi&want=Banana");

        await visit.Page.EmulateMediaAsync(new PageEmulateMediaOptions { Media = Media.Print });

        await Assertions.Expect(visit.Page.GetByRole(AriaRole.Navigation)).ToHaveCountAsync(0);
        await Assertions.Expect(visit.Page.GetByRole(AriaRole.Button)).ToHaveCountAsync(0);
        await Assertions.Expect(visit.Page.GetByRole(AriaRole.Region, new() { Name = "Odds of Banana" })).ToBeVisibleAsync();
        Assert.Equal("rgb(255, 255, 255)", await visit.Page.EvaluateAsync<string>("() => getComputedStyle(document.body).backgroundColor"));
        if (!string.IsNullOrEmpty(Folder))
        {
            Directory.CreateDirectory(Folder);
            await visit.Page.ScreenshotAsync(new PageScreenshotOptions { Path = Path.Combine(Folder, "demo_cross_print.png"), FullPage = true });
        }
    }

    [Fact]
    public async Task Axe_PictureWithoutText_IsFound()
    {
        await using var visit = await browser.VisitAsync("empty");
        await visit.GoAsync("/");

        await visit.Page.EvaluateAsync("() => document.querySelector('main').append(document.createElement('img'))");

        // The judge of the other tests does judge.
        Assert.Contains(await Axe.ViolationsAsync(visit.Page), v => v.StartsWith("image-alt:", StringComparison.Ordinal));
    }

    // Only where a folder is named: set CLUTCHWRIGHT_SCREENSHOTS to have every page photographed into it.
    internal static async Task PhotographAsync(Visit visit, string name)
    {
        if (string.IsNullOrEmpty(Folder))
        {
            return;
        }

        Directory.CreateDirectory(Folder);
        foreach (var (scheme, width) in Ways(1440))
        {
            await visit.ShowAsync(scheme, width);
            await visit.Page.ScreenshotAsync(new PageScreenshotOptions
            {
                Path = Path.Combine(Folder, $"{name}_{scheme.ToString().ToLowerInvariant()}_{(width < 600 ? "phone" : "desktop")}.png"),
                FullPage = true,
            });
        }
    }

    private static IEnumerable<(ColorScheme Scheme, int Width)> Ways(int desktop) =>
        from scheme in new[] { ColorScheme.Light, ColorScheme.Dark } from width in new[] { 390, desktop } select (scheme, width);

    // Nothing lies beyond the right edge, and whatever is pressed is as high as a thumb is wide.
    internal static async Task AssertFitsAPhoneAsync(Visit visit)
    {
        Assert.Equal(360, await visit.Page.EvaluateAsync<int>("() => document.documentElement.scrollWidth"));
        Assert.Empty(await visit.Page.EvaluateAsync<string[]>(
            """
            () => [...document.querySelectorAll('button, input:not([type=hidden], [type=radio], [type=checkbox]), label:has([type=radio], [type=checkbox]), select, textarea, summary, nav a, a.button, a.pick')]
              .filter(e => { const r = e.getBoundingClientRect(); return r.width > 0 && r.height > 1 && r.height < 43.5; })
              .map(e => e.outerHTML.slice(0, 120))
            """));
    }

    // Colours do not depend on the width, nor what stands on the page on the colours: two ways tell as much as four.
    internal static async Task AssertAccessibleAsync(Visit visit)
    {
        foreach (var (scheme, width) in new[] { (ColorScheme.Dark, 390), (ColorScheme.Light, 1280) })
        {
            await visit.ShowAsync(scheme, width);
            var violations = await Axe.ViolationsAsync(visit.Page);
            Assert.True(violations.Length == 0, $"{scheme} {width}: {string.Join("; ", violations)}");
            var together = await WordSpaces.MissingAsync(visit.Page);
            Assert.True(together.Length == 0, $"Words run together at {width}: {string.Join("; ", together)}");
        }

        visit.AssertClean();
    }

    private static byte[] Zip(params (string Name, byte[] Bytes)[] entries)
    {
        using var stream = new MemoryStream();
        using (var zip = new ZipArchive(stream, ZipArchiveMode.Create, leaveOpen: true))
        {
            foreach (var (name, bytes) in entries)
            {
                using var entry = zip.CreateEntry(name).Open();
                entry.Write(bytes);
            }
        }

        return stream.ToArray();
    }
}
