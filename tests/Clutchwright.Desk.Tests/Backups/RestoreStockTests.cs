using Clutchwright.Desk.Animals;
using Clutchwright.Desk.Backups;
using Clutchwright.Desk.Tests.Testing;

namespace Clutchwright.Desk.Tests.Backups;

public sealed class RestoreStockTests
{
    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    /// <summary>A restored book goes on under the numbers that deeds of the old one had; nothing that was reckoned of those may be answered.</summary>
    [Fact]
    public async Task Beliefs_BookRestoredAndGoneOn_AreOfTheNewOne()
    {
        using var desk = new TestDesk();
        await AddAsync(desk, "A", told: "66% het Clown");
        var backup = (await desk.Get<BackUp>().RunAsync(null, Cancel)).Value!;
        await AddAsync(desk, "B", told: "100% het Pied");
        var (before, told) = (await desk.Get<ShowToday>().StockAsOfAsync(Cancel), await CarriesAsync(desk, "B"));
        var preview = (await desk.Get<RestoreStock>().PreviewAsync(backup.File, Cancel)).Value!;

        Assert.Empty((await desk.Get<RestoreStock>().RunAsync(backup.File, preview.Mark, Cancel)).Problems);
        Assert.Equal(["A"], (await desk.Get<ListAnimals>().RunAsync(new AnimalsQuestion(), Cancel)).Animals.Select(a => a.Tag));
        await AddAsync(desk, "B", told: "100% het Clown");
        var (after, now) = (await desk.Get<ShowToday>().StockAsOfAsync(Cancel), await CarriesAsync(desk, "B"));

        // The same number, another deed.
        Assert.Equal(before.Split('-')[0], after.Split('-')[0]);
        Assert.NotEqual(before, after);
        Assert.NotEqual(told, now);
    }

    [Fact]
    public async Task Run_OldMark_IsRefused()
    {
        using var desk = new TestDesk();
        await AddAsync(desk, "A");
        var backup = (await desk.Get<BackUp>().RunAsync(null, Cancel)).Value!;
        var preview = (await desk.Get<RestoreStock>().PreviewAsync(backup.File, Cancel)).Value!;
        await AddAsync(desk, "B");

        var answer = await desk.Get<RestoreStock>().RunAsync(backup.File, preview.Mark, Cancel);

        Assert.StartsWith("Something was done to the book meanwhile: deed 2", Assert.Single(answer.Problems).Text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Check_BookInUse_IsSound()
    {
        using var desk = await TestDesk.WithDemoAsync();

        var check = (await desk.Get<CheckStock>().RunAsync(Cancel)).Value!;

        Assert.True(check.IsSound, string.Join("; ", check.Checks.SelectMany(c => c.Wrong)));
        // The animals of the demo, their clutches, and their log.
        Assert.Equal(3, check.Book["deeds in the history"]);
    }

    private static async Task AddAsync(TestDesk desk, string tag, string? told = null) =>
        Assert.Empty((await desk.Get<SaveAnimal>().RunAsync(new AnimalForm { Tag = tag, Told = told }, null, TestDesk.Who, Cancel)).Problems);

    private static async Task<string> CarriesAsync(TestDesk desk, string tag) =>
        (await desk.Get<ListAnimals>().RunAsync(new AnimalsQuestion(), Cancel)).Animals.Single(a => a.Tag == tag).ToString();
}
